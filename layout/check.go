package layout

import (
	"errors"
	"fmt"
	"unicode"
	"unicode/utf8"
)

// reach is the largest distance that a mark may have: 10 m, far beyond any
// paper and far below what could overflow when lengths are added.
const reach = 10_000 * MM

// Check reports the first thing in p that a backend could not draw as it
// stands: text that its clusters do not cover, bytes that are not UTF-8, a
// mark of a type that is not in this package. The error names the label. Every
// backend asks before it draws, so that nothing is ever left out in silence.
func (p Page) Check() error {
	switch {
	case p.Size.W <= 0 || p.Size.H <= 0:
		return fmt.Errorf("a page of %v has no room for anything", p.Size)
	case p.Size.W > reach || p.Size.H > reach:
		return fmt.Errorf("a page of %v is larger than any paper", p.Size)
	case p.Trim != (Rect{}) && !(Rect{Size: p.Size}).Contains(p.Trim):
		return fmt.Errorf("what is left after cutting reaches beyond the page of %v", p.Size)
	}
	for _, b := range p.Boxes {
		switch {
		case b.Box == nil:
			return errors.New("a place on the page holds no label")
		case b.Turn < 0 || b.Turn > 3:
			return fmt.Errorf("%v: turned by %d quarters; 0 to 3 are possible", b.Box.Ref, b.Turn)
		case !b.At.near():
			return fmt.Errorf("%v: placed beyond any paper", b.Box.Ref)
		}
		if err := b.Box.Check(); err != nil {
			return err
		}
	}
	for _, m := range p.Marks {
		if err := check(m); err != nil {
			return fmt.Errorf("a mark on the paper: %w", err)
		}
	}
	return nil
}

// Check reports the first mark in b that a backend could not draw; the error
// names the label.
func (b *Box) Check() error {
	for _, m := range b.Marks {
		if err := check(m); err != nil {
			return fmt.Errorf("%v: %w", b.Ref, err)
		}
	}
	return nil
}

func check(m Mark) error {
	switch m := m.(type) {
	case Text:
		return m.check()
	case Fill:
		return m.Rect.check("a filled rectangle")
	case Stroke:
		return m.check()
	case Bars:
		return m.check()
	}
	return fmt.Errorf("a mark of the unknown type %T", m)
}

func (t Text) check() error {
	switch {
	case !utf8.ValidString(t.S) || !utf8.ValidString(t.Actual):
		return fmt.Errorf("text %q: not valid UTF-8", t.S)
	case t.Face == "":
		return fmt.Errorf("text %q: no face is named", t.S)
	case t.Size <= 0 || t.Size > reach || !t.At.near():
		return fmt.Errorf("text %q: size %v at %v, %v is beyond any paper", t.S, t.Size, t.At.X, t.At.Y)
	}
	for _, r := range t.S {
		if unicode.IsControl(r) {
			return fmt.Errorf("text %q: the control character %U cannot be drawn", t.S, r)
		}
	}
	at := 0
	var pen Length
	for _, c := range t.Clusters {
		if c.Bytes <= 0 || c.Bytes > len(t.S)-at {
			return fmt.Errorf("text %q: a cluster of %d bytes at byte %d of %d", t.S, c.Bytes, at, len(t.S))
		}
		if pen += c.Adv; !c.Adv.near() || !c.Rise.near() || !pen.near() {
			return fmt.Errorf("text %q: advance %v and rise %v at byte %d are beyond any paper", t.S, c.Adv, c.Rise, at)
		}
		at += c.Bytes
		if at < len(t.S) && !utf8.RuneStart(t.S[at]) {
			return fmt.Errorf("text %q: a cluster ends within a character, at byte %d", t.S, at)
		}
	}
	if at != len(t.S) {
		return fmt.Errorf("text %q: its clusters cover %d of %d bytes", t.S, at, len(t.S))
	}
	return nil
}

func (r Rect) check(what string) error {
	if r.W < 0 || r.H < 0 {
		return fmt.Errorf("%s of %v: a size below zero", what, r.Size)
	}
	if !r.At.near() || !r.W.near() || !r.H.near() {
		return fmt.Errorf("%s of %v at %v, %v is beyond any paper", what, r.Size, r.At.X, r.At.Y)
	}
	return nil
}

func (s Stroke) check() error {
	if s.Width <= 0 {
		return fmt.Errorf("a line of width %v cannot be seen", s.Width)
	}
	if !s.From.near() || !s.To.near() || !s.Width.near() {
		return fmt.Errorf("a line from %v, %v to %v, %v is beyond any paper", s.From.X, s.From.Y, s.To.X, s.To.Y)
	}
	var sum Length
	for _, d := range s.Dash {
		if d < 0 || !d.near() {
			return fmt.Errorf("a dash of %v in a line", d)
		}
		sum += d
	}
	if len(s.Dash) > 0 && sum == 0 {
		return errors.New("a line whose dashes are all zero")
	}
	return nil
}

func (b Bars) check() error {
	what := fmt.Sprintf("the %s symbol %q", b.Symbology, b.S)
	if err := b.Rect.check(what); err != nil {
		return err
	}
	if len(b.Rects) == 0 {
		return fmt.Errorf("%s has no bars", what)
	}
	for _, r := range b.Rects {
		if r.W <= 0 || r.H <= 0 {
			return fmt.Errorf("%s has a bar of %v", what, r.Size)
		}
		if err := r.check(what + ": a bar"); err != nil {
			return err
		}
	}
	return nil
}

func (l Length) near() bool { return l >= -reach && l <= reach }

func (p Point) near() bool { return p.X.near() && p.Y.near() }
