package table

import (
	"bytes"
	"encoding/binary"
	"strings"
	"testing"
	"unicode/utf16"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/simplifiedchinese"
	"golang.org/x/text/encoding/traditionalchinese"
)

func wideBytes(s string, order binary.AppendByteOrder, mark bool) []byte {
	var b []byte
	if mark {
		b = order.AppendUint16(b, 0xFEFF)
	}
	for _, u := range utf16.Encode([]rune(s)) {
		b = order.AppendUint16(b, u)
	}
	return b
}

func TestEncodings(t *testing.T) {
	const latin = "country,locality\r\nPortugal,\"Gerês, Pedra Bela\nçãõ ½\"\r\nPortugal,x\r\n"
	const wild = "country,locality\nPortugal,Gerês 🌿 桜|\n中國,臺北\n"
	enc := func(c interface{ Bytes([]byte) ([]byte, error) }, s string) []byte {
		b, err := c.Bytes([]byte(s))
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	for _, c := range []struct {
		name, told string
		b          []byte
		text       string
		want       string // the encoding found
		say        string
	}{
		{"UTF-8", "", []byte(wild), wild, "UTF-8", ""},
		{"UTF-8 with mark", "", []byte("\ufeff" + wild), wild, "UTF-8", ""},
		{"UTF-16LE with mark", "", wideBytes(wild, binary.LittleEndian, true), wild, "UTF-16LE", "table-encoding note"},
		{"UTF-16BE with mark", "", wideBytes(wild, binary.BigEndian, true), wild, "UTF-16BE", "table-encoding note"},
		{"UTF-16LE without mark", "", wideBytes(latin, binary.LittleEndian, false), latin, "UTF-16LE", "table-encoding warning"},
		{"UTF-16BE without mark", "", wideBytes(latin, binary.BigEndian, false), latin, "UTF-16BE", "table-encoding warning"},
		{"UTF-16LE told", "utf-16le", wideBytes(wild, binary.LittleEndian, false), wild, "UTF-16LE", ""},
		{"UTF-16 told, the mark decides the order", "UTF-16", wideBytes(latin, binary.LittleEndian, true), latin, "UTF-16LE", "table-encoding warning"},
		{"UTF-32LE with mark", "", []byte("\xff\xfe\x00\x00c\x00\x00\x00o\x00\x00\x00u\x00\x00\x00n\x00\x00\x00t\x00\x00\x00r\x00\x00\x00y\x00\x00\x00\n\x00\x00\x00\x3f\xf3\x01\x00"), "country\n🌿", "UTF-32LE", "table-encoding note"},
		{"Windows-1252", "Windows-1252", enc(charmap.Windows1252.NewEncoder(), latin), latin, "windows-1252", ""},
		{"cp1252", "cp1252", enc(charmap.Windows1252.NewEncoder(), latin), latin, "windows-1252", ""},
		{"ISO-8859-1", "latin1", enc(charmap.ISO8859_1.NewEncoder(), latin), latin, "ISO-8859-1", ""},
		{"ISO-8859-2", "iso-8859-2", enc(charmap.ISO8859_2.NewEncoder(), "country,locality\nČesko,Brdy\n"), "country,locality\nČesko,Brdy\n", "ISO-8859-2", ""},
		{"ISO-8859-15", "ISO_8859-15", enc(charmap.ISO8859_15.NewEncoder(), "country\n€ Œ\n"), "country\n€ Œ\n", "ISO-8859-15", ""},
		{"Mac Roman", "Mac Roman", enc(charmap.Macintosh.NewEncoder(), "country,locality\rPortugal,Gerês\r"), "country,locality\rPortugal,Gerês\r", "macintosh", ""},
		{"DOS", "cp850", enc(charmap.CodePage850.NewEncoder(), latin), latin, "IBM850", ""},
		// Second bytes of Shift JIS and GBK can be | and other ASCII letters.
		{"Shift JIS", "shift_jis", enc(japanese.ShiftJIS.NewEncoder(), "country|locality\n日本|ポ型\n"), "country|locality\n日本|ポ型\n", "Shift_JIS", ""},
		{"GB18030", "gb18030", enc(simplifiedchinese.GB18030.NewEncoder(), "country|locality\n中国|亅亇é\n"), "country|locality\n中国|亅亇é\n", "GB18030", ""},
		{"Big5", "big5", enc(traditionalchinese.Big5.NewEncoder(), "country,locality\n中國,臺北功\n"), "country,locality\n中國,臺北功\n", "Big5", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, want := readAll(t, c.text, Options{})
			tb, got := readAll(t, string(c.b), Options{Encoding: c.told})
			if tb.Encoding() != c.want {
				t.Errorf("read as %s", tb.Encoding())
			}
			if s := strings.Join(said(tb.Findings()), ","); s != c.say {
				t.Errorf("findings %q, want %q", s, c.say)
			}
			if len(got) != len(want) {
				t.Fatalf("%d rows, want %d", len(got), len(want))
			}
			cs := tb.parts[0].charset
			for i := range want {
				if len(got[i].Findings) > 0 || len(got[i].Cells) != len(want[i].Cells) {
					t.Fatalf("row %d: %q %v", i+1, texts(got[i].Cells), got[i].Findings)
				}
				for j, w := range want[i].Cells {
					g := got[i].Cells[j]
					if g.Text != w.Text || g.Line != w.Line || g.Column != w.Column {
						t.Errorf("row %d, cell %d: %+v, want %+v", i+1, j+1, g, w)
					}
					if b, _ := cs.encode(c.text[w.Start:w.End]); !bytes.Equal(b, c.b[g.Start:g.End]) {
						t.Errorf("row %d, cell %d: bytes % X, want % X", i+1, j+1, c.b[g.Start:g.End], b)
					}
				}
			}
		})
	}
	for _, name := range []string{"klingon", "utf-7", "iso-2022-jp", "hz-gb-2312", "replacement"} {
		if _, err := Open(Bytes("t.csv", []byte(latin)), Options{Encoding: name}); err == nil || !strings.Contains(err.Error(), "t.csv: ") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestNoText(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"PK\x03\x04\x14", "a spreadsheet or a zip file"},
		{"\xd0\xcf\x11\xe0\xa1\xb1", "an old office program"},
		{"%PDF-1.7\n", "a PDF file"},
	} {
		if _, err := Open(Bytes("t.csv", []byte(c.in)), Options{}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v", c.in, err)
		}
	}
}

