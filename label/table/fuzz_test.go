package table

import (
	"bytes"
	"encoding/binary"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// fuzzOptions makes options of a byte, so that the fuzzer meets them all.
func fuzzOptions(k byte) Options {
	o := Options{Comma: []rune{0, ',', ';', '\t', '|', '¦'}[k%6], Literal: k&0x40 != 0, MaxCell: 300, MaxRow: 1000}
	if k&0x80 != 0 {
		o.Encoding = []string{"windows-1252", "utf-16le", "shift_jis", "gb18030", "macintosh", "utf-8"}[k%6]
	}
	return o
}

// FuzzTable reads any bytes as a table and holds the reading to what it
// promises: cells and what parts them rebuild the file, rows and places are in
// order, text is valid, two readings agree, and a table rewritten without
// edits, or with an edit and back, is the same.
func FuzzTable(f *testing.F) {
	for _, s := range []string{
		"", "a", "a,b\n1,2\n", "a;b\r\n\"1\r\n\";\"2\"\"\"\r\n", "\ufeffa\tb\r1\t\r\r", "sep=|\na|b\n|",
		"a,b\n\"1,2\n3,4", "a,b\n\"1\"x,2\n\"1\" ,2\n1\"\"2,\"\"\"\"\n", "a\n\n\n1", "a,b\nGer\xeas,GerÃªs\u0085\u2028\n",
		string(wideBytes("a,b\n\"1\",🌿\n", binary.BigEndian, true)), "\xff\xfea", "country,lat,alt\nPortugal,41,4000 ft\n",
		"a¦b\n1¦\xc2\n", strings.Repeat("x,", 600), strings.Repeat("\"x\n", 200), "日|ポ\n\x83|\x81",
		"Trip 1,,\n\ncountry,lat,long\n,dd,m\nPortugal,41,8\n# a\nPortugal,4\n1,8\nTotal,,2\ncountry,lat,long\n", "country,Lat (WGS84),Long W\nPortugal,41,8,\nPortugal,41,8,\n",
	} {
		for _, k := range []byte{0, 1, 4, 5, 0x41, 0x80, 0x81, 0x82, 0x83} {
			f.Add([]byte(s), k)
		}
	}
	f.Fuzz(func(t *testing.T, b []byte, k byte) {
		o := fuzzOptions(k)
		tb, err := Open(Bytes("t.csv", b), o)
		if err != nil {
			if strings.TrimSpace(err.Error()) == "" || !strings.HasPrefix(err.Error(), "t.csv") {
				t.Fatalf("error %q", err)
			}
			return
		}
		rows, failed := fuzzRows(t, tb, b)
		again, failedAgain := fuzzRows(t, tb, b)
		if len(rows) != len(again) || (failed == nil) != (failedAgain == nil) {
			t.Fatal("two readings differ")
		}
		if failed != nil {
			if e := (*Error)(nil); !errors.As(failed, &e) || e.Line == 0 {
				t.Fatalf("error %v", failed)
			}
			return
		}
		if len(tb.Columns()) > 0 && !o.Literal {
			if msg := unlikeCSVRows(tb, rows, b); msg != "" {
				t.Fatal(msg)
			}
		}
		fuzzRewrite(t, tb, rows, b)
	})
}

// fuzzRows reads all rows and checks them against the file.
func fuzzRows(t *testing.T, tb *Table, b []byte) (rows []*Row, err error) {
	p := tb.parts[0]
	comma, _ := p.charset.encode(string(tb.Comma()))
	end, line := int64(0), 1
	for r, err := range tb.Rows() {
		if err != nil {
			return rows, err
		}
		if r.N != len(rows)+1 || r.Line < line || len(r.Cells) == 0 {
			t.Fatalf("row %d at line %d after line %d", r.N, r.Line, line)
		}
		line = r.Line
		if end > 0 && strings.Trim(string(b[end:r.Cells[0].Start]), "\r\n\x00") != "" {
			t.Fatalf("%q lies between rows", b[end:r.Cells[0].Start])
		}
		for i, c := range r.Cells {
			if !utf8.ValidString(c.Text) {
				t.Fatalf("text %q", c.Text)
			}
			if c.Line == 0 && i >= tb.width {
				continue // what a heading says of every record
			}
			if padded := i > 0 && c.Start == r.end && c.End == r.end && r.Cells[i-1].End == r.end; i > 0 && !padded && r.Cells[i-1].Line > 0 && !bytes.Equal(b[r.Cells[i-1].End:c.Start], comma) {
				t.Fatalf("%q lies between cells", b[r.Cells[i-1].End:c.Start])
			}
			if c.Line < line || c.Column < 1 || c.Start > c.End {
				t.Fatalf("cell %+v after line %d", c, line)
			}
			line = c.Line
			if raw := b[c.Start:c.End]; !c.Quoted && !r.Aside && p.charset.scheme == plain && utf8.Valid(raw) && string(raw) != c.Text {
				t.Fatalf("cell %q of %q", c.Text, raw)
			}
		}
		end = r.end
		for _, f := range r.Findings {
			if f.Message == "" || f.Rule == "" || f.Row != r.N || f.Line < r.Line || f.Column < 1 || !utf8.ValidString(f.Suggest) {
				t.Fatalf("finding %+v", f)
			}
		}
		rows = append(rows, r)
	}
	if rest := strings.Trim(string(b[end:]), "\r\n\x00"); end > 0 && rest != "" {
		t.Fatalf("%q lies after the last row", rest)
	}
	if tb.Digest() == "" {
		t.Fatal("no digest after a whole reading")
	}
	return rows, nil
}

// unlikeCSVRows compares a table of UTF-8 with encoding/csv's reading of it.
func unlikeCSVRows(tb *Table, rows []*Row, b []byte) string {
	if tb.parts[0].charset.scheme != plain || tb.skip > 0 || tb.under > 0 || tb.mapped || slices.ContainsFunc(rows, func(r *Row) bool { return r.Aside }) || len(b) > 300 || !utf8.Valid(b) {
		return ""
	}
	return unlikeCSV(b, tb.Comma())
}

func fuzzRewrite(t *testing.T, tb *Table, rows []*Row, b []byte) {
	var out bytes.Buffer
	if err := Rewrite(&out, tb, nil); err != nil || !bytes.Equal(out.Bytes(), b) {
		t.Fatalf("rewritten with no edits: %v, %q", err, out.Bytes())
	}
	if len(rows) == 0 || len(rows[len(rows)-1].Cells) != tb.width || tb.skip > 0 {
		return
	}
	// An edit comes back as it was made, and other cells stay.
	last := rows[len(rows)-1]
	if last.Aside || last.padded > 0 {
		return
	}
	for _, text := range []string{"x", "x,;\t|\"", "x\r\n\"y"} {
		out.Reset()
		e := Edit{Row: last.N, Column: tb.width - 1, Text: text}
		if err := Rewrite(&out, tb, []Edit{e}); err != nil {
			if tb.o.Literal || strings.Contains(err.Error(), "nothing closes it: mend that cell") {
				continue
			}
			t.Fatal(err)
		}
		o := tb.o
		o.MaxCell, o.MaxRow, o.Encoding = 0, 0, tb.Encoding()
		back, err := Open(Bytes("t.csv", out.Bytes()), o)
		if err != nil {
			t.Fatal(err)
		}
		if back.skip != tb.skip || back.under != tb.under {
			return // the edit made a heading of what was none
		}
		var got *Row
		for r, err := range back.Rows() {
			if err != nil {
				t.Fatal(err)
			}
			got = r
		}
		if got != nil && got.Aside {
			return // or a remark
		}
		if got == nil || got.N != last.N || got.Cells[tb.width-1].Text != text {
			t.Fatalf("%q in %q came back as %+v of %q", text, b, got, out.Bytes())
		}
		if !bytes.HasPrefix(out.Bytes(), b[:last.Cells[tb.width-1].Start]) || !bytes.HasSuffix(out.Bytes(), b[last.Cells[tb.width-1].End:]) {
			t.Fatalf("other bytes changed: %q became %q", b, out.Bytes())
		}
	}
	out.Reset()
	if err := RewriteUTF8(&out, tb, nil); err == nil {
		if !utf8.Valid(out.Bytes()) {
			t.Fatalf("not UTF-8: %q", out.Bytes())
		}
	}
}

// FuzzArchive opens any bytes as a zip file, and any text as meta.xml with any
// text as its table.
func FuzzArchive(f *testing.F) {
	xml := meta(`<core encoding="UTF-8" fieldsTerminatedBy="\t" linesTerminatedBy="\n" fieldsEnclosedBy='"' ignoreHeaderLines="1" rowType="x"><files><location>c.txt</location></files><id index="0"/>`+
		metaOf(1, "country")+`<field index="2" term="y" default="z"/><field term="w" default="v"/></core>`,
		`<extension><files><location>c.txt</location></files><coreid index="1"/></extension>`)
	f.Add([]byte(xml), []byte("a\tb\n1\t2\n"), false)
	f.Add([]byte(meta(`<core linesTerminatedBy="|"><files><location>c.txt</location></files></core>`)), []byte("a,b|1,2|\n"), false)
	zipped, err := os.ReadFile(writeZip(f, map[string]string{"meta.xml": xml, "c.txt": "a\tb\n1\t2\n"}))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(zipped, []byte{}, true)
	dir := f.TempDir()
	f.Fuzz(func(t *testing.T, a, b []byte, zip bool) {
		path := filepath.Join(dir, "a.zip")
		if zip {
			os.WriteFile(path, a, 0o600)
		} else {
			path = filepath.Join(dir, "folder")
			os.MkdirAll(path, 0o700)
			os.WriteFile(filepath.Join(path, "meta.xml"), a, 0o600)
			os.WriteFile(filepath.Join(path, "c.txt"), b, 0o600)
		}
		d, err := OpenDataset(path, Options{MaxCell: 300, MaxRow: 1000})
		if err != nil {
			return
		}
		tables := []*Table{d.Core}
		for _, s := range d.Sides {
			tables = append(tables, s.Table)
		}
		for _, tb := range tables {
			for r, err := range tb.Rows() {
				if err != nil {
					break
				}
				for _, c := range tb.Columns() {
					if s := r.Get(c.Term).Text; !utf8.ValidString(s) {
						t.Fatalf("%s: %q", c.Term, s)
					}
					r.Origin(c.Term)
				}
			}
		}
	})
}

// FuzzDamage: text is repaired into valid text, once and for all, and text in
// one script's plain letters is left alone.
func FuzzDamage(f *testing.F) {
	for _, s := range []string{"GerÃªs", "ÃƒÂ©", "IRMÃ’S", "Ger√™s ¬∞", "Đà Nẵng", "\u0092\ufffe", "ãçéÔ", "Ñüä"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if !utf8.ValidString(s) {
			return
		}
		mended, _ := unmojibake(s, ^uint32(0))
		if !utf8.ValidString(mended) || utf8.RuneCountInString(mended) > utf8.RuneCountInString(s) {
			t.Fatalf("%q became %q", s, mended)
		}
		damage(s, func(r *Rule, suggest, message string) {
			if !utf8.ValidString(suggest) || message == "" {
				t.Fatalf("%q: %q %q", s, suggest, message)
			}
		})
		// What is misread is repaired to what it was, if it holds nothing but
		// letters whose bytes are no quotes or blanks.
		if s != "" && strings.Trim(s, "áâãçéêíóôõúñüöäÁÀÂÃÇÉÊÍÓÔÕÚÑÜÖÄ") == "" {
			// windows-1252 has no letter for five bytes, so ISO-8859-1 it is.
			misread, err := charmap.ISO8859_1.NewDecoder().String(s)
			if back, unread := unmojibake(misread, ^uint32(0)); err != nil || unread || back != s {
				t.Fatalf("%q read as %q came back as %q", s, misread, back)
			}
		}
	})
}
