package table

// plainly tells in little time that a cell is what the column holds, as most
// are; where it does not, fit may still find so.
func (p *profile) plainly(text string) bool {
	n := len(text)
	if n == 0 {
		return true
	}
	switch p.main {
	case aNumber:
		for i := 0; i < n; i++ {
			switch c := text[i]; {
			case c >= '0' && c <= '9':
			case c == '-' && i == 0 && n > 1:
			case c == '.' && i > 0 && i < n-1 && text[i-1] >= '0' && text[i+1] >= '0':
			default:
				return false
			}
		}
		return true
	case aDate: // 2026-05-14
		return n == 10 && text[4] == '-' && text[7] == '-' && onlyFigures(text[:4]) && onlyFigures(text[5:7]) && onlyFigures(text[8:])
	case aFamily:
		return n > 5 && n < 40 && text[n-5:] == "aceae" && onlyLetters(text)
	case aText: // no figures, so no date, and no family
		if n < 3 || text[n-1] == 'e' && text[n-2] == 'a' || text[n-1] <= ' ' {
			return false
		}
		if n > 40 {
			return text[0] > '9'
		}
		for i := 0; i < n; i++ {
			if c := text[i]; c >= '0' && c <= '9' {
				return false
			}
		}
		return true
	}
	return false
}

func onlyLetters(s string) bool {
	for i := 0; i < len(s); i++ {
		if c := s[i] | 0x20; c < 'a' || c > 'z' {
			return false
		}
	}
	return true
}

func onlyFigures(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return true
}
