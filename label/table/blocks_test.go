package table

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cornerslip/label"
)

// blockHead and blockRows make a sound table that the tests of this file spoil.
var blockHead = "catalogNumber,recordedBy,recordNumber,eventDate,family,scientificName,country,stateProvince,locality,minimumElevationInMeters,habitat"

func blockRows(n int) []string {
	plants := []string{"Ericaceae,Erica arborea L.", "Fagaceae,Quercus robur L.", "Poaceae,Nardus stricta L."}
	places := []string{"Lindoso", "Parada", "Serra Amarela", "Vilarinho da Furna"}
	var all []string
	for i := range n {
		all = append(all, fmt.Sprintf("VDOURA-%07d,I. Almeida,%d,2026-04-%02d,%s,Portugal,Braga,%s,%d,oak wood",
			4200+i, 214+i, 1+i/2, plants[i%3], places[i%4], 700+7*i))
	}
	return all
}

// TestBlocks reads tables that are laid out for the eye: each such row has one
// finding, and no other row is touched.
func TestBlocks(t *testing.T) {
	rows := blockRows(12)
	blank := strings.Repeat(",", 10)
	table := func(lines ...string) string { return strings.Join(lines, "\n") + "\n" }
	with := func(at int, line string) string {
		return table(append([]string{blockHead}, slices.Insert(slices.Clone(rows), at, line)...)...)
	}
	changed := func(at int, old, new string) string {
		all := slices.Clone(rows)
		if !strings.Contains(all[at], old) {
			t.Fatalf("row %d has no %q", at, old)
		}
		all[at] = strings.Replace(all[at], old, new, 1)
		return table(append([]string{blockHead}, all...)...)
	}
	for _, c := range []struct {
		name, in string
		records  int    // that hold something
		want     string // rule severity line:column "value" "suggest"
	}{
		{"sound", table(append([]string{blockHead}, rows...)...), 12, ""},
		{"title", table(append([]string{"Valdoura Herbarium" + blank, "Spring trip" + blank, blank, blockHead}, rows...)...), 12, `table-title note 1:0 "" ""`},
		{"title without commas", table(append([]string{"Valdoura Herbarium", "", blockHead}, rows...)...), 12, `table-title note 1:0 "" ""`},
		{"bands over headings", table("Gathering,,,Place,,", "Collector,Coll. no.,Date,Country,Locality,Family", "I. Almeida,1,2026-04-01,Portugal,Lindoso,Ericaceae"), 1, `table-title note 1:0 "" ""`},
		{"units", table("Collector,Coll. no.,Date,Country,Altitude,Lat", ",,yyyy-mm-dd,,m,dd", "I. Almeida,1,2026-04-01,Portugal,720,41.7"), 1, `heading-rows note 2:0 "" ""`},
		{"a kind of thing alone", table("type,country,scientificName", "Text,,"), 1, ""}, {"instructions", table("type,country,scientificName", "Text,Text,Text", "Text,Portugal,Erica"), 1, `heading-rows note 2:0 "" ""`},
		{"a datum alone", table("country,geodeticDatum,verbatimCoordinateSystem", ",WGS84,UTM", "Portugal,,"), 2, ""},
		{"two ranks", table("Collector,Coll. no.,Country,Latitude,,,Longitude,,", ",,,deg,min,N/S,deg,min,E/W", "I. Almeida,1,Portugal,41,42,N,8,9,W"), 1,
			`heading-rows note 2:0 "" ""; heading-reading note 1:29 "Latitude deg" ""`},
		{"two ranks of words", table("Collector,Coll. no.,Country,Locality,Date,Family,Glue,,", ",,,,,,whole,broken,gone", "I. Almeida,1,Portugal,Lindoso,2026-04-01,Ericaceae,x,,x"), 1,
			`heading-rows note 2:0 "" ""; heading-unknown note 1:50 "Glue whole" ""; heading-unknown note 1:56 "Glue gone" ""`},
		{"a scant record", table("Collector,Coll. no.,Country,Date,Family,Locality,,", ",,,,,Lindoso,by the bridge,left", "I. Almeida,1,Portugal,2026-04-01,Ericaceae,Parada,,"), 2,
			`heading-empty warning 1:50 "" ""`},
		{"headings twice", table("Collector,Number,Plant name,Country", "recordedBy,recordNumber,scientificName,country", "I. Almeida,1,Erica arborea L.,Portugal"), 1, `heading-rows note 2:0 "" ""`},
		{"headings again", with(5, blockHead), 12, `row-aside note 7:1 "catalogNumber" ""`},
		{"comment", with(5, "# second day, rain"), 12, `row-aside note 7:1 "# second day" ""`},
		{"sum", with(12, "Total"+strings.Replace(blank, ",", ",12", 1)), 12, `row-aside note 14:1 "Total" ""`},
		{"what was counted", with(12, "Retained loci,-,12,-,-,-,-,-,-,35,-"), 12, `table-empty-code note 1:0 "" ""; row-aside note 14:1 "Retained loci" ""`},
		{"a sign's meaning", with(12, "* = type"+blank), 12, `row-aside note 14:1 "* = type" ""`},
		{"family", with(0, "ERICACEAE"+blank), 12, `row-aside note 2:1 "ERICACEAE" ""`},
		{"place", with(4, "Serra da Peneda"+blank), 12, `row-aside warning 6:1 "Serra da Peneda" ""`},
		{"note below", with(12, "Heights were read from the map"+blank), 12, `row-aside warning 14:1 "Heights were read from the map" ""`},
		{"a raised figure", with(12, "¹ Numbers of the collector."+blank), 12, `row-aside note 14:1 "¹ Numbers of the collector." ""`},
		{"a footnote", with(12, "* seen in the herbarium only"+blank), 12, `row-aside note 14:1 "* seen in the herbarium only" ""`},
		{"a lettered footnote", with(12, "a from a garden"+blank), 12, `row-aside note 14:1 "a from a garden" ""`},
		{"abbreviations", with(12, "Abbreviations: V – Valdoura"+blank), 12, `row-aside note 14:1 "Abbreviations: V – Valdoura" ""`},
		{"outgroup", with(5, "Outgroup"+blank), 12, `row-aside note 7:1 "Outgroup" ""`},
		{"blank row", with(5, blank), 12, ""},
		{"a comma in a text", changed(4, "Lindoso", "Lindoso, by the bridge"), 12, `row-shifted error 6:83 "Lindoso, by the bridge" "\"Lindoso, by the bridge\""`},
		{"a comma in a text, last cell lost", strings.Replace(changed(4, "I. Almeida", "I. Almeida, R. Costa"), "728,oak wood", "728", 1), 12, `row-shifted error 6:16 "I. Almeida, R. Costa" "\"I. Almeida, R. Costa\""`},
		{"a cell missing", changed(4, ",Portugal", ""), 12, `row-shifted error 6:68 "Braga" ""`},
		{"a decimal comma", changed(4, ",728,", ",728,5,"), 12, `row-shifted error 6:91 "728,5" "728.5"`},
		{"a line end in a cell", changed(4, "Lindoso", "Lindoso\nby the bridge"), 12, `row-ragged error 6:83 "Lindoso\nby the bridge" "Lindoso by the bridge"`},
		{"a quote left open", changed(4, "Lindoso", `"Lindoso`), 12, `cell-unclosed error 6:83 "\"Lindoso" ""`},
		{"a count without heading", table("country,locality", "1,Portugal,Lindoso", "2,Portugal,Parada"), 2, `row-ragged error 1:0 "" ""`},
		{"a comma at each end", strings.ReplaceAll(table(rows...), "\n", ",\n"), 12, ""},
		{"cells without heading", table("country,locality,", "Portugal,Lindoso,rare", "Portugal,Parada,"), 2, `heading-empty warning 1:18 "" ""`},
		{"rows that count", table(",country,locality", "1,Portugal,Lindoso", "2,Portugal,Parada"), 2, `heading-empty note 1:1 "" ""`},
		{"NA", table("country,locality,habitat", "Portugal,NA,NA", "Portugal,Parada,NA"), 2, `table-empty-code note 1:0 "" ""`},
		{"two dashes", table("country,locality,habitat", "Portugal,Lindoso,-", "Portugal,Parada,-"), 2, `table-empty-code note 1:0 "" ""`},
		{"one dash", table("country,locality,habitat", "Portugal,Lindoso,-", "Portugal,Parada,"), 2, ""},
		{"an unknown column without cells", table("country,moon phase", "Portugal,", "Portugal,"), 2, ""},
		{"many unknown columns", table("country,aa1,bb1,cc1,dd1,ee1,ff1", "Portugal,1,1,1,1,1,1"), 1, `heading-unknown note 1:9 "" ""`},
		{"no headings", table(rows...), 11, `heading-missing error 1:0 "" ""`},
	} {
		in := c.in
		if c.name == "a comma at each end" {
			in = blockHead + "\n" + in
			c.want = `row-ragged note 1:0 "" ""`
		}
		tb, read := readAll(t, in, Options{})
		all := slices.Clone(tb.Findings())
		records := 0
		for _, r := range read {
			if all = append(all, r.Findings...); !r.Empty {
				records++
			}
		}
		var got []string
		for _, f := range all {
			got = append(got, fmt.Sprintf("%s %s %d:%d %q %q", f.Rule, f.Severity, f.Line, f.Column, f.Value, f.Suggest))
		}
		if s := strings.Join(got, "; "); s != c.want || records != c.records {
			t.Errorf("%s: %d records, %s\nwant %d, %s", c.name, records, s, c.records, c.want)
		}
		var out strings.Builder
		if err := Rewrite(&out, tb, nil); err != nil || out.String() != in {
			t.Errorf("%s: rewritten without edits: %v\n%s", c.name, err, out.String())
		}
		last := read[len(read)-1] // edits find their rows behind titles, units and the rest
		if c.name == "units" || c.name == "title" {
			out.Reset()
			err := Rewrite(&out, tb, []Edit{{Row: last.N, Column: 0, Text: "x"}, {Row: 0, Column: len(tb.Columns()), Text: "new"}})
			if want := ",new\n"; err != nil || !strings.Contains(out.String(), want) || !strings.Contains(out.String(), "\nx,") {
				t.Errorf("%s: edited: %v\n%s", c.name, err, out.String())
			}
		}
	}
}

