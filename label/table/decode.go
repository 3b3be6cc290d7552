package table

import (
	"errors"
	"fmt"
	"io"
	"iter"
	"sync/atomic"

	"github.com/gocarina/gocsv"
)

// Decode reads a table by struct tags and calls each with every row and its
// struct, in order. T is a struct whose string fields are tagged with terms:
//
//	type Identification struct {
//		Of   string `csv:"coreid"`
//		Name string `csv:"scientificName"`
//		By   string `csv:"identifiedBy"`
//	}
//
// It is for the small tables beside the core and costs several times what Rows
// does. Cells of a row come as Row.Get gives them; columns that no field asks
// for are passed over, and fields without a column stay empty.
func Decode[T any](t *Table, each func(*Row, T) error) error {
	next, stop := iter.Pull2(t.Rows())
	defer stop()
	r := &rowReader{t: t, next: next, rows: make(chan *Row, 4)}
	for _, c := range t.columns {
		r.terms = append(r.terms, c.Term)
		if c.Verbatim != "" {
			r.terms = append(r.terms, c.Verbatim)
		}
	}
	// What is under way when each fails is dropped and the reading ends.
	var failed error
	err := gocsv.UnmarshalDecoderToCallback(gocsv.NewSimpleDecoderFromCSVReader(r), func(v T) {
		row := <-r.rows
		if failed == nil {
			if failed = each(row, v); failed != nil {
				r.stopped.Store(true)
			}
		}
	})
	switch {
	case failed != nil:
		return failed
	case errors.Is(err, io.EOF):
		return nil
	case err != nil && !errors.As(err, new(*Error)):
		return fmt.Errorf("%s: %w", t.parts[0].src.Name(), err)
	}
	return err
}

// A rowReader gives a table's rows in the shape of encoding/csv's Reader: the
// terms first. gocsv reads one row ahead of the callback, so the rows wait in
// a channel.
type rowReader struct {
	t     *Table
	terms []string
	head  bool
	next  func() (*Row, error, bool)
	rows  chan *Row

	stopped atomic.Bool
}

func (r *rowReader) Read() ([]string, error) {
	if !r.head {
		r.head = true
		return r.terms, nil
	}
	if r.stopped.Load() {
		return nil, io.EOF
	}
	row, err, ok := r.next()
	if !ok {
		return nil, io.EOF
	}
	if err != nil {
		return nil, err
	}
	cells := make([]string, len(r.terms))
	for i, term := range r.terms {
		cells[i] = row.Text(term)
	}
	r.rows <- row
	return cells, nil
}

// ReadAll is asked for by gocsv's interface, but not by its streaming side.
func (r *rowReader) ReadAll() ([][]string, error) {
	return nil, errors.New("a table is read row by row")
}
