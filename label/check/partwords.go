package check

import (
	"slices"
	"strings"
)

// partWords are the words for parts that labels and tables of the trade use:
// English, Portuguese, Spanish, French, German, Italian, and those of museums'
// downloads. Common practice, no source. The first of each kind is the one
// messages name.
//
// What is kept in fluid stands in a jar, what is bulky or of a fruit collection
// in a box. What is only called dried, pressed or a specimen is a sheet.
var partWords = []struct {
	kind  PreparationKind
	words []string
}{
	{Sheet, []string{"sheet", "herbarium sheet", "mounted sheet", "pressed sheet", "pressed specimen", "voucher", "voucher sheet", "exsiccata", "exsiccatum", "sht", "sh.",
		"herbarium specimen", "preserved specimen", "preservedspecimen", "herbarium", "herb", "specimen", "voucher specimen", "dried specimen", "mounted specimen", "plant specimen",
		"pressed", "pressed plant", "pressed & dried", "pressed and dried", "dried", "dry", "mounted", "unmounted", "mount", "herbarium mount", "flat", "folder", "cartouche", "dry specimen", "air-dried",
		"vascular plant sheet", "whole plant", "plant",
		"folha", "exsicata", "folha de herbário", "espécime de herbário", "exemplar de herbário", "exemplar", "espécime", "exsicado", "prensado", "prensada", "seco", "seca", "montado", "montada", "cartolina", "voucher de herbário", "planta prensada", "planta seca",
		"pliego", "hoja", "pliego de herbario", "ejemplar de herbario", "ejemplar", "espécimen", "espécimen de herbario", "muestra de herbario", "prensado y seco", "exsiccado",
		"planche", "planche d'herbier", "part d'herbier", "part", "feuille", "feuille d'herbier", "spécimen", "spécimen d'herbier", "échantillon d'herbier", "herbier", "séché", "pressé",
		"bogen", "herbarbogen", "beleg", "herbarbeleg", "herbarblatt", "herbarexemplar", "gepresst", "getrocknet", "spannbogen", "blatt",
		"foglio", "foglio d'erbario", "campione d'erbario", "esemplare", "essiccata", "essiccato", "campione essiccato"}},
	{Packet, []string{"packet", "envelope", "pocket", "fragment packet", "seed packet", "seed bank packet", "capsule packet", "pkt", "pkt.", "env.", "paper packet", "fragment pocket", "fragment envelope", "sachet",
		"pacote", "envelope de papel", "cápsula de papel", "saqueta", "saco", "saquinho", "sobre", "bolsa", "bolsita", "pochette", "enveloppe", "capsule en papier",
		"kapsel", "papierkapsel", "tüte", "tütchen", "umschlag", "päckchen", "busta", "bustina"}},
	{Box, []string{"box", "carton", "bx", "bulky", "bulky collection", "bulky object", "boxed", "carpological collection", "carp. coll.", "boxed specimen", "carpological specimen", "carpological", "carpology", "fruit collection", "cone collection", "carpological box", "tray", "carpological item",
		"caixa", "carpoteca", "coleção carpológica", "caja", "colección carpológica", "boîte", "boite", "carpothèque", "collection carpologique", "schachtel", "karton", "karpologische sammlung", "scatola", "carpologica", "collezione carpologica"}},
	{Jar, []string{"jar", "bottle", "vial", "spirit", "spirit collection", "spirit specimen", "spirit material", "in spirit", "alcohol", "alc", "alc.", "ethanol", "etoh", "faa", "formalin", "formol", "fluid", "fluid preserved", "fluid-preserved", "wet", "wet collection", "wet specimen", "pickled", "pickle", "pickled material", "liquid", "kew mix", "copenhagen mix", "glycerol", "glycerine", "glycerin", "gaa", "kew cocktail", "formalin-acetic acid", "formaldehyde", "isopropanol", "methylated spirit", "ims", "spirit jar", "liquid preserved", "liquid-preserved", "tube", "glass tube",
		"frasco", "álcool", "em álcool", "via líquida", "meio líquido", "conservado em álcool", "alcohol 70", "en alcohol", "material en alcohol", "bocal", "flacon", "alcool", "en alcool", "dans l'alcool",
		"glas", "alkohol", "alkoholmaterial", "in alkohol", "nasspräparat", "flüssigpräparat", "barattolo", "vasetto", "in alcool"}},
	{Other, []string{"other", "slide", "microscope slide", "pollen slide", "pollen", "tissue", "leaf tissue", "tissue sample", "leaf sample", "silica", "silica gel", "silica-gel", "silica dried", "silica-dried", "silica gel sample", "silica sample", "in silica", "silicagel",
		"dna", "dna extract", "dna sample", "dna voucher", "dna tissue", "genomic dna", "frozen tissue", "frozen", "photo", "photograph", "photos", "photography", "digital photo", "digital photograph", "digital image", "image", "images", "picture", "colour photograph", "color photograph", "colour slide", "color slide", "transparency",
		"drawing", "illustration", "painting", "sketch", "print", "seed", "seeds", "seed sample", "seed lot", "wood", "wood sample", "wood block", "xylarium sample", "wood slide", "living plant", "living collection", "living", "living material", "live plant", "cutting", "cuttings", "culture", "sem stub", "stub", "spore print", "field notes", "cytology", "chromosome count",
		"lâmina", "lamina", "foto", "fotografia", "fotografía", "desenho", "dibujo", "sementes", "semillas", "madeira", "madera", "amostra de dna", "amostra de adn", "adn", "amostra de madeira", "muestra de adn", "planta viva", "sílica", "sílica gel", "lame", "lame mince", "photographie", "dessin", "graines", "bois", "plante vivante", "diapositive",
		"präparat", "dauerpräparat", "foto(s)", "fotos", "zeichnung", "samen", "holz", "holzprobe", "gewebeprobe", "silikagel", "lebendpflanze", "vetrino", "disegno", "semi", "legno", "campione di legno", "campione di dna", "pianta viva"}},
}

