package trade

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"cornerslip/label"
)

// A collector who begins anew every year is told once; a number that another
// collector used twice is told beside it.
func TestNumbersAnewEveryYear(t *testing.T) {
	table := func(years, each, slips int) []map[string]string {
		var all [][]string
		for y := range years {
			for n := range each {
				all = append(all, []string{"recordedBy", "T. Brandão", "recordNumber", fmt.Sprint(n + 1), "eventDate", fmt.Sprintf("%d-05-%02d", 2020+y, n+1)})
			}
		}
		for n := range 40 {
			all = append(all, []string{"recordedBy", "I. Almeida", "recordNumber", fmt.Sprint(300 + n), "eventDate", fmt.Sprintf("2025-05-%02d", 1+n/2)})
		}
		for n := range slips {
			all = append(all, []string{"recordedBy", "I. Almeida", "recordNumber", fmt.Sprint(300 + n), "eventDate", "2026-05-21"})
		}
		return rows(all...)
	}
	for _, c := range []struct {
		name                string
		years, each, slips  int
		anew, single, cells int // findings of either kind; cells that the first names besides
	}{
		{"three years", 3, 20, 1, 1, 1, 3*20 - 1},
		{"three years, told as rows", 3, 4, 0, 0, 4, 0},
		{"slips are slips", 1, 20, 4, 0, 4, 0},
		{"one year", 1, 20, 0, 0, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, fs := run(t, open(t, table(c.years, c.each, c.slips)...), options(t))
			fs = slices.DeleteFunc(fs, func(f label.Finding) bool { return f.Rule != "number-twice" })
			anew, single := 0, 0
			for _, f := range fs {
				style(t, f)
				if !strings.Contains(f.Message, "anew every year") {
					single++
					continue
				}
				anew++
				t.Log(f)
				if !strings.Contains(f.Message, `20 numbers stand twice`) || !strings.Contains(f.Message, `"2021-1"`) {
					t.Errorf("says %s", f)
				}
				told := map[label.Cell]bool{{Row: f.Row, Term: "recordNumber"}: true}
				for _, cell := range f.Also {
					told[cell] = true
				}
				if len(told) != c.cells+1 {
					t.Errorf("names %d cells, want %d", len(told), c.cells+1)
				}
			}
			if anew != c.anew || single != c.single {
				t.Errorf("%d and %d findings, want %d and %d: %v", anew, single, c.anew, c.single, fs)
			}
		})
	}
}

// A number's two times are said as exactly as the dates are.
func TestNumberTwiceSaysWhen(t *testing.T) {
	for date, want := range map[string]string{
		"1906-03": "was collected in 1906-03, this on 2025-05-14", "1906": "was collected in 1906, this", "1906-03-04": "was collected on 1906-03-04, this",
		"1906-03-04/1906-03-06": "was collected from 1906-03-04 to 1906-03-06, this", "1904-02": "was collected in 1904-02, this",
	} {
		_, fs := run(t, open(t, rows([]string{"eventDate", date}, []string{"eventDate", "2025-05-14"})...), options(t))
		if !slices.ContainsFunc(fs, func(f label.Finding) bool { return f.Rule == "number-twice" && strings.Contains(f.Message, want) }) {
			t.Errorf("%s: %v, want %q", date, fs, want)
		}
	}
}

// TestDistanceOfDoubtedCoordinates: coordinates that are told to be wrong say of no number that
// it stands twice.
func TestDistanceOfDoubtedCoordinates(t *testing.T) {
	for _, c := range []struct {
		lat, lon string
		want     int
	}{{"0", "0", 0}, {"41.4123", "-8.2034", 1}} {
		_, fs := run(t, open(t, rows([]string{"stateProvince", "", "decimalLatitude", "40.3212", "decimalLongitude", "-7.6134"}, []string{"stateProvince", "", "decimalLatitude", c.lat, "decimalLongitude", c.lon})...), options(t))
		n := 0
		for _, f := range fs {
			if f.Rule == "number-twice" {
				n++
			}
		}
		if n != c.want {
			t.Errorf("%s, %s: %d findings, want %d: %v", c.lat, c.lon, n, c.want, fs)
		}
	}
}

// TestDistanceOfTheFirstPlaced: of several sheets of one number the first that has a place
// stands for all.
func TestDistanceOfTheFirstPlaced(t *testing.T) {
	at := func(lat, lon string) []string {
		return []string{"stateProvince", "", "decimalLatitude", lat, "decimalLongitude", lon}
	}
	_, fs := run(t, open(t, rows(at("", ""), at("40.3212", "-7.6134"), at("41.4123", "-8.2034"))...), options(t))
	said := ""
	for _, f := range fs {
		if f.Rule == "number-twice" {
			said += f.Message
		}
	}
	if strings.Count(said, "lies") != 1 || !strings.Contains(said, "record 2 too") {
		t.Errorf("%q", said)
	}
}
