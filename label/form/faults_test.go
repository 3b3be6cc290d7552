package form

import (
	"fmt"
	"iter"
	"slices"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/coord"
	"cornerslip/label/date"
	"cornerslip/label/lang"
	"cornerslip/label/table"
)

// styles are the ways in which houses have their labels: one of each kind, and
// each language once.
func styles() map[string]Options {
	m := map[string]Options{"running": house(), "zero": {}}
	o := house()
	o.Captions, o.Family, o.NumberWord, o.BarsOnLabel = true, FamilyOwnLine, "Accession", true
	o.Date.Form = date.RomanMonth
	m["captions"] = o
	o = house()
	o.Lang, o.Second, o.ListDuplicates, o.PacketName, o.PacketBars = lang.Portuguese, lang.English, true, true, true
	o.Coords.Form = coord.DegreesMinutesSeconds
	m["bilingual"] = o
	o = house()
	o.Words = map[string]string{"det": "Det:", "collector": "leg.", "with": "", "elevation": "elev.", "habitat": "Habitat", "vernacular": "n.v.:",
		"uses": "", "locality": "Loc.", "coordinates": "GPS", "date": "on", "associates": "", "cultivated": "Cult."}
	o.PlaceSep, o.PeopleSep, o.LastPersonSep = "; ", "; ", "; "
	o.Project = []string{"Plants of Portugal", "and the Azores"}
	m["own words"] = o
	o = house()
	o.Head, o.Body = []label.Role{label.Project}, []label.Role{label.Status, label.Collector, label.Name, label.Family, label.Det, Associates, label.Place,
		label.Coords, Habitat, Description, label.Type, label.Notes}
	o.Foot, o.RunOn = []label.Role{Date, label.Team, label.Number, label.Symbol, label.House}, []label.Role{label.Coords, Habitat, label.Notes}
	o.Family, o.AllCollectors, o.DetRight, o.CountDuplicates, o.BarsOnLabel, o.PlainPackets = FamilyOwnLine, true, true, true, true, true
	o.CountrySep, o.ProvinceSep, o.Words, o.Sorted = ": ", ", ", map[string]string{"number": ", no."}, []string{"associatedTaxa", "vernacularName"}
	m["own order"] = o
	for _, t := range lang.Tags() {
		m[string(t)] = Options{Lang: t, Coords: coord.Style{Form: coord.DegreesMinutes}}
	}
	return m
}

// labelsOf yields every label of a record.
func labelsOf(r *check.Record, o Options) iter.Seq[label.Content] {
	return func(yield func(label.Content) bool) {
		for _, list := range [][]label.Content{Sheet(r, o), Packets(r, o), Containers(r, o), Barcodes(r, o)} {
			for _, c := range list {
				if !yield(c) {
					return
				}
			}
		}
	}
}

// faults returns what looks wrong in the words of a label. What stands in one
// cell is the record's own and no fault of ours.
func faults(c label.Content) []string {
	var found []string
	say := func(format string, a ...any) { found = append(found, fmt.Sprintf(format, a...)) }
	if len(c.Blocks) == 0 {
		say("no blocks")
	}
	for _, b := range c.Blocks {
		if len(b.Runs) == 0 && len(b.Right) == 0 && b.Role != label.Blank {
			say("%s: nothing in it", b.Role)
		}
		if b.Caption != nil && len(b.Runs) == 0 && b.Role != label.Blank {
			say("%s: caption %q without a value", b.Role, label.String(b.Caption))
		}
		if b.Caption != nil && strings.TrimSpace(label.String(b.Caption)) == "" {
			say("%s: empty caption", b.Role)
		}
		for _, runs := range [][]label.Run{b.Runs, b.Right, b.Caption} {
			for _, f := range faultsOf(runs) {
				say("%s: %s in %q", b.Role, f, label.String(runs))
			}
		}
	}
	return found
}

