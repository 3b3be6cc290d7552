package job

import (
	"errors"
	"fmt"
	"strings"

	"cornerslip/label"
	"cornerslip/label/accession"
	"cornerslip/label/coord"
	"cornerslip/label/date"
	"cornerslip/label/house"
	"cornerslip/label/name"
)

// ReadName returns the name with <i> and </i> round its italic parts.
func ReadName(text string) string { return name.Markup(text, name.Options{}) }

// ReadDate returns status and ISO 8601 date, parted by a tab.
func ReadDate(text string) string { return date.ReadLine(text) }

// ReadCoordinates returns status, latitude, longitude, uncertainty, UTM and
// MGRS, parted by tabs.
func ReadCoordinates(text string) string { return coord.ReadLine(text) }

// NumberReader returns what reads a catalogue number into status and number,
// parted by a tab: by the pattern of a series, given or the house's; else the
// check character is worked out, by the scheme given or named in the text.
func (j *Job) NumberReader(pattern, scheme string) (func(string) string, error) {
	if pattern != "" && scheme != "" {
		return nil, errors.New("a pattern says its scheme itself: leave --scheme out")
	}
	if pattern == "" && scheme == "" {
		pattern = j.House.Numbers.Pattern
	}
	switch {
	case pattern != "":
		p, err := accession.ParsePattern(pattern)
		return p.ReadLine, err
	case scheme != "":
		s, err := accession.ParseScheme(scheme)
		return func(text string) string { return accession.ReadLine(string(s) + " " + text) }, err
	}
	return accession.ReadLine, nil
}

// HouseTemplate returns a commented house file to start from.
func HouseTemplate() []byte { return house.Template() }

// A Covered is a character of a table and the face that it is taken from.
type Covered struct {
	Text  string // a letter with its accents
	Face  string // the face's name; "" where it cannot be printed
	Why   string // why it cannot
	Count int
	First label.Origin
}

// Codes returns the code points as U+0078 U+0302.
func (c Covered) Codes() string {
	var parts []string
	for _, r := range c.Text {
		parts = append(parts, fmt.Sprintf("U+%04X", r))
	}
	return strings.Join(parts, " ")
}

// Coverage lists every character of the table that is not plain ASCII, in the
// order of their first places.
func (j *Job) Coverage(t *Table) ([]Covered, error) {
	var out []Covered
	at := map[string]int{}
	for row, err := range t.Rows() {
		if err != nil {
			return nil, err
		}
		for i, cell := range row.Cells {
			for _, c := range j.faces.Coverage(cell.Text, 0) {
				if len(c.Cluster) == 1 && c.Face != nil {
					continue
				}
				n, ok := at[c.Cluster]
				if !ok {
					n = len(out)
					at[c.Cluster] = n
					covered := Covered{Text: c.Cluster, First: label.Origin{
						File: t.Source().Name(), Line: cell.Line, Column: cell.Column, Row: row.N, Term: row.Term(i),
					}}
					if c.Face != nil {
						covered.Face = c.Face.Name
					} else {
						covered.Why = c.Err.Error()
					}
					out = append(out, covered)
				}
				out[n].Count++
			}
		}
	}
	return out, nil
}
