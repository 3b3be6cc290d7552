package trade

import (
	"regexp"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
)

// epithetRules are about the letters of epithets.
func epithetRules() []check.Rule {
	return []check.Rule{
		{
			Name: "epithet-english", Severity: label.Warning, Source: practice,
			Doc: "an epithet that is an English word, as a speller makes of a Latin one: acuminate of acuminata", Terms: epithetTerms,
			Example: one("scientificName", "Alnus acuminate Kunth"), Counterexample: one("scientificName", "Prunella vulgare L."),
			Row: func(c *check.Context) {
				if !c.HasAny(englishWord) {
					return
				}
				eachEpithet(c, func(term, epithet string) {
					latin, stem := english[epithet], strings.TrimSuffix(epithet, "e")
					if latin == "" && strings.HasSuffix(epithet, "ate") && len(epithet) > 4 && !endsInAte[epithet] {
						latin = stem + "us, -a or -um"
					}
					if latin != "" {
						c.Once(term, "the epithet "+epithet+" is an English word, which a speller puts for a Latin one, such as "+latin, "", "epithet "+epithet)
					}
				})
			},
		},
		{
			Name: "epithet-accents", Severity: label.Note, Source: "ICN Art. 60.7 (diacritical signs)",
			Doc: "an epithet with an accent, a tilde or an umlaut, which names have not", Terms: epithetTerms,
			Example: one("scientificName", "Prunus lusitánica L.", "family", "Rosaceae"), Counterexample: one("scientificName", "Stratiotes aloïdes L.", "family", "Hydrocharitaceae"),
			Row: func(c *check.Context) {
				if !c.HasAny(otherLetter) {
					return
				}
				eachEpithet(c, func(term, epithet string) {
					if plain := withoutAccents(epithet); plain != epithet {
						c.Once(term, "the epithet "+epithet+" has a sign that names have not: it is written "+plain, strings.Replace(c.Text(term), epithet, plain, 1), "epithet "+epithet)
					}
				})
			},
		},
	}
}

var epithetTerms = []string{"scientificName", "specificEpithet", "infraspecificEpithet"}

// What an epithet must hold to be looked at.
var (
	englishWord = check.NewMark(epithetTerms, 0, func(text string) bool {
		for word := range strings.SplitSeq(text, " ") {
			word = strings.TrimRight(word, ",")
			if strings.HasSuffix(word, "ate") || len(word) > 3 && word[0] >= 'a' && english[word] != "" {
				return true
			}
		}
		return false
	})
	otherLetter = check.NewMark(epithetTerms, 0, func(text string) bool { return !isASCII(text) })
)

func isASCII(s string) bool {
	for i := range len(s) {
		if s[i] >= 0x80 {
			return false
		}
	}
	return true
}

// binomials are a genus and the epithet behind it, lowerRanks a rank and its epithet.
var (
	binomials  = regexp.MustCompile(`^(?:[×x] ?)?\p{Lu}\p{Ll}{2,}(?:-\p{Ll}+)? (?:(?:cf|aff)\. |[×x] ?)?(\p{Ll}[\p{Ll}-]{3,})(?:$|[ ,])`)
	lowerRanks = regexp.MustCompile(` (?:subsp|ssp|var|f)\. ?(\p{Ll}[\p{Ll}-]{3,})(?:$|[ ,])`)
)

// eachEpithet calls with each epithet of a record and the column it stands in; the
// columns of epithets are left out where the name has the same.
func eachEpithet(c *check.Context, with func(term, epithet string)) {
	name := c.Text("scientificName")
	if name != "" && !c.Doubted("scientificName") {
		if m := binomials.FindStringSubmatch(name); m != nil {
			with("scientificName", m[1])
			for _, m := range lowerRanks.FindAllStringSubmatch(name, 3) {
				with("scientificName", m[1])
			}
		}
	}
	for _, term := range [...]string{"specificEpithet", "infraspecificEpithet"} {
		if text := c.Text(term); len(text) > 3 && unicode.IsLower(rune(text[0])) && !strings.ContainsAny(text, " .()") && !c.Doubted(term) && !strings.Contains(name, text) {
			with(term, text)
		}
	}
}

// endsInAte are no adjectives: words of other languages, and names.
var endsInAte = map[string]bool{"mate": true, "tomate": true, "aguacate": true, "ahate": true, "zapate": true, "chayote": true, "copate": true, "agate": true}

// english are words that spellers know and the epithets they stand for. What is
// good Latin as well, such as vulgare or fragile, is not among them. From memory.
var english = map[string]string{
	"firm": "firma", "grease": "grisea", "greases": "grisea", "canine": "canina", "feline": "felina", "ovine": "ovina", "equine": "equina", "acute": "acuta", "minute": "minuta", "hirsute": "hirsuta", "montane": "montana",
	"alpine": "alpina", "marine": "marina", "saline": "salina", "pilose": "pilosa", "villose": "villosa", "spinose": "spinosa", "ramose": "ramosa", "setose": "setosa", "tomentose": "tomentosa", "rugose": "rugosa",
	"elegant": "elegans", "fragrant": "fragrans", "repent": "repens", "rigid": "rigida", "pallid": "pallida", "robust": "robusta", "arid": "arida", "vulgar": "vulgaris", "arctic": "arctica", "official": "officinalis",
	"saliva": "sativa", "serotonin": "serotina", "dulcimer": "dulcamara", "tremolo": "tremula", "tremulous": "tremula", "glabrous": "glabra", "cinereous": "cinerea", "tomatoes": "tomentosa", "pumice": "pumila",
	"excels": "excelsa", "reptiles": "reptans", "communist": "communis", "communes": "communis", "vernal": "vernalis", "autumnal": "autumnalis", "maritime": "maritima", "perennial": "perennis", "oriental": "orientalis",
	"occidental": "occidentalis", "horrid": "horrida", "lucid": "lucida", "splendid": "splendida", "hispid": "hispida", "acrid": "acris", "nitrous": "nitida",
}

// plain letters for those with a sign, as the Code transcribes them. The diaeresis, which
// it allows, stands behind a vowel.
var unaccenting = strings.NewReplacer("á", "a", "à", "a", "â", "a", "ã", "a", "é", "e", "è", "e", "ê", "e", "í", "i", "ì", "i", "î", "i", "ó", "o", "ò", "o", "ô", "o", "õ", "o", "ú", "u", "ù", "u", "û", "u",
	"ñ", "n", "ç", "c", "ø", "oe", "å", "ao", "ß", "ss", "ý", "y", "č", "c", "š", "s", "ž", "z", "ř", "r")

var umlauts = regexp.MustCompile(`[^aeiouäöü][äöü]|^[äöü]`)

func withoutAccents(epithet string) string {
	if isASCII(epithet) {
		return epithet
	}
	plain := umlauts.ReplaceAllStringFunc(epithet, func(s string) string {
		return strings.NewReplacer("ä", "ae", "ö", "oe", "ü", "ue").Replace(s)
	})
	return unaccenting.Replace(plain)
}
