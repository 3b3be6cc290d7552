package coord

import (
	"fmt"
	"math"
)

// The WGS 84 ellipsoid (EPSG:7030).
const (
	semiMajor  = 6378137.0
	flattening = 1 / 298.257223563
	e2         = flattening * (2 - flattening)
	scale      = 0.9996 // on the central meridian of a UTM zone
)

// A UTM is a place in the Universal Transverse Mercator grid on WGS 84.
type UTM struct {
	Zone              int
	North             bool
	Easting, Northing int64 // millimetres, false origins included
	// Step is how fine it was written, in millimetres; 0 if it was computed.
	Step int64
}

// String returns the zone with its hemisphere and the metres to the
// millimetre: "33N 500000.000 4649776.225".
func (u UTM) String() string {
	return fmt.Sprintf("%02d%s %s %s", u.Zone, u.hemisphere(), millis(u.Easting), millis(u.Northing))
}

func (u UTM) hemisphere() string {
	if u.North {
		return "N"
	}
	return "S"
}

func millis(n int64) string { return fmt.Sprintf("%d.%03d", n/1000, n%1000) }

// zoneOf returns the UTM zone of a place: six degrees each from 180° W, but
// for southern Norway and Svalbard. 180° E is 180° W.
//
// Source: NGA.SIG.0012, sections 7 and 9.
func zoneOf(lat, lon Angle) int {
	z := int((lon+180*Degree)/(6*Degree))%60 + 1
	switch {
	case lat >= 56*Degree && lat < 64*Degree && z == 31 && lon >= 3*Degree:
		return 32
	case lat >= 72*Degree && lon >= 0 && lon < 42*Degree:
		return 31 + 2*int((lon+3*Degree)/(12*Degree))
	}
	return z
}

func meridian(zone int) Angle { return Angle(6*zone-183) * Degree }

// utmLimits says where UTM ends; beyond, polar grids are used.
func utmLimits(lat Angle) error {
	if lat >= 84*Degree {
		return fmt.Errorf("UTM ends at 84° N: use degrees")
	}
	if lat < -80*Degree {
		return fmt.Errorf("UTM ends at 80° S: use degrees")
	}
	return nil
}

// UTM returns p in the grid, to the millimetre: as it was written if it was
// written so, else in the standard zone. It is refused from 84° N and beyond
// 80° S, where the grid ends.
func (p Point) UTM() (UTM, error) {
	if p.grid != (UTM{}) {
		return p.grid, nil
	}
	if err := utmLimits(p.Lat); err != nil {
		return UTM{}, err
	}
	zone := zoneOf(p.Lat, p.Lon)
	x, y := p.project(zone)
	return UTM{Zone: zone, North: p.Lat >= 0, Easting: toMillis(x), Northing: toMillis(y)}, nil
}

// project returns easting and northing in metres.
func (p Point) project(zone int) (x, y float64) {
	dlon := p.Lon - meridian(zone)
	switch {
	case dlon > 180*Degree:
		dlon -= 360 * Degree
	case dlon < -180*Degree:
		dlon += 360 * Degree
	}
	x, y = krueger.forward(p.Lat.Degrees()*math.Pi/180, dlon.Degrees()*math.Pi/180)
	x += 500000
	if p.Lat < 0 {
		y += 10000000
	}
	return x, y
}

func toMillis(m float64) int64 { return int64(math.Round(m * 1000)) }

// FromUTM returns the place of a grid reference. It is refused if the zone or
// the metres lie outside the grid.
func FromUTM(u UTM) (Point, error) {
	if u.Zone < 1 || u.Zone > 60 {
		return Point{}, fmt.Errorf("UTM zone %d does not exist: zones run from 1 to 60", u.Zone)
	}
	// 100 to 900 km is the width of a grid's squares; Norway's and Svalbard's
	// wider zones stay within it.
	if u.Easting < 100_000_000 || u.Easting >= 900_000_000 {
		return Point{}, fmt.Errorf("easting %s is outside UTM: 100000 to 900000", millis(u.Easting))
	}
	if u.Northing < 0 || u.Northing > 10_000_000_000 {
		return Point{}, fmt.Errorf("northing %s is outside UTM: 0 to 10000000", millis(u.Northing))
	}
	y := float64(u.Northing) / 1000
	if !u.North {
		y -= 10000000
	}
	lat, lon := krueger.inverse(float64(u.Easting)/1000-500000, y)
	p := Point{Lat: AngleOf(lat * 180 / math.Pi), Lon: AngleOf(lon*180/math.Pi) + meridian(u.Zone), Form: GridUTM}
	if p.Lon >= 180*Degree {
		p.Lon -= 360 * Degree
	} else if p.Lon < -180*Degree {
		p.Lon += 360 * Degree
	}
	// The grid overlaps the polar ones by half a degree.
	if p.Lat > 84*Degree+Degree/2 || p.Lat < -80*Degree-Degree/2 {
		return Point{}, fmt.Errorf("northing %s lies beyond 84° N or 80° S, where UTM ends", millis(u.Northing))
	}
	if u.Step == 0 {
		u.Step = 1
	}
	p.grid = u
	return p, nil
}
