package trade

import (
	"math"
	"strings"
	"unicode"

	"cornerslip/label/check"
	"cornerslip/label/coord"
	"cornerslip/label/place"
)

// seaward is what a record says of the sea.
type seaward int

const (
	dry seaward = iota
	coast
	openSea
)

// How far beyond all tolerance a place may lie in the sea, in metres, where the
// record speaks of the coast or of an island, and where it speaks of a ship, of
// dredging or of depths: so far a state's waters reach, 200 nautical miles and
// some (UN Convention on the Law of the Sea, article 57).
const (
	beach  = 20e3
	waters = 400e3
)

func (s seaward) reach() float64 { return [...]float64{0, beach, waters}[s] }

// seaOf finds out what a record says of the sea.
func seaOf(c *check.Context) seaward {
	for _, term := range []string{"minimumDepthInMeters", "maximumDepthInMeters", "verbatimDepth"} {
		if c.Text(term) != "" {
			return openSea
		}
	}
	if water := c.Text("waterBody"); water != "" && !hasAny(plainWords(c.Heading("waterBody")+" "+water), freshWords) {
		return openSea
	}
	if strings.EqualFold(c.Text("countryCode"), place.HighSeas) {
		return openSea
	}
	if country := plainWords(c.Text("country")); hasAny(country, openCountries) {
		return openSea
	}
	found := dry
	for _, term := range []string{"island", "islandGroup"} {
		if c.Text(term) != "" {
			found = coast
		}
	}
	for _, term := range []string{"locality", "verbatimLocality", "habitat", "samplingProtocol", "occurrenceRemarks", "eventRemarks", "locationRemarks", "fieldNotes", "stateProvince", "county", "municipality", "higherGeography", "verbatimElevation", "country"} {
		text := c.Text(term)
		if text == "" {
			continue
		}
		words := plainWords(text)
		switch {
		case hasAny(words, openWords):
			return openSea
		case found == dry && hasAny(words, coastWords):
			found = coast
		}
		if found == dry && strings.ContainsAny(text, "海島岛礁湾灣浜濱滩灘岬섬") {
			found = coast
		}
	}
	return found
}

// plainWords are the words of a text in small letters, a blank before and
// behind each; heights above the sea are taken out.
func plainWords(text string) string {
	var b strings.Builder
	b.WriteByte(' ')
	blank := true
	for _, r := range strings.ToLower(text) {
		switch {
		case unicode.IsLetter(r) || unicode.IsMark(r):
			b.WriteRune(r)
			blank = false
		case !blank:
			b.WriteByte(' ')
			blank = true
		}
	}
	if !blank {
		b.WriteByte(' ')
	}
	words := b.String()
	for _, height := range heightsOfSea {
		words = strings.ReplaceAll(words, " "+height+" ", " ")
	}
	return words
}

func hasAny(words string, list []string) bool {
	for _, w := range list {
		if strings.Contains(words, " "+w+" ") {
			return true
		}
	}
	return false
}

func phrases(text string) []string {
	var all []string
	for p := range strings.SplitSeq(text, "|") {
		all = append(all, strings.Join(strings.Fields(p), " "))
	}
	return all
}

