package form

import (
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/date"
)

// lines returns a label's text: a line for each block, its right end after it.
func lines(c label.Content) string {
	var all []string
	for _, b := range c.Blocks {
		s := label.String(b.Caption)
		if s != "" {
			s += " "
		}
		s += label.String(b.Runs)
		if b.Right != nil {
			s += "\t" + label.String(b.Right)
		}
		all = append(all, s)
	}
	return strings.Join(all, "\n")
}

// The structures are those of labels in herbaria, taken from published label
// texts (a gold set for optical reading of herbarium labels, and pages of
// herbaria); only the kind and order of their elements, with invented words.
// Each gives a record of the same elements and what the label must then have,
// in its order.
func TestStructures(t *testing.T) {
	for _, c := range []struct {
		name   string
		record []string
		o      Options
		want   []string
	}{
		{
			// Institution, plants of an island, name, description, position and
			// locality, vegetation, day, collectors with the number; the
			// machine number apart. A vascular plant of 1998.
			name: "description before the place",
			record: []string{"scientificName", "Smilax azorica H.Schaef. & Schoenf.", "project", "Plants of Terceira",
				"plantDescription", "climbing; corolla white; fruit green, 3–4 mm diam.", "decimalLatitude", "38.7285", "decimalLongitude", "-27.27",
				"locality", "above the road, opposite the pass", "habitat", "low forest dominated by Juniperus brevifolia, on cinders",
				"eventDate", "1998-06-03", "recordedBy", "I. Almeida and T. Brandão", "recordNumber", "1204", "catalogNumber", "00227158"},
			o: Options{House: []string{"Valdoura Field Station"}, Code: "VDOURA",
				Body: []label.Role{label.Name, Description, label.Coords, label.Place, Habitat}, LastPersonSep: " and "},
			want: []string{"Valdoura Field Station", "Plants of Terceira", "Smilax azorica H.Schaef. & Schoenf.", "climbing; corolla white; fruit green, 3–4 mm diam.",
				"27.27", "above the road", "low forest dominated by ", "I. Almeida 1204", "3 June 1998", "with T. Brandão", "VDOURA 00227158"},
		},
		{
			// Garden, town and country, family, name and date of determination,
			// flower and fruit, country and province with a colon, position with
			// altitude, date with the month first, initials and surnames. 1980.
			name: "country and province with colons",
			record: []string{"scientificName", "Cistus palhinhae Ingram", "family", "Cistaceae", "dateIdentified", "1980-03", "plantDescription", "Fl. white, fr. brown.",
				"country", "Portugal", "stateProvince", "Faro", "municipality", "Vila do Bispo", "locality", "Sagres; 2 km N of the light",
				"decimalLatitude", "37.03", "decimalLongitude", "-8.97", "minimumElevationInMeters", "60",
				"eventDate", "1980-03-14", "recordedBy", "I. Almeida | T. Brandão | L. Sarmento", "recordNumber", "77"},
			o: Options{House: []string{"Valdoura Field Station", "Gouveia, Portugal"}, Family: FamilyOwnLine, Date: date.Style{Form: date.MonthDay},
				Words: map[string]string{"elevation": "alt.", "det": "det."}},
			want: []string{"Valdoura Field Station", "Gouveia, Portugal", "Cistaceae", "Cistus palhinhae Ingram", "det. March 1980", "Portugal. Faro: Vila do Bispo, Sagres; 2 km N of the light.",
				"37.03", "alt. 60", "Fl. white, fr. brown.", "I. Almeida 77", "March 14, 1980", "with T. Brandão & L. Sarmento"},
		},
		{
			// Ethnobotany, 1992: institution and department, plants of a country,
			// family in capitals, name, determiner, place with an offset, position,
			// elevation, vegetation; the plant; vernacular name with its language,
			// use; collector's number and date; co-collector; who paid.
			name: "vernacular name and use",
			record: []string{"scientificName", "Thymus camphoratus Hoffmanns. & Link", "family", "Lamiaceae", "project", "Plants of Portugal",
				"identifiedBy", "M. Quental", "dateIdentified", "1992", "country", "Portugal", "stateProvince", "Faro", "municipality", "Aljezur",
				"locality", "land of the parish, 0.9km downhill from top of ridge", "decimalLatitude", "37.1945", "decimalLongitude", "-8.896",
				"minimumElevationInMeters", "20", "habitat", "Dune scrub", "plantDescription", "Subshrub to 30cm; bark grey", "vernacularName", "tomilho-do-mar [Portuguese]",
				"uses", "infusion against coughs", "recordedBy", "I. Almeida", "coCollectors", "R. Falcato", "recordNumber", "412", "eventDate", "1992-06-24",
				"fundingAttribution", "With a grant of the station's friends"},
			o: Options{House: []string{"Valdoura Field Station", "Department of Useful Plants"}, Family: FamilyOwnLine,
				Words: map[string]string{"vernacular": "n.v.:", "uses": "USE:", "elevation": "Elevation"}},
			want: []string{"Valdoura Field Station", "Department of Useful Plants", "Plants of Portugal", "Lamiaceae", "Thymus camphoratus Hoffmanns. & Link", "M. Quental, 1992",
				"Portugal. Faro: Aljezur, land of the parish, 0.9km downhill from top of ridge.", "37.1945", "Elevation 20", "Dune scrub. Subshrub to 30cm; bark grey.",
				"n.v.: tomilho-do-mar [Portuguese]", "USE: infusion against coughs", "With a grant of the station's friends", "I. Almeida 412", "24 June 1992", "with R. Falcato"},
		},
		{
			// Form style, 1997, printed captions: herbarium, flora of a province,
			// serial number, name, location, position, elevation, habitat, date,
			// collectors, determiner.
			name: "form with captions",
			record: []string{"scientificName", "Evernia prunastri (L.) Ach.", "project", "Flora of Beira Alta", "locality", "Manteigas, E of the mill",
				"verbatimLatitude", "40° 24.1' N", "verbatimLongitude", "7° 32.0' W", "minimumElevationInMeters", "690", "habitat", "On Fraxinus, north side",
				"eventDate", "1997-06-17", "recordedBy", "C. Nóvoa | I. Almeida", "recordNumber", "CN97-114", "identifiedBy", "C. Nóvoa", "dateIdentified", "1998", "catalogNumber", "0012044"},
			o: Options{House: []string{"Valdoura Field Station Herbarium"}, Captions: true, NumberWord: "No.",
				Words: map[string]string{"locality": "Location", "coordinates": "Latitude, longitude"},
				Body:  []label.Role{label.Name, label.Place, label.Coords, label.Plant, label.Collector, label.Team, label.Det},
				Foot:  []label.Role{label.Number}},
			want: []string{"Valdoura Field Station Herbarium", "Flora of Beira Alta", "Name Evernia prunastri (L.) Ach.", "Location Manteigas, E of the mill", "Latitude, longitude 40°", "Elevation 690",
				"Habitat On ", "Collector C. Nóvoa CN97-114", "17 June 1997", "With I. Almeida", "Det. C. Nóvoa, 1998", "No. 0012044"},
		},
		{
			// 2004: flora of a province, organisation, name, district, abundance
			// and vegetation, distances from two landmarks, position, map sheet,
			// elevation range, "Associates include" many names, collector and
			// number, date.
			name: "many associates",
			record: []string{"scientificName", "Tuberaria major (Willk.) P.Silva & Rozeira", "project", "Flora of the Algarve", "country", "Portugal", "stateProvince", "Faro", "county", "Loulé",
				"locality", "3.0 km W of Almancil and 3.6 km N of Quarteira", "decimalLatitude", "37.074", "decimalLongitude", "-8.06", "locationRemarks", "Map sheet 53-A",
				"minimumElevationInMeters", "35", "maximumElevationInMeters", "40", "habitat", "Frequent in sand in open pinewood on a coastal plain",
				"associatedTaxa", "Cistus salviifolius | C. crispus | Lavandula stoechas | Pinus pinea | Tuberaria guttata",
				"recordedBy", "I. Almeida", "recordNumber", "5100", "eventDate", "2004-04-09"},
			o: Options{House: []string{"Friends of the Valdoura Field Station"}, Words: map[string]string{"associates": "Associates include", "elevation": "Elev."}},
			want: []string{"Friends of the Valdoura Field Station", "Flora of the Algarve", "Tuberaria major (Willk.) P.Silva & Rozeira", "Portugal. Faro: Loulé, 3.0 km W of Almancil and 3.6 km N of Quarteira. Map sheet 53-A.",
				"37.074", "Elev. 35", "40", "Frequent in sand in open pinewood on a coastal plain", "ssociates include Cistus salviifolius, C. crispus, Lavandula stoechas, Pinus pinea and Tuberaria guttata.",
				"I. Almeida 5100", "9 April 2004"},
		},
		{
			// An island's exploration, 1905: two institutions, name, habitat and
			// place, two collectors, a range of days over two months.
			name: "range of days",
			record: []string{"scientificName", "Azorina vidalii (H.C.Watson) Feer", "project", "Exploration of Faial", "locality", "Varadouro", "habitat", "On lava",
				"recordedBy", "I. Almeida | T. Brandão", "recordNumber", "4405", "eventDate", "1905-08-31/1905-09-20"},
			o: Options{House: []string{"Valdoura Field Station", "Society for the Islands"}},
			want: []string{"Valdoura Field Station", "Society for the Islands", "Exploration of Faial", "Azorina vidalii (H.C.Watson) Feer", "Varadouro.", "On lava.",
				"I. Almeida 4405", "31 August", "20 September 1905", "with T. Brandão"},
		},
		{
			// A type: kind of type, name typified, herbaria that hold isotypes.
			name: "type",
			record: []string{"scientificName", "Plantago almogravensis Franco", "typeStatus", "Isotype", "typifiedName", "Plantago almogravensis Franco",
				"locality", "Almograve", "recordedBy", "I. Almeida", "recordNumber", "9", "eventDate", "1951-05-02", "duplicatesTo", "PINHEL | ALTAVX"},
			want: []string{"Plantago almogravensis Franco", "Isotype of Plantago almogravensis Franco", "Almograve.", "I. Almeida 9", "2 May 1951", "Dupl.: PINHEL, ALTAVX"},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			content := Sheet(record(t, c.record...), c.o)[0]
			text := lines(content)
			rest, at := text, 0
			for _, want := range c.want {
				i := strings.Index(rest, want)
				if i < 0 {
					t.Fatalf("%q does not stand after the first %d characters of\n%s", want, at, text)
				}
				rest, at = rest[i+len(want):], at+i+len(want)
			}
			for _, f := range faults(content) {
				t.Error(f)
			}
		})
	}
}
