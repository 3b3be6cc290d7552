package trade

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"cornerslip/label"
	"cornerslip/label/check"
)

// familyRules hold the families of a table against each other.
func familyRules() []check.Rule {
	run := func(family string, n int, last ...string) []map[string]string {
		var all [][]string
		for i := range n {
			all = append(all, []string{"recordNumber", itoa(300 + i), "family", family})
		}
		return rows(append(all, append([]string{"recordNumber", "400"}, last...))...)
	}
	return []check.Rule{
		{
			Name: "family-spelling", Severity: label.Warning, Source: "ICN Art. 18.5 (families with two names); families: APG IV and PPG I",
			Doc: "one family spelt two ways in a table, or under both of its names", Terms: []string{"family"},
			Example: run("Lamiaceae", 3, "family", "Laminaceae"), Counterexample: run("Fagaceae", 3, "family", "Fabaceae", "scientificName", "Genista triacanthos Brot."),
			Table: func() check.TableRule { return &familyTable{} },
		},
		{
			Name: "genus-families", Severity: label.Warning, Source: practice,
			Doc: "one genus under two families", Terms: []string{"family"},
			Example: run("Plantaginaceae", 3, "family", "Scrophulariaceae"), Counterexample: run("Lamiaceae", 3, "family", "Plantaginaceae", "scientificName", "Plantago coronopus L."),
			Table: func() check.TableRule { return &genusTable{genera: map[string]*genusFamilies{}} },
		},
	}
}

// alternative are the families that have two names of equal standing, the
// older first: ICN Art. 18.5, with Art. 19.8 for Papilionaceae.
var alternative = map[string]string{
	"Compositae": "Asteraceae", "Cruciferae": "Brassicaceae", "Gramineae": "Poaceae", "Guttiferae": "Clusiaceae", "Labiatae": "Lamiaceae",
	"Leguminosae": "Fabaceae", "Papilionaceae": "Fabaceae", "Palmae": "Arecaceae", "Umbelliferae": "Apiaceae",
}

// modern returns the name of a family in -aceae, spelt as families are.
func modern(family string) string {
	f := capitalised(family)
	if m := alternative[f]; m != "" {
		return m
	}
	return f
}

// capitalised writes FABACEAE as Fabaceae.
func capitalised(s string) string {
	if s == "" {
		return ""
	}
	l := strings.ToLower(s)
	return strings.ToUpper(l[:1]) + l[1:]
}

// isFamily reports whether a cell looks like a family's name at all.
func isFamily(s string) bool {
	if len(s) < 6 || strings.Trim(strings.ToLower(s), "abcdefghijklmnopqrstuvwxyzëöüæœ") != "" {
		return false
	}
	f := capitalised(s)
	return strings.HasSuffix(f, "ae") || strings.Contains(f[len(f)-5:], "ac") || alternative[f] != ""
}

// familySeen is one way in which families are spelt.
type familySeen struct {
	text  string
	count int
	cells []cell
}

// familyTable keeps some 100 bytes for each family, and 12 for its first
// records.
type familyTable struct {
	file string
	seen map[string]*familySeen
}

func (t *familyTable) Feed(r *check.Record) {
	f := r.Field("family")
	if f.Text == "" || r.Doubted("family") {
		return
	}
	if s := t.seen[f.Text]; s != nil {
		s.count++
		if len(s.cells) < maxCells {
			s.cells = append(s.cells, cellOf(f))
		}
		return
	}
	if !isFamily(f.Text) {
		return
	}
	if t.seen == nil {
		t.seen, t.file = map[string]*familySeen{}, f.Origin.File
	}
	text := strings.Clone(f.Text)
	t.seen[text] = &familySeen{text, 1, []cell{cellOf(f)}}
}

