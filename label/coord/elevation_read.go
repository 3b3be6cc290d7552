package coord

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"unicode"

	"cornerslip/label/lang"
)

var (
	// seaLevel is the level itself, as a height of its own.
	seaLevel = regexp.MustCompile(`(?i)\b(?:at |am |ao |al |à |au |a |ad )?(?:the )?(sea[- ]level|nivel del mar|nível do mar|nivel do mar|niveau de la mer|livello del mare|meeresspiegel|meereshöhe|meeresniveau|libellam? maris)\b`)
	// aboveSea is what follows a height and says nothing more.
	aboveSea = regexp.MustCompile(`(?i)(?:\b(?:above|sobre|acima|über|au-dessus|sopra|supra)\s+(?:the |el |o |do |du |il |dem |de )*|\bd'?\s*)?(?:sea[- ]level|nivel del mar|nível do mar|nivel do mar|niveau de la mer|livello del mare|(?:dem )?meeresspiegel|meer(?:eshöhe)?|mare)\b`)
	belowSea = regexp.MustCompile(`(?i)\b(?:below|bajo|abaixo|unter|au-dessous|sotto|infra)\s+(?:the |el |o |do |du |il |dem |de )*(?:sea[- ]level|nivel del mar|nível do mar|nivel do mar|niveau de la mer|livello del mare|meeresspiegel|mare)\b`)
	// abbreviated is metres with "above sea level" run on: msnm, m s.m.
	abbreviated     = regexp.MustCompile(`(?i)(\d\s*|\b)(m|ft|feet|metres|meters|metros|mètres|meter)\.?\s?(?:a\.?\s?s\.?\s?l|s\.?\s?n\.?\s?m|s\.?\s?l\.?\s?m|s\.?\s?m|n\.?\s?m|n\.?\s?h\.?\s?n|n\.?\s?n|n\.?\s?p\.?\s?m|m\.?\s?n\.?\s?m|ö\.?\s?h|o\.?\s?h|ü\.?\s?(?:d\.?\s?)?(?:m|n\.?\s?n|a)|u\.?\s?m|(?:a\s)?t\.?\s?sz\.?\s?f|m\.?\s?p\.?\s?y|nadm\.?\s?v[ýy]šky)\b\.?`)
	aboveSeaRussian = regexp.MustCompile(`(?i)(?:над\s+|н\.\s?)(?:ур\.?|у\.|р\.|уровнем|рівнем)\s*(?:моря|м\.?)|н\.\s?в\.|надм(?:\.|орска)\s*вис(?:\.|очина)`)
	// aboveSeaNorthern are the same in northern and Slavonic languages.
	aboveSeaNorthern = regexp.MustCompile(`(?i)(?:ovan|över|over|boven|nad)\s+(?:havet|zee|morzem|mořem)`)
	// fromSea is the level as the lower of two heights.
	fromSea = regexp.MustCompile(`(?i)(?:sea[- ]level|nivel del mar|nível do mar|niveau de la mer|livello del mare|meeresspiegel)(\s*(?:-|to|up to|a|à|bis|até|hasta|fino a)\s*\d)`)
	// exponent is a number as programs write it.
	exponent = regexp.MustCompile(`\d[eE][+-]?\d`)
	// dots between two numbers join them.
	dots = regexp.MustCompile(`\.{2,}|…`)
	// aboveTheSea is that without a word for its level.
	aboveTheSea = regexp.MustCompile(`(?i)\babove (?:the )?sea\b`)
	// tilde between two heights joins them, as in East Asia; elsewhere it is "about".
	tilde = regexp.MustCompile(`(\d)\s?[~～〜∼]\s?(\d)|(\d\s?m)[~～〜∼](\d)`)
	// frenchAltitude stands behind a height.
	frenchAltitude = regexp.MustCompile(`(?i)\bd'\s?alt(?:itude)?\b`)
	// bySpaces and byMarks are thousands: 1 240, 1,240, 1.240.
	bySpaces = regexp.MustCompile(`(^|[^\d.,])(\d{1,2}) (\d{3})\b`)
	byMarks  = regexp.MustCompile(`^([1-9]\d{0,2})[.,'](\d{3})$`)
)

