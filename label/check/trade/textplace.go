package trade

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/coord"
)

// textPlaceRules are about heights and coordinates among the words for the place,
// which are printed beside those of the columns.
func textPlaceRules() []check.Rule {
	return []check.Rule{
		{
			Name: "locality-height", Severity: label.Warning, Source: practice,
			Doc:     "a height among the words for the place that is quite another than the one in its columns",
			Terms:   []string{"locality", "verbatimLocality"},
			Example: one("locality", "Valdoura, dunes, alt. 300 m", "minimumElevationInMeters", "8"), Counterexample: one("locality", "Valdoura, dunes, alt. 50 m", "minimumElevationInMeters", "8"),
			Row: heightInText,
		},
		{
			Name: "locality-point", Severity: label.Warning, Source: practice,
			Doc:     "coordinates among the words for the place that lie far from those in their columns",
			Terms:   []string{"locality", "verbatimLocality"},
			Example: one("locality", "Valdoura, dunes, 38.97 N 8.80 W"), Counterexample: one("locality", "Valdoura, dunes, 38.47 N 8.80 W"),
			Row: pointInText,
		},
		{
			Name: "locality-code", Severity: label.Warning, Source: practice,
			Doc:     "the code of a site or a plot for all that is said of the place below the state, without coordinates: nobody knows it who has not the table",
			Terms:   []string{"locality"},
			Example: one("locality", "K12", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""), Counterexample: one("locality", "Km 41", "decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", "", "coordinateUncertaintyInMeters", ""),
			Row: siteCode,
		},
	}
}

// codeOfSite is a code, perhaps behind a word for what it is the code of. What has a
// blank or a hyphen before its figures may be a road or a kilometre.
var codeOfSite = regexp.MustCompile(`^(?:(?i:site|plot|stand|station|stn\.?|transect|quadrat|sample|point|loc\.?|locality|parcela|ponto|punto|estação|estación|placette|relevé|parcelle|fläche|probefläche)[ .:#_-]*)(?:[A-Za-z]{0,3}[-_]?[0-9]{1,4}[A-Za-z]?|[A-Z])$|^[A-Z]{1,3}[0-9]{1,3}[a-z]?(?:[-_.][A-Z]?[0-9]{1,3}[a-z]?)?$`)

// finer are the columns that say more of a place than its state does.
var finer = []string{"county", "municipality", "island", "verbatimLocality", "locationRemarks", "higherGeography", "waterBody", "mapSheet", "verbatimCoordinates"}

func siteCode(c *check.Context) {
	text := c.Text("locality")
	if len(text) > 24 || !strings.ContainsAny(text, "0123456789") && len(text) < 5 || c.HasCoordinates || c.CoordinatesText != "" || c.Survey != "" || !codeOfSite.MatchString(text) {
		return
	}
	for _, term := range finer {
		if c.Text(term) != "" {
			return
		}
	}
	c.Once("locality", "a code says no place to whoever has not the table: write where the site lies", "", "code of a site")
}

// heightText is a height that says so, with its unit, and is set off from the words
// before it. One in brackets may be a summit's.
var heightText = regexp.MustCompile(`(?i)(?:^|[,;.:]\s*)(?:(?:alt(?:itude|itud|\.)?|elev(?:ation|ación|ação|\.)?|cota|altitudine|höhe)\s*[:.]?\s*(?:of |c\.|ca\.?|circa|about|approx\.?|~|±)?\s*([0-9][0-9.,]*)(?:\s*(?:-|–|to|a|bis)\s*([0-9][0-9.,]*))?\s*(m|ft|feet|met(?:re|er)s|metros|mètres)\b|(?:c\.|ca\.?|about|~)?\s*([0-9][0-9.,]*)(?:\s*(?:-|–|to|a|bis)\s*([0-9][0-9.,]*))?\s*(m|ft|feet|met(?:re|er)s|metros|mètres)\.? ?(?:a\. ?s\. ?l|asl\b|s\. ?n\. ?m|s\. ?m\.|ü\. ?(?:NN|M)\b|above sea level|de altitude?\b|d'altitude))`)

// mayHaveHeight are words of which heightText needs one.
var mayHaveHeight = []string{"alt", "Alt", "ALT", "elev", "Elev", "cota", "Cota", "öhe", "a.s.l", "asl", "a. s", "s.n.m", "s. n", "s.m.", "above sea"}

// What may be a height, and what a point, among the words for the place.
var (
	heightWords = check.NewMark(localities, 0, func(text string) bool {
		return containsOne(text, mayHaveHeight) && strings.ContainsAny(text, "0123456789")
	})
	pointWords = check.NewMark(localities, 0, figureBeforeNorth)
)

