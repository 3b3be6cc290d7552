package form

import (
	"fmt"
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/lang"
)

func base(more ...string) []string {
	row := []string{"recordedBy", "I. Almeida | T. Brandão", "recordNumber", "214", "eventDate", "2026-06-14", "country", "PORTUGAL", "stateProvince", "Guarda",
		"municipality", "Manteigas", "locality", "above Caldas", "decimalLatitude", "40.3722", "decimalLongitude", "-7.5625", "geodeticDatum", "WGS84",
		"scientificName", "Cytisus striatus (Hill) Rothm.", "family", "Fabaceae", "habitat", "Open scrub", "catalogNumber", "VDOURA-0004217"}
	for i := 0; i < len(more); i += 2 {
		found := false
		for j := 0; j < len(row); j += 2 {
			if row[j] == more[i] {
				row[j+1], found = more[i+1], true
			}
		}
		if !found {
			row = append(row, more[i], more[i+1])
		}
	}
	return row
}

// block returns the text of the first block of a role, its right end after a
// tab; "-" if there is none.
func block(c label.Content, role label.Role) string {
	for _, b := range c.Blocks {
		if b.Role == role {
			s := label.String(b.Runs)
			if b.Right != nil {
				s += "\t" + label.String(b.Right)
			}
			return strings.ReplaceAll(s, thin, " ")
		}
	}
	return "-"
}

func parts(list []label.Content) string {
	var all []string
	for _, c := range list {
		all = append(all, fmt.Sprintf("%s %s", c.Kind, c.Part))
	}
	return strings.Join(all, "; ")
}

// Which labels a record has: a label for each sheet, packet, box and jar, own
// labels by copies, one for each duplicate.
func TestWhichLabels(t *testing.T) {
	for _, c := range []struct {
		preparations, copies, duplicates string
		sheets, packets, boxes, bars     string
	}{
		{"", "", "", "sheet Sheet", "", "", "barcode Sheet"},
		{"sheet", "2", "PINHEL | ALTAVX", "sheet Sheet; sheet Sheet; sheet PINHEL; sheet ALTAVX", "", "", "barcode Sheet"},
		{"sheet | sheet | packet: capsules | box: cone", "", "PINHEL", "sheet Sheet 1 of 2; sheet Sheet 2 of 2; sheet PINHEL", "packet Packet",
			"container Box", "barcode Sheet 1 of 2; barcode Sheet 2 of 2; barcode Box"},
		{"sheet | 2 packets | jar: fruit | jar", "2", "", "sheet Sheet; sheet Sheet", "packet Packet 1 of 2; packet Packet 2 of 2",
			"container Jar 1 of 2; container Jar 2 of 2; container Jar 1 of 2; container Jar 2 of 2", "barcode Sheet; barcode Jar 1 of 2; barcode Jar 2 of 2"},
		{"packet: moss", "", "PINHEL", "", "packet Packet; packet PINHEL", "", "barcode Packet"},
		{"box: cone", "", "PINHEL", "", "", "container Box; container PINHEL", "barcode Box"},
		{"slide: pollen", "", "PINHEL", "sheet Sheet; sheet PINHEL", "", "", "barcode Sheet"},
	} {
		r := record(t, base("preparations", c.preparations, "copies", c.copies, "duplicatesTo", c.duplicates)...)
		for _, k := range []struct {
			name, want string
			got        []label.Content
		}{{"sheets", c.sheets, Sheet(r, Options{})}, {"packets", c.packets, Packets(r, Options{})},
			{"containers", c.boxes, Containers(r, Options{})}, {"barcodes", c.bars, Barcodes(r, Options{})}} {
			if got := parts(k.got); got != k.want {
				t.Errorf("%q ×%s to %q: %s\n got %s\nwant %s", c.preparations, c.copies, c.duplicates, k.name, got, k.want)
			}
		}
	}
}

