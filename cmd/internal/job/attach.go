package job

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/label/register"
)

// An AttachSession confirms by scan that each sticker sits on its sheet. It is
// told lines as a scanner or a keyboard gives them: a sheet's collector and
// number, then the number of the sticker on it. The pairs that fit are written as
// the work goes on, all but the last few, which undo can still take back.
//
// A sheet that has no number yet takes any sticker whose number was given out
// for no specimen in particular, and has that number from then on.
type AttachSession struct {
	r      *register.Register
	ctx    context.Context
	order  []register.Pair
	before map[int]bool // attached before this session
	free   map[int]bool // has no number yet; the sticker is "" until one is confirmed
	work   *register.Attaching

	sheet     int    // waits for its sticker; -1 if none does
	said      string // how the sheet was called
	confirmed []int  // places, in the order they were confirmed
	wrong     int    // scans that did not fit

	settled map[int]bool  // in the register now, and not taken back
	refused map[int]error // by the register

	// Unnumbered are the records of the table that can have no number, since
	// nothing tells them from others; Nameless the printed numbers of which the
	// register knows no specimen.
	Unnumbered, Nameless int
}

// An AttachAnswer is what the person who scans is told.
type AttachAnswer struct {
	Message string // "" is nothing to say
	Wrong   bool   // the message is of something wrong
	Done    bool   // no more lines are wanted
}

func newAttachSession(ctx context.Context, r *register.Register) *AttachSession {
	return &AttachSession{r: r, ctx: ctx, before: map[int]bool{}, free: map[int]bool{}, sheet: -1, settled: map[int]bool{}, refused: map[int]error{}}
}