func (t *familyTable) End() []label.Finding {
	list := slices.SortedFunc(maps.Values(t.seen), func(a, b *familySeen) int {
		return cmp.Or(cmp.Compare(b.count, a.count), cmp.Compare(a.cells[0].row, b.cells[0].row))
	})
	var all []label.Finding
	for i, s := range list {
		for _, as := range list[:i] {
			if capitalised(s.text) == capitalised(as.text) {
				break // the same but for capitals, which are a matter of style
			}
			message := twoWays(s, as)
			if message == "" {
				continue
			}
			all = append(all, label.Finding{
				Origin: s.cells[0].origin(t.file, "family"), Value: s.text, Suggest: as.text, Also: also("family", s.cells[1:]),
				Message: message,
			})
			break
		}
	}
	return all
}

// twoWays says how a family is spelt beside a commoner spelling, "" if the two
// are of two families.
func twoWays(s, as *familySeen) string {
	f, g := capitalised(s.text), capitalised(as.text)
	switch {
	case modern(f) == modern(g):
		return fmt.Sprintf("the same family as %s, as %s of the table %s it: both names are right, but use one", as.text, plural(as.count, "record"), has(as.count))
	case families()[f]:
		return ""
	case families()[g] && as.count >= s.count, as.count >= max(common, 3*s.count):
		if s, t := strings.LastIndex(f, "ac"), strings.LastIndex(g, "ac"); s >= 2 && s == t && f[:s] == g[:t] {
			return fmt.Sprintf("spelt %q in %s of the table", as.text, plural(as.count, "record"))
		}
		if short := min(len([]rune(f)), len([]rune(g))) - len("aceae"); short >= 3 && within([]rune(f), []rune(g), 1+min(1, short/5)) {
			return fmt.Sprintf("spelt %q in %s of the table", as.text, plural(as.count, "record"))
		}
	}
	return ""
}

func has(n int) string {
	if n == 1 {
		return "has"
	}
	return "have"
}

// genusFamilies are the families that a genus stands under: 100 bytes a genus.
type genusFamilies struct {
	families []*familySeen
}

type genusTable struct {
	file   string
	genera map[string]*genusFamilies
}

func (t *genusTable) Feed(r *check.Record) {
	f := r.Field("family")
	if f.Text == "" || r.Doubted("family") {
		return
	}
	genus := genusOf(r)
	if genus == "" {
		return
	}
	g := t.genera[genus]
	if g == nil {
		t.file = f.Origin.File
		g = &genusFamilies{}
		t.genera[strings.Clone(genus)] = g
	}
	for _, s := range g.families {
		if s.text == f.Text {
			s.count++
			if len(s.cells) < maxCells {
				s.cells = append(s.cells, cellOf(f))
			}
			return
		}
	}
	if !isFamily(f.Text) {
		return
	}
	for _, s := range g.families {
		if modern(s.text) == modern(f.Text) {
			s.count++
			return
		}
	}
	if len(g.families) < 10 {
		g.families = append(g.families, &familySeen{strings.Clone(f.Text), 1, []cell{cellOf(f)}})
	}
}

// genusOf is the genus of a record: its column, else the first word of the
// name if it looks like one.
func genusOf(r *check.Record) string {
	genus := r.Text("genus")
	if genus == "" {
		genus, _, _ = strings.Cut(strings.TrimPrefix(r.Text("scientificName"), "× "), " ")
	}
	if len(genus) < 3 || genus[0] < 'A' || genus[0] > 'Z' || strings.ContainsAny(genus, ".? ()!") || strings.HasSuffix(genus, "aceae") || genus[1] < 'a' {
		return ""
	}
	return genus
}

func (t *genusTable) End() []label.Finding {
	var all []label.Finding
	for _, genus := range slices.Sorted(maps.Keys(t.genera)) {
		list := t.genera[genus].families
		slices.SortStableFunc(list, func(a, b *familySeen) int { return cmp.Compare(b.count, a.count) })
		for i, s := range list {
			if i == 0 || capitalised(s.text) == capitalised(list[0].text) || twoWays(s, list[0]) != "" {
				continue // a spelling has a finding of its own
			}
			suggest := list[0].text
			if list[0].count == s.count {
				suggest = ""
			}
			all = append(all, label.Finding{
				Origin: s.cells[0].origin(t.file, "family"), Value: s.text, Suggest: suggest, Also: also("family", s.cells[1:]),
				Message: fmt.Sprintf("%s stands under %s in %s of the table: one genus has one family", genus, list[0].text, plural(list[0].count, "other record")),
			})
		}
	}
	return all
}