// What a sheet says of itself, and to which sheet a packet belongs.
func TestParts(t *testing.T) {
	for _, c := range []struct {
		preparations string
		sheets       []string // the right of the number, of each sheet
		packets      []string // lines of each packet
	}{
		{"sheet", []string{""}, nil},
		{"sheet | packet", []string{"with packet"}, []string{"Packet"}},
		{"sheet | packet: capsules", []string{"capsules in packet"}, []string{"capsules"}},
		{"sheet | sheet | packet: capsules | box: cone", []string{"Sheet 1 of 2, capsules in packet, cone in box", "Sheet 2 of 2, cone in box"},
			[]string{"capsules/Part of sheet 1 of 2"}},
		{"sheet | sheet | packet", []string{"Sheet 1 of 2, with packet", "Sheet 2 of 2"}, []string{"Part of sheet 1 of 2"}},
		{"sheet | packet: a | sheet | packet: b", []string{"Sheet 1 of 2, a in packet", "Sheet 2 of 2, b in packet"},
			[]string{"a/Part of sheet 1 of 2; Packet 1 of 2", "b/Part of sheet 2 of 2; Packet 2 of 2"}},
		{"sheet | 3 packets | jar", []string{"with 3 packets, with jar"}, []string{"Packet 1 of 3", "Packet 2 of 3", "Packet 3 of 3"}},
		{"sheet 2 of 2 | packet: capsules", []string{"Sheet 2 of 2, capsules in packet"}, []string{"capsules/Part of sheet 2 of 2"}},
		{"sheet: flowering | slide: pollen", []string{"flowering, also slide: pollen"}, nil},
	} {
		r := record(t, base("preparations", c.preparations)...)
		var sheets, packets []string
		for _, l := range Sheet(r, Options{}) {
			_, right, _ := strings.Cut(block(l, label.Number), "\t")
			sheets = append(sheets, right)
		}
		for _, l := range Packets(r, Options{}) {
			var lines []string
			for _, b := range l.Blocks {
				if b.Role == label.Text {
					lines = append(lines, label.String(b.Runs))
				}
			}
			packets = append(packets, strings.Join(lines, "/"))
			if got := block(l, label.Key); got != "I. Almeida 214\tVDOURA-0004217" {
				t.Errorf("%s: packet is headed %q", c.preparations, got)
			}
		}
		if fmt.Sprint(sheets) != fmt.Sprint(c.sheets) {
			t.Errorf("%s: sheets say %q, want %q", c.preparations, sheets, c.sheets)
		}
		if fmt.Sprint(packets) != fmt.Sprint(c.packets) {
			t.Errorf("%s: packets say %q, want %q", c.preparations, packets, c.packets)
		}
	}
}

// A duplicate has the same words and never our number, bars or part.
func TestDuplicates(t *testing.T) {
	r := record(t, base("preparations", "sheet | packet: legumes", "duplicatesTo", "PINHEL | ALTAVX")...)
	for _, c := range []struct {
		list     bool
		own, one string
	}{{false, "Dupl.: PINHEL, ALTAVX", "Dupl.: PINHEL"}, {true, "Dupl.: PINHEL, ALTAVX", "Dupl.: PINHEL, ALTAVX"}} {
		o := house()
		o.ListDuplicates, o.BarsOnLabel = c.list, true
		all := Sheet(r, o)
		own, gift := all[0], all[1]
		if got := block(own, label.Team); got != "with T. Brandão\t"+c.own {
			t.Errorf("own label: %q", got)
		}
		if got := block(gift, label.Team); got != "with T. Brandão\t"+c.one {
			t.Errorf("gift: %q", got)
		}
		if gift.For != "PINHEL" || own.For != "" {
			t.Errorf("for %q and %q", gift.For, own.For)
		}
		if own.Blocks[len(own.Blocks)-1].Bars == nil {
			t.Error("no bars on our own label")
		}
		for _, b := range gift.Blocks {
			if text := label.String(b.Runs) + label.String(b.Right); b.Bars != nil || strings.Contains(text, "0004217") || strings.Contains(text, "packet") {
				t.Errorf("the gift bears %s %q", b.Role, text)
			}
		}
		for _, role := range []label.Role{label.Name, label.Place, label.Coords, label.Plant, label.Collector} {
			if block(own, role) != block(gift, role) {
				t.Errorf("%s differs: %q, %q", role, block(own, role), block(gift, role))
			}
		}
	}
}

// Which numbers are printed and which are barred.
func TestNumbers(t *testing.T) {
	for _, c := range []struct {
		number, code string
		figures      string
		barred       bool
	}{
		{"VDOURA-0004217", "", "VDOURA-0004217", true},
		{"VDOURA-0004217", "VDOURA", "VDOURA-0004217", true},
		{"ALTAVX 55871", "", "ALTAVX 55871", false},
		{"55871", "ALTAVX", "ALTAVX 55871", false},
		{"VDOURA–0004217", "", "VDOURA–0004217", false},
		{"", "VDOURA", "-", false},
	} {
		o := house()
		o.OwnNumber = func(n string) bool { return strings.HasPrefix(n, "VDOURA") }
		r := record(t, base("catalogNumber", c.number, "institutionCode", c.code)...)
		if got := block(Sheet(r, o)[0], label.Number); got != c.figures {
			t.Errorf("%q of %q prints %q, want %q", c.number, c.code, got, c.figures)
		}
		o.BarsOnLabel = true
		if got := block(Sheet(r, o)[0], label.Symbol) != "-"; got != c.barred {
			t.Errorf("%q of %q barred on the label: %v", c.number, c.code, got)
		}
		if got := len(Barcodes(r, o)) > 0; got != c.barred {
			t.Errorf("%q of %q has a sticker: %v", c.number, c.code, got)
		}
	}
	// Without a series every number counts as the house's own, and gets its code.
	r := record(t, base("catalogNumber", "4217")...)
	if got := block(Sheet(r, Options{Code: "VDOURA", NumberWord: "Accession"})[0], label.Number); got != "Accession VDOURA 4217" {
		t.Errorf("printed %q", got)
	}
	c := Number("VDOURA-0004300", house())
	if block(c, label.House) != "Valdoura Field Station Herbarium" || block(c, label.Symbol) != "VDOURA-0004300" || c.Blocks[1].Bars.Text != "VDOURA-0004300" {
		t.Errorf("a bare number: %s", dump(c))
	}
}

