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

// familyRules hold the families of a table against each other.
func familyRules() []check.Rule {
	run := func(family string, n int, last ...string) []map[string]string {
		var all [][]string
		for i := range n {
			all = append(all, []string{"recordNumber", itoa(300 + i), "family", family})
		}
		return rows(append(all, append([]string{"recordNumber", "400"}, last...))...)
	}
	return []check.Rule{
		{
			Name: "family-spelling", Severity: label.Warning, Source: practice + "; families: APG IV and PPG I",
			Doc: "a family that is spelt another way in the rest of the table, or one letter from a family that there is", Terms: []string{"family"},
			Example: run("Lamiaceae", 3, "family", "Laminaceae"), Counterexample: rows([]string{"family", "Fagaceae", "scientificName", "Quercus suber L."}, []string{"recordNumber", "215", "family", "Fagaceae", "scientificName", "Quercus suber L."},
				[]string{"recordNumber", "216", "family", "Fagaceae", "scientificName", "Quercus suber L."}, []string{"recordNumber", "217", "family", "Fabaceae", "scientificName", "Genista triacanthos Brot."}),
			Table: func() check.TableRule { return &familyTable{} },
		},
		{
			Name: "family-names", Severity: label.Note, Source: "ICN Art. 18.5 (families with two names); APG IV",
			Doc: "one family under both of its names, or a genus under its family of old and that of today", Terms: []string{"family"},
			Example: run("Lamiaceae", 3, "family", "Labiatae"), Counterexample: run("Lamiaceae", 3, "family", "LAMIACEAE"),
			Table: func() check.TableRule {
				return &familyNames{genusTable: genusTable{genera: map[string]*genusFamilies{}}}
			},
		},
		{
			Name: "genus-families", Severity: label.Warning, Source: practice + "; families: APG IV",
			Doc: "one genus under two families, between which no system has moved it; or under a family that is not its own", Terms: []string{"family"},
			Example: run("Plantaginaceae", 3, "family", "Rosaceae"), Counterexample: run("Lamiaceae", 3, "family", "Plantaginaceae", "scientificName", "Plantago coronopus L."),
			Table: func() check.TableRule { return &genusTable{genera: map[string]*genusFamilies{}} },
		},
	}
}

// alternative are the families that have two names of equal standing, the
// older first: ICN Art. 18.5, with Art. 19.8 for Papilionaceae.
var alternative = map[string]string{
	"Compositae": "Asteraceae", "Cruciferae": "Brassicaceae", "Gramineae": "Poaceae", "Guttiferae": "Clusiaceae", "Labiatae": "Lamiaceae",
	"Leguminosae": "Fabaceae", "Papilionaceae": "Fabaceae", "Palmae": "Arecaceae", "Umbelliferae": "Apiaceae",
}

// modern returns the name of a family in -aceae, spelt as families are.
func modern(family string) string {
	f := capitalised(family)
	if m := alternative[f]; m != "" {
		return m
	}
	return f
}

// capitalised writes FABACEAE as Fabaceae.
func capitalised(s string) string {
	if s == "" {
		return ""
	}
	l := strings.ToLower(s)
	return strings.ToUpper(l[:1]) + l[1:]
}

// isFamily reports whether a cell looks like a family's name at all.
func isFamily(s string) bool {
	if len(s) < 6 || strings.Trim(strings.ToLower(s), "abcdefghijklmnopqrstuvwxyzëöüæœ") != "" {
		return false
	}
	f := capitalised(s)
	end := f[max(0, len(f)-8):]
	return strings.HasSuffix(f, "ae") || strings.Contains(end, "ac") || strings.Contains(end, "ce") || alternative[f] != ""
}

// familySeen is one way in which families are spelt.
type familySeen struct {
	text  string
	count int
	cells []cell
}

// familyTable keeps some 100 bytes for each family, and 12 for its first
// records.
type familyTable struct {
	file string
	seen map[string]*familySeen
}

