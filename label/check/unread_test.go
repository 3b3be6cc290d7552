package check

import (
	"strings"
	"testing"
)

// What is missing may stand below a heading that is not known, and the message says
// so; not where the table has a column for it, or knows all its headings.
func TestUnreadHeadings(t *testing.T) {
	for _, tt := range []struct{ headings, want string }{
		{"who", `; if it stands below "who", which is not known, call that heading recordedBy`},
		{"who,what for", `; if it stands below a heading that is not known, "who" and "what for", call that heading recordedBy`},
		{"q1,q2,q3,q4,q5,q6,q7,q8", `; if it stands below a heading that is not known, "q1", "q2", "q3", "q4", "q5", "q6" and 2 others, call that heading recordedBy`},
		{"recordedBy,who", ""},
		{"habitat", ""},
	} {
		n := strings.Count(tt.headings, ",") + 1
		src := "scientificName,locality,country,eventDate,recordNumber," + tt.headings + "\nThymus capitellatus,Valdoura,Portugal,2026-05-14,214" + strings.Repeat(",", n) + "\n"
		_, fs := run(t, New(options(t)), openBytes(t, "trip.csv", []byte(src)))
		found := false
		for _, f := range fs {
			if f.Rule == "collector-missing" {
				found = true
				if want := `no collector is given: fill in who collected it, or write "s.coll." if it is not known` + tt.want; f.Message != want {
					t.Errorf("%s: %s\nwant %s", tt.headings, f.Message, want)
				}
			}
		}
		if !found {
			t.Errorf("%s: nothing is said of the collector", tt.headings)
		}
	}
}

// The number may stand as that of an event.
func TestNumberInFieldNumber(t *testing.T) {
	for _, tt := range []struct{ heading, field, want string }{
		{"plot", "214", ""},
		{"fieldNumber", "214", "; fieldNumber has 214: if the collector gave it, write it as recordNumber"},
		{"fieldNumber", "Plot 3 of the ridge", ""},
		{"fieldNumber", "", ""},
	} {
		src := "scientificName,recordedBy,locality,country,eventDate,recordNumber," + tt.heading + "\nThymus capitellatus,I. Almeida,Valdoura,Portugal,2026-05-14,," + tt.field + "\nThymus capitellatus,I. Almeida,Valdoura,Portugal,2026-05-15,215,\n"
		_, fs := run(t, New(options(t)), openBytes(t, "trip.csv", []byte(src)))
		var got []string
		for _, f := range fs {
			if f.Rule == "number-missing" {
				got = append(got, f.Message)
			}
		}
		if want := "no collector's number is given: the label prints s.n." + tt.want; len(got) != 1 || got[0] != want {
			t.Errorf("%q: %q, want %q", tt.field, got, want)
		}
	}
}

// A heading over measures or the numbers of sequences is not proposed for what no such
// cell can be.
func TestUnreadHeadingsByTheirCells(t *testing.T) {
	for _, tt := range []struct{ cells, rule, want string }{
		{"yes|10.9|KX123456.1|Almeida", "collector-missing", `; if it stands below "x4", which is not known, call that heading recordedBy`},
		{"yes|10.9|KX123456.1|Almeida", "number-missing", ""},
		{"yes|10.9|KX123456.1|214", "number-missing", `; if it stands below "x4", which is not known, call that heading recordNumber`},
		{"yes|10.9|KX123456.1|214", "collector-missing", ""},
	} {
		row := "Thymus capitellatus|Valdoura|Portugal|2026-05-14|" + tt.cells + "\n"
		src := strings.ReplaceAll("scientificName|locality|country|eventDate|x1|x2|x3|x4\n"+strings.Repeat(row, 4), "|", ",")
		_, fs := run(t, New(options(t)), openBytes(t, "trip.csv", []byte(src)))
		said := ""
		for _, f := range fs {
			if f.Rule == tt.rule {
				_, said, _ = strings.Cut(f.Message, ";")
			}
		}
		if want := strings.TrimPrefix(tt.want, ";"); said != want {
			t.Errorf("%s, %s: %q, want %q", tt.cells, tt.rule, said, want)
		}
	}
}
