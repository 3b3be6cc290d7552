package job

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"strings"
)

// A trip is an invented table without a fault: what the faults are planted in.
// Plants and places are real, people and numbers are not.
type trip struct {
	terms, heading []string
	comma          rune
	rows           [][]string
	stop           []int // of each row: rows of one stop have one locality
	person         []int
}

func (t *trip) column(term string) int {
	for i, s := range t.terms {
		if s == term {
			return i
		}
	}
	return -1
}

// clone copies a trip so that one copy can be spoilt.
func (t *trip) clone() *trip {
	c := *t
	c.rows = make([][]string, len(t.rows))
	for i, r := range t.rows {
		c.rows[i] = append([]string(nil), r...)
	}
	c.heading = append([]string(nil), t.heading...)
	return &c
}

func (t *trip) bytes() []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.Comma = t.comma
	w.Write(t.heading)
	w.WriteAll(t.rows)
	return b.Bytes()
}

// tripPlants are names with authors and families, from memory of the floras.
const tripPlants = `Cistus ladanifer|L.|Cistaceae
Cistus crispus|L.|Cistaceae
Halimium calycinum|(L.) K.Koch|Cistaceae
Erica arborea|L.|Ericaceae
Erica umbellata|Loefl. ex L.|Ericaceae
Arbutus unedo|L.|Ericaceae
Corema album|(L.) D.Don|Ericaceae
Lavandula viridis|L'Hér.|Lamiaceae
Thymus camphoratus|Hoffmanns. & Link|Lamiaceae
Thymus mastichina|(L.) L.|Lamiaceae
Phlomis purpurea|L.|Lamiaceae
Teucrium haenseleri|Boiss.|Lamiaceae
Quercus suber|L.|Fagaceae
Quercus faginea subsp. broteroi|(Cout.) A.Camus|Fagaceae
Genista triacanthos|Brot.|Fabaceae
Ulex argenteus|Welw. ex Webb|Fabaceae
Stauracanthus genistoides|(Brot.) Samp.|Fabaceae
Lupinus angustifolius|L.|Fabaceae
Ononis natrix|L.|Fabaceae
Armeria pungens|(Link) Hoffmanns. & Link|Plumbaginaceae
Limonium ferulaceum|(L.) Chaz.|Plumbaginaceae
Juniperus phoenicea subsp. turbinata|(Guss.) Nyman|Cupressaceae
Pinus pinaster|Aiton|Pinaceae
Pistacia lentiscus|L.|Anacardiaceae
Rhamnus oleoides|L.|Rhamnaceae
Osyris lanceolata|Hochst. & Steud.|Santalaceae
Daphne gnidium|L.|Thymelaeaceae
Antirrhinum majus subsp. cirrhigerum|(Ficalho) Franco|Plantaginaceae
Linaria spartea|(L.) Chaz.|Plantaginaceae
Digitalis thapsi|L.|Plantaginaceae
Scrophularia frutescens|L.|Scrophulariaceae
Calendula suffruticosa|Vahl|Asteraceae
Helichrysum italicum|(Roth) G.Don|Asteraceae
Santolina impressa|Hoffmanns. & Link|Asteraceae
Carlina hispanica|Lam.|Asteraceae
Centaurea sphaerocephala|L.|Asteraceae
Malcolmia littorea|(L.) W.T.Aiton|Brassicaceae
Biscutella vicentina|(Samp.) Rothm.|Brassicaceae
Eryngium maritimum|L.|Apiaceae
Crithmum maritimum|L.|Apiaceae
Thapsia villosa|L.|Apiaceae
Euphorbia paralias|L.|Euphorbiaceae
Silene littorea|Brot.|Caryophyllaceae
Herniaria ciliolata|Melderis|Caryophyllaceae
Narcissus bulbocodium|L.|Amaryllidaceae
Allium subvillosum|Salzm. ex Schult. & Schult.f.|Amaryllidaceae
Pancratium maritimum|L.|Amaryllidaceae
Asphodelus aestivus|Brot.|Asphodelaceae
Dipcadi serotinum|(L.) Medik.|Asparagaceae
Iris xiphium|L.|Iridaceae
Ophrys tenthredinifera|Willd.|Orchidaceae
Serapias lingua|L.|Orchidaceae
Carex arenaria|L.|Cyperaceae
Scirpoides holoschoenus|(L.) Soják|Cyperaceae
Juncus acutus|L.|Juncaceae
Ammophila arenaria|(L.) Link|Poaceae
Stipa gigantea|Link|Poaceae
Briza maxima|L.|Poaceae
Polypodium cambricum|L.|Polypodiaceae
Asplenium marinum|L.|Aspleniaceae
Davallia canariensis|(L.) Sm.|Davalliaceae
Viola arborescens|L.|Violaceae
Lonicera implexa|Aiton|Caprifoliaceae
Rosa canina|L.|Rosaceae
Rubus ulmifolius|Schott|Rosaceae
Crataegus monogyna|Jacq.|Rosaceae
Anagallis monelli|L.|Primulaceae
Convolvulus althaeoides|L.|Convolvulaceae
Echium plantagineum|L.|Boraginaceae
Lithodora prostrata subsp. lusitanica|(Samp.) Valdés|Boraginaceae
Ranunculus bullatus|L.|Ranunculaceae
Anemone palmata|L.|Ranunculaceae
Fumaria capreolata|L.|Papaveraceae
Reseda media|Lag.|Resedaceae
Drosophyllum lusitanicum|(L.) Link|Drosophyllaceae`

