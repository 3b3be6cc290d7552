package trade

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"cornerslip/label"
)

// Tables that mix names and systems of families, from memory of herbaria: a line
// is a genus and its families, each with how many records have it. What is behind
// the arrow is what is said above a note; a mixture of names is worth a note.
var familyTables = []struct{ name, table, warns string }{
	{"both names of one family", "Bellis Compositae 4 Asteraceae 5; Crepis Asteraceae 3; Carlina Compositae 2", ""},
	{"all nine families with two names", "Bellis Compositae 1 Asteraceae 1; Draba Cruciferae 1 Brassicaceae 1; Poa Gramineae 1 Poaceae 1; Clusia Guttiferae 1 Clusiaceae 1; Lamium Labiatae 1 Lamiaceae 1; Cassia Leguminosae 1 Fabaceae 1; Ulex Papilionaceae 1 Fabaceae 1; Phoenix Palmae 1 Arecaceae 1; Apium Umbelliferae 1 Apiaceae 1", ""},
	{"legumes in one family and three", "Cassia Caesalpiniaceae 3 Fabaceae 2 Leguminosae 1; Acacia Mimosaceae 4 Fabaceae 1; Ulex Papilionaceae 3 Fabaceae 3", ""},
	{"legumes with their subfamilies", "Cassia Leguminosae-Caesalpinioideae 2 Leguminosae 1; Ulex Fabaceae_(Faboideae) 2 Fabaceae 3; Acacia Leguminosae_subfam._Mimosoideae 1", ""},
	{"lilies of old and today", "Allium Liliaceae 5 Amaryllidaceae 2 Alliaceae 1; Scilla Liliaceae 2 Hyacinthaceae 1 Asparagaceae 1; Asphodelus Liliaceae 2 Asphodelaceae 3; Colchicum Liliaceae 1 Colchicaceae 1; Aloe Liliaceae 1 Aloaceae 1 Asphodelaceae 1", ""},
	{"figworts of old and today", "Digitalis Scrophulariaceae 6 Plantaginaceae 1; Pedicularis Scrophulariaceae 2 Orobanchaceae 2; Mimulus Scrophulariaceae 1 Phrymaceae 1; Buddleja Buddlejaceae 1 Scrophulariaceae 2", ""},
	{"mallows of old and today", "Tilia Tiliaceae 3 Malvaceae 1; Adansonia Bombacaceae 1 Malvaceae 1; Sterculia Sterculiaceae 2 Malvaceae 1; Malva Malvaceae 4", ""},
	{"goosefoots, maples, milkweeds", "Atriplex Chenopodiaceae 5 Amaranthaceae 1; Acer Aceraceae 2 Sapindaceae 1; Asclepias Asclepiadaceae 1 Apocynaceae 2; Sambucus Caprifoliaceae 2 Adoxaceae 1 Sambucaceae 1 Viburnaceae 1", ""},
	{"in capitals or not", "Bellis ASTERACEAE 3 Asteraceae 4; Ulex FABACEAE 1 Fabaceae 6", ""},
	{"names that are nearly alike", "Quercus Fagaceae 9; Ulex Fabaceae 1; Olea Oleaceae 8; Olax Olacaceae 1; Oleandra Oleandraceae 1; Bixa Bixaceae 1; Buxus Buxaceae 7; Linum Linaceae 8; Lilium Liliaceae 1; Ruta Rutaceae 9; Rosa Rosaceae 8; Rourea Connaraceae 1; Malva Malvaceae 9; Malpighia Malpighiaceae 1; Musa Musaceae 1; Myrica Myricaceae 1; Myristica Myristicaceae 6; Cornus Cornaceae 1; Corylus Corylaceae 1; Ceratophyllum Ceratophyllaceae 1; Canna Cannaceae 1; Cannabis Cannabaceae 5", ""},
	{"mosses and liverworts", "Bryum Bryaceae 3; Mnium Mniaceae 1; Hypnum Hypnaceae 5; Pottia Pottiaceae 1; Riccia Ricciaceae 1; Radula Radulaceae 1; Pellia Pelliaceae 1; Neckera Neckeraceae 1; Meesia Meesiaceae 1; Dicranum Dicranaceae 4 Leucobryaceae 1; Leucodon Leucodontaceae 1", ""},
	{"lichens and fungi", "Cladonia Cladoniaceae 5; Usnea Usneaceae 1 Parmeliaceae 3; Physcia Physciaceae 1; Peltigera Peltigeraceae 1; Russula Russulaceae 1; Amanita Amanitaceae 2; Xylaria Xylariaceae 1; Boletus Boletaceae 1; Puccinia Pucciniaceae 1", ""},
	{"algae", "Fucus Fucaceae 1; Ulva Ulvaceae 4; Chara Characeae 3; Codium Codiaceae 1; Corallina Corallinaceae 1; Gelidium Gelidiaceae 1; Cystoseira Cystoseiraceae 1 Sargassaceae 1; Nostoc Nostocaceae 1; Corallina Corallinaceae 1 Hapalidiaceae 1", ""},
	{"rusts and smuts", "Cronartium Cronartiaceae 3 Melampsoraceae 1; Phragmidium Phragmidiaceae 4 Pucciniaceae 1; Entyloma Entylomataceae 1; Thecaphora Glomosporiaceae 1 Ustilaginaceae 1; Melampsora Melampsoraceae 4", ""},
	{"lichens of old and today", "Rhizocarpon Lecideaceae 1 Rhizocarpaceae 2; Buellia Physciaceae 1 Caliciaceae 1; Aspicilia Lecanoraceae 1 Megasporaceae 1; Sticta Stictaceae 1 Peltigeraceae 1", ""},
	{"liverworts of old and today", "Sphenolobus Lophoziaceae 1 Anastrophyllaceae 2; Cephaloziella Cephaloziaceae 1 Cephaloziellaceae 1; Conocephalum Marchantiaceae 1 Conocephalaceae 1", ""},
	{"the ending of a family that no list has", "Hygrobia Inventacea 1; Bryum Bryaceae 3", "family-spelling Inventacea"},
	{"no family of plants", "Carcinus Crustacea 1; Bryum Bryaceae 3", ""},
	{"ferns of old and today", "Dryopteris Polypodiaceae 2 Aspidiaceae 1 Dryopteridaceae 3; Blechnum Blechnaceae 1 Polypodiaceae 1; Pteris Pteridaceae 1 Adiantaceae 1; Osmunda Osmundaceae 1", ""},
	{"with authors, orders and doubts", "Ulex Fabaceae_Lindl. 1 Fabaceae 4; Bellis Asteraceae_Bercht._&_J.Presl 1 Asteraceae 2; Poa Poales 1 Poaceae 2; Carex Cyperaceae? 1 Cyperaceae 3", ""},
	{"two names in one cell", "Bellis Compositae_(Asteraceae) 2 Asteraceae/Compositae 1 Asteraceae 3; Ulex Leguminosae_-_Papilionoideae 2", ""},
	{"accents of other languages", "Bellis Compuestas 1 Asteraceae 5; Poa Gramíneas 1 Poaceae 4; Rosa Rosáceas 2", ""},
	{"a letter, an ending", "Lamium Lamiaceae 5 Lamiacae 1; Rosa Rosaceae 6 Rosacea 1 Roseaceae 1; Ulex Fabaceae 3", "family-spelling Lamiacae, family-spelling Rosacea, family-spelling Roseaceae"},
	{"misspelt and nowhere right", "Draba Brassicaeae 1; Daphne Thymeleaceae 1; Silene Caryophylaceae 1; Reseda Resedaceae 1", "family-spelling Brassicaeae, family-spelling Caryophylaceae, family-spelling Thymeleaceae"},
	{"a genus in a family that is not its own", "Quercus Fagaceae 4 Rosaceae 1; Ulex Fabaceae 3 Fagaceae 1; Poa Poaceae 5 Cyperaceae 1", "genus-families Cyperaceae, genus-families Fagaceae, genus-families Rosaceae"},
	{"half and half of two families", "Quercus Fagaceae 1 Betulaceae 1", "genus-families Betulaceae"},
	{"a strange family, once", "Quercus Rosaceae 1; Rosa Rosaceae 1; Hypericum Guttiferae 1; Hypericum Clusiaceae 1", "genus-families Rosaceae"},
	{"a column moved by itself", "Quercus Rosaceae 2; Rosa Poaceae 1; Poa Cistaceae 1; Cistus Fagaceae 1; Ulex Lamiaceae 2; Lamium Fabaceae 1; Carex Ericaceae 1; Erica Cyperaceae 1; Viola Linaceae 1; Linum Violaceae 1; Silene Pinaceae 1", "genus-families Rosaceae"},
}

