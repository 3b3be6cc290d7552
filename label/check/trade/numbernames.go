package trade

import (
	"fmt"
	"regexp"
	"strings"
	"sync"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/name"
)

// named is what a number was used for first: 48 bytes.
type named struct {
	from, to int32 // days
	row      int32
	name     int32 // place in the list of texts
	// Sums of what tells one plant from another in the field, of who named it
	// and when, and of the specimen's own numbers; 0 where nothing stands.
	field, det, specimen uint64
	reported             bool
	shared               bool // the record says that its number is of several things
	identification       bool // the row is one identification of several
}

// namesUnderRule keeps 70 bytes a numbered record, and each distinct name.
//
// One number may stand for several names without a fault: mosses, lichens,
// algae and fungi are gathered mixed in one packet, a parasite with its host;
// a row may be a later determination of the plant in another row, or a lot of
// its seeds.
type namesUnderRule struct {
	seen     index[named]
	ids      map[string]int32
	texts    []string
	findings []label.Finding
}

func (t *namesUnderRule) Feed(r *check.Record) {
	key, ok := gatheringKey(r)
	if !ok || r.Name == "" || r.Date.IsZero() || r.Date.IsOpen() || !strings.ContainsAny(r.Number, "0123456789") {
		return
	}
	id, ok := t.ids[r.Name]
	if !ok {
		if t.ids == nil {
			t.ids = map[string]int32{}
		}
		id = int32(len(t.texts))
		text := strings.Clone(r.Name)
		t.ids[text], t.texts = id, append(t.texts, text)
	}
	was := t.seen.find(key)
	if was != nil && (was.name == id || was.reported || was.shared) {
		return
	}
	now := named{from: days(r.Date.Start()), to: days(r.Date.End()), row: int32(r.Row), name: id}
	now.look(r)
	if was == nil {
		t.seen.add(key, now)
		return
	}
	first := t.texts[was.name]
	switch {
	case now.from > was.to || now.to < was.from, now.shared:
		return
	case now.specimen != 0 && now.specimen == was.specimen, now.identification && was.identification:
		return // one specimen, named again
	case now.field == was.field && now.det != was.det && now.det != 0 && was.det != 0:
		return // named again by somebody else, or later
	case !otherPlant(first, r.Name, now.field == was.field):
		return
	case growsOn(r, first):
		return
	}
	f := nameField(r)
	if f.Text == "" {
		return
	}
	was.reported = true
	t.findings = append(t.findings, label.Finding{
		Origin: f.Origin, Value: strings.Clone(f.Text), Also: []label.Cell{{Row: int(was.row), Term: f.Origin.Term}},
		Message: fmt.Sprintf("record %d, %s too, is named %q: two plants need two numbers, and one plant has one name", was.row, r.Key(), first),
	})
}

func (t *namesUnderRule) End() []label.Finding { return t.findings }

// sharedNumber are cells that say that a number may be of several things.
var sharedNumber = check.NewMark([]string{"habitat", "plantDescription", "occurrenceRemarks", "associatedTaxa", "substrate", "organismRemarks", "fieldNotes", "eventRemarks", "identificationRemarks"}, 0,
	func(text string) bool { return len(text) >= 4 && saysShared(text) }) |
	check.NewMark([]string{"kingdom", "phylum", "class", "higherClassification"}, 0, func(text string) bool { return cryptogamGroups()[strings.ToLower(text)] }) |
	check.NewMark([]string{"family"}, 0, func(text string) bool { return cryptogamNames()[text] }) |
	check.NewMark([]string{"basisOfRecord"}, 0, func(text string) bool { return strings.HasPrefix(text, "Living") })

// look goes through a record once, for every record of the table comes here.
func (n *named) look(r *check.Record) {
	into := func(to *uint64, text string) { *to = mixIn(*to, sum(text)) }
	for term, text := range r.Texts {
		switch term {
		case "locality", "verbatimLocality", "decimalLatitude", "decimalLongitude", "verbatimCoordinates", "minimumElevationInMeters":
			into(&n.field, text)
		case "habitat", "plantDescription", "occurrenceRemarks":
			into(&n.field, text)
		case "identifiedBy", "dateIdentified", "identificationQualifier", "identificationRemarks":
			into(&n.det, text)
		case "catalogNumber", "occurrenceID", "materialEntityID":
			into(&n.specimen, text)
		case "identificationID", "identificationVerificationStatus":
			n.identification = true
		}
	}
	genus, _, _ := strings.Cut(r.Name, " ")
	n.shared = r.HasAny(sharedNumber) || cryptogamNames()[genus] || strings.Contains(r.Name, " p.p.") || strings.Contains(r.Name, " pro parte") ||
		r.Count(check.Packet) > 0 && r.Count(check.Sheet) == 0 // as mosses are kept
}

