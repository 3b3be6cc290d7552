package typeset

import (
	"bytes"
	"strings"
	"testing"

	"cornerslip/fonts"
	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/face"
)

func TestMock(t *testing.T) {
	s := New(face.New(fonts.Default()))
	boxes, report, err := s.Set(mock(), For(label.Sheet))
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	for _, box := range boxes {
		layout.Dump(&b, layout.Page{Size: box.Size, Boxes: []layout.Placed{{Box: box}}})
	}
	t.Logf("%v\n%s", report, b.String())
}

// TestLongKey holds that a continuation begins with its key at the left margin
// also where the key leaves no room for "label continued, 2 of 2".
func TestLongKey(t *testing.T) {
	c := mock()
	c.Key = []label.Run{{Text: "Maria da Conceição de Albuquerque e Vasconcelos 1214b", Keep: true}}
	for i := range c.Blocks {
		if c.Blocks[i].Role == label.Plant {
			c.Blocks[i].Runs = []label.Run{{Text: strings.Repeat("Open scrub on granite scree, with much heath. ", 70)}}
		}
	}
	m := For(label.Sheet)
	boxes, _, err := New(face.New(fonts.Default())).Set(c, m)
	if err != nil {
		t.Fatal(err)
	}
	if len(boxes) < 2 {
		t.Fatalf("%d labels, want a continuation", len(boxes))
	}
	lines := layout.Lines(boxes[1].Marks)
	if at := lines[0][0].At.X; at != m.Left {
		t.Errorf("the key begins at %v, want %v", at, m.Left)
	}
	if at := lines[1][0].At.X; at <= m.Left+20*layout.MM {
		t.Errorf("what goes on stands at %v, want it at the right", at)
	}
}
