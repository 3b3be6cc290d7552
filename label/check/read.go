package check

import (
	"slices"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/table"
)

// read makes the record of a row, as far as it can be read. What cannot is
// left in the Context for the rules.
func (c *Context) read(row *table.Row) {
	c.Row, c.Origin, c.row = row.N, row.Origin(""), row
	c.coded = false
	if c.empty = row.Aside; c.empty {
		return // it is no record
	}
	c.readFields()
	c.empty = len(c.fields) == 0 && len(c.Placeholders) == 0
	c.readPeople()
	c.readName()
	c.readDates()
	c.readPlace()
	c.readHeights()
	c.readPreparations()
}

// readFields keeps the filled cells. Columns without a cell in the file have
// a default value, which an archive's description may give.
func (c *Context) readFields() {
	columns := c.row.Table().Columns()
	if cap(c.fields) < len(columns) {
		c.fields = make([]entry, 0, len(columns))
	}
	for i := range columns {
		term := columns[i].Term
		var cell table.Cell
		if c.row.Follows(i) {
			continue // read with a column before it
		}
		if i < len(c.row.Cells) {
			cell, term = c.row.Cells[i], c.row.Term(i)
		}
		if columns[i].Shared() {
			cell = c.row.Get(term)
		}
		if strings.TrimSpace(cell.Text) == "" {
			cell = c.row.Get(term)
		}
		if columns[i].Joined && strings.Trim(cell.Text, "_ ") != "" {
			cell.Text = strings.Join(strings.FieldsFunc(cell.Text, func(r rune) bool { return r == '_' }), " ")
		}
		seen := c.past.cell(i, term, cell.Text)
		if seen.text == "" {
			continue
		}
		f := Field{Text: seen.text, Origin: label.Origin{File: c.Origin.File, Line: cell.Line, Column: cell.Column, Row: c.row.N, Term: term}}
		if !c.Options.KeepPlaceholders && c.emptyCode(term, seen.text) {
			c.coded = true
			continue // the table says so at its head
		}
		if seen.placeholder && !c.isTown(term, seen.text) || c.namesNothing(term, seen.text) {
			if columns[i].Known { // what nobody prints need not be cleared
				c.Placeholders = append(c.Placeholders, f)
			}
			if !c.keeps(term) {
				continue
			}
		}
		c.put(entry{term: term, Field: f, written: cell.Text, marks: seen.marks})
	}
	c.readVoucher()
}

// readAs reads a text of a cell as the cell of another term.
func (c *Context) readAs(f Field, term, text string) {
	f.Text, f.Origin.Term = text, term
	c.put(entry{term: term, Field: f, written: text, marks: marksOf(text, text, c.past.looksAt(term))})
}

// longestWord is the surname of a collector, most likely.
func longestWord(s string) string {
	long := ""
	for _, w := range personWords(s) {
		if len(w) > len(long) {
			long = w
		}
	}
	return long
}

// personWords are the words of a person's name; stops part them.
func personWords(s string) []string {
	return strings.FieldsFunc(s, func(r rune) bool { return !unicode.IsLetter(r) && r != '-' && r != '\'' })
}

// emptyCode reports whether the whole table writes such a text into empty cells.
func (c *Context) emptyCode(term, text string) bool {
	if table.IsZero(text) && c.row.Table().ZeroFilled(term) && c.zeroHeight(term) {
		return true
	}
	if len(text) > 20 || !c.row.Table().EmptyCode(text) {
		return false
	}
	says := speaking[term]
	return says == nil || !says(text)
}