// TestDamage lists damaged texts, and texts that only look so. Expected
// repairs of mojibake follow from the encodings' tables.
func TestDamage(t *testing.T) {
	for _, c := range []struct{ in, rule, suggest string }{
		// UTF-8 read as windows-1252.
		{"GerÃªs", "text-mojibake", "Gerês"},
		{"SÃ£o JoÃ£o da Ribeira", "text-mojibake", "São João da Ribeira"},
		{"41Â°42â€²N", "text-mojibake", "41°42′N"},
		{"DonaÃ¯ana â€“ Coto", "text-mojibake", "Donaïana – Coto"},
		{"lâ€™Ã‰tang", "text-mojibake", "l’Étang"},
		{"margem Ã\u00a0 direita", "text-mojibake", "margem à direita"},
		{"100Â\u00a0m", "text-mojibake", "100\u00a0m"},
		{"cÅ“ur", "text-mojibake", "cœur"},
		{"Å\u00a0tefan ÄŒern\u00fd", "text-mojibake", "Štefan Čern\u00fd"},
		{"ÃƒÂ©tang", "text-mojibake", "étang"},
		{"10 Î¼m", "text-mojibake", "10 μm"},
		{"Ã\u0089vora", "text-mojibake", "Évora"}, // as ISO-8859-1
		// Read as Mac Roman and as a DOS page.
		{"Ger√™s", "text-mojibake", "Gerês"},
		{"S√£o Jo√£o, 41¬∞N", "text-mojibake", "São João, 41°N"},
		{"Ger├¬s", "text-mojibake", "Gerês"},
		// No mojibake: words of these languages, quotes, hybrids, French and
		// Portuguese capitals, symbols.
		{"IRMÃ’S", "", ""},
		{"A IRMÃ\u00a0DE", "", ""},
		{"5 Å\u00a0e mais", "", ""},
		{"“MAÇÔ e «FERMÉ »", "", ""},
		{"Camellia ×‘Cornish Snow’", "", ""},
		{"Rosa ×½", "", ""},
		{"il était fermé…”", "", ""},
		{"à » là", "", ""},
		{"Spaß“", "", ""},
		{"Úštěk", "", ""}, {"Úžlabina pod skalou", "", ""},
		{"1 200 m ± 50 m, c. ½ km, √2, ¬p", "", ""},
		{"São Tomé e Príncipe; Ürümqi; Łódź; Đà Nẵng", "", ""},
		{"Ångström Ä Ö Ü ß é è ñ ¿Qué? ª º", "", ""},
		{"Ελλάδα, Россия, 臺北, 대한민국, ירושלים", "", ""},
		{"Nº 3, 5ª, 12°C", "", ""},
		// Lost, invisible and private characters.
		{"Ger\ufffds", "text-replacement", ""},
		{"Ger\u00eas\u0000", "text-control", "Gerês"},
		{"l\u0092étang", "text-control", "l’étang"},
		{"a\uffffb", "text-control", "ab"},
		{"a\u007fb", "text-control", "ab"},
		{"41\uf0b0", "text-private", ""},
		{"a\U000F0001b", "text-private", ""},
		{"Lin\u00addoso", "text-invisible", "Lindoso"},
		{"\u200bLindoso\ufeff", "text-invisible", "Lindoso"},
		{"می\u200cخواهم", "", ""}, // the non-joiner is a letter's shape in Persian
	} {
		_, rows := readAll(t, "country,locality\nPortugal,\""+c.in+"\"\n", Options{})
		var rule, suggest string
		for _, f := range rows[0].Findings {
			rule += f.Rule
			suggest += f.Suggest
			if f.Origin.String() != "t.csv:2:10" || f.Term != "locality" || f.Row != 1 || f.Value != c.in {
				t.Errorf("%q: %+v", c.in, f)
			}
		}
		if rule != c.rule || suggest != c.suggest {
			t.Errorf("%q: %s %q, want %s %q", c.in, rule, suggest, c.rule, c.suggest)
		}
		if rows[0].Cells[1].Text != c.in {
			t.Errorf("%q became %q", c.in, rows[0].Cells[1].Text)
		}
	}
}

