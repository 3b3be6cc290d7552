package check

import (
	"strings"
	"sync/atomic"
)

// recalled is how many texts of a column a Context remembers the reading of.
const recalled = 256

// A recall remembers what texts were read as, for tables repeat them from row
// to row: collectors, days, names, parts. It belongs to one goroutine, and what
// it gives is shared by all who ask: nobody may change it.
type recall[K comparable, V any] struct {
	known map[K]V
	last  K // asked for, which the row below often repeats
	was   V
	asked bool
}

// of returns what read makes of a text; read must depend on nothing else.
func (r *recall[K, V]) of(text K, read func(K) V) V {
	if r.asked && text == r.last {
		return r.was
	}
	v, ok := r.known[text]
	if ok {
		r.last, r.was, r.asked = text, v, true
		return v
	}
	v = read(text)
	r.last, r.was, r.asked = text, v, true
	switch {
	case r.known == nil:
		r.known = make(map[K]V, 16)
	case len(r.known) >= recalled:
		clear(r.known)
	}
	r.known[text] = v
	return v
}

// A Memo is what several rules look at in a record, read once for all of them. It
// belongs to a package and is made once, by NewMemo.
type Memo[T any] struct{ slot int }

// memos counts the Memos that were made.
var memos atomic.Int64

// NewMemo returns a Memo of its own.
func NewMemo[T any]() Memo[T] { return Memo[T]{int(memos.Add(1)) - 1} }

// Of returns what read made of the record when a rule first asked for it. read is
// given what it made of an earlier record, at first the zero T, to be used again.
func (m Memo[T]) Of(c *Context, read func(c *Context, into *T)) *T {
	for m.slot >= len(c.memos) {
		c.memos = append(c.memos, memo{})
	}
	kept := &c.memos[m.slot]
	if kept.reading == c.past.reading {
		return kept.value.(*T)
	}
	value, _ := kept.value.(*T)
	if value == nil {
		value = new(T)
	}
	read(c, value)
	c.memos[m.slot] = memo{value, c.past.reading} // read may have asked for other Memos
	return value
}

// A memo is the value of a Memo, a *T, in a Context.
type memo struct {
	value   any
	reading int // of the row it was made for, from 1
}

// A seenCell is what can be told from a cell alone, kept for the row below, which
// often repeats it.
type seenCell struct {
	term, written string
	text          string // trimmed
	marks         Marks
	placeholder   bool
	looks         []*look // at its column
}

// cell looks at what is written in a column, counted from 0.
func (p *past) cell(column int, term, written string) *seenCell {
	for column >= len(p.cells) {
		p.cells = append(p.cells, seenCell{})
	}
	seen := &p.cells[column]
	if seen.written == written && seen.term == term {
		return seen
	}
	if seen.term != term {
		seen.term, seen.looks = term, p.looksAt(term)
	}
	seen.written, seen.text = written, strings.TrimSpace(written)
	seen.marks, seen.placeholder = 0, false
	if seen.text != "" {
		seen.marks, seen.placeholder = marksOf(written, seen.text, seen.looks), isPlaceholder(term, seen.text)
	}
	return seen
}

// looksAt returns what rules look for in a column.
func (p *past) looksAt(term string) []*look {
	at, known := p.looks[term]
	if !known {
		if p.looks == nil {
			p.looks = map[string][]*look{}
		}
		at = looksAt(term)
		p.looks[term] = at
	}
	return at
}

// context gives a Context with a Record in it to one goroutine.
func (e *Engine) context() *Context {
	c, _ := e.contexts.Get().(*Context)
	if c == nil {
		c = &Context{past: &past{}}
	}
	r, _ := e.records.Get().(*Record)
	if r == nil {
		r = &Record{}
	}
	*r = Record{fields: r.fields[:0], said: r.said[:0]}
	c.past.reading++
	*c = Context{Record: r, Options: &e.o, Placeholders: c.Placeholders[:0], memos: c.memos, past: c.past}
	return c
}

// done takes a Context back. Its record and findings have left it.
func (e *Engine) done(c *Context) {
	c.Record, c.row = nil, nil
	e.contexts.Put(c)
}

// Release gives a record back with its findings, to be made into those of
// another row. Nobody may look at them afterwards. A record that is not released is kept as long as
// anybody holds it.
func (e *Engine) Release(r *Record) { e.records.Put(r) }