func TestFamilyTables(t *testing.T) {
	alarms, misses := 0, 0
	for _, tt := range familyTables {
		var all [][]string
		for line := range strings.SplitSeq(tt.table, ";") {
			f := strings.Fields(line)
			for i := 1; i+1 < len(f); i += 2 {
				for range f[i+1][0] - '0' {
					all = append(all, []string{"recordNumber", itoa(100 + len(all)), "scientificName", f[0] + " sp.", "family", strings.ReplaceAll(f[i], "_", " ")})
				}
			}
		}
		_, fs := run(t, open(t, rows(all...)...), options(t))
		said := map[string]bool{}
		for _, f := range fs {
			style(t, f)
			t.Log(f)
			if f.Severity > label.Note {
				said[f.Rule+" "+f.Value] = true
			}
		}
		if got := strings.Join(slices.Sorted(maps.Keys(said)), ", "); got != tt.warns {
			if tt.warns == "" {
				alarms++
			} else {
				misses++
			}
			t.Errorf("%s: %q, not %q", tt.name, got, tt.warns)
		}
	}
	t.Logf("%d tables: %d with false alarms, %d with misses", len(familyTables), alarms, misses)
}

// Every genus of the list stands there once, under a family that there is.
func TestGenera(t *testing.T) {
	seen := map[string]bool{}
	for line := range strings.Lines(strings.TrimSpace(generaTable)) {
		f := strings.Fields(line)
		if !families()[f[0]+"aceae"] {
			t.Errorf("%s is no family", f[0])
		}
		for _, g := range f[1:] {
			if seen[g] {
				t.Errorf("%s stands twice", g)
			}
			seen[g] = true
		}
	}
	if len(seen) < 400 {
		t.Errorf("%d genera", len(seen))
	}
}

