package check

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/name"
)

// A NameProblem is what composing the name met.
type NameProblem = name.Problem

// readName composes the name as it is to be printed.
func (c *Context) readName() {
	c.Parts = name.Parts{
		Genus: c.Text("genus"), InfragenericEpithet: c.Text("infragenericEpithet"),
		SpecificEpithet: c.Text("specificEpithet"), InfraspecificEpithet: c.Text("infraspecificEpithet"),
		Authorship: c.Text("scientificNameAuthorship"), Family: c.Text("family"),
		Qualifier: c.Text("identificationQualifier"), Rank: c.rank(), CultivarEpithet: c.Text("cultivarEpithet"),
		Completes: c.row.Table().EpithetRank() != "",
	}
	r := c.past.names.of(nameKey{c.Text("scientificName"), c.Parts}, composed)
	c.Name, c.NameProblems, c.nameFaults = r.name, r.problems, r.faults
}

// rank is the rank of the name: of its own column, or, for what looks like an epithet,
// of the heading that it stands below, such as "var.".
func (c *Context) rank() string {
	if r := c.Text("taxonRank"); r != "" || c.row.Table().Has("taxonRank") || !latin.MatchString(c.Text("infraspecificEpithet")) {
		return r
	}
	return c.row.Table().EpithetRank()
}

// latin is one word that ends as epithets do; "yellow", "coast form" and "needs label" do not.
var latin = regexp.MustCompile(`^\s*\p{Ll}[\p{Ll}-]*(?:[aeinorsux]|um|ys|yx)\s*$`)

// nameKey is all that a name is composed of.
type nameKey struct {
	text  string
	parts name.Parts
}

type nameReading struct {
	name     string
	problems []NameProblem
	faults   []name.Fault
}

func composed(k nameKey) nameReading {
	n, problems := name.Compose(k.text, k.parts)
	text := k.text
	if strings.TrimSpace(text) == "" {
		text = n // of the columns
	}
	faults := allFaults(text, k)
	if _, mended, _ := messagesOf(faults); mended != "" && text == k.text {
		_, problems = name.Compose(mended, k.parts) // what the columns say of the name that is meant
	}
	return nameReading{n, problems, faults}
}

// allFaults says what is wrong with the form of a name, what is said of capitals
// only where nothing else is.
func allFaults(text string, k nameKey) []name.Fault {
	with := func(capitals bool) func(string) []name.Fault {
		return func(at string) []name.Fault {
			return slices.DeleteFunc(name.Faults(at, k.parts), func(f name.Fault) bool {
				// The columns' own rank has been asked for.
				return f.Capitals != capitals || f.Rankless && text != k.text
			})
		}
	}
	if all := chain(text, with(false)); len(all) > 0 {
		return all
	}
	return chain(text, with(true))
}

// chain says the most telling fault of a text, for others may come of it, and where it
// is known how to mend that one, what is wrong with the mended text, so that nobody has
// to ask again after each. Every suggestion has what was told before it mended, too.
func chain(text string, faults func(string) []name.Fault) []name.Fault {
	var all []name.Fault
	const most = 4 // more is no name
	for len(all) < most {
		found := faults(text)
		if len(found) == 0 || len(all) > 0 && found[0].Rankless || slices.ContainsFunc(all, func(f name.Fault) bool { return f.Message == found[0].Message }) {
			break
		}
		all = append(all, found[0])
		if text = found[0].Suggest; text == "" {
			break
		}
	}
	return all
}

// nameTerms are the columns that can say what a plant is.
var nameTerms = []string{"scientificName", "genus", "specificEpithet", "family", "vernacularName", "verbatimIdentification", "higherClassification", "class", "order"}

// nameless reports whether nothing says what the plant is.
func (c *Context) nameless() bool {
	return c.Name == "" && !slices.ContainsFunc(nameTerms, func(term string) bool { return c.Text(term) != "" })
}

// namePlaceholder returns the column that should say what the plant is and holds
// a word for nothing, scientificName if none does.
func (c *Context) namePlaceholder() string {
	for _, f := range c.Placeholders {
		if f.Origin.Term == "genus" || f.Origin.Term == "specificEpithet" {
			return f.Origin.Term
		}
	}
	return "scientificName"
}

