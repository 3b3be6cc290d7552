package form

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/lang"
)

// maxKept bounds what keep ties together, in characters: about half a line of
// the usual label. Longer chains may break between their links.
const maxKept = 34

// keep splits running text into runs in which a line must not break where the
// trade forbids it: between a number and its unit, initials and surname, an
// abbreviation and what it belongs to, day and month, a rank and its epithet,
// × and its name. Joining the runs gives the text back unchanged.
//
// Sources: SI brochure, 9th edition, 5.4.3 (number and unit); The Chicago
// Manual of Style, 17th edition, 7.48 and 2.83, from memory (initials,
// figures with abbreviations); the rest is common practice, no source.
func keep(text string, at label.Origin) []label.Run {
	var runs []label.Run
	plain := 0 // where the text not yet given out begins
	emit := func(from, to int) {
		if plain < from {
			runs = append(runs, label.Run{Text: text[plain:from], Origin: at})
		}
		runs = append(runs, label.Run{Text: text[from:to], Keep: true, Origin: at})
		plain = to
	}
	words := wordsOf(text)
	for i := 0; i < len(words); {
		j := i
		size := utf8.RuneCountInString(words[i].text)
		for j+1 < len(words) && text[words[j].to:words[j+1].from] == " " && tied(words, j) {
			size += 1 + utf8.RuneCountInString(words[j+1].text)
			if size > maxKept {
				break
			}
			j++
		}
		if j > i || fragile(words[i].text) {
			emit(words[i].from, words[j].to)
		}
		i = j + 1
	}
	if plain < len(text) {
		runs = append(runs, label.Run{Text: text[plain:], Origin: at})
	}
	return runs
}

// shortAuthors ties an author of a letter or two, "L." or "DC.", to the epithet
// before it: alone at the beginning of a line it reads as an initial.
func shortAuthors(runs []label.Run) []label.Run {
	var out []label.Run
	for i, r := range runs {
		if i == 0 || runs[i-1].Style&label.Italic == 0 || r.Style&label.Italic != 0 || !strings.HasPrefix(r.Text, " ") {
			out = append(out, r)
			continue
		}
		author, rest, _ := strings.Cut(r.Text[1:], " ")
		n := utf8.RuneCountInString(strings.TrimRight(author, ".,;:)"))
		if n == 0 || n > 2 || !capital(author) {
			out = append(out, r)
			continue
		}
		out[len(out)-1].Glue = true
		short, long := r, r
		short.Text, short.Keep = r.Text[:1+len(author)], true
		if out = append(out, short); rest != "" {
			long.Text = r.Text[1+len(author):]
			out[len(out)-1].Glue = false
			out = append(out, long)
		}
	}
	return out
}

// A word is a stretch of text without blanks, and where it stands.
type word struct {
	text     string
	from, to int
}

func wordsOf(text string) []word {
	var words []word
	from := -1
	for i, r := range text {
		switch {
		case unicode.IsSpace(r) && from >= 0:
			words = append(words, word{text[from:i], from, i})
			from = -1
		case !unicode.IsSpace(r) && from < 0:
			from = i
		}
	}
	if from >= 0 {
		words = append(words, word{text[from:], from, len(text)})
	}
	return words
}

// tied reports whether no line may end between words i and i+1.
func tied(words []word, i int) bool {
	a, b := words[i].text, words[i+1].text
	open := strings.TrimLeft(a, "([{„“«‘\"'")
	shut := strings.TrimRight(b, ".,;:)]}!?”“»’\"'")
	switch {
	case a == "–" || a == "—" || a == "-":
		return false // a dash ends a line rather than begin one
	case b == "–" || b == "—" || b == "-":
		return true
	}
	figures := startsWithFigure(b)
	next := "" // the word after b
	if i+2 < len(words) {
		next = words[i+2].text
	}
	last := "" // the word before a
	if i > 0 {
		last = strings.TrimLeft(words[i-1].text, "([")
	}
	small := strings.ToLower(open)
	return endsInFigure(a) && (units[shut] || units[strings.TrimSuffix(b, ".")] || b[0] == '%' || degreeMark(shut) ||
		points[strings.TrimRight(shut, ".")] || (shut == "×" || shut == "x") && startsWithFigure(next)) ||
		degreeEnd(a) && (figures || points[shut]) ||
		figures && (signs[open] || before[small] || approx[small] || prepositions[small]) ||
		(before[small] || prepositions[small]) && approx[strings.ToLower(b)] ||
		open == "×" || open == "+" && capital(b) ||
		open == "x" && endsInFigure(last) && figures ||
		// L. f.
		strings.HasSuffix(open, ".") && capital(open) && b[0] == 'f' && (shut == "f" || shut == "fil") ||
		initials(open) && (capital(b) || particles[b] || epithet(shut)) ||
		particles[a] && capital(b) && (initials(last) || i > 1 && particles[last] && initials(words[i-2].text)) ||
		titles[open] && capital(b) ||
		ranks[open] && (epithet(shut) || shut == "×") ||
		(shut == "sp" || shut == "spp") && b != "sp" && capital(open) ||
		axes[strings.ToLower(shut)] && points[strings.TrimRight(open, ".")] ||
		axes[strings.ToLower(strings.TrimRight(open, "."))] && (points[shut] || figures) ||
		dayOfMonth(open) && (month(shut) || ofMonth[b] && month(strings.TrimRight(next, ".,;:)"))) ||
		ofMonth[a] && dayOfMonth(last) && month(shut) ||
		figures && capital(open) && dayOfMonth(strings.TrimRight(b, ",.;)")) && month(strings.TrimRight(open, "."))
}

