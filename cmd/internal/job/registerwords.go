package job

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label/accession"
	"cornerslip/label/register"
)

// Further words of the register that commands need.
type (
	RegisterState  = register.State
	RegisterRow    = register.Row
	RegisterEvent  = register.Event
	RegisterSeries = register.Series
	NumberRange    = register.Range
	NumberFilter   = register.Filter
	KeptLabel      = register.Kept
	NumberSpecimen = register.Specimen
)

// The states that commands name.
const (
	StateVoid    = register.Void
	StateUnknown = register.Unknown
)

// stateSynonyms are what people type for a state beside its own word.
var stateSynonyms = map[string]register.State{
	"held-elsewhere": register.HeldElsewhere, "heldelsewhere": register.HeldElsewhere, "elsewhere": register.HeldElsewhere,
}

// ParseState reads a state as people type it.
func ParseState(text string) (RegisterState, error) {
	t := strings.ToLower(strings.Join(strings.Fields(text), " "))
	for _, s := range register.States() {
		if t == string(s) {
			return s, nil
		}
	}
	if s, ok := stateSynonyms[t]; ok {
		return s, nil
	}
	return "", fmt.Errorf("there is no state %q; there are %s", text, joinedStates(register.States()))
}

// MarkStates are those that a number can be brought into by hand.
func MarkStates() []RegisterState {
	return slices.DeleteFunc(register.States(), func(s register.State) bool { return s == register.Issued || s == register.Unknown })
}

// NeedsReason reports whether a number is brought into a state only with a
// reason.
func NeedsReason(s RegisterState) bool { return s != register.Attached && s != register.Printed }

func joinedStates(states []register.State) string {
	words := make([]string, len(states))
	for i, s := range states {
		words[i] = string(s)
	}
	return strings.Join(words, ", ")
}

// RegisterAdvice adds to an error of opening a register what to do.
func RegisterAdvice(err error) error {
	switch {
	case errors.Is(err, register.ErrOlder):
		return fmt.Errorf("%w: cornerslip register open --upgrade, which keeps a copy as it was beside it", err)
	case errors.Is(err, register.ErrDamaged):
		return fmt.Errorf("%w; how a backup is restored: cornerslip register backup --help", err)
	case errors.Is(err, register.ErrMissing):
		return fmt.Errorf("%w, with: cornerslip register open herbarium.db --series VDOURA-0000000", err)
	}
	return err
}

// NumberPattern returns how numbers are written: as given, else as the house
// file says.
func (j *Job) NumberPattern(given string) (accession.Pattern, error) {
	if given == "" {
		given = j.House.Numbers.Pattern
	}
	if given == "" {
		return accession.Pattern{}, errors.New(`how are your numbers written? say it with --series VDOURA-0000000, the code and a row of zeros, or in the house file: [numbers] pattern = "VDOURA-0000000"`)
	}
	p, err := accession.ParsePattern(given)
	if err == nil {
		err = p.Valid()
	}
	return p, err
}

// numberOf reads a number of a pattern, in full or in figures alone.
func numberOf(p accession.Pattern, text string) (int, error) {
	text = strings.TrimSpace(text)
	if strings.Trim(text, "0123456789") == "" {
		n, err := strconv.Atoi(text)
		if err != nil || n < 1 || n > p.Max() {
			return 0, fmt.Errorf("%q is no number from 1 to %s", text, p.Format(p.Max()))
		}
		return n, nil
	}
	n, err := p.Parse(text)
	if err != nil && !errors.Is(err, accession.ErrNoCheck) {
		return 0, err
	}
	return n, nil
}

// AddSeries adds a series to a register. from is its first number to be issued,
// in full or in figures; "" is 1.
func AddSeries(ctx context.Context, r *Register, at At, p accession.Pattern, from string) (RegisterSeries, error) {
	first, err := firstNumber(p, from)
	if err != nil {
		return RegisterSeries{}, err
	}
	return r.AddSeries(ctx, at, p, first)
}

func firstNumber(p accession.Pattern, from string) (int, error) {
	if from == "" {
		return 1, nil
	}
	n, err := numberOf(p, from)
	if err != nil {
		return 0, fmt.Errorf("the first number: %w", err)
	}
	return n, nil
}

// OpenNew makes a new register with its first series.
func (j *Job) OpenNew(ctx context.Context, address string, at At, o RegisterOptions, p accession.Pattern, from string) (*Register, RegisterSeries, error) {
	// A register without a series would be left behind by a wrong number.
	if _, err := firstNumber(p, from); err != nil {
		return nil, RegisterSeries{}, err
	}
	r, err := j.CreateRegister(ctx, address, at, o)
	if err != nil {
		return nil, RegisterSeries{}, err
	}
	s, err := AddSeries(ctx, r, at, p, from)
	if err != nil {
		r.Close()
		return nil, s, fmt.Errorf("the register %s was made, but it has no series: %w; add it with: cornerslip register series %s", r.Address(), err, p)
	}
	return r, s, nil
}

// Upgrade brings a register of an older version up to this program's; done is
// false where there was nothing to do.
func (j *Job) Upgrade(ctx context.Context, address string, at At, o RegisterOptions) (version int, done bool, err error) {
	r, err := j.OpenRegister(ctx, address, o)
	if errors.Is(err, register.ErrOlder) {
		o.Upgrade, done = at, true
		r, err = j.OpenRegister(ctx, address, o)
	}
	if err != nil {
		return 0, false, err
	}
	return r.Version(), done, r.Close()
}

