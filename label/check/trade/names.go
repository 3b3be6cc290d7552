package trade

import (
	"cmp"
	"fmt"
	"maps"
	"math/bits"
	"slices"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/name"
)

// nameRules hold the names of a table against each other.
func nameRules() []check.Rule {
	other := func(i int, pairs ...string) []string {
		return append([]string{"recordNumber", itoa(215 + i)}, pairs...)
	}
	return []check.Rule{
		{
			Name: "author-missing", Severity: label.Warning, Source: practice + "; most handbooks ask for name and author",
			Doc: "a name without its author in a table whose other names have theirs", Terms: nameCells[:],
			Example: rows(nil, other(0, "scientificName", "Cistus ladanifer L.", "family", "Cistaceae"), other(1, "scientificName", "Erica australis L.", "family", "Ericaceae"),
				other(2, "scientificName", "Quercus suber L.", "family", "Fagaceae"), other(3, "scientificName", "Lavandula viridis L'Hér."), other(4, "scientificName", "Corema album", "family", "Ericaceae")),
			Counterexample: rows(nil, other(0, "scientificName", "Cistus ladanifer L.", "family", "Cistaceae"), other(1, "scientificName", "Erica australis L.", "family", "Ericaceae"),
				other(2, "scientificName", "Quercus suber L.", "family", "Fagaceae"), other(3, "scientificName", "Lavandula viridis L'Hér."), other(4, "scientificName", "Corema sp.", "family", "Ericaceae")),
			Table: func() check.TableRule { return &authorTable{names: names{}} },
		},
		{
			Name: "name-spelling", Severity: label.Warning, Source: practice,
			Doc: "a name one or two letters from another of the table that is far commoner", Terms: nameCells[:],
			Example:        rows(nil, other(0), other(1), other(2, "scientificName", "Thymus capitelatus Hoffmanns. & Link")),
			Counterexample: rows(nil, other(0), other(1), other(2, "scientificName", "Thymus capitatus (L.) Hoffmanns. & Link")),
			Table:          func() check.TableRule { return &spellingTable{names: names{}} },
		},
	}
}

// kept is what is known of one name of the table, however often it stands
// there: some 200 bytes.
type kept struct {
	name.Name
	count int
	cells []cell // the first few
	genus []cell // likewise, where it has a column of its own and the name none
	file  string
	term  string // of the cells
	text  string // of the first cell
}

// nameCells are the columns that a name is told at: that of the whole name, or that of
// the epithet where the name stands in several columns.
var nameCells = [...]string{"scientificName", "specificEpithet"}

// nameField is the cell that a record's name is told at.
func nameField(r *check.Record) check.Field {
	for _, term := range nameCells {
		if f := r.Field(term); f.Text != "" {
			return f
		}
	}
	return check.Field{}
}

// nameTerms are the terms that make a name.
var nameTerms = []string{"scientificName", "genus", "infragenericEpithet", "specificEpithet", "infraspecificEpithet", "scientificNameAuthorship"}

// maxCells is how many records of one name a finding lists.
const maxCells = 100

// names are the distinct names of a table, by their text.
type names map[string]*kept

func (n names) feed(r *check.Record) *kept {
	f := nameField(r)
	// A name that its own columns contradict, or that is damaged, has its finding.
	if r.Name == "" || f.Text == "" || r.Doubted(nameTerms...) {
		return nil
	}
	k := n[r.Name]
	if k == nil {
		text := strings.Clone(r.Name)
		k = &kept{Name: name.Parse(text, name.Parts{}), file: f.Origin.File, term: f.Origin.Term, text: strings.Clone(f.Text)}
		n[text] = k
	}
	k.count++
	if len(k.cells) < maxCells {
		k.cells = append(k.cells, cellOf(f))
		if k.term != "scientificName" {
			k.genus = append(k.genus, cellOf(r.Field("genus")))
		}
	}
	return k
}

// species reports whether a name is of a species or below, by one person's
// hand and without doubt, so that it can be held against others.
func (k *kept) species() bool {
	return k.Genus != "" && k.Epithet != "" && !k.Formula && k.Qualifier == "" && k.Open == "" && !k.Indet && k.Cultivar == "" && !strings.HasSuffix(k.Genus, ".")
}

// words are genus and epithets.
func (k *kept) words() [3]string { return [3]string{k.Genus, k.Epithet, k.Infraspecific} }

