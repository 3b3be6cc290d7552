package coord

import (
	"regexp"
	"strings"
	"unicode"
)

// A prepared text has its marks made alike and what is no coordinate taken
// out.
type prepared struct {
	text     string // of degrees: without heights and distances
	grid     string // of grids: with them
	datum    string // as written
	beside   string // the datum that is given elsewhere
	local    bool   // the datum is far from WGS 84
	meridian string // other than Greenwich
	zero     bool   // the meridian is none but that: no place of the name
	doubt    bool   // there is a question mark
	words    bool   // there are words of two letters or more
	foreign  string // a grid that is not converted here
	known    bool   // and that the trade writes on labels
	survey   bool   // of townships: what stands beside it is printed with it
	more     bool   // something was taken out that the coordinates do not say
	south    bool   // the datum's grid lies in the south
}

// Datums as labels name them. The first group lies within about a metre of
// WGS 84; the others up to some hundred metres away.
//
// Source: EPSG registry, names and aliases of geodetic datums.
var (
	nearDatum = regexp.MustCompile(`(?i)(?:map )?\(?\b(?:(?:geodetic )?datum|dátum|datum)?\s*:?\s*(WGS[- ]?(?:19)?84|EPSG:\s?(?:4326|4258|4269)|ETRS[- ]?(?:19)?89|NAD[- ]?(?:19)?83(?:\(CSRS\))?|GDA[- ]?(?:19)?94|GDA[- ]?2020|SIRGAS[- ]?(?:2000|95)|NZGD[- ]?2000|JGD[- ]?(?:2000|2011)|CGCS[- ]?2000|MGA[- ]?94|MGA[- ]?2020|MGA)\b\s*\)?`)
	farDatum  = regexp.MustCompile(`(?i)(?:map )?\(?\b(?:(?:geodetic )?datum|dátum|datum)?\s*:?\s*(WGS[- ]?(?:19)?(?:72|66|60)|EPSG:\s?\d{4,5}|NAD[- ]?(?:19)?27|ED[- ]?(?:19)?(?:50|79)|European (?:Datum )?1950|PSAD[- ]?(?:19)?56|SAD[- ]?(?:19)?69|South American 1969|Córrego Alegre|Corrego Alegre|AGD[- ]?(?:19)?(?:66|84)(?:/84)?|AMG(?:[- ]?(?:66|84))?|Australian Map Grid|NZGD[- ]?(?:19)?49|OSGB[- ]?36|Pulkovo[- ]?(?:19)?42|Datum 73|D73|Arc[- ]?(?:19)?(?:50|60)|Cape Datum|Hartebeesthoek ?94|Indian 19\d\d|Clarke 18(?:66|80)|Provisional S(?:outh)? American 1956|Bessel 1841|Hayford)\b\s*\)?`)
	// Names that are places' and people's too need the word beside them.
	namedDatum = regexp.MustCompile(`(?i)(?:map )?\(?\b(?:geodetic )?(?:datum|dátum)\s*:?\s*(Lisboa|Lisbon|Tokyo|Bessel|Everest|Madrid|Roma|Pulkovo|Bogotá|Bogota|Lisboa Hayford|Castelo de São Jorge|Melriça|Base SE|Base SW|Porto Santo|S\. Braz|São Braz|Graciosa|Observatório)\b\s*\)?`)
	southern   = regexp.MustCompile(`(?i)^(AMG|MGA|Australian)`)
	// Grids of single countries.
	otherGrid = regexp.MustCompile(`(?i)\b(OSGB|NGR|National Grid|Irish Grid|ITM|CH1903\+?|LV95|LV03|RT[- ]?90|SWEREF|Gau(?:ss|ß)[- ]?Kr(?:ü|ue|u)ger|Lambert|NZTM|NZMG|TM35FIN|RD[- ]new|MTB|TK ?25|UPS|State Plane|Maidenhead|geohash|what3words|quadrat|quadrant|QDS|NZMS|TK)\b`)
	// PLSS is the American survey of townships: no letter is a hemisphere.
	survey = regexp.MustCompile(`(?i)\bT(?:\.|wp\.?)?\s*\d+\s*[NS]\b.*\bR(?:\.|ge\.?)?\s*\d+\s*[EW]\b`)
)

