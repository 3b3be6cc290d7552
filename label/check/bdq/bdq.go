// Package bdq answers the TDWG Biodiversity Data Quality Core tests: for each
// record what the standard calls a response, and for the check a rule under
// each test's standard label.
//
// The standard has tests that need a service to look things up (names, places
// by their coordinates); those are left out. The 61 that a record answers
// alone, with lists that do not change from day to day, are in scope, and 24
// more that ask for terms no label has.
//
// Source: tdwg/bdq, tg2/core/TG2_tests.csv of March 2025 (CC BY 4.0), restated
// here; default values of the tests' parameters throughout.
package bdq

import (
	"encoding/json"
	"iter"
	"slices"
	"strings"

	"cornerslip/label/check"
	"cornerslip/label/date"
	"cornerslip/label/table"
)

// What a test does, in the standard's words.
const (
	KindValidation = "Validation"
	KindAmendment  = "Amendment"
	KindIssue      = "Issue"
	KindMeasure    = "Measure"
)

// The statuses and results of responses, in the standard's words.
const (
	RunHasResult   = "RUN_HAS_RESULT"
	InternalNotMet = "INTERNAL_PREREQUISITES_NOT_MET"
	ExternalNotMet = "EXTERNAL_PREREQUISITES_NOT_MET" // never: no list of ours is out of reach
	Amended        = "AMENDED"
	FilledIn       = "FILLED_IN"
	NotAmended     = "NOT_AMENDED"
	Compliant      = "COMPLIANT"
	NotCompliant   = "NOT_COMPLIANT"
	PotentialIssue = "POTENTIAL_ISSUE"
	NotIssue       = "NOT_ISSUE"
)

// A Response is a test's answer for one record.
type Response struct {
	Status string
	// Result is COMPLIANT or NOT_COMPLIANT where the status is RUN_HAS_RESULT
	// (POTENTIAL_ISSUE or NOT_ISSUE of an issue, a number of a measure), else
	// "".
	Result string
	// Amended are the proposed values where the status is AMENDED or FILLED_IN.
	Amended Changes
}

// Changes are proposed values, in the order of their terms.
type Changes []Change

// A Change is a value that a test proposes for a term, which has its prefix:
// "dwc:eventDate".
type Change struct{ Term, Value string }

// MarshalJSON writes an object of terms and values.
func (c Changes) MarshalJSON() ([]byte, error) {
	m := make(map[string]string, len(c))
	for _, one := range c {
		m[one.Term] = one.Value
	}
	return json.Marshal(m)
}

// The responses without values of their own.
var (
	compliant      = Response{Status: RunHasResult, Result: Compliant}
	notCompliant   = Response{Status: RunHasResult, Result: NotCompliant}
	internalNotMet = Response{Status: InternalNotMet}
	notAmended     = Response{Status: NotAmended}
)

func complies(ok bool) Response {
	if ok {
		return compliant
	}
	return notCompliant
}

// changed makes the response of an amendment from pairs of bare term and value.
func changed(status string, pairs ...string) Response {
	all := make(Changes, 0, len(pairs)/2)
	for i := 0; i < len(pairs); i += 2 {
		all = append(all, Change{Prefixed(pairs[i]), pairs[i+1]})
	}
	if len(all) > 1 {
		slices.SortFunc(all, func(a, b Change) int { return strings.Compare(a.Term, b.Term) })
	}
	return Response{Status: status, Amended: all}
}

// Prefixed returns a term with the prefix of its namespace: "dwc:country",
// "dcterms:license".
func Prefixed(term string) string {
	if s, ok := amendable[term]; ok {
		return s
	}
	return prefixed(term)
}

