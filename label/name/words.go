package name

// A kind is what a word means where it stands in a name and is not an epithet.
type kind uint8

const (
	plainWord  kind = iota // an epithet, a genus or an author: the place decides
	rankHigh               // above the genus: fam., trib.
	rankGenus              // between genus and species: subgen., sect., ser.
	rankInfra              // below the species: subsp., var., lusus
	rankLetter             // a., b., m., v.: a rank only before an epithet
	filius                 // f.: forma before an epithet, filius after an author
	qualifier              // cf., aff.: the doubt stands before a name
	open                   // sp., spp., agg., indet.: stands in place of, or after, a name
	link                   // ex, in, de, van: joins authors, never a name
	and                    // et, and, &
	either                 // vel, or: between epithets or authors
	note                   // sensu, nom., ined.: ends the name
	hort                   // hort., auct., mihi: note in an author's place
	cultivar               // cv.
	group                  // Group
	grex                   // grex, gx
	ordinary               // with, near, tree: a word of a language people speak
	blank                  // unknown, unbestimmt: no name at all
	virus                  // virus, phage: names of another kind, not set here
	cross                  // x or X: a sign of hybridity before a name
)

// isRank reports whether an epithet is awaited after the word.
func (k kind) isRank() bool { return k == rankHigh || k == rankGenus || k == rankInfra }

