package form

import (
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/date"
	"cornerslip/label/lang"
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
// in its order. All are here, but for the two slips, which TestSlip and
// TestTypeSlip make; where a label differs from what was seen, the case says in
// what and why.
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
				Body: []label.Role{label.Name, Description, label.Coords, label.Place, Habitat}, Foot: []label.Role{Date, label.Collector, label.Number},
				LastPersonSep: " and ", AllCollectors: true},
			want: []string{"Valdoura Field Station", "Plants of Terceira", "Smilax azorica H.Schaef. & Schoenf.", "climbing; corolla white; fruit green, 3–4 mm diam.",
				"27.27", "above the road", "low forest dominated by ", "3 June 1998", "I. Almeida and T. Brandão 1204", "VDOURA 00227158"},
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
			// A garden, 1984 and 1992: number and family on the second line, name,
			// description, country and province, position with Oeste, elevation
			// range, date, three collectors. Here the number stands after the
			// collector whose it is, since it names nothing without him.
			name: "number on top, in Spanish",
			record: []string{"scientificName", "Digitalis thapsi L.", "family", "Plantaginaceae", "recordedBy", "I. Almeida | T. Brandão | L. Sarmento", "recordNumber", "3344",
				"plantDescription", "Hierba de 60 cm; flores rosadas.", "country", "Rep. Portuguesa", "stateProvince", "Prov. Beira Alta", "locality", "Gouveia, ladera N",
				"verbatimLatitude", "40°29'N", "verbatimLongitude", "7°35'Oeste", "minimumElevationInMeters", "700", "maximumElevationInMeters", "800", "eventDate", "1984-05-06"},
			o: Options{Lang: lang.Spanish, House: []string{"Estación de Valdoura"}, Family: FamilyOwnLine, CountrySep: ": ", ProvinceSep: ". ", Words: map[string]string{"elevation": "elev."},
				Body: []label.Role{label.Collector, label.Family, label.Name, Description, label.Place, label.Coords, Date, label.Team}},
			want: []string{"Estación de Valdoura", "I. Almeida 3344", "Plantaginaceae", "Digitalis thapsi L.", "Hierba de 60 cm; flores rosadas.",
				"Rep. Portuguesa: Prov. Beira Alta. Gouveia, ladera N", "40", "elev. 700", "6 de mayo de 1984", "T. Brandão & L. Sarmento"},
		},
		{
			// The same of 1992, redetermined: who determined it under the name, and
			// what it is a voucher for.
			name: "voucher, determined later",
			record: []string{"scientificName", "Digitalis thapsi L.", "recordedBy", "I. Almeida", "recordNumber", "3390", "identifiedBy", "C. Nóvoa", "dateIdentified", "1994",
				"locality", "Gouveia", "eventDate", "1992-05-06", "materialEntityRemarks", "Voucher for the survey of useful plants"},
			o:    Options{House: []string{"Valdoura Field Station"}, Words: map[string]string{"det": "det."}},
			want: []string{"Valdoura Field Station", "Digitalis thapsi L.", "det. C. Nóvoa, 1994", "Gouveia.", "Voucher for the survey of useful plants", "I. Almeida 3390", "6 May 1992"},
		},
		{
			// 1994: collector and number on top, family, name, country and district
			// with colons, road and kilometre, position, elevation, vegetation and
			// substrate in one paragraph, the abundance first, the team joined by
			// "&", day and short month.
			name: "collector on top, one paragraph",
			record: []string{"scientificName", "Armeria pungens (Link) Hoffmanns. & Link", "family", "Plumbaginaceae", "project", "Plants of Portugal",
				"recordedBy", "I. Almeida | T. Brandão | L. Sarmento", "recordNumber", "802", "country", "Portugal", "stateProvince", "Faro", "municipality", "Aljezur",
				"locality", "along Road 268 at km 12", "decimalLatitude", "37.19", "decimalLongitude", "-8.9", "minimumElevationInMeters", "20", "habitat", "Dune scrub on sand",
				"plantDescription", "Uncommon. Shrublet 40 cm; leaves grey; corolla pink.", "eventDate", "1994-06-05"},
			o: Options{House: []string{"Valdoura Field Station"}, Family: FamilyOwnLine, CountrySep: ": ", RunOn: []label.Role{label.Coords, Habitat}, Date: date.Style{Form: date.ShortMonth},
				PeopleSep: " & ", Words: map[string]string{"elevation": ""},
				Body: []label.Role{label.Collector, label.Family, label.Name, label.Place, label.Coords, Habitat, Description}, Foot: []label.Role{label.Team, Date}},
			want: []string{"Plants of Portugal", "I. Almeida 802", "Plumbaginaceae", "Armeria pungens (Link) Hoffmanns. & Link",
				"Portugal: Faro: Aljezur, along Road 268 at km 12. 37.19° N, 8.9° W. 20 m. Dune scrub on sand.", "Uncommon. Shrublet 40 cm; leaves grey; corolla pink.",
				"with T. Brandão & L. Sarmento", "5 Jun 1994"},
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
			// The same house, 1994: codes of samples taken from the plant.
			name: "sample codes",
			record: []string{"scientificName", "Thymus camphoratus Hoffmanns. & Link", "locality", "Aljezur", "recordedBy", "I. Almeida", "recordNumber", "413", "eventDate", "1994-06-24",
				"materialEntityRemarks", "VT12 leaf (413); VT13 root (413)", "fundingAttribution", "Voucher for a study of scents"},
			want: []string{"Thymus camphoratus", "Aljezur.", "VT12 leaf (413); VT13 root (413). Voucher for a study of scents", "I. Almeida 413", "24 June 1994"},
		},
		{
			// 2000: plants of a territory above herbarium, department and
			// university; the description before the place; number and date, the
			// co-collector.
			name: "heading above the institution",
			record: []string{"scientificName", "Erica arborea L.", "family", "Ericaceae", "project", "Plants of Valdoura", "plantDescription", "Shrub 2 m", "county", "Gouveia", "municipality", "Folgosinho",
				"locality", "reserve, above the weir", "decimalLatitude", "40.5", "decimalLongitude", "-7.5", "minimumElevationInMeters", "900", "habitat", "Heath on granite",
				"recordedBy", "I. Almeida | R. Falcato", "recordNumber", "77", "eventDate", "2000-04-01"},
			o: Options{House: []string{"Herbarium", "Department of Botany, Valdoura"}, Head: []label.Role{label.Project, label.House}, Family: FamilyOwnLine, ProvinceSep: ": ",
				Body: []label.Role{label.Family, label.Name, Description, label.Place, label.Coords, Habitat}, RunOn: []label.Role{label.Coords, Habitat}, Words: map[string]string{"with": "With:"}},
			want: []string{"Plants of Valdoura", "Herbarium", "Department of Botany, Valdoura", "Ericaceae", "Erica arborea L.", "Shrub 2 m.", "Gouveia, Folgosinho, reserve, above the weir. 40.5° N, 7.5° W. Alt. 900 m. Heath on granite.",
				"I. Almeida 77", "1 April 2000", "With: R. Falcato"},
		},
		{
			// A lichen, 2008: the group of a province, name, on its host with
			// authors, the place with position, elevation and vegetation in one
			// paragraph, date, collector and number, the event.
			name: "lichen on its host",
			record: []string{"scientificName", "Evernia prunastri (L.) Ach.", "project", "Lichens of Beira Alta, Portugal", "associatedTaxa", "Quercus pyrenaica Willd.",
				"county", "Guarda County", "municipality", "Town of Manteigas", "locality", "Covão da Ponte", "decimalLatitude", "40.43", "decimalLongitude", "-7.53", "minimumElevationInMeters", "1000",
				"habitat", "oakwood, granite", "eventDate", "2008-05-03", "recordedBy", "C. Nóvoa", "recordNumber", "9012", "eventRemarks", "Collected on the station's lichen workshop"},
			o: Options{House: []string{"Valdoura Field Station"}, Words: map[string]string{"associates": "on", "elevation": ""}, RunOn: []label.Role{label.Coords, Habitat},
				Body: []label.Role{label.Name, Associates, label.Place, label.Coords, Habitat, Date}, Foot: []label.Role{label.Collector, label.Notes}},
			want: []string{"Valdoura Field Station", "Lichens of Beira Alta, Portugal", "Evernia prunastri (L.) Ach.", "On Quercus pyrenaica Willd.",
				"Guarda County, Town of Manteigas, Covão da Ponte. 40.43° N, 7.53° W. 1000 m. oakwood, granite.", "3 May 2008", "C. Nóvoa 9012", "Collected on the station's lichen workshop."},
		},
		{
			// A lichen, 1997: cryptogams of a country, a name without its author,
			// a parasite on its host, the province in capitals.
			name: "parasite, in French",
			record: []string{"scientificName", "Lichenoconium lecanorae", "project", "Cryptogames du Portugal", "associatedTaxa", "parasite sur Lecanora conizaeoides", "stateProvince", "BEIRA ALTA",
				"county", "Gouveia", "locality", "Réserve de Valdoura", "decimalLatitude", "40.5", "decimalLongitude", "-7.5", "minimumElevationInMeters", "850",
				"habitat", "forêt de Quercus pyrenaica sur granite", "eventDate", "1997-08", "recordedBy", "C. Nóvoa", "recordNumber", "512", "eventRemarks", "Excursion de la station"},
			o: Options{Lang: lang.French, Words: map[string]string{"associates": "", "elevation": ""}, RunOn: []label.Role{label.Coords, Habitat},
				Body: []label.Role{label.Name, Associates, label.Place, label.Coords, Habitat, label.Notes}},
			want: []string{"Cryptogames du Portugal", "Lichenoconium lecanorae", "parasite sur Lecanora conizaeoides.", "BEIRA ALTA: Gouveia, Réserve de Valdoura. 40,5° N, 7,5° O. 850 m. forêt de Quercus pyrenaica sur granite.",
				"Excursion de la station.", "C. Nóvoa 512", "août 1997"},
		},
		{
			// A lichen, 1967, determined in 1992: the determiner at the right, the
			// substrate first, the island in capitals, "No." before the number, the
			// institution as a footer.
			name: "institution as a footer",
			record: []string{"scientificName", "Ramalina cuspidata (Ach.) Nyl.", "project", "LICHENS OF THE AZORES", "identifiedBy", "C. Nóvoa", "dateIdentified", "1992", "associatedTaxa", "Juniperus brevifolia near stream",
				"island", "CORVO", "locality", "base of the caldera", "decimalLatitude", "39.7", "decimalLongitude", "-31.1", "habitat", "Basalt",
				"recordedBy", "I. Almeida | T. Brandão | L. Sarmento", "recordNumber", "88", "eventDate", "1967-07-02"},
			o: Options{House: []string{"Valdoura Field Station"}, Head: []label.Role{label.Project}, DetRight: true, Words: map[string]string{"number": ", No.", "associates": "on"}, LastPersonSep: " and ",
				ProvinceSep: ": ", RunOn: []label.Role{label.Coords, Habitat}, Body: []label.Role{label.Name, label.Det, Associates, label.Place, label.Coords, Habitat},
				Foot: []label.Role{label.Collector, label.Team, label.House}},
			want: []string{"LICHENS OF THE AZORES", "Ramalina cuspidata (Ach.) Nyl.", "\tDet. C. Nóvoa, 1992", "On Juniperus brevifolia near stream", "CORVO, base of the caldera. 39.7° N, 31.1° W. Basalt.",
				"I. Almeida, No. 88\t2 July 1967", "with T. Brandão and L. Sarmento", "Valdoura Field Station"},
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
			// Form style, 1988: the position on the second line of the location,
			// habitat with slope and exposure, elevation in feet, the map sheet,
			// short month, determiner.
			name: "form with a map sheet",
			record: []string{"scientificName", "Evernia prunastri (L.) Ach.", "locality", "Manteigas", "locationRemarks", "Map 20-B", "decimalLatitude", "40.4", "decimalLongitude", "-7.5",
				"verbatimElevation", "2300 ft", "habitat", "On Fraxinus; slope 20°, exposed to N", "eventDate", "1988-06-17", "recordedBy", "C. Nóvoa", "recordNumber", "14", "identifiedBy", "C. Nóvoa"},
			o: Options{Captions: true, Date: date.Style{Form: date.ShortMonth}, Body: []label.Role{label.Name, label.Place, label.Coords, label.Plant, Date, label.Collector, label.Det}, Foot: []label.Role{}},
			want: []string{"Name Evernia prunastri (L.) Ach.", "Locality Manteigas. Map 20-B", "Position 40.4", "Elevation 2300 ft", "Habitat On Fraxinus; slope 20°, exposed to N",
				"Date 17 Jun 1988", "Collector C. Nóvoa 14", "Det. C. Nóvoa"},
		},
		{
			// Plants of a province above a postal address, 1972: a form with habitat
			// before the locality, collector's number after "No.", who determined
			// it, the count of replicates, notes. Its position has the hemisphere
			// before the figures; here it follows them, as ISO 6709 has it.
			name: "count of replicates",
			record: []string{"scientificName", "Cistus ladanifer L.", "project", "PLANTS OF THE ALGARVE", "county", "Loulé", "verbatimLatitude", "N37°", "verbatimLongitude", "W8°",
				"habitat", "Dry slope", "locality", "from the mill to the lake", "eventDate", "1972-03-14", "recordedBy", "I. Almeida", "recordNumber", "30",
				"identifiedBy", "M. Quental", "dateIdentified", "1972-05", "duplicatesTo", "PINHEL | ALTAVX | SOUTELO", "occurrenceRemarks", "Sticky"},
			o: Options{Captions: true, Head: []label.Role{label.Project, label.House}, House: []string{"Rua da Estação 1, Gouveia"}, CountDuplicates: true,
				Words: map[string]string{"number": "No.", "duplicates": "No. of Replicates"},
				Body:  []label.Role{label.Name, label.Coords, Habitat, label.Place, Date, label.Collector, label.Det, label.Team, label.Notes}, Foot: []label.Role{}},
			want: []string{"PLANTS OF THE ALGARVE", "Rua da Estação 1, Gouveia", "Name Cistus ladanifer L.", "Position 37", "N", "8", "W", "Habitat Dry slope", "Locality Loulé, from the mill to the lake",
				"Date 14 March 1972", "Collector I. Almeida No. 30", "Det. M. Quental, May 1972", "No. of Replicates: 3", "Remarks Sticky"},
		},
		{
			// In French, 1969: number and date on one line under the heading, name,
			// the place in capitals with its other name in brackets, position,
			// habitat, the team joined by "et", determiner with his title, project
			// and institution at the end, later the accession number.
			name: "institution and project at the end",
			record: []string{"scientificName", "Crithmum maritimum L.", "recordedBy", "I. Almeida | T. Brandão", "recordNumber", "615", "eventDate", "1969-07-03", "locality", "VARADOURO (Porto Velho)",
				"locationRemarks", "baie, circa 38° 34' N, 28° 46' O", "habitat", "Fissures du basalte", "identifiedBy", "Dr. M. Quental", "fundingAttribution", "ÉTUDE DES ÎLES", "catalogNumber", "20771"},
			o: Options{Lang: lang.French, House: []string{"Station de Valdoura"}, Project: []string{"FLORE DES AÇORES"}, Head: []label.Role{label.Project}, AllCollectors: true, LastPersonSep: " et ",
				Words: map[string]string{"det": "dét. :"}, Date: date.Style{Form: date.ShortMonth},
				Body: []label.Role{label.Name, label.Place, label.Plant}, Foot: []label.Role{label.Collector, label.Det, label.Notes, label.House, label.Number}},
			want: []string{"FLORE DES AÇORES", "Crithmum maritimum L.", "VARADOURO (Porto Velho). baie, circa 38° 34' N, 28° 46' O.", "Fissures du basalte.", "I. Almeida et T. Brandão 615\t3 juil. 1969",
				"dét. : Dr. M. Quental", "ÉTUDE DES ÎLES", "Station de Valdoura", "20771"},
		},
		{
			// A distributed series of 1975: the society, the editor with the code of
			// his herbarium, fascicle and number; name; one paragraph with the
			// commune and, in brackets, country and department, as the collector
			// wrote it, altitude and date; collector and number, determiner, the
			// kind of type. The place is one cell there, since it runs from small
			// to large and ours from large to small.
			name: "distributed series",
			record: []string{"scientificName", "Narcissus asturiensis (Jord.) Pugsley", "country", "Portugal", "locality", "Manteigas (Portugal, Guarda), bord de la route, 200 m avant le col", "minimumElevationInMeters", "1600",
				"eventDate", "1975-06-13", "recordedBy", "I. Almeida", "recordNumber", "212", "identifiedBy", "M. Quental", "typeStatus", "Isotype !", "project", "éd. M. Quental (VDOURA), fasc. 3 (1975–1977), n° 1204"},
			o: Options{Lang: lang.French, House: []string{"SOCIÉTÉ DES ÉCHANGES DE VALDOURA"}, LeaveOut: []string{"country"}, Words: map[string]string{"number": "n°", "elevation": "alt.", "det": ""},
				RunOn: []label.Role{label.Coords, Date}, Body: []label.Role{label.Name, label.Place, label.Coords, Date, label.Collector, label.Det, label.Type}, Foot: []label.Role{}},
			want: []string{"SOCIÉTÉ DES ÉCHANGES DE VALDOURA", "éd. M. Quental (VDOURA), fasc. 3 (1975–1977), n° 1204", "Narcissus asturiensis (Jord.) Pugsley",
				"Manteigas (Portugal, Guarda), bord de la route, 200 m avant le col. alt. 1600 m. 13 juin 1975.", "I. Almeida n° 212", "M. Quental", "Isotype !"},
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
			// The field form of 1912: name, wood, day, collector; and the final label
			// at the lower right: the owner's herbarium, family, name, number.
			name:   "the oldest form",
			record: []string{"scientificName", "Prunus lusitanica L.", "family", "Rosaceae", "locality", "Mata de Albergaria", "eventDate", "1912-06-02", "recordedBy", "I. Almeida", "catalogNumber", "1204"},
			o:      Options{House: []string{"Herbier I. Almeida"}, Family: FamilyOwnLine, Body: []label.Role{label.Family, label.Name, label.Number, label.Place, Date, label.Collector}, Foot: []label.Role{}},
			want:   []string{"Herbier I. Almeida", "Rosaceae", "Prunus lusitanica L.", "1204", "Mata de Albergaria.", "2 June 1912", "I. Almeida"},
		},
		{
			// The form of a course: plants of a province, name, district in
			// capitals, directions along the road, distances from natural
			// landmarks, map name and scale, position in degrees, minutes and
			// seconds, habitat and soil.
			name: "directions and map",
			record: []string{"scientificName", "Salix salviifolia Brot.", "project", "PLANTS OF BEIRA ALTA", "stateProvince", "GUARDA", "locality", "road EN 232, 3.2 km from Manteigas; 0.4 km SW of the confluence",
				"locationRemarks", "Folha 224, 1:25 000", "verbatimLatitude", "40°21'14\"N", "verbatimLongitude", "7°33'48\"W", "habitat", "Gravel bank; sandy soil",
				"recordedBy", "I. Almeida", "recordNumber", "3", "eventDate", "2020-05-01"},
			want: []string{"PLANTS OF BEIRA ALTA", "Salix salviifolia Brot.", "GUARDA: road EN 232, 3.2 km from Manteigas; 0.4 km SW of the confluence. Folha 224, 1:25 000.",
				"40°", "21′", "14", "7°", "Gravel bank; sandy soil.", "I. Almeida 3", "1 May 2020"},
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
			text := strings.NewReplacer(thin, " ", "\u00a0", " ").Replace(lines(content))
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