// What stands where a cell is empty, and what is said once.
func TestEmptyCells(t *testing.T) {
	for _, c := range []struct {
		row  []string
		role label.Role
		want string
	}{
		{[]string{"recordNumber", ""}, label.Collector, "I. Almeida s.n.\t14 June 2026"},
		{[]string{"recordNumber", "s.n."}, label.Collector, "I. Almeida s.n.\t14 June 2026"},
		{[]string{"eventDate", ""}, label.Collector, "I. Almeida 214\ts.d."},
		{[]string{"recordedBy", "s.coll."}, label.Collector, "s.coll. 214\t14 June 2026"},
		{[]string{"recordedBy", "I. Almeida"}, label.Team, "-"},
		{[]string{"recordedBy", "I. Almeida", "duplicatesTo", "PINHEL"}, label.Team, "\tDupl.: PINHEL"},
		{[]string{"country", "", "stateProvince", "", "municipality", "", "locality", "s.loc."}, label.Place, "s.loc."},
		{[]string{"country", "", "countryCode", "PT"}, label.Place, "PT. Guarda: Manteigas, above Caldas."},
		{[]string{"stateProvince", ""}, label.Place, "PORTUGAL. Manteigas, above Caldas."},
		{[]string{"municipality", "Guarda"}, label.Place, "PORTUGAL. Guarda: above Caldas."},
		{[]string{"locality", "Manteigas, above Caldas"}, label.Place, "PORTUGAL. Guarda: Manteigas, above Caldas."},
		{[]string{"locality", "Manteigas: above Caldas"}, label.Place, "PORTUGAL. Guarda: Manteigas, Manteigas: above Caldas."},
		{[]string{"locality", "MANTEIGAS, above Caldas", "island", "Mante"}, label.Place, "PORTUGAL. Guarda: Mante, MANTEIGAS, above Caldas."},
		{[]string{"locality", "above Caldas."}, label.Place, "PORTUGAL. Guarda: Manteigas, above Caldas."},
		{[]string{"locality", "above Caldas (“Poço”)"}, label.Place, "PORTUGAL. Guarda: Manteigas, above Caldas (“Poço”)."},
		{[]string{"locality", "", "municipality", ""}, label.Place, "PORTUGAL. Guarda."},
		{[]string{"country", "", "stateProvince", "", "municipality", "", "locality", "", "higherGeography", "Europe, Portugal"}, label.Place, "Europe, Portugal."},
		{[]string{"decimalLatitude", "", "decimalLongitude", "", "geodeticDatum", ""}, label.Coords, "-"},
		{[]string{"geodeticDatum", ""}, label.Coords, "40.3722° N, 7.5625° W."},
		{[]string{"geodeticDatum", "", "coordinateUncertaintyInMeters", "12500"}, label.Coords, "40.3722° N, 7.5625° W (±12 500 m)."},
		{[]string{"geodeticDatum", "", "coordinateUncertaintyInMeters", "1000.0"}, label.Coords, "40.3722° N, 7.5625° W (±1000 m)."},
		{[]string{"geodeticDatum", "", "coordinateUncertaintyInMeters", "7.25"}, label.Coords, "40.3722° N, 7.5625° W (±7.25 m)."},
		{[]string{"geodeticDatum", "", "coordinateUncertaintyInMeters", "9,1"}, label.Coords, "40.3722° N, 7.5625° W (±9.1 m)."},
		{[]string{"geodeticDatum", "", "coordinateUncertaintyInMeters", "1,5 km"}, label.Coords, "40.3722° N, 7.5625° W (±1500 m)."},
		{[]string{"minimumDepthInMeters", "0.5", "maximumDepthInMeters", "2"}, label.Coords, "40.3722° N, 7.5625° W (WGS84). Depth 0.5–2 m."},
		{[]string{"habitat", ""}, label.Plant, "-"},
		{[]string{"habitat", "Scree.", "associatedTaxa", "Erica sp."}, label.Plant, "Scree. With Erica sp."},
		{[]string{"habitat", "", "associatedTaxa", "Erica australis | Nardus stricta", "plantDescription", "Shrub"}, label.Plant, "With Erica australis and Nardus stricta. Shrub."},
		{[]string{"habitat", "Scree,", "plantDescription", "Frequent."}, label.Plant, "Scree, Frequent."},
		{[]string{"vernacularName", "giesta | maia", "uses", "Brooms", "permits", "A 1 | B 2"}, label.Notes, "Vernacular name: giesta; maia. Uses: Brooms. A 1; B 2."},
		{[]string{"identifiedBy", "", "dateIdentified", "2026"}, label.Det, "Det. 2026"},
		{[]string{"identifiedBy", "M. Quental | I. Almeida"}, label.Det, "Det. M. Quental & I. Almeida"},
		{[]string{"identifiedBy", "M. Quental", "previousIdentifications", "Cytisus grandiflorus | Genista sp."}, label.Det,
			"Det. M. Quental. Cytisus grandiflorus; Genista sp."},
		{[]string{"degreeOfEstablishment", "cultivated"}, label.Status, "Cultivated"},
		{[]string{"degreeOfEstablishment", "invasive"}, label.Status, "-"},
		{[]string{"gardenAccession", "VDG 12"}, label.Status, "Cultivated, accession VDG 12"},
		{[]string{"establishmentMeans", "Cultivada", "wildOrigin", "Guarda"}, label.Status, "Cultivated. Wild origin: Guarda."},
		{[]string{"scientificName", "Fabaceae"}, label.Name, "Fabaceae"},
		{[]string{"scientificName", ""}, label.Family, "Fabaceae"},
		{[]string{"scientificName", ""}, label.Blank, ""},
		{[]string{"project", "Flora of the Estrela"}, label.Project, "Flora of the Estrela"},
		{[]string{"projectTitle", "Flora of the Estrela"}, label.Project, "Flora of the Estrela"},
		{[]string{"coCollectors", "L. Sarmento; T. Brandão"}, label.Team, "with T. Brandão & L. Sarmento"},
	} {
		l := Sheet(record(t, base(c.row...)...), Options{})[0]
		if got := block(l, c.role); got != c.want {
			t.Errorf("%q: %s is %q, want %q", c.row, c.role, got, c.want)
		}
	}
}