// lookup returns the kind of a lower-case word without its full stop.
//
// Ranks: ICN Art. 3 and 4, H.3 (notho-), and, below them, what floras have
// printed (lusus, proles, convar., agamosp. …; Art. 4.4, 37). The rest are the
// words of Rec. 46, 47A, 50A–F and of open nomenclature.
func lookup(w string) kind {
	switch w {
	case "fam", "familia", "family", "subfam", "subfamilia", "subfamily", "superfam",
		"ord", "ordo", "order", "subord", "subordo", "suborder", "superord", "superorder",
		"trib", "tribe", "tribus", "tr", "subtrib", "subtribe", "subtribus", "subtr", "supertrib", "supertribe",
		"phyl", "phylum", "divisio", "division", "subdiv", "subphylum",
		"classis", "subclass", "subclassis", "subcl", "cohors", "cohort", "nothofam", "nothotrib", "nothosubtrib":
		return rankHigh
	case "genus", "gen", "nothogen", "nothogenus",
		"subgen", "subgenus", "subg", "sg", "sgen", "nothosubgen", "nothosubg", "nothosubgenus", "supragen",
		"sect", "sectio", "section", "nothosect", "nothosectio", "nsect", "agamosect", "supersect", "supersection",
		"subsect", "subsectio", "subsection", "nothosubsect", "subsec",
		"ser", "series", "nothoser", "nothoseries", "superser",
		"subser", "subseries", "nothosubser", "infragen", "suprasect":
		return rankGenus
	case "subsp", "subspec", "subspecies", "ssp", "sspec", "sbsp", "ssbp", "sbspec", "subssp", "sspp", "subspp",
		"nothosubsp", "nothossp", "nothosp", "nothospecies", "nsp", "nothosubspecies", "nothosubspec", "nsubsp", "nssp", "notosubsp",
		"microsp", "microspecies", "agamosp", "agamossp", "agamosubsp", "agsp", "apomsp",
		"var", "vars", "varietas", "variety", "variet", "varieties", "nothovar", "nothovarietas", "nvar", "notovar", "agamovar", "agvar",
		"subvar", "subvarietas", "subvariety", "svar", "nothosubvar", "subv",
		"convar", "convarietas", "conv", "cvar", "convariety", "provar", "provarietas",
		"forma", "form", "fo", "fa", "fma", "fm", "formae", "frm", "nothof", "nothofo", "nothoforma", "nf", "nfo", "nothofma", "agamof",
		"subf", "subforma", "subfo", "subform", "subfm", "sf", "nothosubf",
		"nothomorph", "nothomorpha", "nothomorf", "nm", "notho", "nothomut",
		"lusus", "lus", "sublusus", "ludus", "proles", "prol", "prolis", "rassa", "turma", "deformatio", "sport", "unranked", "subproles", "race", "rass", "subrace", "stirps", "stirp", "natio", "nat",
		"monstr", "monst", "monstrositas", "mut", "mutatio", "mutation", "aberr", "aberratio", "ab", "modif", "modificatio", "mod",
		"morph", "morpha", "morphovar", "ecad", "oecotypus", "facies", "tinfr", "taxinfr", "subspecioid", "specioid", "klepton", "kl",
		"pv", "pathovar", "bv", "biovar", "chemovar", "phagovar":
		return rankInfra
	case "a", "b", "c", "d", "g", "h", "m", "v", "l":
		return rankLetter
	case "f", "fil", "filius":
		return filius
	case "cf", "cfr", "cff", "cnf", "conf", "aff", "affin", "prox", "nr", "gr", "ca", "confer", "juxta", "prob", "poss":
		return qualifier
	case "sp", "spp", "spec", "species", "sps", "specs", "spnov", "specie", "espécie", "espèce", "especie", "especies", "art", "arten",
		"agg", "aggr", "aggreg", "aggregate", "aggregatum", "complex", "coll", "collect",
		"indet", "indetermined", "indeterminate", "ind", "undet", "undetermined", "unident", "unidentified", "unnamed",
		"hybrid", "hybrids", "hybr", "hyb", "híbrido", "hybride", "bastard",
		"gener", "strain", "str", "clone", "isolate", "serovar", "biotype", "chemotype", "cytotype", "ecotype", "morphotype", "morphospecies", "morphosp", "morfotipo", "morfoespecie", "morfoespécie", "morfosp", "morfo", "taxon", "taxa":
		return open
	case "ex", "in", "apud", "ap", "emend", "em", "amend", "al", "alii", "aliorum", "aliique", "coaut", "collab", "cum", "per",
		"de", "del", "della", "delle", "dello", "dei", "degli", "der", "den", "dem", "des", "dalla", "dal",
		"di", "do", "dos", "da", "das", "du", "la", "le", "las", "los", "lo", "el", "af", "av", "von", "vom", "van", "vander",
		"zu", "zur", "zum", "auf", "ter", "ten", "te", "tot", "ver", "op", "'t", "’t", "‘t", "´t", "`t", "'s", "’s", "t", "ibn", "ben", "bin", "abu", "i",
		"bis", "junior", "jun", "jr", "senior", "sen", "sr", "fils", "père", "pater", "frat", "bros", "ii", "iii", "linnaeus", "linné", "st", "ste":
		return link
	case "and", "et", "und", "y", "e", "og", "och", "en", "ja":
		return and
	case "vel", "or", "oder", "ou", "o", "seu", "sive", "aut", "resp":
		return either
	case "sensu", "sens", "sec", "secundum", "non", "nec", "not", "nom", "nomen", "nomina", "nomin", "illeg", "illegit", "illegitimate",
		"inval", "invalid", "dub", "cons", "conserv", "rej", "rejic", "rejiciendum", "rejicienda", "superfl",
		"ined", "inéd", "inedit", "ineditus", "ineditum", "nov", "comb", "stat", "status", "prov", "provis", "provisorum", "pro", "parte", "p", "pp", "q", "s", "sl", "ss", "sstr", "slat", "ampl", "amplo",
		"lat", "lato", "latiss", "stricto", "strictu", "latu", "strictiss", "syn", "synon", "basion", "basionym", "excl", "exclud", "exclus", "incl", "quoad", "saltem", "ad", "int", "interim",
		"descr", "diagn", "typ", "typus", "orth", "orthogr", "err", "errore", "sic", "sphalm", "lapsu", "ms", "mss", "msc", "mscr", "manuscr", "litt", "sched", "schedis", "herb", "hb", "publ",
		"ignot", "teste", "fide", "vide", "idem", "ibid", "cit", "loc", "corr", "corrig", "utique", "oppr", "sanct", "propos", "nonn", "homon", "hom",
		"incertae", "sedis", "incert", "inc", "sed", "plur", "maj", "min", "us", "authors", "author", "emendavit", "n", "vs", "ssl", "usw", "etc", "via", "from", "vix", "haud", "potius", "forsan", "fortasse", "the", "concept", "as",
		"cited", "dna", "rna", "tax", "tab", "fig", "figs", "pl", "vol", "no", "num":
		return note
	case "hort", "hortul", "hortulanorum", "hortorum", "ht", "hts", "auct", "auctt", "auctor", "auctorum", "anon", "anonymous", "anonym", "mihi", "nob", "nobis", "ign":
		return hort
	case "cv", "cvs", "cultivar", "cult", "cultiv", "cultv", "kultivar":
		return cultivar
	case "group", "gp", "groep", "gruppe", "groupe", "groups", "grupo":
		return group
	case "grex", "gx", "greges":
		return grex
	case "virus", "viruses", "viroid", "viroids", "virusoid", "phage", "phages", "bacteriophage", "plasmid", "plasmids", "satellite", "satellites", "prophage", "provirus", "npv", "nucleopolyhedrovirus", "granulovirus":
		return virus
	case "unknown", "unspecified", "undefined", "unassigned", "undesignated", "unclassified", "unbestimmt", "unbestimmbar", "unbestimmte", "unbekannt", "unbekannte", "noch", "indeterminado", "indeterminada", "indeterminato", "indeterminé", "indéterminé", "indéterminée",
		"desconhecido", "desconhecida", "desconocido", "desconocida", "inconnu", "inconnue", "sconosciuto", "sconosciuta", "onbekend", "okänd", "ukjent", "ukendt", "neurčeno", "none", "null", "nil", "na", "tbd", "todo", "xxx", "unidentifiable", "blank", "missing":
		return blank
	case "x":
		return cross
	}
	return ordinaryWord(w)
}