// elevationLists hold each word once; a test sees to it.
var elevationLists = map[string]string{
	"metres": "m mt mts mtr mtrs metre metres meter meters metro metros mètre mètres metri metrum msm м метров 公尺 米",
	"feet":   "ft feet foot pie pies pé pés pied pieds piedi fuß fuss fot fod pedes ped 英尺",
	"to":     "to a à bis até al hasta till und and y e et tot",
	"circa":  "c ca circa cca about approx approximately around abt um etwa ungefähr aprox aproximadamente hacia environ env cerca near nr kb körülbelül yakl yaklaşık около ок ok okolo przybl noin omkr omkring ung 約 约",
	"over":   "over above exceeding acima über más mais plus mehr oltre sopra",
	"under":  "below under upto less abaixo unter menos moins weniger meno jusque jusqu",
	"skip": "alt altitude altitud altitudine altitudo elev elevation elevación elevação elevazione elevatio höhe height minimum maximum min max minimo maximo mínimo máximo" +
		" from between of at de do zwischen entre von cota asl amsl wys выс высота korkeus high up than more m.s.l 海拔 海抜 標高 los las the ad in rakım",
}

// The words of elevations, folded.
var elevationWords = folded(elevationLists)

// folded returns the list that each word stands in.
func folded[K comparable](lists map[K]string) map[string]K {
	m := map[string]K{}
	for what, list := range lists {
		for _, w := range strings.Fields(list) {
			m[lang.Fold(w)] = what
		}
	}
	return m
}

// upTo are the words between two heights that leave the lower one open where
// there is none; the others mean "at" then.
var upTo = map[string]bool{"to": true, "bis": true, "ate": true, "hasta": true, "till": true}

// ParseElevation reads an elevation as people write it: "1240-1260 m",
// "c. 4000 ft", "1200 ± 20 m", "sea level", "4000 ft (1219 m)". A figure
// without a unit is ambiguous. The Elevation is set if the status is OK;
// otherwise the error says what is wrong and what to do.
func ParseElevation(text string) (Elevation, Status, error) {
	if len(text) > longest {
		return Elevation{}, NotConvertible, errors.New("the text is too long to be an elevation")
	}
	r, err := scanElevation(text)
	if err != nil && !strings.ContainsFunc(text, unicode.IsDigit) {
		err = fmt.Errorf("there is no height in %q: write it as 1240 m", text)
	}
	if err != nil {
		return Elevation{}, NotConvertible, err
	}
	return r.elevation(text)
}

// A heightReader collects what an elevation's text says, in order.
type heightReader struct {
	numbers []writtenHeight
	circa   bool
	bound   bound
	limit   bound // in brackets behind a height
	below   bool  // below sea level
	doubt   bool  // a question mark
	before  int   // the unit before the first number, and 1; 0 if there is none
	units   bool  // a number is followed by both units
	dashed  bool  // a dash apart from any number, which may be a minus
	plus    int   // index of the number behind ±, 0 if none

	// What stands before the next number.
	joined, bracket, other, negative, tolerance bool
	fresh                                       bool // no number yet on this side of a bracket or slash
}

// A writtenHeight is one number with its unit and what stood before it.
type writtenHeight struct {
	n       int64
	places  int8
	unit    int // -1 not said
	joined  bool
	bracket bool
	other   bool // behind a comma or slash
}

func scanElevation(text string) (*heightReader, error) {
	r := &heightReader{fresh: true}
	s := marks.Replace(strings.TrimSpace(text))
	if belowSea.MatchString(s) {
		r.below = true
		s = belowSea.ReplaceAllString(s, " ")
	}
	if exponent.MatchString(s) {
		return nil, errors.New("a number as programs write it: write all its figures, as 1200 m")
	}
	s = tilde.ReplaceAllString(dots.ReplaceAllString(s, "-"), "$1$3-$2$4")
	s = strings.Trim(s, `" `)
	s = fromSea.ReplaceAllString(s, " 0 m$1")
	s = aboveSeaNorthern.ReplaceAllString(s, " ")
	s = abbreviated.ReplaceAllString(s, "$1$2 ")
	if strings.ContainsAny(s, "0123456789") && !strings.HasPrefix(strings.ToLower(s), "sea") {
		s = aboveTheSea.ReplaceAllString(aboveSea.ReplaceAllString(s, " "), " ")
		s = aboveSeaRussian.ReplaceAllString(s, " ")
	}
	s = frenchAltitude.ReplaceAllString(s, " ")
	s = seaLevel.ReplaceAllString(s, " 0 m ")
	s = bySpaces.ReplaceAllString(s, "$1$2$3")
	rs := []rune(s)
	for i := 0; i < len(rs); {
		n, err := 1, error(nil)
		switch c := rs[i]; {
		case isDigit(c):
			for i+n < len(rs) && (isDigit(rs[i+n]) || strings.ContainsRune(".,'", rs[i+n]) && i+n+1 < len(rs) && isDigit(rs[i+n+1])) {
				n++
			}
			err = r.number(string(rs[i : i+n]))
		case unicode.IsLetter(c):
			for i+n < len(rs) && (unicode.IsLetter(rs[i+n]) || unicode.Is(unicode.Mn, rs[i+n])) {
				n++
			}
			err = r.word(string(rs[i : i+n]))
		default:
			n, err = r.sign(rs[i:])
		}
		if err != nil {
			return nil, err
		}
		i += n
	}
	return r, nil
}