// authored reports whether somebody is named after the lowest epithet, also
// beyond words such as s.l.
func (k *kept) authored() bool {
	if k.Authorship != "" {
		return true
	}
	lowest := k.Epithet
	if k.Infraspecific != "" {
		lowest = k.Infraspecific
	}
	text := k.text
	if i := strings.LastIndex(text, lowest); i >= 0 {
		text = text[i+len(lowest):]
	}
	return strings.ContainsFunc(text, unicode.IsUpper)
}

func (k *kept) finding(message, suggest string) label.Finding {
	return label.Finding{Origin: k.cells[0].origin(k.file, k.term), Value: k.text, Message: message, Suggest: suggest, Also: also(k.term, k.cells[1:])}
}

// ofGenus is a finding that is told at the genus, which may have a column of its own.
func (k *kept) ofGenus(message, as string) label.Finding {
	if k.genus == nil {
		return k.finding(message, strings.Replace(k.text, k.Genus, as, 1))
	}
	return label.Finding{Origin: k.genus[0].origin(k.file, "genus"), Value: k.Genus, Message: message, Suggest: as, Also: also("genus", k.genus[1:])}
}

// authorTable keeps some 200 bytes a distinct name.
type authorTable struct{ names }

func (t *authorTable) Feed(r *check.Record) { t.names.feed(r) }

// usual is how many times as many names must have authors as have none.
const usual = 5

func (t *authorTable) End() []label.Finding {
	var bare []*kept
	authored := 0
	full := map[[3]string]*kept{} // the commonest way in which a name has its author
	for _, k := range t.names {
		switch {
		case !k.species():
		case k.authored():
			authored++
			if was := full[k.words()]; was == nil || k.count > was.count || k.count == was.count && byFirst(k, was) < 0 {
				full[k.words()] = k
			}
		// An autonym has no author of its own, special forms need none, and two epithets
		// between which the finder chooses are not one name.
		case !k.Autonym && !k.Hybrid && !strings.Contains(k.text, "/") && !specialForm(k.text) && !slip(k.Infraspecific, k.Epithet, 2):
			bare = append(bare, k)
		}
	}
	if authored < usual || authored < usual*len(bare) {
		return nil
	}
	slices.SortFunc(bare, byFirst)
	var all []label.Finding
	for _, k := range bare {
		suggest := ""
		if as := full[k.words()]; as != nil {
			suggest = as.text // with its authors in their own column, the same letters
		}
		if suggest == k.text {
			suggest = ""
		}
		all = append(all, k.finding(fmt.Sprintf("no author, while %s of the table have one: add it to the name or to scientificNameAuthorship", plural(authored, "other name")), suggest))
	}
	return all
}

// specialForm reports whether a name is of a parasite's special form, whose names the
// Code does not govern (ICN Art. 4 Note 4).
func specialForm(text string) bool {
	return strings.Contains(text, " f. sp. ") || strings.Contains(text, " f.sp. ")
}

func byFirst(a, b *kept) int { return cmp.Compare(a.cells[0].row, b.cells[0].row) }

// spellingTable keeps some 200 bytes a distinct name.
type spellingTable struct{ names }

func (t *spellingTable) Feed(r *check.Record) { t.names.feed(r) }

// A binomial stands for all names of the table with its genus and epithet.
type binomial struct {
	genus, epithet string
	count          int
	authors        map[string]bool // of the species, simplified; empty where unknown
	below          map[string]bool // infraspecific epithets
	first          *kept
}

// A name is rare or common enough to speak of: at most rare records against
// three times as many, and at least common.
const (
	rare   = 2
	common = 3
)

func (t *spellingTable) End() []label.Finding {
	byGenus, byEpithet := map[string][]*binomial{}, map[string][]*binomial{}
	for _, b := range t.binomials() {
		byGenus[b.genus] = append(byGenus[b.genus], b)
		byEpithet[b.epithet] = append(byEpithet[b.epithet], b)
	}
	all := append(t.almostAutonyms(), t.authors()...)
	for _, genus := range slices.Sorted(maps.Keys(byGenus)) {
		all = append(all, misspelt(byGenus[genus], func(b *binomial) string { return b.epithet }, func(b, as *binomial, message string) label.Finding {
			if fullGenitive(b.epithet, as.epithet) {
				return b.first.finding(message+"; of a person whose name ends in a consonant but -er the longer is right (ICN Art. 60.8)", "")
			}
			return b.first.finding(message, strings.Replace(b.first.text, b.epithet, as.epithet, 1))
		})...)
	}
	for _, epithet := range slices.Sorted(maps.Keys(byEpithet)) {
		all = append(all, misspelt(byEpithet[epithet], func(b *binomial) string { return b.genus }, func(b, as *binomial, message string) label.Finding {
			return b.first.ofGenus(message, as.genus)
		})...)
	}
	return all
}

