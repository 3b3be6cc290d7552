package table

import (
	"fmt"
	"strings"

	"cornerslip/label"
)

// maxEvents bounds the text of the events that an archive may have: they are
// kept while the table is.
const maxEvents = 256 << 20

// Events are the rows of an archive's core whose rows are events (a visit to a
// place on a day), for the specimens beside it: the Darwin Core text guide lets
// an archive have its specimens as an extension of their events.
type events struct {
	cells  map[string][]string // by the event's id: the columns of its table
	digest string
}

// joinEvents makes the specimens of an extension records: what a specimen does
// not say itself its event says. Event cells stand in no place of the specimen's
// file, as constants do.
func joinEvents(specimens, core *Table) error {
	key, id := specimens.Index("coreid"), core.Index("id")
	if key < 0 || id < 0 {
		return &Error{Origin: core.columnsOrigin(), Message: "meta.xml does not say which columns join specimens and events: give the core an id and the extension a coreid"}
	}
	e := &events{cells: map[string][]string{}}
	if err := e.read(core, id); err != nil {
		return err
	}
	specimens.findings = append(core.Findings(), specimens.findings...)
	for i := range core.columns {
		c := core.columns[i]
		if c.Term == "" || i == id {
			continue
		}
		if at := specimens.Index(c.Term); at >= 0 {
			specimens.columns[at].event = i + 1
			continue
		}
		c.Index, c.from, c.event, c.value = len(specimens.columns), -1, i+1, ""
		specimens.columns = append(specimens.columns, c)
	}
	specimens.events, specimens.key, specimens.mapped = e, key, true
	specimens.mapTerms()
	return nil
}

func (t *Table) columnsOrigin() label.Origin { return label.Origin{File: t.parts[0].src.Name()} }

// read keeps the events. What is to be said of their rows becomes findings of
// the core's head: they are no records.
func (e *events) read(core *Table, id int) error {
	size := 0
	for row, err := range core.Rows() {
		if err != nil {
			return err
		}
		if row.Empty {
			continue
		}
		for _, f := range row.Findings {
			f.Row = 0
			core.findings = append(core.findings, f)
		}
		if id >= len(row.Cells) || len(row.Cells) < len(core.columns) {
			continue // ragged, and said
		}
		name := strings.TrimSpace(row.Cells[id].Text)
		if _, twice := e.cells[name]; twice {
			core.say(ruleArchive, label.Error, row.Line, "two events have the id %q: nobody can say which one a specimen is of", name)
			continue
		}
		cells := make([]string, len(core.columns))
		for i := range cells {
			cells[i] = row.Cells[i].Text
			size += len(cells[i])
		}
		if size > maxEvents {
			return &Error{Origin: label.Origin{File: row.file, Line: row.Line}, Message: "the events of this archive are longer than " + sizeWords(maxEvents) + ": print a part of it"}
		}
		e.cells[name] = cells
	}
	e.digest = core.Digest()
	return nil
}

// event returns the cells of the event that a specimen is of.
func (r *Row) event() []string {
	t := r.table
	if t.events == nil || r.Empty {
		return nil
	}
	// The row has the file's own cells as yet, and the key may be the second term
	// of a column, as where coreid and eventID are one.
	var key Cell
	if from := t.columns[t.key].from; from >= 0 && from < len(r.Cells) {
		key = r.Cells[from]
	}
	name := strings.TrimSpace(key.Text)
	cells, ok := t.events.cells[name]
	if !ok {
		r.Findings = append(r.Findings, label.Finding{
			Origin: label.Origin{File: r.file, Line: r.Line, Column: key.Column, Row: r.N}, Value: name, Rule: ruleArchive.Name, Severity: label.Error,
			Message: fmt.Sprintf("the archive has no event %q: day and place of this specimen are not known", name),
		})
	}
	return cells
}
