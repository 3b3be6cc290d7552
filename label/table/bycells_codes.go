package table

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"cornerslip/label"
)

// codesOfCollectors reads a column headed "Código" or "Code", which may be of anything,
// as the collectors' numbers, where no other column has those and its cells begin with
// the initials of the row's collector: IA-214 beside I. Almeida.
func (t *Table) codesOfCollectors(r *resolver, rows []*Row) {
	people, ok := r.taken["recordedBy"]
	if r.has("recordNumber") || !ok || t.columns[people].group != nil {
		return
	}
	if r.has("collectorAndNumber") {
		return
	}
	for i := range t.columns {
		c := &t.columns[i]
		if key := headingKey(c.Heading); c.Known || c.group != nil || key != "codigo" && key != "code" && key != "clave" && key != "kod" {
			continue
		}
		filled, fits := 0, 0
		for _, row := range rows {
			if !row.filled(i) {
				continue
			}
			filled++
			m := initialedNumber.FindStringSubmatch(strings.TrimSpace(row.Cells[i].Text))
			if m != nil && row.filled(people) && areInitials(m[1], row.Cells[people].Text) {
				fits++
			}
		}
		if fits >= 3 && 10*fits >= 9*filled {
			t.settle(r, i, "recordNumber", "recordNumber, for its cells begin with the collectors' initials")
			return
		}
	}
}

// initialedNumber is a number behind two initials or more.
var initialedNumber = regexp.MustCompile(`^([A-Z]{2,5})[-_. /]?\d{1,6}[a-z]?$`)

// areInitials reports whether letters are initials of the first of some persons, in any
// order, for surnames stand before or behind.
func areInitials(letters, people string) bool {
	first := people
	if i := strings.IndexAny(people, ";|&"); i >= 0 {
		first = people[:i]
	}
	var has []rune
	for w := range strings.FieldsFuncSeq(norm.NFC.String(first), func(r rune) bool { return !unicode.IsLetter(r) && r != '\'' && r != '’' }) {
		if r := []rune(norm.NFKD.String(w))[0]; unicode.IsUpper(r) {
			has = append(has, r)
		}
	}
	for _, r := range letters {
		i := slices.Index(has, r)
		if i < 0 {
			return false
		}
		has = slices.Delete(has, i, i+1)
	}
	return true
}

// onlyNatural reports whether the cells of a column of regions are those of nature or of
// the whole world, which no state is: the Andes, Central America. Beside a column of
// states, sides of a country are such too, and the regions of Brazil.
func (r *resolver) onlyNatural(c *Column, rows []*Row) bool {
	if c.Term != "stateProvince" || !regionHeadings[headingKey(c.Heading)] {
		return false
	}
	if c.group == nil {
		return shareOf(rows, c.Index, isNatural) > 0.9
	}
	return shareOf(rows, c.Index, func(s string) bool {
		return isNatural(s) || sideOfAll.MatchString(strings.TrimSpace(s)) || sidesOfBrazil[headingKey(s)]
	}) > 0.9
}

var regionHeadings = wordSet("region | región | região | régions | région | regione | regions | regiones")

func isNatural(s string) bool { return naturalRegions[headingKey(s)] }

// naturalRegions are the regions of nature by which Latin American tables sort their
// places, and parts of the world. Amazonas is a state of four countries, and so are
// Central and Eastern elsewhere.
var naturalRegions = wordSet("andes | andina | region andina | los andes | andean | caribe | caribbean | region caribe | pacifico | pacifica | pacific | region pacifica | orinoquia | llanos | llanos orientales | amazonia | region amazonica | amazon | choco biogeografico | " +
	"chaco | cerrado | caatinga | mata atlantica | atlantic forest | pantanal | pampa | sierra | costa | selva | altiplano | puna | " +
	"central america | centroamerica | america central | mesoamerica | south america | sudamerica | suramerica | america do sul | america del sur | north america | norteamerica | america do norte | america del norte | latin america | " +
	"west indies | antilles | neotropics | neotropical | nearctic | palearctic | palaearctic | afrotropics | afrotropical | indomalaya | australasia | africa | europe | europa | asia | oceania | southeast asia | east africa | west africa | southern africa | north africa | mediterranean | macaronesia | " +
	"temperate | tropical | subtropical | boreal | alpine | subalpine | montane | arctic | subarctic | antarctic | atlantic | continental | arid | semiarid | eurosiberian")

var sidesOfBrazil = wordSet("norte | nordeste | sul | sudeste | centro oeste")

// codesOfSites says of a column of places whose cells are codes, as A1 or P-03, that
// they are printed: beside coordinates no other word is said of them.
func (t *Table) codesOfSites(r *resolver, rows []*Row) {
	i, ok := r.taken["locality"]
	if !ok || t.columns[i].group != nil || shareOf(rows, i, siteCode.MatchString) < 0.95 || !r.placed() {
		return
	}
	seen, example := map[string]bool{}, ""
	for _, row := range rows {
		if row.filled(i) {
			seen[row.Cells[i].Text] = true
			example = cmp.Or(example, strings.TrimSpace(row.Cells[i].Text))
		}
	}
	if c := &t.columns[i]; len(seen) >= 3 {
		t.findings = append(t.findings, label.Finding{Origin: c.Origin, Value: c.Heading, Rule: ruleHeadingReading.Name, Severity: label.Note,
			Message: fmt.Sprintf("heading %q is read as locality, and its cells are codes, as %q: they are printed, and say no place to whoever has not the table", c.Heading, example)})
	}
}

// placed reports whether columns have coordinates.
func (r *resolver) placed() bool {
	return slices.ContainsFunc([]string{"decimalLatitude", "verbatimLatitude", "verbatimCoordinates", "latitudeDegrees", "easting"}, r.has)
}

var siteCode = regexp.MustCompile(`^\s*(?:(?i:site|plot|stand|station|transect|point|parcela|ponto|punto|sitio)[ ._-]?)?[A-Z]{0,3}[-_. ]?\d{1,3}[A-Za-z]?\s*$`)
