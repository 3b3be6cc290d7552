package job

import (
	"fmt"
	"strings"
)

// others returns the other rows that have the same text in a column.
func (p *planting) others(term string) (rows []int) {
	i := p.column(term)
	for r := range p.trip.rows {
		if i >= 0 && r != p.row && p.trip.rows[r][i] == p.trip.rows[p.row][i] {
			rows = append(rows, r)
		}
	}
	return rows
}

// misspell changes one letter inside a word: left out, doubled, changed,
// exchanged with the next.
func (p *planting) misspell(w string) string {
	r := []rune(w)
	if len(r) < 5 {
		return w
	}
	for range 50 {
		at := 2 + p.IntN(max(1, len(r)-4))
		var out string
		switch p.IntN(4) {
		case 0:
			out = string(r[:at]) + string(r[at+1:])
		case 1:
			out = string(r[:at+1]) + string(r[at:])
		case 2:
			out = string(r[:at]) + p.pick("a", "e", "i", "l", "n", "r") + string(r[at+1:])
		case 3:
			out = string(r[:at]) + string(r[at+1]) + string(r[at]) + string(r[at+2:])
		}
		if out != w {
			return out
		}
	}
	return w
}

// word changes word n of the name, where the name stands in enough other rows.
func (p *planting) nameWord(n, enough int, f func(string) string) bool {
	w := strings.Fields(p.get("scientificName"))
	if len(p.others("scientificName")) < enough || n >= len(w) || len(w[n]) < 5 {
		return false
	}
	was := w[n]
	w[n] = f(was)
	if i := []string{"genus", "specificEpithet"}; n < 2 && p.has(i[n]) {
		p.quietly(i[n], w[n]) // who types a name twice, copies it
	}
	return p.set("scientificName", strings.Join(w, " "))
}

