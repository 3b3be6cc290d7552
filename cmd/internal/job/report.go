package job

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/form"
	"cornerslip/label/table"
)

// A Remark is a finding as it may leave the house.
type Remark struct {
	label.Finding
	// Key is how people name the specimen, "I. Almeida 214"; "" for a remark on
	// the table's head, and where the row is of another table.
	Key string
	// Withheld is true where value, suggestion and the particulars of the message
	// were taken out because they lead to a place that is kept back.
	Withheld bool
}

// Remarks is Check for what is handed on: places that are withheld from the
// labels of duplicates are withheld from the remarks as well, those of q's
// identifications included. withheld counts the remarks that lost something.
func (j *Job) Remarks(t *Table, q Request, each func(Remark) error) (s Summary, withheld int, err error) {
	d, err := j.discretion(t)
	if err != nil {
		return Summary{}, 0, err
	}
	say := func(f label.Finding, r *check.Record) error {
		m := d.remark(f, r)
		if m.Withheld {
			withheld++
		}
		return each(m)
	}
	var late []label.Finding // of records that have gone by
	s, err = j.checkTold(t, nil, d.pass, func(f label.Finding, r *check.Record) error {
		if r == nil && f.Row > 0 {
			late = append(late, f)
			return nil
		}
		return say(f, r)
	})
	if err != nil {
		return s, withheld, err
	}
	slices.SortStableFunc(late, func(a, b label.Finding) int { return a.Row - b.Row })
	if len(late) > 0 {
		err = j.revisit(t, func(r *check.Record) error {
			for len(late) > 0 && late[0].Row == r.Row {
				if err := say(late[0], r); err != nil {
					return err
				}
				late = late[1:]
			}
			return nil
		})
		if err != nil {
			return s, withheld, err
		}
		if t.Digest() != s.Digest {
			return s, withheld, fmt.Errorf("%s was changed while it was being checked; run the command again", t.Source().Name())
		}
	}
	d.other = true
	ids, err := j.CheckIdentifications(t, q, func(f label.Finding) error { return say(f, nil) })
	s.Errors, s.Warnings, s.Notes = s.Errors+ids.Errors, s.Warnings+ids.Warnings, s.Notes+ids.Notes
	return s, withheld, err
}

// discretion keeps places out of remarks that must not leave the house.
type discretion struct {
	j     *Job
	docs  map[string]string // of rules by name
	rows  rowSet            // records whose place is withheld
	any   bool              // there is such a record
	other bool              // the remarks are of another table, whose records are not known
}

func (j *Job) discretion(t *Table) (*discretion, error) {
	rules, err := j.Rules()
	if err != nil {
		return nil, err
	}
	d := &discretion{j: j, docs: map[string]string{}}
	for _, r := range rules {
		d.docs[r.Name] = r.Doc
	}
	for _, r := range table.Rules() {
		d.docs[r.Name] = r.Doc
	}
	return d, nil
}

// pass notes which records have a place that is withheld.
func (d *discretion) pass(r *check.Record) {
	if d.j.coarsened(r) {
		d.rows.add(r.Row)
		d.any = true
	}
}

// remark makes a finding fit to leave the house. r is its record, nil for the
// table's head and other tables.
func (d *discretion) remark(f label.Finding, r *check.Record) Remark {
	m := Remark{Finding: f}
	if r != nil && !r.Empty() {
		m.Key = r.Key()
	}
	if f.Row == 0 || !d.any || !d.tells(f, r) {
		return m
	}
	m.Withheld = true
	m.Value, m.Suggest, m.Message = "", "", d.docs[f.Rule]+" (the exact place is withheld from reports)"
	return m
}

// figures are distances, heights and coordinates in a message.
var figures = regexp.MustCompile(`\d ?(m|km|ft|miles?)\b|\d[.,]\d\d|°|\d{4,} ?[NS]\b`)

// tells reports whether a finding tells a place that is withheld.
func (d *discretion) tells(f label.Finding, r *check.Record) bool {
	if d.other { // which record a row belongs to is not known here: names, people and numbers say no place
		return f.Value+f.Suggest != "" && (!slipTerms[f.Term] || f.Term == "identificationRemarks")
	}
	about := d.rows.has(f.Row)
	for _, c := range f.Also {
		about = about || d.rows.has(c.Row)
	}
	if !about {
		return false
	}
	said := f.Value + "\n" + f.Message + "\n" + f.Suggest
	if form.KeptBack(r, f.Term, said) || figures.MatchString(f.Message+"\n"+f.Suggest) {
		return true
	}
	// A row whose cells do not stand under their headings may show any of them.
	if f.Term == "" && f.Value != "" {
		return true
	}
	for term, cell := range r.Terms {
		if len(cell.Text) > 2 && form.KeptBack(r, term, "") && strings.Contains(said, cell.Text) && !coarse(r, cell.Text) {
			return true
		}
	}
	return false
}

// coarse reports whether text is what the record may say of its place: the
// country or the province.
func coarse(r *check.Record, text string) bool {
	for _, term := range []string{"country", "countryCode", "stateProvince", "continent"} {
		if r.Text(term) == text {
			return true
		}
	}
	return false
}
