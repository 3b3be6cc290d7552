package table

import (
	"bufio"
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"cornerslip/label"
)

// An Edit gives one cell a new text.
type Edit struct {
	// Row counts records from 1; 0 is the heading row.
	Row int
	// Column counts columns from 0. The number of columns, or more, is a new
	// column at the end of every row: an edit of row 0 gives it its heading.
	Column int
	Text   string
}

// ErrChanged is returned if the file is not the one that was read.
var ErrChanged = errors.New("the table has changed since it was read")

// Rewrite writes the table's file to dst with the edits made. Every byte
// outside an edited cell stays. A cell is enclosed in quotes if it was before
// or must be, and keeps the file's encoding; a character that the encoding
// lacks is an error that names it. The table must not have changed since it
// was last read whole. What was written to dst before an error is worth
// nothing.
//
// A new column takes part in every row but those without a letter; a row that
// is longer than the heading row has no place for it and is an error.
func Rewrite(dst io.Writer, t *Table, edits []Edit) error { return rewrite(dst, t, edits, false) }

// RewriteUTF8 is Rewrite into UTF-8 without a byte-order mark, whatever the
// file's own encoding. Bytes that stand for no character are an error.
func RewriteUTF8(dst io.Writer, t *Table, edits []Edit) error { return rewrite(dst, t, edits, true) }

// A rewriter copies a file and puts the edits in.
type rewriter struct {
	t     *Table
	p     part
	utf8  bool
	edits []Edit // of the rows still to come
	added int    // new columns
	out   *bufio.Writer
	raw   io.Reader // the file's own bytes
	at    int64     // place of raw in the file
	conv  *input    // the file decoded, where utf8 asks for it
	seen  int       // columns of this row that were looked at for open
	open  int       // line of a quote that nothing closes, 0 if there is none
}

func rewrite(dst io.Writer, t *Table, edits []Edit, toUTF8 bool) error {
	if t.archive {
		return fmt.Errorf("%s: a table of a Darwin Core archive is not written back: mend the file it came from", t.parts[0].src.Name())
	}
	if name := t.Found(); name != "" && (toUTF8 || slices.ContainsFunc(edits, func(e Edit) bool { return !isASCII(e.Text) })) {
		return fmt.Errorf("%s: it is not certain what encoding the table is in, though it seems to be %s: name it before the table is written", t.parts[0].src.Name(), strings.ToLower(name))
	}
	w := &rewriter{t: t, p: t.parts[0], utf8: toUTF8, out: bufio.NewWriterSize(dst, readSize)}
	w.edits = slices.Clone(edits)
	slices.SortStableFunc(w.edits, func(a, b Edit) int { return cmp.Or(a.Row-b.Row, a.Column-b.Column) })
	for i, e := range w.edits {
		if e.Row < 0 || e.Column < 0 {
			return fmt.Errorf("%s: no cell in row %d, column %d", w.p.src.Name(), e.Row, e.Column)
		}
		if i > 0 && e.Row == w.edits[i-1].Row && e.Column == w.edits[i-1].Column {
			return fmt.Errorf("%s: two texts for the cell in row %d, column %d", w.p.src.Name(), e.Row, e.Column+1)
		}
		w.added = max(w.added, e.Column+1-t.width)
	}
	if err := w.run(); err != nil {
		return err
	}
	return w.out.Flush()
}