// A SeriesOverview is a series and what has become of its numbers.
type SeriesOverview struct {
	RegisterSeries
	Next   string // the number that is issued next; "" if none is left
	Counts map[RegisterState]int
}

// Overview returns all series of a register.
func Overview(ctx context.Context, r *Register) ([]SeriesOverview, error) {
	all, err := r.Series(ctx)
	if err != nil {
		return nil, err
	}
	counts, err := r.Count(ctx)
	if err != nil {
		return nil, err
	}
	views := make([]SeriesOverview, len(all))
	for i, s := range all {
		views[i] = SeriesOverview{s, NextNumber(s), counts[s.Name]}
	}
	return views, nil
}

// NextNumber returns the number of a series that is issued next; "" if none is
// left.
func NextNumber(s RegisterSeries) string {
	if s.Highest >= s.Pattern.Max() {
		return ""
	}
	return s.Pattern.Format(s.Highest + 1)
}

// seriesOf returns the series that a command means, as SeriesName finds it.
func (j *Job) seriesOf(ctx context.Context, r *Register, given string) (register.Series, error) {
	name, err := j.SeriesName(ctx, r, given)
	if err != nil {
		return register.Series{}, err
	}
	all, err := r.Series(ctx)
	for _, s := range all {
		if s.Name == name {
			return s, nil
		}
	}
	return register.Series{}, err
}

// Ranges reads numbers as people type them: single ones, "FIRST..LAST", and
// "FIRST to LAST" as the program writes it. LAST may be in figures alone.
func Ranges(ctx context.Context, r *Register, words []string) ([]NumberRange, error) {
	var all []NumberRange
	for i := 0; i < len(words); i++ {
		first, last, ranged := strings.Cut(words[i], "..")
		if !ranged && i+2 < len(words) && (words[i+1] == "to" || words[i+1] == "–") {
			last, ranged = words[i+2], true
			i += 2
		} else if !ranged {
			if a, b, ok := strings.Cut(words[i], " to "); ok {
				first, last, ranged = a, b, true
			}
		}
		if ranged && (strings.TrimSpace(first) == "" || strings.TrimSpace(last) == "") {
			return nil, fmt.Errorf("%q is half a range; write both ends, as in VDOURA-0000101..VDOURA-0000120", words[i])
		}
		one, err := numberRange(ctx, r, strings.TrimSpace(first), strings.TrimSpace(last))
		if err != nil {
			return nil, err
		}
		all = append(all, one)
	}
	return all, nil
}

func numberRange(ctx context.Context, r *Register, first, last string) (register.Range, error) {
	one, err := r.Range(ctx, first, "")
	if err != nil {
		return one, err
	}
	if last != "" && strings.Trim(last, "0123456789") == "" {
		n, err := numberOf(one.Pattern, last)
		if err != nil {
			return one, err
		}
		last = one.Pattern.Format(n)
	}
	return r.Range(ctx, first, last)
}

// Filter reads what of a register is to be listed: a series, the first and the
// last number, in full or in figures, and states parted by commas.
func (j *Job) Filter(ctx context.Context, r *Register, series, from, to, states string) (NumberFilter, error) {
	f := register.Filter{Series: series}
	for _, word := range strings.Split(states, ",") {
		if strings.TrimSpace(word) == "" {
			continue
		}
		s, err := ParseState(word)
		if err != nil {
			return f, err
		}
		f.States = append(f.States, s)
	}
	for i, text := range []string{from, to} {
		if text == "" {
			continue
		}
		var s register.Series
		var err error
		if one, rangeErr := r.Range(ctx, text, ""); rangeErr == nil && series == "" {
			s.Name, s.Pattern = one.Series, one.Pattern
		} else if s, err = j.seriesOf(ctx, r, series); err != nil {
			return f, err
		}
		if f.Series != "" && f.Series != s.Name && series == "" {
			return f, fmt.Errorf("%s and %s are of two series", from, to)
		}
		n, err := numberOf(s.Pattern, text)
		if err != nil {
			return f, err
		}
		if f.Series = s.Name; i == 0 {
			f.First = n
		} else {
			f.Last = n
		}
	}
	if f.Last > 0 && f.Last < f.First {
		return f, fmt.Errorf("%s comes after %s; write the lower one first", from, to)
	}
	return f, nil
}

// OnNoSheet reports numbers that the register has as attached to a sheet: what is
// void is on none.
func OnNoSheet(ctx context.Context, r *Register, ranges []register.Range) error {
	for _, one := range ranges {
		for row, err := range r.List(ctx, register.Filter{Series: one.Series, First: one.First, Last: one.Last, States: []register.State{register.Attached}}) {
			if err != nil {
				return err
			}
			of := ""
			if row.Specimen.Collector != "" || row.Specimen.Number != "" {
				of = " of " + row.Specimen.String()
			}
			return fmt.Errorf("%s is attached to the sheet%s, and a void number is on none; if its sticker was taken off, say --taken-off; if the specimen is gone, mark it as deaccessioned, transferred or lost", row.Range, of)
		}
	}
	return nil
}