// ordinaryWord knows the commonest words of the languages of labels that could
// stand after a name and end like Latin, or stand where an epithet does.
func ordinaryWord(w string) kind {
	switch w {
	case "with", "without", "near", "on", "of", "by", "to", "at", "for", "under", "over", "after", "before", "along", "above", "below", "beside", "between", "among", "is", "was", "are", "were", "be", "has", "have", "had", "this", "that", "these", "those", "it", "its", "all", "some", "many", "few", "only", "also", "but", "than", "then", "when", "where", "which", "here", "there",
		"chromosome", "probably", "possibly", "perhaps", "maybe", "likely", "presumably", "like", "type", "types", "sterile", "fertile", "male", "female", "juvenile", "young", "old", "dead", "seedling", "seedlings", "plant", "plants", "tree", "trees", "shrub", "shrubs", "grass", "grasses", "moss", "mosses", "fern", "ferns", "lichen", "lichens", "fungus", "alga", "algae",
		"fruit", "fruits", "flower", "flowers", "seed", "seeds", "leaf", "leaves", "forest", "forests", "scrub", "wood", "woods", "woodland", "woodlands", "plantation", "plantations", "shrubland", "shrublands", "grassland", "grasslands", "heath", "heathland", "meadow", "meadows", "bog", "garden", "gardens", "soil", "soils", "rock", "rocks", "slope", "slopes", "side", "sides", "bank", "banks", "sand", "stone", "limestone", "granite", "white", "purple", "large", "pale", "blue", "rose", "orange", "dense", "bare", "shade", "house", "home", "lake", "edge", "ridge", "village", "bridge", "cultivated", "planted", "wild", "cultivars",
		"prope", "inter", "sub", "supra", "circa", "sine", "post", "ante", "ab", "iuxta", "secus", "auch", "mit", "bei", "am", "im", "an", "aus", "als", "nicht", "nur", "wie", "die", "ein", "eine", "com", "sem", "nas", "nos", "ao", "aos", "um", "uma", "por", "para", "entre", "sob", "sobre", "junto", "perto", "con", "sin", "cerca", "una", "un", "une", "avec", "sans", "dans", "sur", "sous", "près", "les", "au", "aux", "nel", "nella", "sul", "sulla", "presso", "planta", "plantas", "plante", "plantes", "pianta", "flor", "flores", "fruto", "semilla", "semente":
		return ordinary
	}
	return plainWord
}