func (w *rewriter) run() error {
	lexed, err := w.p.src.Open()
	if err != nil {
		return err
	}
	defer lexed.Close()
	copied, err := w.p.src.Open()
	if err != nil {
		return err
	}
	defer copied.Close()
	sum, copySum := sha256.New(), sha256.New()
	w.raw = io.TeeReader(copied, copySum)
	if w.utf8 && w.p.charset.scheme != plain {
		w.conv = newInput(w.raw, w.p.charset, w.p.mark, nil)
	} else if w.utf8 {
		if err := w.skipTo(int64(w.p.mark)); err != nil {
			return err
		}
	}
	l := w.t.lexer(w.p, lexed, w.t.o.Comma, sum)
	for n := 0; ; n++ {
		if n == 1 {
			l.keepBlank = w.t.width == 1
		}
		ok, err := l.next()
		if err != nil {
			return w.t.fault(w.p, l, n, err)
		}
		if !ok {
			break
		}
		if err := w.row(l, n); err != nil {
			return err
		}
		if n == 0 { // the rest of a heading of several rows
			for range w.t.under {
				if ok, err := l.next(); err != nil || !ok {
					return cmp.Or(err, io.ErrUnexpectedEOF)
				}
				if err := w.row(l, -1); err != nil {
					return err
				}
			}
		}
	}
	if len(w.edits) > 0 {
		return fmt.Errorf("%s: row %d is beyond the end of the table", w.p.src.Name(), w.edits[0].Row)
	}
	if err := w.copyTo(-1); err != nil {
		return err
	}
	got := hex.EncodeToString(sum.Sum(nil))
	if got != hex.EncodeToString(copySum.Sum(nil)) || w.t.Digest() != "" && got != w.t.Digest() {
		return fmt.Errorf("%s: %w: read it again", w.p.src.Name(), ErrChanged)
	}
	return nil
}

// row puts the edits of row n in.
func (w *rewriter) row(l *lexer, n int) error {
	in := l.in
	width := len(l.fields)
	w.seen = 0
	rowErr := func(format string, args ...any) error {
		return &Error{Origin: label.Origin{File: w.p.src.Name(), Line: l.line, Row: n}, Message: fmt.Sprintf(format, args...)}
	}
	if w.added > 0 && width > w.t.width {
		return rowErr("the row has %s, the table has %d columns: mend it before a column is added", cells(width), w.t.width)
	}
	if w.utf8 && w.conv == nil {
		for i := range l.fields {
			if f := &l.fields[i]; f.kinds&isHigh != 0 && !utf8.Valid(l.b[f.start:f.end]) && !w.edited(n, i) {
				return rowErr("column %d holds bytes that are not UTF-8: name the table's encoding", i+1)
			}
		}
	}
	texts := map[int]string{} // of new columns
	for len(w.edits) > 0 && w.edits[0].Row == n {
		e := w.edits[0]
		w.edits = w.edits[1:]
		if e.Column >= w.t.width {
			texts[e.Column-w.t.width] = e.Text
			continue
		}
		if e.Column >= width {
			return rowErr("the row has %s and none in column %d: mend it first", cells(width), e.Column+1)
		}
		w.findOpen(l, e.Column)
		f := &l.fields[e.Column]
		if f.kinds&isQuote != 0 || f.quoted {
			if err := w.quoteRisk(l, n); err != nil {
				return err
			}
		}
		if err := w.copyTo(in.at(in.pos + f.start)); err != nil {
			return err
		}
		if err := w.write(e.Text, f.quoted, w.t.width == 1 && w.added == 0, l, n, e.Column); err != nil {
			return err
		}
		if err := w.skipTo(in.at(in.pos + f.end)); err != nil {
			return err
		}
	}
	w.findOpen(l, len(l.fields))
	if w.added == 0 {
		return nil
	}
	if err := w.copyTo(in.at(in.pos + l.length)); err != nil {
		return err
	}
	comma := string(w.t.o.Comma)
	for range w.t.width - width { // a short row
		if err := w.encode(comma, l, n, width); err != nil {
			return err
		}
	}
	for i := range w.added {
		if err := w.encode(comma, l, n, w.t.width+i); err != nil {
			return err
		}
		if err := w.write(texts[i], false, false, l, n, w.t.width+i); err != nil {
			return err
		}
	}
	return nil
}

// findOpen notes a quote that nothing closes in the cells before a column of
// the row, from the last column asked for; cells that were edited no longer
// have one.
func (w *rewriter) findOpen(l *lexer, column int) {
	for ; w.seen < column; w.seen++ {
		if l.fields[w.seen].unclosed && w.open == 0 {
			w.open = l.line
		}
	}
	w.seen = column + 1
}