func (t *familyTable) Feed(r *check.Record) {
	f := r.Field("family")
	if f.Text == "" || r.Doubted("family") {
		return
	}
	if s := t.seen[f.Text]; s != nil {
		s.count++
		if len(s.cells) < maxCells {
			s.cells = append(s.cells, cellOf(f))
		}
		return
	}
	if !isFamily(f.Text) {
		return
	}
	if t.seen == nil {
		t.seen, t.file = map[string]*familySeen{}, f.Origin.File
	}
	text := strings.Clone(f.Text)
	t.seen[text] = &familySeen{text, 1, []cell{cellOf(f)}}
}

// list returns the spellings, the commonest first.
func (t *familyTable) list() []*familySeen {
	return slices.SortedFunc(maps.Values(t.seen), func(a, b *familySeen) int {
		return cmp.Or(cmp.Compare(b.count, a.count), cmp.Compare(a.cells[0].row, b.cells[0].row))
	})
}

func (t *familyTable) finding(s *familySeen, message, suggest string) label.Finding {
	return label.Finding{Origin: s.cells[0].origin(t.file, "family"), Value: s.text, Suggest: suggest, Also: also("family", s.cells[1:]), Message: message}
}

func (t *familyTable) End() []label.Finding {
	list := t.list()
	var all []label.Finding
	for i, s := range list {
		if s.text == strings.ToLower(s.text) && isFamily(s.text) {
			if as := capitalised(s.text); slices.ContainsFunc(list, func(o *familySeen) bool { return o.text != strings.ToLower(o.text) }) && (families()[as] || alternative[as] != "") {
				all = append(all, t.finding(s, "a family begins with a capital", as))
			}
			continue
		}
		if right, count := misspeltFamily(s, list[:i]); right != "" {
			message := "no family is called so: " + right + " is all but it"
			if count > 0 {
				message = fmt.Sprintf("spelt %q in %s of the table", right, plural(count, "record"))
			}
			all = append(all, t.finding(s, message, right))
		}
	}
	return all
}

// misspeltFamily returns the family that s is likely meant for, and in how many
// records of the table it stands; "" if s is none that is misspelt. Commoner
// spellings come first.
func misspeltFamily(s *familySeen, commoner []*familySeen) (right string, count int) {
	f := capitalised(s.text)
	if families()[f] {
		return "", 0
	}
	for _, as := range commoner {
		g := capitalised(as.text)
		if g == f || modern(f) == modern(g) {
			return "", 0 // capitals are a matter of style
		}
		if (families()[g] || as.count >= max(common, 3*s.count)) && familySlip(f, g) {
			return as.text, as.count
		}
	}
	if right = nearFamily(f); right == "" {
		right = endedFamily(f, commoner)
	}
	return right, 0
}

// endedFamily mends the ending of a family that no list has, Xacea or Xacae, where the
// table has families in -aceae, too: whatever its stem, no family ends so.
func endedFamily(f string, others []*familySeen) string {
	stem, cut := strings.CutSuffix(f, "acea")
	if !cut {
		stem, cut = strings.CutSuffix(f, "acae")
	}
	if !cut || len(stem) < 4 || f == "Crustacea" {
		return ""
	}
	for _, as := range others {
		if strings.HasSuffix(strings.ToLower(as.text), "aceae") {
			return stem + "aceae"
		}
	}
	return ""
}

// familySlip reports whether f is g, mistyped.
func familySlip(f, g string) bool {
	if s, t := strings.LastIndex(f, "ac"), strings.LastIndex(g, "ac"); s >= 2 && s == t && f[:s] == g[:t] && !strings.HasSuffix(f, "aceae") {
		return true // another ending
	}
	x, y := []rune(f), []rune(g)
	short := len(y)
	if strings.HasSuffix(f, "aceae") {
		short = min(short, len(x))
	}
	short -= len("aceae")
	return short >= 2 && (short >= 3 || !strings.HasSuffix(f, "aceae")) && within(x, y, 1+min(1, short/5))
}