var nameFaults = []plantedFault{
	to("name-columns", "genus of another", "genus", "Cytisus", "Salvia"), to("name-columns", "epithet of another", "specificEpithet", "canariensis", "villosa"),
	{"name-columns", "authors of another", func(p *planting) bool {
		w := strings.Fields(p.get("scientificName"))
		return p.has("scientificNameAuthorship") && len(w) == 2 && p.set("scientificName", p.get("scientificName")+" Steud.") && p.named("scientificNameAuthorship")
	}},
	{"name-columns", "epithet misspelt", func(p *planting) bool { return p.change("specificEpithet", p.misspell) && p.named("scientificName") }},
	{"name-columns", "name of another row", func(p *planting) bool {
		other := p.trip.rows[p.IntN(len(p.trip.rows))][p.column("scientificName")]
		return p.has("genus") && strings.Fields(other)[0] != p.get("genus") && p.set("scientificName", other) && p.named("genus") && p.named("specificEpithet") && p.named("scientificNameAuthorship")
	}},
	to("qualifier-unplaced", "an epithet of another", "identificationQualifier", "cf. villosus", "aff. granatensis"),
	to("qualifier-unplaced", "a genus of another", "identificationQualifier", "cf. Hippocrepis", "Hippocrepis cf. comosa"),
	to("qualifier-unplaced", "words", "identificationQualifier", "doubtful", "unsure", "likely"),
	{"author-missing", "no author in the name", func(p *planting) bool { return p.authorless() }},
	{"author-missing", "no author in its column", func(p *planting) bool {
		p.named("scientificName")
		return !strings.Contains(p.get("scientificName"), " subsp.") && p.set("scientificNameAuthorship", "")
	}},
	{"author-missing", "of a name others have with its author", func(p *planting) bool { return len(p.others("scientificName")) > 1 && p.authorless() }},
	{"name-spelling", "a letter of the epithet", func(p *planting) bool { return p.nameWord(1, 3, p.misspell) }},
	{"name-spelling", "a letter of the genus", func(p *planting) bool { return p.nameWord(0, 3, p.misspell) }},
	{"name-spelling", "an ending", func(p *planting) bool {
		return p.nameWord(1, 3, func(s string) string {
			for _, e := range [][2]string{{"um", "us"}, {"us", "um"}, {"a", "um"}, {"a", "us"}, {"is", "e"}, {"e", "is"}} {
				if strings.HasSuffix(s, e[0]) {
					return strings.TrimSuffix(s, e[0]) + e[1]
				}
			}
			return s
		})
	}},
	{"name-spelling", "a letter of the author", func(p *planting) bool {
		return len(p.others("scientificName")) >= 3 && p.change("scientificName", func(s string) string {
			for _, author := range []string{"Hoffmanns", "Melderis", "Schult", "Hochst", "Medik"} {
				if strings.Contains(s, author) {
					return strings.Replace(s, author, map[string]string{"Hoffmanns": p.pick("Hofmanns", "Hoffmans"), "Melderis": p.pick("Melderiss", "Meldreis"), "Schult": "Shcult", "Hochst": "Hoschst", "Medik": "Meddik"}[author], 1)
				}
			}
			return s
		})
	}},
	by("name-form", "half a pair of brackets", func(p *planting, s string) string { return strings.Replace(s, p.pick("(", ")"), "", 1) }, "scientificName"),
	by("name-form", "a small genus", func(p *planting, s string) string { return strings.ToLower(s[:1]) + s[1:] }, "scientificName"),
	by("name-form", "a sign at the end", func(p *planting, s string) string { return s + p.pick(",", ";", " -", " ×") }, "scientificName"),
	by("name-form", "a figure in the epithet", func(p *planting, s string) string {
		w := strings.Fields(s)
		w[1] += p.pick("1", "2", "3")
		return strings.Join(w, " ")
	}, "scientificName"),
	by("name-form", "a rank without epithet", func(p *planting, s string) string { return s + p.pick(" var.", " subsp.") }, "scientificName"),
	by("name-capitals", "an epithet", func(p *planting, s string) string {
		w := strings.Fields(s)
		w[1] = strings.ToUpper(w[1][:1]) + w[1][1:]
		return strings.Join(w, " ")
	}, "scientificName"),
	by("name-capitals", "all", func(p *planting, s string) string { return strings.ToUpper(s) }, "scientificName"),
	by("name-capitals", "of the subspecies", func(p *planting, s string) string {
		before, after, ok := strings.Cut(s, " subsp. ")
		if !ok {
			return s
		}
		return before + " subsp. " + strings.ToUpper(after[:1]) + after[1:]
	}, "scientificName"),
	by("text-quoted", "marks around", func(p *planting, s string) string { return `"` + s + `"` }, "recordedBy", "identifiedBy"),
	by("person-form", "leg. before", func(p *planting, s string) string { return p.pick("leg. ", "Leg.: ", "coll. ") + s }, "recordedBy"),
	by("person-form", "det. before", func(p *planting, s string) string { return p.pick("det. ", "Det.: ") + s }, "identifiedBy"),
	{"person-form", "the number behind", func(p *planting) bool {
		n := p.get("recordNumber")
		return p.change("recordedBy", func(s string) string { return s + " " + strings.TrimPrefix(n, "LS-0") })
	}},
	by("person-form", "an initial left over", func(p *planting, s string) string {
		if s[1] != '.' {
			return s
		}
		return s + ", " + p.pick("M.", "H.") + ", P. Ruiz"
	}, "recordedBy"),
	{"person-spelling", "the accent lost", func(p *planting) bool {
		return p.change("recordedBy", func(s string) string { return strings.Replace(s, "ã", "a", 1) })
	}},
	by("person-spelling", "a letter", func(p *planting, s string) string {
		for _, w := range []string{"Almeida", "Coutinho", "Sarmento", "Brandão"} {
			if strings.Contains(s, w) {
				wrong := map[string]string{"Almeida": p.pick("Almieda", "Allmeida", "Ameida"), "Coutinho": p.pick("Cotinho", "Coutihno"), "Sarmento": p.pick("Sarmemto", "Samrento"), "Brandão": p.pick("Bandão", "Brandaõ")}[w]
				return strings.Replace(s, w, wrong, 1)
			}
		}
		return s
	}, "recordedBy"),
	by("person-spelling", "of who determined", func(p *planting, s string) string {
		return strings.NewReplacer("Almeida", "Almedia", "Brandão", "Brandao", "Sarmento", "Sarmeno").Replace(s)
	}, "identifiedBy"),
	by("place-small", "all letters", func(_ *planting, s string) string { return strings.ToLower(s) }, "country", "stateProvince", "county", "municipality"),
	{"place-spelling", "an accent or a letter", func(p *planting) bool {
		term := p.pick("stateProvince", "county", "municipality")
		return len(p.others(term)) >= 4 && p.change(term, func(s string) string {
			for _, r := range [][2]string{{"ú", "u"}, {"é", "e"}, {"ã", "a"}, {"á", "a"}, {"ç", "c"}, {"â", "a"}, {"ó", "o"}, {"ê", "e"}, {"í", "i"}} {
				if strings.Contains(s, r[0]) {
					return strings.Replace(s, r[0], r[1], 1)
				}
			}
			return s
		})
	}},
	{"family-spelling", "a letter", func(p *planting) bool { return len(p.others("family")) >= 3 && p.change("family", p.misspell) }},
	{"family-spelling", "an ending", func(p *planting) bool {
		return len(p.others("family")) >= 3 && p.change("family", func(s string) string {
			return strings.TrimSuffix(s, "aceae") + p.pick("aeceae", "acea", "ceae", "aceaea", "aceæ")
		})
	}},
	{"family-spelling", "once only", func(p *planting) bool {
		return len(p.others("family")) == 0 && len(p.get("family")) > 11 && p.change("family", p.misspell)
	}},
	{"family-names", "the other name", func(p *planting) bool {
		old := map[string]string{"Fabaceae": "Leguminosae", "Lamiaceae": "Labiatae", "Asteraceae": "Compositae", "Poaceae": "Gramineae", "Brassicaceae": "Cruciferae", "Apiaceae": "Umbelliferae"}[p.get("family")]
		return old != "" && len(p.others("family")) >= 1 && p.set("family", old)
	}},
	{"genus-families", "family of another row", func(p *planting) bool {
		other := p.trip.rows[p.IntN(len(p.trip.rows))][p.column("family")]
		return len(p.others("scientificName")) >= 2 && p.set("family", other)
	}},
	{"family-names", "an older family", func(p *planting) bool {
		other := map[string]string{"Digitalis": "Scrophulariaceae", "Linaria": "Scrophulariaceae", "Anagallis": "Myrsinaceae", "Asphodelus": "Liliaceae", "Allium": "Liliaceae", "Davallia": "Polypodiaceae"}[strings.Fields(p.get("scientificName"))[0]]
		return other != "" && len(p.others("scientificName")) >= 1 && p.set("family", other)
	}},
	{"family-names", "an older family in capitals", func(p *planting) bool {
		other := map[string]string{"Digitalis": "SCROPHULARIACEAE", "Linaria": "SCROPHULARIACEAE", "Asphodelus": "LILIACEAE", "Allium": "LILIACEAE", "Ulex": "PAPILIONACEAE", "Lupinus": "LEGUMINOSAE"}[strings.Fields(p.get("scientificName"))[0]]
		return other != "" && len(p.others("scientificName")) >= 1 && p.set("family", other)
	}},
	{"genus-families", "a genus that stands once", func(p *planting) bool {
		g := strings.Fields(p.get("scientificName"))[0]
		known := map[string]bool{"Quercus": true, "Erica": true, "Genista": true, "Carex": true, "Viola": true, "Rosa": true, "Narcissus": true, "Teucrium": true, "Briza": true}
		return known[g] && p.set("family", p.pick("Pinaceae", "Malvaceae", "Violaceae", "Orchidaceae")) && (g != "Viola" || p.get("family") != "Violaceae")
	}},
	{"genus-families", "two of three", func(p *planting) bool {
		return len(p.others("scientificName")) == 2 && p.set("family", p.pick("Cactaceae", "Piperaceae", "Myristicaceae"))
	}},
	{"genus-families", "the next row's", func(p *planting) bool {
		next := p.trip.rows[(p.row+1)%len(p.trip.rows)][p.column("family")]
		return len(p.others("scientificName")) >= 2 && p.set("family", next)
	}},
	{"VALIDATION_POLYNOMIAL_CONSISTENT", "genericName", func(p *planting) bool { return p.asColumn("habitat", "genericName", p.pick("Satureja", "Cytisus")) }},
	{"VALIDATION_POLYNOMIAL_CONSISTENT", "genericName misspelt", func(p *planting) bool {
		return p.asColumn("habitat", "genericName", p.misspell(strings.Fields(p.get("scientificName"))[0]))
	}},
	{"VALIDATION_POLYNOMIAL_CONSISTENT", "a genus in capitals' place", func(p *planting) bool {
		return p.asColumn("habitat", "genericName", p.pick("Erodium", "Hypericum", "Galium"))
	}},
}