// families are good names of families of plants: two that differ by a letter
// (Fagaceae, Fabaceae) are no misspelling.
var families = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for _, stem := range strings.Fields(familyStems) {
		m[stem+"aceae"] = true
	}
	for old := range alternative {
		m[old] = true
	}
	return m
})

// familyStems are the names of families without -aceae: of seed plants after
// APG IV and Christenhusz et al. 2011, of ferns and lycophytes after PPG I, of
// bryophytes, lichens and algae a choice, and some that older books have. From
// memory.
const familyStems = `
Acanth Achari Acor Actinidi Adox Aextoxic Aizo Akani Alismat Alseuosmi Alstroemeri Altingi Alzate Amaranth Amaryllid Amborell Anacampserot Anacardi Anarthri Ancistroclad Anisophylle Annon Aphanopetal Aphloi Api
Apocyn Apodanth Aponogeton Aquifoli Ar Arali Arec Argophyll Aristolochi Asparag Asphodel Asteli Aster Asteropei Atherospermat Austrobailey Balanop Balanophor Balsamin Barbey Barbeui Basell Bat Begoni Berberid
Berberidopsid Betul Biebersteini Bignoni Bix Blandfordi Bonneti Boragin Bory Brassic Bromeli Brunelli Bruni Burmanni Burser Butom Bux Byblid Cabomb Cact Calceolari Calophyll Calycanth Calycer Campanul Campynemat
Canell Cann Cannab Cappar Caprifoli Cardiopterid Caric Carlemanni Caryocar Caryophyll Casuarin Celastr Centrolepid Centroplac Cephalot Ceratophyll Cercidiphyll Chloranth Chrysobalan Circaeaster Cist Cleom Clethr Clusi
Colchic Columelli Combret Commelin Connar Convolvul Coriari Corn Corsi Corynocarp Cost Crassul Crossosomat Crypteroni Ctenoloph Cucurbit Cunoni Curtisi Cyclanth Cymodoce Cynomori Cyper Cyrill Cytin Daphniphyll
Dasypogon Datisc Degeneri Diapensi Dichapetal Didiere Dilleni Dioncophyll Dioscore Dipentodont Dipterocarp Dirachm Doryanth Droser Drosophyll Eben Ecdeiocole Elaeagn Elaeocarp Elatin Emblingi Eric Eriocaul
Erythroxyl Escalloni Eucommi Euphorbi Euphroni Eupomati Euptele Fab Fag Flagellari Fouquieri Frankeni Garry Geissolomat Gelsemi Gentian Gerani Gerrardin Gesneri Gisek Gomorteg Goodeni Goupi Grossulari Grubbi
Guamatel Gunner Gyrostemon Haemodor Halophyt Haloragid Hamamelid Hanguan Haptanth Heliconi Helwingi Hernandi Himantandr Hu Humiri Hydatell Hydnor Hydrange Hydrocharit Hydrole Hydrostachy Hyperic Hypoxid Icacin
Irid Irvingi Itea Ite Ixioliri Ixonanth Joinville Jugland Junc Juncagin Kew Kirki Koeberlini Krameri Lacistemat Lactorid Lami Lanari Lardizabal Laur Lecythid Lentibulari Lepidobotry Lili Lime
Limnanth Lin Linderni Loas Logani Lophiocarp Lophopyxid Loranth Lowi Lythr Magnoli Malpighi Malv Marant Marcgravi Martyni Maundi Mayac Maz Melanthi Melastomat Meli Melianth Menisperm Menyanth Metteniusi
Microte Mitrastemon Mollugin Monimi Montini Mor Moring Muntingi Mus Myodocarp Myric Myristic Myrothamn Myrt Nartheci Nelumbon Nepenth Neurad Nitrari Nothofag Nyctagin Nymphae Nyss Ochn Olac Ole
Onagr Oncothec Opili Orchid Orobanch Oxalid Paeoni Pand Pandan Papaver Paracryphi Passiflor Paulowni Pedali Penae Pennanti Pentaphragmat Pentaphylac Penthor Per Peridisc Petermanni Petenae
Petrosavi Phellin Philesi Philydr Phrym Phyllanth Phyllonom Physen Phytolacc Picramni Picrodendr Piper Pittospor Plantagin Platan Plocosperm Plumbagin Po Podostem Polemoni Polygal Polygon Pontederi Portulac Posidoni
Potamogeton Primul Prote Putranjiv Quillaj Rafflesi Ranuncul Rapate Resed Restion Rhabdodendr Rhamn Rhipogon Rhizophor Roridul Ros Rousse Rubi Ruppi Rut Sabi Salic Salvador Santal Sapind Sapot Sarcobat Sarcolaen
Sarraceni Saurur Saxifrag Scheuchzeri Schisandr Schlegeli Schoepfi Scrophulari Setchellanth Simaroub Simmondsi Siparun Sladeni Smilac Solan Sphaerosepal Sphenocle Stachyur Staphyle Stegnospermat Stemon Stemonur
Stilb Strasburgeri Strelitzi Stylidi Styrac Surian Symploc Talin Tamaric Tapisci Tecophilae Tetracarpae Tetrachondr Tetramel Tetramerist The Thesm Thismi Thomandersi Thurni Thymelae Ticodendr Tofieldi Torricelli
Tovari Trigoni Triurid Trochodendr Tropaeol Typh Ulm Urtic Vahli Vellozi Verben Viburn Viol Vit Vochysi Winter Xanthorrhoe Xeronemat Xyrid Zingiber Zoster Zygophyll
Acer Agav Antheric Apostasi Viviani Alli Asclepiad Buddlej Bombac Callitrich Chenopodi Convallari Cuscut Dipsac Dracaen Empetr Flacourti Globulari Hippocastan Hippurid Hyacinth Hydrophyll Lemn Lobeli Mimos Caesalpini
Myrsin Najad Papilion Parnassi Pyrol Punic Rusc Sambuc Sterculi Taxodi Tili Trap Trilli Valerian Visc Zannichelli Monotrop Nolan Alo Ehreti Cochlosperm Turner Sonnerati Lee Melanophyll
Araucari Cephalotax Cupress Cycad Ephedr Ginkgo Gnet Pin Podocarp Sciadopity Tax Welwitschi Zami
Lycopodi Isoet Selaginell Equiset Psilot Ophiogloss Maratti Osmund Hymenophyll Matoni Dipterid Gleicheni Lygodi Schizae Anemi Salvini Marsile Thyrsopterid Loxsomat Culcit Plagiogyri Ciboti Metaxy Dicksoni Cyathe
Saccolomat Cystodi Lonchitid Lindsae Pterid Dennstaedti Cystopterid Rhachidosor Diplaziopsid Desmophlebi Hemidicty Aspleni Woodsi Onocle Blechn Athyri Thelypterid Didymochlaen Hypodemati
Dryopterid Nephrolepid Lomariopsid Tectari Oleandr Davalli Polypodi Adiant Aspidi Parkeri
Sphagn Polytrich Funari Grimmi Dicran Potti Bry Mni Hypn Brachytheci Amblystegi Leucobry Orthotrich Bartrami Fissident Encalypt Neckere Thuidi Hylocomi Marchanti Ricci Jungermanni Lejeune Frullani Radul Porell
Metzgeri Pelli Plagiochil Scapani Lophocole Cephalozi Calypogei Aneur Anthocerot Fontinal Plagiotheci Climaci Leucodont Rhabdoweisi Ditrich Hedwigi
Parmeli Clad Cladoni Physci Lecanor Lecide Ramalin Teloschist Peltiger Pertusari Graphid Verrucari Umbilicari Stereocaul Collemat Nephromat Lobari Roccell Arthoni Usne Rhizocarp Acarospor Candelari Porpidi Bacidi Megaspor
Fuc Ulv Cladophor Corallin Sargass Dictyot Laminari Gelidi Gigartin Rhodomel Cerami Bangi Codi Caulerp Char Gracilari Palmari Ectocarp Delesseri
`