// fragile reports whether a word may not be broken inside: it has figures
// around a dash, full stop, slash or sign of degrees, such as 12.vi.1987,
// 1240–1260 or 40°21′, or is a reference such as n.º12.
func fragile(w string) bool {
	figure, joint := false, false
	for i, r := range w {
		switch {
		case r >= '0' && r <= '9':
			figure = true
		case i > 0 && strings.ContainsRune("-–./:°º′″'\"×±,’", r) && i+utf8.RuneLen(r) < len(w):
			joint = true
		}
	}
	return figure && joint || initials(w) && strings.Count(w, ".") > 1
}

func set(words string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(words) {
		m[w] = true
	}
	return m
}

// The words that tie, in the languages of labels.
var (
	units = set(`mm cm dm m km ha a ft feet foot yd yds mi mile miles in. mm² cm² dm² m² km² m2 km2 m³ cm³ mg g kg t ml cl dl l L µm nm
		h min s % ‰ °C °F K ppm p.p.m. asl a.s.l. m.a.s.l. m.a.s.l masl msnm m.s.n.m. m.s.m. s.m. m.ü.M. metre metres meter meters
		metro metros mètre mètres Meter pés pies pieds Fuß hectares hectare ares years days days' ex. exx a.m. p.m. am pm`)
	signs  = set("± < > ≤ ≥ ~ ≈ × + − § ø Ø")
	points = set("N S E W O NE NW SE SW NO SO NNE NNW ENE ESE SSE SSW WSW WNW")
	axes   = set("lat lat. latitude long long. lon lon. longitude")
	before = set(`km no. no nº n.º n° nr. nr nos. p. pp. pág. pag. fig. figs. tab. pl. vol. f. fol. nos n.os
		alt. elev. alt elev altitude elevation dbh d.b.h. plot plots plate mile m.p. en e.n. r. rte. rte route hwy hwy. road estrada
		quadrat transect grid utm`)
	approx = set("c. ca. ca cca. circa approx. approx aprox. env. etwa about cerca")
	titles = set(`St. St Ste. Sta. Sto. Sta Sto S. Mt. Mt Mte. Pto. Pta. Rio R. Dr. Dra. Prof. Sr. Sra. Srª D. Eng. Mr. Mrs. Ms. Fr.
		Cabo Serra Monte`)
	ranks = set(`subsp. ssp. subsp ssp var. var f. fo. fma. forma subvar. subf. sect. subg. subgen. ser. subser. nothosubsp. nothovar.
		cv. cf. cf aff. aff convar. prol. lusus agg.`)
	prepositions = set("at to of by in on for from near with a à de em com até en con da do des du au auf bei bis um mit von ca")
	particles    = set("de da do dos das di del della der den du la le van von zu zur y e i")
	ofMonth      = set("de")
)

func startsWithFigure(s string) bool {
	s = strings.TrimLeft(s, "±~<>≤≥−-+(")
	return s != "" && s[0] >= '0' && s[0] <= '9' || strings.HasPrefix(s, "½") || strings.HasPrefix(s, "¼") || strings.HasPrefix(s, "¾")
}

func endsInFigure(s string) bool {
	return s != "" && s[len(s)-1] >= '0' && s[len(s)-1] <= '9' ||
		strings.HasSuffix(s, "½") || strings.HasSuffix(s, "¼") || strings.HasSuffix(s, "¾")
}

// degreeEnd reports whether a word ends in a sign of degrees, minutes or
// seconds after a figure.
func degreeEnd(s string) bool {
	t := strings.TrimRight(s, "°º′″'\"´’”")
	return t != s && endsInFigure(t)
}

func degreeMark(s string) bool {
	return s != "" && strings.Trim(s, "°º′″'\"´’”") == ""
}

// capital reports whether a word begins with a capital letter.
func capital(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsUpper(r)
}

// epithet reports whether a word looks like an epithet: small letters and
// hyphens, three at least.
func epithet(s string) bool {
	n := 0
	for _, r := range s {
		if !unicode.IsLower(r) && r != '-' {
			return false
		}
		n++
	}
	return n >= 3
}

// initials reports whether a word is made of capitals with full stops, as in
// "I.", "J.M." or "J.-P."
func initials(s string) bool {
	if !strings.HasSuffix(s, ".") {
		return false
	}
	for s != "" {
		s = strings.TrimPrefix(s, "-")
		r, n := utf8.DecodeRuneInString(s)
		if !unicode.IsUpper(r) || n == len(s) || s[n] != '.' {
			return false
		}
		s = s[n+1:]
	}
	return true
}

// dayOfMonth reports whether a word is a figure from 1 to 31, perhaps with
// the mark of an ordinal.
func dayOfMonth(s string) bool {
	for _, mark := range []string{".", "º", "°", "st", "nd", "rd", "th", "er"} {
		if t := strings.TrimSuffix(s, mark); t != s {
			s = t
			break
		}
	}
	n := 0
	for _, r := range s {
		if r < '0' || r > '9' {
			return false
		}
		n = n*10 + int(r-'0')
	}
	return len(s) <= 2 && n >= 1 && n <= 31
}

// month reports whether a word names a month, in full or by three letters or
// more. "mar" (the sea) and "set", which are words of their own in Portuguese
// and Spanish, do no harm: they count only beside a day.
func month(s string) bool {
	return len(s) >= 3 && len(lang.FindMonth(s)) > 0
}
