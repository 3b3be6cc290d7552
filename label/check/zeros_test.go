package check

import (
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/coord"
)

// Heights and depths that a data base filled with 0 are neither printed nor spoken
// of in any record; common practice, no source.
func TestZeroFilledHeights(t *testing.T) {
	row := func(low, high, shallow, deep string) map[string]string {
		return With("minimumElevationInMeters", low, "maximumElevationInMeters", high, "minimumDepthInMeters", shallow, "maximumDepthInMeters", deep)
	}
	zeros := row("0.0", "0.0", "0.0", "0.0")
	tab := open(t, zeros, row("1300.0", "0.0", "0.0", "0.0"), zeros, row("0", "30", "", ""), zeros, row("1250", "1300", "0", "0"), zeros)
	records, findings := run(t, New(options(t)), tab)
	for _, f := range findings {
		if f.Severity > label.Note {
			t.Errorf("%s %s: %s", f.Rule, f.Term, f.Message)
		}
	}
	for i, want := range []string{"", "1300 m", "", "0–30 m", "", "1250–1300 m", ""} {
		r := records[i]
		got := ""
		if r.HasElevation {
			got = strings.ReplaceAll(r.Elevation.Format(coord.ElevationStyle{}, "en"), "\u00a0", " ")
		}
		if got != want || r.Text("minimumDepthInMeters") != "" {
			t.Errorf("row %d: %q, depth %q", i+1, got, r.Text("minimumDepthInMeters"))
		}
	}
	// A few rows are no habit: 0 is a height.
	records, _ = run(t, New(options(t)), open(t, zeros))
	if !records[0].HasElevation || records[0].Text("minimumDepthInMeters") != "0.0" {
		t.Error("one row's zeros are not kept")
	}
}

// A height beside the range that it lies in is printed with it, as written.
func TestHeightBesideRange(t *testing.T) {
	r, findings := run(t, New(options(t)), open(t, With("minimumElevationInMeters", "", "verbatimElevation", "1000-2000ft, 450m")))
	if r[0].ElevationText != "1000-2000ft, 450m" || r[0].HasElevation {
		t.Errorf("printed %q", r[0].ElevationText)
	}
	for _, f := range findings {
		t.Errorf("%s: %s", f.Rule, f.Message)
	}
}

func TestNinesForCoordinates(t *testing.T) {
	for text, want := range map[string]bool{
		"99 99 99 N": true, "99 99 99 N ; 99 99 99 N": true, "999 99 99 W": true, "99°99'99\" N, 999°99'99\" W": true, "99°99'": true,
		"99.9999": false, "99 59 59 W": false, "9 9 9 N": false, "99": false, "99°": false, "99 99 99 N, 8 12 W": false, "99 99 Almeida": false,
	} {
		if got := isPlaceholder("verbatimCoordinates", text); got != want {
			t.Errorf("%q: %t", text, got)
		}
	}
	if isPlaceholder("recordNumber", "99 99") {
		t.Error("a collector's number is taken for no coordinates")
	}
}

// An answer to "Type?" is no kind of type.
func TestNoType(t *testing.T) {
	for text, want := range map[string]bool{"N": true, "No": true, "não": true, "FALSE": true, "not a type": true, "No type status": true, "Y": false, "Holotype": false, "neotype": false, "nomen": false} {
		if got := isPlaceholder("typeStatus", text); got != want {
			t.Errorf("%q: %t", text, got)
		}
	}
	if isPlaceholder("locality", "No") {
		t.Error("a place is taken for an answer")
	}
}
