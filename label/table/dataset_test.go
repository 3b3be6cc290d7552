package table

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label"
)

// writeFolder writes files into a folder of the test.
func writeFolder(t testing.TB, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		os.MkdirAll(filepath.Dir(path), 0o700)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// writeZip packs files.
func writeZip(t testing.TB, files map[string]string) string {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, name := range slices.Sorted(maps.Keys(files)) {
		w, err := z.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		io.WriteString(w, files[name])
	}
	z.Close()
	path := filepath.Join(t.TempDir(), "a.zip")
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func meta(core string, extensions ...string) string {
	return `<?xml version="1.0" encoding="utf-8"?><archive xmlns="http://rs.tdwg.org/dwc/text/">` + core + strings.Join(extensions, "") + `</archive>`
}

const dwcTerms = "http://rs.tdwg.org/dwc/terms/"

func metaOf(index int, term string) string {
	return fmt.Sprintf(`<field index="%d" term="%s%s"/>`, index, dwcTerms, term)
}

// TestRealArchive reads the real table by its headings alone and by the
// description that comes with it: the same records both ways.
func TestRealArchive(t *testing.T) {
	csv := outside.Shared(t, "real/taurus-plants.csv")
	xml, err := os.ReadFile(outside.Shared(t, "real/meta.xml"))
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(csv)
	if err != nil {
		t.Fatal(err)
	}
	plain, err := OpenDataset(csv, Options{})
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{"meta.xml": string(xml), "DarwinCore.txt": string(text)}
	sets := []*Dataset{plain}
	for _, path := range []string{writeFolder(t, files), writeZip(t, files), filepath.Dir(csv)} {
		d, err := OpenDataset(path, Options{})
		if err != nil {
			t.Fatal(err)
		}
		sets = append(sets, d)
	}
	var first []string
	for i, d := range sets {
		want := 0
		if i == 3 { // meta.xml there has another name for the table
			want = 1
		}
		if f := d.Findings(); len(f) != want {
			t.Errorf("reading %d: %v", i, f)
		}
		var all []string
		for r, err := range d.Core.Rows() {
			if err != nil {
				t.Fatal(err)
			}
			if len(r.Findings) > 0 {
				t.Error(r.Findings)
			}
			line := ""
			for _, term := range []string{"scientificName", "recordedBy", "eventDate", "decimalLatitude", "minimumElevationInMeters", "catalogNumber", "locality"} {
				line += r.Get(term).Text + "|"
			}
			all = append(all, line)
		}
		if i == 0 {
			first = all
		}
		if len(all) != 1534 || !slices.Equal(all, first) {
			t.Errorf("reading %d: %d records", i, len(all))
		}
	}
	if !strings.HasPrefix(first[0], "Ballota acetabulosa (L.) Benth.|Markus Döring|1999-06-18 00:00:00.0|38.10695|0|1|") {
		t.Errorf("first record %s", first[0])
	}
}

// TestArchive reads an archive that uses what the Darwin Core text guide
// allows: no heading row, other commas, quotes, encodings and row ends,
// defaults, two terms in a column, columns not described, a core in two files
// and a side table.
func TestArchive(t *testing.T) {
	files := map[string]string{
		"meta.xml": meta(
			`<core encoding="windows-1252" fieldsTerminatedBy="\t" linesTerminatedBy="\r\n" fieldsEnclosedBy="" rowType="`+dwcTerms+`Occurrence">
			<files><location>core-1.txt</location><location>./core-2.txt</location></files>
			<id index="0"/>`+metaOf(0, "occurrenceID")+metaOf(2, "ScientificName")+metaOf(3, "EarliestDateCollected")+
				`<field index="4" term="`+dwcTerms+`geodeticDatum" default="WGS84"/>
			<field term="`+dwcTerms+`institutionCode" default="VDOURA"/></core>`,
			`<extension encoding="UTF-16" fieldsTerminatedBy="|" linesTerminatedBy="\n" fieldsEnclosedBy="'" ignoreHeaderLines="2" rowType="`+dwcTerms+`Identification">
			<files><location>det.txt</location></files><coreid index="0"/>`+metaOf(1, "scientificName")+metaOf(2, "identifiedBy")+`</extension>`),
		"core-1.txt": "a\tx\tErica arborea L.\t1998-06-12\t\r\nb\tx\t\"Salix\" herb\xe1cea\t1998\tED50\r\n",
		"core-2.txt": "c\tx\tQuercus robur L.\t1999\tED50\r\n",
		"det.txt":    string(wideBytes("made by hand\ncoreid|name|by\na|'Erica | arborea'|I. Almeida\na|Erica sp.|É. Brandão\n", binary.LittleEndian, true)),
	}
	for _, path := range []string{writeFolder(t, files), writeZip(t, files)} {
		d, err := OpenDataset(path, Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for r, err := range d.Core.Rows() {
			if err != nil || len(r.Findings) > 0 || len(r.Cells) != len(d.Core.Columns()) {
				t.Fatal(err, r.Findings)
			}
			got = append(got, fmt.Sprint(r.N, " ", r.Line, " ", filepath.Base(r.Origin("scientificName").File), " ", r.Get("id").Text+"|"+r.Get("occurrenceID").Text+"|"+r.Get("scientificName").Text+"|"+
				r.Get("eventDate").Text+"|"+r.Get("geodeticDatum").Text+"|"+r.Get("institutionCode").Text))
		}
		want := []string{
			"1 1 core-1.txt a|a|Erica arborea L.|1998-06-12|WGS84|VDOURA",
			"2 2 core-1.txt b|b|\"Salix\" herbácea|1998|ED50|VDOURA",
			"3 1 core-2.txt c|c|Quercus robur L.|1999|ED50|VDOURA",
		}
		if !slices.Equal(got, want) {
			t.Errorf("got  %q\nwant %q", got, want)
		}
		if s := said(d.Core.Findings()); !slices.Equal(s, []string{"archive-description note"}) {
			t.Errorf("core: %v", d.Core.Findings())
		}
		det := d.Side("identification")
		if det == nil {
			t.Fatal("no side table")
		}
		type identification struct {
			Of   string `csv:"coreid"`
			Name string `csv:"scientificName"`
			By   string `csv:"identifiedBy"`
			On   string `csv:"dateIdentified"`
		}
		got = nil
		err = Decode(det, func(r *Row, i identification) error {
			got = append(got, fmt.Sprintf("%s %+v", r.Origin("identifiedBy").String()[strings.LastIndex(r.Origin("").File, "det.txt"):], i))
			return nil
		})
		want = []string{"det.txt:3:21 {Of:a Name:Erica | arborea By:I. Almeida On:}", "det.txt:4:13 {Of:a Name:Erica sp. By:É. Brandão On:}"}
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("%v\ngot  %q\nwant %q", err, got, want)
		}
		stop := fmt.Errorf("enough")
		if err := Decode(det, func(*Row, identification) error { return stop }); err != stop {
			t.Errorf("%v", err)
		}
		if err := Rewrite(io.Discard, det, nil); err == nil || !strings.Contains(err.Error(), "is not written back") {
			t.Errorf("%v", err)
		}
	}
}

func TestArchiveRows(t *testing.T) {
	for _, c := range []struct {
		name, attributes, fields, file string
		want, say                      string
	}{
		{"the guide's defaults", ``, metaOf(0, "country") + metaOf(1, "locality"), "Portugal,\"Lindoso, Parada\"\nPortugal,x\n", "Portugal|Lindoso, Parada/Portugal|x", ""},
		{"a line end of one's own", `linesTerminatedBy="|"`, metaOf(0, "country") + metaOf(1, "locality"), "Portugal,Lindoso\nParada|Portugal,x|\n", "Portugal|Lindoso\nParada/Portugal|x", ""},
		{"line ends named by characters", "linesTerminatedBy=\"&#10;\" fieldsTerminatedBy=\"&#9;\"", metaOf(0, "country") + metaOf(1, "locality"), "Portugal\tLindoso\r\n", "Portugal|Lindoso", ""},
		{"quotes named by an escape", `fieldsEnclosedBy='\"'`, metaOf(0, "country") + metaOf(1, "locality"), "Portugal,\"a,b\"\n", "Portugal|a,b", ""},
		{"columns in another order, spaces in index", `ignoreHeaderLines="1"`, metaOf(1, "country") + `<field index=" 0 " term="` + dwcTerms + `locality"/>`, "locality,country\nLindoso,Portugal\n", "Lindoso|Portugal", ""},
		{"a column beyond", ``, metaOf(0, "country") + metaOf(7, "locality"), "Portugal,x\n", "Portugal|x", "archive-description error,archive-description note"},
		{"a term twice", ``, metaOf(0, "country") + metaOf(1, "country"), "Portugal,x\n", "Portugal|x", "archive-description error"},
		{"a heading that says otherwise", `ignoreHeaderLines="1"`, metaOf(0, "genus") + metaOf(1, "family"), "family,genus\nRosaceae,Rosa\n", "Rosaceae|Rosa", "archive-description warning,archive-description warning"},
		{"a heading row that is not skipped", ``, metaOf(0, "country") + metaOf(1, "locality"), "country,locality\nPortugal,x\n", "country|locality/Portugal|x", "archive-description warning"},
		{"a date format", `dateFormat="DD/MM/YYYY"`, metaOf(0, "country") + metaOf(1, "eventDate"), "Portugal,3/4/1998\n", "Portugal|3/4/1998", "archive-description note"},
		{"no rows", ``, metaOf(0, "country"), "", "", "table-empty error"},
		{"a ragged row", ``, metaOf(0, "country") + metaOf(1, "locality"), "Portugal,x\nPortugal\n", "Portugal|x/Portugal", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := writeFolder(t, map[string]string{"c.txt": c.file,
				"meta.xml": meta(`<core rowType="` + dwcTerms + `Occurrence" ` + c.attributes + `><files><location>c.txt</location></files>` + c.fields + `</core>`)})
			d, err := OpenDataset(path, Options{})
			if err != nil {
				t.Fatal(err)
			}
			var rows []string
			for r, err := range d.Core.Rows() {
				if err != nil {
					t.Fatal(err)
				}
				rows = append(rows, strings.Join(texts(r.Cells), "|"))
			}
			if got := strings.Join(rows, "/"); got != c.want {
				t.Errorf("got  %q\nwant %q", got, c.want)
			}
			if got := strings.Join(said(d.Findings()), ","); got != c.say {
				t.Errorf("findings %v, want %q", d.Findings(), c.say)
			}
		})
	}
}

func TestArchiveFaults(t *testing.T) {
	core := func(attributes, location string) string {
		return meta(`<core rowType="x" ` + attributes + `><files><location>` + location + `</location></files>` + metaOf(0, "country") + `</core>`)
	}
	for _, c := range []struct {
		name  string
		files map[string]string
		want  string
	}{
		{"no meta.xml", map[string]string{"a.csv": "country\n", "b.csv": "country\n"}, "no meta.xml"},
		{"no XML", map[string]string{"meta.xml": "country\n"}, "cannot be read as the description"},
		{"no core", map[string]string{"meta.xml": "<archive/>"}, "names no core table"},
		{"no location", map[string]string{"meta.xml": "<archive><core/></archive>"}, "has no location"},
		{"endless meta.xml", map[string]string{"meta.xml": "<archive>" + strings.Repeat(" ", maxMeta)}, "is longer than 4 MiB"},
		{"the table is not there", map[string]string{"meta.xml": core("", "c.txt")}, `the table "c.txt" is not in the archive`},
		{"a table outside", map[string]string{"meta.xml": core("", "../../etc/passwd")}, "lies outside the archive"},
		{"a table at an address", map[string]string{"meta.xml": core("", "http://example.org/c.txt")}, "none are fetched"},
		{"two letters between cells", map[string]string{"meta.xml": core(`fieldsTerminatedBy="||"`, "c.txt"), "c.txt": "x"}, `fieldsTerminatedBy="||": one character between the cells is needed`},
		{"heading lines", map[string]string{"meta.xml": core(`ignoreHeaderLines="many"`, "c.txt"), "c.txt": "x"}, `ignoreHeaderLines="many": a count of lines is needed`},
		{"an encoding nobody knows", map[string]string{"meta.xml": core(`encoding="x-1"`, "c.txt"), "c.txt": "x"}, `no encoding is called "x-1"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, path := range []string{writeFolder(t, c.files), writeZip(t, c.files)} {
				if _, err := OpenDataset(path, Options{}); err == nil || !strings.Contains(err.Error(), c.want) {
					t.Errorf("%s: %v", path, err)
				}
			}
		})
	}
	for want, files := range map[string]map[string]string{
		"cannot be opened": {"xl/workbook.xml": "<x/>", "[Content_Types].xml": "<x/>"},
		"2 tables":         {"a.csv": "country\n", "b.csv": "country\n"},
	} {
		if _, err := OpenDataset(writeZip(t, files), Options{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %s", err, want)
		}
	}
	d, err := OpenDataset(writeZip(t, map[string]string{"trip/a.csv": "country\nPortugal\n", "__MACOSX/trip/._a.csv": "x"}), Options{})
	if err != nil || d.Core.Index("country") != 0 {
		t.Errorf("a zip file of one table: %v", err)
	}
	// An archive in a folder of the zip file.
	d, err = OpenDataset(writeZip(t, map[string]string{"trip/meta.xml": core("", "c.txt"), "trip/c.txt": "Portugal\n"}), Options{})
	if err != nil || d.Core.Index("country") != 0 {
		t.Errorf("%v", err)
	}
	if _, err := OpenDataset(filepath.Join(t.TempDir(), "absent.csv"), Options{}); !os.IsNotExist(err) {
		t.Errorf("%v", err)
	}
	path := filepath.Join(t.TempDir(), "broken.zip")
	os.WriteFile(path, []byte("PK\x03\x04 and no more"), 0o600)
	if _, err := OpenDataset(path, Options{}); err == nil || !strings.Contains(err.Error(), "the zip file cannot be opened") {
		t.Errorf("%v", err)
	}
}

// The identifier of an identification is what its heading calls identificationID.
func TestArchiveIdentifier(t *testing.T) {
	for heading, want := range map[string]int{"identificationID": 0, "recordNumber": 1} {
		d, err := OpenDataset(writeFolder(t, map[string]string{
			"meta.xml": meta(`<core rowType="`+dwcTerms+`Occurrence" ignoreHeaderLines="1"><files><location>c.txt</location></files><id index="0"/>`+metaOf(0, "occurrenceID")+metaOf(1, "country")+`</core>`,
				`<extension rowType="`+dwcTerms+`Identification" ignoreHeaderLines="1"><files><location>det.txt</location></files><coreid index="0"/>
				<field index="1" term="http://purl.org/dc/terms/identifier"/>`+metaOf(2, "scientificName")+`</extension>`),
			"c.txt":   "occurrenceID,country\na,Portugal\n",
			"det.txt": "occurrenceID," + heading + ",scientificName\na,det-1,Erica arborea\n",
		}), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if f := d.Side("identification").Findings(); len(f) != want {
			t.Errorf("%s: %v", heading, f)
		}
	}
}

// TestZipBomb unpacks files that are a thousand times larger than they say, or
// than they are.
func TestZipBomb(t *testing.T) {
	const size = 40 << 20
	for _, letter := range []byte{'\n', 'x'} {
		var packed bytes.Buffer
		f, _ := flate.NewWriter(&packed, 9)
		sum := crc32.NewIEEE()
		block := bytes.Repeat([]byte{letter}, 1<<20)
		for range size >> 20 {
			f.Write(block)
			sum.Write(block)
		}
		f.Close()
		var b bytes.Buffer
		z := zip.NewWriter(&b)
		w, _ := z.Create("meta.xml")
		io.WriteString(w, meta(`<core rowType="x"><files><location>c.txt</location></files>`+metaOf(0, "country")+metaOf(1, "locality")+`</core>`))
		w, err := z.CreateRaw(&zip.FileHeader{Name: "c.txt", Method: zip.Deflate, CRC32: sum.Sum32(), CompressedSize64: uint64(packed.Len()), UncompressedSize64: size})
		if err != nil {
			t.Fatal(err)
		}
		w.Write(packed.Bytes())
		z.Close()
		path := filepath.Join(t.TempDir(), "bomb.zip")
		os.WriteFile(path, b.Bytes(), 0o600)
		d, err := OpenDataset(path, Options{})
		if err == nil {
			for _, e := range d.Core.Rows() {
				err = e
			}
		}
		want := "it unpacks to more than 200 times its size"
		if letter == 'x' {
			want = "longer than 1 MiB"
		}
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", letter, err)
		}
	}
}

// TestOptionsOutrankMeta: what the user says goes before what meta.xml says.
func TestOptionsOutrankMeta(t *testing.T) {
	path := writeFolder(t, map[string]string{
		"meta.xml": meta(`<core encoding="UTF-8" rowType="` + dwcTerms + `Taxon"><files><location>c.txt</location></files>` + metaOf(0, "country") + metaOf(1, "locality") + `</core>`),
		"c.txt":    "Portugal;Ger\xeas\n",
	})
	d, err := OpenDataset(path, Options{Encoding: "windows-1252", Comma: ';'})
	if err != nil {
		t.Fatal(err)
	}
	for r, err := range d.Core.Rows() {
		if err != nil || r.Get("locality").Text != "Gerês" {
			t.Error(err, r.Cells)
		}
	}
	if f := d.Findings(); len(f) != 1 || f[0].Severity != label.Warning || !strings.Contains(f[0].Message, "Taxon") {
		t.Errorf("%v", f)
	}
}
