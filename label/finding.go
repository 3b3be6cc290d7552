package label

import (
	"fmt"
	"path"
	"strconv"
	"strings"
)

// An Origin is the place in a table that words came from. The zero Origin
// stands for words that the program or the house file wrote.
type Origin struct {
	File   string // as the user named it
	Line   int    // from 1; the row of a worksheet
	Column int    // code points of the decoded line, from 1; the column of a worksheet
	Row    int    // records from 1; 0 is the heading row or the whole file
	Term   string // Darwin Core term of the column, "" if none
}

// String returns the place as messages show it: "trip.csv:14:3"; in a workbook
// as its program names cells: "trip.xlsx:C14".
func (o Origin) String() string {
	s := o.File
	if o.Line > 0 && o.Column > 0 && isWorkbook(s) {
		return s + ":" + columnName(o.Column) + strconv.Itoa(o.Line)
	}
	if o.Line > 0 {
		s += ":" + strconv.Itoa(o.Line)
		if o.Column > 0 {
			s += ":" + strconv.Itoa(o.Column)
		}
	}
	return s
}

func isWorkbook(file string) bool {
	switch strings.ToLower(path.Ext(file)) {
	case ".xlsx", ".xlsm":
		return true
	}
	return false
}

// columnName counts columns from 1 as spreadsheets do: A to Z, then AA.
func columnName(n int) string {
	if n <= 26 {
		return string(rune('A' + n - 1))
	}
	return columnName((n-1)/26) + columnName((n-1)%26+1)
}

// A Severity says what a finding means for the print.
type Severity int

const (
	Note    Severity = iota + 1 // worth knowing
	Warning                     // probably wrong; the label is printed
	Error                       // would print nonsense; the record is not printed
)

// String returns the severity's word in messages and JSON.
func (s Severity) String() string {
	switch s {
	case Note:
		return "note"
	case Warning:
		return "warning"
	case Error:
		return "error"
	}
	return "severity(" + strconv.Itoa(int(s)) + ")"
}

// A Finding is something the check says of a cell.
type Finding struct {
	Origin
	Value    string // the cell as written
	Rule     string // the rule's name
	Severity Severity
	Message  string // what is wrong and what to do: lower case, no full stop
	Suggest  string // the likely right value, "" if there is none
	Also     []Cell // further cells of a table-wide finding
	// Cause, where it is set, is one for all findings of the rule and column
	// that have it, whatever their values: they are one fault, and told once
	// with a count. The cells of Also then have the fault too.
	Cause string
	// Head is the heading of the column, nil where it is the term.
	Head *Heading
}

// A Heading is what a table has above a column whose term is another word.
type Heading struct {
	Text string
	// Inner is true where the term is a name of ours for a column that is read with
	// others, which the user never wrote: the heading is shown in its place.
	Inner bool
}

// Shown returns the name of the finding's column for a reader of a line: the term,
// "" if it has none.
func (f Finding) Shown() string {
	if f.Head != nil && f.Head.Inner {
		return f.Head.Text
	}
	return f.Term
}

// A Cell names a cell by its record and term.
type Cell struct {
	Row  int
	Term string
}

// String returns the finding as one line of a report:
//
//	trip.csv:14:3: decimalLatitude "95.2": latitude is beyond 90°
func (f Finding) String() string {
	s := f.Origin.String() + ": "
	if f.Term != "" {
		s += f.Shown() + " "
		if f.Value != "" {
			s += strconv.Quote(f.Value)
		} else {
			s += "(empty)"
		}
		s += ": "
	}
	s += f.Message
	if f.Suggest != "" {
		s += fmt.Sprintf(" (did you mean %q?)", f.Suggest)
	}
	return s
}