// titleKind returns the kind of a word that begins with a capital. Most words
// of the list are authors or genera then ("Ser." is Seringe, "Ab." Aberconway).
func titleKind(w string) kind {
	switch w {
	case "sect", "sectio", "section", "subsect", "subgen", "subg", "subgenus", "ser", "series", "subser", "nothosect", "nothosubgen", "nothoser":
		return rankGenus
	case "subsp", "ssp", "var", "forma", "subvar", "nothosubsp", "nothovar", "subspecies", "varietas", "fo":
		return rankInfra
	case "fam", "familia", "family", "trib", "tribus", "tribe", "subfam", "subtrib", "ordo", "order":
		return rankHigh
	case "cf", "aff", "cfr", "near":
		return qualifier
	case "morphosp", "morphospecies", "morphotype", "morfosp", "morfoespecie", "morfoespécie", "morfotipo":
		return open
	case "sp", "spp", "spec", "species", "agg", "indet", "hybrid", "undet", "undetermined", "unidentified", "indeterminate", "unnamed", "gen":
		return open
	case "cv", "cultivar":
		return cultivar
	case "group", "gp", "groups", "groep", "gruppe", "grupo", "groupe":
		return group
	case "grex", "gx":
		return grex
	case "unknown", "unbestimmt", "unbekannt", "noch", "indeterminado", "indeterminada", "indeterminato", "indeterminé", "indéterminé", "indéterminée", "desconhecido", "desconhecida", "desconocido", "desconocida", "inconnu", "inconnue", "sconosciuto", "onbekend", "none", "null", "nil", "na", "tbd", "missing", "unidentifiable", "not", "no", "various", "mixed", "sine", "sterile", "incertae", "ignota":
		return blank
	case "moss", "mosses", "grass", "grasses", "fern", "ferns", "lichen", "lichens", "fungus", "fungi", "alga", "algae", "plant", "planta", "tree", "shrub", "herb", "seaweed", "hepatic", "liverwort", "crust", "gras", "moos", "musgo", "líquen", "feto", "erva", "hongo", "hierba":
		return ordinary
	case "virus", "viroid", "phage":
		return virus
	case "x":
		return cross
	}
	return plainWord
}

// latinate reports whether a lower-case word ends as Latin and latinised
// epithets do. It is asked only where nothing but the form speaks for a name,
// and it is kept away from the endings of English: -ous, -ion, -y.
func latinate(w string) bool {
	n := len(w)
	if n < 3 {
		return false
	}
	switch w[n-1] {
	case 'a', 'e', 'i', 'o', 'x':
		return true
	case 's':
		switch w[n-2] {
		case 'u':
			return w[n-3] != 'o'
		case 'i', 'e', 'a', 'o', 'n', 'y', 'p':
			return true
		}
	case 'm':
		return w[n-2] == 'u'
	case 'n':
		return w[n-2] == 'o' && w[n-3] != 'i' || w[n-2] == 'e'
	case 'r':
		return w[n-2] == 'e' || w[n-2] == 'o' || w[n-2] == 'u'
	}
	return false
}

// plainlyLatin is latinate for words that a full stop follows, where an
// abbreviation must not pass ("amer.", "austr.").
func plainlyLatin(w string) bool {
	n := len(w)
	if n < 4 {
		return false
	}
	switch w[n-1] {
	case 'a', 'i':
		return true
	case 'e':
		return w[n-2] == 'a' || w[n-2] == 'r' || w[n-2] == 's' || w[n-2] == 'l'
	case 's':
		return latinate(w) && w[n-2] != 'y' && w[n-2] != 'p'
	case 'm':
		return w[n-2] == 'u'
	case 'r':
		return n > 4 && latinate(w)
	}
	return false
}

