package trade

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// genusSpellingRule holds the genera of one family against each other and against the
// common ones.
func genusSpellingRule() check.Rule {
	plants := func(name, family string) []map[string]string {
		return rows([]string{"scientificName", "Rhododendron ponticum L.", "family", "Ericaceae"}, []string{"recordNumber", "215", "scientificName", name, "family", family})
	}
	return check.Rule{
		Name: "genus-spelling", Severity: label.Warning, Source: practice + "; genera: from memory",
		Doc:     "a genus that is another of the same family but for y and i, an h, a letter that stands twice and the like, or one letter from a common one of that family",
		Terms:   []string{"scientificName", "genus"},
		Example: plants("Rododendron hirsutum L.", "Ericaceae"), Counterexample: plants("Leucothoe axillaris (Lam.) D.Don", "Ericaceae"),
		Table: func() check.TableRule { return &genusSpellings{} },
	}
}

// genusSpelt is a genus of the table: some 150 bytes.
type genusSpelt struct {
	name, family, text string
	count              int
	term               string
	cells              []cell
	epithets           map[string]bool // of the first records
}

type genusSpellings struct {
	file string
	seen map[string]*genusSpelt
}

func (t *genusSpellings) Feed(r *check.Record) {
	f := r.Field("family")
	if f.Text == "" || r.Doubted("family", "genus", "scientificName", "specificEpithet") {
		return
	}
	genus := genusOf(r)
	if len(genus) < 5 || strings.HasSuffix(genus, ".") {
		return
	}
	g := t.seen[genus]
	if g == nil {
		at := r.Field("scientificName")
		if at.Text == "" {
			at = r.Field("genus")
		}
		if t.seen == nil {
			t.seen, t.file = map[string]*genusSpelt{}, f.Origin.File
		}
		g = &genusSpelt{name: strings.Clone(genus), family: modern(strings.Clone(f.Text)), text: strings.Clone(at.Text), term: at.Origin.Term, epithets: map[string]bool{}}
		t.seen[g.name] = g
	}
	if g.count++; g.count <= maxCells {
		at := r.Field(g.term)
		g.cells = append(g.cells, cellOf(at))
		if len(g.epithets) < 10 {
			g.epithets[strings.Clone(secondWord(r))] = true
		}
	}
}

// secondWord is the epithet of a record, as far as it is needed to tell names apart.
func secondWord(r *check.Record) string {
	if e := r.Text("specificEpithet"); e != "" {
		return e
	}
	w := strings.Fields(r.Name)
	if len(w) < 2 {
		return ""
	}
	return w[1]
}

// soundsAlike folds what is spelt either way in names of plants: y and i, ae, oe and e,
// k and c, f and ph, h behind r and t, letters that stand twice.
var soundsAlike = strings.NewReplacer("y", "i", "ae", "e", "oe", "e", "k", "c", "ph", "f", "rrh", "r", "rh", "r", "th", "t", "ll", "l", "nn", "n", "rr", "r", "ss", "s", "tt", "t", "mm", "m", "pp", "p", "cc", "c", "ff", "f", "gg", "g", "dd", "d", "bb", "b", "zz", "z")

func (t *genusSpellings) End() []label.Finding {
	list := slices.SortedFunc(maps.Values(t.seen), func(a, b *genusSpelt) int {
		return cmp.Or(cmp.Compare(b.count, a.count), strings.Compare(a.name, b.name))
	})
	folded := map[[2]string][]*genusSpelt{}
	for _, g := range list {
		key := [2]string{soundsAlike.Replace(strings.ToLower(g.name)), g.family}
		folded[key] = append(folded[key], g)
	}
	var all []label.Finding
	for _, g := range list {
		if familyOf(g.name) != "" {
			continue
		}
		if f, ok := t.alike(g, folded[[2]string{soundsAlike.Replace(strings.ToLower(g.name)), g.family}]); ok {
			all = append(all, f)
		} else if right := commonGenus(g); right != "" && !t.told(g, right) {
			all = append(all, t.finding(g, right, "no genus is called so that is known, and "+right+" is one of the same family"))
		}
	}
	slices.SortFunc(all, func(a, b label.Finding) int { return cmp.Compare(a.Row, b.Row) })
	return all
}

// alike finds the genus that another one of the family is meant for: a common one, or
// the commoner of the two.
func (t *genusSpellings) alike(g *genusSpelt, all []*genusSpelt) (label.Finding, bool) {
	for _, as := range all {
		if as == g || as.count < g.count || as.count == g.count && familyOf(as.name) == "" && as.cells[0].row > g.cells[0].row {
			continue
		}
		for e := range g.epithets {
			if as.epithets[e] && as.count >= common {
				return label.Finding{}, false // the name as a whole is told
			}
		}
		message, suggest := fmt.Sprintf("is spelt %q in %s of the table", as.name, plural(as.count, "record")), as.name
		if as.count < 2*g.count && familyOf(as.name) == "" {
			message, suggest = message+": keep the right one in all", ""
		}
		if g.term != "genus" {
			message = fmt.Sprintf("%q %s", g.name, message)
		}
		return t.finding(g, suggest, message), true
	}
	return label.Finding{}, false
}

// told reports whether the name as a whole is held against the same one under the right
// genus, by name-spelling.
func (t *genusSpellings) told(g *genusSpelt, right string) bool {
	as := t.seen[right]
	if as == nil || as.count < 2 {
		return false
	}
	for e := range g.epithets {
		if as.epithets[e] {
			return true
		}
	}
	return false
}

func (t *genusSpellings) finding(g *genusSpelt, right, message string) label.Finding {
	f := label.Finding{Origin: g.cells[0].origin(t.file, g.term), Value: g.text, Message: message, Also: also(g.term, g.cells[1:])}
	if right != "" {
		f.Suggest = strings.Replace(g.text, g.name, right, 1)
	}
	return f
}

// commonGenus returns the one common genus of a family that a word is a letter away
// from, inside.
func commonGenus(g *genusSpelt) string {
	if len(g.name) < 7 || g.count > rare {
		return ""
	}
	found := ""
	for name, family := range generaFamilies() {
		if family != g.family || len(name) < 6 || name[0] != g.name[0] || name[len(name)-2:] != g.name[len(g.name)-2:] || !within([]rune(name), []rune(g.name), 1) {
			continue
		}
		if found != "" {
			return ""
		}
		found = name
	}
	return found
}
