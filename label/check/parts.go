package check

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// MaxCopies is how many labels of its own a specimen may get.
const MaxCopies = 99

// parseCopies reads the number of copies; 1 for an empty text.
func parseCopies(text string) (int, bool) {
	if text == "" {
		return 1, true
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > MaxCopies || text[0] == '+' {
		return 0, false
	}
	return n, true
}

func copiesRule(c *Context) {
	text := c.Text("copies")
	if _, ok := parseCopies(text); ok {
		return
	}
	if _, err := strconv.ParseFloat(text, 64); err == nil {
		suggest := strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
		if _, ok := parseCopies(suggest); !ok || !strings.Contains(text, ".") {
			suggest = ""
		}
		c.Suggest("copies", fmt.Sprintf("not a whole number from 1 to %d", MaxCopies), suggest)
		return
	}
	c.Reportf("copies", "not a number: write how many labels to print, 1 to %d", MaxCopies)
}

// partsUnknown says what was made of parts that are not known, in one finding a
// cell.
func partsUnknown(c *Context) {
	if !plainParts(c) {
		sayParts(c)
	}
}

// partsOther says the same where nothing need be wrong.
func partsOther(c *Context) {
	if plainParts(c) {
		sayParts(c)
		c.cause("other part")
	}
}

// plainParts reports whether all parts that are not known may be of another
// kind: none is near a known word, or counted.
func plainParts(c *Context) bool {
	return len(c.partDoubts) > 0 && !slices.ContainsFunc(c.partDoubts, func(d *PartError) bool { return !d.Plain })
}

func sayParts(c *Context) {
	if len(c.partDoubts) == 0 {
		return
	}
	text := c.Text("preparations")
	why, suggest := reason(c.partDoubts[0], text), c.partDoubts[0].Suggest
	if n := len(c.partDoubts); n > 1 {
		var pieces []string
		for _, d := range c.partDoubts {
			if d.Suggest != "" {
				why, suggest = reason(d, text), d.Suggest
			}
			pieces = append(pieces, strconv.Quote(d.Piece))
		}
		if suggest == "" {
			why = strings.Join(pieces, " and ") + " are no parts that get labels of their own: they are named on the label as they are written; parts with labels are sheet, packet, box and jar"
		}
	}
	c.Suggest("preparations", why, suggest)
}

// splitCodes parts codes at signs and blanks.
func splitCodes(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune("|,;/&+", r) })
}

// isCode reports whether s is a herbarium's code: 1 to 8 letters A to Z.
func isCode(s string) bool {
	if len(s) < 1 || len(s) > 8 {
		return false
	}
	for _, b := range []byte(s) {
		if b < 'A' || b > 'Z' {
			return false
		}
	}
	return true
}

func duplicatesRule(c *Context) {
	text := c.Text("duplicatesTo")
	codes := splitCodes(text)
	var bad []string
	for i, s := range codes {
		if !isCode(s) {
			bad = append(bad, strconv.Quote(s))
			codes[i] = strings.ToUpper(strings.Trim(s, ".:()[]"))
		}
	}
	if len(bad) > 0 {
		suggest := strings.Join(codes, " | ")
		if slices.ContainsFunc(codes, func(s string) bool { return !isCode(s) }) || len(codes) == len(bad) && len(bad) > 1 {
			suggest = "" // words, more likely than codes in small letters
		}
		is := "is no herbarium code"
		if len(bad) > 1 {
			is = "are no herbarium codes"
		}
		c.Suggest("duplicatesTo", strings.Join(bad, " and ")+" "+is+": write 1 to 8 letters A to Z, with | between codes", suggest)
	}
	if text != "" && len(codes) == 0 {
		c.Report("duplicatesTo", "no herbarium code is given: write codes with | between them, or leave the cell empty")
	}
}

func count(list []string, s string) int {
	n := 0
	for _, x := range list {
		if x == s {
			n++
		}
	}
	return n
}

// lookalikes are signs that word processors put for plain ones.
var lookalikes = strings.NewReplacer("–", "-", "—", "-", "‐", "-", "‑", "-", "−", "-", "’", "'", "\u00a0", " ")

func catalogueLettersRule(c *Context) {
	text := c.Text("catalogNumber")
	if c.Doubted("catalogNumber") {
		return // damaged letters, or those of two scripts
	}
	for _, r := range text {
		if r >= 0x20 && r <= 0x7e || unicode.IsControl(r) { // controls have a rule of their own
			continue
		}
		suggest := lookalikes.Replace(text)
		if strings.ContainsFunc(suggest, func(r rune) bool { return r < 0x20 || r > 0x7e }) {
			suggest = ""
		}
		c.Suggest("catalogNumber", fmt.Sprintf("bars cannot hold %q (U+%04X): the number is printed in figures only", r, r), suggest)
		return
	}
}
