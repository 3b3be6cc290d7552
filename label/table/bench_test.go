package table

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"testing"
)

// benchTable is an invented table of n records: 20 columns, a third of the
// cells quoted, accents in some.
func benchTable(n int) []byte {
	var b bytes.Buffer
	b.WriteString("catalogNumber,recordedBy,recordNumber,eventDate,family,scientificName,identifiedBy,dateIdentified,country,stateProvince,municipality,locality," +
		"decimalLatitude,decimalLongitude,geodeticDatum,coordinateUncertaintyInMeters,minimumElevationInMeters,habitat,occurrenceRemarks,preparations\r\n")
	for i := range n {
		fmt.Fprintf(&b, "VDOURA-%07d,\"I. Almeida | T. Brandão\",%d,2026-06-%02d,Ericaceae,Erica arborea L.,I. Almeida,2026-06,PORTUGAL,Braga,Terras de Bouro,\"Serra do Gerês, Pedra Bela, rocky ridge %d m NE of the viewpoint\","+
			"41.7157,-8.1502,WGS84,150,%d,\"Crevices and ledges of weathered granite, fully exposed\",\"Called \"\"urze-branca\"\"\",sheet | sheet\r\n", i+1, i+1, i%28+1, i%900, 700+i%90)
	}
	return b.Bytes()
}

const benchRows = 5000

func countRows(b *testing.B, text []byte) int {
	t, err := Open(Bytes("t.csv", text), Options{})
	if err != nil {
		b.Fatal(err)
	}
	n := 0
	for r, err := range t.Rows() {
		if err != nil || len(r.Cells) != 20 || len(r.Findings) > 0 {
			b.Fatal(err, r.Findings)
		}
		n++
	}
	return n
}

// BenchmarkRows reads a table: heading row found and mapped, every cell with
// its place, digest made. Compare with BenchmarkEncodingCSV on the same bytes.
func BenchmarkRows(b *testing.B) {
	text := benchTable(benchRows)
	if n := countRows(b, text); n != benchRows {
		b.Fatalf("%d rows", n)
	}
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		countRows(b, text)
	}
	b.ReportMetric(float64(benchRows*b.N)/b.Elapsed().Seconds(), "rows/s")
}

// BenchmarkEncodingCSV is Go's own reader on the bytes of BenchmarkRows.
func BenchmarkEncodingCSV(b *testing.B) {
	text := benchTable(benchRows)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		r := csv.NewReader(bytes.NewReader(text))
		n := 0
		for {
			row, err := r.Read()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil || len(row) != 20 {
				b.Fatal(err)
			}
			n++
		}
		if n != benchRows+1 {
			b.Fatalf("%d rows", n)
		}
	}
	b.ReportMetric(float64(benchRows*b.N)/b.Elapsed().Seconds(), "rows/s")
}

// BenchmarkGet asks a row for the terms a label needs.
func BenchmarkGet(b *testing.B) {
	t, err := Open(Bytes("t.csv", benchTable(1)), Options{})
	if err != nil {
		b.Fatal(err)
	}
	var row *Row
	for r := range t.Rows() {
		row = r
	}
	if row.Get("locality").Text == "" || row.Get("fieldNumber").Text != "" {
		b.Fatal("wrong cells")
	}
	for b.Loop() {
		for i := range t.columns {
			row.Get(t.columns[i].Term)
		}
		row.Get("fieldNumber")
	}
}

// BenchmarkRewrite writes a table back with a new column.
func BenchmarkRewrite(b *testing.B) {
	text := benchTable(benchRows)
	t, err := Open(Bytes("t.csv", text), Options{})
	if err != nil {
		b.Fatal(err)
	}
	edits := make([]Edit, benchRows+1)
	for i := range edits {
		edits[i] = Edit{Row: i, Column: 20, Text: fmt.Sprintf("occurrence%d", i)}
	}
	var out bytes.Buffer
	if err := Rewrite(&out, t, edits); err != nil || bytes.Count(out.Bytes(), []byte("occurrence")) != benchRows+2 {
		b.Fatal(err, bytes.Count(out.Bytes(), []byte("occurrence")))
	}
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if err := Rewrite(io.Discard, t, edits); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkVocabulary reads our own lists of terms and words, once a run.
func BenchmarkVocabulary(b *testing.B) {
	for b.Loop() {
		var terms []termEntry
		var plain []wordsEntry
		if decodeEmbedded("terms.csv", termsCSV, &terms) != nil || decodeEmbedded("headings.csv", headingsCSV, &plain) != nil || len(terms) < 400 || len(plain) < 200 {
			b.Fatal("lists")
		}
	}
}

// BenchmarkIsUTF8 looks whether a table is UTF-8, which is done once when it is
// opened.
func BenchmarkIsUTF8(b *testing.B) {
	text := benchTable(benchRows)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if !isUTF8(bytes.NewReader(text), defaultMaxRow) {
			b.Fatal("it is")
		}
	}
}

// BenchmarkDetect tells the encoding of a table with many words beyond ASCII.
func BenchmarkDetect(b *testing.B) {
	tables := inventedTables(b)
	text := encoded(b, legacyCharsets()[0].enc, tables[0].rows(60))
	for b.Loop() {
		if v := detect(surveyOf(bytes.NewReader([]byte(text)), defaultMaxRow)); !v.whole || !v.sure || v.best.name != "windows-1252" {
			b.Fatal(v)
		}
	}
}