func (p *planting) authorless() bool {
	w := strings.Fields(p.get("scientificName"))
	n := 2
	if len(w) > 2 && w[2] == "subsp." {
		n = 4
	}
	return len(w) > n && !p.has("scientificNameAuthorship") && p.set("scientificName", strings.Join(w[:n], " "))
}

// asColumn makes a column one of another term: filled with what the names say,
// but for the row.
func (p *planting) asColumn(column, term, value string) bool {
	i := p.column(column)
	if i < 0 {
		return false
	}
	p.trip.heading[i] = term
	for r := range p.trip.rows {
		if term == "genericName" {
			p.trip.rows[r][i] = strings.Fields(p.at(r, "scientificName"))[0]
		} else {
			p.trip.rows[r][i] = ""
		}
	}
	if p.trip.rows[p.row][i] == value {
		return false
	}
	p.trip.rows[p.row][i] = value
	return p.named(term)
}

// sameStop returns a row of the same stop and collector, other than the row.
func (p *planting) sameStop() (int, bool) {
	for r := range p.trip.rows {
		if r != p.row && p.stop[r] == p.stop[p.row] && p.at(r, "scientificName") != p.get("scientificName") {
			return r, true
		}
	}
	return 0, false
}

// otherStop returns a row of the same collector at another stop.
func (p *planting) otherStop(off int) (int, bool) {
	r := (p.row + off) % len(p.trip.rows)
	return r, p.person[r] == p.person[p.row] && p.stop[r] != p.stop[p.row]
}