// supragenericEnding reports whether a capital word ends as names above the
// genus do: Art. 16–19 (-aceae, -oideae, -eae, -inae, -ales …) and the eight
// families of Art. 18.5.
func supragenericEnding(w string) bool {
	if familyEnding(w) {
		return true
	}
	switch w {
	case "Papilionatae", "Angiospermae", "Gymnospermae", "Plantae", "Fungi":
		return true
	}
	for _, e := range [...]string{"aceae", "oideae", "ineae", "opsida", "mycetes", "mycota", "mycotina", "phyceae", "phytina", "viridae", "virinae", "virales", "mycetidae", "phycidae"} {
		if len(w) > len(e)+1 && w[len(w)-len(e):] == e {
			return true
		}
	}
	for _, e := range [...]string{"eae", "inae", "ales", "phyta", "idae"} {
		if len(w) > len(e)+1 && w[len(w)-len(e):] == e {
			return true
		}
	}
	return false
}

// familyEnding reports whether a capital word is a family beyond doubt.
func familyEnding(w string) bool {
	if len(w) > 6 && w[len(w)-5:] == "aceae" {
		return true
	}
	switch w {
	case "Compositae", "Cruciferae", "Gramineae", "Guttiferae", "Labiatae", "Leguminosae", "Palmae", "Umbelliferae":
		return true
	}
	return false
}

// capitalEpithetHead knows the first halves of hyphened epithets that older
// works write with capitals: Vitis-Idaea, Uva-Ursi, Bella-Donna, Filix-Mas.
func capitalEpithetHead(w string) bool {
	switch w {
	case "vitis", "uva", "bella", "filix", "crus", "bursa", "flos", "caput", "pes", "nidus", "lingua", "radix", "barba",
		"oculus", "cornu", "ruta", "herba", "spina", "dens", "lacryma", "lacrima", "noli", "morsus", "umbilicus", "capillus",
		"lychnis", "pecten", "corona", "crista", "speculum", "cauda", "equus", "rosa", "anagallis", "pseudo", "non", "castra",
		"sancti", "nux", "mater", "pater", "costa", "unguis", "galli", "manus", "planta", "fagus", "laurus", "phellandrium":
		return true
	}
	return false
}

// capitalEpithetEnding reports whether a capital word ends as epithets do and
// surnames do not: Clusii, Waldsteiniana, Narbonensis, Halimifolius.
func capitalEpithetEnding(w string) bool {
	for _, e := range [...]string{"ensis", "ense", "ianus", "iana", "ianum", "oides", "folius", "folia", "folium", "florus", "flora", "florum", "ifera", "iferum", "phylla", "phyllum", "phyllus", "carpa", "carpum", "carpus"} {
		if len(w) > len(e)+2 && w[len(w)-len(e):] == e {
			return true
		}
	}
	n := len(w)
	return n > 5 && w[n-2:] == "ii" && w[n-3] != 'k'
}

// nearRank reports whether a word is a rank word with one slip of the pen: a
// letter more, less, wrong, or two changed places ("susbp.", "subps.").
func nearRank(w string, dot bool) kind {
	if len(w) < 4 || len(w) > 12 {
		return plainWord
	}
	for _, r := range [...]string{"subsp", "nothosubsp", "convar"} {
		if oneSlip(w, r) {
			return rankInfra
		}
	}
	if !dot {
		return plainWord
	}
	for _, r := range [...]string{"var", "forma", "subvar", "nothovar", "subspec", "subspecies", "varietas"} {
		if oneSlip(w, r) {
			return rankInfra
		}
	}
	for _, r := range [...]string{"sect", "subsect", "subgen", "subser"} {
		if oneSlip(w, r) {
			return rankGenus
		}
	}
	return plainWord
}

// oneSlip reports whether a and b are one insertion, deletion, substitution or
// transposition of neighbours apart.
func oneSlip(a, b string) bool {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	a, b = a[i:], b[i:]
	switch {
	case a == "" && b == "":
		return false
	case len(a) == len(b)+1:
		return a[1:] == b
	case len(b) == len(a)+1:
		return b[1:] == a
	case len(a) == len(b):
		return a[1:] == b[1:] || len(a) > 1 && a[0] == b[1] && a[1] == b[0] && a[2:] == b[2:]
	}
	return false
}