// What a house leaves out is gone, whether it names a block or a column.
func TestLeaveOut(t *testing.T) {
	r := record(t, base("uses", "Brooms", "vernacularName", "giesta", "duplicatesTo", "PINHEL", "minimumElevationInMeters", "1240")...)
	l := Sheet(r, Options{LeaveOut: []string{"uses", "plant", "family", "duplicatesTo", "minimumElevationInMeters", "eventDate", "geodeticDatum"}})[0]
	for role, want := range map[label.Role]string{label.Notes: "Vernacular name: giesta.", label.Plant: "-", label.Name: "Cytisus striatus (Hill) Rothm.",
		label.Team: "with T. Brandão", label.Coords: "40.3722° N, 7.5625° W.", label.Collector: "I. Almeida 214"} {
		if got := block(l, role); got != want {
			t.Errorf("%s is %q, want %q", role, got, want)
		}
	}
}

// A label that goes on repeats collector and number, and says so in its
// language.
func TestContinuation(t *testing.T) {
	r := record(t, base()...)
	for tag, want := range map[lang.Tag]string{"": "I. Almeida 214, label continued, 2 of 2", lang.Portuguese: "I. Almeida 214, continuação da etiqueta, 2 de 2"} {
		c := Sheet(r, Options{Lang: tag})[0]
		if got := fmt.Sprintf("%s, %s, 2 %s 2", label.String(c.Key), c.Continued, c.OfWord); got != want {
			t.Errorf("%q: %q, want %q", tag, got, want)
		}
	}
}

// An unknown column and the columns of databases are not printed.
func TestNotPrinted(t *testing.T) {
	r := record(t, base("weather", "mist", "occurrenceID", "urn:x:1", "license", "CC0", "kingdom", "Plantae", "basisOfRecord", "PreservedSpecimen")...)
	for c := range labelsOf(r, house()) {
		for _, word := range []string{"mist", "urn:x:1", "CC0", "Plantae", "PreservedSpecimen"} {
			if strings.Contains(lines(c), word) {
				t.Errorf("%s prints %q", c.Kind, word)
			}
		}
	}
	for term, want := range map[string]bool{"habitat": true, "occurrenceID": false, "weather": false, "year": true} {
		if Printed(term) != want {
			t.Errorf("Printed(%q) = %v", term, !want)
		}
	}
}
