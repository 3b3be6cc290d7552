package job

import (
	"fmt"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/register"
)

// issueScope is what says which specimen a record is of. A wrong latitude is no
// reason to withhold a number; a wrong collector's number is.
var issueScope = &scope{
	terms: map[string]bool{
		"catalogNumber": true, "occurrenceID": true, "institutionCode": true, "ownerInstitutionCode": true, "recordedBy": true, "coCollectors": true,
		"recordNumber": true, "eventDate": true, "year": true, "month": true, "day": true, "verbatimEventDate": true, "preparations": true,
		"materialEntityID": true, "materialSampleID": true,
	},
	not: []string{"collector-missing", "number-missing", "name-missing", "date-missing", "catalogue-number-letters"},
}

// specimenRow is a record that may be given a number.
type specimenRow struct {
	register.Specimen
	key      string
	part     string // "sheet 1 of 2", where it is a part of a specimen
	entity   string // materialEntityID
	written  string // catalogNumber as the table has it
	identity string // occurrenceID as the table has it
	other    bool   // another house's
	bad      bool   // what says who it is has an error
	chosen   bool   // by --only; that of any of its records for the first of a specimen
	share    int    // index of an earlier record of the same specimen; its own if it is the first
	err      error
}

// row counts the table's records from 1.
func (r *specimenRow) row() int { return r.Origin.Row }

// fail keeps the first reason why a record gets no number.
func (r *specimenRow) fail(kind error, format string, args ...any) {
	if r.err == nil {
		r.err = &rowError{kind, fmt.Sprintf("%s: %s: %s", r.Origin, r.key, fmt.Sprintf(format, args...))}
	}
}

// A rowError is why a record gets no number, of one of the register's kinds.
type rowError struct {
	kind error
	text string
}

func (e *rowError) Error() string { return e.text }
func (e *rowError) Unwrap() error { return e.kind }

// specimenRows are all records of a table, in order.
type specimenRows struct {
	rows   []specimenRow
	byRow  map[int]int // row of the table to index
	fatal  bool        // the table itself has an error
	others rowSet      // rows with errors that do not matter here
	count  int         // of them
}

// specimens reads the table for numbers; say hears of what makes it doubtful
// which specimen a record is of. own is the code by which institutionCode means
// this house.
func (j *Job) specimens(t *Table, own string, say func(label.Finding) error) (*specimenRows, error) {
	all := &specimenRows{byRow: map[int]int{}}
	pass := func(r *check.Record) {
		if r.Empty() {
			return
		}
		s := specimenRow{Specimen: kept(specimenOf(r)), key: r.Key(), part: r.PartOfMore(), other: otherHouse(r, own)}
		if s.entity = strings.Clone(r.Text("materialEntityID")); s.entity == "" {
			s.entity = strings.Clone(r.Text("materialSampleID"))
		}
		s.chosen = t.Only.Match(r)
		s.written, s.identity, s.share = s.CatalogNumber, s.OccurrenceID, len(all.rows)
		all.byRow[r.Row] = len(all.rows)
		all.rows = append(all.rows, s)
	}
	_, err := j.checkTold(t, nil, pass, func(f label.Finding, _ *check.Record) error {
		i, ok := all.byRow[f.Row]
		switch {
		case ok && all.rows[i].other:
			return nil
		case issueScope.concerns(f):
			if f.Severity == label.Error && ok {
				all.rows[i].bad = true
			} else if f.Severity == label.Error {
				all.fatal = true
			}
			return say(f)
		case f.Severity == label.Error && ok && !all.others.has(f.Row):
			all.others.add(f.Row)
			all.count++
		}
		return nil
	})
	return all, err
}

// kept returns a specimen that does not hold its whole row in memory.
func kept(s register.Specimen) register.Specimen {
	for _, text := range []*string{&s.OccurrenceID, &s.CatalogNumber, &s.Collector, &s.Number, &s.Date, &s.Name} {
		*text = strings.Clone(*text)
	}
	return s
}