// nameFault says the first fault of the name's form, of its capitals or of
// anything else. A fault that its columns share stands in the name they make.
func nameFault(c *Context, capitals bool) {
	term := "scientificName"
	if c.Text(term) == "" {
		for _, t := range []string{"genus", "specificEpithet", "infraspecificEpithet", "scientificNameAuthorship"} {
			text := c.Text(t)
			if text != "" && (t != "scientificNameAuthorship" || term == "scientificName") {
				term = t
			}
			if strings.ContainsAny(text, "0123456789_") || strings.Contains(text, "( ") || strings.Contains(text, " )") || strings.Contains(text, " ,") ||
				strings.Count(text, "(") != strings.Count(text, ")") {
				term = t
				break
			}
		}
	}
	if len(c.nameFaults) == 0 {
		return
	}
	f := c.nameFaults[0]
	if f.InGenus && c.Text("scientificName") == "" && c.Text("genus") != "" {
		term = "genus"
	}
	if f.Capitals != capitals || c.Doubted(term) {
		return
	}
	messages, suggest, habit := messagesOf(c.nameFaults)
	if term != "scientificName" {
		suggest = ""
	}
	if f.InGenus && term == "genus" && isSmall(c.Text("genus")) && c.Text("specificEpithet") != "" && !isSmall(c.Text("specificEpithet")) {
		messages = "genus and specificEpithet stand in each other's column, it seems: exchange the two"
	}
	if authors := c.Text("scientificNameAuthorship"); term != "scientificName" && authors != "" {
		// What is wrong with the authors of a name in columns stands in theirs.
		if own := name.AuthorFaults(authors); len(own) > 0 && own[0].Message == f.Message && !c.Doubted("scientificNameAuthorship") {
			term, suggest = "scientificNameAuthorship", own[0].Suggest
		}
	}
	c.Suggest(term, messages, suggest)
	if habit {
		c.cause(messages)
	} else {
		c.cause(messages + ": " + c.Text(term)) // one name of many records
	}
}

// isSmall reports whether a text begins with a small letter.
func isSmall(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return unicode.IsLower(r)
}

// messagesOf joins what is wrong with one text, with the last suggestion, which mends
// the most; a habit is what all of them are.
func messagesOf(faults []name.Fault) (messages, suggest string, habit bool) {
	habit = true
	for i, f := range faults {
		if i > 0 {
			messages += "; "
		}
		messages += f.Message
		habit = habit && f.Habit
		if f.Suggest != "" {
			suggest = f.Suggest
		}
	}
	return messages, suggest, habit
}

// authorFault says what is wrong with the authors' own column. What it shares with the
// name has been told there.
func authorFault(c *Context) {
	const term = "scientificNameAuthorship"
	text := c.Text(term)
	if text == "" || c.Doubted(term) || len(c.nameFaults) > 0 && (c.Text("scientificName") == "" || strings.Contains(c.Text("scientificName"), text)) {
		return
	}
	faults := c.past.authors.of(text, func(text string) []name.Fault { return chain(text, name.AuthorFaults) })
	if len(faults) == 0 {
		return
	}
	messages, suggest, habit := messagesOf(faults)
	c.Suggest(term, messages, suggest)
	if habit {
		c.cause(messages)
	} else {
		c.cause(messages + ": " + text)
	}
}

// classified reports whether genus is the one in which the plant is placed, as Darwin Core
// has it, and not the one its name begins with: genericName says that one, or the
// accepted name begins with the other. Downloads have a synonym's genus so, and
// checklists, where the genus is the last of the ranks of a classification: with its
// class and order, and no epithet beside it. A genus that is spelt nearly as the name's
// is meant for that one.
func (c *Context) classified() bool {
	first := func(term string) string { word, _, _ := strings.Cut(c.Text(term), " "); return word }
	generic, accepted := first("genericName"), first("acceptedNameUsage")
	if generic != "" && generic == first("scientificName") || accepted != "" && accepted == first("genus") {
		return true
	}
	if c.Text("class") == "" || c.Text("order") == "" {
		return false
	}
	genus, species := first("genus"), c.Text("specificEpithet")
	return genus != "" && (species == "" || strings.HasPrefix(species, genus+" ")) && !looksLike(genus, first("scientificName"))
}

