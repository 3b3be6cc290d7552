package job

import "strings"

// signFaults are signs of names and letters for figures that are written as none
// are, and words for places that are none.
var signFaults = []plantedFault{
	by("name-form", "the genus twice", func(_ *planting, s string) string {
		w := strings.Fields(s)
		w[1] = strings.ToLower(w[0])
		return strings.Join(w, " ")
	}, "scientificName"),
	by("name-form", "a figure before the author", func(p *planting, s string) string {
		w := strings.Fields(s)
		if len(w) < 3 || w[1] == "×" || w[2] == "subsp." || w[2] == "var." {
			return s
		}
		return w[0] + " " + w[1] + " " + p.pick("1", "2", "12") + " " + strings.Join(w[2:], " ")
	}, "scientificName"),
	by("name-form", "no author behind the brackets", func(_ *planting, s string) string {
		i := strings.Index(s, ".)")
		if i < 0 {
			return s
		}
		return s[:i+2]
	}, "scientificName"),
	by("name-form", "a stop twice", func(_ *planting, s string) string { return strings.Replace(s, ". ", ".. ", 1) }, "scientificName"),
	by("figure-letter", "letters before a unit", func(p *planting, s string) string {
		return s + p.pick(", l km W", ", 1O km N", ", l0 m above the road", ", 3OO m E")
	}, "locality"),
	to("country-continent", "a part of the world", "country", "West Africa", "Europa", "MITTELEUROPA", "América del Sur"),
	by("country-spelling", "a slip of the keys", func(p *planting, s string) string {
		if s != "Portugal" {
			return s
		}
		return p.pick("Protugal", "Portgual", "Portugall", "Potugal", "PORTUAGL")
	}, "country"),
	by("name-form", "no blank behind the brackets", func(_ *planting, s string) string { return strings.Replace(s, ".) ", ".)", 1) }, "scientificName"),
	by("apostrophe-accent", "a grave or acute accent", func(p *planting, s string) string {
		return s + p.pick(", Lagoa d`Ouro", ", Sant´Ana", ", Sant`Iago", ", Fonte d´Água")
	}, "locality"),
	by("author-form", "authors that are cut off", func(p *planting, s string) string {
		return s + p.pick(" &", " ex", " et", ",", " in")
	}, "scientificNameAuthorship"),
	by("author-form", "half a pair of brackets in the authors", func(p *planting, s string) string {
		return strings.Replace(s, p.pick("(", ")"), "", 1)
	}, "scientificNameAuthorship"),
	by("name-form", "a name pasted twice", func(_ *planting, s string) string { return s + " " + s }, "scientificName"),
	by("name-form", "no blank before a year", func(_ *planting, s string) string {
		if !strings.HasSuffix(s, ".") {
			return s
		}
		return s + "1843"
	}, "scientificName"),
	by("person-form", "a second person without a sign", func(p *planting, s string) string {
		if s[1] != '.' {
			return s
		}
		return s + " " + p.pick("M. T. Prates", "H. J. Lobo", "P. R. de Sá")
	}, "recordedBy"),
	by("text-ditto", "among other words", func(p *planting, s string) string {
		return p.pick("idem, ", "Ibid., ") + "200 m " + p.pick("further up", "W")
	}, "locality"),
}