// almostAutonyms are names whose last epithet all but repeats the species'.
func (t *spellingTable) almostAutonyms() []label.Finding {
	var all []label.Finding
	for _, text := range slices.Sorted(maps.Keys(t.names)) {
		k := t.names[text]
		if k.species() && k.Infraspecific != k.Epithet && slip(k.Infraspecific, k.Epithet, 2) {
			all = append(all, k.finding(fmt.Sprintf("%q is all but %q: if it repeats the epithet of the species, spell both alike", k.Infraspecific, k.Epithet), ""))
		}
	}
	return all
}

// authors are names whose author is a letter from the one that the same name has
// in many more records.
func (t *spellingTable) authors() []label.Finding {
	same := map[[3]string][]*kept{}
	for _, k := range t.names {
		if k.species() && k.Authorship != "" {
			same[k.words()] = append(same[k.words()], k)
		}
	}
	var all []label.Finding
	for _, list := range same {
		slices.SortFunc(list, func(a, b *kept) int { return cmp.Or(cmp.Compare(b.count, a.count), byFirst(a, b)) })
		for i, k := range list {
			for _, as := range list[:i] {
				if k.count > rare || as.count < max(common, 3*k.count) {
					break
				}
				if otherAuthor(k.Authorship, as.Authorship) {
					suggest := as.text
					if suggest == k.text {
						suggest = "" // the authors have a column of their own
					}
					all = append(all, k.finding(fmt.Sprintf("the author %q is spelt %q in %s of the table", k.Authorship, as.Authorship, plural(as.count, "record")), suggest))
					break
				}
			}
		}
	}
	slices.SortFunc(all, func(a, b label.Finding) int { return cmp.Compare(a.Row, b.Row) })
	return all
}

// otherAuthor reports whether two texts name the same authors but for one letter or
// its accents in one word. An abbreviation is no misspelling.
func otherAuthor(a, b string) bool {
	split := func(s string) []string {
		return strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" .,()&:-", r) })
	}
	x, y := split(a), split(b)
	if len(x) != len(y) {
		return false
	}
	differ := -1
	for i := range x {
		if x[i] != y[i] {
			if differ >= 0 {
				return false
			}
			differ = i
		}
	}
	if differ < 0 {
		return false
	}
	v, w := x[differ], y[differ]
	if len(v) < 5 || len(w) < 5 || strings.HasPrefix(v, w) || strings.HasPrefix(w, v) || strings.EqualFold(v, w) {
		return false
	}
	return check.PlainLetters(v) == check.PlainLetters(w) || within([]rune(v), []rune(w), 1)
}

// binomials joins the names of the table that have genus and epithet in
// common, the commonest first.
func (t *spellingTable) binomials() []*binomial {
	joined := map[[2]string]*binomial{}
	for _, text := range slices.Sorted(maps.Keys(t.names)) {
		k := t.names[text]
		if !k.species() {
			continue
		}
		key := [2]string{k.Genus, k.Epithet}
		b := joined[key]
		if b == nil {
			b = &binomial{genus: k.Genus, epithet: k.Epithet, authors: map[string]bool{}, below: map[string]bool{}, first: k}
			joined[key] = b
		}
		b.count += k.count
		if byFirst(k, b.first) < 0 {
			b.first = k
		}
		if k.Infraspecific == "" && k.Authorship != "" {
			b.authors[plainAuthor(k.Authorship)] = true
		}
		if k.Infraspecific != "" && !k.Autonym {
			b.below[k.Infraspecific] = true
		}
	}
	return slices.SortedFunc(maps.Values(joined), func(a, b *binomial) int {
		return cmp.Or(cmp.Compare(b.count, a.count), cmp.Compare(a.genus, b.genus), cmp.Compare(a.epithet, b.epithet))
	})
}

