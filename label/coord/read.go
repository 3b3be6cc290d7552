package coord

import (
	"strconv"
	"strings"

	"cornerslip/label/lang"
)

// A Status says how well a text could be read as coordinates or an elevation.
type Status string

const (
	// OK: the text has one reading.
	OK Status = "ok"
	// Ambiguous: it has several, or one that takes a guess.
	Ambiguous Status = "ambiguous"
	// NotConvertible: it holds no whole pair of coordinates, or one in a
	// system that is not converted here.
	NotConvertible Status = "not_convertible"
	// Invalid: there is no such place, such as a latitude beyond 90°.
	Invalid Status = "invalid"
)

// Hints are what is known beforehand. The zero value knows nothing and is the
// careful choice.
type Hints struct {
	// Lang settles what a letter means: O is west in Portuguese, Spanish and
	// French, east in German.
	Lang lang.Tag
	// South and West say that values without sign or hemisphere lie there;
	// Signed says that such values mean what they say, north and east.
	South, West, Signed bool
	// Datum is the geodetic datum where it is given beside the text, not in
	// it. It matters to grids: their metres mean other places on each.
	Datum string
	// System is what columns beside metres say that those are counted in.
	System System
}

// In returns the hints for a text in a language, a tag of BCP 47. Norwegians and
// Slovaks have the letters of their neighbours.
func (h Hints) In(language string) Hints {
	switch h.Lang = lang.Tag(language); h.Lang {
	case "nb":
		h.Lang = lang.Danish
	case "sk":
		h.Lang = lang.Czech
	}
	return h
}

// A Reading is how a text was understood.
type Reading struct {
	Status Status
	// Point is the reading, or the likeliest where the text is ambiguous and
	// one is likelier than the rest; else the zero Point. Where only one half
	// was found, the other is 0.
	Point Point
	// HasLat and HasLon tell which halves of Point were found.
	HasLat, HasLon bool
	// Err says what is wrong and what to do; nil if Status is OK.
	Err error
	// Choices are the points that an ambiguous text can mean, where the
	// hemisphere alone is not known; knowing the country settles them. Nil
	// where something else is in doubt.
	Choices []Point
	// Usual says that common usage leaves that choice open: the letter O is
	// west or east, and a UTM zone goes without its hemisphere.
	Usual bool
	// BandS says that the choice is between the band S of UTM and the south.
	BandS bool
	// Foreign says that the text is in a system that labels use and that is
	// not converted here, such as a survey of townships or a national grid:
	// right as it is written.
	Foreign bool
	// More says that the text holds more than coordinates, their datum and
	// words for them: a height, an uncertainty, "ca.", a name, the same place
	// in another notation. Printing the Point alone would lose it.
	More bool
	// Local says that nothing is in doubt but for the datum of a grid, which
	// lies so far from WGS 84 that Point is some hundred metres off. Written
	// as a grid reference the Point is right.
	Local bool
}

// Parse reads both coordinates from one text, as labels and
// verbatimCoordinates have them. The Point is set if the status is OK;
// otherwise the error says what is wrong and what to do. [Read] gives the
// likeliest reading too.
func Parse(text string, h Hints) (Point, Status, error) {
	return Read(text, h).parts()
}

// ParsePair reads verbatimLatitude and verbatimLongitude, in any notation
// that Parse reads.
func ParsePair(lat, lon string, h Hints) (Point, Status, error) {
	return ReadPair(lat, lon, h).parts()
}

func (r Reading) parts() (Point, Status, error) {
	if r.Status != OK {
		return Point{}, r.Status, r.Err
	}
	return r.Point, OK, nil
}

// ReadLine answers the command `read coordinates`: status, latitude and
// longitude with seven decimals, the uncertainty in metres from the precision
// written, UTM and MGRS, with tabs between; what is not known is empty.
func ReadLine(text string) string {
	r := Read(text, Hints{})
	f := [6]string{string(r.Status)}
	if r.HasLat {
		f[1] = r.Point.Lat.Decimal(7)
	}
	if r.HasLon {
		f[2] = r.Point.Lon.Decimal(7)
	}
	if r.HasLat && r.HasLon {
		f[3] = strconv.Itoa(r.Point.Uncertainty())
		if u, err := r.Point.UTM(); err == nil {
			f[4] = u.String()
		}
		f[5], _ = r.Point.MGRS(5)
	}
	return strings.Join(f[:], "\t")
}
