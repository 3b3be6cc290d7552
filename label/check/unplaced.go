package check

import "regexp"

// unplaced are the ways in which people write that a place has no coordinates or no
// height, as they write s.n. and s.l.: s/ coord., sin coordenadas, s/ alt., ohne
// Koordinaten, k. A. Common practice, no source.
var unplaced = regexp.MustCompile(`(?i)^[\[(]?(?:(?:s ?[/.]|sem|sin|sans|senza|sense|ohne|bez|zonder|utan|uten|uden|f(?:ă|a)r(?:ă|a)) ?(?:coord|koord|souř|współrz|gps|georr?ef|alt|elev|lat|long?|cota|quota|h(?:ö|oe)he|hoogte|inform|dad|dat)\pL*\.?|s ?[/.] ?c\.?|k\. ?a\.)[\])]?$`)

// placed are the columns where they do.
var placed = map[string]bool{
	"decimalLatitude": true, "decimalLongitude": true, "verbatimLatitude": true, "verbatimLongitude": true, "verbatimCoordinates": true,
	"gridSquare": true, "easting": true, "northing": true, "minimumElevationInMeters": true, "maximumElevationInMeters": true, "verbatimElevation": true,
}

// isUnplaced reports whether a cell says that the place has no coordinates or no height:
// that is said, so that nobody need clear it, and no label prints it.
func isUnplaced(term, text string) bool {
	return len(text) <= 24 && placed[term] && unplaced.MatchString(text)
}
