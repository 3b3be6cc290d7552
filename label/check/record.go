// Package check turns rows of a table into records fit to print, and says what
// is wrong with them. A rule is a value: a name, a sentence, an example that
// raises exactly it and one that does not. The rules of this package are those
// every label needs; lists of further rules come in as Options.Rules.
package check

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/coord"
	"cornerslip/label/date"
	"cornerslip/label/name"
)

// A Field is one cell fit to print: its text as written, trimmed at the ends
// only, and where it stood.
type Field struct {
	Text   string
	Origin label.Origin
}

// A Record is one row of the table read for printing: one specimen, its parts
// in Preparations. Values that could not be read are zero and have a finding;
// what was written stays in Field.
type Record struct {
	Row    int          // from 1
	Origin label.Origin // the row; Term is ""

	fields []entry
	first  [256]uint8      // by termSlot: the first of them that has it, from 1
	marks  Marks           // of all of them
	said   []label.Finding // of the row alone
	errors int             // findings of severity error
	faulty bool            // some are more than notes
	empty  bool
	coded  bool // cells hold the table's code for an empty one
	astray bool // its cells stand under other headings than they were meant for

	// Name is scientificName as it is to be printed, with
	// identificationQualifier before the epithet it doubts; "" where the
	// plant is unnamed and the label leaves a line to write on. Parts are the
	// name's other columns, for setting it in italics.
	Name  string
	Parts name.Parts

	// Date is when it was collected: eventDate, else year, month and day,
	// else verbatimEventDate. Zero prints as s.d., unless DateText is set.
	Date date.Date
	// DateText is a date that is printed as written, since it has no one
	// reading, as "Whitsun 1912", or says more than Date: "early June 1911".
	DateText string
	// DateTerm is the column that Date or DateText is from, "" if there is none;
	// "year" or "month" stands for the three together.
	DateTerm string
	doubts   [2]doubt // of dateTerms
	// Identified is when it was determined, IdentifiedText as DateText.
	Identified     date.Date
	IdentifiedText string

	// Coordinates hold if HasCoordinates. CoordinatesText is set instead
	// where only verbatim coordinates exist that have no one reading, and is
	// printed as written.
	Coordinates    coord.Point
	HasCoordinates bool
	// CoordinatesWritten is what the label prints in place of Coordinates: the
	// cells as they are, since they say more. "" where they do not.
	CoordinatesWritten string
	CoordinatesText    string
	// Datum is geodeticDatum, else verbatimSRS; "" if not stated.
	Datum string
	// Survey is the place in a survey of townships, MapSheet the sheet of a
	// map, as the label says them.
	Survey, MapSheet string
	// Uncertainty is coordinateUncertaintyInMeters in metres; 0 is not stated.
	Uncertainty float64

	// Elevation holds if HasElevation: from the columns in metres, else read
	// from verbatimElevation. ElevationText is set instead where only a
	// verbatim elevation exists that has no one reading.
	Elevation     coord.Elevation
	HasElevation  bool
	ElevationText string
	thousands     [4]bool // heights whose point may part thousands, by column
	// DepthText is a depth with its unit where the columns in metres are not
	// filled but those that name another are.
	DepthText string

	// Placeless is true where no column says a place and the label writes
	// s.loc.
	Placeless bool

	// Collector is the first of recordedBy, as written; "" prints as s.coll.
	// Others are the rest.
	Collector string
	Others    []string
	// Number is recordNumber as written, but for the collector's own name before it;
	// "" prints as s.n.
	Number string

	// Preparations are the parts; one sheet where the record says nothing.
	Preparations []Preparation
	// Copies is how many labels of its own the specimen gets, 1 if not said.
	Copies int
	// DuplicatesTo are the codes of the herbaria that get a duplicate, in
	// the order written.
	DuplicatesTo []string
}

// entry is a filled cell. Records have some twenty, so a search along the
// slice is quicker than a map.
type entry struct {
	term string
	Field
	written string // with the blanks around it
	marks   Marks
	next    uint8 // of the same termSlot, from 1
}

// Field returns the cell of any Darwin Core term or documented column of
// ours; the zero Field if it is empty or the table has no such column.
func (r *Record) Field(term string) Field {
	if e := r.entry(term); e != nil {
		return e.Field
	}
	return Field{}
}

// Text returns Field(term).Text.
func (r *Record) Text(term string) string {
	if e := r.entry(term); e != nil {
		return e.Text
	}
	return ""
}

// entry finds a cell. Rules ask for many terms that a record has not: most have a
// slot to themselves. Beyond 254 cells, which hardly a table has, all are looked at.
func (r *Record) entry(term string) *entry {
	i := r.first[termSlot(term)]
	for i > 0 && i < math.MaxUint8 {
		e := &r.fields[i-1]
		if e.term == term {
			return e
		}
		i = e.next
	}
	if i == math.MaxUint8 {
		for k := math.MaxUint8 - 1; k < len(r.fields); k++ {
			if r.fields[k].term == term {
				return &r.fields[k]
			}
		}
	}
	return nil
}

// put adds a cell. Where a term stands twice, the first is found.
func (r *Record) put(e entry) {
	n := uint8(min(len(r.fields)+1, math.MaxUint8))
	to := &r.first[termSlot(e.term)]
	for *to > 0 && *to < math.MaxUint8 {
		to = &r.fields[*to-1].next
	}
	*to = n
	r.marks |= e.marks
	r.fields = append(r.fields, e)
}