// nearFamily returns the one family of the list that a word of a family's form is
// a letter away from. The list has not all families, so short names, of which many
// are alike, are left alone.
func nearFamily(f string) string {
	near := ""
	for g := range families() {
		stem := min(len(f), len(g)) - len("aceae")
		if !strings.HasSuffix(f, "aceae") { // Poacae lacks a letter of the ending
			stem = len(g) - len("aceae")
		}
		if (stem >= 5 || stem >= 2 && !strings.HasSuffix(f, "aceae")) && within([]rune(f), []rune(g), 1) {
			if near != "" {
				return ""
			}
			near = g
		}
	}
	return near
}

// familyNames finds families under both of their names, and families between which
// systems move genera: both are right, but a herbarium files under one.
type familyNames struct {
	familyTable
	genusTable
}

func (t *familyNames) Feed(r *check.Record) {
	t.familyTable.Feed(r)
	t.genusTable.Feed(r)
}

func (t *familyNames) End() []label.Finding {
	list := t.list()
	var all []label.Finding
	for i, s := range list {
		for _, as := range list[:i] {
			f, g := capitalised(s.text), capitalised(as.text)
			if f == g {
				break // capitals are a matter of style
			}
			if modern(f) == modern(g) {
				all = append(all, t.finding(s, fmt.Sprintf("the same family as %s, as %s of the table %s it: both names are right, but use one",
					as.text, plural(as.count, "record"), has(as.count)), as.text))
				break
			}
		}
	}
	return append(all, t.bySystem()...)
}

// bySystem joins the genera that stand under the same two families.
func (t *familyNames) bySystem() []label.Finding {
	var all []label.Finding
	told := map[[2]string]int{} // place in all
	for _, d := range t.twoFamilies() {
		s, as := d.s, d.as
		if !oneSystem(s.text, as.text) {
			continue
		}
		key := [2]string{capitalised(s.text), capitalised(as.text)}
		if i, ok := told[key]; ok {
			all[i].Also = append(all[i].Also, also("family", s.cells)...)
			continue
		}
		told[key] = len(all)
		all = append(all, label.Finding{
			Origin: s.cells[0].origin(t.genusTable.file, "family"), Value: s.text, Also: d.also(),
			Message: fmt.Sprintf("%s stands under %s in %s of the table: systems differ here, so use one", d.genus, as.text, plural(as.count, "other record")),
		})
	}
	return all
}

func has(n int) string {
	if n == 1 {
		return "has"
	}
	return "have"
}

// genusFamilies are the families that a genus stands under: 100 bytes a genus.
type genusFamilies struct {
	families []*familySeen
}

type genusTable struct {
	file   string
	genera map[string]*genusFamilies
}

func (t *genusTable) Feed(r *check.Record) {
	f := r.Field("family")
	if f.Text == "" || r.Doubted("family", "genus", "scientificName") {
		return
	}
	genus := genusOf(r)
	if genus == "" {
		return
	}
	g := t.genera[genus]
	if g == nil {
		t.file = f.Origin.File
		g = &genusFamilies{}
		t.genera[strings.Clone(genus)] = g
	}
	for _, s := range g.families {
		if s.text == f.Text {
			s.count++
			if len(s.cells) < maxCells {
				s.cells = append(s.cells, cellOf(f))
			}
			return
		}
	}
	if !isFamily(f.Text) {
		return
	}
	for _, s := range g.families {
		if modern(s.text) == modern(f.Text) {
			s.count++
			return
		}
	}
	if len(g.families) < 10 {
		g.families = append(g.families, &familySeen{strings.Clone(f.Text), 1, []cell{cellOf(f)}})
	}
}

// genusOf is the genus of a record: its column, else the first word of the
// name if it looks like one.
func genusOf(r *check.Record) string {
	genus := r.Text("genus")
	if genus == "" {
		genus, _, _ = strings.Cut(strings.TrimPrefix(r.Text("scientificName"), "× "), " ")
	}
	if len(genus) < 3 || genus[0] < 'A' || genus[0] > 'Z' || strings.ContainsAny(genus, ".? ()!") || strings.HasSuffix(genus, "aceae") || genus[1] < 'a' {
		return ""
	}
	return genus
}

