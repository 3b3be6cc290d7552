// Package place holds what the program knows of places and of the words that
// standards fix for a record: countries, geodetic datums, borders and
// controlled vocabularies, as small tables, each with its source and version
// beside it.
package place

import (
	"slices"
	"strings"
	"sync"
)

// An ISOCountry is a country or area of ISO 3166-1.
type ISOCountry struct {
	Code   string // alpha-2: "PT"
	Alpha3 string // "PRT"
	Name   string // English, as a label prints it: "Bolivia"
	// ISOName is the English short name of ISO 3166-1: "Bolivia,
	// Plurinational State of".
	ISOName string
	names   [len(nameLanguages)]string
}

// nameLanguages are the languages of countryTable after English, in its order.
var nameLanguages = [...]string{"pt", "es", "fr", "de", "zh-Hant", "la"}

// In returns the name as the language (a BCP 47 tag of those the program
// writes: en, pt, es, fr, de, la, zh-Hant) prints it; the English name where
// there is none.
func (c ISOCountry) In(language string) string {
	if i := slices.Index(nameLanguages[:], language); i >= 0 && c.names[i] != "" {
		return c.names[i]
	}
	return c.Name
}

// Codes that the standards' users assign themselves: Darwin Core, dwc:countryCode.
const (
	HighSeas       = "XZ" // outside all national jurisdictions
	UnknownCountry = "ZZ"
)

// Countries returns all countries in the order of their codes.
func Countries() []ISOCountry { return slices.Clone(countries().all) }

// IsCountryCode reports whether s is exactly an alpha-2 code of ISO 3166-1, or
// one of the two that Darwin Core takes besides.
func IsCountryCode(s string) bool {
	if s == HighSeas || s == UnknownCountry {
		return true
	}
	_, ok := countries().codes[s]
	return ok && len(s) == 2
}

// Country finds a country by its alpha-2 code in any case, by its alpha-3 code
// in capitals or small letters, or by a name: the ones it prints, the one of
// ISO 3166-1, its own ("Danmark"), and other names that can mean no other
// country (former ones too: "Swaziland"). Case, accents and punctuation do not
// matter. A name that several countries share ("Congo", "Korea") finds none.
func Country(codeOrName string) (ISOCountry, bool) {
	s := strings.TrimSpace(codeOrName)
	t := countries()
	// Three letters of which only the first is a capital are short for a name,
	// and "Aus" for two.
	if len(s) == 2 || len(s) == 3 && (s == strings.ToUpper(s) || s == strings.ToLower(s)) {
		if i, ok := t.codes[strings.ToUpper(s)]; ok {
			return t.all[i], true
		}
	}
	i, ok := t.names[squeeze(s)]
	if !ok || i < 0 {
		return ISOCountry{}, false
	}
	return t.all[i], true
}

// otherNames are further names of countries, in the order code, name. They
// are former names, everyday ones and parts that are no country of their own.
// From memory; a name of which two countries could be meant is left out.
const otherNames = `
BF Upper Volta|BJ Dahomey|BO Plurinational State of Bolivia|BW Bechuanaland|BY Byelorussia|BY White Russia|BZ British Honduras|CC Keeling Islands|CD Zaire|CD Congo-Kinshasa|CD Congo (Kinshasa)|CD DR Congo|CD DRC
CD Belgian Congo|CG Congo-Brazzaville|CG Congo (Brazzaville)|CI Ivory Coast|CN People's Republic of China|CN PR China|CV Cape Verde|CZ Czech Republic|DE Federal Republic of Germany|EG Arab Republic of Egypt
DE Bundesrepublik Deutschland|ET Abyssinia|FK Falkland Islands|FK Malvinas|FM Federated States of Micronesia|FO Faeroe Islands|GB Great Britain|GB England|GB Scotland|GB Wales|GB U.K.|GB UK|GB Northern Ireland
GB United Kingdom of Great Britain and Northern Ireland|GB Inglaterra|GB Escócia|GB Escocia|GB Gran Bretaña|GB Grã-Bretanha|GB Großbritannien|GB Grande-Bretagne|GB Angleterre|GH Gold Coast|GQ Spanish Guinea
GW Portuguese Guinea|GY British Guiana|ID Dutch East Indies|IE Eire|IE Republic of Ireland|IR Persia|IR Islamic Republic of Iran|JP Nippon|KG Kirghizia|KH Kampuchea|KP Democratic People's Republic of Korea
KR Republic of Korea|LK Ceylon|LS Basutoland|MD Republic of Moldova|MG Malagasy Republic|MK Macedonia|MK Former Yugoslav Republic of Macedonia|MK FYROM|MM Burma|MW Nyasaland|NA South West Africa
NL Holland|NL The Netherlands|NL Holanda|NL Hollande|NZ Aotearoa|PH The Philippines|PR Porto Rico|PT Portugallia|RO Rumania|RO Roumania|RU Russian Federation|SH Ascension Island|SH Tristan da Cunha
SJ Svalbard|SJ Jan Mayen|SJ Spitsbergen|SR Dutch Guiana|SS Republic of South Sudan|SV Salvador|SY Syrian Arab Republic|SZ Swaziland|SZ Suazilandia|TH Siam|TL East Timor|TL Timor Leste|TR Turkey|TR Turkiye
TW Formosa|TW Republic of China|TZ Tanganyika|TZ United Republic of Tanzania|TZ Zanzibar|UA The Ukraine|US USA|US U.S.A.|US U.S.|US United States of America|US Estados Unidos de América|US EE. UU.|US EEUU|US EUA
US E.U.A.|US États-Unis d'Amérique|US Vereinigte Staaten von Amerika|US Hawaii|US Alaska|VA Holy See|VA Vatican|VA Vaticano|VE Bolivarian Republic of Venezuela|VI U.S. Virgin Islands|VN Viet Nam|VU New Hebrides
AE UAE|AE U.A.E.|YE Yemen Arab Republic|ZA RSA|ZA Republic of South Africa|ZM Northern Rhodesia|ZW Southern Rhodesia|ZW Rhodesia|BA Bosnia|BA Bosnia-Herzegovina|AG Antigua|TT Trinidad|TT Tobago|KN St Kitts
KN St. Kitts and Nevis|LC St. Lucia|VC St. Vincent and the Grenadines|VC Saint Vincent|PM St. Pierre and Miquelon|BL St. Barthélemy|SH St. Helena|MF St. Martin|ST São Tomé and Príncipe|ST Sao Tome|PT Azores
PT Madeira|PT Açores|ES Canary Islands|ES Islas Canarias|GS South Georgia|HM Heard Island|WF Wallis|TC Turks and Caicos|BQ Bonaire|PN Pitcairn|PS State of Palestine|LA Lao|BN Brunei|GM The Gambia|BS The Bahamas
FR Metropolitan France|CN Mainland China|HK Hong Kong SAR|MO Macau SAR|MO Macau|CY Republic of Cyprus|GR Hellas|CH Confoederatio Helvetica|CH Schweizerische Eidgenossenschaft|PL Republic of Poland|BR Brasil
DK Danmark|NO Norge|NO Noreg|SE Sverige|FI Suomi|IS Ísland|PL Polska|HU Magyarország|CZ Česko|CZ Česká republika|SK Slovensko|SI Slovenija|HR Hrvatska|BA Bosna i Hercegovina|RS Srbija|RS Србија|ME Crna Gora
MK Severna Makedonija|AL Shqipëria|GR Ελλάδα|GR Ελλάς|TR Türkiye Cumhuriyeti|BG България|RO România|EE Eesti|LV Latvija|LT Lietuva|RU Россия|RU Rossiya|UA Україна|UA Ukraina|BY Беларусь|IE Éire|NL Nederland|BE België|IT Italia
CH Svizzera|CY Κύπρος|LU Lëtzebuerg|MT Repubblika ta' Malta|GE საქართველო|AM Հայաստան|IL ישראל|EG مصر|MA المغرب|DZ الجزائر|TN تونس|JP 日本|JP Nihon|CN 中国|KR 대한민국|TH ประเทศไทย|VN Việt Nam|IN भारत|IN Bharat
`

