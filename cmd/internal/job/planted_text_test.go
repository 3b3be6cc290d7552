package job

import (
	"bytes"
	"slices"
	"strconv"
	"strings"
)

// to plants one of the values into the cell of a term.
func to(rule, how, term string, values ...string) plantedFault {
	return plantedFault{rule, how, func(p *planting) bool { return p.set(term, p.pick(values...)) }}
}

// by changes what the cell of one of the terms holds.
func by(rule, how string, f func(p *planting, s string) string, terms ...string) plantedFault {
	return plantedFault{rule, how, func(p *planting) bool {
		return p.change(p.pick(terms...), func(s string) string { return f(p, s) })
	}}
}

// replace is by for a letter or word that must be there.
func replace(rule, how, old, with string, terms ...string) plantedFault {
	return by(rule, how, func(_ *planting, s string) string { return strings.Replace(s, old, with, 1) }, terms...)
}

// into puts a text between two letters of the cell.
func into(rule, how, what string, terms ...string) plantedFault {
	return by(rule, how, func(p *planting, s string) string {
		r := []rune(s)
		if len(r) < 3 {
			return s
		}
		at := 1 + p.IntN(len(r)-1)
		return string(r[:at]) + what + string(r[at:])
	}, terms...)
}

// raw changes the bytes of the row in the file; false if it cannot.
func raw(rule, how string, f func(p *planting, line []byte) ([]byte, bool)) plantedFault {
	return plantedFault{rule, how, func(p *planting) bool {
		lines := bytes.SplitAfter(p.bytes(), []byte("\n"))
		line, ok := f(p, bytes.TrimSuffix(lines[p.row+1], []byte("\n")))
		if !ok {
			return false
		}
		lines[p.row+1] = append(line, '\n')
		p.anew = bytes.Join(lines, nil)
		return true
	}}
}

// heading changes a heading.
func inHeading(rule, how string, f func(p *planting) bool) plantedFault {
	return plantedFault{rule, how, func(p *planting) bool { p.anew = nil; ok := f(p); p.row, p.terms = -1, nil; return ok }}
}

var words = []string{"locality", "habitat", "occurrenceRemarks", "plantDescription", "stateProvince"}

