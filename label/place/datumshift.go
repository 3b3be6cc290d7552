package place

import "math"

// MaxDatumShift returns how many metres apart WGS 84 and any other datum can
// put coordinates of unknown datum at the place given in degrees, as the
// standard's assumed default wants it: at the nearest crossing of a grid of 5
// degrees, whatever datum is used there in truth.
//
// The largest shifts of all systems that EPSG has come from a few datums of
// small islands, whose parameters (EPSG dataset v10.076) are carried round the
// world. The grid, and the rounding to it, are those of the reference that
// the standard names (Georeferencing Calculator, Wieczorek and Wieczorek,
// 2019), which its values meet to the metre: 2786 m at 30° S, 130° E.
func MaxDatumShift(lat, lon float64) int {
	const grid = 5
	lat, lon = math.Round(lat/grid)*grid*math.Pi/180, math.Round(lon/grid)*grid*math.Pi/180
	most := 0.0
	for i := range shifts {
		most = max(most, shifts[i].at(lat, lon))
	}
	return int(math.Round(most))
}

// A shift is a transformation to WGS 84 as EPSG writes it, of seven parameters
// (position vector) about a pivot: metres, radians and parts of one.
type shift struct {
	tx, ty, tz, rx, ry, rz, scale float64
	px, py, pz                    float64
}

const arcSecond = math.Pi / 180 / 3600

var shifts = [...]shift{
	// EPSG:8842, Fatu Iva 72 to WGS 84 (2).
	{tx: 347.175, ty: 1077.618, tz: 2623.677, rx: 33.9058 * arcSecond, ry: -70.6776 * arcSecond, rz: 9.4013 * arcSecond, scale: 186.0647e-6},
	// EPSG:8438, Macao 1920 to WGS 84 (1), its rotations turned to position
	// vectors.
	{tx: -202.865, ty: -303.99, tz: -155.873, rx: 34.079 * arcSecond, ry: -76.126 * arcSecond, rz: -32.66 * arcSecond, scale: 6.096e-6,
		px: -2361757.652, py: 5417232.187, pz: 2391453.053},
	// EPSG:1957, Helle 1954 to WGS 84 (1).
	{tx: 982.6087, ty: 552.753, tz: -540.873, rx: 32.39344e-6, ry: -153.25684e-6, rz: -96.2266e-6, scale: 16.805e-6},
	// EPSG:15810, Kusaie 1951 to WGS 84 (1).
	{tx: 647, ty: 1777, tz: -1124},
}

// The ellipsoids: International 1924, on which all of these stand, and WGS 84.
const (
	intA, intF = 6378388.0, 1 / 297.0
	wgsA, wgsF = 6378137.0, 1 / 298.257223563
)

// at returns the distance in metres, on a sphere of WGS 84's equator, between
// a latitude and longitude in radians and what they are in WGS 84.
func (s *shift) at(lat, lon float64) float64 {
	e2 := intF * (2 - intF)
	sin, cos := math.Sincos(lat)
	n := intA / math.Sqrt(1-e2*sin*sin)
	x, y, z := n*cos*math.Cos(lon)-s.px, n*cos*math.Sin(lon)-s.py, n*(1-e2)*sin-s.pz
	m := 1 + s.scale
	x, y, z = s.tx+s.px+m*(x-s.rz*y+s.ry*z), s.ty+s.py+m*(s.rz*x+y-s.rx*z), s.tz+s.pz+m*(-s.ry*x+s.rx*y+z)

	e2 = wgsF * (2 - wgsF)
	p := math.Hypot(x, y)
	lat2 := math.Atan2(z, p*(1-e2))
	for range 6 {
		sin := math.Sin(lat2)
		lat2 = math.Atan2(z+e2*sin*wgsA/math.Sqrt(1-e2*sin*sin), p)
	}
	lon2 := math.Atan2(y, x)
	a, b := math.Sin((lat2-lat)/2), math.Sin((lon2-lon)/2)
	return 2 * wgsA * math.Asin(math.Min(1, math.Sqrt(a*a+cos*math.Cos(lat2)*b*b)))
}
