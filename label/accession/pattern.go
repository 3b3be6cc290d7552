package accession

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"
)

// A Pattern is how the numbers of one series are written: "VDOURA-0000123".
type Pattern struct {
	Code      string // of the herbarium or collection, "VDOURA"
	Separator string // between code and figures, "-"; it may be ""
	Digits    int    // how many figures, leading zeros included
	// Check is the check character system; the character stands last, after
	// CheckSeparator. It is worked out from code and figures, or from the
	// figures alone where the scheme takes no letters.
	Check          Scheme
	CheckSeparator string
}

// maxDigits keeps every number within an int on any machine that has 64 bits.
const maxDigits = 15

// ParsePattern reads the notation that house files use: the code and the
// separator as they are, then a row of zeros for the figures, and, if numbers
// have a check character, a space and its scheme:
//
//	VDOURA-0000000
//	VDOURA0000000 MOD 37,36
//	VDOURA-0000000- MOD 37-2      (a hyphen before the check character too)
//
// A code that itself ends in a zero cannot be told from the figures and needs a
// separator.
func ParsePattern(notation string) (Pattern, error) {
	fail := func(why string) (Pattern, error) {
		return Pattern{}, fmt.Errorf("number pattern %q: %s", notation, why)
	}
	body := strings.TrimSpace(notation)
	var p Pattern
	if i := strings.LastIndex(strings.ToUpper(body), " MOD"); i >= 0 {
		s, err := ParseScheme(body[i:])
		if err != nil {
			return fail(err.Error())
		}
		p.Check, body = s, strings.TrimSpace(body[:i])
	}
	end := strings.LastIndexByte(body, '0') + 1
	start := end
	for start > 0 && body[start-1] == '0' {
		start--
	}
	p.Digits, p.CheckSeparator = end-start, body[end:]
	p.Code = strings.TrimRightFunc(body[:start], isSeparator)
	p.Separator = body[len(p.Code):start]
	if p.Digits == 0 {
		return fail(`it has no zeros; write one for each figure, as in "VDOURA-0000000"`)
	}
	if err := p.Valid(); err != nil {
		return fail(err.Error())
	}
	return p, nil
}

// Valid reports what is wrong with p: a code or separator that cannot be
// printed as bars, no figures or too many, a check character without a scheme.
func (p Pattern) Valid() error {
	for _, r := range p.Code + p.Separator + p.CheckSeparator {
		if r < 0x20 || r > 0x7E {
			return fmt.Errorf("%q (U+%04X) cannot be barred; only letters from A to Z, figures and common signs can", string(r), r)
		}
	}
	for _, s := range []string{p.Separator, p.CheckSeparator} {
		if strings.ContainsFunc(s, func(r rune) bool { return !isSeparator(r) }) {
			return fmt.Errorf("%q cannot part a number; a space, hyphen, full stop, slash, underscore or colon can", s)
		}
	}
	if _, err := ParseScheme(string(p.Check)); err != nil {
		return err
	}
	switch {
	case p.Digits < 1 || p.Digits > maxDigits:
		return fmt.Errorf("%d figures: 1 to %d are possible", p.Digits, maxDigits)
	case p.Code != strings.TrimSpace(p.Code):
		return errors.New("the code must not begin or end with a space")
	case p.Check == None && p.CheckSeparator != "":
		return fmt.Errorf("%q after the figures needs a check character scheme, as in %q", p.CheckSeparator, p.String()+" MOD 37,36")
	}
	if p.Check == Mod37_36 || p.Check == Mod37_2 || p.Check == Mod97_10 {
		if _, err := p.Check.Compute(p.Code + "0"); err != nil {
			return err
		}
	}
	return nil
}

// String returns the pattern in the notation that ParsePattern reads.
func (p Pattern) String() string {
	s := p.Code + p.Separator + strings.Repeat("0", p.Digits) + p.CheckSeparator
	if p.Check != None {
		s += " " + string(p.Check)
	}
	return s
}

// Max is the highest number the pattern can write.
func (p Pattern) Max() int {
	n := 1
	for range p.Digits {
		n *= 10
	}
	return n - 1
}

// Format writes the number n. It panics if n is below 0 or beyond Max: a number
// with a figure too many would be another series.
func (p Pattern) Format(n int) string {
	if n < 0 || n > p.Max() {
		panic(fmt.Sprintf("accession: %d does not fit %s", n, p))
	}
	digits := figures(n, p.Digits)
	return p.Code + p.Separator + digits + p.CheckSeparator + p.check(digits)
}