// AttachTable begins with the sheets of a table in its order. Numbers that the
// table lacks are those that the register has for the specimens.
func (j *Job) AttachTable(ctx context.Context, r *Register, t *Table) (*AttachSession, error) {
	series, err := r.Series(ctx)
	if err != nil {
		return nil, err
	}
	own := j.House.Herbarium.Code
	if own == "" && len(series) == 1 {
		own = series[0].Pattern.Code
	}
	all, err := j.specimens(t, own, func(label.Finding) error { return nil })
	if err != nil {
		return nil, err
	}
	if missing := t.Only.Missing(); len(missing) > 0 {
		return nil, fmt.Errorf("the table has no record called %s", quoted(missing))
	}
	all.share()
	w := &issuing{all: all}
	for i := range all.rows {
		if one := &all.rows[i]; one.share == i && !one.other && (!one.bad || one.CatalogNumber != "") {
			w.asked = append(w.asked, i)
		}
	}
	answers, err := w.ask(ctx, r.Propose)
	if err != nil {
		return nil, err
	}
	all.tellApart(answers)
	s := newAttachSession(ctx, r)
	seen := map[string]bool{}
	var faults []error
	for i := range all.rows {
		one := &all.rows[i]
		if one.share != i || one.other || !one.chosen {
			continue
		}
		switch a, asked := answers[i]; {
		case a.Foreign || a.Number != "" && seen[a.Number]:
		case a.Err != nil && one.CatalogNumber != "":
			faults = append(faults, a.Err)
		case !asked || a.Err != nil || one.err != nil:
			s.Unnumbered++
		case a.Number == "":
			s.free[len(s.order)] = true
			s.add(one.Specimen, "", a.State)
		default:
			seen[a.Number] = true
			s.add(one.Specimen, a.Number, a.State)
		}
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	if ok, err := s.hasStickers(); err != nil || !ok {
		if err == nil {
			err = fmt.Errorf("no record of %s has a number; issue them first: cornerslip register issue %s -o numbered.csv", t.Source().Name(), t.Source().Name())
		}
		return nil, err
	}
	return s.start()
}

// hasStickers reports whether there is a number for any of the sheets.
func (s *AttachSession) hasStickers() (bool, error) {
	if len(s.order) == 0 || len(s.free) < len(s.order) {
		return len(s.order) > 0, nil
	}
	for row, err := range s.r.List(s.ctx, register.Filter{States: []register.State{register.Issued, register.Printed}}) {
		if err != nil || row.Specimen == (register.Specimen{}) {
			return err == nil, err
		}
	}
	return false, nil
}

// AttachPrinted begins with the numbers that are printed and not yet attached,
// in the order of the numbers.
func AttachPrinted(ctx context.Context, r *Register) (*AttachSession, error) {
	s := newAttachSession(ctx, r)
	for row, err := range r.List(ctx, register.Filter{States: []register.State{register.Printed}}) {
		switch {
		case err != nil:
			return nil, err
		case row.Specimen.Collector == "" && row.Specimen.Number == "":
			s.Nameless++
			continue
		}
		sheet := row.Specimen
		sheet.CatalogNumber = ""
		s.add(sheet, row.Range.String(), row.State)
	}
	if len(s.order) == 0 {
		if s.Nameless > 0 {
			return nil, fmt.Errorf("the register does not know whose the %d printed numbers are; name the table: cornerslip attach trip.csv", s.Nameless)
		}
		return nil, errors.New("no printed number waits to be attached; name the table to look at its sheets again: cornerslip attach trip.csv")
	}
	return s.start()
}

func (s *AttachSession) add(sheet register.Specimen, number string, state register.State) {
	if state == register.Attached {
		s.before[len(s.order)] = true
	}
	s.order = append(s.order, register.Pair{Sheet: sheet, Sticker: number})
}

func (s *AttachSession) start() (*AttachSession, error) {
	order := slices.Clone(s.order)
	for i := range s.free {
		order[i].Sticker = fmt.Sprintf("free %d", i) // no sticker is called so
	}
	var err error
	s.work, err = register.NewAttaching(order)
	return s, err
}

// Sheets returns how many sheets there are, how many of them were attached
// before, and how many take any free sticker.
func (s *AttachSession) Sheets() (all, before, free int) {
	return len(s.order), len(s.before), len(s.free)
}

// Confirmed returns how many sheets this session has confirmed.
func (s *AttachSession) Confirmed() int { return len(s.confirmed) }

// Wrong returns how many scans did not fit.
func (s *AttachSession) Wrong() int { return s.wrong }

// Waiting returns the sheet that waits for its sticker; "" if none does.
func (s *AttachSession) Waiting() string {
	if s.sheet < 0 {
		return ""
	}
	return s.order[s.sheet].Sheet.String()
}

// Line takes a line. A tab parts a sheet and its sticker on one line. Blank
// lines mean nothing: scanners send them.
func (s *AttachSession) Line(line string) AttachAnswer {
	if sheet, sticker, ok := strings.Cut(line, "\t"); ok && strings.TrimSpace(sheet) != "" && strings.TrimSpace(sticker) != "" && s.sheet < 0 {
		if a := s.Line(sheet); a.Message != "" {
			return a
		}
		return s.Line(sticker)
	}
	line = strings.TrimSpace(line)
	switch strings.ToLower(line) {
	case "":
		return AttachAnswer{}
	case "done":
		return AttachAnswer{Done: true}
	case "undo":
		return s.undo()
	}
	number := s.number(line)
	if s.sheet < 0 {
		if number != "" && len(s.work.Sheets(line)) == 0 {
			return s.fault("%s is a sticker; first the sheet it is on: its collector and number", number)
		}
		return s.sheetSaid(line)
	}
	if number == "" {
		if len(s.work.Sheets(line)) > 0 { // a sticker that would not scan was passed over
			waited := s.order[s.sheet]
			s.sheet = -1
			a := s.sheetSaid(line)
			return s.fault("%s has had no sticker and stays open", joinedMessage(waited.Sheet.String(), a.Message))
		}
		return s.fault("%q is no number of the register; scan the sticker on %s again, or say undo", line, s.Waiting())
	}
	place := s.sheet
	s.sheet = -1
	if s.settled[place] {
		if number == s.order[place].Sticker {
			return AttachAnswer{Message: fmt.Sprintf("%s: %s, as before", s.order[place].Sheet, number)}
		}
		return s.fault("%s bears %s, but it was confirmed with %s; look at the sheet again", s.order[place].Sheet, number, s.order[place].Sticker)
	}
	s.forget(place)
	if s.free[place] {
		return s.take(place, number)
	}
	if other := s.holder(number); other >= 0 {
		return s.fault("%s is on %s already; %s gets %s", number, s.order[other].Sheet, s.order[place].Sheet, s.order[place].Sticker)
	}
	scan := s.work.Scan(s.said, number)
	if scan.Finding != register.Fits {
		return s.fault("%s", scan.Message)
	}
	s.confirmed = append(s.confirmed, place)
	return AttachAnswer{Message: scan.Message}
}

// holder returns the sheet without a number of its own that has been given one;
// -1 if it is none.
func (s *AttachSession) holder(number string) int {
	for place := range s.free {
		if s.order[place].Sticker == number {
			return place
		}
	}
	return -1
}

// take gives a sheet that has no number yet the number of its sticker.
func (s *AttachSession) take(place int, number string) AttachAnswer {
	sheet := s.order[place].Sheet
	for _, p := range s.order {
		if p.Sticker == number {
			return s.fault("%s bears %s, which is that of %s", sheet, number, p.Sheet)
		}
	}
	row, err := s.r.Number(s.ctx, number)
	switch {
	case err != nil:
		return s.fault("%v", err)
	case row.Specimen != (register.Specimen{}):
		return s.fault("%s bears %s, which is that of %s", sheet, number, row.Specimen)
	case row.State != register.Issued && row.State != register.Printed:
		return s.fault("%s bears %s, which is %s; put another sticker on it", sheet, number, row.State)
	}
	s.order[place].Sticker = number
	s.confirmed = append(s.confirmed, place)
	return AttachAnswer{Message: fmt.Sprintf("%s: %s, its number from now on", sheet, number)}
}

// joinedMessage puts what is to be said of the next sheet after it.
func joinedMessage(sheet, more string) string {
	if more == "" {
		return sheet
	}
	return more + "; " + sheet
}

func (s *AttachSession) fault(format string, args ...any) AttachAnswer {
	s.wrong++
	return AttachAnswer{Message: fmt.Sprintf(format, args...), Wrong: true}
}

// sheetSaid takes a sheet.
func (s *AttachSession) sheetSaid(line string) AttachAnswer {
	places := s.work.Sheets(line)
	if len(places) != 1 {
		return s.fault("%s", s.work.Scan(line, "").Message) // which says why, and judges nothing
	}
	s.sheet, s.said = places[0], line
	return AttachAnswer{}
}

// number returns the number that a scan is of, in full; "" if it is none.
func (s *AttachSession) number(text string) string {
	if i := strings.LastIndexAny(text, "/=#"); i >= 0 { // a stable address, as matrix symbols hold it
		text = text[i+1:]
	}
	one, err := s.r.Range(s.ctx, text, "")
	if err != nil || one.Pattern.Code != "" && strings.Trim(text, "0123456789 ") == "" {
		return "" // figures alone are a collector's number here: stickers hold the code too
	}
	return one.String()
}

// undo takes back the sheet that waits, else the last pair confirmed.
func (s *AttachSession) undo() AttachAnswer {
	if s.sheet >= 0 {
		a := AttachAnswer{Message: fmt.Sprintf("forgotten: %s", s.Waiting())}
		s.sheet = -1
		return a
	}
	if len(s.confirmed) == 0 {
		return AttachAnswer{Message: "nothing to undo"}
	}
	last := s.confirmed[len(s.confirmed)-1]
	if s.settled[last] {
		return AttachAnswer{Message: "nothing to undo: the pairs before are in the register"}
	}
	s.confirmed = s.confirmed[:len(s.confirmed)-1]
	a := AttachAnswer{Message: fmt.Sprintf("open again: %s, %s", s.order[last].Sheet, s.order[last].Sticker)}
	s.forget(last)
	return a
}

func (s *AttachSession) forget(place int) {
	if s.free[place] {
		s.order[place].Sticker = ""
	}
	s.confirmed = slices.DeleteFunc(s.confirmed, func(c int) bool { return c == place })
}

// An AttachReport says how a session ended.
type AttachReport struct {
	Attached int // pairs that are in the register now
	Refused  []error
	Open     []string // sheets that are not confirmed, with their numbers
}

// The last pairs can be taken back; the others are written, some at a time.
const (
	revocable = 10
	portion   = 20
)

// Settle writes the pairs that are no longer to be taken back, once there are
// enough of them. It is to be called now and then, so that little is lost if the
// computer fails.
func (s *AttachSession) Settle(at At) error {
	open := s.unsettled()
	if len(open) < revocable+portion {
		return nil
	}
	return s.write(at, open[:len(open)-revocable])
}

// unsettled returns the confirmed places that are not written yet, in the order
// they were confirmed.
func (s *AttachSession) unsettled() []int {
	return slices.DeleteFunc(slices.Clone(s.confirmed), func(place int) bool { return s.settled[place] || s.refused[place] != nil })
}

// write writes pairs. One that the register refuses does not hold up the others.
func (s *AttachSession) write(at At, places []int) error {
	pairs := make([]register.Pair, len(places))
	for i, place := range places {
		pairs[i] = s.order[place]
	}
	if s.r.Attach(s.ctx, at, pairs...) == nil {
		for _, place := range places {
			s.settled[place] = true
		}
		return nil
	}
	for i, place := range places {
		switch err := s.r.Attach(s.ctx, at, pairs[i]); {
		case err == nil:
			s.settled[place] = true
		case isPairs(err):
			s.refused[place] = err
		default: // the register itself cannot be written
			return err
		}
	}
	return nil
}

// Finish writes the pairs that are left.
func (s *AttachSession) Finish(at At) (AttachReport, error) {
	if s.sheet >= 0 && !s.settled[s.sheet] { // it has had no sticker
		s.forget(s.sheet)
	}
	s.sheet = -1
	var err error
	if open := s.unsettled(); len(open) > 0 {
		slices.Sort(open)
		err = s.write(at, open)
	}
	rep := AttachReport{Attached: len(s.settled)}
	for i, p := range s.order {
		if s.refused[i] != nil {
			rep.Refused = append(rep.Refused, s.refused[i])
		}
		if s.before[i] || s.settled[i] {
			continue
		}
		number := p.Sticker
		if number == "" {
			number = "no number yet"
		}
		rep.Open = append(rep.Open, p.Sheet.String()+", "+number)
	}
	return rep, err
}

// isPairs reports whether an error is of the pair, not of the register.
func isPairs(err error) bool {
	for _, kind := range []error{register.ErrReadOnly, register.ErrLocked, register.ErrFull, register.ErrDamaged, register.ErrUnreachable, register.ErrNewer, context.Canceled} {
		if errors.Is(err, kind) {
			return false
		}
	}
	return true
}