// amendable are the terms that amendments give values to, with their prefixes.
var amendable = func() map[string]string {
	m := map[string]string{}
	for term := range strings.FieldsSeq(`basisOfRecord license countryCode geodeticDatum establishmentMeans typeStatus taxonRank coordinateUncertaintyInMeters
		decimalLatitude decimalLongitude minimumElevationInMeters maximumElevationInMeters eventDate dateIdentified year month day startDayOfYear endDayOfYear
		type degreeOfEstablishment occurrenceStatus pathway sex minimumDepthInMeters maximumDepthInMeters`) {
		m[term] = prefixed(term)
	}
	return m
}()

func prefixed(term string) string {
	switch term {
	case "license":
		return "dcterms:" + term
	case "type":
		return "dc:" + term
	}
	return "dwc:" + term
}

func bare(term string) string { return term[strings.IndexByte(term, ':')+1:] }

// A Test is one test of the standard.
type Test struct {
	Label string // VALIDATION_COUNTRYCODE_STANDARD
	GUID  string // the standard's identifier of the test
	Doc   string // one sentence: what it asks
	Kind  string // KindValidation, KindAmendment, KindIssue or KindMeasure
	// Acts and Consults are the bare terms that the test acts upon and looks
	// at besides.
	Acts, Consults []string
	// Answer answers for one record. It may be called from many goroutines,
	// each with cells of its own.
	Answer func(*Cells) Response

	rule speech
}

// Tests returns the tests, those in scope first, each list in the order of
// record, place, time and name.
func Tests() []Test {
	var all []Test
	for _, group := range [][]Test{filledTests(), listTests(), numberTests(), coordinateTests(), dateTests(), partTests(), dateAmendments(), nameTests(),
		optionalFilled(), optionalLists(), optionalDepths()} {
		all = append(all, group...)
	}
	return all
}

// An Answer is a test's response for a record: one line of `check --responses`.
type Answer struct {
	Row   int // records from 1
	Label string
	Response
}

// MarshalJSON writes the object with the fields row, test, status and result;
// result is a string, "" if there is none, or an object of prefixed terms and
// their proposed values, sorted by term.
func (a Answer) MarshalJSON() ([]byte, error) {
	var result any = a.Result
	if len(a.Amended) > 0 {
		result = a.Amended
	}
	return json.Marshal(struct {
		Row    int    `json:"row"`
		Test   string `json:"test"`
		Status string `json:"status"`
		Result any    `json:"result"`
	}{a.Row, a.Label, a.Status, result})
}

// Responses yields the answer of every test for a record, in the order of
// Tests, whatever the row looks like. Today is the day that "not in the
// future" is held against; the zero Date sets no such limit.
func Responses(row *table.Row, today date.Date) iter.Seq[Answer] {
	return respond(Tests(), row, today)
}

// Responder is Responses for many rows: it makes the list of tests once.
func Responder(today date.Date) func(*table.Row) iter.Seq[Answer] {
	tests := Tests()
	return func(row *table.Row) iter.Seq[Answer] { return respond(tests, row, today) }
}

func respond(tests []Test, row *table.Row, today date.Date) iter.Seq[Answer] {
	return func(yield func(Answer) bool) {
		c := RowCells(row, today)
		for i := range tests {
			if !yield(Answer{row.N, tests[i].Label, tests[i].Answer(c)}) {
				return
			}
		}
	}
}

// shared returns the cells of the record that rules look at, made once a
// record.
func shared(c *check.Context) *Cells { return sharedCells.Of(c, readCells) }

var sharedCells = check.NewMemo[Cells]()

func readCells(c *check.Context, cells *Cells) {
	if cells.text == nil {
		*cells = *NewCells(c.CellText, c.Options.Today)
	}
	cells.dates = [2]dateCell{}
	if c.Options.Dates != (date.Hints{}) {
		return
	}
	for i, r := range []*check.DateReading{&c.EventDate, &c.DateIdentified} { // the check has read the dates as the tests do
		if term := [...]string{"eventDate", "dateIdentified"}[i]; r.Term == term && !r.ByLanguage && r.Text == cells.trimmed(term) {
			cells.dates[i].read, cells.dates[i].reading = true, r.Reading
		}
	}
}
