package coord

import (
	"strings"
	"unicode"

	"cornerslip/label/lang"
)

// A kind is what a sign or word in a text of coordinates is.
type kind uint8

const (
	number kind = iota
	degreeMark
	minuteMark
	secondMark
	compass // N, south, Oeste
	axis    // lat., Länge
	minus
	plus
	dash      // between figures or words, no sign
	separator // comma, semicolon, slash
	dot       // a full stop on its own
	word      // anything else
	joining   // "and", "by"
)

// A token is a sign, number or word.
type token struct {
	kind   kind
	n      decimal        // of a number
	comma  bool           // the number's decimal mark is a comma
	points []lang.Compass // of a compass word, all it can mean
	axis   byte           // 'N' for latitude, 'E' for longitude
	glued  bool           // no space before it
	inside bool           // in brackets
	text   string
}

// marks replaces the signs that people type for °, ′ and ″, and spaces.
var marks = strings.NewReplacer(
	"º", "°", "˚", "°", "ᵒ", "°", "⁰", "°", "∘", "°", "◦", "°", "&deg;", "°", "&#176;", "°",
	"′′", `"`, "''", `"`, "´´", `"`, "’’", `"`, "‘‘", `"`, "ʹʹ", `"`, "``", `"`, "’‘", `"`, "‘’", `"`,
	"″", `"`, "”", `"`, "“", `"`, "„", `"`, "˝", `"`, "ʺ", `"`, "＂", `"`, "&quot;", `"`,
	"′", "'", "’", "'", "‘", "'", "´", "'", "`", "'", "ʹ", "'", "ʼ", "'", "‛", "'", "＇", "'", "&#39;", "'",
	"−", "-", "–", "-", "—", "-", "‐", "-", "‑", "-", "－", "-", "﹣", "-",
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", "\u2007", " ", "\u3000", " ", "\t", " ", "\n", " ", "\r", " ",
	"０", "0", "１", "1", "２", "2", "３", "3", "４", "4", "５", "5", "６", "6", "７", "7", "８", "8", "９", "9", "ｍ", "m",
	"度", "°", "分", "'", "秒", `"`, "東経", " 東經 ", "西経", " 西經 ", "、", ",", "。", ".", "：", ":",
	"，", ",", "；", ";", "．", ".", "·", ".",
	"с.ш.", " N ", "с. ш.", " N ", "ю.ш.", " S ", "ю. ш.", " S ", "в.д.", " E ", "в. д.", " E ", "з.д.", " W ", "з. д.", " W ",
	"пн.ш.", " N ", "пн. ш.", " N ", "пд.ш.", " S ", "пд. ш.", " S ", "сх.д.", " E ", "сх. д.", " E ", "зх.д.", " W ", "зх. д.", " W ",
	"сев.ш.", " N ", "сев. ш.", " N ", "юж.ш.", " S ", "юж. ш.", " S ", "вост.д.", " E ", "вост. д.", " E ", "зап.д.", " W ", "зап. д.", " W ",
	"é.sz.", " N ", "é. sz.", " N ", "d.sz.", " S ", "d. sz.", " S ",
	"k.h.", " E ", "k. h.", " E ", "ny.h.", " W ", "ny. h.", " W ",
)

// czechMarks are the sides of Czechs and Slovaks, whose longitudes are told by the
// š of the latitude beside them.
var czechMarks = strings.NewReplacer("s.š.", " N ", "s. š.", " N ", "j.š.", " S ", "j. š.", " S ", "v.d.", " E ", "v. d.", " E ", "z.d.", " W ", "z. d.", " W ",
	"v.dĺ.", " E ", "z.dĺ.", " W ")

// fillers are words that join the parts of one coordinate and say nothing.
var fillers = map[string]bool{"de": true, "of": true, "du": true, "da": true, "do": true, "di": true, "the": true}

// unitLists hold each word once; a test sees to it.
var unitLists = map[kind]string{
	degreeMark: "d deg degs degree degrees grado grados grau graus degré degrés grad gr gradi graden grader",
	minuteMark: "min mins minute minutes minuto minutos minuten minuti minuut minuter mn",
	secondMark: "sec secs second seconds segundo segundos seconde secondes sekunde sekunden secondi sek sekunder",
	joining:    "and by y e et und a x with",
}

// unitWords are the words for the marks, folded.
var unitWords = folded(unitLists)