func (p Pattern) check(digits string) string {
	payload := p.Code + digits
	if p.Check == Mod11_2 || p.Check == Mod11_10 {
		payload = digits
	}
	c, err := p.Check.Compute(payload)
	if err != nil {
		panic(fmt.Sprintf("accession: pattern %s: %v", p, err)) // Valid would have said so
	}
	return c
}

// What Parse may find; errors.Is tells.
var (
	// ErrForeign: the text is no number of this series.
	ErrForeign = errors.New("not a number of this series")
	// ErrFigures: the code is right, the figures are too many, too few or none.
	ErrFigures = errors.New("wrong figures")
	// ErrCheck: the check character does not fit.
	ErrCheck = errors.New("wrong check character")
	// ErrNoCheck: the check character is missing.
	ErrNoCheck = errors.New("no check character")
)

// A ParseError says why a text is no number of a pattern.
type ParseError struct {
	Text    string
	Pattern Pattern
	Kind    error  // ErrForeign, ErrFigures, ErrCheck or ErrNoCheck
	Why     string // what is wrong and what would be right
}

func (e *ParseError) Error() string { return fmt.Sprintf("%q: %s", e.Text, e.Why) }

// Unwrap returns the kind.
func (e *ParseError) Unwrap() error { return e.Kind }

// Parse reads a number of the series as people type it: in small letters or
// capitals, with or without spaces, hyphens and other signs between its parts,
// and, in a series without check characters, without leading zeros. The error
// is a *ParseError. Beside ErrNoCheck the number is returned too, for it is
// complete but for what the program can supply.
func (p Pattern) Parse(text string) (int, error) {
	fail := func(kind error, format string, args ...any) (int, error) {
		return 0, &ParseError{Text: text, Pattern: p, Kind: kind, Why: fmt.Sprintf(format, args...)}
	}
	rest, ok := strings.CutPrefix(bare(text), bare(p.Code))
	if !ok || !utf8.ValidString(text) {
		return fail(ErrForeign, "not a number of the series %s", p)
	}
	i := 0
	for i < len(rest) && '0' <= rest[i] && rest[i] <= '9' {
		i++
	}
	digits, tail := rest[:i], rest[i:]
	// A check character that is a figure stands among the figures.
	if k := p.Check.length(); k > 0 && len(tail) < k && len(digits) == p.Digits+k-len(tail) {
		digits, tail = rest[:p.Digits], rest[p.Digits:]
	}
	switch {
	case len(tail) > p.Check.length() || digits == "" && p.Code == "" || digits == "" && tail != "":
		return fail(ErrForeign, "not a number of the series %s", p)
	case digits == "":
		return fail(ErrFigures, "the figures are missing; %s has %d", p, p.Digits)
	case len(digits) > p.Digits:
		return fail(ErrFigures, "%d figures, %s has %d", len(digits), p, p.Digits)
	case p.Check != None && len(digits) < p.Digits:
		return fail(ErrFigures, "%d figures, all %d of %s are needed where a check character follows", len(digits), p.Digits, p)
	}
	n := 0
	for _, c := range digits {
		n = n*10 + int(c-'0')
	}
	if p.Check == None {
		return n, nil
	}
	switch want := p.check(digits); tail {
	case want:
		return n, nil
	case "":
		_, err := fail(ErrNoCheck, "the check character is missing; the whole number is %s", p.Format(n))
		return n, err
	default:
		return fail(ErrCheck, "the check character %s does not fit, one of the characters is wrong; for these figures it would be %s", tail, want)
	}
}

// ReadLine says how text is read as a number of the series:
// "STATUS<TAB>number as it is written in full". STATUS is ok; no_check where
// the check character was missing and is supplied; wrong_check where it does
// not fit; foreign for a number of another series; invalid for this series'
// code with figures that are too many or too few. The number is empty but for
// ok and no_check.
func (p Pattern) ReadLine(text string) string {
	n, err := p.Parse(text)
	switch {
	case err == nil:
		return "ok\t" + p.Format(n)
	case errors.Is(err, ErrNoCheck):
		return "no_check\t" + p.Format(n)
	case errors.Is(err, ErrCheck):
		return "wrong_check\t"
	case errors.Is(err, ErrForeign):
		return "foreign\t"
	}
	return "invalid\t"
}
