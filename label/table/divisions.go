package table

import (
	"regexp"
	"slices"
	"strings"
)

// divisionWords are words of which several may stand at the heads of one table, for
// parts of a country and parts of these: which of two is the greater is each country's
// own affair. A state is none of them: it is the greatest wherever it stands.
var divisionWords = wordSet("provincia | província | provincias | pcia. | prov. | province | departamento | depto. | dpto. | dept. | département | departement | distrito | región | regione | région | região | regiao | region | regija | provincie | provinsi")

// flowering is what is said of how a plant was, in Spanish and Portuguese: that it had
// flowers, fruits, buds or none of these.
var flowering = regexp.MustCompile(`(?i)^((en |em |con |com |e |y )?(fls?|frs?|flor|flores|flora[cç][aã]o|floración|frutos?|fructificación|frutifica[cç][aã]o|veg|vegetativ[ao]|est|est[eé]ril|f[eé]rt|f[eé]rtil|bot|botón|botones|botão|botões)\b\.?[ ,;/+&-]*)+$`)

// conditions reads a column headed "Estado" as how the plants were, where its cells say
// that they flowered or not.
func (t *Table) conditions(r *resolver, rows []*Row) {
	has := r.has("reproductiveCondition")
	for i := range t.columns {
		c := &t.columns[i]
		if c.Term != "stateProvince" || !c.Known || has || headingKey(c.Heading) != "estado" || t.filledIn(rows, i) < 3 || shareOf(rows, i, flowers) < 0.8 {
			continue
		}
		if g := c.group; g == nil {
			delete(r.taken, "stateProvince")
		} else {
			t.leave(i)
			r.taken["stateProvince"] = g.columns[0]
			if len(g.columns) == 1 {
				t.undouble("stateProvince")
			}
		}
		t.settle(r, i, "reproductiveCondition", "reproductiveCondition, for its cells say how the plants were")
		return
	}
}

func flowers(s string) bool { return flowering.MatchString(strings.TrimSpace(s)) }

// anyLanguage are those of them that are English too, in which a table of the
// Philippines has regions above its provinces, which are what lists call states there.
var anyLanguage = wordSet("prov. | province | dept. | region")

// divisions parts columns that were all taken for the greatest parts of a country, such
// as "Departamento" and "Provincia", or "Provincia" and "Departamento": the one that
// stands first has them, unless another has far fewer different cells; the others are
// the county.
func (t *Table) divisions(r *resolver, rows []*Row) {
	first, ok := r.taken["stateProvince"]
	if !ok || t.columns[first].group == nil {
		return
	}
	columns := slices.DeleteFunc(slices.Clone(t.columns[first].group.columns), func(i int) bool { return r.onlyNatural(&t.columns[i], rows) })
	local := false
	for _, i := range columns {
		key := headingKey(t.columns[i].Heading)
		if m := r.read[i].meaning; m == nil || !m.plain || r.read[i].remark != "" || !divisionWords[key] {
			return
		}
		local = local || !anyLanguage[key]
	}
	if !local || len(columns) < 2 || !t.filledTogether(rows, columns) {
		return // words of English, or for one country each
	}
	top := columns[0]
	for _, i := range columns[1:] {
		if n := t.different(rows, top); n >= 4 && n >= 2*t.different(rows, i) || t.headed(top, departmentWord) && t.headed(i, regionWord) && partsOf(rows, top, i) {
			top = i
		}
	}
	t.undouble("stateProvince")
	for _, i := range columns {
		if i != top {
			t.leave(i)
		}
	}
	if g := t.columns[top].group; g == nil {
		r.taken["stateProvince"] = top
	} else { // with a region of nature, of which is said below what it is
		r.taken["stateProvince"] = g.columns[0]
	}
	for _, i := range columns {
		if i == top {
			continue
		}
		county, has := r.taken["county"]
		t.settle(r, i, "county", "county, for a part of the country that is greater stands beside it")
		if has {
			r.taken["county"] = county
			r.gather(county, i)
		}
	}
}

// filledTogether reports whether columns are filled in the same rows, and with
// different things, as alternatives are not.
func (t *Table) filledTogether(rows []*Row, columns []int) bool {
	some, together := 0, 0
	for _, row := range rows {
		n := 0
		same := false
		for k, i := range columns {
			if row.filled(i) {
				n++
				same = same || k > 0 && row.filled(columns[0]) && strings.EqualFold(strings.TrimSpace(row.Cells[i].Text), strings.TrimSpace(row.Cells[columns[0]].Text))
			}
		}
		if n > 0 {
			some++
		}
		if n > 1 && !same {
			together++
		}
	}
	return together >= 1 && 2*together >= some
}

// different counts the different cells of a column.
func (t *Table) different(rows []*Row, column int) int {
	seen := map[string]bool{}
	for _, row := range rows {
		if row.filled(column) {
			seen[strings.ToLower(strings.TrimSpace(row.Cells[column].Text))] = true
		}
	}
	return len(seen)
}

// landOfGermany are the states of Germany and Austria, which German calls Land as it
// does a country, with the letters that stand for them.
// Source: Bundesländer of Germany and Austria, common knowledge.
var landOfGermany = regexp.MustCompile(`(?i)^(baden-?w(ü|ue)rtt?emberg|bayern|berlin|brandenburg|bremen|hamburg|hessen|mecklenburg-?vorpommern|niedersachsen|nordrhein-?westfalen|rheinland-?pfalz|saarland|sachsen(-?anhalt)?|schleswig-?holstein|th(ü|ue)ringen|burgenland|k(ä|ae)rnten|(nieder|ober)(ö|oe)sterreich|salzburg|steiermark|(nord|ost|süd)?tirol|vorarlberg|wien|BW|BY|NW|NRW|RP|MV|SN|ST|SH|TH|NI|HE|BB|SL)$`)

// landIsState reads a column headed "Land" as the states, where its cells are such and
// no other column has them.
func (t *Table) landIsState(r *resolver, rows []*Row) {
	i, ok := r.taken["country"]
	if r.has("stateProvince") || !ok || t.columns[i].group != nil || headingKey(t.columns[i].Heading) != "land" {
		return
	}
	states, filled := 0, 0
	for _, row := range rows {
		if row.filled(i) {
			filled++
			if landOfGermany.MatchString(strings.TrimSpace(row.Cells[i].Text)) {
				states++
			}
		}
	}
	if states == 0 || 10*states < 9*filled {
		return
	}
	delete(r.taken, "country")
	t.settle(r, i, "stateProvince", "stateProvince, for its cells are states of a country")
}
