package date

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
	"unicode"

	"cornerslip/label/lang"
)

// A kind is what a value in a date's text can be.
type kind uint8

const (
	figures     kind = iota // a number as written
	monthName               // a name or a Roman figure
	openYear                // 193-, 1980s: a span of years
	placeholder             // XX, ??: not known
	season
)

// A value is a figure, a month or the like.
type value struct {
	kind       kind
	n          int    // number, month, first year of a span
	digits     string // as written
	months     []int  // of a month name that several languages share
	span       int    // years of an openYear
	ordinal    bool   // 7th: a day
	apostrophe bool   // '93: a year
	guess      bool   // 60s: the century was not written
}

// A gap is what stands between two values.
type gap struct {
	dash, longDash, slash, dot, comma, to, and, or, space bool
}

// joins reports whether the gap can stand between the ends of an interval.
func (g gap) joins() bool { return g.dash || g.longDash || g.slash || g.to || g.lists() }

// lists reports whether the gap can stand between the members of a list.
func (g gap) lists() bool { return g.and || g.or || g.comma }

// inside reports whether the gap can stand inside a date.
func (g gap) inside() bool { return !g.to && !g.and && !g.or }

// scanned is a text cut into values.
type scanned struct {
	values  []value
	gaps    []gap // gaps[i] stands before values[i]; gaps[0] does not count
	trail   gap   // behind the last value
	class   map[class]bool
	weekday []time.Weekday
	doubt   bool // a question mark
	minus   bool // the text begins with a minus sign glued to a figure
	times   []clock
	clean   string // the text without times and calendars
	julian  bool
	part    bool // last week of, first half of; a season
}

// A clock is a time of day and where in the text it stood.
type clock struct {
	text string
	last bool // behind everything else
}

// plainly replaces the characters that stand for others.
var plainly = strings.NewReplacer(
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "\u3000", " ", "\t", " ", "\n", " ", "\r", " ",
	"‐", "-", "‑", "-", "−", "-", "⁻", "-", "\u00ad", "", "－", "-",
	"’", "'", "‘", "'", "´", "'", "`", "'", "ʼ", "'",
	"０", "0", "１", "1", "２", "2", "３", "3", "４", "4", "５", "5", "６", "6", "７", "7", "８", "8", "９", "9",
	"／", "/", "．", ".", "，", ",", "～", "~", "&amp;", "&",
	"segunda-feira", "segunda", "terça-feira", "terça", "quarta-feira", "quarta", "quinta-feira", "quinta", "sexta-feira", "sexta",
)

// marker stands in a text for the first time of day taken out of it, the next
// character for the second, and so on.
const marker = '\ue000'

// clocks takes times of day out of a text and returns them in their order.
func clocks(text string) (string, []clock, error) {
	text = strings.Map(func(r rune) rune {
		if r >= marker && r < marker+longest {
			return '\ufffd'
		}
		return r
	}, text)
	var taken []string
	var err error
	for _, re := range []*regexp.Regexp{clockTime, hourTime, hoursTime} {
		if re == clockTime && !strings.Contains(text, ":") || re != clockTime && !figureBefore(text, "hHaApPuU") {
			continue
		}
		text = re.ReplaceAllStringFunc(text, func(s string) string {
			c, e := clockText(re, re.FindStringSubmatch(s))
			if err == nil {
				err = e
			}
			taken = append(taken, c)
			return " " + string(marker+rune(len(taken)-1)) + " "
		})
	}
	if len(taken) == 0 {
		return text, nil, nil
	}
	text = timeRange.ReplaceAllString(text, "$1 $2")
	var found []clock
	end := []rune(strings.TrimRight(text, " .,)]"))
	text = strings.Map(func(r rune) rune {
		if i := int(r - marker); i >= 0 && i < len(taken) {
			found = append(found, clock{taken[i], r == end[len(end)-1]})
			return ' '
		}
		return r
	}, text)
	return text, found, err
}

// figureBefore reports whether a figure stands before one of the letters, with
// nothing but spaces, stops and colons between. It saves asking a regular
// expression.
func figureBefore(text, letters string) bool {
	after := false
	for _, r := range text {
		switch {
		case isDigit(r):
			after = true
		case r == ' ' || r == '.' || r == ':':
		case after && strings.ContainsRune(letters, r):
			return true
		default:
			after = false
		}
	}
	return false
}

func clockText(re *regexp.Regexp, g []string) (string, error) {
	h, _ := strconv.Atoi(g[2])
	rest, half, zone := "", "", ""
	switch re {
	case clockTime:
		rest, half, zone = ":"+g[3]+g[4], g[5], g[6]
	case hourTime:
		if minute := g[3] + g[4]; minute != "" {
			rest = ":" + minute
		}
		half, zone = g[5], g[6]
	default:
		rest = ":" + g[3]
	}
	switch strings.ToLower(half) {
	case "p":
		if h < 12 {
			h += 12
		}
	case "a":
		if h == 12 {
			h = 0
		}
	}
	zone = strings.ToUpper(zone)
	switch zone {
	case "UTC", "GMT":
		zone = "Z"
	case "Z":
	default:
		zone = strings.TrimLeft(zone, "UTCGM")
	}
	c := fmt.Sprintf("%02d%s%s", h, rest, zone)
	return c, checkTime(c, false)
}