// numberFaults are in numbers, parts and duplicates.
var numberFaults = []plantedFault{
	{"name-missing", "lost", func(p *planting) bool {
		for _, term := range []string{"family", "genus", "specificEpithet", "scientificNameAuthorship", "vernacularName"} {
			p.set(term, "")
		}
		return p.set("scientificName", "")
	}},
	to("number-missing", "empty", "recordNumber", ""), to("number-missing", "blanks", "recordNumber", "  ", "\u00a0"),
	{"number-missing", "lost", func(p *planting) bool { return p.set("recordNumber", "") }},
	{"number-name", "the surname before it", func(p *planting) bool {
		by := strings.FieldsFunc(p.get("recordedBy"), func(r rune) bool { return strings.ContainsRune("|,;& ", r) })
		return len(by) > 1 && len(by[1]) > 3 && p.change("recordNumber", func(s string) string { return by[1] + " " + s })
	}},
	to("number-month", "year and number", "recordNumber", "May-97", "Jun-04", "Dec-96"), to("number-month", "number and year", "recordNumber", "5-May", "12-Jun", "3/Mar"),
	to("number-month", "in Portuguese or German", "recordNumber", "mai-97", "Dez-04", "fev-99", "12-Okt"), to("number-month", "a date", "recordNumber", "2004-05-12", "5/12/1997", "1997-05-01 00:00:00"),
	to("number-scientific", "catalogue number", "catalogNumber", "1.23457E+11", "1,2E+05", "4.00E+06"), to("number-scientific", "number", "recordNumber", "1.2E+05", "2E+03", "1.5e+10"),
	to("number-scientific", "small letter", "catalogNumber", "1.23457e+11", "9.1e+07"),
	{"number-zeros", "catalogue number", func(p *planting) bool {
		return p.change("catalogNumber", func(s string) string { return dropZeros(s) })
	}},
	{"number-zeros", "number", func(p *planting) bool { return p.change("recordNumber", dropZeros) }},
	{"number-zeros", "one zero", func(p *planting) bool {
		return p.change(p.pick("catalogNumber", "recordNumber"), func(s string) string { return strings.Replace(s, "-0", "-", 1) })
	}},
	{"number-order", "a year before", func(p *planting) bool { return p.year(-1) && p.inside(20) }},
	{"number-order", "a year after", func(p *planting) bool { return p.year(1) && p.inside(20) }},
	{"number-order", "a slip of the year", func(p *planting) bool { return p.year([]int{-10, 9, -9, 2}[p.IntN(4)]) && p.inside(20) }},
	{"number-order|number-twice", "two figures of the number exchanged", func(p *planting) bool {
		return p.inside(30) && p.change("recordNumber", func(s string) string {
			b := []byte(s)
			n := len(b)
			b[n-2], b[n-1] = b[n-1], b[n-2]
			return string(b)
		})
	}},
	{"number-order", "day and month exchanged", func(p *planting) bool {
		if !p.inside(20) || p.has("year") {
			return false
		}
		y, m, d := p.ymd()
		return d <= 12 && (d-m > 1 || m-d > 1) && p.setDate(y, d, m)
	}},
	{"number-twice", "of another day", func(p *planting) bool { return p.numberOf(5 + p.IntN(20)) }},
	{"number-twice", "of the next stop", func(p *planting) bool { return p.numberOf(3 + p.IntN(6)) }},
	{"number-twice", "of long ago", func(p *planting) bool { return p.numberOf(30 + p.IntN(30)) }},
	{"number-names", "the row before's", func(p *planting) bool {
		r, ok := p.sameStop()
		p.rows = []int{r}
		p.named("scientificName")
		return ok && p.quietly("recordNumber", p.at(r, "recordNumber"))
	}},
	{"number-names", "a row repeated with another plant", func(p *planting) bool {
		row := append([]string(nil), p.trip.rows[p.row]...)
		p.trip.rows[p.row] = row
		r, ok := p.sameStop()
		p.rows = []int{r}
		p.named("scientificName")
		return ok && p.quietly("recordNumber", p.at(r, "recordNumber")) && p.quietly("catalogNumber", "") != p.has("nothing")
	}},
	{"number-names", "the number not typed on", func(p *planting) bool {
		r := p.row - 1
		if r < 0 || p.stop[r] != p.stop[p.row] || p.at(r, "scientificName") == p.get("scientificName") {
			return false
		}
		p.rows = []int{r}
		return p.named("scientificName") && p.quietly("recordNumber", p.at(r, "recordNumber"))
	}},
	to("preparations-unknown", "a misspelt part", "preparations", "shet", "pakcet: capsules", "sheet | bxo: cone"), to("preparations-unknown", "no part", "preparations", "yes", "in the freezer", "3 rubbings"),
	to("preparations-other", "of another kind", "preparations", "sheet | leaf rubbing", "Fragmento vegetal", "cigarette box lid"),
	to("preparations", "a count that is none", "preparations", "0 sheets", "-1 sheet", "sheet 3 of 2", "2", "2 dup.", "several sheets"),
	to("copies", "words", "copies", "two", "many"), to("copies", "none", "copies", "0", "-1", "1.5"), to("copies", "too many", "copies", "100", "1000"),
	to("duplicates", "words", "duplicatesTo", "PINHEL | Soutelo", "to Pinhel"), to("duplicates", "a sign", "duplicatesTo", "PINHEL + ALTAVX?", "K!"),
	to("duplicates", "too long", "duplicatesTo", "PINHELSOUTELO", "ABCDEFGHI"),
	to("duplicate-twice", "side by side", "duplicatesTo", "PINHEL | PINHEL", "SOUTELO, SOUTELO"), to("duplicate-twice", "apart", "duplicatesTo", "PINHEL | SOUTELO | PINHEL"),
	to("duplicate-twice", "thrice", "duplicatesTo", "ALTAVX; ALTAVX; ALTAVX"),
	to("duplicate-to-us", "alone", "duplicatesTo", "VDOURA"), to("duplicate-to-us", "first", "duplicatesTo", "VDOURA | PINHEL"), to("duplicate-to-us", "last", "duplicatesTo", "PINHEL, VDOURA"),
	to("catalogue-number-letters", "a dash", "catalogNumber", "VDOURA–0001234", "VDOURA—0001234"), to("catalogue-number-letters", "an accent", "catalogNumber", "ÉVORA-0001234"),
	to("catalogue-number-letters|text-lookalike", "a Greek letter", "catalogNumber", "VDOURΑ-0001234"),
	{"catalogue-number-twice", "of another row", func(p *planting) bool { return p.catalogueOf(7) }},
	{"catalogue-number-twice", "of the row before", func(p *planting) bool { return p.catalogueOf(len(p.trip.rows) - 1) }},
	{"catalogue-number-twice", "far away", func(p *planting) bool { return p.catalogueOf(41) }},
}

