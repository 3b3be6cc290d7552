package coord

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
)

var (
	mgrsRef  = regexp.MustCompile(`(?i)(?:^|[^\d\p{L}])(\d{1,2})\s?([C-HJ-NP-X])\s?([A-HJ-NP-Z][A-HJ-NP-V])\s?(\d{1,5}\s\d{1,5}|\d{2}|\d{4}|\d{6}|\d{8}|\d{10}|$)(?:$|[^\d\p{L}])`)
	mgrsLike = regexp.MustCompile(`(?i)(?:^|[^\d\p{L}])(\d{1,2})([A-Z])([A-Z]{2})(\d{3,})(?:$|[^\d\p{L}])`)
	gridWord = regexp.MustCompile(`(?i)\b(UTM|MGRS|USNG|zone|zona|huso|fuso|fuseau)\b`)
	// A zone: a number with or without letter, behind a word for it or
	// before or behind the metres.
	zoneWord   = regexp.MustCompile(`(?i)\b(?:UTM|zone|zona|huso|fuso|fuseau)\b[\s:.,]*(?:(?:UTM|zone|zona|huso|fuso|fuseau)\b[\s:.,]*)?(\d{1,2})\s?(?:([C-HJ-NP-X])\b|°)?`)
	zoneLetter = regexp.MustCompile(`(?i)(?:^|[^\d\p{L}.])(\d{1,2})\s?([C-HJ-NP-X])(?:$|[^\p{L}\d.]|[ .,;]\d)`)
	hemiWord   = regexp.MustCompile(`(?i)\b(north|south|norte|sur|sul|nord|sud|süd)\b`)
	// Metres in groups: 4 567 890, then 532 123.
	millions  = regexp.MustCompile(`\b(\d|10) (\d{3}) (\d{3})\b`)
	thousands = regexp.MustCompile(`\b(\d{3}) (\d{3})\b`)
	// Metres, with what tells easting from northing.
	metresRe = regexp.MustCompile(`(?i)(?:\b(easting|northing|este|norte|e|n|x|y)\s*[:=.]?\s*|\b)(\d{1,8})(?:[.,](\d{1,4}))?\s*(m\b\s*|m)?(?:(easting|northing|este|norte|east|north|e|n)\b)?`)
)

// readGrid reads UTM and MGRS references. It answers false where the text has
// none.
func readGrid(t prepared) (Reading, bool) {
	if t.foreign != "" {
		if strings.Contains(t.grid, "°") && t.known && !t.survey {
			return Reading{}, false // degrees, and a word beside them
		}
		r := refuse(NotConvertible, "%s is not converted here: write degrees", t.foreign)
		r.Foreign = t.known
		return r, true
	}
	if !t.words && !hasZone(t.grid) {
		return Reading{}, false
	}
	if t.words {
		if g := mgrsRef.FindStringSubmatch(t.grid); g != nil && !isUnit(g, t.grid) && (g[4] != "" || strings.TrimSpace(g[0]) == t.grid || gridWord.MatchString(t.grid)) {
			return t.mgrs(g), true
		}
		if g := mgrsLike.FindStringSubmatch(t.grid); g != nil {
			return t.mgrs(g), true
		}
	}
	return t.utm()
}

// isUnit reports whether what looks like band and square is a word for degrees
// among others: 40 deg 21 min.
func isUnit(g []string, text string) bool {
	w := strings.ToLower(g[2] + g[3])
	return (w == "deg" || w == "gra") && strings.TrimSpace(g[0]) != text
}

func (t prepared) mgrs(g []string) Reading {
	digits := g[4]
	if e, n, two := strings.Cut(digits, " "); two && len(e) != len(n) {
		return refuse(Invalid, "%s and %s are not equally long: MGRS has as many figures each way", e, n)
	}
	p, err := FromMGRS(g[1] + g[2] + g[3] + digits)
	if err != nil {
		return Reading{Status: Invalid, Err: err}
	}
	r := t.place(p)
	r.More = saysMore(strings.Replace(t.grid, strings.TrimSpace(g[0]), " ", 1))
	return r
}

// beside are words that belong to a grid reference.
var beside = regexp.MustCompile(`(?i)\b(?:UTM|MGRS|USNG|zone|zona|huso|fuso|fuseau|easting|northing|este|norte|north|south|east|sur|sul|nord|sud|grid|ref|datum|GPS|coordinates|coord|m)\b`)

// saysMore reports whether what is left beside a grid reference says more: a
// word, or a number of four figures and more.
func saysMore(rest string) bool {
	rest = beside.ReplaceAllString(rest, " ")
	letters, digits := 0, 0
	for _, r := range rest {
		switch {
		case unicode.IsLetter(r):
			letters++
			digits = 0
		case unicode.IsDigit(r):
			digits++
			letters = 0
		default:
			letters, digits = 0, 0
		}
		if letters > 2 || digits > 3 {
			return true
		}
	}
	return false
}

// place finishes a reading from a grid.
func (t prepared) place(p Point) Reading {
	p.Datum = t.datum
	p.local = t.local
	return Reading{Status: OK, Point: p, HasLat: true, HasLon: true}
}

// A length is an easting or northing as written.
type length struct {
	mm     int64
	step   int64
	letter byte // 'E' or 'N' if it was said which
	at     [2]int
}

