package date

import (
	"regexp"
	"strings"

	"cornerslip/label/lang"
)

// A class is what a word in a date does that is neither month nor figure.
type class uint8

const (
	unknownWord class = iota
	filler            // says nothing: "de", "the"
	fromWord          // opens an interval
	toWord            // joins the ends of an interval
	andWord           // joins the members of a list
	orWord            // leaves a choice
	circaWord
	beforeWord // up to, not including
	untilWord  // up to and including
	afterWord  // from, not including
	sinceWord  // from and including
	partWord   // early, mid, late: finer than can be said
	centuryWord
)

// wordLists hold each word once; a test sees to it.
var wordLists = []struct {
	class class
	words string
}{
	{filler, "st nd rd th de del do da of the le les la der die das den des di d on am em el dia day date datum data fecha in im collected coll dated leg año anno ano année jahr year года г rok ár év"},
	{fromWord, "from between von vom desde entre zwischen tra dal du från fra van od с от"},
	{toWord, "to till til until thru through bis au al à a hasta até tot upto po по"},
	{andWord, "and et y e und u og och en и"},
	{orWord, "or ou o oder eller oppure"},
	{circaWord, "c ca circa cca circ about approx approximately around abt vers um etwa ungefähr aprox aproximadamente hacia environ env cerca около 約 约"},
	{beforeWord, "before bef prior ante avant antes vor prima pre före inden до 前 以前"},
	{untilWord, "by"},
	{afterWord, "after aft post après depois después nach dopo efter после 後 后"},
	{sinceWord, "since onwards onward seit 以後"},
	{partWord, "early mid middle late end beginning begin start anfang mitte ende début fin milieu início princípio princípios meados mediados fim finais finales inizio metà fine beginn"},
	{centuryWord, "century cent siècle siglo século secolo jahrhundert jh jhdt век"},
}

var classes = func() map[string]class {
	m := map[string]class{}
	for _, l := range wordLists {
		for _, w := range strings.Fields(l.words) {
			m[lang.Fold(w)] = l.class
		}
	}
	return m
}()

// ordinals are what may stand directly behind a day: 7th, 1er, 3º.
var ordinals = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields("st nd rd th er re e eme de ste o a ro do º ª ° й го") {
		m[w] = true
	}
	return m
}()

// A mark is what several words or letters say together. A regular expression
// costs a microsecond or two, so it is asked only where a sign of it is there.
type mark struct {
	*regexp.Regexp
	signs []string // one of them is in every text that matches
}

func newMark(re string, signs ...string) mark { return mark{regexp.MustCompile(re), signs} }

// in reports whether s may hold the mark.
func (m mark) in(s string) bool {
	for _, sign := range m.signs {
		if strings.Contains(s, sign) {
			return true
		}
	}
	return false
}

// found reports whether s holds the mark.
func (m mark) found(s string) bool { return m.in(s) && m.MatchString(s) }

// without returns s with a space for each mark.
func (m mark) without(s string) string {
	if !m.in(s) {
		return s
	}
	return m.ReplaceAllString(s, " ")
}

// Marks that several words or letters make together.
var (
	// noDate is what people write where there is none.
	noDate = regexp.MustCompile(`(?i)^[\s\[(]*(s\.?\s?[dafn]|n\.?\s?d|o\.?\s?[dj]|(date )?(not (given|recorded|stated|known)|unknown)|no date( given)?|undated|sine d(ato|ie)|sans date|sin fecha|sem data|ohne datum|senza data)[\s.?\])]*$`)
	// oldStyle and newStyle tell the Julian and the Gregorian calendar apart.
	oldStyle = newMark(`[(\[]?\s*\b(O\.\s?S\.|OS\b|(?i:old style|julian( calendar)?)|[Ss]t\.\s?v(et)?\.|[Vv]et\.\s?st\.)\s*[)\]]?`, "O.", "OS", "tyle", "TYLE", "ulian", "ULIAN", "v.", "vet.", "st.")
	newStyle = newMark(`[(\[]?\s*\b(N\.\s?S\.|NS\b|(?i:new style|gregorian( calendar)?)|[Ss]t\.\s?n(ov)?\.|[Nn]ov\.\s?st\.)\s*[)\]]?`, "N.", "NS", "tyle", "TYLE", "regorian", "REGORIAN", "n.", "nov.", "st.")
	// partOf is a part of a month or year in several words.
	partOf = newMark(`(?i)\b(1st|2nd|3rd|4th|5th|first|second|third|fourth|last)\s+(week|half|part|days?|quarter|fortnight|decade)\s+(of|in)\b`, " of", " in", " OF", " IN", " Of", " In")
)

