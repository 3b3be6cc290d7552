package date

import (
	"regexp"
	"strconv"
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
	doubtWord  // probably, received: less than a date
	besideWord // night, flowering: more than a date
	seasonWord // dry, rainy: it may turn the year
	partWord   // early, mid, late: finer than can be said
	centuryWord
)

// wordLists hold each word once; a test sees to it.
var wordLists = []struct {
	class class
	words string
}{
	{filler, "st nd rd th de del do da of the le les la der die das den des di d on am em el dia day date datum data fecha in im mense mens collected coll dated leg año anno ano année jahr jahre year года г rok r р року ár év ann annis annus m li aos leg legit lg gesammelt recolectado colhido usque mensibus го during throughout durante pendant während"},
	{besideWord, "fl fr flor fruct defl flowering fruiting flower flowers fruit fruits bud buds blüte noon dawn dusk morning afternoon evening night noite manhã tarde noche mañana matin soir nuit morgens abends nachts mittags nocte mane vespere dry rainy wet"},
	{seasonWord, "season monsoon chuvosa lluviosa saison trockenzeit regenzeit"},
	{doubtWord, "probably prob possibly perhaps presumably maybe wahrscheinlich vermutlich provavelmente talvez probablemente peut-être probablement forse received recd accessioned accession rec det determined easter whitsun whitsunday pentecost christmas xmas midsummer michaelmas ostern pfingsten weihnachten pâques pentecôte noël páscoa pascua navidad pasqua natale kal kalendas kalendis cal id idus idibus non nonas nonis ff sqq seq xvi xvii xviii xix xx xxi xvie xviie xviiie xixe xxe"},
	{fromWord, "from between von vom desde entre zwischen tra dal du från fra van od с от"},
	{toWord, "to till til until thru through bis au al à a ad hasta até tot upto po по"},
	{andWord, "and et y e und u og och en и"},
	{orWord, "or ou o oder eller oppure"},
	{circaWord, "c ca circa cca circ about approx approximately around abt vers um etwa ungefähr aprox aproximadamente hacia environ env cerca около 約 约"},
	{beforeWord, "before bef prior ante avant antes abans vor prima pre före inden до 前 以前"},
	{untilWord, "by"},
	{afterWord, "after aft post après depois después després nach dopo efter после 後 后"},
	{sinceWord, "since onwards onward seit 以後"},
	{partWord, "early mid middle late end finem finis courant med medio initio init ineunte exeunte mi fins principio beginning begin start anfang mitte ende début fin milieu início princípio princípios meados mediados fim finais finales inizio metà fine beginn anf początek początku koniec połowa połowie začátek začátkem koncem polovina начало начале конец конце середина середине principios fines"},
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
	for _, w := range strings.Fields("st nd rd d th er re e eme de ste te ten ter o a ro do º ª ° й го") {
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
	noDate = regexp.MustCompile(`(?i)^[\s\[(]*(s[./]?\s?[dafn]|n\.?\s?d|o\.?\s?[dj]|(date )?(not (given|recorded|stated|known|dated)|unknown|illegible|unreadable|ilegible|illisible|unleserlich)|no (collecting |collection )?date( given)?|date (missing|lost|not provided)|not provided|undated|undatiert|data desconhecida|fecha desconocida|0{1,4}([./-]0{1,4}){2}|sine d(ato|ie)|sans date|sin fecha|sem data|ohne datum|senza data|zonder datum|utan datum|uten dato|uden dato|bez (daty|data)|b\.\s?d|без дат[ыи]|б\.\s?д|tarihsiz|dátum nélkül)[\s.?\])]*$`)
	// oldStyle and newStyle tell the Julian and the Gregorian calendar apart.
	oldStyle = newMark(`[(\[]?\s*\b(O\.\s?S\.|OS\b|(?i:old style|julian( calendar)?)|[Ss]t\.\s?v(et)?\.|[Vv]et\.\s?st\.)\s*[)\]]?`, "O.", "OS", "tyle", "TYLE", "ulian", "ULIAN", "v.", "vet.", "st.")
	newStyle = newMark(`[(\[]?\s*\b(N\.\s?S\.|NS\b|(?i:new style|gregorian( calendar)?)|[Ss]t\.\s?n(ov)?\.|[Nn]ov\.\s?st\.)\s*[)\]]?`, "N.", "NS", "tyle", "TYLE", "regorian", "REGORIAN", "n.", "nov.", "st.")
	// partOf is a part of a month or year in several words.
	partOf = newMark(`(?i)\b(1st|2nd|3rd|4th|5th|first|second|third|fourth|last)\s+(week|half|part|days?|quarter|fortnight|decade)\s+(of|in)\b`, " of", " in", " OF", " IN", " Of", " In")
)

// Years in several words or signs.
var (
	// decade is "década de 1880", "années 1880".
	decade = newMark(`(?i)\b(?:(?:d[eé]cad[ae]|d[eé]cennie|dekade|decennio)\s+(?:(?:of|de|des|del|der|degli)\s+)?(?:(?:the|années|anos|años|anni)\s+)?|(?:années|anos|años|anni)\s+)(\d{3}0)\b`,
		"ecad", "ECAD", "écad", "ÉCAD", "cenn", "CENN", "ekad", "EKAD", "nn", "NN", "nos", "NOS", "ños", "ÑOS")
	// lentCentury is a century that someone added in brackets: [19]32.
	lentYears   = regexp.MustCompile(`\b(1[5-9]|20)[\[(](\d{2})[\])]`) // 18[87]
	lentCentury = newMark(`[\[(](1[5-9]|20)[\])]\s?(\d{2})\b`, "]", ")")
)

// Phrases that are put in one word, and a question mark that stands for a day.
var (
	notLater  = newMark(`(?i)\b(?:not later than|no later than|up to)\b|<=|≤`, "ater than", "p to", "ATER", "P TO", "<=", "≤")
	notBefore = newMark(`(?i)\b(?:not before|not earlier than|no earlier than)\b|>=|≥`, "before", "arlier", "BEFORE", "ARLIER", ">=", "≥")
	orLater   = newMark(`(?i),?\s+or (?:later|after)\b`, "or later", "or after")
	orEarlier = newMark(`(?i)^(.*?),?\s+or (?:earlier|before)$`, "or earlier", "or before")
	askedDay  = newMark(`(^|[./-])\?([./-])`, "?")
	joinedOrd = newMark(`(?i)\b(VII|VIII|IX|X|7|8|9|10)\.\s?(bris|bre|ber)\b`, "br", "be", "BR", "BE")
	fifties   = newMark(`(?i)\b(?:anos|años|années|anni)\s+(\d0)$`, "os ", "es ", "ni ")
	firstA    = newMark(`^(?i:a)\.?\s*(?:(?i:d)\.?\s*)?(\d)`, "a", "A")
	idiom     = newMark(`(?i)\b(?:the )?(first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth)\b`, "st", "nd", "rd", "th", "ST", "ND", "RD", "TH")
)

// reworded puts phrases in words that the rest reads.
func reworded(s string) string {
	for _, r := range []struct {
		mark
		with string
	}{{notLater, " until "}, {notBefore, " since "}, {orLater, " onwards"}, {orEarlier, "until $1"}, {askedDay, "$1??$2"}, {joinedOrd, "$1$2"}, {fifties, "${1}s"}, {firstA, "$1"}, {idiom, " probably "}} {
		if r.in(s) {
			s = r.ReplaceAllString(s, r.with)
		}
	}
	return fromEras(fromThai(s))
}

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
// rest reads: 1932年3月5日, 1903年3–5月, 民國七十三年五月.
var (
	cjkWeekday = regexp.MustCompile(`[(（]?(?:(?:星期|週|周|礼拜)[一二三四五六日天]|[月火水木金土日]曜日?|[月火水木金土日]\s*[)）]$)[)）]?`)
	cjkFigures = regexp.MustCompile(`[〇零一二三四五六七八九十廿卅元]+\s*[年月日號号]`)
	cjkEra     = regexp.MustCompile(`(民國|民国|昭和|大正|明治|平成|令和)\s*(\d{1,3})\s*年`)
	cjkMonths  = regexp.MustCompile(`(\d{1,2})\s*[-–—至~]\s*(\d{1,2})\s*月`)
	cjkMonth   = regexp.MustCompile(`(\d{1,2})\s*月`)
)

func fromCJK(s string) string {
	if strings.ContainsAny(s, "년월일") {
		s = strings.NewReplacer("년", "年", "월", "月", "일", "日").Replace(s)
	}
	if !strings.ContainsAny(s, "年月日號号") {
		return s
	}
	s = cjkWeekday.ReplaceAllString(s, "")
	s = cjkFigures.ReplaceAllStringFunc(s, cjkNumber)
	s = cjkEra.ReplaceAllStringFunc(s, func(t string) string {
		g := cjkEra.FindStringSubmatch(t)
		n, _ := strconv.Atoi(g[2])
		e := eras[g[1]]
		if n < e.from || n > e.last {
			return t // no date, or one of the calendar of the moon
		}
		return strconv.Itoa(e.before+n) + "年"
	})
	s = strings.ReplaceAll(s, "中華", "")
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

// eras are those that count years of the Gregorian calendar: the year before
// the first, and the years from and up to which they do. The Republic's are in
// use (from memory, as are the others: Japan took up the calendar in 1873).
var eras = map[string]struct{ before, from, last int }{
	"民國": {1911, 1, 188}, "民国": {1911, 1, 188},
	"明治": {1867, 6, 45}, "大正": {1911, 1, 15}, "昭和": {1925, 1, 64}, "平成": {1988, 1, 31}, "令和": {2018, 1, 81},
}

// cjkNumber writes a number before a character for year, month or day in
// figures: 一九三二年, 二十三日, 元年.
func cjkNumber(s string) string {
	var digits strings.Builder
	n, unit, tens := 0, 0, false
	for _, r := range s {
		d := 0
		switch r {
		case '〇', '零':
		case '一', '元':
			d = 1
		case '二':
			d = 2
		case '三':
			d = 3
		case '四':
			d = 4
		case '五':
			d = 5
		case '六':
			d = 6
		case '七':
			d = 7
		case '八':
			d = 8
		case '九':
			d = 9
		case '十', '廿', '卅':
			tens = true
			n += 10 * max(1, unit, map[rune]int{'廿': 2, '卅': 3}[r])
			unit = 0
			continue
		case ' ':
			continue
		default: // 年, 月, 日
			if tens {
				return strconv.Itoa(n+unit) + string(r)
			}
			return digits.String() + string(r)
		}
		unit = d
		digits.WriteByte(byte('0' + d))
	}
	return s
}

func monthNumber(s string) (int, bool) {
	m := 0
	for _, r := range s {
		m = m*10 + int(r-'0')
	}
	return m, 1 <= m && m <= 12
}
