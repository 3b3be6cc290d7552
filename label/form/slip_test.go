package form

import (
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/date"
	"cornerslip/label/lang"
)

// Slips as herbaria have them (Florida Museum, determination and type slips;
// the number of the sheet on the slip: Cornell Plant Pathology Herbarium).
func TestSlip(t *testing.T) {
	r := record(t, "scientificName", "Festuca henriquesii Hack.", "identificationQualifier", "cf. henriquesii", "identifiedBy", "M. Quental",
		"dateIdentified", "2026-11-03", "identificationRemarks", "Panicle immature", "catalogNumber", "VDOURA-0004210", "recordedBy", "I. Almeida", "recordNumber", "208",
		"locality", "Torre")
	o := house()
	for _, c := range []struct {
		kind SlipKind
		part string
		det  string
	}{
		{Determination, "Determination", "Det. M. Quental, 3 November 2026"},
		{Confirmation, "Confirmation", "Conf. M. Quental, 3 November 2026"},
		{Revision, "Revision", "Rev. M. Quental, 3 November 2026"},
		{Comment, "Comment", "M. Quental, 3 November 2026"},
	} {
		l := Slip(c.kind, r, o)
		want := "Festuca cf. henriquesii Hack.\nPanicle immature\n" + c.det + "\tValdoura Field Station Herbarium\nSheet no. VDOURA-0004210, I. Almeida 208"
		if got := lines(l); got != want || l.Part != c.part || l.Kind != label.Slip {
			t.Errorf("%s: %s\n got %q\nwant %q", c.part, l.Part, got, want)
		}
		for _, f := range faults(l) {
			t.Errorf("%s: %s", c.part, f)
		}
	}

	r = record(t, "scientificName", "Plantago almogravensis Franco", "typeStatus", "Holotype", "typifiedName", "Plantago almogravensis Franco",
		"namePublishedIn", "Bol. Valdoura 3: 41. 1951", "identifiedBy", "M. Quental", "dateIdentified", "2026", "duplicatesTo", "PINHEL | ALTAVX | SOUTELO",
		"catalogNumber", "VDOURA-0004230", "recordedBy", "I. Almeida", "recordNumber", "9", "locality", "Almograve")
	want := "Holotype\nPlantago almogravensis Franco\nBol. Valdoura 3: 41. 1951\nIsotypes at PINHEL, ALTAVX and SOUTELO\n" +
		"Det. M. Quental, 2026\tVDOURA\nSheet no. VDOURA-0004230, I. Almeida 9"
	if got := lines(Slip(TypeSlip, r, Options{Code: "VDOURA"})); got != want {
		t.Errorf("type slip\n got %q\nwant %q", got, want)
	}
}

// In no language has a slip or a tag a loose end.
func TestSlipsAndTagsInAllLanguages(t *testing.T) {
	all := trip(t)
	for style, o := range styles() {
		for _, r := range all {
			for kind := Determination; kind <= TypeSlip; kind++ {
				for _, f := range faults(Slip(kind, r, o)) {
					t.Errorf("%s: row %d, slip %d: %s", style, r.Row, kind, f)
				}
			}
			for _, f := range faults(Tag(r, o)) {
				t.Errorf("%s: row %d, tag: %s", style, r.Row, f)
			}
		}
		for _, p := range []Press{{}, {Pressed: date.Day{Year: 2026, Month: 6, Day: 14}, DryerDays: 3, DryerCelsius: 40, FreezerDays: 7, FreezerCelsius: -30, Rule: "Ask first."}} {
			for _, f := range faults(Bundle(all[0], all[len(all)-1], len(all), p, o)) {
				t.Errorf("%s: bundle tag: %s", style, f)
			}
		}
	}
}

func TestTags(t *testing.T) {
	a, b := record(t, base("recordNumber", "187")...), record(t, base("recordNumber", "214b")...)
	if got := lines(Tag(a, house())); got != "I. Almeida 187" {
		t.Errorf("tag: %q", got)
	}
	p := Press{Pressed: date.Day{Year: 2026, Month: 6, Day: 28}, DryerDays: 4, DryerCelsius: 40, FreezerDays: 7, FreezerCelsius: -30, Rule: "Ask the technician."}
	want := []string{
		"I. Almeida 187 – 214b\tPlants: 30",
		"Dryer 40 °C, 4 days", "In: 28 June 2026", "Out: 2 July 2026",
		"Freezer −30 °C, 7 days", "In: 2 July 2026", "Out: 9 July 2026",
		"Ask the technician.",
	}
	got := strings.Split(strings.ReplaceAll(lines(Bundle(a, b, 30, p, Options{})), thin, " "), "\n")
	for i, w := range want {
		if i >= len(got) || got[i] != w {
			t.Errorf("line %d of the bundle tag: %q, want %q", i, got[min(i, len(got)-1)], w)
		}
	}
	if len(got) != len(want)+2 || !strings.HasPrefix(got[len(want)], "Fire risk") {
		t.Errorf("cautions: %q", got)
	}
	// Without the house's times the dates are left to be written in.
	got = strings.Split(lines(Bundle(a, a, 1, Press{Pressed: p.Pressed}, Options{Lang: lang.German})), "\n")
	if got[0] != "I. Almeida 187\tPflanzen: 1" || got[1] != "Trockner" || got[2] != "Hinein: 28. Juni 2026" || got[3] != "Heraus" || got[5] != "Hinein" {
		t.Errorf("bundle tag: %q", got)
	}
}
