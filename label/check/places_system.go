package check

import (
	"regexp"
	"strings"

	"cornerslip/label/coord"
)

// readSystem finds what the columns beside metres east and north say that those
// are counted in: the column for it, the headings themselves, the code of the
// reference system.
func (c *Context) readSystem() {
	own := strings.TrimSpace(c.Text("verbatimCoordinateSystem"))
	heading := c.Heading("easting")
	for i, text := range []string{own, heading, c.Text("verbatimSRS"), c.Text("geodeticDatum")} {
		s, ok := coord.ReadSystem(text)
		if !ok || s.Grid == "" && s.Zone == "" && c.Place.system.UTM {
			continue
		}
		c.Place.system, c.Place.systemName = s, s.Grid
		if i == 0 && s.Grid != "" {
			c.Place.systemName = own // in the record's own words
		}
		if s.Grid != "" || s.Zone != "" {
			return
		}
	}
}

// readText reads coordinates in one cell or two. Where they are none by
// themselves, what is said of their system is asked.
func (c *Context) readText(first, second string, h coord.Hints) coord.Reading {
	read := func() coord.Reading {
		if second == "" {
			return coord.Read(first, h)
		}
		return coord.ReadPair(first, second, h)
	}
	r := read()
	if r.Status == coord.OK || r.Local || r.Foreign {
		return r
	}
	if c.readSystem(); c.Place.system == (coord.System{}) {
		return r
	}
	h.System = c.Place.system
	return read()
}

// withSystem puts the name of the grid before metres of it, which say no place
// without.
func (c *Context) withSystem(text string, r coord.Reading) string {
	if c.Place.systemName == "" || !r.Foreign {
		return text
	}
	if s, ok := coord.ReadSystem(text); ok && s.Grid == c.Place.system.Grid {
		return text
	}
	return c.Place.systemName + " " + text
}

// bareLetter is X or Y as a word of a heading, before the name of a grid or
// behind it.
var bareLetter = regexp.MustCompile(`(?i)(?:^|[ (.-])([XY])(?:$|[ ).-])|^([XY])\p{Lu}`)

// letterOf is the X or Y in a heading, "" if it has none.
func letterOf(heading string) string {
	m := bareLetter.FindStringSubmatch(heading)
	if m == nil {
		return ""
	}
	return strings.ToUpper(m[1] + m[2])
}

// settled reads coordinates. Of an ambiguous text it takes the one reading that
// lies in the stated country, where common usage leaves the choice open: the letter
// O, or a UTM zone without its hemisphere. What cannot be read is tried with the
// letters of the language of the headings, and decimals without a sign are north
// and east in a country that has them there.
func (c *Context) settled(first, second string, h coord.Hints) coord.Reading {
	r := c.readText(first, second, h)
	if r.Status == coord.OK {
		return r
	}
	if r.Usual {
		s := source{Reading: r}
		if c.settle(&s); s.Status == coord.OK {
			return s.Reading
		}
	}
	if language := c.row.Table().Language(); language != "" && r.Status == coord.Ambiguous {
		if again := c.readText(first, second, h.In(language)); again.Status == coord.OK {
			return again
		}
	}
	if r.Status == coord.Ambiguous && !h.Signed && r.Point.Form == coord.Decimal && r.HasLat && r.HasLon {
		h.Signed = true
		if again := c.readText(first, second, h); again.Status == coord.OK {
			if _, in := c.inCountry([]coord.Point{again.Point}); in {
				return again
			}
		}
	}
	return r
}
