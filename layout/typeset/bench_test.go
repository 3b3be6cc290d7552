package typeset

import (
	"testing"

	"cornerslip/fonts"
	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/face"
)

func BenchmarkSet(b *testing.B) {
	s := New(face.New(fonts.Default()))
	m := For(label.Sheet)
	c := mock()
	boxes, _, err := s.Set(c, m)
	if err != nil || len(boxes) != 1 || len(layout.Lines(boxes[0].Marks)) < 12 {
		b.Fatalf("the label is not set as it should be: %v", err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := s.Set(c, m); err != nil {
			b.Fatal(err)
		}
	}
}
