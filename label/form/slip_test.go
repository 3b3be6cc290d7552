package form

import (
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
	"cornerslip/label/lang"
	"cornerslip/label/table"
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
		all := Slips(c.kind, r, nil, o)
		l := all[0]
		want := "Festuca cf. henriquesii Hack.\nPanicle immature\n" + c.det + "\tValdoura Field Station Herbarium\nSheet no. VDOURA-0004210, I. Almeida 208"
		if got := lines(l); got != want || l.Part != c.part || l.Kind != label.Slip || len(all) != 1 {
			t.Errorf("%s: %d of %s\n got %q\nwant %q", c.part, len(all), l.Part, got, want)
		}
		for _, f := range faults(l) {
			t.Errorf("%s: %s", c.part, f)
		}
	}
}

// A type slip names the kind of type, the name typified with its citation, and
// the isotypes; the accepted name has a slip of its own (Florida Museum,
// type annotation). Only duplicates of a holotype are isotypes.
func TestTypeSlip(t *testing.T) {
	row := func(more ...string) *check.Record {
		return record(t, append([]string{"scientificName", "Plantago almogravensis Franco", "typeStatus", "Holotype", "typifiedName", "Plantago almogravensis Franco",
			"namePublishedIn", "Bol. Valdoura 3: 41. 1951", "identifiedBy", "M. Quental", "dateIdentified", "2026", "duplicatesTo", "PINHEL | ALTAVX | SOUTELO",
			"catalogNumber", "VDOURA-0004230", "recordedBy", "I. Almeida", "recordNumber", "9", "locality", "Almograve"}, more...)...)
	}
	for _, c := range []struct {
		name string
		id   *check.Record
		want []string
	}{
		{"holotype", row(), []string{"Holotype\nPlantago almogravensis Franco\nBol. Valdoura 3: 41. 1951\nIsotypes at PINHEL, ALTAVX and SOUTELO\n" +
			"Det. M. Quental, 2026\tVDOURA\nSheet no. VDOURA-0004230, I. Almeida 9"}},
		{"isotype", record(t, "typeStatus", "isotype", "scientificName", "Plantago almogravensis Franco", "duplicatesTo", "PINHEL | ALTAVX", "determinerInstitution", "SOUTELO",
			"identifiedBy", "M. Quental"), []string{"isotype\nPlantago almogravensis Franco\nDupl.: PINHEL, ALTAVX\nDet. M. Quental\tSOUTELO"}},
		{"another name now", record(t, "typeStatus", "Lectotype", "typifiedName", "Plantago algarbiensis Samp. var. almogravensis", "scientificName", "Plantago almogravensis Franco",
			"identifiedBy", "M. Quental", "dateIdentified", "2026", "recordedBy", "I. Almeida", "recordNumber", "9"),
			[]string{"Lectotype\nPlantago algarbiensis Samp. var. almogravensis\nDet. M. Quental, 2026\tVDOURA\nI. Almeida 9",
				"Plantago almogravensis Franco\nDet. M. Quental, 2026\tVDOURA\nI. Almeida 9"}},
		{"the same name written otherwise", record(t, "typeStatus", "Isotype", "typifiedName", "Euphorbia stygiana subsp. santamariae H.Schaef.",
			"scientificName", "Euphorbia stygiana H.C.Watson subsp. santamariae H.Schaef.", "identifiedBy", "C. Nóvoa"),
			[]string{"Isotype\nEuphorbia stygiana subsp. santamariae H.Schaef.\nDet. C. Nóvoa\tVDOURA"}},
	} {
		all := Slips(TypeSlip, c.id, nil, Options{Code: "VDOURA"})
		var got []string
		for _, l := range all {
			got = append(got, lines(l))
			for _, f := range faults(l) {
				t.Errorf("%s: %s", c.name, f)
			}
		}
		if strings.Join(got, "\n\n") != strings.Join(c.want, "\n\n") {
			t.Errorf("%s\n got %q\nwant %q", c.name, got, c.want)
		}
	}
}

