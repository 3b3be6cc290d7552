package table

import (
	"regexp"
	"slices"
	"strings"
)

// ofGrid are the names of grids that headings have before their X and Y or
// behind them. What each means is label/coord's to say.
var ofGrid = regexp.MustCompile(`(?i)(?:belg\w* )?lambert[ -]?(?:2008|(?:19)?72|(?:19)?93|(?:ii|2)[ -]?[eé]t\w*)?|gau(?:ss|ß)[ -]?(?:boaga|kr(?:ü|ue|u)ger)|sweref(?:[ -]?99)?(?:[ -]?TM)?|rijksdriehoek\w*|krovak|` +
	`\b(?:L[ -]?93|LB?72|LV[ -]?(?:95|03)|CH[ -]?1903|OSGB(?:[ -]?(?:19)?36)?|BNG|OSGR|irish grid|ITM|RD(?:[ -]?new)?|RT[ -]?90|GK|TM35FIN|KKJ|YKJ|PUWG(?:[ -]?(?:19)?92)?|S[ -]?JTSK|EOV|PT[ -]?TM06|NZTM(?:[ -]?2000)?|NZMG)\b`)

// aboutGrid is what headings of eastings and northings say beside their letter.
type aboutGrid struct {
	grid  bool   // they name a grid other than UTM
	datum string // that they name
}

var (
	utmWord = regexp.MustCompile(`(?i)\bUTM\b`)
	// datumWithin names a datum among other words.
	datumWithin = regexp.MustCompile(`(?i)\b(?:datum:? ?)?(WGS[ -]?84|ED[ -]?50|ETRS[ -]?89|NAD[ -]?(?:27|83)|SAD[ -]?69|SIRGAS[ -]?2000|PSAD[ -]?56)\b`)
)

// boxed reports whether columns of the north and the south stand beside those of the
// east and the west: they are the sides of a box that a place lies in, as gazetteers
// give it, and no place.
func (r *resolver) boxed() bool {
	has := map[string]bool{}
	for i := range r.columns {
		if side, ok := sideWords[strings.ToLower(strings.TrimSpace(r.columns[i].Heading))]; ok {
			has[side] = true
		}
	}
	return len(has) == 4
}

// named finds the column of eastings or northings whose heading names a grid, or
// the datum of UTM.
func (r *resolver) named(part, bare string) (column int, about aboutGrid) {
	for i := range r.columns {
		h := strings.ReplaceAll(strings.TrimSpace(r.columns[i].Heading), "_", " ")
		if r.read[i].meaning != nil || len(h) > longHeading {
			continue
		}
		var about aboutGrid
		rest := h
		if at := ofGrid.FindStringIndex(h); at != nil {
			about.grid, rest = true, h[:at[0]]+" "+h[at[1]:]
		} else if m := datumWithin.FindStringSubmatchIndex(h); m != nil {
			about.datum, rest = h[m[2]:m[3]], utmWord.ReplaceAllString(h[:m[0]]+" "+h[m[1]:], " ")
		} else {
			continue
		}
		if words := partWords()[headingKey(rest)]; slices.Contains(words, part) || slices.Contains(words, bare) {
			return i, about
		}
	}
	return -1, aboutGrid{}
}