func (r *heightReader) number(s string) error {
	h, err := readHeight(s)
	if err != nil {
		return err
	}
	if r.negative {
		h.n = -h.n
	}
	h.joined, h.bracket, h.other = r.joined, r.bracket, r.other
	if r.tolerance {
		r.plus = len(r.numbers)
	}
	r.numbers = append(r.numbers, h)
	r.joined, r.negative, r.tolerance, r.other, r.fresh = false, false, false, false, false
	return nil
}

// sign reads what is neither figure nor letter and returns its length.
func (r *heightReader) sign(rs []rune) (int, error) {
	switch c := rs[0]; c {
	case '\'':
		r.setUnit(Feet)
	case '-':
		// Behind a number without a second one it joins, else it is a sign.
		if !r.fresh && !r.joined {
			r.joined = true
		} else {
			r.negative = len(rs) > 1 && isDigit(rs[1])
			r.dashed = r.dashed || !r.negative
		}
	case '±', '+':
		n := 1
		if c == '+' {
			switch {
			case len(rs) > 2 && rs[1] == '/' && rs[2] == '-':
				n = 3
			case len(rs) > 1 && rs[1] == '-':
				n = 2
			default:
				if len(r.numbers) > 0 { // 1200+ m
					r.bound = atLeast
				}
				return 1, nil
			}
		}
		if len(r.numbers) == 0 {
			r.circa = true
		} else {
			r.tolerance = true
		}
		return n, nil
	case '~', '～', '〜', '∼', '≈':
		r.circa = true
	case '>', '≥':
		r.bound = atLeast
	case '<', '≤':
		r.bound = atMost
	case '(', '[':
		r.bracket, r.fresh = true, true
	case ')', ']':
		r.bracket = false
	case '/', ',', ';', '=':
		r.other, r.fresh = len(r.numbers) > 0, true
	case '?':
		r.doubt = true
	case ' ', '.', ':':
	default:
		return 0, fmt.Errorf("%q is not part of an elevation", string(c))
	}
	return 1, nil
}

// readHeight reads a number, its thousands apart or not.
func readHeight(s string) (writtenHeight, error) {
	if g := byMarks.FindStringSubmatch(s); g != nil {
		s = g[1] + g[2] // three figures behind a mark are thousands: nobody measures millimetres
	}
	if strings.Count(s, ",")+strings.Count(s, ".") > 1 { // 1,240.5
		last := strings.LastIndexAny(s, ".,")
		s = strings.NewReplacer(",", "", ".", "", "'", "").Replace(s[:last]) + "." + s[last+1:]
	}
	n, places, ok := thousandths(strings.Replace(s, ",", ".", 1))
	if !ok {
		return writtenHeight{}, fmt.Errorf("%q is not a number", s)
	}
	return writtenHeight{n: n, places: places, unit: -1}, nil
}

func (r *heightReader) setUnit(u Unit) {
	n := len(r.numbers)
	switch {
	case n == 0:
		r.before = int(u) + 1 // m 1200
	case r.numbers[n-1].unit < 0:
		r.numbers[n-1].unit = int(u)
	case r.numbers[n-1].unit != int(u):
		r.units = true
	}
}

func (r *heightReader) word(w string) error {
	switch elevationWords[lang.Fold(w)] {
	case "metres":
		r.setUnit(Metres)
	case "feet":
		r.setUnit(Feet)
	case "to":
		if len(r.numbers) == 0 && upTo[lang.Fold(w)] {
			r.bound = atMost // alt. to 10 m
		} else {
			r.joined = true
		}
	case "circa":
		r.circa = true
	case "over":
		r.bound = atLeast
	case "under":
		r.bound = atMost
	case "skip":
		switch lang.Fold(w) {
		case "min", "minimum", "minimo": // 100 m (min.)
			if r.bracket && len(r.numbers) == 1 {
				r.limit = atLeast
			}
		case "max", "maximum", "maximo": // min 100 m max 200 m
			if r.bracket && len(r.numbers) == 1 { // 200 m (max.)
				r.limit = atMost
				break
			}
			r.other = len(r.numbers) > 0
		case "up": // up to 10 m
			if len(r.numbers) == 0 {
				r.bound = atMost
			}
		case "more": // more than 10 m
			r.bound = atLeast
		}
	default:
		return fmt.Errorf("%q is not part of an elevation: write it as 1240 m or 1240-1260 m", w)
	}
	return nil
}

