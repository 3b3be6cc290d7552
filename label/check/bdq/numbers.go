package bdq

import (
	"math"

	"cornerslip/label/check"
)

// The bounds are the standard's default parameters: metres above the sea of
// the lowest shore and the highest peak, half the circumference of the earth,
// and metres of the deepest sea.
const (
	lowestGround   = -430
	highestGround  = 8850
	maxUncertainty = 20037509
	deepestSea     = 11000
)

// numberTests hold numbers against what is possible.
func numberTests() []Test {
	return []Test{
		inRange("VALIDATION_DECIMALLATITUDE_INRANGE", "b6ecda2a-ce36-437a-b515-3ae94948fe83", "decimalLatitude", -90, 90, "a latitude lies between -90 and 90", "95.2", "38.4712", "coordinates-range"),
		inRange("VALIDATION_DECIMALLONGITUDE_INRANGE", "0949110d-c06b-450e-9649-7c1374d940d1", "decimalLongitude", -180, 180, "a longitude lies between -180 and 180", "181.0554", "-8.8035", "coordinates-range"),
		{
			Label: "VALIDATION_COORDINATES_NOTZERO", GUID: "1bf0e210-6792-4128-b8cc-ab6828aa4871", Kind: KindValidation,
			Doc: "latitude and longitude are not both 0", Acts: []string{"decimalLatitude", "decimalLongitude"},
			Answer: func(c *Cells) Response {
				lat, ok1 := c.number("decimalLatitude")
				lon, ok2 := c.number("decimalLongitude")
				if !ok1 || !ok2 {
					return internalNotMet
				}
				return complies(lat != 0 || lon != 0)
			},
			rule: speech{
				message: "0 and 0 stand for coordinates that are not known: leave both empty",
				example: check.With("decimalLatitude", "0", "decimalLongitude", "0.0"), counterexample: check.With("decimalLatitude", "0"),
			},
		},
		{
			Label: "VALIDATION_COORDINATEUNCERTAINTY_INRANGE", GUID: "c6adf2ea-3051-4498-97f4-4b2f8a105f57", Kind: KindValidation,
			Doc: "coordinateUncertaintyInMeters is a number from 1 to 20,037,509", Acts: []string{"coordinateUncertaintyInMeters"},
			Answer: func(c *Cells) Response {
				if c.Empty("coordinateUncertaintyInMeters") {
					return internalNotMet
				}
				n, ok := c.number("coordinateUncertaintyInMeters")
				return complies(ok && n >= 1 && n <= maxUncertainty)
			},
			rule: speech{
				message: "not a number of metres from 1 to 20037509",
				example: check.With("coordinateUncertaintyInMeters", "0.5"), counterexample: check.With("coordinateUncertaintyInMeters", "30"),
			},
		},
		inRange("VALIDATION_MINELEVATION_INRANGE", "0bb8297d-8f8a-42d2-80c1-558f29efe798", "minimumElevationInMeters", lowestGround, highestGround, "no ground lies there", "9000", "15", "elevation-range"),
		inRange("VALIDATION_MAXELEVATION_INRANGE", "c971fe3f-84c1-4636-9f44-b1ec31fd63c7", "maximumElevationInMeters", lowestGround, highestGround, "no ground lies there", "9000", "15", "elevation-range"),
		inOrder("VALIDATION_MINELEVATION_LESSTHAN_MAXELEVATION", "d708526b-6561-438e-aa1a-82cd80b06396", "minimumElevationInMeters", "maximumElevationInMeters", math.Inf(-1), "elevation-order"),
	}
}

func optionalDepths() []Test {
	return []Test{
		depth(inRange("VALIDATION_MINDEPTH_INRANGE", "04b2c8f3-c71b-4e95-8e43-f70374c5fb92", "minimumDepthInMeters", 0, deepestSea, "no sea is so deep", "12000", "3", "")),
		depth(inRange("VALIDATION_MAXDEPTH_INRANGE", "3f1db29a-bfa5-40db-9fd1-fde020d81939", "maximumDepthInMeters", 0, deepestSea, "no sea is so deep", "99999", "3", "")),
		inOrder("VALIDATION_MINDEPTH_LESSTHAN_MAXDEPTH", "8f1e6e58-544b-4365-a569-fb781341644e", "minimumDepthInMeters", "maximumDepthInMeters", 0, ""),
		fromVerbatim("AMENDMENT_MINDEPTHMAXDEPTH_FROM_VERBATIM", "c5658b83-4471-4f57-9d94-bf7d0a96900c", "minimumDepthInMeters", "maximumDepthInMeters", "verbatimDepth", true),
		eventDuration(),
	}
}

// depth does not take a negative number for one that could be a depth.
func depth(t Test) Test {
	term, answer := t.Acts[0], t.Answer
	t.Answer = func(c *Cells) Response {
		if n, ok := c.number(term); ok && n < 0 {
			return internalNotMet
		}
		return answer(c)
	}
	return t
}

func inRange(name, guid, term string, low, high float64, why, wrong, right, twin string) Test {
	return Test{
		Label: name, GUID: guid, Kind: KindValidation, Doc: "a number in " + term + " is one that can be: " + why, Acts: []string{term},
		Answer: func(c *Cells) Response {
			n, ok := c.number(term)
			if !ok {
				return internalNotMet
			}
			return complies(n >= low && n <= high)
		},
		rule: speech{twin: twin, message: why + ": correct it", example: check.With(term, wrong), counterexample: check.With(term, right)},
	}
}

// inOrder asks whether the lower of two numbers is the lower; both must be at
// least least.
func inOrder(name, guid, low, high string, least float64, twin string) Test {
	return Test{
		Label: name, GUID: guid, Kind: KindValidation, Doc: low + " is not above " + high, Acts: []string{low, high},
		Answer: func(c *Cells) Response {
			a, ok1 := c.number(low)
			b, ok2 := c.number(high)
			if !ok1 || !ok2 || a < least || b < least {
				return internalNotMet
			}
			return complies(a <= b)
		},
		rule: speech{
			twin: twin, message: "above " + high + ": swap the two or correct one",
			example: check.With(low, "200", high, "100"), counterexample: check.With(low, "100", high, "200"),
		},
	}
}
