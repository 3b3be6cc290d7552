package job

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"cornerslip/label"
	"cornerslip/label/form"
	"cornerslip/layout"
)

// written writes a table to a file of its own and opens it.
func written(t testing.TB, name, text string, only ...string) *Table {
	t.Helper()
	file := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	chosen, err := Select(only)
	if err != nil {
		t.Fatal(err)
	}
	tab, release, err := OpenTable(file, nil, chosen, TableOptions{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(release)
	return tab
}

func opened(t testing.TB) *Job {
	t.Helper()
	j, err := Open(Options{Date: time.Date(2027, 6, 1, 0, 0, 0, 0, time.UTC)})
	if err != nil {
		t.Fatal(err)
	}
	return j
}

const records = `catalogNumber,recordedBy,recordNumber,eventDate,scientificName,identifiedBy,dateIdentified,country
V-1,I. Almeida,1,2026-06-01,Salix salviifolia Brot.,I. Almeida,2026,Portugal
V-2,I. Almeida | T. Brandão,2,2026-06-02,Carex nigra (L.) Reichard,,,Portugal
V-3,T. Brandão,2,2026-06-02,Erica arborea L.,,,Portugal
,T. Brandão,97-12,2026-06-02,Erica arborea L.,,,Portugal
,T. Brandão,9712,2026-06-02,Erica arborea L.,,,Portugal
V-6,M. Almeida,1,2026-06-03,Erica arborea L.,,,Portugal
V-7,C. Nóvoa,5,2026-06-03,Erica arborea L.,,,Portugal
V-8,C. Nóvoa,5,2026-06-03,Erica arborea L.,,,Portugal
,C. Nóvoa,s.n.,2026-06-03,Erica arborea L.,,,Portugal
V-10,C. Nóvoa,,,Erica arborea L.,,,Portugal
`

// A checkedSet is a slipSet to look at.
type checkedSet struct {
	row   int // of the record, else of the first identification
	ids   []int
	kinds []form.SlipKind
}

// checkSlips checks identifications; it returns the slips of each record, and
// how many records have none.
func checkSlips(t testing.TB, j *Job, tab *Table, q *Request, say func(label.Finding) error) (Summary, []checkedSet, int, error) {
	t.Helper()
	c, err := j.newSlipCheck(tab, q)
	if err != nil {
		return Summary{}, nil, 0, err
	}
	defer c.close()
	s, sets, err := c.check(say)
	if err != nil {
		return s, nil, 0, err
	}
	var all []checkedSet
	for i := range sets {
		whose, err := c.whose(&sets[i])
		if err != nil {
			t.Fatal(err)
		}
		set := checkedSet{row: whose.Row}
		for _, k := range sets[i].ids {
			set.ids, set.kinds = append(set.ids, c.ids[k].row), append(set.kinds, c.ids[k].kind)
		}
		all = append(all, set)
	}
	return s, all, c.without, nil
}

// Whose an identification is: by catalogue number, else by collector and
// number; what does not name one record is an error.
func TestJoin(t *testing.T) {
	for _, c := range []struct {
		catalogue, collector, number, date string
		row                                int // of the record
		rule, says                         string
	}{
		{"V-2", "", "", "2027", 2, "", ""},
		{" V-2 ", "", "", "2027", 2, "", ""},
		{"V-10", "", "", "2027", 10, "", ""},
		{"", "I. Almeida", "1", "2027", 1, "", ""},
		{"", "i. almeida", " 1", "2027", 1, "", ""},
		{"", "T. Brandão", "2", "2027", 3, "", ""}, // the second of a team has no claim to its number
		{"", "T. Brandão", "97–12", "2027", 4, "", ""},
		{"", "T. Brandão", "9712", "2027", 5, "", ""},
		{"", "Brandão", "2", "2027", 3, "slip-joined-loosely", "is taken for T. Brandão"},
		{"V-1", "Almeida", "1", "2027", 1, "", ""},
		{"V-1", "I. Almeida", "1", "2027", 1, "", ""},

		{"v-2", "", "", "2027", 0, "slip-unjoined", `did you mean "V-2"?`},
		{"V2", "", "", "2027", 0, "slip-unjoined", `did you mean "V-2"?`},
		{"V-20", "", "", "2027", 0, "slip-unjoined", "has this catalogue number"},
		{"", "I. Almeida", "2a", "2027", 0, "slip-unjoined", "has collector and number I. Almeida 2a"},
		{"", "Almeidas", "1", "2027", 0, "slip-unjoined", ""},
		{"", "C. Nóvoa", "s.n.", "2027", 0, "slip-unjoined", "does not say whose it is"},
		{"", "", "1", "2027", 0, "slip-unjoined", "does not say whose it is"},
		{"", "Almeida", "1", "2027", 0, "slip-two-records", "lines 2, 7 of"},
		{"", "C. Nóvoa", "5", "2027", 0, "slip-two-records", "lines 8, 9 of"},
		{"V-1", "", "2", "2027", 0, "slip-contradicts", "I. Almeida 1 V-1"},
		{"V-1", "T. Brandão", "", "2027", 0, "slip-contradicts", "I. Almeida 1 V-1"},

		{"V-2", "", "", "2025", 2, "slip-before-collecting", "before the plant was collected, 2026-06-02"},
		{"V-2", "", "", "2026", 2, "", ""}, // may be after it
		{"V-2", "", "", "", 2, "slip-date-missing", ""},
	} {
		name := fmt.Sprintf("%q %q %q %s", c.catalogue, c.collector, c.number, c.date)
		ids := written(t, "det.csv", "catalogNumber,recordedBy,recordNumber,scientificName,identifiedBy,dateIdentified\n"+
			strings.Join([]string{c.catalogue, c.collector, c.number, "Salix alba L.", "M. Quental", c.date}, ",")+"\n")
		var rules, says []string
		_, sets, _, err := checkSlips(t, opened(t), written(t, "trip.csv", records), &Request{Identifications: ids}, func(f label.Finding) error {
			if f.Rule != "slip-none" {
				rules, says = append(rules, f.Rule), append(says, f.String())
			}
			if filepath.Base(f.File) == "det.csv" && f.Line != 2 {
				t.Errorf("%s: a finding without its place: %s", name, f)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
		row := 0
		if len(sets) > 0 {
			row = sets[0].row
		}
		if row != c.row || strings.Join(rules, " ") != c.rule || !strings.Contains(strings.Join(says, "\n"), c.says) {
			t.Errorf("%s: record %d, want %d; said %q, want %s: %s", name, row, c.row, says, c.rule, c.says)
		}
	}
}

// Slips come in the order of the records and, of one record, of the dates,
// with or without a table of records beside them.
func TestOrderOfSlips(t *testing.T) {
	const ids = `catalogNumber,recordedBy,recordNumber,scientificName,identifiedBy,dateIdentified
V-3,,,Erica lusitanica Rudolphi,M. Quental,2027-03-01
V-1,,,Salix alba L.,M. Quental,
V-1,,,Salix fragilis L.,M. Quental,2027-02
V-3,,,Erica ciliaris L.,M. Quental,2026-12-31
V-1,,,Salix viminalis L.,M. Quental,1912
V-1,,,Salix caprea L.,M. Quental,2027-02-01
`
	joined := []string{"Salix viminalis", "Salix fragilis", "Salix caprea", "Salix alba", "Erica ciliaris", "Erica lusitanica"}
	alone := []string{"Erica ciliaris", "Erica lusitanica", "Salix viminalis", "Salix fragilis", "Salix caprea", "Salix alba"}
	names := func(tab *Table, q Request) (out []string) {
		q.Kind = label.Slip
		_, err := opened(t).Proof(tab, q, func(label.Finding) error { return nil }, func(p Proof) error {
			line := p.JSON().Lines[0]
			out = append(out, strings.TrimSpace(line.Runs[0].Text))
			if !line.Runs[0].Italic || p.Ref.Kind != "slip" {
				t.Errorf("%q is upright, or a %s", line.Runs[0].Text, p.Ref.Kind)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	if got := names(written(t, "trip.csv", records), Request{Identifications: written(t, "det.csv", ids)}); !slices.Equal(got, joined) {
		t.Errorf("joined: %q, want %q", got, joined)
	}
	if got := names(written(t, "det.csv", ids), Request{}); !slices.Equal(got, alone) {
		t.Errorf("alone: %q, want %q", got, alone)
	}
	if got := names(written(t, "trip.csv", records, "V-3"), Request{Identifications: written(t, "det.csv", ids)}); !slices.Equal(got, joined[4:]) {
		t.Errorf("V-3 only: %q, want %q", got, joined[4:])
	}
}

// Slips of gatherings that share a mount have the letters of their labels,
// whichever are chosen.
func TestLettersOfSlips(t *testing.T) {
	const trip = `catalogNumber,recordedBy,recordNumber,eventDate,scientificName,country,mount
V-1,I. Almeida,1,2026-06-01,Salix alba L.,Portugal,7
V-2,I. Almeida,2,2026-06-01,Carex acuta L.,Portugal,
V-3,I. Almeida,3,2026-06-01,Erica arborea L.,Portugal,7
`
	const ids = `catalogNumber,scientificName,identifiedBy,dateIdentified
V-3,Erica alba L.,M. Quental,2027
V-2,Carex nigra L.,M. Quental,2027
V-1,Salix fragilis L.,M. Quental,2027
`
	for _, c := range []struct {
		only []string
		want string
	}{{nil, "Salix fragilis A; Carex nigra ; Erica alba B"}, {[]string{"V-3"}, "Erica alba B"}} {
		var got []string
		_, err := opened(t).Proof(written(t, "trip.csv", trip, c.only...), Request{Kind: label.Slip, Identifications: written(t, "det.csv", ids)},
			func(label.Finding) error { return nil }, func(p Proof) error {
				name, letter := "", ""
				for _, line := range p.JSON().Lines {
					for _, r := range line.Runs {
						if r.Italic {
							name = strings.TrimSpace(r.Text)
						} else if r.Bold && len(r.Text) == 1 {
							letter = r.Text
						}
					}
				}
				got = append(got, name+" "+letter)
				return nil
			})
		if err != nil || strings.Join(got, "; ") != c.want {
			t.Errorf("%q: %q, %v", c.only, got, err)
		}
	}
}

// What a table says in vain or twice is said, and nothing is lost: each row
// makes a slip or is named in an error, each record without one is counted.
func TestEveryIdentificationIsTold(t *testing.T) {
	const ids = `catalogNumber,scientificName,identifiedBy,dateIdentified,slip,identificationRemarks,typeStatus
V-1,Salix salviifolia Brot.,I. Almeida,2026,,,
V-2,Carex acuta L.,M. Quental,2027,,,
V-2,Carex acuta L.,M. Quental,2027,,,
V-3,,M. Quental,2027,,Seen,
V-3,Erica alba L.,,,,,Isotype
V-9,Erica alba L.,M. Quental,2027,,,
V-6,,M. Quental,2027,conf.,,
V-7,Erica alba L.,M. Quental,30 Feb 2027,,,
`
	var got []string
	s, sets, without, err := checkSlips(t, opened(t), written(t, "trip.csv", records), &Request{Identifications: written(t, "det.csv", ids)}, func(f label.Finding) error {
		if f.Rule != "slip-none" {
			got = append(got, fmt.Sprintf("%d %s %s", f.Row, f.Severity, f.Rule))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"1 note slip-on-label", "3 warning slip-repeated", "6 error slip-unjoined", "7 error slip-empty", "8 error date-unreadable"}
	if !slices.Equal(got, want) {
		t.Errorf("found %q\nwant %q", got, want)
	}
	slips := 0
	for _, set := range sets {
		slips += len(set.ids)
	}
	if slips != 5 || len(s.Bad) != 3 || slips+len(s.Bad) != s.Records || s.Errors != 3 {
		t.Errorf("%d slips, %d bad of %d, %d errors", slips, len(s.Bad), s.Records, s.Errors)
	}
	if without != 5 || s.Notes != 1+5 {
		t.Errorf("%d records without a slip, %d notes", without, s.Notes)
	}
	kinds := ""
	for _, set := range sets {
		for _, kind := range set.kinds {
			kinds += kind.String() + " "
		}
	}
	if kinds != "determination determination determination comment type " {
		t.Errorf("kinds: %s", kinds)
	}
}

// A slip can be proofed and printed, the same on one worker as on many, and
// bears its number.
func TestSlipsOnPaper(t *testing.T) {
	ids := "catalogNumber,scientificName,identifiedBy,dateIdentified\n" + strings.Repeat("V-1,Salix alba L.,M. Quental,2027\nV-2,Carex acuta L.,M. Quental,2027\n", 40)
	var runs [2][]string
	for i, workers := range []int{1, 8} {
		j := opened(t)
		j.Workers = workers
		_, err := j.Proof(written(t, "trip.csv", records), Request{Kind: label.Slip, Identifications: written(t, "det.csv", ids)},
			func(label.Finding) error { return nil }, func(p Proof) error {
				if want := (layout.Size{W: 102 * layout.MM, H: 25 * layout.MM}); p.Size != want {
					t.Errorf("%s is %s", p.Ref, p.Size)
				}
				runs[i] = append(runs[i], fmt.Sprint(p.Ref.Row, p.JSON().Lines))
				return nil
			})
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(runs[0]) != 80 || !slices.Equal(runs[0], runs[1]) {
		t.Errorf("%d and %d slips, or they differ", len(runs[0]), len(runs[1]))
	}
}

// The rules of slips can be turned down or off in the house file.
func TestSlipRulesInTheHouse(t *testing.T) {
	house := filepath.Join(t.TempDir(), "house.toml")
	if err := os.WriteFile(house, []byte("[check.severity]\nslip-determiner-missing = \"off\"\nslip-date-missing = \"error\"\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	j, err := Open(Options{House: house})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	_, _, _, err = checkSlips(t, j, written(t, "det.csv", "catalogNumber,scientificName,identifiedBy,dateIdentified\nV-1,Salix alba L.,,\n"), &Request{}, func(f label.Finding) error {
		got = append(got, f.Severity.String()+" "+f.Rule)
		return nil
	})
	if err != nil || !slices.Equal(got, []string{"error slip-date-missing"}) {
		t.Errorf("%q, %v", got, err)
	}
}

func BenchmarkSlips(b *testing.B) {
	var trip, det strings.Builder
	trip.WriteString("catalogNumber,recordedBy,recordNumber,eventDate,scientificName,country\n")
	det.WriteString("catalogNumber,scientificName,identifiedBy,dateIdentified\n")
	const n = 2000
	for i := range n {
		fmt.Fprintf(&trip, "V-%05d,I. Almeida,%d,2026-06-01,Salix alba L.,Portugal\n", i, i)
		if i%10 == 0 {
			fmt.Fprintf(&det, "V-%05d,Salix fragilis L.,M. Quental,2027\n", i)
		}
	}
	j := opened(b)
	t, ids := written(b, "trip.csv", trip.String()), written(b, "det.csv", det.String())
	run := func() (slips int) {
		_, err := j.Proof(t, Request{Kind: label.Slip, Identifications: ids}, func(label.Finding) error { return nil }, func(Proof) error { slips++; return nil })
		if err != nil {
			b.Fatal(err)
		}
		return slips
	}
	if got := run(); got != n/10 {
		b.Fatalf("%d slips", got)
	}
	for b.Loop() {
		run()
	}
}
