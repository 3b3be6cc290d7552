package coord

import "math"

// A transverse holds the constants of a transverse Mercator projection.
type transverse struct {
	radius      float64    // of the rectifying sphere, times the scale
	alpha, beta [6]float64 // Krüger's coefficients, forward and back
}

// krueger is UTM's projection: Krüger's series to the sixth order in the
// third flattening, good to a few nanometres within 3,000 km of the central
// meridian.
//
// Source: C. F. F. Karney, Transverse Mercator with an accuracy of a few
// nanometers, J. Geodesy 85 (2011), equations 7 to 27, 35 and 36.
var krueger = newTransverse()

func newTransverse() transverse {
	const (
		n  = flattening / (2 - flattening)
		n2 = n * n
		n3 = n2 * n
		n4 = n3 * n
		n5 = n4 * n
		n6 = n5 * n
	)
	// Constant expressions: exact, and rounded once.
	return transverse{
		radius: scale * semiMajor / (1 + n) * (1 + n2/4 + n4/64 + n6/256),
		alpha: [6]float64{
			n/2 - 2*n2/3 + 5*n3/16 + 41*n4/180 - 127*n5/288 + 7891*n6/37800,
			13*n2/48 - 3*n3/5 + 557*n4/1440 + 281*n5/630 - 1983433*n6/1935360,
			61*n3/240 - 103*n4/140 + 15061*n5/26880 + 167603*n6/181440,
			49561*n4/161280 - 179*n5/168 + 6601661*n6/7257600,
			34729*n5/80640 - 3418889*n6/1995840,
			212378941 * n6 / 319334400,
		},
		beta: [6]float64{
			n/2 - 2*n2/3 + 37*n3/96 - n4/360 - 81*n5/512 + 96199*n6/604800,
			n2/48 + n3/15 - 437*n4/1440 + 46*n5/105 - 1118711*n6/3870720,
			17*n3/480 - 37*n4/840 - 209*n5/4480 + 5569*n6/90720,
			4397*n4/161280 - 11*n5/504 - 830251*n6/7257600,
			4583*n5/161280 - 108847*n6/3991680,
			20648693 * n6 / 638668800,
		},
	}
}

// The explicit float64 conversions below forbid fused multiply-add, so that
// every machine prints the same figures.

// forward returns metres east and north of the central meridian and the
// equator for a latitude and a longitude from that meridian in radians.
func (t *transverse) forward(lat, lon float64) (x, y float64) {
	sinLat, cosLat := math.Sincos(lat)
	sinLon, cosLon := math.Sincos(lon)
	e := math.Sqrt(e2)
	tau := sinLat / cosLat
	tauP := conformal(tau, e)
	xi := math.Atan2(tauP, cosLon)
	eta := math.Asinh(sinLon / math.Hypot(tauP, cosLon))
	dxi, deta := series(&t.alpha, xi, eta)
	return float64(t.radius * (eta + deta)), float64(t.radius * (xi + dxi))
}

// inverse undoes forward.
func (t *transverse) inverse(x, y float64) (lat, lon float64) {
	xi, eta := y/t.radius, x/t.radius
	dxi, deta := series(&t.beta, xi, eta)
	xi -= dxi
	eta -= deta
	sinh := math.Sinh(eta)
	sinXi, cosXi := math.Sincos(xi)
	tauP := sinXi / math.Hypot(sinh, cosXi)
	lon = math.Atan2(sinh, cosXi)
	// Newton's method for the tangent of the latitude; three steps reach the
	// last bit, five are a margin.
	e := math.Sqrt(e2)
	tau := tauP / (1 - e2)
	for range 5 {
		ti := conformal(tau, e)
		d := (tauP - ti) / math.Hypot(1, ti) * (1 + float64(float64((1-e2)*tau)*tau)) / (float64((1 - e2) * math.Hypot(1, tau)))
		tau += d
		if math.Abs(d) < 1e-16*(1+math.Abs(tau)) {
			break
		}
	}
	return math.Atan(tau), lon
}

// conformal returns the tangent of the conformal latitude from that of the
// geographic latitude.
func conformal(tau, e float64) float64 {
	h := math.Hypot(1, tau)
	sigma := math.Sinh(float64(e * math.Atanh(float64(e*tau)/h)))
	return float64(tau*math.Hypot(1, sigma)) - float64(sigma*h)
}

// series sums Krüger's terms.
func series(c *[6]float64, xi, eta float64) (dxi, deta float64) {
	for j := 5; j >= 0; j-- { // small terms first
		k := 2 * float64(j+1)
		sin, cos := math.Sincos(k * xi)
		dxi += float64(float64(c[j]*sin) * math.Cosh(k*eta))
		deta += float64(float64(c[j]*cos) * math.Sinh(k*eta))
	}
	return dxi, deta
}
