package layout

import (
	"strconv"
	"strings"
)

// String names the label as messages do: where its record stands, then how
// people call it: "trip.csv:14: row 13, I. Almeida 214, sheet label 1 of 2".
func (r Ref) String() string {
	var parts []string
	if r.Row > 0 {
		parts = append(parts, "row "+strconv.Itoa(r.Row))
	}
	if r.Key != "" {
		parts = append(parts, r.Key)
	}
	if r.Kind != "" {
		kind := r.Kind + " label"
		if r.Of > 1 {
			kind += " " + strconv.Itoa(r.Label) + " of " + strconv.Itoa(r.Of)
		}
		parts = append(parts, kind)
	}
	if r.Part != "" {
		parts = append(parts, r.Part)
	}
	if r.For != "" && r.For != r.Part {
		parts = append(parts, "for "+r.For)
	}
	if len(parts) == 0 {
		parts = append(parts, "a label without a record")
	}
	s := strings.Join(parts, ", ")
	if r.File == "" {
		return s
	}
	if r.Line > 0 {
		return r.File + ":" + strconv.Itoa(r.Line) + ": " + s
	}
	return r.File + ": " + s
}