// partKind finds the kind by word, folded, singular or plural.
var partKind = func() map[string]PreparationKind {
	m := map[string]PreparationKind{}
	for _, k := range partWords {
		for _, w := range k.words {
			w = foldPart(w)
			if _, ok := m[w]; !ok {
				m[w] = k.kind
			}
			if p := plural(w); m[p] == "" {
				m[p] = k.kind
			}
		}
	}
	for w, k := range map[string]PreparationKind{ // irregular plurals
		"pliegos": Sheet, "bögen": Sheet, "herbarbögen": Sheet, "belege": Sheet, "herbarbelege": Sheet, "exsiccatae": Sheet, "parts d'herbier": Sheet, "planches d'herbier": Sheet, "fogli": Sheet, "exemplares": Sheet, "ejemplares": Sheet,
		"esemplari": Sheet, "campioni d'erbario": Sheet, "fogli d'erbario": Sheet, "blätter": Sheet, "folhas de herbário": Sheet, "pliegos de herbario": Sheet, "feuilles d'herbier": Sheet, "espécimes": Sheet, "especímenes": Sheet,
		"kapseln": Packet, "papierkapseln": Packet, "tüten": Packet, "umschläge": Packet, "buste": Packet, "bustine": Packet, "schachteln": Box, "kartons": Box, "scatole": Box, "boxen": Box,
		"gläser": Jar, "bocaux": Jar, "barattoli": Jar, "vasetti": Jar, "präparate": Other, "lâminas": Other, "zeichnungen": Other,
	} {
		m[foldPart(w)] = k
	}
	return m
}()

// plural is the regular plural of English, Portuguese, Spanish and French.
func plural(w string) string {
	switch {
	case strings.HasSuffix(w, "s"), strings.HasSuffix(w, "."):
		return w
	case strings.HasSuffix(w, "x"):
		return w + "es"
	case strings.HasSuffix(w, "y"):
		return strings.TrimSuffix(w, "y") + "ies"
	}
	return w + "s"
}

// foldPart writes a word for parts as the table of words keeps it.
func foldPart(s string) string {
	s = strings.TrimPrefix(strings.ToLower(strings.Trim(s, " .,;-–")), "l'")
	return unaccented.Replace(s)
}

// sheetNouns are the words that count sheets; others for a sheet say what it is
// or how it is kept, and name the same sheet once more: dried, mounted; voucher,
// 1 sheet.
var sheetNouns = strings.Fields("sheet sht sh mount folha cartolina pliego hoja planche part feuille bogen herbarbogen spannbogen blatt herbarblatt foglio fogli bögen herbarbögen folder")

// saysHow reports whether a word for a sheet counts none.
func saysHow(word string) bool {
	for w := range strings.FieldsSeq(foldPart(word)) {
		for _, noun := range sheetNouns {
			if n := foldPart(noun); w == n || w == plural(n) {
				return false
			}
		}
	}
	return true
}

// numberWords are counts in words; some that nobody can count are -1.
var numberWords = func() map[string]int {
	m := map[string]int{}
	for i, list := range []string{"one um uma uno una un une ein eine", "two dois duas dos deux zwei due", "three três tres trois drei tre", "four quatro cuatro quatre vier quattro", "five cinco cinq fünf cinque", "six seis sechs sei"} {
		for _, w := range strings.Fields(list) {
			m[w] = i + 1
		}
	}
	for _, w := range strings.Fields("several many few various multiple some vários várias varios varias plusieurs mehrere einige parecchi diversi alguns algumas algunos") {
		m[w] = -1
	}
	return m
}()

var unaccented = strings.NewReplacer("’", "'", "_", " ", "á", "a", "â", "a", "ã", "a", "à", "a", "é", "e", "ê", "e", "è", "e", "í", "i", "î", "i", "ó", "o", "ô", "o", "õ", "o", "ú", "u", "ç", "c")