// Families that the list lacks are not taken for misspelt ones of the list.
func TestNearFamily(t *testing.T) {
	for f := range families() {
		if right, _ := misspeltFamily(&familySeen{text: f}, nil); right != "" {
			t.Errorf("%s is taken for %s", f, right)
		}
	}
	for f, want := range map[string]string{"Poacae": "Poaceae", "Fagacea": "Fagaceae", "Rosaceaea": "Rosaceae"} {
		if right := nearFamily(f); right != want {
			t.Errorf("%s is taken for %q, not for %s", f, right, want)
		}
	}
	var wrong []string
	for _, f := range strings.Fields(otherFamilies) {
		if right := nearFamily(f); right != "" && !families()[f] {
			wrong = append(wrong, fmt.Sprint(f, " ", right))
		}
	}
	if len(wrong) > 0 {
		t.Errorf("taken for others: %s", strings.Join(wrong, ", "))
	}
}

// otherFamilies are families of fungi, algae and of older systems, from memory.
const otherFamilies = `Dothideaceae Glomerellaceae Phyllostictaceae Meruliaceae Fomitopsidaceae Phanerochaetaceae Crepidotaceae Bolbitiaceae Hymenogastraceae Lyophyllaceae Omphalotaceae Schizophyllaceae
Pleurotaceae Pluteaceae Gloeophyllaceae Bankeraceae Thelephoraceae Albatrellaceae Bondarzewiaceae Rhizopogonaceae Paxillaceae Serpulaceae Coniophoraceae Dacrymycetaceae Pilobolaceae Mucoraceae Saprolegniaceae
Peronosporaceae Albuginaceae Pythiaceae Zygnemataceae Desmidiaceae Closteriaceae Oedogoniaceae Chaetophoraceae Trentepohliaceae Volvocaceae Naviculaceae Bacillariaceae Fragilariaceae Scytonemataceae Nostocaceae
Oscillatoriaceae Rivulariaceae Chordaceae Cystoseiraceae Durvillaeaceae Hormosiraceae Lessoniaceae Alariaceae Scytosiphonaceae Punctariaceae Chordariaceae Ralfsiaceae Cutleriaceae Sphacelariaceae Stypocaulaceae
Champiaceae Lomentariaceae Plocamiaceae Halymeniaceae Phyllophoraceae Solieriaceae Hypneaceae Bonnemaisoniaceae Galaxauraceae Liagoraceae Dasyaceae Wrangeliaceae Callithamniaceae Rhodymeniaceae Peyssonneliaceae
Hapalidiaceae Udoteaceae Halimedaceae Dasycladaceae Polyphysaceae Valoniaceae Siphonocladaceae Boodleaceae Anadyomenaceae Bryopsidaceae Derbesiaceae Monostromataceae Prasiolaceae
Dichondraceae Ficoidaceae Illecebraceae Ilicaceae Aquilariaceae Cassythaceae Epacridaceae Eriospermaceae Fumariaceae Hemerocallidaceae Hypecoaceae Limnocharitaceae Meliosmaceae Myoporaceae Peganaceae Periplocaceae
Philadelphaceae Phormiaceae Podophyllaceae Ptaeroxylaceae Rhoipteleaceae Sparganiaceae Spigeliaceae Strychnaceae Tetragoniaceae Theophrastaceae Ternstroemiaceae Trapellaceae Tribulaceae Vacciniaceae Voyriaceae
Ambrosiaceae Cichoriaceae Carduaceae Coridaceae Selaginaceae Stackhousiaceae Hippocrateaceae Erythropalaceae Octoknemaceae Strombosiaceae Coulaceae Aptandraceae Ximeniaceae Comandraceae Thesiaceae Nanodeaceae
Amphorogynaceae Cervantesiaceae Petiveriaceae Rivinaceae Seguieriaceae Agdestidaceae Hectorellaceae Montiaceae Nemacladaceae Cyphocarpaceae Pentaphragmaceae Donatiaceae Idiospermaceae Trimeniaceae Gyrocarpaceae
Malesherbiaceae Samydaceae Scyphostegiaceae Gonystylaceae Sphaerosepalaceae Diegodendraceae Byttneriaceae Brownlowiaceae Helicteraceae Duriaceae Moringaceae Tovariaceae Emblingiaceae Capparaceae Setchellanthaceae
Acrobolbaceae Allisoniaceae Brevianthaceae Delavayellaceae Grolleaceae Neotrichocoleaceae Notoscyphaceae Perssoniellaceae Pseudoditrichaceae Sandeothallaceae Trichotemnomataceae Verdoorniaceae Alophosiaceae Braithwaiteaceae
Bryobartramiaceae Bryoxiphiaceae Catagoniaceae Hymenolomataceae Lepyrodontaceae Microtheciellaceae Miyabeaceae Orthodontiaceae Phyllodrepaniaceae Pleuroziopsaceae Pulchrinodaceae Rutenbergiaceae Saulomataceae
Schimperobryaceae Serpotortellaceae Sorapillaceae Viridivelleraceae Acinetosporaceae Adenocystaceae Agaraceae Areschougiaceae Arthrocladiaceae Ascoseiraceae Bachelotiaceae Caulacanthaceae Catenellopsidaceae Chnoosporaceae
Choreocolacaceae Crossocarpaceae Cruoriaceae Dicranemataceae Dumontiaceae Endocladiaceae Gloiosiphoniaceae Hymenocladiaceae Mychodeaceae Nizymeniaceae Phacelocarpaceae Pihiellaceae Rhabdoniaceae Rhizophyllidaceae
Rissoellaceae Sarcodiaceae Sarcomeniaceae Splachnidiaceae Sphaerococcaceae Tichocarpaceae Thoreaceae Tsengiaceae Ulvellaceae Ascosphaeraceae Saccharomycetaceae Dipodascaceae Meliolaceae Asterinaceae Parmulariaceae
Hypodermataceae Stictidaceae Odontotremataceae Ostropaceae Vezdaeaceae Pycnoraceae Gloeoheppiaceae Eremithallaceae Orbiliaceae Sphaerobolaceae Pyrenogastraceae Lysuraceae Trappeaceae Claustulaceae Hyphodermataceae
Schizoporaceae Tubulicrinaceae Rickenellaceae Repetobasidiaceae Hirschioporaceae Wrightoporiaceae Xenasmataceae Jaapiaceae Lepidostromataceae Septobasidiaceae Eocronartiaceae Helicobasidiaceae Platygloeaceae
Cystobasidiaceae Sporidiobolaceae Leucosporidiaceae Kriegeriaceae Tilletiariaceae Quambalariaceae Ceraceosoraceae Cryptobasidiaceae Websdaneaceae Mycosyringaceae Floromycetaceae Erratomycetaceae Rhamphosporaceae Wallemiaceae`
