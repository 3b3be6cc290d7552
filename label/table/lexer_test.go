package table

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"

	"cornerslip/label"
)

// readAll reads a table that can be read.
func readAll(t testing.TB, text string, o Options) (*Table, []*Row) {
	t.Helper()
	tb, err := Open(Bytes("t.csv", []byte(text)), o)
	if err != nil {
		t.Fatal(err)
	}
	var rows []*Row
	for r, err := range tb.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, r)
	}
	return tb, rows
}

// texts are the words of a row.
func texts(cells []Cell) []string {
	out := make([]string, len(cells))
	for i, c := range cells {
		out[i] = c.Text
	}
	return out
}

// said are rules and severities as "row-ragged error", in order.
func said(findings []label.Finding) []string {
	var out []string
	for _, f := range findings {
		out = append(out, f.Rule+" "+f.Severity.String())
	}
	return out
}

// TestQuoting holds the lexer to RFC 4180, section 2, and shows what it does
// beyond. Rows are joined by "/", cells by "|"; the first line of every table
// is its heading row.
func TestQuoting(t *testing.T) {
	for _, c := range []struct {
		name, in, want string
		o              Options
		findings       string
	}{
		{name: "rule 1, 2: lines, the last without an end", in: "a,b\n1,2\n3,4", want: "1|2/3|4"},
		{name: "rule 4: spaces are part of a cell", in: "a,b\n 1 , 2\n", want: " 1 | 2"},
		{name: "rule 5: quotes", in: "a,b\n\"1\",2\n", want: "1|2"},
		{name: "rule 6: line breaks and commas in quotes", in: "a,b\n\"1\r\n,x\",2\n", want: "1\r\n,x|2"},
		{name: "rule 7: doubled quotes", in: "a,b\n\"1\"\"x\"\"\",2\n", want: "1\"x\"|2"},
		{name: "CRLF", in: "a,b\r\n1,2\r\n3,4\r\n", want: "1|2/3|4"},
		{name: "CR", in: "a,b\r1,2\r3,4\r", want: "1|2/3|4"},
		{name: "mixed line ends", in: "a,b\n1,2\r\n3,4\r5,6", want: "1|2/3|4/5|6"},
		{name: "LF CR is two ends and a blank line between", in: "a,b\n\r1,2\n\r3,4", want: "1|2/3|4"},
		{name: "NEL and LINE SEPARATOR split nothing", in: "a,b\n1\u0085x,2\u2028y\u2029z\v\f\n", want: "1\u0085x|2\u2028y\u2029z\v\f", findings: "text-control error,text-control error"},
		{name: "blank lines are no records", in: "a,b\n\n1,2\n\r\n\n3,4\n\n", want: "1|2/3|4"},
		{name: "but cells without words are", in: "a,b\n,\n1,2\n", want: "|/1|2"},
		{name: "in one column a blank line is an empty cell", in: "a\n1\n\n3\n", want: "1//3"},
		{name: "an empty cell in quotes", in: "a\n\"\"\n1\n", want: "/1"},
		{name: "last cell empty", in: "a,b\n1,\n2,", want: "1|/2|"},
		{name: "semicolon", in: "a;b\n1,5;2\n", want: "1,5|2", o: Options{Comma: ';'}},
		{name: "tab", in: "a\tb\n1\t\"2\t3\"\n", want: "1|2\t3"},
		{name: "pipe", in: "a|b\n1|2\n", want: "1|2", o: Options{Comma: '|'}},
		{name: "tab without quoting", in: "a\tb\n\"1\t2\"\"\n", want: "\"1|2\"\"", o: Options{Literal: true}},
		{name: "a quote of another kind", in: "a,b\n'1,''x',2\n", want: "1,'x|2", o: Options{Quote: '\''}},
		{name: "a comma beyond ASCII", in: "a¦b\n«1¦\"x¦y\"\n", want: "«1|x¦y", o: Options{Comma: '¦'}},
		{name: "space", in: "a b\n1 \"2 3\"\n", want: "1|2 3", o: Options{Comma: ' '}},
		{name: "sep= line", in: "sep=;\na;b\n1,5;2\n", want: "1,5|2"},

		{name: "quote between tabs", in: "a\tb\nby \"the\" tree\t2\n", want: "by \"the\" tree|2"},
		{name: "stray quote", in: "a,b\nby \"the\" tree,2\n", want: "by \"the\" tree|2", findings: "cell-quote warning"},
		{name: "seconds are no fault", in: "a,b\n41°42'56\"N,2\n", want: "41°42'56\"N|2", findings: "cell-quote note"},
		{name: "undoubled quotes", in: "a,b\n\"by \"the\" tree\",2\n", want: "by \"the\" tree|2", findings: "cell-quote error"},
		{name: "letters after the closing quote", in: "a,b\n\"by\" tree,2\n", want: "\"by\" tree|2", findings: "cell-quote error"},
		{name: "blanks after the closing quote", in: "a,b\n\"by\"  ,2\n", want: "by|2", findings: "cell-quote warning"},
		{name: "blanks before the opening quote", in: "a,b,c\n1, \"on a bank, wet\",  \"by \"\"the\"\" tree\" \n", want: "1|on a bank, wet|by \"the\" tree", findings: "cell-quote note,cell-quote note"},
		{name: "blanks before a quote that closes elsewhere", in: "a,b\n1, \"big\" tree\n2, \"x\n3,\"y\"\n", want: "1| \"big\" tree/2| \"x/3|y", findings: "cell-quote warning,cell-quote warning"},
		{name: "blanks before a quote between tabs", in: "a\tb\n1\t \"big tree\"\n", want: "1| \"big tree\""},
		{name: "blanks before a quote between spaces", in: "a b\n \"2 3\"\n", want: "|2 3", o: Options{Comma: ' '}},
		{name: "unclosed quote loses no row", in: "a,b\n\"by,2\n3,4\n5,6\n", want: "\"by|2/3|4/5|6", findings: "cell-unclosed error"},
		{name: "unclosed quote at the very end", in: "a,b\n1,\"", want: "1|\"", findings: "cell-unclosed error"},
		{name: "unclosed quote after a doubled one", in: "a,b\n1,\"x\"\"\n3,4", want: "1|\"x\"\"/3|4", findings: "cell-unclosed error"},
		{name: "too few cells", in: "a,b\n1\n3,4\n", want: "1/3|4", findings: "row-ragged error"},
		{name: "too many cells", in: "a,b\n1,2,3\n3,4\n", want: "1|2|3/3|4", findings: "row-ragged error"},
		{name: "too many, but empty", in: "a,b\n1,2,,\n", want: "1|2", findings: "row-ragged warning"},
		{name: "a line of blanks", in: "a,b\n   \n", want: "   ", findings: "row-ragged warning"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, rows := readAll(t, c.in, c.o)
			var lines, findings []string
			for i, r := range rows {
				if r.N != i+1 {
					t.Errorf("row %d has the number %d", i+1, r.N)
				}
				lines = append(lines, strings.Join(texts(r.Cells), "|"))
				findings = append(findings, said(r.Findings)...)
			}
			if got := strings.Join(lines, "/"); got != c.want {
				t.Errorf("got  %q\nwant %q", got, c.want)
			}
			if got := strings.Join(findings, ","); got != c.findings {
				t.Errorf("findings %q, want %q", got, c.findings)
			}
		})
	}
}