func dropZeros(s string) string {
	prefix, digits, ok := strings.Cut(s, "-")
	if !ok || !strings.HasPrefix(digits, "0") {
		return s
	}
	return prefix + "-" + strings.TrimLeft(digits, "0")
}

// inside reports whether the collector has so many records before and after
// the row that its numbers say something.
func (p *planting) inside(n int) bool {
	before, after, all := 0, 0, 0
	for r := range p.trip.rows {
		if p.person[r] == p.person[p.row] {
			all++
			if p.stop[r] < p.stop[p.row] {
				before++
			} else if p.stop[r] > p.stop[p.row] {
				after++
			}
		}
	}
	p.named("recordNumber")
	return before >= 3 && after >= 3 && all >= n && p.get("recordNumber") != ""
}

func (p *planting) ymd() (y, m, d int) {
	fields := strings.FieldsFunc(p.get("verbatimEventDate")+"."+p.get("eventDate"), func(r rune) bool { return r == '.' || r == '-' })
	if !p.has("verbatimEventDate") {
		fmt.Sscanf(p.get("eventDate"), "%d-%d-%d", &y, &m, &d)
		return
	}
	fmt.Sscan(fields[0], &d)
	fmt.Sscan(fields[2], &y)
	for i, r := range roman {
		if r == fields[1] {
			m = i + 1
		}
	}
	return
}

