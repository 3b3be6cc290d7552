package check

import "slices"

// Marks tell what a text may hold. They are seen once, when a cell is read, and
// kept for the row below that repeats it, so that a rule which looks for a sign in
// every cell need not search each of them: nearly all have none.
type Marks uint64

const (
	Brackets   Marks = 1 << iota // round or square
	Underscore                   // at least one
	Capitals                     // D or X, which are in TODO and XXX
	Spaces                       // perhaps at an end, two together, or one before a comma or the last full stop
	SignsTwice                   // of , ; : . one after the other, spaces between them or not
	Quoted                       // perhaps: it begins with " or beyond ASCII
	EndsOpen                     // its last sign is , ; or :
	firstOwn                     // of a rule
)

// A look is what a rule looks for in a cell.
type look struct {
	mark, needs Marks
	terms       []string
	says        func(text string) bool
}

// looks are those of all rules, made before any table is read.
var looks []look

// NewMark returns a mark of its own, for the cells of some columns that have one
// of the marks needs, where it is not 0, and of whose text, trimmed, says is true.
// says must depend on nothing else. It is for the variables of a package.
func NewMark(terms []string, needs Marks, says func(text string) bool) Marks {
	mark := firstOwn << len(looks)
	if mark == 0 {
		panic("check: no room for another mark")
	}
	looks = append(looks, look{mark, needs, terms, says})
	return mark
}

// HasAny reports whether a cell has one of the marks.
func (r *Record) HasAny(m Marks) bool { return r.marks&m != 0 }

// Has reports whether a term's cell has the mark.
func (r *Record) Has(m Marks, term string) bool {
	if r.marks&m == 0 {
		return false
	}
	e := r.entry(term)
	return e != nil && e.marks&m != 0
}

// Marked yields the filled cells that have one of the marks: the term, the text and
// the text as written, with the blanks around it.
func (r *Record) Marked(m Marks, yield func(term, text, written string)) {
	if r.marks&m == 0 {
		return
	}
	for i := range r.fields {
		if e := &r.fields[i]; e.marks&m != 0 {
			yield(e.term, e.Text, e.written)
		}
	}
}

// What stood before a byte, as far as it matters for the marks.
const (
	afterOther = iota
	afterBlank
	afterSign
	afterSignAndBlank
	markStates
)

// markSteps are, for what stood before and a byte, the marks to set (shifted by 2) and what
// stands before the next.
var markSteps = func() (steps [markStates][256]uint16) {
	for was := range uint16(markStates) {
		for b := range steps[was] {
			var m Marks
			next := uint16(afterOther)
			switch b {
			case '(', ')', '[', ']':
				m = Brackets
			case '_':
				m = Underscore
			case 'D', 'X':
				m = Capitals
			case ' ':
				next = afterBlank
				if was == afterSign || was == afterSignAndBlank {
					next = afterSignAndBlank
				}
				if was == afterBlank || was == afterSignAndBlank {
					m = Spaces
				}
			case ',', ';', ':', '.':
				next = afterSign
				if was == afterSign || was == afterSignAndBlank {
					m = SignsTwice
				}
				if b == ',' && (was == afterBlank || was == afterSignAndBlank) {
					m |= Spaces
				}
			}
			steps[was][b] = uint16(m)<<2 | next
		}
	}
	return steps
}()

// marksOf looks at a text as written, with what rules look for in its column.
func marksOf(written, text string, looks []*look) Marks {
	m := signsOf(written)
	for _, l := range looks {
		if (l.needs == 0 || m&l.needs != 0) && l.says(text) {
			m |= l.mark
		}
	}
	return m
}

// looksAt gathers what rules look for in a column.
func looksAt(term string) (at []*look) {
	for i := range looks {
		if slices.Contains(looks[i].terms, term) {
			at = append(at, &looks[i])
		}
	}
	return at
}

// signsOf looks for the signs in a text as written.
func signsOf(written string) Marks {
	if written == "" {
		return 0
	}
	var m, was uint16
	for i := range len(written) {
		step := markSteps[was&3][written[i]]
		m |= step
		was = step
	}
	marks := Marks(m >> 2)
	first, last := written[0], written[len(written)-1]
	if first == '"' || first >= 0x80 {
		marks |= Quoted
	}
	if first <= ' ' || first >= 0x80 || last <= ' ' || last >= 0x80 {
		marks |= Spaces
	}
	if n := len(written); last == '.' && n > 1 && written[n-2] == ' ' {
		marks |= Spaces
	}
	for i := len(written) - 1; i >= 0; i-- {
		if b := written[i]; b == ',' || b == ';' || b == ':' {
			marks |= EndsOpen
		} else if b == ' ' {
			continue
		}
		break
	}
	return marks
}