// sharedWords are beginnings of words by which a collector says that one number
// is of several things: English, Latin, Portuguese, Spanish, French, German.
var sharedWords = strings.Fields("admix intermix mixed mixture mixta mixtu parasit epiphyt hospedeir hospedant huésped hôte wirtspfl gemischt mistura mezcla mélange admist " +
	"inquilin symbio galled galls lichenicol fungicol")

// sharedPhrases are such words in phrases.
var sharedPhrases = regexp.MustCompile(`(?i)\bhosts?\b|\bp\. ?p\.|\bpro parte\b|\b(?:same|one|this) (?:packet|sheet|number|gathering)\b|\bgrow(?:s|ing|n) (?:on|in|with|among|over|through)\b|\bseed lot\b|\bgermplasm\b`)

// sharedStems are the words, and the beginnings of the phrases, by their second
// and third byte: most texts have none, and are passed over byte by byte.
var sharedStems = sync.OnceValue(func() *[1 << 16][]string {
	var m [1 << 16][]string
	for _, w := range append(strings.Fields("host p.p p. pro same one this grow seed germplasm"), sharedWords...) {
		pair := int(w[1])<<8 | int(w[2%len(w)])
		if len(w) == 2 {
			pair = int(w[1])<<8 | ' '
		}
		m[pair] = append(m[pair], w)
	}
	return &m
})

// saysShared reports whether a text has one of the words or phrases.
func saysShared(text string) bool {
	stems, phrases := sharedStems(), false
	for i := 1; i+1 < len(text); i++ {
		for _, w := range stems[int(text[i])<<8|int(text[i+1])] {
			if text[i-1]|0x20 != w[0]|0x20 || !strings.HasPrefix(text[i:], w[1:]) {
				continue
			}
			if len(w) > 4 && w != "germplasm" {
				return true
			}
			phrases = true
		}
	}
	return phrases && sharedPhrases.MatchString(text)
}

// growsOn reports whether a record says that it grows on the plant of the other
// name.
func growsOn(r *check.Record, other string) bool {
	genus, _, _ := strings.Cut(other, " ")
	if len(genus) < 3 {
		return false
	}
	for _, text := range r.Terms {
		i := strings.Index(text.Text, genus)
		if i <= 0 {
			continue
		}
		before := strings.Fields(strings.ToLower(text.Text[:i]))
		for _, w := range before[max(0, len(before)-3):] {
			switch strings.Trim(w, ".,:;()") {
			case "on", "upon", "sobre", "sur", "auf", "su", "over", "in", "ad", "super":
				return true
			}
		}
	}
	return false
}

// cryptogamGroups are names of kingdoms, divisions and classes of what is
// gathered in packets.
var cryptogamGroups = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq("bryophyta bryophytes bryopsida musci mosses moss marchantiophyta hepaticophyta hepaticae liverworts liverwort jungermanniopsida marchantiopsida anthocerotophyta anthocerotopsida hornworts sphagnopsida polytrichopsida andreaeopsida " +
		"bryophyte briófitos briófita briofitos bryophyten moose lichen lichens lichenes líquenes líquen liquenes flechten fungi fungus funghi fungos hongos pilze champignons ascomycota basidiomycota lecanoromycetes agaricomycetes myxomycota mycetozoa oomycota glomeromycota zygomycota pucciniomycetes eumycota " +
		"algae algas algen algues rhodophyta chlorophyta phaeophyta phaeophyceae ochrophyta heterokontophyta charophyta charophyceae ulvophyceae florideophyceae bacillariophyta chromista cyanobacteria cyanophyta protista protozoa xanthophyta euglenophyta") {
		m[w] = true
	}
	return m
})