func heightInText(c *check.Context) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, term := range wordsForPlace(c) {
		text := c.Text(term)
		if !c.Has(heightWords, term) {
			continue
		}
		all := heightText.FindAllStringSubmatch(text, 2)
		if len(all) != 1 {
			continue // several heights are of several places
		}
		m := all[0]
		from, to, unit := m[1]+m[4], m[2]+m[5], strings.ToLower(m[3]+m[6])
		a, okA := heightFigures(from, unit)
		b, okB := heightFigures(to, unit)
		if to == "" {
			b, okB = a, okA
		}
		if !okA || !okB || a > b {
			continue
		}
		if math.IsInf(low, 1) {
			eachHeight(c, func(_ string, metres float64) bool {
				low, high = min(low, metres), max(high, metres)
				return true
			})
			if math.IsInf(low, 1) {
				return
			}
		}
		if apart := max(a-high, low-b); apart > 100 && apart > 0.2*max(a, low) {
			columns := metres(math.Round(low))
			if high > low {
				columns = itoa(int(math.Round(low))) + "–" + metres(math.Round(high))
			}
			c.Once(term, fmt.Sprintf("says %q, and the columns for heights say %s: both are printed; correct the wrong one", strings.Trim(m[0], " ,;.:"), columns), "", "height "+text)
			return
		}
	}
}

// heightFigures reads figures with a mark for thousands, as metres.
func heightFigures(s, unit string) (float64, bool) {
	s = strings.TrimRight(s, ".,")
	if thousands.MatchString(s) {
		s = strings.NewReplacer(",", "", ".", "").Replace(s)
	}
	if s == "" || strings.Contains(s, ",") || strings.Count(s, ".") > 1 {
		return 0, false
	}
	v := parse(s)
	if unit == "ft" || unit == "feet" {
		v *= foot
	}
	return v, true
}

var thousands = regexp.MustCompile(`^[0-9]{1,2}[.,][0-9]{3}$`)

// wordsForPlace is the column of the words for the place that are printed.
func wordsForPlace(c *check.Context) []string {
	if c.Text("locality") != "" {
		return localities[:1]
	}
	return localities[1:]
}

var localities = []string{"locality", "verbatimLocality"}

func containsOne(text string, words []string) bool {
	for _, w := range words {
		if strings.Contains(text, w) {
			return true
		}
	}
	return false
}

// pointText is latitude and longitude with decimals or a sign for degrees.
var pointText = regexp.MustCompile(`(?:^|[\s,;:(])([0-9]{1,2}(?:[.,][0-9]+\s*[°º]?|\s*[°º]\s*(?:[0-9]{1,2}(?:[.,][0-9]+)?\s*['′’]\s*)?(?:[0-9]{1,2}(?:[.,][0-9]+)?\s*(?:["″”]|''|′′|’’)\s*)?)\s*[NS]\b[\s,;/-]*[0-9]{1,3}(?:[.,][0-9]+\s*[°º]?|\s*[°º]\s*(?:[0-9]{1,2}(?:[.,][0-9]+)?\s*['′’]\s*)?(?:[0-9]{1,2}(?:[.,][0-9]+)?\s*(?:["″”]|''|′′|’’)\s*)?)\s*[EWO])(?:$|[^\pL])`)

// farText is how far coordinates in words may lie from those in columns, in metres:
// words for a place often have those of a village or a mountain.
const farText = 5000

func pointInText(c *check.Context) {
	if !c.HasCoordinates || c.Place.Local {
		return
	}
	for _, term := range wordsForPlace(c) {
		text := c.Text(term)
		if !c.Has(pointWords, term) {
			continue
		}
		m := pointText.FindStringSubmatch(text)
		if m == nil || len(pointText.FindAllString(text, 2)) > 1 {
			continue
		}
		r := coord.Read(m[1], coord.Hints{})
		if r.Status != coord.OK {
			continue
		}
		p := c.Coordinates
		apart := distance(p.Lat.Degrees(), p.Lon.Degrees(), r.Point.Lat.Degrees(), r.Point.Lon.Degrees())
		if apart > farText+2*float64(p.Uncertainty()+r.Point.Uncertainty())+c.Uncertainty {
			c.Once(term, fmt.Sprintf("says %s, which lies %s from the coordinates in their columns: both are printed; correct the wrong one", m[1], far(apart)), "", "point "+text)
			return
		}
	}
}

// figureBeforeNorth reports whether a letter N or S stands behind a figure or a sign
// for degrees, minutes or seconds.
func figureBeforeNorth(s string) bool {
	behind := false
	for i := range len(s) {
		switch b := s[i]; {
		case b >= '0' && b <= '9' || b == '\'' || b == '"' || b >= 0x80:
			behind = true
		case b == ' ':
		case (b == 'N' || b == 'S') && behind:
			return true
		default:
			behind = false
		}
	}
	return false
}