// termSlot is which of 256 slots a term falls into.
func termSlot(term string) uint8 {
	n := len(term)
	if n < 2 {
		return uint8(n)
	}
	return uint8(n) ^ term[0]<<5 ^ term[1]*3 ^ term[n/2]*7 ^ term[n-2]*31 ^ term[n-1]*13
}

// Texts yields the terms and texts of the filled cells in the order of the columns.
func (r *Record) Texts(yield func(term, text string) bool) {
	for i := range r.fields {
		if e := &r.fields[i]; !yield(e.term, e.Text) {
			return
		}
	}
}

// Terms yields the terms of the filled cells in the order of the columns.
func (r *Record) Terms(yield func(term string, f Field) bool) {
	for i := range r.fields {
		if e := &r.fields[i]; !yield(e.term, e.Field) {
			return
		}
	}
}

// Coded reports whether a cell holds a code that the table writes into empty
// cells, such as NA.
func (r *Record) Coded() bool { return r.coded }

// Printable reports whether the row has no finding of severity error of its
// own and is not empty. Findings that End returns name their rows themselves.
func (r *Record) Printable() bool { return r.errors == 0 && !r.empty }

// Doubted reports whether a rule that looked at the record alone has found fault
// with a cell of one of the terms. A rule of the whole table has then nothing to
// say of it, since one fault is said once. Notes are no faults.
func (r *Record) Doubted(terms ...string) bool {
	if !r.faulty {
		return false
	}
	for i := range r.said {
		if f := &r.said[i]; f.Severity > label.Note && slices.Contains(terms, f.Term) {
			return true
		}
	}
	return false
}

// Empty reports whether no cell of the row is filled.
func (r *Record) Empty() bool { return r.empty }

// Key is how people name the specimen: collector and number as the trade
// writes them, "I. Almeida 214", "s.coll. s.n.".
func (r *Record) Key() string {
	who, number := r.Collector, r.Number
	if who == "" {
		who = "s.coll."
	}
	if number == "" {
		number = "s.n."
	}
	return who + " " + number
}

// Count returns how many preparations are of a kind.
func (r *Record) Count(kind PreparationKind) int {
	n := 0
	for _, p := range r.Preparations {
		if p.Kind == kind {
			n++
		}
	}
	return n
}

// PartOfMore says which parts of its specimen the record holds where others have
// records of their own, "sheet 1 of 2"; "" where the record is of the whole
// specimen.
func (r *Record) PartOfMore() string {
	var all []string
	for _, p := range r.Preparations {
		if p.Elsewhere {
			all = append(all, fmt.Sprintf("%s %d of %d", p.Kind, p.N, p.Of))
		}
	}
	return strings.Join(all, ", ")
}

// typedAbsence are the words by which people write that nothing is known, in
// Latin or with the stroke of Portuguese and Spanish tables: they mean what they
// say and are no fault. Common practice, no source.
var typedAbsence = map[string][]string{
	"eventDate":  {"s.d.", "s/d", "s.f.", "s/f", "s.dat."},
	"locality":   {"s.l.", "s/l", "s.loc."},
	"recordedBy": {"s.coll.", "s.col.", "s.leg.", "s/col.", "s/coll.", "s/leg.", "s/c"},
}

// Absent reports whether text is the trade's word for nothing in this column,
// however spaced or capitalised: s.l., s.n., s.d.
func Absent(term, text string) bool {
	if text == "" || len(text) > 18 {
		return false
	}
	first := text[0] | 0x20 // small; of a square bracket the curly one
	if term == "recordNumber" {
		return strings.IndexByte("sonwuz({", first) >= 0 && numberless[withoutSigns(text)]
	}
	if first != 's' || len(text) > 12 { // as all of them begin
		return false
	}
	squeezed := strings.ToLower(strings.ReplaceAll(text, " ", ""))
	for _, w := range typedAbsence[term] {
		if squeezed == w || squeezed+"." == w {
			return true
		}
	}
	return false
}

// numberless are the ways to write that there is no collector's number, without
// the signs in them: s/nº, s. nr., sin número, o.Nr., z.n. Common practice, no
// source.
var numberless = setOf(`
	sn sno snº snr snum snúm snumber snumero snúmero sineno sinenum sinenumero
	sansn sansno sansnº sansnum sansnumero sansnuméro sinn sinno sinnº sinnum sinnúm sinnumero sinnúmero
	semn semno semnº semnum semnúm semnumero semnúmero senzan senzano senzanº senzanum senzanumero
	onr ohnenr ohnenummer zn znr zondernr zondernummer nonum nonumber withoutnumber unnumbered`)

func setOf(words string) map[string]bool {
	all := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		all[w] = true
	}
	return all
}

// withoutSigns leaves the letters of a text, small, with º for each of the signs
// that stand for the o of no.
func withoutSigns(text string) string {
	return strings.Map(func(r rune) rune {
		switch r {
		case ' ', '\u00a0', '.', '/', '-', '(', ')', '[', ']':
			return -1
		case '°', '˚', 'º', 'ª', '\u1d52':
			return 'º'
		}
		return unicode.ToLower(r)
	}, text)
}