// What else stands beside coordinates: heights and distances with their unit.
var (
	height   = regexp.MustCompile(`(?i)\b(?:alt(?:itude|itud|\.)?|elev(?:ation|ación|ação|\.)?|altitudine|höhe|height|cota|s\.?\s?m\.?)\s*[:.]?\s*(?:(?:up )?to |from |c\.|ca\.?|about |±|~|>|<|-)?\s*\d[\d.,]*\s*(?:(?:-|to|a|bis)\s*\d[\d.,]*\s*)?(?:m(?:etres|eters|etros|ts)?|ft|feet|pies|')?\b\.?`)
	distance = regexp.MustCompile(`(?i)(?:\(?\s*(?:\+/-|±|\+-|accuracy|uncertainty|error|precision|epe|coordinate uncertainty)\s*[:.]?\s*)?\b\d[\d.,]*\s*(?:(?:-|to|a)\s*\d[\d.,]*\s*)?(?:m(?:etres?|eters?|etros|ts|snm|asl)?|km|ft|feet|miles?|mi|pies)\b\.?(?:\s*(?:a\.?s\.?l\.?|s\.?\s?n\.?\s?m\.?|s\.?\s?m\.?))?\s*\)?`)
	farther  = regexp.MustCompile(`^\s*[ENSWO](?:[^a-z]|$)`)
)

// star is a typewriter's degree sign.
var star = regexp.MustCompile(`(\d) ?\*`)

var (
	// slope is what the ground does, which is in degrees and points of the
	// compass too.
	slope = regexp.MustCompile(`(?i)[,;(]\s*(?:slope|aspect|exp(?:osure|osição|osición|osition|os)?|incl(?:ination|inação|inación)?|declive|pendiente|pente|Neigung|Hang|facing)\b`)
	// feetMark is a height of three figures and more, which no minutes have.
	feetMark = regexp.MustCompile(`(^|[\s;(])(?:\d{3,5}|\d{1,2},\d{3})(?:-(?:\d{3,5}|\d{1,2},\d{3}))?'(\s|$|[,;.)])`)
	// angleOff is an uncertainty in minutes or seconds.
	angleOff = regexp.MustCompile(`\(?\s*(?:±|\+/-|\+-)\s*\d+(?:[.,]\d+)?\s*[°'"]\s*\)?`)
)

// dotted is degrees, minutes and seconds with stops between: 41.14.02.
var dotted = regexp.MustCompile(`\b(\d{1,3})\.(\d{1,2})\.(\d{1,2}(?:[.,]\d+)?)\b`)

// markInside is a mark above the decimal point, as old works set it: 14'.5 N.
var markInside = regexp.MustCompile(`(\d)([°'"])\.(\d{1,5})(\s*(?:[NSEWO]|[,;]|$|\s))`)

// iso6709 is a point as ISO 6709 writes it: +41.2339-008.6111/, also with
// minutes (+4114.03-00836.67) or seconds (+411402-0083640) run on.
var iso6709 = regexp.MustCompile(`^([+-])(\d{2})(\d{2})?(\d{2})?(\.\d+)?([+-])(\d{3})(\d{2})?(\d{2})?(\.\d+)?(?:[+-]\d+(?:\.\d+)?)?(?:CRS\w+)?/?$`)

// fromISO6709 writes such a point with marks and letters.
func fromISO6709(s string) string {
	g := iso6709.FindStringSubmatch(s)
	if g == nil {
		return s
	}
	half := func(g []string, plus, minus string) string {
		letter := plus
		if g[0] == "-" {
			letter = minus
		}
		switch {
		case g[3] != "":
			return g[1] + "°" + g[2] + "'" + g[3] + g[4] + `"` + letter
		case g[2] != "":
			return g[1] + "°" + g[2] + g[4] + "'" + letter
		}
		return g[1] + g[4] + "°" + letter
	}
	return half(g[1:6], "N", "S") + " " + half(g[6:11], "E", "W")
}

// prepare makes marks alike and takes datums, heights and distances out.
func prepare(text string) prepared {
	if strings.Contains(text, "š.") {
		text = czechMarks.Replace(text)
	}
	p := prepared{text: foreignSides(strings.TrimSpace(marks.Replace(text)))}
	if p.text != "" && (p.text[0] == '+' || p.text[0] == '-') {
		p.text = fromISO6709(p.text)
	}
	if g := nmea.FindStringSubmatch(p.text); g != nil {
		p.text = g[1] + g[2] + " " + g[3] + g[4]
	}
	if strings.Contains(p.text, "*") {
		p.text = star.ReplaceAllString(p.text, "$1°")
	}
	p.text = withDecimals(p.text)
	if strings.Count(p.text, ".") >= 2 {
		p.text = dotted.ReplaceAllString(p.text, "$1 $2 $3")
	}
	if strings.Contains(p.text, "°.") || strings.Contains(p.text, "'.") || strings.Contains(p.text, "\".") {
		p.text = markInside.ReplaceAllString(p.text, "$1.$3$2$4")
	}
	p.words, p.doubt = hasWord(p.text), strings.Contains(p.text, "?")
	if p.words || strings.Contains(p.text, "D73") {
		p.take(nearDatum)
		if p.datum == "" {
			p.local = p.take(farDatum) || p.take(namedDatum)
		}
		p.south = southern.MatchString(p.datum)
		p.text = greenwich.ReplaceAllString(p.text, "$1 ")
		p.meridian, p.zero = otherMeridian(p.text)
		if g := otherGrid.FindStringSubmatch(p.text); g != nil {
			p.foreign, p.known = g[1], true
		}
	}
	if strings.ContainsAny(p.text, "Tt") && survey.MatchString(p.text) {
		p.foreign, p.known, p.survey = "township, range and section", true, true
	}
	if name := nationalGrid(p.text); name != "" && p.foreign == "" {
		p.foreign, p.known = name, true
	}
	if code := otherCode(p.text); code != "" {
		p.foreign, p.known = code, false
	}
	p.grid = strings.TrimSpace(p.text)
	if p.foreign != "" && (p.survey || !p.known || !strings.Contains(p.text, "°")) {
		return p
	}
	before := p.text
	if p.words {
		p.text = height.ReplaceAllString(p.text, " ; ")
		if i := slope.FindStringIndex(p.text); i != nil && strings.Count(p.text[:i[0]], "°") >= 2 {
			p.text = p.text[:i[0]]
		}
	}
	if strings.Contains(p.text, "'") {
		p.text = withoutFeet(p.text)
	}
	if strings.ContainsAny(p.text, "±+") {
		p.text = angleOff.ReplaceAllString(p.text, " ; ")
	}
	if figureBefore(p.text, "mMkKfFpP") {
		p.text = withoutDistances(p.text)
	}
	p.more = p.text != before
	p.text = strings.TrimSpace(p.text)
	return p
}

