package table

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cornerslip/label"
)

// constants adds columns for what headings say of every record: the datum of
// "Lat (WGS84)" and the side of "Longitude W".
func (t *Table) constants(r *resolver, rows []*Row) {
	r.eastInGerman()
	has := r.has
	datum, at := "", -1
	for i := range t.columns[:t.width] {
		if d := r.read[i].datum; d != "" && at < 0 {
			datum, at = d, i
		} else if d != "" && !strings.EqualFold(d, datum) {
			datum = "" // two of them tell none
		}
	}
	if datum != "" && !has("geodeticDatum") && !has("verbatimSRS") {
		t.constant("geodeticDatum", datum, at, "says the datum: %s is read as the geodeticDatum of every record", datum)
	}
	t.epithetRank(has)
	for i := range t.columns[:t.width] {
		side := r.read[i].side
		term := map[string]string{"N": "latitudeHemisphere", "S": "latitudeHemisphere", "E": "longitudeHemisphere", "W": "longitudeHemisphere"}[side]
		if side == "" || has(term) {
			continue
		}
		signed, bare := signsIn(rows, i)
		switch {
		case bare == 0 || (side == "N" || side == "E") && signed == 0 && !anglesIn(rows, i):
		case signed == 0:
			t.constant(term, side, i, "says %s: figures without a sign are read so", side)
			t.otherSide(r, rows, term)
		default:
			c := &t.columns[i]
			t.findings = append(t.findings, label.Finding{Origin: c.Origin, Value: c.Heading, Rule: ruleHeadingReading.Name, Severity: label.Warning,
				Message: fmt.Sprintf("heading %q says %s, but some figures below it have a minus and others none: south and west have one, north and east none", c.Heading, side)})
		}
	}
}

// headedRank is a heading of epithets that says their rank.
var headedRank = regexp.MustCompile(`(?i)^(?:(var|variety|varietas|variedade|variedad|variété|varietà|varietät|variëteit|varietet|odmiana|varieta)|(subsp|ssp|subspecies|subspp|sub[ .]spp?|subespécie|subespecie|sous-espèce|sottospecie|unterart|ondersoort|underart|poddruh|podgatunek)|(forma|fo|form|forme))\.?$`)

// epithetRank finds the rank that the heading of the epithets below the species names.
func (t *Table) epithetRank(has func(term string) bool) {
	if has("taxonRank") {
		return
	}
	for _, c := range t.columns[:t.width] {
		if m := headedRank.FindStringSubmatch(strings.TrimSpace(c.Heading)); m != nil && c.Known && c.Term == "infraspecificEpithet" {
			t.rank = [...]string{"variety", "subspecies", "form"}[slices.IndexFunc(m[1:], func(s string) bool { return s != "" })]
		}
	}
}

// EpithetRank is the rank that the heading of the epithets below the species says them
// to have: variety below "var."; "" where it says none, or the table has a column of ranks.
func (t *Table) EpithetRank() string { return t.rank }

// otherSide adds north or east, which the other axis has where its figures have
// no sign either.
func (t *Table) otherSide(r *resolver, rows []*Row, than string) {
	axis, term, side := "decimalLatitude", "latitudeHemisphere", "N"
	if than == term {
		axis, term, side = "decimalLongitude", "longitudeHemisphere", "E"
	}
	i, ok := r.taken[axis]
	if !ok || r.has(term) || i >= t.width || r.read[i].side != "" && (r.read[i].side != side || !commasIn(rows, i)) {
		return
	}
	if signed, bare := signsIn(rows, i); signed == 0 && bare > 0 {
		t.constant(term, side, i, "is read as %s, since no figure below it has a minus", side)
	}
}

// commasIn reports whether a column has figures with a decimal comma: they are no plain
// numbers of degrees, which need no side in the north and the east.
func commasIn(rows []*Row, column int) bool {
	return slices.ContainsFunc(rows, func(row *Row) bool {
		return column < len(row.Cells) && strings.Contains(row.Cells[column].Text, ",")
	})
}

// unsided is a number or an angle that no letter gives a side.
var unsided = regexp.MustCompile(`^[-+−]?\d{1,7}([.,]\d{0,15})?$|^[-+−]?\d{1,3}([.,]\d{1,15})? ?[°º˚][ \d°º˚'′’´"″”.,]*$`)

// signsIn counts the figures of a column with a minus and without.
func signsIn(rows []*Row, column int) (signed, bare int) {
	for _, row := range rows {
		if column >= len(row.Cells) || !unsided.MatchString(strings.TrimSpace(row.Cells[column].Text)) {
			continue
		}
		if strings.ContainsAny(row.Cells[column].Text, "-−") {
			signed++
		} else {
			bare++
		}
	}
	return signed, bare
}

// anglesIn reports whether a column has angles that no letter gives a side: unlike
// decimals they say none.
func anglesIn(rows []*Row, column int) bool {
	return slices.ContainsFunc(rows, func(row *Row) bool {
		return column < len(row.Cells) && unsided.MatchString(strings.TrimSpace(row.Cells[column].Text)) && strings.ContainsAny(row.Cells[column].Text, "°º˚")
	})
}

// constant adds a column that has the same text in every record.
func (t *Table) constant(term, text string, from int, format string, args ...any) {
	c := t.columns[from]
	t.columns = append(t.columns, Column{Heading: c.Heading, Term: term, Known: true, Index: len(t.columns), Origin: c.Origin, from: -1, value: text})
	t.mapped = true
	t.findings = append(t.findings, label.Finding{Origin: c.Origin, Value: c.Heading, Rule: ruleHeadingReading.Name, Severity: label.Note,
		Message: fmt.Sprintf("heading %q ", c.Heading) + fmt.Sprintf(format, args...)})
}
