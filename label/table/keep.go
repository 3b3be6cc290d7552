package table

import (
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"

	"cornerslip/label"
)

// Append adds the row to b in a form that Restore reads: for those who need a
// few rows again, in an order of their own, and would not keep all in memory.
// The form is for a file that does not outlive the run; it has no version.
func (r *Row) Append(b []byte) []byte {
	number := func(n int64) { b = binary.AppendVarint(b, n) }
	text := func(s string) {
		number(int64(len(s)))
		b = append(b, s...)
	}
	var flags int64
	for i, set := range []bool{r.Empty, r.Aside, r.Astray} {
		if set {
			flags |= 1 << i
		}
	}
	for _, n := range []int64{int64(r.N), int64(r.Line), flags, r.end, int64(len(r.Cells))} {
		number(n)
	}
	text(r.file)
	for i := range r.Cells {
		c := &r.Cells[i]
		quoted := int64(0)
		if c.Quoted {
			quoted = 1
		}
		for _, n := range []int64{int64(c.Line), int64(c.Column), c.Start, c.End, quoted} {
			number(n)
		}
		text(c.Text)
	}
	findings := ""
	if len(r.Findings) > 0 { // few rows have any
		j, err := json.Marshal(r.Findings)
		if err != nil {
			panic(err) // texts and numbers alone
		}
		findings = string(j)
	}
	text(findings)
	return b
}

var errKept = errors.New("a row that was kept is damaged")

// Restore returns the row that Append wrote. It must be a row of t.
func (t *Table) Restore(b []byte) (*Row, error) {
	all, at, bad := string(b), 0, false
	number := func() int64 {
		n, size := binary.Varint(b[at:])
		if size <= 0 {
			bad = true
			return 0
		}
		at += size
		return n
	}
	text := func() string {
		n := number()
		if n < 0 || n > int64(len(all)-at) {
			bad = true
			return ""
		}
		at += int(n)
		return all[at-int(n) : at]
	}
	head := Row{table: t, N: int(number()), Line: int(number()), end: 0}
	flags := number()
	head.Empty, head.Aside, head.Astray, head.end = flags&1 != 0, flags&2 != 0, flags&4 != 0, number()
	cells := number()
	if bad || cells < 0 || cells > int64(len(b)) { // a cell takes a byte at least
		return nil, errKept
	}
	r, _ := t.released.Get().(*Row)
	if r == nil || cap(r.Cells) < int(cells) {
		r = &Row{Cells: make([]Cell, 0, max(int(cells), len(t.columns)))}
	}
	head.Cells = r.Cells[:cells]
	*r = head
	r.file = text()
	for _, p := range t.parts { // the name outlives the row: what is said of it keeps the name alone
		if p.src.Name() == r.file {
			r.file = p.src.Name()
		}
	}
	for i := range r.Cells {
		c := &r.Cells[i]
		c.Line, c.Column, c.Start, c.End, c.Quoted = int(number()), int(number()), number(), number(), number() == 1
		c.Text = text()
	}
	var findings []label.Finding
	if s := text(); s != "" {
		if err := json.Unmarshal([]byte(s), &findings); err != nil {
			return nil, fmt.Errorf("%w: %w", errKept, err)
		}
	}
	r.Findings = findings
	if bad || at != len(b) {
		return nil, errKept
	}
	return r, nil
}
