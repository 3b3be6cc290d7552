package table

import (
	"fmt"
	"strings"
	"testing"

	"cornerslip/label"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/simplifiedchinese"
)

func encoded(t testing.TB, e encoding.Encoding, s string) string {
	t.Helper()
	b, err := e.NewEncoder().String(s)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

const german = "Nr.;Sammler;Fundort;Höhe (m);Länge;Breite;Bemerkungen\n" +
	"1;J. Möhring;Göttingen, Kerstlingeröder Feld;350;9,98;51,52;Blüten weiß\n" +
	"2;J. Möhring;Lübeck, Wakenitz;4;10,71;53,83;häufig\n" +
	"3;J. Möhring;Hamburg;4;10,01;53,53;\n"

// A table in one legacy encoding has one error, in its first line, and is read
// as it is meant: no heading is unknown, and no row has a fault.
func TestWholeTableFound(t *testing.T) {
	const spanish = "número\tcolector\tpaís\tprovincia\tlocalidad\taltitud (m)\thábitat\n" +
		"1\tC. Peñalver\tEspaña\tÁvila\tÍd., vertiente S\t1352\trupícola\n" +
		"2\tC. Peñalver\tEspaña\tCádiz\tGrazalema\t1250\t¿plantado?\n"
	// What is quoted ends in “ there, and the ² of squares is an accent on nothing in windows-1250.
	const quoted = "Nr.;Sammler;Fundort;Höhe (m);Standort\n" +
		"1;J. Möhring;Göttingen, bei den „Öfen“;350;Fläche 4 m²\n" +
		"2;J. Möhring;Göttingen, „Steinpflaster“;340;Gräben\n" +
		"3;J. Möhring;Lübeck, »Pfützen«;4;Blüten weiß\n" +
		"4;J. Möhring;Hamburg, „Kanälen“;4;häufig\n"
	const japaneseTable = "採集番号,採集者,採集年月日,和名,学名,国,産地\n1,谷口すみれ,2011-05-03,ヤマザクラ,Prunus jamasakura,日本,筑波山の林道沿い\n2,谷口すみれ,2011-05-04,タチツボスミレ,Viola grypoceras,日本,高尾山の谷\n"
	const chinese = "采集号,采集人,国家,县,地点,海拔,生境\n1,欧阳静,中国,木里县,康坞牧场北坡,3400,针叶林下\n2,欧阳静,中国,勐腊县,望天树附近,700,季雨林沟边\n"
	for _, c := range []struct {
		name, text, found string
		e                 encoding.Encoding
		o                 Options
	}{
		{"German, Windows", german, "windows-1252", charmap.Windows1252, Options{}},
		{"German, Windows, sep=", "sep=;\r\n" + strings.ReplaceAll(german, "\n", "\r\n"), "windows-1252", charmap.Windows1252, Options{}},
		{"German, quoted, Windows", quoted, "windows-1252", charmap.Windows1252, Options{}},
		{"German, DOS", german, "IBM850", charmap.CodePage850, Options{}},
		{"Spanish, Mac", strings.ReplaceAll(spanish, "\n", "\r"), "macintosh", charmap.Macintosh, Options{}},
		{"Spanish, DOS", spanish, "IBM850", charmap.CodePage850, Options{}},
		{"Japanese", japaneseTable, "Shift_JIS", japanese.ShiftJIS, Options{}},
		{"Japanese, pipes", strings.ReplaceAll(japaneseTable, ",", "|"), "Shift_JIS", japanese.ShiftJIS, Options{}},
		{"Chinese", chinese, "GB18030", simplifiedchinese.GBK, Options{}},
	} {
		src := encoded(t, c.e, c.text)
		tab, rows := readAll(t, src, c.o)
		want, wantRows := readAll(t, c.text, Options{})
		if tab.Found() != c.found || tab.Encoding() != c.found || want.Found() != "" {
			t.Errorf("%s: found %q, read as %q", c.name, tab.Found(), tab.Encoding())
			continue
		}
		f := tab.Findings()
		if len(f) == 0 || f[0].Rule != "text-encoding" || f[0].Severity != label.Error || f[0].Line != 1 || f[0].Row != 0 || f[0].Term != "" ||
			!strings.Contains(f[0].Message, "cells hold other bytes, and all make sense as "+strings.ToLower(c.found)+" (") ||
			!strings.Contains(f[0].Message, "say --encoding "+strings.ToLower(c.found)+",") {
			t.Errorf("%s: %v", c.name, f)
		}
		if got, w := fmt.Sprint(said(f[1:])), fmt.Sprint(said(want.Findings())); got != w {
			t.Errorf("%s: headings %v, in UTF-8 %v", c.name, got, w)
		}
		if len(rows) != len(wantRows) {
			t.Fatalf("%s: %d rows", c.name, len(rows))
		}
		for i := range rows {
			if len(rows[i].Findings) > 0 || fmt.Sprint(texts(rows[i].Cells)) != fmt.Sprint(texts(wantRows[i].Cells)) {
				t.Errorf("%s: %q %v", c.name, texts(rows[i].Cells), rows[i].Findings)
			}
		}
		// What the user says outranks what is found.
		if tab, _ := readAll(t, src, Options{Encoding: c.found}); tab.Found() != "" || len(tab.Findings()) != len(want.Findings()) {
			t.Errorf("%s: told, and yet found %q: %v", c.name, tab.Found(), tab.Findings())
		}
		if tab, _ := readAll(t, src, Options{Encoding: "utf-8"}); tab.Found() != "" || tab.Encoding() != "UTF-8" {
			t.Errorf("%s: told to be UTF-8, and yet found %q", c.name, tab.Found())
		}
	}
}

// The count of cells and the samples are those of the table.
func TestFoundSays(t *testing.T) {
	tab, _ := readAll(t, encoded(t, charmap.Windows1252, german), Options{})
	want := `the table is not UTF-8: 9 cells hold other bytes, and all make sense as windows-1252 ("H` + "\ufffd" + `he (m)" is "Höhe (m)", "L` + "\ufffd" + `nge" is "Länge", "J. M` + "\ufffd" + `hring" is "J. Möhring"); ` +
		`this check reads it so, but nothing is printed until it is certain: say --encoding windows-1252, or save the table as UTF-8`
	if got := tab.Findings()[0].Message; got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	// × is a byte of its own only on page 850: two pages are in question.
	tab, _ = readAll(t, encoded(t, charmap.CodePage850, "collector,locality,scientificName\nJ. Möhring,Lübeck,Salix × rubens\nJ. Möhring,Göttingen,Salix alba\nK. Bähr,Höxter,Salix × rubens\n"), Options{})
	if f := tab.Findings()[0]; !strings.Contains(f.Message, `which may be ibm850 or ibm437`) || !strings.Contains(f.Message, `"Salix × rubens" or "Salix ₧ rubens"`) || tab.Found() != "IBM850" {
		t.Errorf("%v", f)
	}
}

// TestFoundByAccentsOfHeadings: a heading has the accents of its language.
func TestFoundByAccentsOfHeadings(t *testing.T) {
	src := "N. campione;Località;Leg.;Taxon\n1;Val Venzonassa;P. Tomè;Dryas octopetala L.\n2;Passo Giau;P. Tomè;Potentilla nitida L.\n3;Nuvolau;P. Tomè;Nigritella nigra (L.) Rchb.f.\n4;Giau;P. Tomè;Dryas octopetala L.\n5;Giau;P. Tomè;Rhododendron hirsutum L.\n6;Pelmo;P. Tomè;Silene acaulis (L.) Jacq.\n"
	tab, _ := readAll(t, encoded(t, charmap.Windows1252, src), Options{})
	if f := tab.Findings()[0]; tab.Found() != "windows-1252" || strings.Contains(f.Message, "which may be") {
		t.Errorf("%s: %v", tab.Found(), f)
	}
}

// What tells two encodings apart may stand in long cells alone, and not in the first.
func TestFoundInLongCells(t *testing.T) {
	tab, _ := readAll(t, encoded(t, charmap.Windows1252, "recordNumber,scientificName\n1,Eleusine coracana subsp. africana (Kennedy-O’Byrne) Hilu & de Wet\n2,Arabidopsis arenosa (L.) Lawalrée subsp. arenosa\n"+
		"3,Cotoneaster ascendens Flinck & B. Hylmö\n4,Setaria parviflora (Poiret) Kerguélen\n"), Options{})
	if f := tab.Findings()[0]; strings.Contains(f.Message, "()") || !strings.Contains(f.Message, "Hylmö") {
		t.Errorf("%v", f)
	}
}

// A table in more than one encoding is judged cell by cell, each with the
// encoding that fits it and its neighbours; headings are known by what they
// were, so that rows have no faults that follow from it.
func TestMixedTable(t *testing.T) {
	utf8Rows := "número;colector;país;provincia;localidad;hábitat;observaciones\n"
	for i, place := range []string{"Ávila", "Cáceres", "Málaga", "León", "Córdoba", "Jaén", "Cádiz", "Almería"} {
		utf8Rows += fmt.Sprintf("%d;C. Peñalver;España;%s;Peña Águila;encinar sombrío;árbol pequeño\n", i, place)
	}
	t.Run("stray cells", func(t *testing.T) {
		src := utf8Rows + encoded(t, charmap.Windows1252, "9;C. Peñalver;España;Ávila;;;\n") + "10;;;Ávila;;;\n"
		tab, rows := readAll(t, src, Options{})
		if tab.Found() != "" || len(tab.Findings()) != 0 {
			t.Errorf("found %q: %v", tab.Found(), tab.Findings())
		}
		var suggested []string
		for _, r := range rows {
			for _, f := range r.Findings {
				if f.Rule != "text-encoding" || r.N != 9 || !strings.Contains(f.Message, "not UTF-8, though the rest of the table is (windows-1252 would fit this cell)") {
					t.Errorf("%v", f)
				}
				suggested = append(suggested, f.Suggest)
			}
		}
		if got := strings.Join(suggested, "|"); got != "C. Peñalver|España|Ávila" {
			t.Errorf("suggested %s", got)
		}
	})
	t.Run("a damaged heading", func(t *testing.T) {
		for _, heading := range []string{"a\xf1o", "pa\xeds", "pa\x92s"} {
			src := strings.Replace(utf8Rows, "país", heading, 1)
			tab, _ := readAll(t, src, Options{})
			f := tab.Findings()
			if n := tab.Index("country"); heading != "a\xf1o" && n != 2 {
				t.Errorf("%q: column %d", heading, n)
			}
			if len(f) != 1 || f[0].Rule != "text-encoding" || f[0].Column == 0 {
				t.Errorf("%q: %v", heading, f)
			}
		}
	})
	t.Run("two encodings pasted together", func(t *testing.T) {
		var src strings.Builder
		src.WriteString("no,collector,country,stateProvince,locality\n")
		lines := []string{"C. Peñalver,España,Ávila,Peña Águila", "C. Peñalver,España,Málaga,Íd.", "R. Núñez,España,Córdoba,Añora", "R. Núñez,España,Jaén,Úbeda"}
		for i, l := range lines {
			src.WriteString(encoded(t, charmap.Windows1252, fmt.Sprintf("%d,%s\n", i, l)))
		}
		for i, l := range lines {
			src.WriteString(encoded(t, charmap.Macintosh, fmt.Sprintf("%d,%s\n", 10+i, l)))
		}
		tab, rows := readAll(t, src.String(), Options{})
		if tab.Found() != "" {
			t.Errorf("found %q", tab.Found())
		}
		for i, r := range rows {
			fit, want := "windows-1252", strings.Split(lines[i%4], ",")
			if i >= 4 {
				fit = "macintosh"
			}
			var all []string
			for _, f := range r.Findings {
				if f.Rule != "text-encoding" || !strings.Contains(f.Message, fit+" would fit") {
					t.Errorf("row %d: %v", r.N, f)
				}
				all = append(all, f.Suggest)
			}
			for _, w := range want {
				if strings.IndexFunc(w, func(r rune) bool { return r >= 0x80 }) < 0 {
					continue
				}
				if len(all) == 0 || all[0] != w {
					t.Errorf("row %d: %q, want %q", r.N, all, w)
					break
				}
				all = all[1:]
			}
		}
	})
	t.Run("an archive that says UTF-8 and is not", func(t *testing.T) {
		src := encoded(t, charmap.Windows1252, german)
		tab := &Table{o: Options{Encoding: "UTF-8", supposed: true, Comma: ';', Quote: '"', MaxCell: defaultMaxCell, MaxRow: defaultMaxRow}}
		if err := tab.addPart(Bytes("t.csv", []byte(src))); err != nil || tab.Found() != "windows-1252" {
			t.Errorf("found %q, %v", tab.Found(), err)
		}
	})
}

// What is not UTF-8 is found wherever it is, and a file without line ends is
// not read to its end for it.
func TestIsUTF8(t *testing.T) {
	for _, c := range []struct {
		text string
		want bool
	}{
		{"", true}, {"a", true}, {"ä", true}, {"\xe4", false}, {"ä\xc3", false},
		{strings.Repeat("a", readSize-1) + "ä\n", true},
		{strings.Repeat("a", readSize-1) + "\xe4\n", false},
		{strings.Repeat("桜\n", 3*readSize), true},
		{strings.Repeat("桜\n", 3*readSize) + "\xe6\xa1", false},
		{strings.Repeat("a", 4*readSize) + "\xe4", true}, // beyond the longest row
	} {
		if got := isUTF8(strings.NewReader(c.text), 2*readSize); got != c.want {
			t.Errorf("%d bytes, %.20q: %v", len(c.text), c.text, got)
		}
	}
}

// FuzzDetect holds that no file breaks the survey, and that what is found for
// sure has nothing in it that cannot be read.
func FuzzDetect(f *testing.F) {
	f.Add([]byte(german))
	f.Add([]byte(encoded(f, charmap.Windows1252, german)))
	f.Add([]byte(encoded(f, japanese.ShiftJIS, "採集番号\n採集者\n谷口すみれ\n")))
	f.Fuzz(func(t *testing.T, b []byte) {
		if isUTF8(strings.NewReader(string(b)), defaultMaxRow) {
			return
		}
		v := detect(surveyOf(strings.NewReader(string(b)), defaultMaxRow))
		if v.whole && v.all {
			for _, r := range v.best.decode(string(b), true) {
				if r == '\ufffd' && v.best.scheme == single {
					t.Fatalf("%s reads %q with holes", v.best.name, b)
				}
			}
		}
		v.fits(string(b), nil)
	})
}

// A name that the file belies: UTF-8 is read as what it is, but not printed;
// another encoding that makes more sense is named, and the user's word holds.
func TestNamedWrongly(t *testing.T) {
	tab, rows := readAll(t, german, Options{Encoding: "windows-1252"})
	f := tab.Findings()
	if tab.Found() != "UTF-8" || len(f) != 1 || f[0].Rule != "text-encoding" || f[0].Severity != label.Error || !strings.HasPrefix(f[0].Message, "the table is UTF-8 and not windows-1252, which was named:") {
		t.Errorf("found %q: %v", tab.Found(), f)
	}
	for _, r := range rows {
		if len(r.Findings) > 0 {
			t.Errorf("%v", r.Findings)
		}
	}
	tab, _ = readAll(t, encoded(t, charmap.Macintosh, german), Options{Encoding: "windows-1252"})
	f = tab.Findings()
	if tab.Found() != "" || tab.Encoding() != "windows-1252" || len(f) == 0 || f[0].Rule != "table-encoding" || f[0].Severity != label.Warning ||
		!strings.Contains(f[0].Message, `though the words make sense as macintosh ("HÅ¡he" would be "Höhe")`) && !strings.Contains(f[0].Message, "macintosh (\"Hšhe\" would be \"Höhe\")") {
		t.Errorf("found %q: %v", tab.Found(), f)
	}
	for _, c := range []struct {
		e    *charmap.Charmap
		name string
	}{{charmap.Windows1252, "windows-1252"}, {charmap.Windows1252, "latin1"}, {charmap.ISO8859_15, "iso-8859-15"}, {charmap.CodePage850, "ibm850"}, {charmap.Macintosh, "macintosh"}} {
		if tab, _ := readAll(t, encoded(t, c.e, german), Options{Encoding: c.name}); tab.Found() != "" || len(tab.Findings()) != 0 {
			t.Errorf("%s: %v", c.name, tab.Findings())
		}
	}
}