type countryIndex struct {
	all   []ISOCountry
	codes map[string]int // alpha-2 and alpha-3
	names map[string]int // squeezed; -1 where two countries share it
}

var countries = sync.OnceValue(func() *countryIndex {
	t := &countryIndex{codes: map[string]int{}, names: map[string]int{}}
	for line := range strings.Lines(strings.TrimSpace(countryTable)) {
		f := strings.Split(strings.TrimSuffix(line, "\n"), "|")
		c := ISOCountry{Code: f[0], Alpha3: f[1], Name: f[2], ISOName: f[3]}
		if c.ISOName == "" {
			c.ISOName = c.Name
		}
		copy(c.names[:], f[4:])
		i := len(t.all)
		t.all = append(t.all, c)
		t.codes[c.Code], t.codes[c.Alpha3] = i, i
		t.name(c.Name, i)
		t.name(c.ISOName, i)
		for _, n := range c.names {
			t.name(n, i)
		}
	}
	for line := range strings.Lines(strings.TrimSpace(otherNames)) {
		for _, entry := range strings.Split(strings.TrimSpace(line), "|") {
			t.name(entry[3:], t.codes[entry[:2]])
		}
	}
	// Both Congos and both Koreas are called so; so is one of each by ISO.
	for _, shared := range []string{"Congo", "Kongo", "Korea", "Corea", "Coreia", "Corée", "Virgin Islands", "Guiana", "Saint Martin", "St. Martin", "San Martín", "São Martinho"} {
		t.names[squeeze(shared)] = -1
	}
	return t
})

func (t *countryIndex) name(s string, i int) {
	k := squeeze(s)
	if k == "" {
		return
	}
	if j, ok := t.names[k]; ok && j != i {
		i = -1
	}
	t.names[k] = i
}

// squeeze leaves of a name its letters and figures, in lower case and without
// accents, so that spellings can be compared: "Côte d'Ivoire" is
// "cotedivoire". "&" counts as "and". Of a text with a question mark or square
// brackets nothing is left: it says less than what stands in it, and no lookup
// may lose that.
func squeeze(s string) string {
	if strings.ContainsAny(s, "?[]") {
		return ""
	}
	var b strings.Builder
	b.Grow(len(s))
	for _, r := range strings.ToLower(strings.ReplaceAll(s, "&", "and")) {
		if base, ok := unaccented[r]; ok {
			b.WriteString(base)
			continue
		}
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '+' || r > 0x2ff && (r < 0x2000 || r > 0x206f) {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// unaccented are the letters with accents that the tables and their users
// write, by the letter without.
var unaccented = func() map[rune]string {
	m := map[rune]string{'ß': "ss", 'æ': "ae", 'œ': "oe"}
	for _, pair := range strings.Fields("a:áàâãäåăā c:çćč d:ďđð e:éèêëěęē g:ğ i:íìîïıī l:łľ n:ñńň o:óòôõöøőō r:ř s:śšşș t:ťţț u:úùûüůűū y:ýÿ z:źžż") {
		for _, r := range pair[2:] {
			m[r] = pair[:1]
		}
	}
	return m
}()