// tripSites are places well inside their country, with a height there in
// metres: country, code, province, latitude, longitude, height, words.
var tripSites = map[string]string{
	"Portugal": `Portugal|PT|Setúbal|38.5120|-8.9210|120|Serra da Arrábida, limestone slope
Portugal|PT|Évora|38.6410|-7.9120|260|Évora, cork oak wood
Portugal|PT|Beja|37.7230|-8.2150|210|Ourique, schist hills
Portugal|PT|Faro|37.3120|-8.5310|640|Serra de Monchique, syenite ridge
Portugal|PT|Guarda|40.4130|-7.5210|1380|Serra da Estrela, granite above the valley
Portugal|PT|Bragança|41.8110|-6.8320|830|Serra de Nogueira, oakwood
Portugal|PT|Braga|41.7210|-8.1630|780|Serra do Gerês, rocky ridge
Portugal|PT|Castelo Branco|39.8230|-7.4920|390|Castelo Branco, olive groves`,
	"world": `Spain|ES|Cádiz|36.5610|-5.5930|480|Sierra de Grazalema, gorge
Spain|ES|Jaén|37.9320|-2.9240|1240|Sierra de Cazorla, pinewood
Turkey|TR|Antalya|36.8210|30.3150|1210|Termessos, limestone rocks
Turkey|TR|Niğde|37.8120|34.9230|1890|Ala Dağları, scree
Brazil|BR|Minas Gerais|-19.2210|-43.5320|1190|Serra do Cipó, campo rupestre
Brazil|BR|Amazonas|-2.9310|-59.9520|90|Reserva florestal, terra firme
South Africa|ZA|Western Cape|-33.9820|19.1230|560|Franschhoek, mountain fynbos
Angola|AO|Huíla|-15.0630|13.5520|2050|Serra da Chela, montane grassland
Mozambique|MZ|Manica|-19.7810|33.0720|1480|Chimanimani, quartzite
Chile|CL|Coquimbo|-30.5320|-71.1240|320|Ovalle, matorral`,
}

// A habit is one way of keeping a table.
type habit struct {
	name    string
	sites   string
	columns string // term, or term=heading
	comma   rune
	year    int
	number  string // format of the collector's number
	date    func(y, m, d int) string
	people  []string
}

var months = strings.Fields("Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec")
var roman = strings.Fields("i ii iii iv v vi vii viii ix x xi xii")

var habits = []habit{
	{"darwin", "Portugal", "catalogNumber recordedBy recordNumber eventDate scientificName family country countryCode stateProvince locality habitat decimalLatitude decimalLongitude geodeticDatum coordinateUncertaintyInMeters minimumElevationInMeters identifiedBy dateIdentified preparations copies duplicatesTo typeStatus occurrenceRemarks identificationQualifier",
		',', 2022, "%d", func(y, m, d int) string { return fmt.Sprintf("%d-%02d-%02d", y, m, d) }, []string{"I. Almeida | J. Prates"}},
	{"columns", "world", "recordedBy=Collector recordNumber=Coll. no. eventDate=Date verbatimEventDate=verbatimEventDate scientificName=Name scientificNameAuthorship=Author genus=Genus specificEpithet=Species family=Family country=Country stateProvince=Province locality=Locality verbatimCoordinates=Coordinates verbatimElevation=verbatimElevation habitat=Habitat occurrenceRemarks=Notes identifiedBy=Det. dateIdentified=Det. date geodeticDatum=Datum",
		';', 1996, "%d", func(y, m, d int) string { return fmt.Sprintf("%d %s %d", d, months[m-1], y) }, []string{"T. Brandão", "L. Sarmento & J. Prates", "R. Coutinho"}},
	{"both", "world", "catalogNumber recordedBy recordNumber eventDate verbatimEventDate year month day scientificName genus specificEpithet family country countryCode stateProvince locality habitat plantDescription verbatimCoordinates decimalLatitude decimalLongitude geodeticDatum minimumElevationInMeters maximumElevationInMeters verbatimElevation identifiedBy dateIdentified identificationQualifier",
		'\t', 2004, "LS-%04d", func(y, m, d int) string { return fmt.Sprintf("%d-%02d-%02d", y, m, d) }, []string{"L. Sarmento", "I. Almeida"}},
}

