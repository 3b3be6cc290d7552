package table

// indented cuts a field that begins with blanks and a quote, as a table has
// it that was typed by hand or written with ", " between its cells:
//
//	Salix herbacea, "steep bank, under the ridge", 1984
//
// RFC 4180 would have the blanks a part of the cell and the quotes letters,
// and every comma inside cuts the cell in two. It is taken as a quoted cell if
// its closing quote stands in the same line before a comma or the line's end,
// blanks aside, for such a row can hardly be meant otherwise. Else the field
// is not quoted, and the cell is read as any other. In a table with tabs
// between its cells, which needs no quotes, they stay letters.
func (l *lexer) indented(start int) field {
	if l.quote == nil || l.comma[0] == '\t' || !l.have(start) || l.b[start] != ' ' || l.found(start, l.comma) {
		return field{}
	}
	f := field{start: start, quoted: true, indented: true}
	i := l.blanksEnd(start)
	if !l.have(i) || !l.found(i, l.quote) {
		return field{}
	}
	q := len(l.quote)
	i += q
	f.from = i
	for l.have(i) && i-start <= l.maxCell {
		k := l.class[l.b[i]]
		switch {
		case k&(isLine|isBreak) != 0:
			return field{}
		case k&isQuote == 0 || !l.found(i, l.quote):
			f.kinds |= k
			i++
		case l.have(i+q) && l.found(i+q, l.quote):
			f.doubled = true
			i += 2 * q
		default:
			f.to = i
			f.end = l.blanksEnd(i + q)
			f.blanks = f.end > i+q
			if l.have(f.end) && !l.ends(f.end, l.class[l.b[f.end]]) {
				return field{}
			}
			return f
		}
	}
	return field{}
}

// blanksEnd returns where the blanks from i on end.
func (l *lexer) blanksEnd(i int) int {
	for l.have(i) && l.b[i] == ' ' && !l.found(i, l.comma) {
		i++
	}
	return i
}