// A slip of a table of identifications says of the sheet what the sheet's
// record says, and there is one for each sheet, box and jar.
func TestSlipsOfSheets(t *testing.T) {
	id := record(t, "scientificName", "Cytisus grandiflorus (Brot.) DC.", "identifiedBy", "R. Falcato", "dateIdentified", "2027", "catalogNumber", "4217",
		"occurrenceRemarks", "Legumes woolly")
	for _, c := range []struct {
		preparations string
		ends         []string
	}{
		{"", []string{""}},
		{"sheet | sheet | packet: legumes | box: wood", []string{", sheet 1 of 2", ", sheet 2 of 2", ", box"}},
		{"packet | packet", []string{""}},
		{"jar | jar", []string{", jar 1 of 2", ", jar 2 of 2"}},
	} {
		sheet := record(t, base("preparations", c.preparations, "occurrenceRemarks", "Frequent")...)
		all := Slips(Determination, id, sheet, house())
		if len(all) != len(c.ends) {
			t.Errorf("%q: %d slips", c.preparations, len(all))
			continue
		}
		for i, l := range all {
			want := "Cytisus grandiflorus (Brot.) DC.\nLegumes woolly\nDet. R. Falcato, 2027\tValdoura Field Station Herbarium\n" +
				"Sheet no. VDOURA-0004217, I. Almeida 214" + c.ends[i]
			if got := lines(l); got != want {
				t.Errorf("%q\n got %q\nwant %q", c.preparations, got, want)
			}
			if got := label.String(l.Key); got != "I. Almeida 214" || l.Origin.Row != id.Row {
				t.Errorf("%q is of %q, row %d", c.preparations, got, l.Origin.Row)
			}
		}
	}
}

func TestParseSlipKind(t *testing.T) {
	for text, want := range map[string]SlipKind{"determination": Determination, "Det.": Determination, "conf.": Confirmation, "Confirmavit": Confirmation,
		"rev": Revision, "Révision": Revision, " Bemerkung ": Comment, "Typus": TypeSlip, "type": TypeSlip, "Determinação": Determination} {
		if got, ok := ParseSlipKind(text); !ok || got != want {
			t.Errorf("%q is read as %v, %v", text, got, ok)
		}
	}
	for _, text := range []string{"", "holotype", "x", "det conf"} {
		if got, ok := ParseSlipKind(text); ok {
			t.Errorf("%q is read as %v", text, got)
		}
	}
	for k := Determination; k <= TypeSlip; k++ {
		if got, ok := ParseSlipKind(k.String()); !ok || got != k {
			t.Errorf("%v does not read itself", k)
		}
	}
}

// In no language has a slip or a tag a loose end, on the example trip and on
// 1,534 real records.
func TestSlipsAndTagsInAllLanguages(t *testing.T) {
	all := trip(t)
	all = append(all, recordsOf(t, table.File(outside.Shared(t, "real/taurus-plants.csv")))...)
	for style, o := range styles() {
		n := 0
		see := func(what string, row int, c label.Content) {
			for _, f := range faults(c) {
				if n++; n < 10 {
					t.Errorf("%s: row %d, %s: %s", style, row, what, f)
				}
			}
		}
		for i, r := range all {
			for kind := Determination; kind <= TypeSlip; kind++ {
				sheet := all[(i+7)%len(all)] // any other record's
				if i%2 == 0 {
					sheet = nil
				}
				for _, c := range Slips(kind, r, sheet, o) {
					see(kind.String()+" slip", r.Row, c)
				}
			}
			see("tag", r.Row, Tag(r, o))
		}
		load := &Load{}
		for _, r := range all {
			load.Add(r)
		}
		for _, p := range presses {
			see("bundle tag", 0, Bundle(load, p, o))
		}
	}
}

var presses = []Press{
	{},
	{Stays: []Stay{{Stage: InPress}, {Stage: InDryer}, {Stage: InFreezer}}},
	{Pressed: date.Day{Year: 2026, Month: 6, Day: 28}, Rule: "Ask the technician.",
		Stays: []Stay{{InPress, 1, 0}, {InDryer, 4, 40}, {InFreezer, 7, -30}}},
	{Pressed: date.Day{Year: 2026, Month: 12, Day: 31}, Stays: []Stay{{InFreezer, 3, -80}, {InPress, 0, 0}, {InDryer, 2, 37.5}}},
}

