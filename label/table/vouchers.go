package table

import (
	"fmt"
	"regexp"
	"strings"

	"cornerslip/label"
)

// gatherings reads a column headed "Collection" as collectors with their numbers,
// where its cells are that and no other column has the numbers. A column of vouchers
// that are no such has the numbers of the sheets.
func (t *Table) gatherings(r *resolver, rows []*Row) {
	people := r.has("recordedBy")
	numbers := r.has("recordNumber")
	at, vouchers := r.taken["collectorAndNumber"]
	if numbers || vouchers && (!people || t.columns[at].group != nil || shareOf(rows, at, voucherOfSheet.MatchString) < 0.9) {
		return
	}
	for i := range t.columns {
		c := &t.columns[i]
		if key := headingKey(c.Heading); c.Known || c.group != nil || key != "collection" && key != "collections" && key != "gathering" && key != "specimen" ||
			shareOf(rows, i, gathering.MatchString) < 0.7 && !t.gatheringSamples(rows, i) {
			continue
		}
		if vouchers {
			term := "catalogNumber"
			if r.has(term) {
				term = "otherCatalogNumbers"
			}
			if r.has(term) {
				return
			}
			t.settle(r, at, term, term+", for its cells are numbers of sheets")
		}
		t.settle(r, i, "collectorAndNumber", ownWords["collectorAndNumber"]+", for its cells are both")
		return
	}
}

// voucherIDs reads a column headed "Voucher ID" as collectors with their numbers or as
// the numbers of sheets, whichever its cells are, where no other column has these. IDs
// of any other make are of a database.
func (t *Table) voucherIDs(r *resolver, rows []*Row) {
	for i := range t.columns {
		c := &t.columns[i]
		if key := headingKey(c.Heading); c.Known || c.group != nil || key != "voucherid" && key != "vouchercode" && key != "idvoucher" || t.filledIn(rows, i) < 3 {
			continue
		}
		both := r.has("collectorAndNumber")
		people := r.has("recordedBy")
		numbers := r.has("recordNumber")
		sheets := r.has("catalogNumber")
		switch {
		case !both && !people && !numbers && shareOf(rows, i, gathering.MatchString) > 0.8:
			t.settle(r, i, "collectorAndNumber", ownWords["collectorAndNumber"]+", for its cells are both")
		case !sheets && shareOf(rows, i, voucherOfSheet.MatchString) > 0.9:
			t.settle(r, i, "catalogNumber", "catalogNumber, for its cells are numbers of sheets")
		}
	}
}

// numbersWithNames reads a column headed "Collection no.", "Specimen number" or "Collector" as
// collectors with their numbers, where its cells are both and no other column has the
// others.
func (t *Table) numbersWithNames(r *resolver, rows []*Row) {
	if at, ok := r.taken["collectorAndNumber"]; ok && !(t.columns[at].group == nil && t.belied(&t.columns[at], rows)) {
		return
	}
	people := r.has("recordedBy")
	numbers := r.has("recordNumber")
	for _, term := range []string{"recordNumber", "catalogNumber", "fieldNumber", "recordedBy"} {
		i, ok := r.taken[term]
		if !ok || people != (term == "recordedBy") || term == "recordedBy" && numbers || t.columns[i].group != nil || t.filledIn(rows, i) < 3 || shareOf(rows, i, namedGathering.MatchString) < 0.7 {
			continue
		}
		delete(r.taken, term)
		t.settle(r, i, "collectorAndNumber", ownWords["collectorAndNumber"]+", for its cells are both")
		return
	}
}

// determinersWithDates reads the dates of determining, "Det./date", as those who
// determined, where the cells begin with persons.
func (t *Table) determinersWithDates(r *resolver, rows []*Row) {
	i, ok := r.taken["dateIdentified"]
	if !ok || r.hasAny([]string{"identifiedBy"}) || t.columns[i].group != nil || t.filledIn(rows, i) < 3 || shareOf(rows, i, person.MatchString) < 0.8 {
		return
	}
	delete(r.taken, "dateIdentified")
	t.settle(r, i, "identifiedBy", "identifiedBy, for its cells are persons: they are printed as they are")
}

// sheetsAsVouchers reads a column of vouchers that are codes of herbaria with numbers
// of sheets as these numbers, where no other column has them. Short numbers may stand
// behind the initials of a collector.
func (t *Table) sheetsAsVouchers(r *resolver, rows []*Row) {
	i, ok := r.taken["collectorAndNumber"]
	if !ok || r.has("catalogNumber") || t.columns[i].group != nil || t.filledIn(rows, i) < 3 || shareOf(rows, i, sheetAlone.MatchString) < 0.9 {
		return
	}
	delete(r.taken, "collectorAndNumber")
	t.settle(r, i, "catalogNumber", "catalogNumber, for its cells are numbers of sheets")
}