// quoteRisk is an error where a quote more or less could close a cell further
// up and so change cells that no edit is about.
func (w *rewriter) quoteRisk(l *lexer, row int) error {
	if w.open == 0 {
		return nil
	}
	return &Error{Origin: label.Origin{File: w.p.src.Name(), Line: l.line, Row: row},
		Message: fmt.Sprintf("a quote opens a cell in line %d and nothing closes it: mend that cell before those that follow it", w.open)}
}

func isASCII(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return r >= utf8.RuneSelf }) < 0
}

// edited reports whether a cell gets a new text. The edits of rows before n
// are done.
func (w *rewriter) edited(n, column int) bool {
	for _, e := range w.edits {
		if e.Row != n || e.Column > column {
			break
		}
		if e.Column == column {
			return true
		}
	}
	return false
}

// write writes the text of a cell, in quotes if it must be.
func (w *rewriter) write(text string, quoted, alone bool, l *lexer, row, column int) error {
	o := w.t.o
	must := strings.ContainsRune(text, o.Comma) || strings.ContainsAny(text, "\r\n")
	if o.Literal {
		if must {
			return &Error{Origin: label.Origin{File: w.p.src.Name(), Line: l.line, Row: row},
				Message: fmt.Sprintf("column %d cannot hold %q: the table has no quotes to enclose a %s or a line end", column+1, cut(text, 60), commaName(o.Comma))}
		}
		return w.encode(text, l, row, column)
	}
	q := string(o.Quote)
	if quoted || must || strings.Contains(text, q) || alone && text == "" {
		if err := w.quoteRisk(l, row); err != nil {
			return err
		}
		text = q + strings.ReplaceAll(text, q, q+q) + q
	}
	return w.encode(text, l, row, column)
}

// encode writes text in the file's encoding.
func (w *rewriter) encode(text string, l *lexer, row, column int) error {
	if w.utf8 {
		_, err := w.out.WriteString(text)
		return err
	}
	b, lacks := w.p.charset.encode(text)
	if lacks >= 0 {
		return &Error{Origin: label.Origin{File: w.p.src.Name(), Line: l.line, Row: row},
			Message: fmt.Sprintf("column %d cannot hold %q: %s has no %q (U+%04X); write the table as UTF-8", column+1, cut(text, 60), w.p.charset.name, lacks, lacks)}
	}
	_, err := w.out.Write(b)
	return err
}

// copyTo copies up to a place in the file; -1 is its end.
func (w *rewriter) copyTo(place int64) error { return w.pass(place, w.out) }

// skipTo passes over bytes up to a place in the file.
func (w *rewriter) skipTo(place int64) error { return w.pass(place, io.Discard) }

func (w *rewriter) pass(place int64, to io.Writer) error {
	if w.conv != nil {
		return w.convert(place, to)
	}
	if place < 0 {
		_, err := io.Copy(to, w.raw)
		return err
	}
	n, err := io.CopyN(to, w.raw, place-w.at)
	w.at += n
	if err == io.EOF {
		return fmt.Errorf("%s: %w: read it again", w.p.src.Name(), ErrChanged)
	}
	return err
}

// convert is pass for a file that is decoded on the way.
func (w *rewriter) convert(place int64, to io.Writer) error {
	in := w.conv
	for {
		i := in.pos
		if place < 0 {
			i = len(in.buf)
		}
		for i < len(in.buf) && in.at(i) < place {
			i++
		}
		for len(in.bad) > 0 && in.bad[0].start < in.at(i) {
			if to != io.Discard {
				return fmt.Errorf("%s: byte %d of the file cannot be read as %s: name the table's encoding", w.p.src.Name(), in.bad[0].start, w.p.charset.name)
			}
			in.bad = in.bad[1:]
		}
		if _, err := to.Write(in.buf[in.pos:i]); err != nil {
			return err
		}
		in.pos = i
		if i < len(in.buf) {
			return nil
		}
		if !in.more() {
			return in.err
		}
	}
}