// zeroHeight reports whether 0 in a column of height or depth says nothing, in a
// table that writes it so: the other of the two columns is 0 or empty, too, or lies
// above an upper height of 0. From 0 to 30 m is a height.
func (c *Context) zeroHeight(term string) bool {
	other := ""
	switch term {
	case "minimumElevationInMeters":
		other = "maximumElevationInMeters"
	case "maximumElevationInMeters":
		low := strings.TrimSpace(c.row.Text("minimumElevationInMeters"))
		return !strings.HasPrefix(low, "-")
	case "minimumDepthInMeters":
		other = "maximumDepthInMeters"
	case "maximumDepthInMeters":
		other = "minimumDepthInMeters"
	default:
		return false
	}
	text := strings.TrimSpace(c.row.Text(other))
	return text == "" || table.IsZero(text)
}

// readAsValue are the columns that hold a date, a number or a list: what says
// nothing there is never printed.
var readAsValue = map[string]bool{
	"eventDate": true, "year": true, "month": true, "day": true, "dateIdentified": true,
	"decimalLatitude": true, "decimalLongitude": true, "verbatimLatitude": true, "verbatimLongitude": true, "verbatimCoordinates": true,
	"coordinateUncertaintyInMeters": true, "geodeticDatum": true,
	"latitudeDegrees": true, "latitudeMinutes": true, "latitudeSeconds": true, "latitudeHemisphere": true,
	"longitudeDegrees": true, "longitudeMinutes": true, "longitudeSeconds": true, "longitudeHemisphere": true,
	"utmZone": true, "utmBand": true, "easting": true, "northing": true, "gridSquare": true,
	"minimumElevationInMeters": true, "maximumElevationInMeters": true, "verbatimElevation": true,
	"preparations": true, "copies": true, "duplicatesTo": true, "catalogNumber": true,
}

// keeps reports whether a placeholder in the column is to be printed.
func (c *Context) keeps(term string) bool {
	return c.Options.KeepPlaceholders && !readAsValue[term]
}

// readPeople reads collector and number, and whether a place is given.
func (c *Context) readPeople() {
	if text := c.Text("recordedBy"); text != "" && !Absent("recordedBy", text) {
		if people := c.collectors(text); len(people) > 0 {
			c.Collector, c.Others = people[0], people[1:]
		}
	}
	if text := c.Text("coCollectors"); text != "" && !Absent("recordedBy", text) {
		c.Others = append(c.Others, c.collectors(text)...)
	}
	if text := c.Text("recordNumber"); !Absent("recordNumber", text) {
		c.Number = bareNumber(text, c.Collector)
	}
	c.Placeless = true
	for _, term := range placeTerms {
		if text := c.Text(term); text != "" && !Absent("locality", text) {
			c.Placeless = false
			break
		}
	}
}

// collectors is ParseCollectors. Nothing can be appended to the persons in
// place.
func (c *Context) collectors(text string) []string {
	people := c.past.collectors.of(text, ParseCollectors)
	return people[:len(people):len(people)]
}

// partsReading is what ParsePreparations says of a text.
type partsReading struct {
	parts  []Preparation
	doubts []*PartError
	err    error
}

func readParts(text string) partsReading {
	parts, doubts, err := ReadPreparations(text)
	return partsReading{slices.Clip(parts), doubts, err}
}

// herbaria returns the codes among those of duplicatesTo that are codes.
func herbaria(text string) []string {
	var all []string
	for _, code := range splitCodes(text) {
		if isCode(code) {
			all = append(all, code)
		}
	}
	return slices.Clip(all)
}

// readPreparations reads the parts, copies and duplicates.
func (c *Context) readPreparations() {
	r := c.past.preparations.of(c.Text("preparations"), readParts)
	c.Preparations, c.partDoubts, c.PartsErr = r.parts, r.doubts, r.err
	if c.PartsErr != nil { // printed only where the house lets it pass
		c.Preparations, _ = ParsePreparations("")
	}
	if n, ok := parseCopies(c.Text("copies")); ok {
		c.Copies = n
	} else {
		c.Copies = 1
	}
	if text := c.Text("duplicatesTo"); text != "" {
		c.DuplicatesTo = c.past.codes.of(text, herbaria)
	}
}