// textFaults are in the letters of the cells and in how the file is written.
var textFaults = []plantedFault{
	replace("text-mojibake", "é read as Windows-1252", "a", "Ã©", "locality", "habitat", "recordedBy"),
	replace("text-mojibake", "ç and ã", "e", "Ã§Ã£", "locality", "habitat"),
	replace("text-mojibake", "a dash", " ", " â€“ ", "locality", "habitat"),
	replace("text-mojibake", "degrees", "°", "Â°", "verbatimCoordinates"),
	replace("text-mojibake", "ü in an author", "L.", "MÃ¼ll.Arg.", "scientificName", "scientificNameAuthorship"),
	into("text-replacement", "a letter lost", "\ufffd", words...),
	into("text-replacement", "a letter lost in a name", "\ufffd", "scientificName", "recordedBy", "family"),
	into("text-replacement", "two lost", "\ufffd\ufffd", words...),
	into("text-control", "backspace", "\b", words...),
	into("text-control", "vertical tab", "\v", words...),
	into("text-control", "escape", "\x1b[0m", words...),
	into("text-private", "a symbol font's degree", "\uf0b0", words...),
	into("text-private", "a symbol font's sign", "\uf066", words...),
	into("text-private", "in a name", "\ue000", "scientificName", "recordedBy"),
	into("text-invisible", "soft hyphen", "\u00ad", words...),
	into("text-invisible", "zero width space", "\u200b", words...),
	into("text-invisible", "left-to-right mark", "\u200e", words...),
	into("text-invisible", "byte order mark inside", "\ufeff", "locality", "scientificName"),
	into("text-encoding", "a byte of Windows-1252", "\xe9", words...),
	into("text-encoding", "half of a letter", "\xc3", "locality", "recordedBy"),
	into("text-encoding", "a stray continuation", "\x9d", words...),
	replace("text-replacement", "a question mark", "an", "a?n", words...),
	replace("text-code", "of a web page", "a", "&atilde;", words...),
	replace("text-code", "an ampersand's", " ", " &amp; ", words...),
	replace("text-code", "of a program", "e", `\u00e9`, words...),
	replace("text-code", "a workbook's line end", " ", "_x000D_ ", words...),
	replace("text-accent", "a tilde behind its letter", "a", "a˜", words...),
	replace("text-accent", "a diaeresis before its letter", "u", "¨u", words...),
	replace("text-lookalike", "a Cyrillic a", "a", "а", words...),
	replace("text-lookalike", "a Cyrillic o in a name", "o", "о", "scientificName", "recordedBy"),
	replace("text-lookalike", "a Greek omicron", "o", "ο", words...),
	replace("text-ligature", "fi", "fi", "ﬁ", words...),
	replace("text-ligature", "fl", "fl", "ﬂ", words...),
	replace("text-ligature", "italics of a formula", "a", "𝘢", words...),

	to("placeholder", "NA", "habitat", "NA", "N/A", "n/a"), to("placeholder", "null", "locality", "null", "NULL"),
	to("placeholder", "dash", "occurrenceRemarks", "-", "--", "—"), to("placeholder", "question mark", "family", "?", "???"),
	to("placeholder", "spreadsheet's error", "recordNumber", "#NAME?", "#REF!", "######"), to("placeholder", "in the date", "dateIdentified", "NaN", "#VALUE!"),
	to("placeholder", "in the coordinates' accuracy", "coordinateUncertaintyInMeters", "NULL", `\N`),

	by("punctuation-doubled", "comma", func(_ *planting, s string) string { return strings.Replace(s, ",", ",,", 1) }, words...),
	by("punctuation-doubled", "comma, blank, comma", func(_ *planting, s string) string { return strings.Replace(s, ",", ", ,", 1) }, words...),
	by("punctuation-doubled", "full stop at the end", func(_ *planting, s string) string { return s + ".." }, "habitat", "plantDescription"),
	by("punctuation-doubled", "comma and semicolon", func(_ *planting, s string) string { return strings.Replace(s, ",", ",;", 1) }, words...),
	by("spaces", "behind", func(_ *planting, s string) string { return s + " " }, words...),
	by("spaces", "before", func(_ *planting, s string) string { return " " + s }, words...),
	by("spaces", "two inside", func(_ *planting, s string) string { return strings.Replace(s, " ", "  ", 1) }, words...),
	by("spaces", "no-break space behind", func(_ *planting, s string) string { return s + "\u00a0" }, words...),
	to("text-ditto", "a word", "locality", "ditto", "idem", "as above", "same locality"), to("text-ditto", "a sign", "habitat", "\"", "〃", "''"),
	to("text-ditto", "people", "recordedBy", "same", "ditto", "Idem"), to("text-ditto", "other tongues", "locality", "como acima", "wie oben", "mismo lugar"),
	to("text-working", "a note", "habitat", "TODO", "xxx", "tbd", "to be filled in"), to("text-working", "a trial", "occurrenceRemarks", "test", "asdf", "lorem ipsum dolor"),
	by("text-working", "among words", func(p *planting, s string) string { return s + p.pick(" TODO", ", XXX") }, "locality", "habitat"),
	by("text-brackets", "open", func(p *planting, s string) string { return strings.Replace(s, " ", p.pick(" (", " ["), 1) }, words...),
	by("text-brackets", "open at the end", func(_ *planting, s string) string { return s + " (near" }, words...),
	by("text-brackets", "closed alone", func(_ *planting, s string) string { return s + ", nearby)" }, words...),
	by("text-repeated", "with a blank", func(_ *planting, s string) string { return s + " " + s }, "locality", "habitat"),
	by("text-repeated", "with a sign", func(p *planting, s string) string { return s + p.pick("; ", ", ") + s }, "locality", "habitat"),
	to("datum-spelling", "exchanged", "geodeticDatum", "WSG84", "WGS48", "WSG 84"), to("datum-spelling", "a letter", "geodeticDatum", "WGD84", "WG84", "WGGS84", "WGS-94"),
	to("datum-spelling", "others", "geodeticDatum", "ETSR89", "NDA83", "SIRGAS200", "ETRS98"),
	by("number-letters", "a letter inside", func(p *planting, s string) string {
		b := []byte(s)
		i := len(b) - 2
		if len(b) < 3 || b[i-1] < '0' || b[i-1] > '9' || b[i] < '0' || b[i] > '9' {
			return s
		}
		b[i] = "lIOo"[p.IntN(4)]
		return string(b)
	}, "recordNumber"),
	{"person-year", "a year behind", func(p *planting) bool {
		return p.get("dateIdentified") != "" && p.change("identifiedBy", func(s string) string { return s + p.pick(" 2019", ", 2019", " (2019)") })
	}},
	by("text-cut", "a long locality", func(p *planting, s string) string { return cutAt(s, 255) }, "locality", "habitat"),
	by("text-cut", "long remarks", func(p *planting, s string) string { return cutAt(s, 255) }, "occurrenceRemarks", "plantDescription"),
	by("text-cut", "with letters of two bytes", func(p *planting, s string) string { return cutAt("à beira do ribeirão, "+s, 255) }, "locality", "occurrenceRemarks"),
	{"locality-country", "as written", func(p *planting) bool {
		return p.set("locality", p.get("country")+p.pick(": ", ", ", ". ", " - ")+p.get("locality"))
	}},
	{"locality-country", "in capitals", func(p *planting) bool {
		return p.set("locality", strings.ToUpper(p.get("country"))+p.pick(": ", ", ", "; ")+p.get("locality"))
	}},
	{"locality-country", "in English and others", func(p *planting) bool {
		other := map[string]string{"Spain": "España", "Turkey": "Türkei", "Brazil": "Brasil", "South Africa": "Afrique du Sud", "Mozambique": "Moçambique", "Chile": "Chili"}[p.get("country")]
		return other != "" && p.set("locality", other+p.pick(": ", ", ")+p.get("locality"))
	}},

	raw("row-ragged", "a cell too few", func(p *planting, line []byte) ([]byte, bool) {
		i := bytes.LastIndexByte(line, byte(p.comma))
		return line[:max(i, 0)], i > 0 && !bytes.ContainsRune(line[i:], '"')
	}),
	raw("row-ragged", "a cell too many", func(p *planting, line []byte) ([]byte, bool) {
		return append(slices.Clone(line), byte(p.comma), 'x'), true
	}),
	raw("row-ragged|row-shifted", "a comma in a text without quotes", func(p *planting, line []byte) ([]byte, bool) {
		return bytes.ReplaceAll(line, []byte(`"`), nil), p.comma == ',' && bytes.ContainsRune(line, '"')
	}),
	raw("cell-quote", "quotes inside a cell", func(p *planting, line []byte) ([]byte, bool) {
		return bytes.Replace(line, []byte("stony"), []byte(`"stony"`), 1), p.comma == ',' && bytes.Contains(line, []byte("on stony"))
	}),
	raw("cell-quote", "inches", func(p *planting, line []byte) ([]byte, bool) {
		return bytes.Replace(line, []byte("Roadside bank"), []byte(`Bank 5" deep`), 1), p.comma == ';' && bytes.Contains(line, []byte(";Roadside bank"))
	}),
	raw("cell-quote", "letters behind a quoted cell", func(p *planting, line []byte) ([]byte, bool) {
		return bytes.Replace(line, []byte("bank, damp in winter\""), []byte(`bank, damp in winter" often`), 1), p.comma == ',' && bytes.Contains(line, []byte("bank, damp in winter\""))
	}),
	raw("cell-unclosed|cell-quote|row-ragged", "before the last cell", func(p *planting, line []byte) ([]byte, bool) {
		i := bytes.LastIndexByte(line, byte(p.comma))
		return slices.Concat(line[:i+1], []byte(`"`), line[i+1:]), p.comma != '\t' && !bytes.ContainsRune(line[i:], '"')
	}),
	raw("cell-unclosed|cell-quote|row-ragged", "before the country", func(p *planting, line []byte) ([]byte, bool) {
		what := []byte(string(p.comma) + p.get("country") + string(p.comma))
		return bytes.Replace(line, what, slices.Concat([]byte{byte(p.comma), '"'}, what[1:]), 1), p.comma != '\t'
	}),
	raw("cell-unclosed|cell-quote|row-ragged", "the closing one lost", func(p *planting, line []byte) ([]byte, bool) {
		return bytes.Replace(line, []byte("bridge\""), []byte("bridge"), 1), bytes.Contains(line, []byte("bridge\""))
	}),
	raw("empty-row", "no cell filled", func(p *planting, line []byte) ([]byte, bool) {
		return bytes.Repeat([]byte{byte(p.comma)}, len(p.trip.terms)-1), true
	}),
	raw("empty-row", "blanks", func(p *planting, line []byte) ([]byte, bool) {
		return bytes.Join(slices.Repeat([][]byte{[]byte(" ")}, len(p.trip.terms)), []byte{byte(p.comma)}), true
	}),
	raw("empty-row", "no-break spaces", func(p *planting, line []byte) ([]byte, bool) {
		return bytes.Join(slices.Repeat([][]byte{[]byte("\u00a0")}, len(p.trip.terms)), []byte{byte(p.comma)}), true
	}),

	inHeading("heading-doubled", "one heading twice", func(p *planting) bool {
		return p.headed("habitat", p.trip.heading[p.column("locality")])
	}),
	inHeading("heading-doubled", "two words for one term", func(p *planting) bool {
		return p.headed("habitat", "Sammler", "collected by", "Colector")
	}),
	inHeading("heading-doubled", "the same in capitals", func(p *planting) bool {
		return p.headed("habitat", strings.ToUpper(p.trip.heading[p.column("family")]))
	}),
	inHeading("heading-unknown", "a misspelt heading", func(p *planting) bool {
		return p.headed("habitat", "habittat", "Hbitat", "Habitatx")
	}),
	inHeading("heading-unknown", "a word of the house", func(p *planting) bool {
		return p.headed("habitat", "moon phase", "box in the freezer", "Foto?")
	}),
	inHeading("heading-unknown", "a number", func(p *planting) bool {
		return p.headed("habitat", "Column 17", "Field7", "X.1")
	}),
	inHeading("heading-empty", "no heading", func(p *planting) bool {
		return p.headed(p.pick("habitat", "family", "identifiedBy"), "")
	}),
	inHeading("heading-empty", "a blank", func(p *planting) bool {
		return p.headed(p.pick("habitat", "family", "identifiedBy"), "  ")
	}),
	inHeading("heading-empty", "a tab", func(p *planting) bool {
		if p.comma == '\t' {
			return false
		}
		return p.headed(p.pick("habitat", "family", "identifiedBy"), "\t")
	}),
	inHeading("heading-missing", "rows alone", func(p *planting) bool {
		p.anew = p.bytes()[bytes.IndexByte(p.bytes(), '\n')+1:]
		return true
	}),
	inHeading("heading-missing", "rows alone, the first another", func(p *planting) bool {
		b := p.bytes()
		p.anew = bytes.Join(bytes.SplitAfter(b, []byte("\n"))[1+p.IntN(40):], nil)
		return true
	}),
	inHeading("heading-missing", "figures for headings", func(p *planting) bool {
		for i := range p.trip.heading {
			p.trip.heading[i] = strconv.Itoa(i + 1)
		}
		return true
	}),
}

func cutAt(s string, n int) string {
	s += strings.Repeat(", along the forest track that climbs towards the pass and the old mill", 5)
	s = string([]rune(s)[:n])
	if strings.HasSuffix(s, " ") {
		s = s[:len(s)-1] + "x"
	}
	return s
}
