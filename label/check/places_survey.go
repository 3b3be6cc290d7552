package check

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"cornerslip/label/coord"
	"cornerslip/label/place"
)

// readSurvey keeps the place in a survey of townships, and the map sheet, as
// the label says them.
func (c *Context) readSurvey(s splitPlace) {
	c.Survey = surveyText(s.survey)
	if s.sheet.Text != "" {
		c.MapSheet = s.sheet.Text
		// A bare number says nothing without the name of its column.
		if h := c.Heading("mapSheet"); h != "" && !strings.Contains(strings.ToLower(c.MapSheet), strings.ToLower(h)) {
			c.MapSheet = h + ": " + c.MapSheet
		}
	}
}

// Heading returns the heading of a term's column as written, "" if no column has it.
func (c *Context) Heading(term string) string {
	t := c.row.Table()
	if i := t.Index(term); i >= 0 {
		return strings.TrimSpace(strings.ReplaceAll(t.Columns()[i].Heading, "_", " "))
	}
	return ""
}

// surveyText puts township, range and section together in the order of the
// trade: T13N R19W Sec. 26 NE1/4, Boise Meridian.
func surveyText(f [6]Field) string {
	var parts []string
	if f[0].Text != "" {
		parts = append(parts, f[0].Text)
	}
	for i, before := range [...]string{1: "T", 2: "R", 3: "Sec.\u00a0", 4: "", 5: ""} {
		text := f[i].Text
		if i == 0 || text == "" {
			continue
		}
		if before != "" && strings.IndexAny(text, "0123456789") == 0 {
			text = before + text
		}
		if i == 5 && !meridianWord.MatchString(text) {
			text += " Meridian"
		}
		parts = append(parts, text)
	}
	if n := len(parts); n > 1 && f[5].Text != "" {
		return strings.Join(parts[:n-1], " ") + ", " + parts[n-1]
	}
	return strings.Join(parts, " ")
}

var meridianWord = regexp.MustCompile(`(?i)\b(?:mer|meridian|P\.?\s?M)\b`)

// sectionNumber is the section in a survey's designation.
var sectionNumber = regexp.MustCompile(`(?i)(?:\bs|\bsec|\bsect|\bsection)\.?\s*(\d{1,3})\b`)

func sectionRule(c *Context) {
	for _, t := range []string{"townshipRangeSection", "section"} {
		text := c.Text(t)
		if text == "" {
			continue
		}
		number := text
		if m := sectionNumber.FindStringSubmatch(text); m != nil {
			number = m[1]
		} else if t != "section" {
			continue
		}
		if len(number) <= 3 && strings.Trim(number, "0123456789") == "" && (len(number) == 3 || number > "36" && len(number) == 2) {
			c.Report(t, "section "+number+": a township has 36")
		}
	}
}

// bareSquare is a square of MGRS without its zone, as floras of one country
// write it: NC59.
var bareSquare = regexp.MustCompile(`^(?:UTM:? )?([A-HJ-NP-Z][A-HJ-NP-V]) ?(\d{2}|\d{4}|\d{6})$`)

// fewSquares is how many squares of one name a country may have that is known
// by them: Portugal has some in its islands too.
const fewSquares = 3

// squareKnown reports whether a square without its zone lies in the stated
// country: then it is right as it is written.
func (c *Context) squareKnown(text string) bool {
	m := bareSquare.FindStringSubmatch(text)
	if m == nil {
		return false
	}
	country, ok := place.Country(c.Text("country"))
	if !ok {
		return false
	}
	var found [][2]coord.Angle
	for _, head := range c.past.squares.of(country.Code+" "+m[1], zonesOf) {
		if p, err := coord.FromMGRS(head + m[1] + m[2]); err == nil && nearTo(country.Code, p, nearCountry) {
			if at := [2]coord.Angle{p.Lat, p.Lon}; !slices.Contains(found, at) {
				found = append(found, at)
			}
		}
	}
	return len(found) > 0 && len(found) <= fewSquares
}

// nearTo reports whether a point lies in a country or within a distance in
// metres of it.
func nearTo(code string, p coord.Point, reach float64) bool {
	lat, lon := p.Lat.Degrees(), p.Lon.Degrees()
	return place.IsIn(code, lat, lon) || place.CountryDistance(code, lat, lon) <= reach
}

// zonesOf returns zone and band of the squares of 100 km that have a name and
// touch a country: "PT NC" gives 29S, and "PT PE", which two bands share, 29S
// and 29T.
func zonesOf(text string) []string {
	code, square, _ := strings.Cut(text, " ")
	var heads []string
	for zone := 1; zone <= 60; zone++ {
		for _, band := range "CDEFGHJKLMNPQRSTUVWX" {
			head := strconv.Itoa(zone) + string(band)
			if p, err := coord.FromMGRS(head + square); err == nil && nearTo(code, p, 80e3) {
				heads = append(heads, head)
			}
		}
	}
	return heads
}
