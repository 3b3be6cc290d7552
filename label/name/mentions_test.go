package name

import (
	"strings"
	"testing"

	"cornerslip/label"
)

func markRuns(runs []label.Run) string {
	var b strings.Builder
	for _, r := range runs {
		if r.Style&label.Italic != 0 {
			b.WriteString("<i>" + r.Text + "</i>")
		} else {
			b.WriteString(r.Text)
		}
	}
	return strings.ReplaceAll(b.String(), "</i><i>", "")
}

// Common practice, no source, except where a comment says otherwise. Names in
// the texts of PRACTICE-like labels are real plants, places are invented.
func TestMentions(t *testing.T) {
	taxa := Options{TaxonField: true}
	for _, c := range []struct {
		want  string
		known string // separated by bars
		opt   Options
	}{
		// Fields made of taxa.
		{"with <i>Erica australis</i> and <i>Pterospartum tridentatum</i>", "", taxa},
		{"<i>Erica australis</i>, <i>E. umbellata</i>, <i>Calluna vulgaris</i>", "", taxa},
		{"<i>Erica australis</i> | <i>Cistus ladanifer</i> subsp. <i>sulcatus</i>", "", taxa},
		{"<i>Quercus suber</i> L.; <i>Q. rotundifolia</i> Lam.", "", taxa},
		{`"host":"<i>Quercus alba</i>"`, "", taxa},                          // an example of dwc:associatedTaxa
		{`"parasitoid collected from":"<i>Cyclocephala</i> sp."`, "", taxa}, // likewise in form
		{"host: <i>Quercus pyrenaica</i>", "", taxa},
		{"<i>Salix</i> ×<i>rubens</i>, <i>Alnus glutinosa</i>", "", taxa},
		{"<i>Erica</i> cf. <i>australis</i>", "", taxa},
		{"Esteva, giesta branca e tojo", "", taxa},
		{"Giesta branca, Urze vermelha", "", taxa},
		{"Grasses, mosses and <i>Sphagnum</i> spp.", "", taxa},
		{"Pines, oaks", "", taxa},
		{"<i>Struthiopteris spicant</i> (L.) F.W.Weiss | Silver birch", "", taxa},
		{"With <i>Cistus ladanifer</i> dominant", "", taxa},
		{"Mata densa com <i>Erica arborea</i>", "", taxa},
		{"<i>Quercus robur</i> woodland with <i>Ilex aquifolium</i>", "", taxa},

		// Any text: what is known.
		{"in <i>Quercus</i> forest", "Quercus suber L.", Options{}},
		{"in <i>Quercus suber</i> forest", "Quercus suber L.", Options{}},
		{"on bark of <i>Quercus suber</i> and <i>Q. faginea</i>", "Quercus suber L.|Quercus faginea Lam.", Options{}},
		{"on <i>Q. suber</i>", "Quercus suber", Options{}},
		{"montado de <i>Quercus suber</i> com <i>Cistus</i>", "Quercus suber|Cistus", Options{}},
		{"<i>Quercus</i> densa", "Quercus suber", Options{}},
		{"Rosa Almeida's garden", "Rosa canina", Options{}},
		{"Serra da Rosa", "Rosa canina", Options{}},
		{"Santa Iris", "Iris", Options{}},
		{"hedge with <i>Rosa canina</i>", "Rosa canina", Options{}},
		{"hedge with <i>Rosa</i> sp.", "Rosa canina", Options{}},
		{"on <i>Salix atrocinerea</i> subsp. <i>atrocinerea</i>, dead", "Salix atrocinerea Brot.", Options{}},

		// Any text: clear forms.
		{"scrub of <i>Cistus</i> spp.", "", Options{}},
		{"<i>Quercus ilex</i> subsp. <i>ballota</i> woodland", "", Options{}},
		{"hedge of <i>Salix</i> ×<i>rubens</i>", "", Options{}},
		{"under <i>Erica australis</i> L. and <i>Pterospartum tridentatum</i> (L.) Willk.", "", Options{}},
		{"meadow rich in <i>Poaceae</i>", "", Options{}},
		{"meadow rich in Poaceae", "", Options{UprightFamilies: true}},
		{"scrub (<i>Cistus</i> sect. <i>Ladanium</i>)", "", Options{}},

		{"parasitic on <i>Thymus mastichina</i> (L.) L.", "", Options{}},
		{"on <i>Crepis sancta</i> (L.) Babcock near the road", "", Options{}},
		{"in <i>Quercus suber</i> L. forest", "Quercus pyrenaica Willd.", Options{}},
		{"<i>Quercus robur</i> × <i>Q. pyrenaica</i> wood", "Quercus pyrenaica Willd.", Options{}},
		{"hedge of <i>Crataegus monogyna</i> × <i>C. laciniata</i>", "Crataegus monogyna", Options{}},

		// Ordinary words.
		{"Quinta grande (Eng.) Silva", "", Options{}},
		{"Ponte nova (Sr.) Silva", "", Options{}},
		{"Herdade nova (Eng.) Silva", "", Options{}},
		{"Marisma salina (Sta.) Maria", "", Options{}},
		{"<i>Quercus</i> forest (Dist.) Guarda", "Quercus suber", Options{}},
		{"<i>Quercus</i> mata L. Almeida", "Quercus suber", Options{}},
		{"Granite soils", "", Options{}},
		{"Granite soils", "", taxa},
		{"Mata de sobreiro", "", Options{}},
		{"Encosta granítica virada a norte", "", Options{}},
		{"Ribeira seca, areias húmidas", "", Options{}},
		{"Serra alta L. de Freitas", "", Options{}},
		{"Terrenos incultos", "", Options{}},
		{"Area is grazed", "", Options{}},
		{"on N. slope, E. side, S. of the road", "", Options{}},
		{"on N. slope of the Serra", "Nardus stricta", Options{}},
		{"Alluvium of the Tagus", "", Options{}},
		{"Campus universitatis", "", Options{}},
		{"Various spp.", "", Options{}},
		{"Carvalhos spp.", "", Options{}},
		{"A 3 × 5 m plot", "", Options{}},
		{"Plot 3 × 5 m", "", Options{}},
		{"Pinus plantation", "", Options{}}, // not known, not clear
		{"Matos baixos; encosta forma um vale", "", Options{}},
		{"Calcareous grassland with orchids", "", Options{}},
		{"Vale de Cambra, margem do rio", "", Options{}},
		{"Prados húmidos junto à Ribeira de Santa Maria", "", Options{}},
		{"Lava fields, aa and pahoehoe", "", Options{}},
		{"Sand dunes behind Praia da Rocha", "", Options{}},
		{"Lameiro; solo ácido. Comum.", "", Options{}},
	} {
		text := unmark.Replace(c.want)
		var known []string
		if c.known != "" {
			known = strings.Split(c.known, "|")
		}
		runs := Mentions(text, known, c.opt)
		if got := markRuns(runs); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
		if s := label.String(runs); s != text {
			t.Errorf("runs of %q join to %q", text, s)
		}
	}
}
