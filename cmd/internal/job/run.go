package job

import (
	"cornerslip/layout"
)

// A run is the labels of a print, set and kept in a file until the pages that
// hold them are drawn.
type run struct {
	*spool
	labels []runLabel
	codes  map[string]string // of herbaria, each kept once
}

// A runLabel is what placing a label takes to know beside its size.
type runLabel struct {
	row   int
	goes  string // to which herbarium; "" is our own
	first bool   // not the continuation of the one before
}

func newRun() (*run, error) {
	s, err := newSpool()
	if err != nil {
		return nil, err
	}
	return &run{spool: s, codes: map[string]string{}}, nil
}

func (r *run) put(l *SetLabel, encoded []byte) error {
	code, ok := r.codes[l.Ref.For]
	if !ok {
		code = l.Ref.For
		r.codes[code] = code
	}
	r.labels = append(r.labels, runLabel{l.Ref.Row, code, l.Ref.Label <= 1})
	return r.add(l.Size, encoded)
}

// name is how messages call a label: where its record stands and which of its
// labels it is.
func (r *run) name(i int) string {
	b, err := r.box(i)
	if err != nil {
		return "a label"
	}
	ref := b.Ref
	ref.Part = "" // the size is said next
	return ref.String()
}

// all returns the numbers of all labels.
func (r *run) all() []int {
	all := make([]int, len(r.sizes))
	for i := range all {
		all[i] = i
	}
	return all
}

// sized returns the sizes of some labels.
func (r *run) sized(labels []int) []layout.Size {
	sizes := make([]layout.Size, len(labels))
	for i, k := range labels {
		sizes[i] = r.sizes[k]
	}
	return sizes
}
