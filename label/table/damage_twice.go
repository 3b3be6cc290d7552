package table

import (
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// throughMac are what letters became that were UTF-8 read as windows-1252, written by an
// old Mac program and read as windows-1252 again: "AgropecuÌÁrio" was Agropecuário. The
// signs that a Mac has not are lost on the way.
var throughMac = sync.OnceValue(func() map[[2]rune]rune {
	all := map[[2]rune]rune{}
	for r := rune(0xA0); r < 0x180; r++ {
		b := utf8.AppendRune(nil, r)
		var shown [2]rune
		for i := range shown {
			once := charmap.Windows1252.DecodeByte(b[i])
			mac, ok := charmap.Macintosh.EncodeRune(once)
			shown[i] = charmap.Windows1252.DecodeByte(mac)
			if once == utf8.RuneError || !ok || shown[i] == utf8.RuneError {
				shown[0] = 0
				break
			}
		}
		if shown[0] != 0 && unicode.IsPrint(r) {
			all[shown] = r
		}
	}
	return all
})

// undoMac returns what was typed where it came through a Mac; text itself where nothing
// says that it did. unread is true where letters are left whose second half is lost.
func undoMac(text string) (mended string, unread bool) {
	if !strings.ContainsAny(text, "Ìå") {
		return text, false
	}
	rs := []rune(text)
	var b strings.Builder
	sure := false
	for i := 0; i < len(rs); i++ {
		if i+1 < len(rs) && (rs[i] == 'Ì' || rs[i] == 'å') {
			r, ok := throughMac()[[2]rune{rs[i], rs[i+1]}]
			if rs[i] == 'å' { // nº and 12°; elsewhere it begins a sign of Chinese
				ok = ok && i > 0 && (r == 'º' || r == '°') && (rs[i-1]|0x20 == 'n' || unicode.IsDigit(rs[i-1]))
			}
			if ok {
				small := i > 0 && unicode.IsLower(rs[i-1])
				sure = sure || !unicode.IsLetter(rs[i+1]) || rs[i] == 'Ì' && small && unicode.IsUpper(rs[i+1])
				b.WriteRune(r)
				i++
				continue
			}
			unread = unread || rs[i] == 'Ì' && (unicode.IsLower(rs[i+1]) || rs[i+1] == '_')
		}
		b.WriteRune(rs[i])
	}
	if !sure || nonsense(b.String()) > nonsense(text) {
		return text, false
	}
	return b.String(), unread
}