// setDate sets every column that says the day of collecting.
func (p *planting) setDate(y, m, d int) bool {
	iso := fmt.Sprintf("%d-%02d-%02d", y, m, d)
	if !strings.Contains(p.get("eventDate"), "-") {
		iso = fmt.Sprintf("%d %s %d", d, months[m-1], y)
	}
	p.quietly("verbatimEventDate", fmt.Sprintf("%d.%s.%d", d, roman[m-1], y))
	p.quietly("year", fmt.Sprint(y))
	p.quietly("month", fmt.Sprint(m))
	p.quietly("day", fmt.Sprint(d))
	p.quietly("dateIdentified", fmt.Sprint(max(y+1, int(num(p.get("dateIdentified"))))))
	return p.set("eventDate", iso)
}

func (p *planting) year(by int) bool {
	y, m, d := p.ymd()
	return y+by < 2026 && p.setDate(y+by, m, d)
}

func (p *planting) numberOf(off int) bool {
	r, ok := p.otherStop(off)
	p.rows = []int{r}
	return ok && p.set("recordNumber", p.at(r, "recordNumber"))
}

func (p *planting) catalogueOf(off int) bool {
	r := (p.row + off) % len(p.trip.rows)
	p.rows = []int{r}
	return p.set("catalogNumber", p.at(r, "catalogNumber")) && r != p.row
}