// cryptogamNames are families without -aceae and genera of mosses, liverworts,
// lichens, algae and fungi that are often met; from memory.
var cryptogamNames = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(`Sphagn Bry Brachytheci Hypn Dicran Potti Grimmi Orthotrich Mni Amblystegi Polytrich Fissident Funari Bartrami Neckera Leucodont Leucobry Thuidi Hylocomi Calliergon Leske Anomodont Fontinal Hooker Hedwigi Encalypt Ditrich Splachn Andreae Tetraphid
Jungermanni Lophozi Scapani Porell Radul Frullani Lejeune Plagiochil Metzgeri Pelli Aneur Marchanti Ricci Conocephal Aytoni Calypogei Cephalozi Lepidozi Geocalyc Lophocole Ptilidi Anthocerot Fossombroni Myli
Parmeli Physci Cladoni Lecanor Ramalin Usne Teloschist Pertusari Graphid Lobari Peltiger Collemat Umbilicari Stereocaul Verrucari Rocell Roccell Arthoni Caliciac Lecide Rhizocarp Pannari Candelari Megaspor
Agaric Bolet Polypor Puccini Erysiph Russul Amanit Cortinari Mycosphaerell Xylari Peziz Ustilagin Fomitopsid Ganodermat Hymenochaet Tremell Melampsor Botryosphaeri
Fuc Ulv Cladophor Ceramin Ceramii Corallin Gelidi Gigartin Rhodomel Delesseri Dictyot Sargass Laminari Chara Codi Bangi Palmari Halymeni Zygnemat Nostoc Oscillatori`) {
		m[w+"aceae"] = true
	}
	for w := range strings.FieldsSeq(`Sphagnum Bryum Brachythecium Hypnum Dicranum Tortula Syntrichia Grimmia Orthotrichum Ulota Mnium Plagiomnium Rhizomnium Polytrichum Polytrichastrum Pogonatum Atrichum Fissidens Funaria Bartramia Philonotis Neckera Leucodon Leucobryum Thuidium Hylocomium Pleurozium Rhytidiadelphus Rhytidium
Calliergon Calliergonella Kindbergia Eurhynchium Homalothecium Isothecium Anomodon Fontinalis Hookeria Hedwigia Encalypta Ceratodon Ditrichum Splachnum Andreaea Tetraphis Racomitrium Schistidium Campylopus Didymodon Barbula Trichostomum Weissia Pohlia Aulacomnium Climacium Cratoneuron Palustriella Scorpidium Drepanocladus Warnstorfia Straminergon Scleropodium Plagiothecium Pterogonium Antitrichia Zygodon
Lophozia Scapania Diplophyllum Porella Radula Frullania Lejeunea Plagiochila Metzgeria Pellia Aneura Riccardia Marchantia Riccia Conocephalum Reboulia Lunularia Targionia Calypogeia Cephalozia Cephaloziella Lepidozia Bazzania Lophocolea Chiloscyphus Ptilidium Anthoceros Phaeoceros Fossombronia Mylia Jungermannia Nardia Marsupella Gymnomitrion Odontoschisma Kurzia Barbilophozia Saccogyna
Parmelia Parmotrema Flavoparmelia Hypogymnia Evernia Pseudevernia Physcia Phaeophyscia Physconia Cladonia Cladina Lecanora Lecidea Lecidella Ramalina Usnea Bryoria Xanthoria Caloplaca Teloschistes Pertusaria Ochrolechia Graphis Opegrapha Lobaria Sticta Nephroma Peltigera Collema Leptogium Umbilicaria Lasallia Stereocaulon Verrucaria Roccella Arthonia Calicium Rhizocarpon Buellia Rinodina Pannaria Degelia Candelaria Candelariella Diploschistes Squamarina Toninia Cetraria Cetrelia Punctelia Melanelia Melanohalea Xanthoparmelia Aspicilia
Agaricus Boletus Amanita Russula Lactarius Cortinarius Puccinia Uromyces Erysiphe Ustilago Xylaria Ganoderma Trametes Stereum Tremella Hymenochaete Fomes Coprinus Mycena Inocybe Hygrocybe Tricholoma Melampsora Septoria Phyllosticta Cercospora Nectria Peziza Phragmidium Gymnosporangium Podosphaera
Fucus Ulva Enteromorpha Cladophora Ceramium Corallina Jania Ellisolandia Gelidium Gigartina Chondrus Mastocarpus Polysiphonia Dictyota Sargassum Cystoseira Laminaria Saccharina Chara Nitella Codium Porphyra Palmaria Halopteris Padina Spirogyra Nostoc Osmundea Laurencia Plocamium Lithophyllum Vaucheria Ascophyllum Bifurcaria Himanthalia Ectocarpus Asparagopsis Peyssonnelia`) {
		m[w] = true
	}
	return m
})

// otherPlant reports whether two names can be of no one plant: one that says
// less, such as the genus alone, can; so can, where all else of the records is
// the same, two that share their epithet, for a species goes to another genus.
func otherPlant(a, b string, allElseSame bool) bool {
	x, y := name.Parse(a, name.Parts{}), name.Parse(b, name.Parts{})
	if x.Genus == "" || y.Genus == "" || x.Formula || y.Formula {
		return false
	}
	if x.Genus != y.Genus {
		return !allElseSame || !sameStem(x.Epithet, y.Epithet)
	}
	differ := func(s, t string) bool { return s != "" && t != "" && s != t }
	return differ(x.Epithet, y.Epithet) || differ(x.Infraspecific, y.Infraspecific)
}

// sameStem reports whether two epithets differ at most in their ending: albus,
// alba.
func sameStem(a, b string) bool {
	n := min(len(a), len(b)) - 2
	return n >= 3 && a[:n] == b[:n] && max(len(a), len(b))-n <= 3
}