// scan cuts a text into values and what stands between them. With repair set
// it also takes figures for the letters they look like, and the reverse, and
// misspelt months; what comes of that is a guess.
func scan(text string, repair bool) (*scanned, error) {
	s := &scanned{class: map[class]bool{}}
	text = plainly.Replace(text)
	var err error
	if text, s.times, err = clocks(text); err != nil {
		return nil, err
	}
	s.julian, s.part = oldStyle.found(text), partOf.found(text)
	text = reworded(partOf.without(newStyle.without(oldStyle.without(text))))
	if figureBefore(text, "ºª°erathsnodERATHSNOD") {
		text = ordinalSign.ReplaceAllString(text, "$1 ")
	}
	if decade.in(text) {
		text = decade.ReplaceAllString(text, "${1}s")
	}
	text = fromCJK(text)
	text = strings.TrimSpace(text)
	s.clean = text
	s.minus = len(text) > 1 && text[0] == '-' && '0' <= text[1] && text[1] <= '9'
	return s, s.cut(text, repair)
}

func (s *scanned) cut(text string, repair bool) error {
	masks := map[int][]int{}
	if strings.ContainsAny(text, "-–_xX?") {
		for _, m := range yearMask.FindAllStringSubmatchIndex(text, -1) {
			masks[m[2]] = m
		}
	}
	var g gap
	rest := []rune(text)
	at := 0 // byte offset of rest[0]
	advance := func(n int) {
		at += len(string(rest[:n]))
		rest = rest[n:]
	}
	for len(rest) > 0 {
		if m, ok := masks[at]; ok {
			v := value{kind: openYear, span: 100}
			v.n, _ = strconv.Atoi(text[m[4]:m[5]] + "00")
			if m[6] >= 0 {
				v.span = 10
				v.n += 10 * int(text[m[6]]-'0')
			}
			s.add(v, &g)
			advance(len([]rune(text[m[2]:m[3]])))
			continue
		}
		n := word(rest)
		if n == 0 {
			n = s.mark(rest, &g)
			advance(n)
			continue
		}
		if err := s.word(string(rest[:n]), rest[n:], &g, repair); err != nil {
			return err
		}
		advance(n)
	}
	s.trail = g
	return nil
}

func (s *scanned) add(v value, g *gap) {
	s.values = append(s.values, v)
	s.gaps = append(s.gaps, *g)
	*g = gap{}
}

// word returns how many runes from the beginning are letters and figures.
func word(r []rune) int {
	n := 0
	for n < len(r) && (unicode.IsLetter(r[n]) || unicode.IsDigit(r[n]) || unicode.Is(unicode.Mn, r[n]) || n > 0 && r[n] == '°') {
		n++
	}
	return n
}

// mark reads one sign that is neither letter nor figure.
func (s *scanned) mark(r []rune, g *gap) int {
	switch r[0] {
	case '?':
		n := 1
		for n < len(r) && r[n] == '?' {
			n++
		}
		if n > 1 {
			s.add(value{kind: placeholder, digits: string(r[:n])}, g)
		} else {
			s.doubt = true
		}
		return n
	case '_':
		n := 1
		for n < len(r) && r[n] == '_' {
			n++
		}
		if n > 1 {
			s.add(value{kind: placeholder, digits: string(r[:n])}, g)
		} else {
			g.dash = true
		}
		return n
	case '-':
		g.dash = true
	case '–', '—', '―':
		g.longDash = true
	case '/', '\\':
		g.slash = true
	case '.', ':', '·':
		g.dot = true
	case ',', ';':
		g.comma = true
	case '&', '+':
		g.and = true
	case '~', '±', '≈':
		s.class[circaWord] = true
	case '<':
		s.class[beforeWord] = true
	case '>':
		s.class[afterWord] = true
	case ' ':
		g.space = true
	}
	return 1
}

// word reads a run of letters and figures.
func (s *scanned) word(w string, after []rune, g *gap, repair bool) error {
	digits := strings.Trim(w, "0123456789") == ""
	if digits {
		s.number(w, after, g)
		return nil
	}
	if s.name(w, g) {
		return nil
	}
	if vs, circa, ok := split(w); ok {
		for _, v := range vs {
			s.add(v, g)
		}
		if circa {
			s.class[circaWord] = true
		}
		return nil
	}
	if repair {
		if v, ok := mended(w); ok {
			s.add(v, g)
			return nil
		}
	}
	return fmt.Errorf("%q is not part of a date", w)
}

// number adds a run of figures, with the ' before it and the s behind it.
func (s *scanned) number(w string, after []rune, g *gap) {
	v := value{kind: figures, digits: w}
	v.n, _ = strconv.Atoi(w[max(0, len(w)-9):])
	if i := len(s.clean) - len(string(after)) - len(w); i > 0 && s.clean[i-1] == '\'' && len(w) == 2 && (len(after) == 0 || after[0] != 's') {
		v.apostrophe = true
	}
	if len(after) > 1 && after[0] == '\'' && after[1] == 's' && (len(after) == 2 || !unicode.IsLetter(after[2])) {
		v.toDecade()
	}
	s.add(v, g)
}