// scan cuts a text, its marks already replaced, into tokens.
func scan(text string, l lang.Tag) []token {
	r := []rune(text)
	pointed := hasPoint(r)
	var ts []token
	depth := 0
	for i := 0; i < len(r); {
		t := token{glued: i > 0 && r[i-1] != ' ', inside: depth > 0}
		n := 1
		switch c := r[i]; {
		case isDigit(c):
			n = t.number(r[i:], pointed)
		case unicode.IsLetter(c):
			n = t.word(r, i, ts, l)
		case c == '°':
			t.kind = degreeMark
		case c == '\'' && i > 0 && i+1 < len(r) && unicode.IsLetter(r[i-1]) && unicode.IsLower(r[i+1]):
			t.kind = word // Lambert's
		case c == '\'':
			t.kind = minuteMark
		case c == '"':
			t.kind = secondMark
		case c == '-' || c == '+':
			t.kind = sign(r, i)
		case c == ',' || c == ';' || c == '/' || c == '|':
			t.kind = separator
		case c == '.' || c == ':':
			t.kind = dot
		case c == '(' || c == '[':
			depth++
			i++
			continue
		case c == ')' || c == ']':
			depth = max(0, depth-1)
			i++
			continue
		case c == ' ' || c == '=':
			i++
			continue
		default:
			t.kind = word
		}
		t.text = string(r[i : i+n])
		i += n
		if t.kind != word || !fillers[strings.ToLower(t.text)] {
			ts = append(ts, t)
		}
	}
	return ts
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// hasPoint reports whether some number has a decimal point, so that commas
// between figures separate.
func hasPoint(r []rune) bool {
	for i := 1; i+1 < len(r); i++ {
		if r[i] == '.' && isDigit(r[i-1]) && isDigit(r[i+1]) {
			return true
		}
	}
	return false
}

// number reads a number and returns its length.
func (t *token) number(r []rune, pointed bool) int {
	t.kind = number
	n := 0
	for n < len(r) && isDigit(r[n]) {
		n++
	}
	t.n.whole = string(r[:n])
	if n+1 >= len(r) || !isDigit(r[n+1]) || r[n] != '.' && (r[n] != ',' || pointed) {
		return n
	}
	t.comma = r[n] == ','
	m := n + 1
	for m < len(r) && isDigit(r[m]) {
		m++
	}
	t.n.frac = string(r[n+1 : m])
	return m
}

// sign tells a sign from a dash: a sign stands before a figure and behind a
// space, a separator or nothing.
func sign(r []rune, i int) kind {
	before, after := ' ', ' '
	if i > 0 {
		before = r[i-1]
	}
	if i+1 < len(r) {
		after = r[i+1]
	}
	if !isDigit(after) || !strings.ContainsRune(" ,;/|(:=", before) {
		return dash
	}
	if r[i] == '+' {
		return plus
	}
	return minus
}

// word reads a word and returns its length.
func (t *token) word(r []rune, i int, before []token, l lang.Tag) int {
	n := 0
	for i+n < len(r) && (unicode.IsLetter(r[i+n]) || unicode.Is(unicode.Mn, r[i+n])) {
		n++
	}
	afterNumber := len(before) > 0 && before[len(before)-1].kind == number && t.glued
	if n == 2 && afterNumber && strings.ContainsRune("dmso", r[i]) && unicode.IsUpper(r[i+1]) {
		n = 1 // 02sN
	}
	w := string(r[i : i+n])
	f := lang.Fold(w)
	t.kind = word
	if n == 1 && t.letter(w, afterNumber, r[i+1:], before, l) {
		return n
	}
	if a := lang.FindAxis(w); a != 0 {
		t.kind, t.axis = axis, a
		return n
	}
	if k, ok := unitWords[f]; ok && (n > 1 || k == joining) {
		t.kind = k
		return n
	}
	if p, ok := latin[f]; ok && afterAxis(before) {
		t.kind, t.points = compass, []lang.Compass{p}
		return n
	}
	if p := lang.FindCompass(w, l); n > 1 && len(p) > 0 {
		t.kind, t.points = compass, p
	}
	return n
}

// letter reads a word of one letter.
func (t *token) letter(w string, afterNumber bool, rest []rune, before []token, l lang.Tag) bool {
	beforeNumber := len(rest) > 0 && isDigit(rest[0])
	afterMark := len(before) > 0 && before[len(before)-1].kind <= secondMark && t.glued
	switch {
	case w == "o" && afterNumber && (beforeNumber || degreesGoOn(rest)), w == "d" && afterNumber: // 15o19', 15oN, 121d
		t.kind = degreeMark
	case w == "m" && afterNumber && hasMark(before, degreeMark):
		t.kind = minuteMark
	case w == "s" && afterNumber && hasMark(before, minuteMark):
		t.kind = secondMark
	case cyrillic[w] != 0:
		t.kind, t.points = compass, []lang.Compass{cyrillic[w]}
	case (w == "O" || w == "o") && beforeLength(rest): // 5° O. L.
		t.kind, t.points = compass, []lang.Compass{lang.East}
	case w == "ö" || w == "Ö" || w == "ø" || w == "Ø":
		t.kind, t.points = compass, []lang.Compass{lang.East}
	case w == "L" && len(before) > 0 && isCompass(before): // ö. L.
		t.kind, t.axis = axis, 'E'
	case w == strings.ToUpper(w) || afterMark || beforeAxis(rest):
		p := lang.FindCompass(w, l)
		if len(p) == 0 {
			return false
		}
		t.kind, t.points = compass, p
	default:
		return false
	}
	return true
}

// cyrillic are the first letters of the points in Russian, and letters that are
// typed for Latin ones since they look like them.
var cyrillic = map[string]lang.Compass{"С": lang.North, "Ю": lang.South, "В": lang.East, "З": lang.West, "Е": lang.East}

// latin are the points as Latin abbreviates and bends them beside lat. and long.
var latin = map[string]lang.Compass{
	"bor": lang.North, "boreali": lang.North, "sept": lang.North, "septentr": lang.North, "septentrionali": lang.North,
	"austr": lang.South, "australi": lang.South, "merid": lang.South, "meridionali": lang.South,
	"or": lang.East, "orient": lang.East, "orientali": lang.East,
	"occ": lang.West, "occid": lang.West, "occidentali": lang.West,
}

// degreesGoOn reports whether what follows is minutes with a mark, or the
// hemisphere: the o before them is a degree sign and no west.
func degreesGoOn(rest []rune) bool {
	s := strings.TrimLeft(string(rest[:min(len(rest), 12)]), " .")
	if s != "" && strings.ContainsRune("NSEWOL", rune(s[0])) {
		return true
	}
	digits := strings.TrimLeft(s, "0123456789.,")
	return digits != s && strings.HasPrefix(strings.TrimLeft(digits, " "), "'")
}

// beforeLength reports whether L., for Länge or lengte, stands behind the
// letter.
func beforeLength(rest []rune) bool {
	s := strings.TrimLeft(string(rest[:min(len(rest), 8)]), " .")
	return strings.HasPrefix(s, "L.") || strings.HasPrefix(s, "Lg") || strings.HasPrefix(s, "Läng") || strings.HasPrefix(s, "lengte") || s == "L"
}

// afterAxis reports whether the last token, but for a full stop, is a word for
// latitude or longitude.
func afterAxis(ts []token) bool {
	for i := len(ts) - 1; i >= 0; i-- {
		if ts[i].kind != dot {
			return ts[i].kind == axis
		}
	}
	return false
}

// beforeAxis reports whether a full stop and a word for latitude or longitude
// follow: n. Br., w. L.
func beforeAxis(rest []rune) bool {
	s := strings.TrimLeft(string(rest[:min(len(rest), 16)]), ".")
	if len(s) == len(string(rest[:min(len(rest), 16)])) {
		return false
	}
	w, _, _ := strings.Cut(strings.TrimLeft(s, " "), ".")
	w, _, _ = strings.Cut(w, " ")
	return w == "L" || lang.FindAxis(w) != 0
}

// isCompass reports whether the last token, but for a full stop, is a point
// of the compass.
func isCompass(ts []token) bool {
	for i := len(ts) - 1; i >= 0; i-- {
		if ts[i].kind != dot {
			return ts[i].kind == compass
		}
	}
	return false
}

// hasMark reports whether the angle being written has the mark already.
func hasMark(ts []token, k kind) bool {
	for i := len(ts) - 1; i >= 0 && i > len(ts)-6; i-- {
		switch ts[i].kind {
		case k:
			return true
		case compass, separator:
			return false
		}
	}
	return false
}
