package job

import (
	"strings"

	"cornerslip/label"
	"cornerslip/label/accession"
	"cornerslip/label/check"
	"cornerslip/label/coord"
	"cornerslip/label/date"
	"cornerslip/label/form"
	"cornerslip/label/lang"
	"cornerslip/label/name"
	"cornerslip/label/place"
)

// The words of the house file for the styles of other packages.
var (
	dateForms = map[string]date.Form{
		"14 March 2026": date.LongMonth, "14 Mar 2026": date.ShortMonth, "14.iii.2026": date.RomanMonth,
		"2026-03-14": date.ISOForm, "March 14, 2026": date.MonthDay,
	}
	coordForms = map[string]coord.Form{
		"as written": coord.AsWritten, "decimal": coord.Decimal, "minutes": coord.DegreesMinutes,
		"seconds": coord.DegreesMinutesSeconds, "utm": coord.GridUTM, "mgrs": coord.GridMGRS,
	}
	elevationUnits = map[string]coord.ElevationUnit{
		"as written": coord.UnitAsWritten, "metres": coord.InMetresOnly, "feet": coord.InFeetOnly, "both": coord.InBoth,
	}
	familyPlaces = map[string]form.FamilyPlace{
		"name line": form.FamilyBesideName, "own line": form.FamilyOwnLine, "none": form.FamilyNone,
	}
)

// formOptions turns the house's values into the options of label/form.
func (j *Job) formOptions(q *Request) (form.Options, error) {
	h := j.House
	o := form.Options{
		Lang:    j.langs[0],
		Words:   h.Words.Own,
		Project: h.Herbarium.Headings,
		Code:    h.Herbarium.Code, NumberWord: h.Numbers.Word,
		Date:      date.Style{Form: dateForms[h.Dates.Style]},
		Coords:    coord.Style{Form: coordForms[h.Coordinates.Style]},
		Elevation: coord.ElevationStyle{In: elevationUnits[h.Coordinates.Elevation]},
		Name:      name.Options{UprightFamilies: h.Name.FamilyStyle != "italic"},
		BoldName:  h.Name.Bold, Family: familyPlaces[h.Name.Family], PlainFamily: h.Name.FamilyStyle != "capitals",
		Captions: h.Label.Style == "captions",
		Head:     roles(h.Label.Head), Body: roles(h.Label.Body), Foot: roles(h.Label.Foot), LeaveOut: h.Label.LeaveOut,
		RunOn: roles(h.Label.RunOn), AllCollectors: h.Label.Collectors == "all", DetRight: h.Name.Determiner == "right",
		CountrySep: h.Separators.Country, ProvinceSep: h.Separators.Province,
		PlaceSep: h.Separators.Places, PeopleSep: h.Separators.People,
		LastPersonSep: h.Separators.LastPerson, DuplicatesSep: h.Separators.Duplicates,
		BarsOnLabel: h.Bars.OnLabel, Symbology: j.symbol(q).Symbology,
		ListDuplicates: h.Duplicates.Show == "list", CountDuplicates: h.Duplicates.Show == "count",
		PacketName: h.Packet.Name, PacketBars: h.Packet.Bars, PlainPackets: !h.Packet.Heading,
		Sensitive: j.sensitive(), Country: countryName, Sorted: h.Label.Sorted,
	}
	if len(j.langs) > 1 {
		o.Second = j.langs[1]
	}
	o.ContentsLine = q.packet != nil
	if q.letters != nil {
		o.Letter = func(r *check.Record) string { return q.letters[r.Row] }
	}
	if h.Herbarium.Name != "" {
		o.House = append([]string{h.Herbarium.Name}, h.Herbarium.Address...)
	}
	if h.Numbers.Pattern != "" {
		p, err := accession.ParsePattern(h.Numbers.Pattern)
		if err != nil {
			return o, err
		}
		o.OwnNumber = func(number string) bool { _, err := p.Parse(number); return err == nil }
	}
	return o, nil
}

// countryName names a country by its code.
func countryName(code string, language lang.Tag) string {
	c, ok := place.Country(code)
	if !ok {
		return ""
	}
	return c.In(string(language))
}

// coarsened reports whether the place of a record is kept from the labels of
// its duplicates.
func (j *Job) coarsened(r *check.Record) bool {
	return form.Coarsened(r, form.Options{Sensitive: j.sensitive()})
}

// withheldRule looks for permits that name a place that the labels of
// duplicates otherwise keep back. A permit is printed in the words in which it
// was issued, so a person has to decide.
func (j *Job) withheldRule() check.Rule {
	o := form.Options{Sensitive: j.sensitive()}
	return check.Rule{
		Name: "permit-names-place", Severity: label.Warning, Source: practice,
		Terms: []string{"permits", "restrictions"},
		Doc:   "a permit that names the place which the labels of duplicates keep back",
		Row: func(c *check.Context) {
			for _, f := range form.GivesAway(c.Record, o) {
				c.Report(f.Origin.Term, "names the place that is withheld from duplicates, and is printed on them as it stands: send no duplicate, or give the permit's number alone")
			}
		},
	}
}

func roles(names []string) []label.Role {
	out := make([]label.Role, len(names))
	for i, n := range names {
		out[i] = label.Role(n)
	}
	return out
}

// sensitive reports whether a record is of a taxon on the house's list: the
// name, its genus or its family.
func (j *Job) sensitive() func(*check.Record) bool {
	taxa := j.House.Sensitive.Taxa
	if len(taxa) == 0 {
		return nil
	}
	return func(r *check.Record) bool {
		for _, t := range taxa {
			if t = strings.TrimSpace(t); t == "" {
				continue
			}
			if strings.EqualFold(t, r.Text("family")) || strings.EqualFold(t, r.Parts.Family) || startsWithName(r.Name, t) {
				return true
			}
		}
		return false
	}
}

// startsWithName reports whether name is taxon, or a taxon below it: the words
// of taxon are the first of name.
func startsWithName(name, taxon string) bool {
	n, t := strings.Fields(strings.ToLower(name)), strings.Fields(strings.ToLower(taxon))
	if len(n) < len(t) {
		return false
	}
	for i := range t {
		if n[i] != t[i] {
			return false
		}
	}
	return true
}