// otherHouse reports whether a record says that another house keeps or owns the
// specimen.
func otherHouse(r *check.Record, own string) bool {
	for _, term := range []string{"institutionCode", "ownerInstitutionCode"} {
		if code := r.Text(term); code != "" && own != "" && !strings.EqualFold(code, own) {
			return true
		}
	}
	return false
}

// ownCode is the code by which records name this house; a house that has not
// said it is known by its series.
func (j *Job) ownCode(s register.Series) string {
	if code := j.House.Herbarium.Code; code != "" {
		return code
	}
	return s.Pattern.Code
}

// share finds the records that the table declares to be one specimen: they have
// the same occurrenceID or materialEntityID, or say which of how many parts of
// one gathering they hold, each another. The register is asked about them once.
func (all *specimenRows) share() {
	byKey := map[string][]int{}
	var keys []string
	for i := range all.rows {
		r := &all.rows[i]
		if r.other || r.bad {
			continue
		}
		for _, key := range r.sharing() {
			if byKey[key] == nil {
				keys = append(keys, key)
			}
			byKey[key] = append(byKey[key], i)
		}
	}
	for _, key := range keys {
		group := byKey[key]
		if len(group) < 2 || strings.HasPrefix(key, sharedParts) && !all.partsOfOne(group) {
			continue
		}
		for _, i := range group[1:] {
			a, b := all.first(group[0]), all.first(i)
			all.rows[max(a, b)].share = min(a, b)
		}
	}
	groups := map[int][]int{}
	for i := range all.rows {
		first := all.first(i)
		all.rows[i].share = first
		all.rows[first].chosen = all.rows[first].chosen || all.rows[i].chosen
		groups[first] = append(groups[first], i)
	}
	for i := range all.rows {
		if group := groups[i]; len(group) > 1 {
			all.join(group)
		}
	}
}

// sharedParts begins the key of records that may be parts of one specimen.
const sharedParts = "parts\x00"

// sharing returns what records of one specimen have in common.
func (r *specimenRow) sharing() []string {
	var keys []string
	if r.OccurrenceID != "" {
		keys = append(keys, "occurrence\x00"+r.OccurrenceID)
	}
	if r.entity != "" {
		keys = append(keys, "entity\x00"+r.entity)
	}
	if gathering := r.Gathering(); gathering != "" && r.part != "" {
		keys = append(keys, sharedParts+gathering)
	}
	return keys
}

// first returns the first record of the specimen that record i is of.
func (all *specimenRows) first(i int) int {
	for all.rows[i].share != i {
		i = all.rows[i].share
	}
	return i
}

// partsOfOne reports whether records of one gathering that each hold a part are
// one specimen. Two records of the same sheet are two specimens, or a slip; so
// are parts with identifiers of their own.
func (all *specimenRows) partsOfOne(group []int) bool {
	if _, _, found := all.contradicting(group); found {
		return false
	}
	parts, ids := map[string]bool{}, map[string]bool{}
	_, of, _ := strings.Cut(all.rows[group[0]].part, " of ")
	for _, i := range group {
		r := &all.rows[i]
		_, its, _ := strings.Cut(r.part, " of ")
		if parts[r.part] || its != of {
			return false
		}
		parts[r.part] = true
		if r.OccurrenceID != "" {
			ids["occurrence "+r.OccurrenceID] = true
		}
		if r.entity != "" {
			ids["entity "+r.entity] = true
		}
	}
	for _, i := range group {
		all.rows[i].Shared = true // two identifiers for one specimen are for the register to refuse
	}
	return len(ids) < 2
}

// gatheringSays are the things that two records of one specimen must agree in,
// each as a key; "" where a record does not say it.
var gatheringSays = [3]func(register.Specimen) string{
	func(s register.Specimen) string {
		return register.Specimen{Collector: s.Collector, Number: "1"}.Gathering()
	},
	func(s register.Specimen) string {
		return register.Specimen{Collector: "x", Number: s.Number}.Gathering()
	},
	func(s register.Specimen) string { return s.Date },
}

