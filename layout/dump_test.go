package layout

import (
	"bytes"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestDump(t *testing.T) {
	b := example()
	p := Page{
		Size: Size{210 * MM, 297 * MM}, Trim: Rect{Point{5 * MM, 5 * MM}, Size{200 * MM, 287 * MM}},
		Boxes: []Placed{{Box: b}, {At: Point{105 * MM, 0}, Box: &Box{Size: b.Size}, Turn: 1}, {}},
		Marks: []Mark{Stroke{To: Point{5 * MM, 0}, Width: Pt / 4}, &Fill{}},
	}
	var got bytes.Buffer
	if err := Dump(&got, p); err != nil {
		t.Fatal(err)
	}
	const golden = "testdata/dump.txt"
	if os.Getenv("UPDATE") == "1" {
		if err := os.WriteFile(golden, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(want), got.String()); d != "" {
		t.Errorf("%s differs; look at the change and run with UPDATE=1\n%s", golden, d)
	}
}