func faultsOf(runs []label.Run) (found []string) {
	text := label.String(runs)
	if text == "" {
		if len(runs) > 0 {
			return []string{"empty runs"}
		}
		return nil
	}
	var cell []label.Origin // of each byte
	for _, r := range runs {
		if r.Text == "" {
			found = append(found, "an empty run")
		}
		for range len(r.Text) {
			cell = append(cell, r.Origin)
		}
	}
	ours := func(from, to int) bool {
		return cell[from] == (label.Origin{}) || slices.ContainsFunc(cell[from:to], func(o label.Origin) bool { return o != cell[from] })
	}
	// "L.," in a list is no fault: a full stop may close an abbreviation.
	for _, bad := range []string{"..", ",,", ";;", ",.", ";.", ":.", " .", " ,", " ;", "( ", " )", "()", "  ", ": :", ":,", "|", "{", "}", " / /"} {
		for i := 0; ; {
			j := strings.Index(text[i:], bad)
			if j < 0 {
				break
			}
			if i += j; ours(i, i+len(bad)) {
				found = append(found, fmt.Sprintf("%q at %d", bad, i))
			}
			i += len(bad)
		}
	}
	if strings.TrimSpace(text) != text {
		found = append(found, "a blank at an end")
	}
	if strings.ContainsAny(text[:1], ".,;:)]?!") && ours(0, 1) {
		found = append(found, "punctuation at the beginning")
	}
	if n := len(text); strings.ContainsAny(text[n-1:], ",;:([&") && ours(n-1, n) {
		found = append(found, "a loose end")
	}
	// What follows a break must not begin with punctuation: the run before it
	// has to be glued on, unless a blank stands there.
	for i, r := range runs {
		if i > 0 && r.Text != "" && strings.ContainsAny(r.Text[:1], ".,;:)]") && !runs[i-1].Glue {
			found = append(found, fmt.Sprintf("a line may begin with %q", r.Text))
		}
	}
	return found
}

func TestNoFaultsInTheTrip(t *testing.T) {
	for style, o := range styles() {
		for _, r := range trip(t) {
			for c := range labelsOf(r, o) {
				for _, f := range faults(c) {
					t.Errorf("%s: row %d, %s %s: %s", style, r.Row, c.Kind, c.Part, f)
				}
			}
		}
	}
}

// The real table is 1,534 records of a herbarium's collection, published as a
// Darwin Core archive.
func TestNoFaultsInRealRecords(t *testing.T) {
	all := recordsOf(t, table.File(outside.Shared(t, "real/taurus-plants.csv")))
	if len(all) != 1534 {
		t.Fatalf("%d records", len(all))
	}
	for style, o := range styles() {
		n := 0
		for _, r := range all {
			printed := 0
			for c := range labelsOf(r, o) {
				printed++
				for _, f := range faults(c) {
					if n++; n < 10 {
						t.Errorf("%s: row %d, %s %s: %s", style, r.Row, c.Kind, c.Part, f)
					}
				}
			}
			if printed == 0 {
				t.Errorf("%s: row %d has no label", style, r.Row)
			}
		}
	}
}

// TestFaultsAreSeen holds the looking-for itself against labels that are wrong.
func TestFaultsAreSeen(t *testing.T) {
	at := label.Origin{Line: 2, Column: 1, Row: 1, Term: "habitat"}
	cell := func(s string) label.Run { return label.Run{Text: s, Origin: at} }
	for _, c := range []struct {
		block label.Block
		fault bool
	}{
		{label.Block{Role: label.Plant, Runs: []label.Run{cell("Scree"), {Text: "."}}}, true}, // not glued
		{label.Block{Role: label.Plant, Runs: []label.Run{{Text: "Scree", Glue: true}, {Text: "."}}}, false},
		{label.Block{Role: label.Plant, Runs: []label.Run{{Text: "Scree.", Glue: true, Origin: at}, {Text: "."}}}, true},
		{label.Block{Role: label.Plant, Runs: []label.Run{cell("Scree..")}}, false},
		{label.Block{Role: label.Plant, Runs: []label.Run{cell("Scree"), {Text: " "}}}, true},
		{label.Block{Role: label.Plant, Runs: []label.Run{cell("Scree,")}}, false},
		{label.Block{Role: label.Plant, Runs: []label.Run{{Text: ", with"}}}, true},
		{label.Block{Role: label.Plant}, true},
		{label.Block{Role: label.Plant, Caption: []label.Run{{Text: "Habitat"}}}, true},
		{label.Block{Role: label.Plant, Caption: []label.Run{}, Runs: []label.Run{cell("Scree")}}, true},
		{label.Block{Role: label.Blank}, false},
	} {
		if got := faults(label.Content{Blocks: []label.Block{c.block}}); len(got) > 0 != c.fault {
			t.Errorf("%+v: faults %q, want %v", c.block, got, c.fault)
		}
	}
}

