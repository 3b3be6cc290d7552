package check

// Marks tell which signs a text may hold. They are seen once, when a cell is
// read, so that a rule which looks for a sign in every cell need not search
// each of them: nearly all have none.
type Marks uint16

const (
	Brackets   Marks = 1 << iota // round or square
	Underscore                   // at least one
	Capitals                     // D or X, which are in TODO and XXX
	Spaces                       // perhaps at an end, two together, or one before a comma
	SignsTwice                   // of , ; : . one after the other, spaces between them or not
	Quoted                       // perhaps: it begins with " or beyond ASCII
	EndsOpen                     // its last sign is , ; or :
)

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

// marksOf looks at a text as written.
func marksOf(written string) Marks {
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
