package register

import (
	"context"
	"fmt"
	"slices"
	"strings"
)

// A Pair is a sheet and the sticker that is meant for it.
type Pair struct {
	Sheet   Specimen
	Sticker string // the catalogue number in full
}

// An Attaching is the work of putting stickers on sheets and confirming each
// by scan: first the sheet, by its collector and number, then the sticker that
// is on it. It knows in which order sheets and stickers lie, so that it can
// tell one wrong sticker from a slip by one that shifts all that follow.
type Attaching struct {
	order []Pair
	by    map[string]int // catalogKey of the sticker to the sheet's place
	fits  []bool         // confirmed
	bears []int          // the sheet that its sticker is meant for, as last scanned; -1 if not known
	last  [2]int         // sheet and shift of the last scan, where it did not fit
}

// NewAttaching begins with the sheets in the order in which they lie. It is an
// error if a sticker is named twice.
func NewAttaching(order []Pair) (*Attaching, error) {
	a := &Attaching{order: slices.Clone(order), by: map[string]int{}, fits: make([]bool, len(order)), bears: slices.Repeat([]int{-1}, len(order))}
	for i, p := range order {
		key := catalogKey(p.Sticker)
		if key == "" {
			return nil, faultf(ErrNotIssued, "%s has no number yet; issue it first", p.Sheet.at())
		}
		if at, twice := a.by[key]; twice {
			return nil, faultf(ErrClash, "%s is meant for %s and for %s", p.Sticker, order[at].Sheet.at(), p.Sheet.at())
		}
		a.by[key] = i
	}
	return a, nil
}

// A Finding is what a scan showed.
type Finding string

// The findings.
const (
	Fits         Finding = "fits"
	Slipped      Finding = "slipped"       // this and its neighbours bear the numbers of the sheets beside them
	WrongSticker Finding = "wrong sticker" // meant for another sheet: the two exchanged, or without a pattern
	Stray        Finding = "stray"         // meant for no sheet of this order
	NoSheet      Finding = "no sheet"      // no sheet of this order is called so
	SeveralFit   Finding = "several"       // more than one is; its part must be said
)

// A Scan is the answer to a pair of scans. Places count from 0 and are -1
// where there is none.
type Scan struct {
	Finding Finding
	Sheet   int // place of the sheet
	Meant   int // place of the sheet that the sticker is meant for
	// Shift is how many places the stickers have slipped: 1 if the sheet
	// bears the sticker of the next. The slip began with one of the sheets
	// From to Sheet.
	Shift, From int
	Message     string // for the person who scans
}

// Done returns how many sheets are confirmed, of how many.
func (a *Attaching) Done() (confirmed, of int) {
	for _, f := range a.fits {
		if f {
			confirmed++
		}
	}
	return confirmed, len(a.fits)
}

// Open returns the places of the sheets that are not confirmed.
func (a *Attaching) Open() []int {
	var open []int
	for i, f := range a.fits {
		if !f {
			open = append(open, i)
		}
	}
	return open
}

// Scan holds the sticker that was scanned against the sheet it is on. sheet is
// its collector and number, as "Almeida 214", with its part where a gathering
// has several sheets.
func (a *Attaching) Scan(sheet, sticker string) Scan {
	places := a.find(sheet)
	s := Scan{Sheet: -1, Meant: -1, From: -1}
	if i, ok := a.by[catalogKey(sticker)]; ok {
		s.Meant = i
	}
	switch len(places) {
	case 0:
		s.Finding, s.Message = NoSheet, fmt.Sprintf("no sheet here is called %q; look at its label, or at the order", sheet)
		return s
	case 1:
		s.Sheet = places[0]
	default:
		names := make([]string, len(places))
		for i, p := range places {
			names[i] = a.order[p].Sheet.String()
		}
		s.Finding, s.Message = SeveralFit, fmt.Sprintf("%q could be %s; say which", sheet, strings.Join(names, " or "))
		return s
	}
	a.bears[s.Sheet] = s.Meant
	a.judge(&s, sticker)
	if s.Finding == Fits || s.Finding == Stray {
		a.last = [2]int{}
	}
	return s
}

func (a *Attaching) judge(s *Scan, sticker string) {
	want := a.order[s.Sheet]
	switch {
	case s.Meant < 0:
		s.Finding = Stray
		s.Message = fmt.Sprintf("%s is not meant for any sheet here; %s gets %s", sticker, want.Sheet, want.Sticker)
		a.fits[s.Sheet] = false
		return
	case s.Meant == s.Sheet:
		a.fits[s.Sheet] = true
		s.Finding, s.Message = Fits, fmt.Sprintf("%s: %s", want.Sheet, want.Sticker)
		return
	}
	a.fits[s.Sheet] = false
	shift := s.Meant - s.Sheet
	again := a.last[1] == shift && a.last[0] != s.Sheet
	a.last = [2]int{s.Sheet, shift}
	s.Message = fmt.Sprintf("%s bears %s, which is meant for %s; it gets %s", want.Sheet, sticker, a.order[s.Meant].Sheet, want.Sticker)
	if a.bears[s.Meant] == s.Sheet { // a sheet that was scanned before
		s.Finding = WrongSticker
		s.Message += "; these two bear each other's: exchange them"
		return
	}
	if shift != 1 && shift != -1 && !again {
		s.Finding = WrongSticker
		return
	}
	// All up to the last sheet that was confirmed are right.
	s.Finding, s.Shift = Slipped, shift
	for s.From = s.Sheet; s.From > 0 && !a.fits[s.From-1]; {
		s.From--
	}
	cause := "a sticker was left out"
	switch {
	case a.fits[s.Meant]: // which bears it too
		cause = fmt.Sprintf("there are two stickers %s", a.order[s.Meant].Sticker)
	case shift < 0:
		cause = "a sheet was passed over"
	}
	from := "with this sheet"
	if s.From < s.Sheet {
		from = fmt.Sprintf("between %s and this sheet", a.order[s.From].Sheet)
	}
	s.Message += fmt.Sprintf("; it looks as if %s %s, and all sheets after it are wrong by %d: stop, go back and check", cause, from, max(shift, -shift))
}