// TestSwallowed: a quote that another one far below seems to close.
func TestSwallowed(t *testing.T) {
	rows := blockRows(12)
	rows[3] = strings.Replace(rows[3], "Vilarinho", `"Vilarinho`, 1)
	rows[9] = strings.Replace(rows[9], "oak wood", `oak wood, 5"`, 1)
	_, read := readAll(t, blockHead+"\n"+strings.Join(rows, "\n")+"\n", Options{})
	var all []label.Finding
	for _, r := range read {
		all = append(all, r.Findings...)
	}
	if len(all) != 1 || all[0].Rule != ruleUnclosed.Name || all[0].Line != 5 || !read[3].Astray {
		t.Errorf("%d rows, %v", len(read), all)
	}
}

// TestHeadingsByCells: a heading that could mean a term does not where its cells
// do not look so.
func TestHeadingsByCells(t *testing.T) {
	tb, _ := readAll(t, "Species,Identification,PRECISION,Type,Field number,country\n"+
		"Erica arborea L.,000030,Study site,holotype,1,Portugal\nErica arborea L.,CM526956,Municipality,,2,Portugal\nErica cinerea L.,CM526957,2000,isotype,3,Portugal\n", Options{})
	var got []string
	for _, c := range tb.Columns() {
		got = append(got, c.Term)
	}
	if s := strings.Join(got, " "); s != "scientificName Identification PRECISION typeStatus recordNumber country" {
		t.Error(s)
	}
	if n := len(tb.Findings()); n != 4 {
		t.Errorf("%d findings: %v", n, tb.Findings())
	}
}