func (t prepared) utm() (Reading, bool) {
	if strings.ContainsAny(t.grid, "°\"") {
		return Reading{}, false
	}
	named := gridWord.MatchString(t.grid) || t.south
	s := t.grid
	if named || zoneLetter.MatchString(s) {
		s = millions.ReplaceAllString(s, "$1$2$3")
		s = thousands.ReplaceAllString(s, "$1$2")
	}
	ms := lengths(s)
	if len(ms) != 2 {
		return Reading{}, false
	}
	e, n := ms[0], ms[1]
	if e.letter == 'N' || n.letter == 'E' || e.letter == 0 && n.letter == 0 && e.mm >= 1_000_000_000 && n.mm < 1_000_000_000 {
		e, n = n, e
	}
	rest := s[:ms[0].at[0]] + " ; " + s[ms[0].at[1]:ms[1].at[0]] + " ; " + s[ms[1].at[1]:]
	zone, letter, ok := zoneIn(rest)
	if !ok || letter == 0 && !named {
		if named || e.letter != 0 && n.letter != 0 {
			return refuse(NotConvertible, "the UTM zone is missing: write it before the metres, as 29T 532123 4567890"), true
		}
		return Reading{}, false
	}
	u := UTM{Zone: zone, Easting: e.mm, Northing: n.mm, Step: max(e.step, n.step)}
	if w := hemiWord.FindString(rest); letter == 0 && w != "" {
		letter = '+'
		if strings.EqualFold(w[:1], "s") {
			letter = '-'
		}
	}
	if letter == 0 && t.south {
		letter = '-'
	}
	r := t.placed(u, letter)
	r.More = saysMore(rest)
	return r, true
}

// placed finds out the hemisphere of a UTM reference: '+' and '-' say it, a
// letter is a band's, or N and S the hemisphere's.
func (t prepared) placed(u UTM, letter byte) Reading {
	try := func(north bool) (Point, error) {
		u.North = north
		return FromUTM(u)
	}
	north, errN := try(true)
	south, errS := try(false)
	both := func(r Reading) Reading {
		if errN == nil && errS == nil {
			r.Choices, r.Usual = []Point{t.place(north).Point, t.place(south).Point}, true
		}
		return r
	}
	pick := func(p Point, err error) Reading {
		if err != nil {
			return Reading{Status: Invalid, Err: err}
		}
		return t.place(p)
	}
	switch letter {
	case '+', 'N':
		return pick(north, errN)
	case '-':
		return pick(south, errS)
	case 0:
		r := pick(north, errN)
		return both(r.unsure("the hemisphere is missing: write the band's letter behind the zone, as 29T"))
	case 'S':
		band := errN == nil && inBand(u, 'S')
		switch {
		case band && errS == nil:
			r := both(t.place(north).unsure("S can be the band from 32° N to 40° N or the southern hemisphere: write north or south"))
			r.BandS = true
			return r
		case band:
			return t.place(north)
		}
		return pick(south, errS)
	}
	r := pick(north, errN)
	if letter < 'N' {
		r = pick(south, errS)
	}
	if r.Status == OK {
		r.Point.said = letter
	}
	if r.Status == OK && !nearBand(r.Point.Lat, letter) {
		return r.unsure("band %c does not hold latitude %s: correct the letter or the northing", letter, r.Point.Lat.Decimal(2))
	}
	return r
}

// nearBand reports whether a latitude lies in a band or within a kilometre.
func nearBand(lat Angle, band byte) bool {
	south, north, _ := bandLimits(band)
	const slack = Degree / 100
	return lat >= south-slack && lat <= north+slack
}

// behindZone is a zone's number in front of a letter or word.
var behindZone = regexp.MustCompile(`(^|[^\d.])\d{1,2}\s*$`)

// lengths finds the numbers that can be eastings and northings.
func lengths(s string) []length {
	var ls []length
	for _, i := range metresRe.FindAllStringSubmatchIndex(s, -1) {
		whole := s[i[4]:i[5]]
		if len(whole) < 5 && (i[8] < 0 || i[10] < 0) {
			continue // near the equator a northing is short, but then it says so: 0 m N
		}
		frac := ""
		if i[6] >= 0 {
			frac = s[i[6]:i[7]]
		}
		l := length{step: 1000, at: [2]int{i[4], i[1]}}
		l.mm, _ = strconv.ParseInt(whole+(frac + "000")[:3], 10, 64)
		for range min(len(frac), 3) {
			l.step /= 10
		}
		for _, k := range []int{2, 10} {
			if i[k] < 0 {
				continue
			}
			if k == 2 && behindZone.MatchString(s[:i[k]]) && !strings.ContainsAny(s[i[k]:i[4]], ":=") {
				continue // 29 N 532123: the zone's letter
			}
			l.letter = map[byte]byte{'e': 'E', 'x': 'E', 'n': 'N', 'y': 'N'}[strings.ToLower(s[i[k]:i[k+1]])[0]]
			if k == 2 {
				l.at[0] = i[0]
			}
		}
		ls = append(ls, l)
	}
	return ls
}

// zoneIn finds zone and letter in what is left beside the metres.
func zoneIn(s string) (zone int, letter byte, ok bool) {
	g := zoneWord.FindStringSubmatch(s)
	if g == nil || g[1] == "" {
		g = zoneLetter.FindStringSubmatch(s)
	}
	if g == nil {
		return 0, 0, false
	}
	zone, err := strconv.Atoi(g[1])
	if err != nil {
		return 0, 0, false
	}
	if g[2] != "" {
		letter = strings.ToUpper(g[2])[0]
	}
	return zone, letter, true
}