// Words of the sea in the languages labels are written in; common practice, no
// source.
var (
	heightsOfSea = phrases("sea level|nivel del mar|nível do mar|nivel do mar|niveau de la mer|livello del mare|über dem meer|über dem meere|über meer|meereshöhe|s n m|m s m|boven zee|zeeniveau|над уровнем моря|dead sea|sea of galilee|see genezareth|mar morto|mar muerto|mer morte")

	openCountries = phrases("sea|ocean|oceano|océano|océan|ozean|oceaan|meer|waters|águas|aguas|eaux|high seas|international waters|mar|mer|zee")

	freshWords = phrases("river|creek|stream|brook|lake|loch|lough|reservoir|pond|spring|rio|río|ribeira|ribeiro|riacho|igarapé|lagoa|albufeira|barragem|açude|arroyo|lago|embalse|quebrada|laguna|fleuve|rivière|ruisseau|lac|étang|fluss|bach|teich|stausee|fiume|torrente|rivier|meertje|beek|älv|elv|elva|å|sjö|sjön|järvi|joki|rzeka|jezioro|reka|řeka|jezero|река|озеро|sungai|danau|kawa|gawa")

	openWords = phrases("offshore|off shore|off the coast|off coast|dredged|dredging|dredgings|dredge|trawl|trawled|trawling|adrift|drifting|floating in the sea|on board|aboard|shipboard|ship|vessel|cruise|r v|rv|research vessel|pelagic|plankton|sublittoral|subtidal|infralittoral|circalittoral|seabed|sea bed|sea floor|seafloor|fathom|fathoms|m deep|m depth|depth|seamount|sea mount|shoal|shoals|reef|reefs|atoll|barrier reef|continental shelf|buoy|oil rig|oil platform|lightship|high seas|open sea|open ocean|scuba|diving|dive|snorkel|snorkelling|kelp forest|maerl|seagrass bed|seagrass meadow|sea ice|pack ice|iceberg|ice floe|drift ice|sargasso sea|sargasso" +
		"|dragagem|dragado|dragada|draga|ao largo|alto mar|arrasto|à deriva|navio|recife|recifes|plataforma continental|mergulho|profundidade|braças|banco de pesca|mar adentro|alta mar|altamar|a la deriva|buque|arrecife|arrecifes|buceo|profundidad|brazas|submareal|atolón|atol" +
		"|dragage|dragué|draguée|au large|haute mer|pleine mer|chalut|chalutage|à la dérive|navire|récif|récifs|plongée|profondeur|brasses|dérivant|plateau continental" +
		"|gedredscht|dredsche|hohe see|hoher see|offene see|hochsee|auf see|treibend|schleppnetz|schiff|riff|korallenriff|tauchgang|tiefe|faden|vor der küste|seegraswiese" +
		"|al largo|mare aperto|alla deriva|immersione|profondità|strascico|open zee|op zee|drijvend|diepte|til havs|till havs|på havet|trål|trålning|fartyg|djup|dybde|bottenskrap|в море|траление|дрейф|риф" +
		"|north sea|baltic sea|mediterranean sea|adriatic sea|aegean sea|ionian sea|tyrrhenian sea|black sea|caspian sea|red sea|arabian sea|bering sea|barents sea|kara sea|white sea|laptev sea|chukchi sea|beaufort sea|norwegian sea|greenland sea|irish sea|celtic sea|english channel|bay of biscay|caribbean sea|gulf of mexico|coral sea|tasman sea|timor sea|arafura sea|ross sea|weddell sea|scotia sea|south china sea|east china sea|yellow sea|sea of japan|sea of okhotsk|java sea|banda sea|sulu sea|celebes sea|persian gulf|bay of bengal|andaman sea|drake passage|denmark strait|nordsee|ostsee|mittelmeer|schwarzes meer|mer du nord|mer baltique|mer noire|mar del norte|mar báltico|mar cantábrico|mar caribe|atlantic ocean|pacific ocean|indian ocean|arctic ocean|southern ocean")

	saltWords = phrases("sea|ocean|marine|seabed|sea bed|sea floor|seafloor|reef|reefs|coral|corals|atoll|kelp|kelp forest|maerl|seagrass|seagrasses|sublittoral|subtidal|intertidal|infralittoral|circalittoral|submareal|intermareal|recife|recifes|arrecife|arrecifes|coralino|coralina|récif|récifs|riff|korallenriff|oceano|océano|océan|ozean|oceaan|marinho|marino|marin")

	coastWords = phrases("sea|ocean|seashore|sea shore|seaside|sea cliff|sea cliffs|shore|shores|coast|coastal|beach|beaches|strandline|island|islands|isle|isles|islet|islets|isl|isls|cay|cays|caye|key|keys|skerry|skerries|rock|rocks|lagoon|estuary|mangrove|mangroves|intertidal|littoral|tidal|tide|harbour|harbor|port|pier|jetty|quay|bay|cove|gulf|sound|strait|channel|fjord|inlet|cape|headland|peninsula|delta|saltmarsh|salt marsh|dune|dunes|lighthouse|bank|sandbank|spit|seaweed" +
		"|ilha|ilhas|ilhéu|ilheu|ilhota|praia|praias|costa|litoral|baía|baia|cabo|ponta|farol|estuário|ria|foz|mangue|mangal|manguezal|lagoa|laguna|mar|porto|isla|islas|islote|islotes|cayo|cayos|playa|playas|bahía|bahia|punta|faro|estuario|ría|manglar|manglares|puerto|golfo|ensenada|caleta|península" +
		"|île|îles|ile|iles|îlot|ilot|plage|côte|cote|baie|cap|pointe|phare|estuaire|palétuviers|lagon|lagune|mer|golfe|anse|rade" +
		"|insel|inseln|hallig|eiland|eilanden|küste|strand|bucht|kap|leuchtturm|hafen|mündung|watt|wattenmeer|düne|dünen|meer|klippe|klippen|isola|isole|isolotto|spiaggia|capo|scoglio|scogli|mare|zee|kust|wad|waddenzee|haven|ö|öar|holme|holmen|skär|øy|øya|holm|skjær|hav|havet|kyst|kust|bukt|fyr|saari|ranta|wyspa|plaża|ostrov|otok|obala|plaža|остров|острова|море|берег|побережье|залив|мыс|shima|jima|tō|kaigan|misaki|pulau|teluk|tanjung|pantai")
)

// roughness is how far off a place may be by the figures it is written with, in
// metres. Minutes are known again when they were made decimals, and so are
// tenths when zeros were put behind them.
func roughness(p coord.Point) float64 {
	rough := float64(p.Uncertainty())
	if p.Form == coord.GridUTM || p.Form == coord.GridMGRS {
		return rough
	}
	// As finely as decimals are written, they are rounded; two say nothing of
	// minutes.
	near := 0.00006
	if step := p.Step().Degrees(); step <= 0.0011 {
		near = max(near, step*0.55)
	}
	on := func(v, step float64) bool { return math.Abs(v-math.Round(v/step)*step) <= near }
	for _, minutes := range []coord.Angle{60, 30, 15, 10, 6, 5, 1} {
		step := coord.Degree * minutes / 60
		if on(p.Lat.Degrees(), step.Degrees()) && on(p.Lon.Degrees(), step.Degrees()) {
			return max(rough, float64(coord.UncertaintyFromPrecision(step, p.Lat)))
		}
	}
	return rough
}

// repeats reports whether a latitude is the longitude once more. Where the
// place lies in the country as stated, hundredths of a degree may agree by
// chance, and tenths anywhere.
func repeats(p coord.Point, right bool) bool {
	if p.Lat == 0 || p.Lat != p.Lon && p.Lat != -p.Lon {
		return false
	}
	if right {
		return p.Lat%(coord.Degree/100) != 0 && p.Lat%(coord.Degree/60) != 0
	}
	return p.Lat%(coord.Degree/10) != 0
}
