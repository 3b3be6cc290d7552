package lang

import "strings"

// DecimalSign returns what stands between units and tenths.
//
// Source: Unicode CLDR, symbols of numbers; Latin, which CLDR lacks, follows
// the comma of the countries around it (common practice, no source).
func DecimalSign(t Tag) string {
	switch t {
	case Portuguese, Spanish, French, German, Latin:
		return ","
	}
	return "."
}

// Number writes a plain decimal number, such as "12450.5" or "-3", as the
// language does. Digits of five places and more stand in groups of three,
// parted by a thin no-break space, in every language alike (ISO 80000-1, 7.3.1;
// SI brochure, 5.4.4, which leaves four digits together). Text that is no plain
// decimal number comes back unchanged.
func Number(t Tag, s string) string {
	sign, digits := "", s
	if strings.HasPrefix(s, "-") || strings.HasPrefix(s, "−") || strings.HasPrefix(s, "+") {
		n := 1
		if s[0] != '-' && s[0] != '+' {
			n = len("−")
		}
		sign, digits = s[:n], s[n:]
		if sign == "-" {
			sign = "−"
		}
	}
	whole, tenths, point := strings.Cut(digits, ".")
	if !figures(whole) || point && !figures(tenths) {
		return s
	}
	if len(whole) > 4 {
		var b strings.Builder
		for i := range len(whole) {
			if i > 0 && (len(whole)-i)%3 == 0 {
				b.WriteString("\u202f")
			}
			b.WriteByte(whole[i])
		}
		whole = b.String()
	}
	if point {
		return sign + whole + DecimalSign(t) + tenths
	}
	return sign + whole
}

func figures(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}
