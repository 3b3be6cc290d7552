package check

// recalled is how many texts of a column a Context remembers the reading of.
const recalled = 256

// A recall remembers what texts were read as, for tables repeat them from row
// to row: collectors, days, names, parts. It belongs to one goroutine, and what
// it gives is shared by all who ask: nobody may change it.
type recall[K comparable, V any] struct{ known map[K]V }

// of returns what read makes of a text; read must depend on nothing else.
func (r *recall[K, V]) of(text K, read func(K) V) V {
	v, ok := r.known[text]
	if ok {
		return v
	}
	v = read(text)
	switch {
	case r.known == nil:
		r.known = make(map[K]V, 16)
	case len(r.known) >= recalled:
		clear(r.known)
	}
	r.known[text] = v
	return v
}

// A memo is what a rule keeps in a Context.
type memo struct {
	key, value any
	reading    int // of the row it was made for
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