// looksLike reports whether two words begin or end alike and are about as long, as a
// word does with its misspelling.
func looksLike(a, b string) bool {
	if d := len(a) - len(b); d < -2 || d > 2 || len(a) < 4 || len(b) < 4 {
		return false
	}
	return strings.EqualFold(a[:3], b[:3]) || strings.EqualFold(a[len(a)-4:], b[len(b)-4:])
}

// nameRules are about the scientific name and the columns beside it.
func nameRules() []Rule {
	return []Rule{
		{
			Name: "name-form", Severity: label.Warning, Source: "International Code of Nomenclature (ICN) Art. 20, 23, 24, 49; open nomenclature: " + practice,
			Doc:     "a name that is written as no name is: half a pair of brackets, a rank without its epithet, a figure in an epithet or before the author, an epithet that is its genus again, a genus in small letters, an author without a blank before it, or in brackets and none behind it",
			Terms:   []string{"scientificName", "genus", "specificEpithet", "infraspecificEpithet", "scientificNameAuthorship"},
			Example: one("scientificName", "Thymus mastichina (L. L."), Counterexample: one("scientificName", "Thymus cf. mastichina (L.) L. [det. prov.]"),
			Row: func(c *Context) { nameFault(c, false) },
		},
		{
			Name: "name-capitals", Severity: label.Note, Source: "ICN Art. 60.2, Rec. 60F.1",
			Doc:     "an epithet that begins with a capital, or a name all in capitals; it is printed so",
			Terms:   []string{"scientificName", "genus", "specificEpithet", "infraspecificEpithet"},
			Example: one("scientificName", "Iris Xiphium L.", "family", "Iridaceae"), Counterexample: one("scientificName", "Capsella bursa-pastoris (L.) Medik.", "family", "Brassicaceae"),
			Row: func(c *Context) { nameFault(c, true) },
		},
		{
			Name: "author-form", Severity: label.Warning, Source: "ICN Art. 46, 49, Rec. 46A, 46C",
			Doc:     "authors, in a column of their own, that are written as none are: half a pair of brackets, a figure in a name, small letters, nobody before or behind the word that joins two, or only the author in brackets",
			Terms:   []string{"scientificNameAuthorship"},
			Example: one("scientificName", "Thymus capitellatus", "scientificNameAuthorship", "Hoffmanns. &"), Counterexample: one("scientificName", "Thymus capitellatus", "scientificNameAuthorship", "Hoffmanns. & Link"),
			Row: authorFault,
		},
		{
			Name: "name-columns", Severity: label.Warning, Source: darwin + " (scientificName, genus, specificEpithet, infraspecificEpithet)",
			Doc:     "a column of the name says something else than scientificName",
			Terms:   []string{"genus", "specificEpithet", "infraspecificEpithet", "scientificNameAuthorship", "scientificName"},
			Example: one("specificEpithet", "camphoratus"), Counterexample: one("genus", "Thymus", "specificEpithet", "capitellatus"),
			Row: func(c *Context) {
				mendable := len(c.nameFaults) > 0 && c.nameFaults[0].Suggest != ""
				if len(c.NameProblems) == 0 || c.Doubted("scientificName") && !mendable {
					return // a damaged name fits no column
				}
				for _, p := range c.NameProblems {
					if p.Term != "identificationQualifier" && !c.Doubted(p.Term) && !(p.Term == "genus" && c.classified()) {
						c.Suggest(p.Term, p.Message, p.Suggest)
					}
				}
			},
		},
		{
			Name: "qualifier-unplaced", Severity: label.Warning, Source: darwin + " (identificationQualifier)",
			Doc:     "an identificationQualifier that names no epithet of the name; it is printed in brackets after it",
			Terms:   []string{"identificationQualifier"},
			Example: one("identificationQualifier", "cf. villosus"), Counterexample: one("identificationQualifier", "cf. capitellatus"),
			Row: func(c *Context) {
				for _, p := range c.NameProblems {
					if p.Term == "identificationQualifier" {
						c.Suggest(p.Term, p.Message, p.Suggest)
					}
				}
			},
		},
	}
}