// misspelt compares binomials, the commonest first, that differ in one word.
func misspelt(list []*binomial, word func(*binomial) string, tell func(b, as *binomial, message string) label.Finding) []label.Finding {
	var all []label.Finding
	if len(list) < 2 {
		return nil
	}
	// Letters that a word has, counted once or twice, tell quickly that two
	// words are too far apart: a letter changed alters no more than two bits.
	sets := make([]uint64, len(list))
	for i, b := range list {
		sets[i] = letters(word(b))
	}
	for i := len(list) - 1; i > 0; i-- {
		b := list[i]
		if b.count > rare {
			break
		}
		for j, as := range list[:i] {
			few := as.count < max(common, 3*b.count)
			if few && (b.count > 1 || as.count < 2) {
				break
			}
			if bits.OnesCount64(sets[i]^sets[j]) > 6 {
				continue
			}
			limit := 1
			if len(b.authors) > 0 && len(as.authors) > 0 || b.shareBelow(as) {
				limit = 2
			}
			if few && !plainSlip(word(b), word(as)) {
				continue
			}
			if !slip(word(b), word(as), limit) && !(b.genus == as.genus && otherEnding(word(b), word(as))) || distinct(b, as) {
				continue
			}
			all = append(all, tell(b, as, fmt.Sprintf("%q is spelt %q in %s of the table", word(b), word(as), plural(as.count, "record"))))
			break
		}
	}
	return all
}

// shareBelow reports whether two binomials have an epithet below the species in
// common.
func (b *binomial) shareBelow(as *binomial) bool {
	for e := range b.below {
		if as.below[e] {
			return true
		}
	}
	return false
}

// endings are those of one adjective in its three genders, and of one person's
// name in the genitive: a genus has only one of each (Art. 23.5, 60.8).
var endings = [][]string{{"us", "a", "um"}, {"is", "e"}, {"er", "ra", "rum"}, {"er", "era", "erum"}, {"i", "ii"}, {"ae", "iae"}}

// fullGenitive reports whether an epithet has the ending of a person's name in the
// genitive, jamesonii, that another has cut short.
func fullGenitive(a, short string) bool {
	stem, ok := strings.CutSuffix(a, "ii")
	if !ok || short != stem+"i" {
		if stem, ok = strings.CutSuffix(a, "iae"); !ok || short != stem+"ae" {
			return false
		}
	}
	return !strings.HasSuffix(stem, "er") && !strings.ContainsAny(stem[len(stem)-1:], "aeiouy")
}

// otherEnding reports whether two epithets are one with another ending.
func otherEnding(a, b string) bool {
	for _, set := range endings {
		for _, x := range set {
			for _, y := range set {
				if x != y && len(a) >= len(x)+3 && strings.HasSuffix(a, x) && strings.HasSuffix(b, y) && a[:len(a)-len(x)] == b[:len(b)-len(y)] {
					return true
				}
			}
		}
	}
	return false
}

// letters has a bit for each letter of a word that it has, and one for each it
// has twice or more; letters beyond a to z share one.
func letters(s string) uint64 {
	var once, twice uint64
	for i := range len(s) {
		if s[i]&0xc0 == 0x80 {
			continue // the rest of a letter beyond ASCII
		}
		bit := uint64(1) << 31
		if c := s[i] | 0x20; c >= 'a' && c <= 'z' {
			bit = 1 << (c - 'a')
		}
		twice |= once & bit
		once |= bit
	}
	return once | twice<<32
}

// distinct reports whether two binomials are known to be two: by their authors,
// by an autonym, which says the epithet twice, or because both are names of old
// standing.
func distinct(a, b *binomial) bool {
	if a.first.Autonym && a.epithet != b.epithet {
		return true
	}
	if len(a.authors) > 0 && len(b.authors) > 0 {
		same := false
		for x := range a.authors {
			same = same || b.authors[x]
		}
		if !same {
			return true
		}
	}
	x, y := a.genus+" "+a.epithet, b.genus+" "+b.epithet
	for _, pair := range nearPairs {
		if x == pair[0] && y == pair[1] || x == pair[1] && y == pair[0] {
			return true
		}
	}
	return false
}

// nearPairs are good names a letter apart by one author, from memory. Few are
// needed: most such pairs have different authors.
var nearPairs = [][2]string{{"Euphorbia peplus", "Euphorbia peplis"}}

// plainAuthor leaves of an author's name the letters that abbreviations and
// misprints leave alone: the first three of the last person's.
func plainAuthor(s string) string {
	if i := strings.LastIndex(s, ")"); i >= 0 && strings.TrimSpace(s[i+1:]) != "" {
		s = s[i+1:]
	}
	words := strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" .,()&-", r) })
	for i := len(words) - 1; i >= 0; i-- {
		if w := []rune(strings.ToLower(words[i])); len(w) > 1 || i == 0 {
			return string(w[:min(3, len(w))])
		}
	}
	return ""
}