func TestTag(t *testing.T) {
	for _, c := range []struct{ who, number, want string }{
		{"I. Almeida", "187", "I. Almeida 187"}, {"I. Almeida | T. Brandão", "214b", "I. Almeida 214b"}, {"", "9", "s.coll. 9"}, {"I. Almeida", "", "I. Almeida s.n."},
	} {
		if got := lines(Tag(record(t, "recordedBy", c.who, "recordNumber", c.number, "scientificName", "Salix alba L."), house())); got != c.want {
			t.Errorf("tag: %q, want %q", got, c.want)
		}
	}
}

// From which to which number a bundle runs, whoever collected.
func TestLoad(t *testing.T) {
	for _, c := range []struct {
		plants []string // collector, number
		want   string
	}{
		{[]string{"I. Almeida", "187"}, "I. Almeida 187\tPlants: 1"},
		{[]string{"I. Almeida", "9", "I. Almeida", "187", "I. Almeida", "21"}, "I. Almeida 9–187\tPlants: 3"},
		{[]string{"I. Almeida", "214b", "I. Almeida", "214", "I. Almeida", "214a"}, "I. Almeida 214–214b\tPlants: 3"},
		{[]string{"I. Almeida", "0099", "I. Almeida", "100"}, "I. Almeida 0099–100\tPlants: 2"},
		{[]string{"C. Nóvoa", "97-114", "C. Nóvoa", "97-9", "C. Nóvoa", "98-2"}, "C. Nóvoa 97-9 – 98-2\tPlants: 3"},
		{[]string{"I. Almeida", "187", "I. Almeida", "", "I. Almeida", "188"}, "I. Almeida 187–188, s.n.\tPlants: 3"},
		{[]string{"I. Almeida", "", "I. Almeida", "188"}, "I. Almeida 188, s.n.\tPlants: 2"},
		{[]string{"I. Almeida", "", "I. Almeida", ""}, "I. Almeida s.n.\tPlants: 2"},
		{[]string{"I. Almeida", "187", "L. Sarmento", "3", "I. Almeida", "188", "", "4"}, "I. Almeida 187–188\tPlants: 4\nL. Sarmento 3\ns.coll. 4"},
	} {
		l := &Load{}
		for i := 0; i < len(c.plants); i += 2 {
			l.Add(record(t, "recordedBy", c.plants[i], "recordNumber", c.plants[i+1], "scientificName", "Salix alba L."))
		}
		content := Bundle(l, Press{}, Options{})
		if got := lines(content); got != c.want {
			t.Errorf("%q: %q, want %q", c.plants, got, c.want)
		}
		for _, f := range faults(content) {
			t.Errorf("%q: %s", c.plants, f)
		}
	}
}