func (v *value) toDecade() {
	if len(v.digits) == 2 && v.n%10 == 0 {
		v.kind, v.span, v.guess = openYear, 10, true
	}
	if len(v.digits) != 4 || v.n%10 != 0 {
		return
	}
	v.kind, v.span = openYear, 10
	if v.n%100 == 0 {
		v.span = -100 // the decade or the century
	}
}

// name adds a word of letters, if it is one that dates are made of.
func (s *scanned) name(w string, g *gap) bool {
	if m, ok := lang.ParseRomanMonth(w); ok {
		s.add(value{kind: monthName, n: m}, g)
		return true
	}
	if months := lang.FindMonth(w); len(months) > 0 {
		s.add(value{kind: monthName, n: months[0], months: months[1:]}, g)
		return true
	}
	f := lang.Fold(w)
	if f == "s" && len(s.values) > 0 { // the rest of 1980's
		return true
	}
	if strings.Trim(f, "x") == "" && len(f) > 1 {
		s.add(value{kind: placeholder, digits: w}, g)
		return true
	}
	if d, ok := lang.FindWeekday(w); ok {
		s.weekday = append(s.weekday, d)
		return true
	}
	if n, ok := lang.FindSeason(w); ok {
		s.add(value{kind: season, n: n}, g)
		s.class[seasonWord] = s.class[seasonWord] || n == 2 || n == 4
		return true
	}
	c, ok := classes[f]
	if !ok {
		return false
	}
	switch {
	case len(s.values) == 0 && c == toWord:
		s.class[untilWord] = !s.class[beforeWord] && !s.class[fromWord]
	case c == toWord:
		g.to = true
	case c == andWord:
		g.and = true
	case c == orWord:
		g.or = true
		s.class[orWord] = true
	default:
		s.class[c] = true
	}
	return true
}

// split cuts words that were written without space: 17IV1934, 12May1932,
// 7th, 1980s, c1890.
func split(w string) (vs []value, circa, ok bool) {
	rest := []rune(w)
	for len(rest) > 0 {
		n, digit := 1, isDigit(rest[0])
		for n < len(rest) && isDigit(rest[n]) == digit {
			n++
		}
		t := string(rest[:n])
		rest = rest[n:]
		if digit {
			v := value{kind: figures, digits: t}
			v.n, _ = strconv.Atoi(t[max(0, len(t)-9):])
			vs = append(vs, v)
			continue
		}
		f := strings.ToLower(t)
		before := len(vs) - 1
		switch m, roman := lang.ParseRomanMonth(t); {
		case before >= 0 && vs[before].kind == figures && f == "s":
			vs[before].toDecade()
			if vs[before].kind != openYear {
				return nil, false, false
			}
		case before >= 0 && f == "er" && vs[before].kind == figures && vs[before].n > 31: // 1880er Jahre
			vs[before].toDecade()
			if vs[before].kind != openYear {
				return nil, false, false
			}
		case before >= 0 && vs[before].kind == figures && len(vs[before].digits) <= 2 && ordinals[f] && t != "O":
			vs[before].ordinal = true
		case roman:
			vs = append(vs, value{kind: monthName, n: m})
		default:
			if before == -1 && classes[f] == circaWord {
				circa = true
				continue
			}
			months := lang.FindMonth(t)
			if len(months) == 0 {
				return nil, false, false
			}
			vs = append(vs, value{kind: monthName, n: months[0], months: months[1:]})
		}
	}
	return vs, circa, len(vs) > 0
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

var (
	asLetters = strings.NewReplacer("0", "o", "1", "l", "3", "e", "4", "a", "5", "s", "8", "b", "|", "l")
	asIs      = strings.NewReplacer("0", "o", "1", "i", "3", "e", "4", "a", "5", "s", "8", "b", "|", "i")
	asDigits  = strings.NewReplacer("o", "0", "O", "0", "l", "1", "I", "1", "i", "1", "|", "1", "S", "5", "B", "8", "Z", "2")
)

// mended guesses what a word with a slip of pen or eye was meant to be.
func mended(w string) (value, bool) {
	for _, r := range []*strings.Replacer{asLetters, asIs} {
		if t := r.Replace(w); t != w {
			if m := lang.FindMonth(t); len(m) == 1 {
				return value{kind: monthName, n: m[0]}, true
			}
			if m, ok := lang.ParseRomanMonth(t); ok {
				return value{kind: monthName, n: m}, true
			}
		}
	}
	if t := asDigits.Replace(w); strings.Trim(t, "0123456789") == "" && len(t) <= 4 {
		v := value{kind: figures, digits: t}
		v.n, _ = strconv.Atoi(t)
		return v, true
	}
	if m := lang.GuessMonth(w); m != 0 {
		return value{kind: monthName, n: m}, true
	}
	return value{}, false
}