// sheetAlone is a herbarium's code with the number of a sheet, which is long or
// begins with 0.
var sheetAlone = regexp.MustCompile(`^\s*[A-Z]{1,8}[-:. ]{0,2}(?:0\d{3,}|\d{5,})[A-Za-z]?\s*$`)

// proseOfGathering is more than a date: words for a place and a height, say, in one cell.
var proseOfGathering = regexp.MustCompile(`^[^,;]*\pL{3}[^,;]*[,;][^,;]*\pL{3}[^,;]*[,;]`)

// namedGathering is a collector, whose name is no code of capitals, with a number.
var namedGathering = regexp.MustCompile(`^\s*(?:\p{Lu}\.? ?){0,4}\p{Lu}[\pL'’-]*\p{Ll}{2,}[^0-9]*\s[A-Z-]{0,5}\d{1,6}(?:[-/.]\d{1,6})?[A-Za-z]?\b`)

// gathering is a collector with a number.
var gathering = regexp.MustCompile(`^\pL[\pL.'’-]+[^0-9]*\s[A-Z-]{0,5}\d{1,6}[a-z]?\b`)

// voucherOfSheet is a herbarium's code with the number of a sheet.
var voucherOfSheet = regexp.MustCompile(`^\s*[A-Z]{1,8}[-: ]?\d{3,}[A-Za-z]?\s*$`)

// gatheringSamples reports whether the cells of a column are names of samples made of
// collectors and numbers. Some name two people, as names of plots do not.
func (t *Table) gatheringSamples(rows []*Row, column int) bool {
	company := 0
	for _, row := range rows {
		if row.filled(column) && sampleCompany.MatchString(row.Cells[column].Text) {
			company++
		}
	}
	return company > 1 && shareOf(rows, column, gatheringSample.MatchString) > 0.9
}

var (
	gatheringSample = regexp.MustCompile(`^\p{Lu}[\pL'’-]+(_[\pL'’-]+)*_(\d+(_\d+)?[a-z]?|SN)$`)
	sampleCompany   = regexp.MustCompile(`_(and|et_al|et|y|e|und)_`)
)

// bareVouchers reads a column headed "Voucher number", whose cells are figures
// alone, as the collectors' numbers where another column has the collectors.
// Where none has, it may as well be the number of the sheet.
func (t *Table) bareVouchers(r *resolver, rows []*Row) {
	i, ok := r.taken["collectorAndNumber"]
	if !ok || t.columns[i].group != nil {
		return
	}
	c := &t.columns[i]
	people := r.has("recordedBy")
	numbered := r.has("recordNumber")
	say := func(severity label.Severity, format string, args ...any) {
		t.findings = append(t.findings, label.Finding{Origin: c.Origin, Value: c.Heading, Rule: ruleHeadingReading.Name, Severity: severity, Message: fmt.Sprintf(format, args...)})
	}
	switch {
	case !all(rows, i, bareVoucher.MatchString):
		if people && numbered {
			say(label.Note, "heading %q is read for the number of the sheet, and where the collector's number is missing: what else its cells say is kept, but not printed", c.Heading)
		} else if code := firstMatch(rows, i, codesBehind); code != "" {
			say(label.Note, "heading %q is read as collector and number; the herbaria behind them, as in %q, are kept, but not printed", c.Heading, code)
		}
		return
	case people && !numbered:
		t.settle(r, i, "recordNumber", "recordNumber, for its cells are numbers")
	default:
		c.Known, c.Term = false, strings.TrimSpace(c.Heading)
		whose := "the collector's number or the sheet's: give it the heading recordNumber or catalogNumber"
		if numbered {
			whose = "the sheet's number perhaps: if so, give it the heading catalogNumber"
		}
		say(label.Warning, "heading %q: its cells are figures alone, %s; they are kept, but not printed", c.Heading, whose)
	}
	delete(r.taken, "collectorAndNumber")
}

// codesBehind are codes of herbaria behind a collector's number, without the number
// of a sheet: "Almeida 214 (VDOURA, PINHEL)".
var codesBehind = regexp.MustCompile(`\d[A-Za-z]?\s*([(\[]\s*[A-Z]{1,8}!?(?:[,;! ]+[A-Z]{1,8}!?)*\s*[)\]])$`)

// firstMatch returns what an expression finds in the first cell of a column that
// has it, "" if none has.
func firstMatch(rows []*Row, column int, re *regexp.Regexp) string {
	for _, r := range rows {
		if column < len(r.Cells) {
			if m := re.FindStringSubmatch(strings.TrimSpace(r.Cells[column].Text)); m != nil {
				return m[1]
			}
		}
	}
	return ""
}

var bareVoucher = regexp.MustCompile(`^\d{1,7}[A-Za-z]?$`)