// find returns the places of the sheets that a text names.
func (a *Attaching) find(text string) []int {
	fields := strings.Fields(text)
	var found, whole []int
	for i, p := range a.order {
		all := append(words(p.Sheet.Collector), words(p.Sheet.Part)...)
		rest, numbered := withoutNumber(fields, joined(p.Sheet.Number))
		said := words(strings.Join(rest, " "))
		fits := numbered && len(fields) > 0
		for _, w := range said {
			fits = fits && slices.ContainsFunc(all, func(known string) bool { return strings.HasPrefix(known, w) })
		}
		if !fits {
			continue
		}
		found = append(found, i)
		if strings.Join(words(p.Sheet.Part), " ") == "" || containsAll(said, words(p.Sheet.Part)) {
			whole = append(whole, i)
		}
	}
	// "Almeida 214 Sheet 1 of 2" is that part and no other, although its
	// words begin other parts' too.
	if len(whole) == 1 {
		return whole
	}
	return found
}

// withoutNumber takes a collector's number, as joined writes it, out of the
// fields of a text; it may be written with spaces, "CN 97-114".
func withoutNumber(fields []string, number string) (rest []string, ok bool) {
	if number == "" {
		return fields, true
	}
	for size := 1; size <= mostParts; size++ {
		for i := 0; i+size <= len(fields); i++ {
			if joined(strings.Join(fields[i:i+size], "")) == number {
				return slices.Concat(fields[:i], fields[i+size:]), true
			}
		}
	}
	return nil, false
}

func containsAll(list, wanted []string) bool {
	for _, w := range wanted {
		if !slices.Contains(list, w) {
			return false
		}
	}
	return true
}

// Attach marks the stickers of confirmed pairs as attached to their sheets, and
// keeps which specimen has the number where the register did not know it. A
// sticker that the register has for another specimen, or a specimen that has
// another number, is an ErrClash, and nothing is changed. A void sticker needs
// a reason.
func (r *Register) Attach(ctx context.Context, at At, pairs ...Pair) error {
	return r.write(ctx, at, func(c *change) error {
		specimens := make([]Specimen, len(pairs))
		for i, p := range pairs {
			specimens[i] = p.Sheet
			specimens[i].CatalogNumber = p.Sticker
		}
		m, err := c.newMatcher(specimens)
		if err != nil {
			return err
		}
		attached := map[int64][]int{}
		for i, sp := range specimens {
			h := m.of[i]
			switch err := m.answers[i].Err; {
			case err != nil:
				return err
			case m.answers[i].Foreign:
				return faultf(ErrForeign, "%s: %s is not a number of the register", sp.at(), sp.CatalogNumber)
			}
			already := h.state == Attached
			if err := c.attach(m, i, sp, h); err != nil {
				return err
			}
			if !already {
				attached[h.series] = append(attached[h.series], h.n)
			}
		}
		for _, s := range m.all {
			for _, run := range stretches(attached[s.id]) {
				id, err := c.event(event{what: Attached.event(), series: s.id, first: run[0], last: run[1], state: Attached})
				if err != nil {
					return err
				}
				if err := c.setRange(s.id, run[0], run[1], Attached, id); err != nil {
					return err
				}
			}
		}
		return c.learn(m)
	})
}

// attach sees whether sticker and specimen of pair i belong together.
func (c *change) attach(m *matcher, i int, sp Specimen, h *holder) error {
	number := m.answers[i].Number
	if len(h.rows) > 0 {
		return faultf(ErrClash, "%s is to be attached to %s and to %s", number, m.specimens[h.rows[0]].at(), sp.at())
	}
	if h.state != Attached {
		for _, s := range m.all {
			if s.id == h.series {
				if err := c.refuse(s, h.n, h.state, Attached); err != nil {
					return err
				}
			}
		}
	}
	if sp.blank() {
		h.rows = append(h.rows, i)
		h.state = Attached
		return nil
	}
	if h.described && !h.same(sp) {
		return faultf(ErrClash, "%s: the register has %s for %s", sp.at(), number, h)
	}
	others := slices.Clone(m.byKey[keyOf(sp)])
	if other := m.byID[indexKey(sp.OccurrenceID)]; other != nil && sp.OccurrenceID != "" {
		others = []*holder{other}
	}
	if len(others) > 0 && !slices.Contains(others, h) {
		// Another specimen of the gathering may well have a number, if an
		// identifier tells the two apart.
		if other := others[0]; sp.OccurrenceID == "" || len(other.occurrence) == 0 || other.occurrence[indexKey(sp.OccurrenceID)] {
			return faultf(ErrClash, "%s: it has the number %s already, and this sticker is %s", sp.at(), m.name(other), number)
		}
	}
	h.state = Attached
	// If the record's words were corrected since, its occurrenceID counts.
	m.take(i, sp, h)
	return nil
}

func keyOf(s Specimen) string {
	key, ok := gatheringKey(s)
	if !ok {
		return "\x00"
	}
	return key
}