func TestUndecodable(t *testing.T) {
	enc := func(c *charmap.Charmap, s string) string {
		b, err := c.NewEncoder().String(s)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	// Not UTF-8, and nobody said what: named, and the likely reading offered.
	for _, c := range []struct {
		page *charmap.Charmap
		text string
		name string
	}{
		{charmap.Windows1252, "Serra do Gerês", "windows-1252"},
		{charmap.Windows1252, "41°42’N, São João – Évora", "windows-1252"},
		{charmap.Macintosh, "Serra do Gerês", "macintosh"},
		{charmap.Macintosh, "41° N, São João", "macintosh"},
		{charmap.CodePage850, "São João", "ibm850"},
	} {
		_, rows := readAll(t, "country,locality\nPortugal,\""+enc(c.page, c.text)+"\"\n", Options{})
		f := rows[0].Findings
		if len(f) != 1 || f[0].Rule != "text-encoding" || f[0].Suggest != c.text || !strings.Contains(f[0].Message, c.name+" would fit") {
			t.Errorf("%s: %+v", c.text, f)
		}
		if text := rows[0].Cells[1].Text; !strings.Contains(text, "\ufffd") {
			t.Errorf("%q shows no sign of what is lost", text)
		}
	}
	// Good UTF-8 beside bad.
	_, rows := readAll(t, "country,locality\nPortugal,Gerês Ger\xeas\n", Options{})
	if f := rows[0].Findings; len(f) != 1 || f[0].Suggest != "Gerês Gerês" {
		t.Errorf("%+v", f)
	}
	// Told, but wrong.
	_, rows = readAll(t, "country,locality\nPortugal,Ger\x81s\n", Options{Encoding: "windows-1252"})
	if f := rows[0].Findings; len(f) != 1 || f[0].Rule != "text-encoding" || !strings.Contains(f[0].Message, "windows-1252") {
		t.Errorf("%+v", f)
	}
	// Half a pair, and half a unit, in UTF-16.
	b := append(wideBytes("country\nx", binary.LittleEndian, true), 0x00, 0xD8, 'y', 0, 'z')
	_, rows = readAll(t, string(b), Options{})
	if f := rows[0].Findings; len(f) != 1 || rows[0].Cells[0].Text != "x\ufffdy\ufffd" || rows[0].Cells[0].End != int64(len(b)) {
		t.Errorf("%+v %+v", f, rows[0].Cells)
	}
}

// Several bytes that are not UTF-8 are named in a whole sentence.
func TestBytesNotUTF8(t *testing.T) {
	tab, err := Open(Bytes("t.csv", []byte("a,b\n\xfcber \xf6rt,1\n")), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		if len(row.Findings) != 1 || !strings.HasPrefix(row.Findings[0].Message, "the bytes FC F6 are not UTF-8: ") {
			t.Errorf("%v", row.Findings)
		}
	}
}
