package coord

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// The letters of MGRS: bands of 8° from 80° S (X has 12°), columns of 100 km
// in three sets by zone, rows of 100 km that begin with F in even zones.
//
// Source: NGA.STND.0037 (universal grids and grid reference systems).
const (
	bands   = "CDEFGHJKLMNPQRSTUVWX"
	columns = "ABCDEFGHJKLMNPQRSTUVWXYZ"
	rows    = "ABCDEFGHJKLMNPQRSTUV"
)

// bandOf returns the latitude band's letter, from 80° S to 84° N.
func bandOf(lat Angle) byte {
	i := int((lat + 80*Degree) / (8 * Degree))
	return bands[min(max(i, 0), len(bands)-1)]
}

// bandLimits returns the southern and the northern edge of a band.
func bandLimits(band byte) (south, north Angle, ok bool) {
	i := strings.IndexByte(bands, band)
	if i < 0 {
		return 0, 0, false
	}
	south = Angle(8*i-80) * Degree
	north = south + 8*Degree
	if band == 'X' {
		north = 84 * Degree
	}
	return south, north, true
}

// MGRS returns the square of the Military Grid Reference System that holds p,
// with 0 to 5 digits each way: five name a square of 1 m, four of 10 m.
// Figures are cut off, not rounded. It is refused from 84° N and beyond 80° S.
func (p Point) MGRS(digits int) (string, error) {
	if digits < 0 || digits > 5 {
		return "", fmt.Errorf("MGRS takes 0 to 5 digits each way, not %d", digits)
	}
	if err := utmLimits(p.Lat); err != nil && p.band == 0 {
		return "", err
	}
	zone, band := zoneOf(p.Lat, p.Lon), bandOf(p.Lat)
	if p.band != 0 {
		// The middle of a square at an edge may lie beyond it: the square
		// keeps its name.
		zone, band = p.grid.Zone, p.band
	}
	var e, n int64
	if p.grid != (UTM{}) && p.grid.Zone == zone {
		e, n = p.grid.Easting/1000, p.grid.Northing/1000
	} else {
		x, y := p.project(zone)
		e, n = int64(math.Floor(x)), int64(math.Floor(y))
	}
	if band < 'N' {
		n = min(n, 9999999)
	}
	s := fmt.Sprintf("%02d%c%c%c", zone, band, columns[(zone-1)%3*8+int(e/100000)-1], rows[rowOf(zone, n)])
	if digits == 0 {
		return s, nil
	}
	cut := int64(pow10(5 - digits))
	return s + fmt.Sprintf("%0*d%0*d", digits, e%100000/cut, digits, n%100000/cut), nil
}

func rowOf(zone int, northing int64) int {
	r := int(northing / 100000)
	if zone%2 == 0 {
		r += 5
	}
	return r % len(rows)
}

// FromMGRS returns the middle of the square that an MGRS reference names.
// Spaces between its parts do not matter; small letters are taken.
func FromMGRS(ref string) (Point, error) {
	s := strings.ToUpper(strings.Join(strings.Fields(ref), ""))
	i := 0
	for i < len(s) && '0' <= s[i] && s[i] <= '9' {
		i++
	}
	zone, _ := strconv.Atoi(s[:min(i, 3)])
	if i == 0 || i > 2 || len(s) < i+3 {
		return Point{}, fmt.Errorf("%q is not MGRS: write zone, band, two letters and an even number of figures, as 29TNF3212367890", ref)
	}
	band, col, row, num := s[i], s[i+1], s[i+2], s[i+3:]
	if len(num)%2 != 0 || len(num) > 10 || strings.Trim(num, "0123456789") != "" {
		return Point{}, fmt.Errorf("%q is not MGRS: after the letters come 2, 4, 6, 8 or 10 figures", ref)
	}
	digits := len(num) / 2
	size := int64(pow10(5-digits)) * 1000 // mm
	e, _ := strconv.ParseInt(num[:digits], 10, 64)
	n, _ := strconv.ParseInt(num[digits:], 10, 64)
	u, err := squareOf(zone, band, col, row)
	if err != nil {
		return Point{}, fmt.Errorf("%q: %w", ref, err)
	}
	u.Easting += e*size + size/2
	u.Northing += n*size + size/2
	u.Step = size
	p, err := FromUTM(u)
	if err != nil {
		return Point{}, fmt.Errorf("%q: %w", ref, err)
	}
	p.Form, p.band = GridMGRS, band
	return p, nil
}

// squareOf returns the lower left corner of a square of 100 km. Rows repeat
// every 2,000 km, so the band decides: some of the square must lie in it.
func squareOf(zone int, band, col, row byte) (UTM, error) {
	south, north, ok := bandLimits(band)
	if !ok {
		return UTM{}, fmt.Errorf("there is no latitude band %c: bands run from C to X without I and O", band)
	}
	if zone < 1 || zone > 60 || band == 'X' && (zone == 32 || zone == 34 || zone == 36) {
		return UTM{}, fmt.Errorf("there is no zone %d%c", zone, band)
	}
	c := strings.IndexByte(columns, col) - (zone-1)%3*8
	if c < 0 || c > 7 {
		return UTM{}, fmt.Errorf("zone %d has no column %c", zone, col)
	}
	r := strings.IndexByte(rows, row)
	if r < 0 {
		return UTM{}, fmt.Errorf("there is no row %c", row)
	}
	if zone%2 == 0 {
		r = (r + 15) % 20
	}
	u := UTM{Zone: zone, North: band >= 'N', Easting: int64(c+1) * 100_000_000}
	for northing := int64(r) * 100_000_000; northing < 10_000_000_000; northing += 2_000_000_000 {
		u.Northing = northing
		if u.touches(south, north) {
			return u, nil
		}
	}
	return UTM{}, fmt.Errorf("zone %d%c has no square %c%c", zone, band, col, row)
}

// touches reports whether some of the square of 100 km from u lies between
// the two latitudes.
func (u UTM) touches(south, north Angle) bool {
	lowest, highest := Angle(math.MaxInt64), Angle(math.MinInt64)
	for _, de := range []int64{0, 50_000_000, 99_999_999} {
		for _, dn := range []int64{0, 99_999_999} {
			y := float64(u.Northing+dn) / 1000
			if !u.North {
				y -= 10000000
			}
			lat, _ := krueger.inverse(float64(u.Easting+de)/1000-500000, y)
			a := AngleOf(lat * 180 / math.Pi)
			lowest, highest = min(lowest, a), max(highest, a)
		}
	}
	return lowest < north && highest >= south
}
