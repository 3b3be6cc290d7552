package face_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/fonts"
	"cornerslip/layout"
	"cornerslip/layout/face"
	"cornerslip/layout/pdf"

	"golang.org/x/text/unicode/norm"
)

// TestExtract prints text of many kinds in all styles to a PDF and asks
// another program for it: every word must come back, NFC-equal.
func TestExtract(t *testing.T) {
	pdftotext := outside.Program(t, "pdftotext")
	set, err := fonts.Default().With(outside.File(t, "/usr/share/fonts-droid-fallback/truetype/DroidSansFallback.ttf"))
	if err != nil {
		t.Fatal(err)
	}
	s := face.New(set)
	lines := []string{
		"AVATAR To Te Ty P. LT 11 Wa. V. fi ffl",
		"x̂ ậ i̇́ q̄ n̂ m̃ j̄ ɨ̄ i̊ l̂ M̂ ɑ̃ ɔ̃ ɛ̀ t͡s k͡p ŋ̊ ə̂ ɪ̈ ʌ̃ R̥ ṛ̃ ŝ̌ ę́ ǭ́",
		"Đặng Việt Nguyễn Trường Ỹ ở ữ ặ",
		"ˈkɔɹk ɓ ʃ ʒ ʔ ɲ ʎ ɾ ɣ",
		"ᾷ ᾄ Ὦ ῥ ἄνθος φύλλον",
		"Щука й ї Ёлка җ ұ і̄ а̊ е́ ы́ и̋",
		"Ação à beira do ribeiro, São João — 5′ 3″ ♂♀ × ☿ № ½ ⅓ ≥ ±10 µm ‰",
		"日本 植物 한라산 かな ガ",
		"ქართული Հայերեն",
		"3\u202fkm 5\u00a0m x‑y 1⁄2",
	}
	page := layout.Page{Size: layout.Size{W: 210 * layout.MM, H: 297 * layout.MM}}
	y := 20 * layout.MM
	for _, line := range lines {
		for style := range layout.Style(4) {
			w, err := s.Word(line, style)
			if err != nil {
				t.Fatal(err)
			}
			texts, _ := w.Texts(nil, layout.Point{X: 10 * layout.MM, Y: y}, layout.Points(11), 0, 0)
			for _, m := range texts {
				page.Marks = append(page.Marks, m)
			}
			y += 6 * layout.MM
		}
	}
	path := filepath.Join(t.TempDir(), "words.pdf")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	one := func(yield func(layout.Page, error) bool) { yield(page, nil) }
	if err := pdf.Write(f, one, set, pdf.Options{}); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(pdftotext, "-layout", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	got := norm.NFC.String(string(out))
	for _, line := range lines {
		for _, w := range strings.Fields(norm.NFC.String(line)) {
			if n := strings.Count(got, w); n < 4 {
				t.Errorf("%s (%+q) comes back %d times of 4", w, w, n)
			}
		}
	}
}