// SameGround reports whether a datum, as people write it, lies so near to WGS 84
// that places differ by no more than a metre or two.
func SameGround(datum string) bool { return datum != "" && nearDatum.MatchString(datum) }

// elsewhere takes note of a datum that is given beside the text, in a column of
// its own. The text's own comes first.
func (p *prepared) elsewhere(datum string) {
	if p.datum != "" || datum == "" || nearDatum.MatchString(datum) {
		return
	}
	p.local = farDatum.MatchString(datum)
	p.beside = datum
}

func (p *prepared) localDatum() string {
	if p.datum != "" {
		return p.datum
	}
	return p.beside
}

// The functions below look for what a regular expression is after before it
// is asked: most texts have none of it.

// hasWord reports whether two letters stand together.
func hasWord(s string) bool {
	before := false
	for _, r := range s {
		letter := unicode.IsLetter(r)
		if letter && before {
			return true
		}
		before = letter
	}
	return false
}

// figureBefore reports whether a figure stands before one of the letters,
// with nothing but spaces between.
func figureBefore(s, letters string) bool {
	after := false
	for _, r := range s {
		switch {
		case isDigit(r):
			after = true
		case r == ' ':
		case after && strings.ContainsRune(letters, r):
			return true
		default:
			after = false
		}
	}
	return false
}

// hasZone reports whether a number of one or two figures, or one as long as an
// easting, stands before a letter, as a grid's zone and metres do.
func hasZone(s string) bool {
	n, part := 0, false
	for _, r := range s {
		switch {
		case isDigit(r):
			n++
		case unicode.IsLetter(r) && (n > 0 && n < 3 || n >= 6) && !part:
			return true
		case r == ' ':
			part = false
		default:
			part = n > 0 && (r == '.' || r == ',')
			n = 0
		}
	}
	return false
}

// take moves a datum out of the text.
func (p *prepared) take(re *regexp.Regexp) bool {
	i := re.FindStringSubmatchIndex(p.text)
	if i == nil {
		return false
	}
	p.datum = p.text[i[2]:i[3]]
	p.text = p.text[:i[0]] + " ; " + p.text[i[1]:]
	return true
}

// withoutFeet takes out heights with the mark of feet, but for the minutes
// behind a degree sign (9° 08,217').
func withoutFeet(s string) string {
	i := feetMark.FindStringIndex(s)
	if i == nil || strings.HasSuffix(strings.TrimRight(s[:i[0]], " "), "°") {
		return s
	}
	return s[:i[0]] + " ; " + s[i[1]:]
}

// withoutDistances takes out lengths with a unit, but for the metres of grids
// (532123 m E) and minutes written as m (10m 34s, 10 m N).
func withoutDistances(s string) string {
	var b strings.Builder
	end := 0
	for _, i := range distance.FindAllStringIndex(s, -1) {
		if farther.MatchString(s[i[1]:]) || grids.MatchString(s[i[0]:i[1]]) || behindDegrees.MatchString(s[:i[0]]) {
			continue
		}
		b.WriteString(s[end:i[0]] + " ; ")
		end = i[1]
	}
	return b.String() + s[end:]
}

// behindDegrees is what stands before minutes that are written as m.
var behindDegrees = regexp.MustCompile(`\d ?(?:d|deg\.?|°) ?$`)

// grids is a number as long as an easting.
var grids = regexp.MustCompile(`\d{6}`)