// A double is a genus that stands under a second family s beside the commoner one.
type double struct {
	genus string
	s, as *familySeen
}

// also names the other cells of the second family, and those of the first where
// both have as many, so that either may be the wrong one.
func (d double) also() []label.Cell {
	all := also("family", d.s.cells[1:])
	if d.s.count == d.as.count {
		all = append(all, also("family", d.as.cells)...)
	}
	return all
}

func (t *genusTable) twoFamilies() []double {
	var all []double
	for _, genus := range slices.Sorted(maps.Keys(t.genera)) {
		list := t.genera[genus].families
		slices.SortStableFunc(list, func(a, b *familySeen) int { return cmp.Compare(b.count, a.count) })
		for i, s := range list {
			if i == 0 || modern(s.text) == modern(list[0].text) {
				continue
			}
			// A spelling has a finding of its own.
			right, _ := misspeltFamily(s, list[:1])
			if r, _ := misspeltFamily(list[0], []*familySeen{s}); r != "" {
				right = r
			}
			if right == "" {
				all = append(all, double{genus, s, list[0]})
			}
		}
	}
	return all
}

// strange are families that a genus of the list has in no system.
type strange struct {
	genus, family string
	*familySeen
}

// strangers returns them, and how many records have a genus of the list.
func (t *genusTable) strangers() (all []strange, known int) {
	for _, genus := range slices.Sorted(maps.Keys(t.genera)) {
		family := familyOf(genus)
		if family == "" {
			continue
		}
		for _, s := range t.genera[genus].families {
			known += s.count
			if is := modern(s.text); is != family && families()[is] && !oneSystem(is, family) {
				all = append(all, strange{genus, family, s})
			}
		}
	}
	return all, known
}

// Where so many genera stand under strange families, and more than half of the
// records that can be told, the column does not belong to these rows.
const manyStrange = 10

// moved is the finding of a column that does not belong to its rows.
func (t *genusTable) moved(list []strange) label.Finding {
	slices.SortFunc(list, func(a, b strange) int { return cmp.Compare(a.cells[0].row, b.cells[0].row) })
	first := list[0]
	f := label.Finding{
		Origin: first.cells[0].origin(t.file, "family"), Value: first.text, Also: also("family", first.cells[1:]),
		Message: fmt.Sprintf("%s belongs to %s, and %d more genera stand under families that are not theirs: was this column sorted or moved by itself?", first.genus, first.family, len(list)-1),
	}
	for _, s := range list[1:] {
		f.Also = append(f.Also, also("family", s.cells)...)
	}
	return f
}

func (t *genusTable) End() []label.Finding {
	strangers, known := t.strangers()
	records := 0
	is := map[*familySeen]bool{}
	for _, s := range strangers {
		records += s.count
		is[s.familySeen] = true
	}
	if len(strangers) >= manyStrange && 2*records > known {
		return []label.Finding{t.moved(strangers)}
	}
	var all []label.Finding
	for _, s := range strangers {
		all = append(all, label.Finding{
			Origin: s.cells[0].origin(t.file, "family"), Value: s.text, Suggest: s.family, Also: also("family", s.cells[1:]),
			Message: s.genus + " belongs to " + s.family,
		})
	}
	for _, d := range t.twoFamilies() {
		s, as := d.s, d.as
		if oneSystem(s.text, as.text) || is[s] || is[as] {
			continue
		}
		suggest := as.text
		if as.count == s.count {
			suggest = ""
		}
		all = append(all, label.Finding{
			Origin: s.cells[0].origin(t.file, "family"), Value: s.text, Suggest: suggest, Also: d.also(),
			Message: fmt.Sprintf("%s stands under %s in %s of the table: one genus has one family", d.genus, as.text, plural(as.count, "other record")),
		})
	}
	return all
}
