package typeset

import (
	"bytes"
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
