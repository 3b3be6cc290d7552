package coord

import (
	"fmt"
	"math"
	"strings"

	"cornerslip/label/lang"
)

// thin stands between the figures of a coordinate: narrow, no break.
const thin = "\u202f"

func (p Point) format(s Style, l lang.Tag) ([]string, error) {
	if p.IsZero() {
		return nil, fmt.Errorf("no coordinates to print")
	}
	form := s.Form
	if form == AsWritten {
		form = p.Form
	}
	switch form {
	case GridUTM:
		return p.formatUTM(s)
	case GridMGRS:
		return p.formatMGRS(s)
	}
	if p.local {
		return nil, fmt.Errorf("the grid is on a datum that is not converted here: print it as written")
	}
	w := angleWriter{s, l}
	lat, lon := p.half(p.lat, form, s.Form), p.half(p.lon, form, s.Form)
	a := w.half(p.Lat, lat, lang.North, lang.South)
	b := w.half(p.Lon, lon, lang.East, lang.West)
	if l != lang.Chinese || s.International {
		a += ","
	}
	return []string{a, b}, nil
}

// half says how one half is to be written in the form wanted.
func (p Point) half(as written, form, asked Form) written {
	if p.grid == (UTM{}) && (asked == AsWritten || as.form == form) {
		return as
	}
	step := p.step
	switch {
	case p.grid != (UTM{}):
		// A degree of latitude is about 111.2 km; which decade is meant
		// needs no more.
		step = max(1, Angle(mulDiv(uint64(p.grid.Step), uint64(Degree), 111_200_000)))
	case p.lat.form != p.lon.form:
		step = stepOf(unitOf(as.form), int(as.places))
	}
	return nearest(step, form)
}

func unitOf(f Form) Angle {
	switch f {
	case DegreesMinutes:
		return Minute
	case DegreesMinutesSeconds:
		return Second
	}
	return Degree
}

// nearest returns the notation of the form whose last figure is nearest in
// ratio to a step, so that neither a figure is invented nor one is lost that
// was known: 0.01° becomes whole minutes, 0.001° tenths of a minute, 0.0001°
// whole seconds, 1′ hundredths of a degree.
func nearest(step Angle, form Form) written {
	best, least := written{Decimal, 0}, math.Inf(1)
	try := func(f Form, from, to int) {
		for places := from; places <= to; places++ {
			r := math.Abs(math.Log(float64(stepOf(unitOf(f), places)) / float64(step)))
			if r < least-1e-9 {
				best, least = written{f, int8(places)}, r
			}
		}
	}
	switch form {
	case DegreesMinutes:
		try(Decimal, 0, 1)
		try(DegreesMinutes, 0, 12)
	case DegreesMinutesSeconds:
		try(Decimal, 0, 1)
		try(DegreesMinutes, 0, 1)
		try(DegreesMinutesSeconds, 0, 10)
	default:
		try(Decimal, 0, 14)
	}
	return best
}

type angleWriter struct {
	Style
	lang lang.Tag
}

func (w angleWriter) half(a Angle, as written, plus, minus lang.Compass) string {
	point := plus
	if a < 0 {
		point = minus
	}
	figures := w.figures(a.abs(), as)
	word := lang.Hemisphere(w.lang, point)
	letter := lang.Letter(w.lang, point)
	if w.International {
		word, letter = "", string(rune(point))
	}
	if word != "" {
		return word + w.gap() + figures
	}
	return figures + w.gap() + letter
}

func (w angleWriter) gap() string {
	if w.Tight {
		return ""
	}
	return thin
}

func (w angleWriter) figures(a Angle, as written) string {
	places := int(as.places)
	switch as.form {
	case DegreesMinutes:
		a = a.round(stepOf(Minute, places))
		return fmt.Sprintf("%d°%s%s′", a/Degree, w.gap(), w.decimals(a%Degree, Minute, places))
	case DegreesMinutesSeconds:
		a = a.round(stepOf(Second, places))
		return fmt.Sprintf("%d°%s%02d′%s%s″", a/Degree, w.gap(), a%Degree/Minute, w.gap(), w.decimals(a%Minute, Second, places))
	}
	return strings.Replace(a.in(Degree, places), ".", w.comma(), 1) + "°"
}

// decimals writes minutes or seconds with two figures before the point.
func (w angleWriter) decimals(a, unit Angle, places int) string {
	s := a.in(unit, places)
	if a < 10*unit {
		s = "0" + s
	}
	return strings.Replace(s, ".", w.comma(), 1)
}

// comma returns the decimal mark of the language.
func (w angleWriter) comma() string { return decimalMark(w.lang) }

func decimalMark(l lang.Tag) string {
	switch l {
	case lang.Portuguese, lang.Spanish, lang.French, lang.German:
		return ","
	}
	return "."
}

// gridStep returns the side of the square, a power of ten in millimetres,
// nearest in ratio to how fine p was written: of latitude and longitude one
// degree is about 111.2 km.
func (p Point) gridStep() int64 {
	if p.grid != (UTM{}) {
		return p.grid.Step
	}
	mm := float64(p.step) / float64(Degree) * 111_200_000
	return int64(pow10(min(max(int(math.Round(math.Log10(mm))), 0), 8)))
}

// formatUTM writes the band's letter if that was written, else N for the north.
// In the south it writes S, but the band's letter where S could be taken for
// the northern band of that name.
func (p Point) formatUTM(s Style) ([]string, error) {
	u, err := p.UTM()
	if err != nil {
		return nil, err
	}
	step := p.gridStep()
	letter := u.hemisphere()
	switch {
	case p.said != 0 && p.grid != (UTM{}):
		letter = string(p.said)
	case !u.North && inBand(u, 'S'):
		letter = string(bandOf(p.Lat))
	}
	gap := thin
	if s.Tight {
		gap = ""
	}
	metres := func(n int64) string {
		n = (n + step/2) / step * step
		if step >= 1000 {
			return fmt.Sprint(n / 1000)
		}
		places := 3 - int(math.Round(math.Log10(float64(step))))
		return fixed(uint64(n)/pow10(3-places), places)
	}
	return []string{
		fmt.Sprintf("UTM\u00a0%d%s", u.Zone, letter),
		metres(u.Easting) + gap + "m" + gap + "E,",
		metres(u.Northing) + gap + "m" + gap + "N",
	}, nil
}

// inBand reports whether the northing, taken as a northern one, lies in the
// latitude band.
func inBand(u UTM, band byte) bool {
	south, north, _ := bandLimits(band)
	u.North = true
	p, err := FromUTM(u)
	return err == nil && p.Lat >= south && p.Lat < north
}

func (p Point) formatMGRS(s Style) ([]string, error) {
	digits := 5
	for step := p.gridStep(); step > 1000 && digits > 0; step /= 10 {
		digits--
	}
	ref, err := p.MGRS(digits)
	if err != nil || s.Tight {
		return []string{ref}, err
	}
	parts := []string{ref[:3], ref[3:5]}
	if digits > 0 {
		parts = append(parts, ref[5:5+digits], ref[5+digits:])
	}
	return []string{strings.Join(parts, thin)}, nil
}