// Times of day. A zone needs its word here: 8:00-09:30 is two times.
var (
	timeRange = regexp.MustCompile(`([\x{e000}-\x{e0ff}])\s*(?:-|–|—|to|till|bis|até|hasta|à|a)\s*([\x{e000}-\x{e0ff}])`)
	clockTime = regexp.MustCompile(`(?i)(\bat\s+|\bum\s+|,\s*)?\b(\d{1,2}):(\d{2})(:\d{2}(?:[.,]\d+)?)?(?:\s*([ap])\.?\s?m\b\.?|\s*(?:h|hrs?|uhr|hours)\b\.?)?\s?(Z\b|(?:UTC|GMT)(?:[+-]\d{2}(?::?\d{2})?\b)?)?`)
	hourTime  = regexp.MustCompile(`(?i)(\bat\s+|\bum\s+|,\s*)?\b(\d{1,2})(?:h(\d{2})\b|(?:[.:](\d{2}))?\s*(?:([ap])\.?\s?m\b\.?|hrs?\b\.?|uhr\b|h\b)\s?((?:UTC|GMT)(?:[+-]\d{2}(?::?\d{2})?\b)?)?)`)
	hoursTime = regexp.MustCompile(`(?i)(,\s*)?\b(\d{2})(\d{2})\s*(?:hrs?|hours)\b\.?`)
)

// ordinalSign is an ordinal with a stop or sign of its own: 12.º, 1.er, 3:e.
var ordinalSign = regexp.MustCompile(`(\d)(?:[.:]?[ºª°]|[.:](?:er|re|e|a|th|st|nd|rd|ro|o)\b)`)

// yearMask is a year whose last figures were left open: 193-, 19--, 18xx.
var yearMask = regexp.MustCompile(`(?:^|[^\d\p{L}])((1[5-9]|20)(?:(\d)[-–_xX?]|[-–_xX?]{2}))(?:$|[^\d\p{L}xX_?-])`)

// Chinese and Japanese dates, turned into figures and month names that the
// rest reads: 1932年3月5日, 1903年3–5月.
var (
	cjkMonths = regexp.MustCompile(`(\d{1,2})\s*[-–—至~]\s*(\d{1,2})\s*月`)
	cjkMonth  = regexp.MustCompile(`(\d{1,2})\s*月`)
)

func fromCJK(s string) string {
	if !strings.ContainsAny(s, "年月日號号") {
		return s
	}
	name := func(n string) string {
		m, ok := monthNumber(n)
		if !ok {
			return n
		}
		return " " + lang.Month(lang.English, m) + " "
	}
	s = cjkMonths.ReplaceAllStringFunc(s, func(t string) string {
		g := cjkMonths.FindStringSubmatch(t)
		return name(g[1]) + "–" + name(g[2])
	})
	s = cjkMonth.ReplaceAllStringFunc(s, func(t string) string { return name(cjkMonth.FindStringSubmatch(t)[1]) })
	return strings.NewReplacer("年", " ", "日", " ", "號", " ", "号", " ", "至", "–").Replace(s)
}

func monthNumber(s string) (int, bool) {
	m := 0
	for _, r := range s {
		m = m*10 + int(r-'0')
	}
	return m, 1 <= m && m <= 12
}