func TestBundle(t *testing.T) {
	l := &Load{}
	l.Add(record(t, base("recordNumber", "187")...))
	l.Add(record(t, base("recordNumber", "214b")...))
	for _, c := range []struct {
		press Press
		o     Options
		want  []string
	}{
		{presses[2], Options{House: []string{"Valdoura Field Station Herbarium", "Gouveia"}}, []string{
			"Valdoura Field Station Herbarium", "I. Almeida 187–214b\tPlants: 2",
			"Press, 1 day", "□ in 28 June 2026\t□ out 29 June 2026",
			"Dryer 40 °C, 4 days", "□ in 29 June 2026\t□ out 3 July 2026",
			"Freezer −30 °C, 7 days", "□ in 3 July 2026\t□ out 10 July 2026",
			"Ask the technician.",
			"Fire risk: never leave a dryer unattended above flammable paper. Keep the room aired.",
			"Cold burns: wear insulated gloves. Keep the bag closed until it is at room temperature.",
			"Your house’s rules and local codes come before this."}},
		// Without the house's times the dates are left to be written in, and so
		// are all that follow a stay of unknown length.
		{presses[3], Options{Lang: lang.German}, []string{
			"I. Almeida 187–214b\tPflanzen: 2",
			"Gefrierschrank −80 °C, 3 Tage", "□ hinein 31. Dezember 2026\t□ heraus 3. Januar 2027",
			"Presse", "□ hinein 3. Januar 2027", "□ heraus",
			"Trockner 37,5 °C, 2 Tage", "□ hinein", "□ heraus",
			"Kälteverbrennungen: isolierende Handschuhe tragen. Den Beutel geschlossen lassen, bis er Zimmertemperatur hat.",
			"Bei dieser Kälte kann Klebstoff versagen: keine montierten Bögen hineingeben.",
			"Brandgefahr: den Trockner nie unbeaufsichtigt über brennbarem Papier laufen lassen. Den Raum lüften.",
			"Hausregeln und örtliche Vorschriften gehen vor."}},
		// A press alone needs no caution.
		{Press{Stays: []Stay{{Stage: InPress}}}, Options{}, []string{"I. Almeida 187–214b\tPlants: 2", "Press", "□ in", "□ out"}},
	} {
		content := Bundle(l, c.press, c.o)
		if got := strings.ReplaceAll(lines(content), thin, " "); got != strings.Join(c.want, "\n") {
			t.Errorf("got\n%s\nwant\n%s", got, strings.Join(c.want, "\n"))
		}
		for _, b := range content.Blocks {
			if blank := b.Role == label.Blank; blank != (strings.HasPrefix(label.String(b.Runs), tick) && len(b.Right) == 0 && len(b.Runs) == 2) {
				t.Errorf("%q is a %s", label.String(b.Runs), b.Role)
			}
		}
	}
}

func TestCompareNumbers(t *testing.T) {
	order := strings.Fields("1 2 9 10 10a 10b 11 0099 100 100-2 100-10 A1 A2 A10 B1")
	for i, a := range order {
		for j, b := range order {
			got := compareNumbers(a, b)
			if want := map[bool]int{true: -1, false: 1}[i < j]; i != j && got != want || i == j && got != 0 {
				t.Errorf("%s and %s compare as %d", a, b, got)
			}
		}
	}
}

// Any two numbers compare the same from both sides, and three do not go round.
func FuzzCompareNumbers(f *testing.F) {
	for _, s := range []string{"214", "214b", "0099", "97-114", "", "é9"} {
		f.Add(s, "214a", "10")
	}
	f.Fuzz(func(t *testing.T, a, b, c string) {
		if compareNumbers(a, b) != -compareNumbers(b, a) {
			t.Fatalf("%q and %q", a, b)
		}
		if compareNumbers(a, b) <= 0 && compareNumbers(b, c) <= 0 && compareNumbers(a, c) > 0 {
			t.Fatalf("%q, %q and %q go round", a, b, c)
		}
	})
}

// A slip has the letter of a gathering that shares its sheet, as the label of
// the sheet has it; the slip of a box has none, nor one whose row stands
// alone.
func TestLetterOnSlip(t *testing.T) {
	letter := func(*check.Record) string { return "B" }
	sheet := record(t, base("preparations", "sheet | box: cones", "mount", "7")...)
	id := record(t, "scientificName", "Erica arborea L.", "identifiedBy", "M. Quental", "recordedBy", "I. Almeida", "recordNumber", "9", "mount", "7")
	right := func(all []label.Content) (out []string) {
		for _, c := range all {
			last := c.Blocks[len(c.Blocks)-1]
			if last.Role != label.Number {
				t.Errorf("the last block is a %v", last.Role)
			}
			for _, r := range last.Right {
				if r.Style != label.Bold || r.Origin.Term != "mount" {
					t.Errorf("%+v", r)
				}
			}
			out = append(out, label.String(last.Right))
		}
		return out
	}
	if got := right(Slips(Determination, id, sheet, Options{Letter: letter})); strings.Join(got, "|") != "B|" {
		t.Errorf("sheet and box: %q", got)
	}
	if got := right(Slips(Determination, id, nil, Options{Letter: letter})); strings.Join(got, "|") != "" {
		t.Errorf("alone: %q", got)
	}
	if got := right(Slips(Determination, id, sheet, Options{})); strings.Join(got, "|") != "|" {
		t.Errorf("without letters: %q", got)
	}
}