func TestPlaces(t *testing.T) {
	// Every cell's line:column, and its bytes in the file.
	in := "\ufeffa,b,c\r\n" +
		"é×,\"x\ny\r\nñ\"\"z\",\U0001F33F w\r" +
		"\n" + // a blank line: CRLF with the CR before
		"1,,3\n"
	want := []string{
		`2:1 "é×"`, `2:4 "\"x\ny\r\nñ\"\"z\""`, `4:7 "🌿 w"`,
		`5:1 "1"`, `5:3 ""`, `5:4 "3"`,
	}
	_, rows := readAll(t, in, Options{})
	var got []string
	for _, r := range rows {
		for _, c := range r.Cells {
			got = append(got, fmt.Sprintf("%d:%d %q", c.Line, c.Column, in[c.Start:c.End]))
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	if rows[0].Line != 2 || rows[1].Line != 5 || rows[0].Cells[1].Text != "x\ny\r\nñ\"z" || !rows[0].Cells[1].Quoted || rows[0].Cells[0].Quoted {
		t.Errorf("rows %+v", rows)
	}
	if o := rows[0].Origin("c"); o.String() != "t.csv:4:7" || o.Row != 1 || o.Term != "c" {
		t.Errorf("origin %+v", o)
	}
	if o := rows[0].Origin("locality"); o.String() != "t.csv:2" || o.Row != 1 || o.Term != "locality" {
		t.Errorf("origin of no cell %+v", o)
	}
}

func TestBounds(t *testing.T) {
	long := strings.Repeat("x", defaultMaxCell+1)
	for _, c := range []struct{ name, in, want string }{
		{"a huge cell", "country,locality\nPortugal,Lindoso\nPortugal," + long + "\n", "t.csv:3:10: the cell that begins here is longer than 1 MiB"},
		{"a huge quoted cell", "country,locality\nPortugal,\"" + long + "\"\n", "t.csv:2:10: the cell that begins here is longer than 1 MiB"},
		{"a file without line ends", long + long, "t.csv:1:1: the cell that begins here is longer than 1 MiB"},
		{"a row without end", "country,locality\nPortugal,Lindoso\n" + strings.Repeat("Lindoso,", defaultMaxRow/8+10), "t.csv:3:1: the row that begins here is longer than 8 MiB"},
		{"a heading row without end", strings.Repeat("Lindoso,", defaultMaxRow/8+10), "t.csv:1:1: the row that begins here is longer than 8 MiB"},
	} {
		t.Run(c.name, func(t *testing.T) {
			err := firstError([]byte(c.in), Options{})
			var e *Error
			if !errors.As(err, &e) || !strings.HasPrefix(err.Error(), c.want) {
				t.Errorf("error %v, want %s", err, c.want)
			}
		})
	}
	// Just within the limits.
	in := "country,locality\nPortugal,\"" + strings.Repeat("x", defaultMaxCell-2) + "\"\n" + strings.Repeat("y,", 2000) + "\n"
	if err := firstError([]byte(in), Options{}); err != nil {
		t.Error(err)
	}
}

func firstError(b []byte, o Options) error {
	tb, err := Open(Bytes("t.csv", b), o)
	if err != nil {
		return err
	}
	for _, err := range tb.Rows() {
		if err != nil {
			return err
		}
	}
	return nil
}

// TestHostileQuotes reads files in which every line opens a quote that nothing
// closes: every line is a record, and the time does not grow faster than the
// file.
func TestHostileQuotes(t *testing.T) {
	for _, line := range []string{"\"a\n", "\"\"\"\"a\n", "\"\"\"a\n", "\"\"\n", "\"\",\"\"\"\"\"x\n"} {
		const n = 10000
		_, rows := readAll(t, "country,locality\n"+strings.Repeat(line, n), Options{MaxCell: 1 << 16})
		if len(rows) != n {
			t.Errorf("%q: %d rows", line, len(rows))
		}
	}
}

// TestLikeEncodingCSV holds the lexer against Go's own on a table that keeps
// to RFC 4180; FuzzLexer does so on many.
func TestLikeEncodingCSV(t *testing.T) {
	in := "a,b,c\n1,\"2,\"\"x\"\"\n\",3\n\n,,\n\"\",é,\"\"\n"
	if msg := unlikeCSV([]byte(in), ','); msg != "" {
		t.Error(msg)
	}
}

// unlikeCSV compares rows with encoding/csv's, the slow plain twin. It says
// nothing of input that encoding/csv refuses.
func unlikeCSV(b []byte, comma rune) string {
	if bytes.ContainsRune(b, '\r') {
		return "" // encoding/csv drops CR before LF inside quotes, and ends no line at CR alone
	}
	if bytes.HasPrefix(b, []byte("\xef\xbb\xbf")) || bytes.HasPrefix(b, []byte("\xff\xfe")) || bytes.HasPrefix(b, []byte("\xfe\xff")) {
		return ""
	}
	r := csv.NewReader(bytes.NewReader(b))
	r.Comma, r.FieldsPerRecord = comma, -1
	want, err := r.ReadAll()
	if err != nil {
		return ""
	}
	l := newLexer(newInput(bytes.NewReader(b), utf8Charset, 0, nil), Options{Comma: comma, Quote: '"', MaxCell: defaultMaxCell, MaxRow: defaultMaxRow})
	got, err := recordReader{l}.ReadAll()
	if err != nil {
		return err.Error()
	}
	if len(got) != len(want) {
		return fmt.Sprintf("%d rows, encoding/csv has %d\n%q\n%q", len(got), len(want), got, want)
	}
	for i := range got {
		if !slices.Equal(got[i], want[i]) {
			return fmt.Sprintf("row %d: %q, encoding/csv has %q", i+1, got[i], want[i])
		}
	}
	return ""
}

// endless gives a table of n records without holding it.
type endless struct {
	row  []byte
	n    int
	rest []byte
}

func (e *endless) Read(p []byte) (int, error) {
	if len(e.rest) == 0 {
		if e.n == 0 {
			return 0, io.EOF
		}
		e.n--
		e.rest = e.row
	}
	n := copy(p, e.rest)
	e.rest = e.rest[n:]
	return n, nil
}

// TestMemory reads a long table and holds the reading to what it keeps: a
// buffer, whatever the length.
func TestMemory(t *testing.T) {
	rows := 200_000
	if n, err := strconv.Atoi(os.Getenv("ROWS")); err == nil {
		rows = n
	}
	row := bytes.SplitAfterN(benchTable(1), []byte("\n"), 2)
	src := Source{"t.csv", func() (io.ReadCloser, error) {
		block := bytes.Repeat(row[1], 100)
		return io.NopCloser(io.MultiReader(bytes.NewReader(row[0]), &endless{row: block, n: rows / 100})), nil
	}}
	tb, err := Open(src, Options{})
	if err != nil {
		t.Fatal(err)
	}
	heap := func() uint64 {
		var m runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	var first, last uint64
	n := 0
	for _, err := range tb.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		switch n++; n {
		case 100:
			first = heap()
		case rows:
			last = heap()
		}
	}
	if n != rows || last > first+1<<20 {
		t.Errorf("%d rows; the heap grew from %d to %d bytes", n, first, last)
	}
}