// elevation puts the numbers together.
func (r *heightReader) elevation(text string) (Elevation, Status, error) {
	ns := r.numbers
	if len(ns) == 0 {
		return Elevation{}, NotConvertible, fmt.Errorf("there is no height in %q: write it as 1240 m", text)
	}
	if r.before > 0 && ns[0].unit < 0 {
		ns[0].unit = r.before - 1
	}
	if r.tolerance { // 1200 m ±
		r.tolerance, r.circa = false, true
	}
	e := Elevation{Low: ns[0].n, High: ns[0].n, places: ns[0].places, Circa: r.circa, bound: r.bound, set: true}
	if len(ns) == 1 && e.bound == exact {
		e.bound = r.limit // not of 100 m (min.), 200 m (max.)
	}
	unit := ns[0].unit
	i := 1
	if i < len(ns) && i == r.plus {
		e.Tolerance = ns[i].n
		e.places = max(e.places, ns[i].places)
		unit = oneUnit(unit, ns[i].unit)
		i++
	} else if i < len(ns) && !ns[i].bracket && (ns[i].joined || ns[i].other && (unit < 0 || unit == ns[i].unit)) {
		e.High = ns[i].n
		e.places = max(e.places, ns[i].places)
		unit = oneUnit(unit, ns[i].unit)
		i++
	}
	switch {
	case r.units:
		return Elevation{}, Ambiguous, fmt.Errorf("%q names both metres and feet for one figure: keep one", text)
	case unit == -1:
		return Elevation{}, Ambiguous, fmt.Errorf("%q has no unit: add m or ft", text)
	case unit == -2:
		return Elevation{}, Ambiguous, fmt.Errorf("%q mixes metres and feet: give both ends in one unit", text)
	}
	if r.dashed {
		return Elevation{}, Ambiguous, fmt.Errorf("the dash in %q may be a minus: write it at the figure, or not at all", text)
	}
	if r.joined || r.tolerance {
		return Elevation{}, Ambiguous, fmt.Errorf("%q lacks its other end: write both, or one height", text)
	}
	if r.doubt {
		return Elevation{}, Ambiguous, fmt.Errorf("%q carries a question mark: write what is certain", text)
	}
	e.Unit = Unit(unit)
	if r.below {
		e.Low, e.High = -e.High, -e.Low
	}
	if e.Low > e.High {
		return Elevation{}, Ambiguous, fmt.Errorf("%q: the lower height stands last: swap the two or correct one", text)
	}
	e.further = e.Low < e.High && i == len(ns)-1
	if i < len(ns) && !e.agrees(ns[i:]) {
		return Elevation{}, Ambiguous, fmt.Errorf("%q gives heights that do not agree: keep one", text)
	}
	return e, OK, nil
}

// oneUnit returns the unit of two numbers, -1 if neither says it, -2 if they
// differ.
func oneUnit(a, b int) int {
	switch {
	case a < 0:
		return b
	case b < 0 || a == b:
		return a
	}
	return -2
}

// agrees reports whether further numbers say the same in the other unit,
// within what the rounding of both allows, or the very same in the same unit. One
// height beside a range lies in it.
func (e Elevation) agrees(ns []writtenHeight) bool {
	last := ns[len(ns)-1]
	if last.unit < 0 || len(ns) > 2 || len(ns) == 2 && !ns[1].joined {
		return false
	}
	o := Elevation{Low: ns[0].n, High: last.n, Unit: Unit(last.unit), places: max(ns[0].places, last.places), set: true}
	if o.Unit == e.Unit {
		return o.Low == e.Low && o.High == e.High
	}
	metres := func(n int64, u Unit) int64 {
		if u == Feet {
			return n * 3048 / 10000
		}
		return n
	}
	single := o.Low == o.High && e.Low < e.High // 1000-2000 ft, 610 m
	slack := max(metres(e.step(e.Low), e.Unit), metres(o.step(o.Low), o.Unit), 1000)
	d := func(a, b int64) bool {
		x := metres(a, e.Unit) - metres(b, o.Unit)
		return max(x, -x) <= slack
	}
	if single {
		at := metres(o.Low, o.Unit)
		return at >= metres(e.Low, e.Unit)-slack && at <= metres(e.High, e.Unit)+slack
	}
	return d(e.Low, o.Low) && d(e.High, o.High)
}