// asWritten are the columns whose text stands on the label letter by letter.
var asWritten = strings.Fields(`project gardenAccession wildOrigin family identificationRemarks country stateProvince islandGroup island county
	municipality waterBody locality locationRemarks habitat plantDescription sex lifeStage reproductiveCondition organismRemarks
	occurrenceRemarks eventRemarks fieldNotes materialEntityRemarks fundingAttribution catalogNumber institutionCode geodeticDatum recordNumber`)

// lists are the columns whose items stand there letter by letter.
var lists = strings.Fields("identifiedBy associatedTaxa vernacularName uses permits restrictions duplicatesTo recordedBy")

// values are the columns that are printed as the value they mean.
var valued = strings.Fields(`eventDate dateIdentified decimalLatitude coordinateUncertaintyInMeters minimumElevationInMeters`)

// TestEveryCellOnce holds the house's own label against the cells: the runs
// that came from a cell, put together, are the cell, so nothing is dropped,
// changed or said twice.
func TestEveryCellOnce(t *testing.T) {
	records := trip(t)
	records = append(records, recordsOf(t, table.File(outside.Shared(t, "real/taurus-plants.csv")))...)
	own := styles()["own order"]
	own.Sorted, own.CountDuplicates = nil, false // which change what is printed of a cell, as they are meant to
	for _, o := range []Options{house(), styles()["captions"], styles()["bilingual"], own} {
		for _, r := range records {
			list := append(append(Sheet(r, o), Packets(r, o)...), Containers(r, o)...)
			if len(list) == 0 {
				t.Fatalf("row %d has no label", r.Row)
			}
			got := map[string]string{}
			for _, b := range list[0].Blocks {
				for _, runs := range [][]label.Run{b.Runs, b.Right} {
					for _, run := range runs {
						if run.Origin.Row != 0 && run.Origin.Row != r.Row {
							t.Fatalf("row %d: %q comes from row %d", r.Row, run.Text, run.Origin.Row)
						}
						got[run.Origin.Term] += run.Text
					}
				}
			}
			for _, term := range asWritten {
				if want := r.Text(term); got[term] != want && !saidBefore(r, term) {
					t.Errorf("row %d: %s prints %q, the cell is %q", r.Row, term, got[term], want)
				}
			}
			for _, term := range lists {
				want := strings.Join(items(r.Text(term)), "")
				if term == "duplicatesTo" || term == "recordedBy" {
					want = squeeze(want)
					got[term] = squeeze(got[term])
				}
				if got[term] != want {
					t.Errorf("row %d: %s prints %q, the cell is %q", r.Row, term, got[term], want)
				}
			}
			for _, term := range valued {
				if (got[term] != "") != (r.Text(term) != "") {
					t.Errorf("row %d: %s prints %q, the cell is %q", r.Row, term, got[term], r.Text(term))
				}
			}
			want := r.Name
			if r.Text("scientificName") == "" {
				want = "" // a line to write on
			}
			if at := "scientificName"; got[at] != want {
				t.Errorf("row %d: the name prints %q, is %q", r.Row, got[at], want)
			}
		}
	}
}

func squeeze(s string) string { return strings.Join(strings.Fields(s), "") }

// saidBefore reports whether a cell is rightly passed over, since another says
// the same: a family that is the name, a place that is the one it lies in, a
// code that the number holds.
func saidBefore(r *check.Record, term string) bool {
	switch term {
	case "family":
		return strings.EqualFold(r.Text("family"), r.Text("scientificName"))
	case "municipality":
		return r.Text("municipality") == r.Text("stateProvince") || r.Text("municipality") == r.Text("island") ||
			strings.HasPrefix(r.Text("locality"), r.Text("municipality")+",")
	case "institutionCode":
		return r.Text("catalogNumber") == "" || strings.HasPrefix(r.Text("catalogNumber"), r.Text("institutionCode"))
	}
	return false
}
