package symbol

import (
	"fmt"
	"image"
	"strings"

	code39lib "github.com/boombuler/barcode/code39"
)

// code39Text holds the characters of ISO/IEC 16388 in the order of their
// check values.
const code39Text = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%"

// code39 returns the modules of text, or why it cannot be said. The full ASCII
// extension (two characters for a small letter) is not used: a scanner that is
// not set to it reads other text without complaint.
func code39(text string, o Options) (matrix, string) {
	sum := 0
	for _, r := range text {
		v := strings.IndexRune(code39Text, r)
		if v < 0 {
			why := fmt.Sprintf("it has no sign for %q; code128 has", string(r))
			if 'a' <= r && r <= 'z' {
				why = "it has no small letters; write capitals, or use code128"
			}
			return matrix{}, why
		}
		sum += v
	}
	// The library's own check sum function returns 0 for every text.
	if o.Check {
		text += code39Text[sum%43 : sum%43+1]
	}
	code, err := code39lib.Encode(text, false, false)
	if err != nil {
		return matrix{}, err.Error()
	}
	m := linearModules(code)
	if o.Ratio3 {
		// The library's elements are 1 or 2 modules wide.
		m = strings.NewReplacer("11", "111", "00", "000").Replace(m)
	}
	return matrix{modules: m, rows: 1, spoken: text}, ""
}

// linearModules reads the modules of a code the library has made.
func linearModules(code image.Image) string {
	b := make([]byte, code.Bounds().Dx())
	for x := range b {
		b[x] = '0'
		if r, _, _, _ := code.At(x, 0).RGBA(); r == 0 {
			b[x] = '1'
		}
	}
	return string(b)
}