// neutral are words beside a kind that say nothing of what is in it.
var neutral = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields("herbarium mounted unmounted pressed dried dry large small big extra separate additional single loose glass paper plastic cardboard of a an the with and one main second " +
		"grande grandes pequeno pequena pequeño pequeña seco seca montado montada papel de do da herbário herbario con com d'herbier herbier petite petit grand en carton " +
		"gross große großer kleine kleiner aus papier d'erbario erbario grande piccola piccolo di carta vascular plant standard oversize oversized double original") {
		m[foldPart(w)] = true
	}
	return m
}()

// Words that stand between a part and what is in it.
var (
	insideWords = strings.Fields("in em en dans im no na") // cone in box
	holdsWords  = []string{" of ", " with ", " containing ", " contains ", " w/ ", " de ", " com ", " con ", " contendo ", " avec ", " contenant ", " mit ", " di ", " d'"}
	joinWords   = []string{" and ", " e ", " y ", " et ", " und ", " ed ", " with ", " plus ", " com ", " con ", " avec ", " mit ", " & "}
)

// kindOf finds the kind that a phrase names, alone or with words that say
// nothing: what is left over is what is in it.
func kindOf(phrase string) (kind PreparationKind, word, contents string, ok bool) {
	if k, known := partKind[foldPart(phrase)]; known {
		return k, phrase, "", true
	}
	// cone in box, seeds (packet), packet (seeds)
	if head, inner, cut := strings.Cut(phrase, "("); cut && strings.HasSuffix(strings.TrimSpace(inner), ")") {
		head, inner = strings.TrimSpace(head), strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(inner), ")"))
		k, known := partKind[foldPart(head)]
		if l, too := partKind[foldPart(inner)]; too && head != "" && l != Other && (!known || k == Other) {
			return l, inner, head, true // seeds (packet)
		}
		if known && k == Sheet && sheetAgain(inner) {
			return k, phrase, "", true // sheet (mounted)
		}
		if known && inner != "" {
			return k, head, inner, true
		}
	}
	for _, w := range insideWords {
		if i := strings.LastIndex(phrase, " "+w+" "); i > 0 {
			head, tail := strings.TrimSpace(phrase[:i]), strings.TrimSpace(phrase[i+len(w)+2:])
			k, name, more, known := kindOf(tail)
			switch {
			case !known || k == Sheet:
			case k == Jar && (more != "" || !vessel(name)), k == Other:
				return k, name, phrase, true // fruits in FAA: the fluid is to be read
			default:
				return k, name, head, true
			}
		}
	}
	for _, w := range holdsWords {
		head, tail, cut := strings.Cut(phrase, w)
		if k, known := partKind[foldPart(head)]; cut && known && strings.TrimSpace(tail) != "" {
			if k == Sheet && w != " with " && w != " com " && w != " con " && w != " avec " && w != " mit " {
				return k, phrase, "", true
			}
			return k, strings.TrimSpace(head), strings.TrimSpace(tail), true
		}
	}
	return kindAmong(phrase)
}

// sheetAgain reports whether words say of a sheet only that it is one.
func sheetAgain(s string) bool {
	if k, known := partKind[foldPart(s)]; known {
		return k == Sheet
	}
	for w := range strings.FieldsSeq(s) {
		if !neutral[foldPart(w)] {
			return false
		}
	}
	return true
}

// vessel reports whether a word for what stands in a jar names the jar and not
// the fluid.
func vessel(word string) bool {
	return slices.Contains([]string{"jar", "bottle", "vial", "tube", "glass tube", "frasco", "bocal", "flacon", "glas", "barattolo", "vasetto"}, strings.TrimSuffix(foldPart(word), "s"))
}

// kindAmong looks for one word of a kind that has labels among others: seed
// bank packet, spirit 70 %.
func kindAmong(phrase string) (kind PreparationKind, word, contents string, ok bool) {
	words := strings.Fields(phrase)
	if len(words) < 2 || len(words) > 6 {
		return "", "", "", false
	}
	var rest []string
	for i, w := range words {
		k, known := partKind[foldPart(w)]
		if !known || k == Other || ok && neutral[foldPart(w)] {
			rest = append(rest, w)
			continue
		}
		if ok && k != kind { // the last in English, the first elsewhere: not clear
			if !(kind == Sheet && neutral[foldPart(word)]) {
				return "", "", "", false
			}
		}
		if i > 0 && i < len(words)-1 && k != Jar && !neutral[foldPart(w)] {
			return "", "", "", false // in the middle of a sentence
		}
		kind, word, ok = k, w, true
	}
	if !ok {
		for _, w := range words { // DNA bank sample
			if k, known := partKind[foldPart(w)]; known && k == Other && foldPart(w) != "other" {
				return Other, phrase, "", true
			}
		}
		return "", "", "", false
	}
	rest = slices.DeleteFunc(rest, func(w string) bool { return neutral[foldPart(w)] })
	switch {
	case kind == Jar && !vessel(word):
		return kind, word, phrase, true
	case kind == Sheet:
		return kind, phrase, "", len(rest) <= 2
	}
	return kind, word, strings.Join(rest, " "), true
}
