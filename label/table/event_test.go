package table

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

// eventArchive describes an archive of events with the terms of its two tables
// after the id.
func eventArchive(event, specimen []string, more ...string) string {
	table := func(element, rowType, file, id string, terms []string) string {
		s := fmt.Sprintf(`<%s encoding="UTF-8" fieldsTerminatedBy="\t" linesTerminatedBy="\n" fieldsEnclosedBy="" ignoreHeaderLines="0" rowType="%s%s"><files><location>%s</location></files><%s index="0"/>`,
			element, dwcTerms, rowType, file, id)
		for i, term := range terms {
			s += metaOf(i+1, term)
		}
		return s + "</" + element + ">"
	}
	return meta(table("core", "Event", "event.txt", "id", event), append([]string{table("extension", "Occurrence", "occurrence.txt", "coreid", specimen)}, more...)...)
}

// TestEventKeyOfTwoTerms: a column that is both the key and eventID, as archives
// of events commonly describe theirs, joins as any other.
func TestEventKeyOfTwoTerms(t *testing.T) {
	text := eventArchive([]string{"eventDate", "locality"}, []string{"recordNumber", "scientificName"})
	for _, id := range []string{`<id index="0"/>`, `<coreid index="0"/>`} {
		text = strings.Replace(text, id, id+metaOf(0, "eventID"), 1)
	}
	for specimens, want := range map[string]string{"E1\t101\tCistus ladanifer L.\nE9\t102\tErica arborea L.\n": `no event "E9"`, "E1\t101\n\nE9\n": "the row has one cell"} {
		d, err := OpenDataset(writeFolder(t, map[string]string{"meta.xml": text,
			"event.txt": "E1\t2024-04-03\tValdoura, dunes\n", "occurrence.txt": specimens}), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var days []string
		said := ""
		for row, err := range d.Core.Rows() {
			if err != nil {
				t.Fatal(err)
			}
			if row.Empty {
				continue
			}
			days = append(days, row.Text("eventDate"))
			said += fmt.Sprint(row.Findings)
		}
		if len(days) != 2 || days[0] != "2024-04-03" || days[1] != "" || !strings.Contains(said, want) {
			t.Errorf("%q: days %q, said %s", specimens, days, said)
		}
	}
}

// TestEventArchive: where the core holds events, the records are the specimens
// beside it, and each has the cells of its own event. Darwin Core text guide,
// section 2: an extension's rows name the core row that they belong to.
func TestEventArchive(t *testing.T) {
	files := map[string]string{
		"meta.xml": eventArchive([]string{"eventDate", "locality", "country", "habitat"}, []string{"recordNumber", "scientificName", "habitat"}),
		"event.txt": "E1\t2024-04-03\tValdoura, dunes\tPortugal\tdunes\n" +
			"E2\t2024-04-04\tValdoura, stream\tPortugal\t\n" +
			"E2\t2024-04-05\tValdoura, mill\tPortugal\t\n" +
			"E4\t2024-04-06\tValdoura, nobody collected\tPortugal\t\n",
		"occurrence.txt": "E1\t101\tCistus ladanifer L.\t\n" +
			"E2\t102\tErica arborea L.\tbank\n" +
			"E1\t103\tQuercus suber L.\tdune slack\n" +
			"E9\t104\tSalix atrocinerea Brot.\t\n",
	}
	for name, write := range map[string]func(testing.TB, map[string]string) string{"folder": writeFolder, "zip": writeZip} {
		d, err := OpenDataset(write(t, files), Options{})
		if err != nil {
			t.Fatal(name, err)
		}
		want := []map[string]string{
			{"recordNumber": "101", "eventDate": "2024-04-03", "locality": "Valdoura, dunes", "country": "Portugal", "habitat": "dunes"},
			{"recordNumber": "102", "eventDate": "2024-04-04", "locality": "Valdoura, stream", "country": "Portugal", "habitat": "bank"},
			{"recordNumber": "103", "eventDate": "2024-04-03", "locality": "Valdoura, dunes", "country": "Portugal", "habitat": "dune slack"},
			{"recordNumber": "104", "eventDate": "", "locality": "", "country": "", "habitat": ""},
		}
		n := 0
		for row, err := range d.Core.Rows() {
			if err != nil {
				t.Fatal(name, err)
			}
			for _, term := range slices.Sorted(maps.Keys(want[n])) {
				if got := row.Text(term); got != want[n][term] {
					t.Errorf("%s: record %d: %s is %q, not %q", name, n+1, term, got, want[n][term])
				}
			}
			if o := row.Origin("locality"); o.Line != n+1 || o.Column != 0 {
				t.Errorf("%s: record %d: a cell of the event is said to stand at %v", name, n+1, o)
			}
			kept, err := d.Core.Restore(row.Append(nil))
			if err != nil || kept.Text("locality") != row.Text("locality") {
				t.Errorf("%s: record %d is not kept: %v", name, n+1, err)
			}
			said := fmt.Sprint(row.Findings)
			if strings.Contains(said, `no event "E9"`) != (n == 3) {
				t.Errorf("%s: record %d: %s", name, n+1, said)
			}
			n++
		}
		if n != len(want) {
			t.Errorf("%s: %d records", name, n)
		}
		if said := fmt.Sprint(d.Findings()); !strings.Contains(said, `two events have the id "E2"`) || !strings.Contains(said, "the records are the specimens of") {
			t.Errorf("%s: %s", name, said)
		}
	}
}

// TestEventArchiveDigest: a table of specimens is another one when an event
// changes.
func TestEventArchiveDigest(t *testing.T) {
	digest := func(place string) string {
		d, err := OpenDataset(writeFolder(t, map[string]string{
			"meta.xml":       eventArchive([]string{"locality"}, []string{"recordNumber"}),
			"event.txt":      "E1\t" + place + "\n",
			"occurrence.txt": "E1\t101\n",
		}), Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, err := range d.Core.Rows() {
			if err != nil {
				t.Fatal(err)
			}
		}
		return d.Core.Digest()
	}
	if a, b := digest("Valdoura"), digest("Valdoura"); a != b {
		t.Error("the same table has two digests")
	}
	if a, b := digest("Valdoura"), digest("Alcochete"); a == b {
		t.Error("two tables have one digest")
	}
}

// TestEventArchiveFaults: what cannot be joined is said.
func TestEventArchiveFaults(t *testing.T) {
	side := `<extension fieldsTerminatedBy="\t" fieldsEnclosedBy="" rowType="` + dwcTerms + `%s"><files><location>side.txt</location></files><coreid index="0"/>` + metaOf(1, "identifiedBy") + `</extension>`
	text := eventArchive([]string{"locality"}, []string{"recordNumber"}, fmt.Sprintf(side, "Identification"))
	files := map[string]string{"meta.xml": text, "event.txt": "E1\tValdoura\tmore\nE2\tX\n", "occurrence.txt": "E1\t101\n", "side.txt": "E1\tI. Almeida\n"}
	d, err := OpenDataset(writeFolder(t, files), Options{})
	if err != nil {
		t.Fatal(err)
	}
	said := fmt.Sprint(d.Findings())
	if !strings.Contains(said, "not of specimens, are not read: Identification") || len(d.Sides) != 0 {
		t.Errorf("identifications of events are not spoken of: %s", said)
	}
	if !strings.Contains(said, "event.txt:2") { // which has a cell less than the first
		t.Errorf("a ragged event is not spoken of: %s", said)
	}
	files["meta.xml"] = strings.Replace(text, `<coreid index="0"/>`, "", 1)
	if _, err := OpenDataset(writeFolder(t, files), Options{}); err == nil || !strings.Contains(err.Error(), "which columns join specimens and events") {
		t.Errorf("no column joins them, and the error is %v", err)
	}
	delete(files, "occurrence.txt")
	files["meta.xml"] = strings.Replace(eventArchive([]string{"locality"}, nil), dwcTerms+"Occurrence", dwcTerms+"MeasurementOrFact", 1)
	files["occurrence.txt"] = "E1\n"
	d, err = OpenDataset(writeFolder(t, files), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if said := fmt.Sprint(d.Findings()); !strings.Contains(said, "of the type Event, not Occurrence") {
		t.Errorf("events without specimens: %s", said)
	}
}
