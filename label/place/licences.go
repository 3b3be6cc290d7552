package place

import (
	"regexp"
	"strings"
)

// Licences are those that the standard takes: Creative Commons 4.0 and CC0 1.0,
// by their addresses, with or without the page in a language.
//
// Source: tdwg/bdq VALIDATION_LICENSE_STANDARD, 2024-03-21, with its languages
// ("ni" stands there for Dutch, which Creative Commons writes "nl").
var licence = regexp.MustCompile(`^https?://creativecommons\.org/(?:licenses/(?:by|by-sa|by-nc|by-nc-sa|by-nd|by-nc-nd)/4\.0|publicdomain/zero/1\.0)/` +
	`(?:(?:deed|legalcode)(?:\.(?:id|eu|da|de|en|es|fr|fy|hr|it|lv|lt|mi|ni|nl|no|pl|pt|ro|si|fi|sv|tr|cs|el|ru|uk|ar|jp|zh-hans|zh-hant|ko))?)?$`)

// IsLicence reports whether s is exactly the address of a licence that the
// standard takes.
func IsLicence(s string) bool { return licence.MatchString(s) }

// Licence returns the address of the licence that a name means: "CC BY 4.0",
// "CC0", "Attribution-NonCommercial 4.0 International". A Creative Commons
// licence named without its version can mean several and gives false.
func Licence(s string) (address string, ok bool) {
	s = strings.TrimSpace(s)
	if i := strings.Index(strings.ToLower(s), "creativecommons.org/"); i >= 0 && i <= len("https://www.") {
		path := strings.ToLower(s[i+len("creativecommons.org/"):])
		address = "https://creativecommons.org/" + strings.TrimRight(path, "/") + "/"
		if !IsLicence(address) {
			address = strings.TrimRight(address, "/")
		}
		return address, IsLicence(address)
	}
	s = strings.TrimSuffix(licensedUnder.ReplaceAllString(s, ""), ".")
	if m := bracketed.FindStringSubmatch(s); m != nil {
		// Which of the two ways into the public domain it was, the brackets say.
		long := squeeze(m[1] + m[3])
		if long == "publicdomain" || strings.HasPrefix(long, "totheextentpossibleunderlaw") && strings.HasSuffix(long, "publicdomain") {
			return Licence(m[2])
		}
		// The name and its abbreviation, as the deeds write them; the version may
		// stand with either. They must say the same.
		return agreed(m[1]+m[3], m[2])
	}
	k := strings.TrimSuffix(squeeze(s), "license")
	k = strings.TrimSuffix(strings.TrimSuffix(k, "licence"), "universal")
	switch strings.TrimSuffix(k, "publicdomaindedication") {
	case "cc0", "cczero", "cc010", "cczero10", "creativecommonszero", "creativecommonszero10", "cc010universal", "creativecommonscc0", "creativecommonscc010", "publicdomaincc0", "publicdomaincc010":
		return "https://creativecommons.org/publicdomain/zero/1.0/legalcode", true
	}
	k = strings.TrimSuffix(strings.TrimSuffix(k, "unported"), "international")
	k, ok = strings.CutSuffix(k, "40")
	if !ok {
		return "", false
	}
	k = strings.TrimPrefix(strings.TrimPrefix(k, "creativecommons"), "cc")
	kind, ok := licenceKinds[k]
	if !ok {
		return "", false
	}
	return "https://creativecommons.org/licenses/" + kind + "/4.0/legalcode", true
}

// licensedUnder is how the sentence of a licence begins.
var licensedUnder = regexp.MustCompile(`(?i)^(?:this work|this dataset|these data) (?:is|are) licensed under (?:an? |the )?`)

// bracketed is a name with its abbreviation in brackets.
var bracketed = regexp.MustCompile(`^([^()]+)\(([^()]+)\)([^()]*)$`)

// agreed returns the licence that two names mean, of which one may lack its
// version.
func agreed(long, short string) (address string, ok bool) {
	version := func(s string) string {
		for _, v := range []string{"4.0", "1.0"} {
			if strings.Contains(s, v) {
				return " " + v
			}
		}
		return ""
	}
	a, b := long, short
	if version(a) == "" {
		a += version(b)
	}
	if version(b) == "" {
		b += version(a)
	}
	address, ok1 := Licence(a)
	other, ok2 := Licence(b)
	return address, ok1 && ok2 && address == other
}

var licenceKinds = map[string]string{
	"by": "by", "attribution": "by",
	"bysa": "by-sa", "attributionsharealike": "by-sa",
	"bync": "by-nc", "attributionnoncommercial": "by-nc",
	"byncsa": "by-nc-sa", "attributionnoncommercialsharealike": "by-nc-sa",
	"bynd": "by-nd", "attributionnoderivatives": "by-nd", "attributionnoderivs": "by-nd",
	"byncnd": "by-nc-nd", "attributionnoncommercialnoderivatives": "by-nc-nd", "attributionnoncommercialnoderivs": "by-nc-nd",
}
