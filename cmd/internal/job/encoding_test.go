package job

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"

	"golang.org/x/text/encoding/charmap"

	"cornerslip/label"
	"cornerslip/label/table"
)

// legacyTrip is a table in Windows-1252 with a bad date in its last record.
func legacyTrip(t *testing.T) (legacy []byte, utf8 string) {
	utf8 = "número,coletor,data,país,província,localidade,latitude,longitude,espécie\n" +
		"1,I. Simões,2026-06-02,Portugal,Braga,\"Serra do Gerês, São Bento\",41.7157,-8.1502,Erica arborea L.\n" +
		"2,I. Simões,2026-06-02,Portugal,Braga,\"Gerês, Leonte \",41.7661,-8.1478,Betula pubescens Ehrh.\n" +
		"3,I. Almeida,2026-06-03,Portugal,Braga,Lindoso ,41.8667,-8.2000,Salix alba L.\n" +
		"4,I. Simões,2026-06-37,Portugal,Bragança,Montesinho,41.9500,-6.7667,Salix alba L.\n"
	b, err := charmap.Windows1252.NewEncoder().String(utf8)
	if err != nil {
		t.Fatal(err)
	}
	return []byte(b), utf8
}

func legacyTable(t *testing.T, src []byte, o table.Options) *Table {
	tab, err := table.Open(table.Bytes("trip.csv", src), o)
	if err != nil {
		t.Fatal(err)
	}
	return &Table{Table: tab}
}

// A table whose encoding was found has one finding more than the same table in
// UTF-8, an error; all others are the same. Nothing of it is printed, listed or
// numbered until the encoding is named, whatever the house says of the rule, and
// mend leaves alone what is not certain.
func TestFoundEncoding(t *testing.T) {
	src, plain := legacyTrip(t)
	j := benchJob(t, false)
	check := func(tab *Table) (found []string) {
		s, err := j.Check(tab, func(f label.Finding) error {
			if f.Rule == textEncoding {
				found = append(found, "encoding")
				return nil
			}
			found = append(found, f.String())
			return nil
		})
		if err != nil || s.Refused != (tab.Found() != "") {
			t.Fatal(s.Refused, err)
		}
		return found
	}
	want := check(legacyTable(t, []byte(plain), table.Options{}))
	if got := check(legacyTable(t, src, table.Options{})); strings.Join(got, "\n") != strings.Join(append([]string{"encoding"}, want...), "\n") {
		t.Errorf("%s\nwant one error more than\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if got := check(legacyTable(t, src, table.Options{Encoding: "windows-1252"})); strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("named: %s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}

	j.House.Check.Severity = map[string]string{textEncoding: "off"}
	if got := check(legacyTable(t, src, table.Options{})); len(got) == 0 || got[0] != "encoding" {
		t.Errorf("silenced: %v", got)
	}
	print := func(o table.Options, kind label.Kind) (Summary, error) {
		s, _, err := j.Print(legacyTable(t, src, o), Request{Kind: kind, ExceptBad: true}, func(label.Finding) error { return nil },
			func(pages func(io.Writer) error) error { return pages(io.Discard) })
		return s, err
	}
	for _, kind := range []label.Kind{label.Sheet, label.Packet, label.Tag, label.Slip} {
		if s, err := print(table.Options{}, kind); !errors.Is(err, ErrData) || !s.Refused {
			t.Errorf("%v printed in an encoding that nobody named: %v", kind, err)
		}
	}
	if s, err := print(table.Options{Encoding: "windows-1252"}, label.Sheet); err != nil || len(s.Bad) != 1 {
		t.Errorf("not printed though the encoding is named: %v", err)
	}
	for _, q := range []ListRequest{{Format: "csv", ExceptBad: true}, {Format: "csv", Gifts: true, ExceptBad: true}} {
		_, _, err := j.List(legacyTable(t, src, table.Options{}), q, func(label.Finding) error { return nil },
			func(pages func(io.Writer) error) error { return pages(io.Discard) })
		if !errors.Is(err, ErrData) {
			t.Errorf("listed in an encoding that nobody named: %v", err)
		}
	}

	mend := func(o table.Options, toUTF8 bool) (string, error) {
		tab := legacyTable(t, src, o)
		m, err := j.Repairs(tab, func(Repair) error { return nil })
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		err = j.Mend(&out, tab, m.Edits, toUTF8)
		return out.String(), err
	}
	if got, err := mend(table.Options{}, false); err != nil || got != strings.Replace(string(src), "Lindoso ,", "Lindoso,", 1) {
		t.Errorf("mended %q, %v", got, err)
	}
	if _, err := mend(table.Options{}, true); err == nil || !strings.Contains(err.Error(), "name it before") {
		t.Errorf("written as UTF-8 from an encoding that nobody named: %v", err)
	}
	if got, err := mend(table.Options{Encoding: "windows-1252"}, true); err != nil || got != strings.NewReplacer("Lindoso ,", "Lindoso,", `Leonte "`, `Leonte"`).Replace(plain) {
		t.Errorf("mended %q, %v", got, err)
	}
}