// TestSpeciesBesideGenus: "Species" beside a genus is the epithet, but the whole
// name where its cells repeat the genus.
func TestSpeciesBesideGenus(t *testing.T) {
	for _, tt := range []struct{ table, want string }{
		{"genus,species,country\nErica,arborea,Portugal\nErica,cinerea,Portugal\n", "genus specificEpithet country"},
		{"genus,species,country\nErica,Erica arborea,Portugal\n", "genus scientificName country"},
		{"genus,species,country\nErica,Erica arborea,Portugal\nCistus,NA,Portugal\nErica,Erica cinerea,Portugal\nUlex,Ulex minor,Spain\nUlex,unidentified,Spain\n", "genus scientificName country"},
		{"genus,species,country\nErica,arborea,Portugal\nErica,cinerea,Portugal\nUlex,Ulex minor,Spain\n", "genus specificEpithet country"},
		{"genus,specificEpithet,country\nErica,Erica arborea,Portugal\nErica,Erica cinerea,Portugal\n", "genus specificEpithet country"},
	} {
		tb, _ := readAll(t, tt.table, Options{})
		var got []string
		for _, c := range tb.Columns() {
			got = append(got, c.Term)
		}
		if s := strings.Join(got, " "); s != tt.want {
			t.Errorf("%q: %s, want %s", tt.table, s, tt.want)
		}
	}
}

// TestConstants: what a heading says of every record is in every record.
func TestConstants(t *testing.T) {
	tb, rows := readAll(t, "country,Lat (WGS84),Long W\nPortugal,41.7,8.2\nPortugal,41.8,8.1\n", Options{})
	r := rows[1]
	if got := r.Text("geodeticDatum") + r.Text("longitudeHemisphere") + r.Text("latitudeHemisphere"); got != "WGS84WN" || len(r.Cells) != len(tb.Columns()) {
		t.Errorf("%q, %d cells", got, len(r.Cells))
	}
	for _, heading := range []string{"Longitude (°W)", "Long. °W", "Longitude (decimal degrees W)", "Longitude [deg. W]"} {
		if _, rows = readAll(t, "country,"+heading+"\nPortugal,8.2\nPortugal,8.1\n", Options{}); rows[0].Text("longitudeHemisphere") != "W" {
			t.Errorf("%s says no side", heading)
		}
	}
	_, rows = readAll(t, "country,Long W\nPortugal,-8.2\nPortugal,-8.1\n", Options{})
	if got := rows[0].Text("longitudeHemisphere"); got != "" {
		t.Errorf("figures have their sign, yet %q", got)
	}
	tb, _ = readAll(t, "country,Long W\nPortugal,-8.2\nPortugal,8.1\n", Options{})
	if got := said(tb.Findings()); !slices.Equal(got, []string{"heading-reading warning"}) {
		t.Errorf("both: %v", got)
	}
}