// newTrip makes a clean table of n records.
func newTrip(h habit, rnd *rand.Rand, n int) *trip {
	t := &trip{comma: h.comma}
	for _, c := range splitColumns(h.columns) {
		term, heading, ok := strings.Cut(c, "=")
		if !ok {
			heading = term
		}
		t.terms, t.heading = append(t.terms, term), append(t.heading, heading)
	}
	plants, sites := strings.Split(tripPlants, "\n"), strings.Split(tripSites[h.sites], "\n")
	picked := rnd.Perm(len(plants))[:45] // so that some come often
	next := make([]int, len(h.people))
	for i := range next {
		next[i] = 112 + 400*i + rnd.IntN(90)
	}
	y, m, d := h.year, 3, 2
	for stop := 0; len(t.rows) < n; stop++ {
		if d += 1 + rnd.IntN(3); d > 28 {
			d -= 28
			if m++; m > 8 {
				y, m = y+1, 3
			}
		}
		site := strings.Split(sites[(stop/3)%len(sites)], "|")
		var lat, lon float64
		var height int
		fmt.Sscanf(site[3]+" "+site[4]+" "+site[5], "%f %f %d", &lat, &lon, &height)
		lat, lon, height = lat+float64(rnd.IntN(300)-150)/1e4, lon+float64(rnd.IntN(300)-150)/1e4, height+rnd.IntN(60)
		words := fmt.Sprintf("%s %d m %s of the %s", site[6], 100+50*rnd.IntN(30), []string{"N", "NE", "S", "W"}[rnd.IntN(4)], []string{"bridge", "chapel", "forest track", "last farm"}[rnd.IntN(4)])
		who := stop % len(h.people)
		for range 3 + rnd.IntN(5) {
			next[who]++
			p := strings.Split(plants[picked[rnd.IntN(len(picked))]], "|")
			binomial := strings.Fields(p[0])
			name := p[0]
			if t.column("scientificNameAuthorship") < 0 {
				name += " " + p[1]
			}
			day := h.date(y, m, d)
			v := map[string]string{
				"catalogNumber": fmt.Sprintf("VDOURA-%07d", 4000+len(t.rows)), "recordedBy": h.people[who], "recordNumber": fmt.Sprintf(h.number, next[who]),
				"eventDate": day, "verbatimEventDate": fmt.Sprintf("%d.%s.%d", d, roman[m-1], y), "year": fmt.Sprint(y), "month": fmt.Sprint(m), "day": fmt.Sprint(d),
				"scientificName": name, "scientificNameAuthorship": p[1], "genus": binomial[0], "specificEpithet": binomial[1], "family": p[2],
				"country": site[0], "countryCode": site[1], "stateProvince": site[2], "locality": words,
				"habitat":         []string{"Open scrub on stony ground", "Roadside bank, damp in winter", "Crevices of rocks, facing north", "Edge of cultivated fields, on clay"}[rnd.IntN(4)],
				"decimalLatitude": fmt.Sprintf("%.5f", lat), "decimalLongitude": fmt.Sprintf("%.5f", lon), "geodeticDatum": "WGS84", "coordinateUncertaintyInMeters": []string{"10", "30", "100"}[rnd.IntN(3)],
				"verbatimCoordinates": dms(lat, "N", "S") + " " + dms(lon, "E", "W"), "minimumElevationInMeters": fmt.Sprint(height), "maximumElevationInMeters": fmt.Sprint(height + 20),
				"verbatimElevation": fmt.Sprintf("%d m", height), "identifiedBy": h.people[0], "dateIdentified": fmt.Sprint(y + 1), "preparations": []string{"sheet", "sheet | packet: capsules", ""}[rnd.IntN(3)],
				"copies": []string{"", "1", "2"}[rnd.IntN(3)], "duplicatesTo": []string{"", "PINHEL | SOUTELO", "ALTAVX"}[rnd.IntN(3)], "typeStatus": "",
				"occurrenceRemarks": []string{"Flowers white, scented", "Shrub to 1.2 m; leaves sticky", "Common here", ""}[rnd.IntN(4)], "plantDescription": "Herb to 35 cm, flowers blue",
			}
			if v["maximumElevationInMeters"] != "" && t.column("verbatimElevation") >= 0 && t.column("maximumElevationInMeters") >= 0 {
				v["verbatimElevation"] = fmt.Sprintf("%d-%d m", height, height+20)
			}
			row := make([]string, len(t.terms))
			for i, term := range t.terms {
				row[i] = v[term]
			}
			t.rows, t.stop, t.person = append(t.rows, row), append(t.stop, stop), append(t.person, who)
		}
	}
	return t
}

func splitColumns(s string) []string {
	if !strings.Contains(s, "=") {
		return strings.Fields(s)
	}
	// A heading may hold spaces: a column begins where the next word has its "=".
	var all []string
	for _, w := range strings.Fields(s) {
		if strings.Contains(w, "=") {
			all = append(all, w)
		} else {
			all[len(all)-1] += " " + w
		}
	}
	return all
}

// dms writes degrees, minutes and tenths of a second.
func dms(deg float64, plus, minus string) string {
	side := plus
	if deg < 0 {
		deg, side = -deg, minus
	}
	tenths := int(deg*36000 + 0.5)
	return fmt.Sprintf("%d°%02d'%04.1f\"%s", tenths/36000, tenths/600%60, float64(tenths%600)/10, side)
}