// contradicting returns two records of a group that say different things of who
// collected it, under which number or when. What only one says is no
// contradiction.
func (all *specimenRows) contradicting(group []int) (one, other int, found bool) {
	first := [len(gatheringSays)]int{-1, -1, -1} // who says it first
	for _, i := range group {
		for w, says := range gatheringSays {
			key := says(all.rows[i].Specimen)
			switch {
			case key == "":
			case first[w] < 0:
				first[w] = i
			case says(all.rows[first[w]].Specimen) != key:
				return first[w], i, true
			}
		}
	}
	return 0, 0, false
}

// join makes a group of records one specimen: its first gets what the others
// know. Where they contradict each other all get the reason why they can have no
// number.
func (all *specimenRows) join(group []int) {
	if one, other, found := all.contradicting(group); found {
		for _, i := range group {
			with := one
			if i == one {
				with = other
			}
			all.rows[i].fail(register.ErrClash, "it has the identifier of line %d, %s, and is of another gathering; each specimen needs its own", all.rows[with].Origin.Line, all.rows[with].key)
		}
		return
	}
	one := &all.rows[group[0]].Specimen
	for _, i := range group {
		s := &all.rows[i].Specimen
		if one.CatalogNumber != "" && s.CatalogNumber != "" && one.CatalogNumber != s.CatalogNumber {
			for _, k := range group {
				all.rows[k].fail(register.ErrClash, "line %d is the same specimen by its identifier or preparations, and two numbers stand there, %s and %s", all.rows[i].Origin.Line, one.CatalogNumber, s.CatalogNumber)
			}
		}
		if gatheringSays[0](*one) == "" {
			one.Collector = s.Collector
		}
		if gatheringSays[1](*one) == "" {
			one.Number = s.Number
		}
		for _, fill := range [][2]*string{{&one.CatalogNumber, &s.CatalogNumber}, {&one.OccurrenceID, &s.OccurrenceID}, {&one.Date, &s.Date}, {&one.Name, &s.Name}} {
			if *fill[0] == "" {
				*fill[0] = *fill[1]
			}
		}
	}
	for _, i := range group[1:] {
		origin := all.rows[i].Origin
		all.rows[i].Specimen = *one
		all.rows[i].Origin = origin
	}
}

// tellApart finds the records that nothing tells from others of their
// gathering: the register would take the first for the specimen it knows and
// complain of the others only, but any of them may be that specimen.
func (all *specimenRows) tellApart(answers map[int]register.Assignment) {
	byGathering := map[string][]int{}
	for i := range all.rows {
		if key := all.rows[i].Gathering(); key != "" && !all.rows[i].other && !answers[all.rows[i].share].Foreign {
			byGathering[key] = append(byGathering[key], i)
		}
	}
	for i := range all.rows {
		if key := all.rows[i].Gathering(); key != "" && len(byGathering[key]) > 1 {
			all.among(byGathering[key])
			delete(byGathering, key)
		}
	}
}

// among looks at the records of one gathering.
func (all *specimenRows) among(group []int) {
	nameless := -1 // the first without number and identifier
	for _, i := range group {
		if r := &all.rows[i]; r.CatalogNumber == "" && r.OccurrenceID == "" {
			nameless = i
			break
		}
	}
	if nameless < 0 {
		return
	}
	for _, i := range group {
		r := &all.rows[i]
		if r.CatalogNumber != "" || r.bad {
			continue
		}
		for _, k := range group {
			other := &all.rows[k]
			if k == i || other.share == r.share {
				continue
			}
			if r.OccurrenceID != "" && (other.OccurrenceID != "" || other.CatalogNumber != "") {
				continue
			}
			switch {
			case r.OccurrenceID != "":
				r.fail(register.ErrAmbiguous, "line %d is of the same gathering and has no identifier; give it an occurrenceID first, for the two could be taken for each other", other.Origin.Line)
			case other.bad:
				r.fail(register.ErrAmbiguous, "nothing tells it from line %d, which has an error; mend that line first, or give this one an occurrenceID", other.Origin.Line)
			default:
				r.fail(register.ErrAmbiguous, "nothing tells it from line %d; give each an occurrenceID, or, if they are parts of one specimen, say in preparations which: sheet 1 of 2", other.Origin.Line)
			}
			break
		}
	}
}
