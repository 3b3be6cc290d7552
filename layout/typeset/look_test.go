package typeset

import (
	"cornerslip/label"
)

// mock is the label that shows how a label should look.
func mock() *label.Content {
	run := func(s string) label.Run { return label.Run{Text: s} }
	it := func(s string) label.Run { return label.Run{Text: s, Style: label.Italic, Exact: true} }
	keep := func(s string) label.Run { return label.Run{Text: s, Keep: true} }
	return &label.Content{
		Kind: label.Sheet, Lang: "en", Continued: "label continued", OfWord: "of",
		Key: []label.Run{{Text: "I. Almeida 214", Style: label.Bold, Keep: true}},
		Blocks: []label.Block{
			{Role: label.House, Runs: []label.Run{{Text: "Valdoura Field Station Herbarium", Style: label.Capitals}}},
			{Role: label.Project, Runs: []label.Run{run("Plants of the Serra da Estrela, Portugal")}},
			{Role: label.Name, Runs: []label.Run{it("Cytisus striatus"), run(" (Hill) Rothm. "), keep("subsp. "), it("eriocarpus"), run(" (Boiss. & Reut.) "), keep("Rivas Mart.")},
				Right: []label.Run{{Text: "Fabaceae", Style: label.Capitals | label.Small}}},
			{Role: label.Det, Runs: []label.Run{keep("Det. M. Quental"), run(", "), keep("November 2026")}, Tight: true},
			{Role: label.Place, Runs: []label.Run{run("PORTUGAL. Guarda: Manteigas, left side of the glacial valley of the Zêzere, "), keep("1.8 km SSW"), run(" of the bridge at Caldas, above the forest track to Nave de Santo António.")}},
			{Role: label.Coords, Runs: []label.Run{keep("40°21′14″ N"), run(", "), keep("7°33′48″ W"), run(" ("), keep("WGS 84"), run(", "), keep("±30 m"), run("). "), keep("Alt. 1240–1260 m"), run(".")}, Tight: true},
			{Role: label.Plant, Runs: []label.Run{run("Open scrub on granite scree, with "), it("Erica australis"), run(" and "), it("Pterospartum tridentatum"), run(". Shrub "), keep("1.6 m"), run("; flowers deep yellow, legumes densely woolly. Frequent.")}},
			{Role: label.Collector, Runs: []label.Run{{Text: "I. Almeida 214", Style: label.Bold, Keep: true}}, Right: []label.Run{keep("14 June 2026")}},
			{Role: label.Team, Runs: []label.Run{run("with "), keep("T. Brandão"), run(" & "), keep("L. Sarmento")}, Right: []label.Run{run("Dupl.: PINHEL, ALTAVX")}},
			{Role: label.Number, Runs: []label.Run{keep("VDOURA-0004217")}, Right: []label.Run{run("Sheet 1 of 2")}},
		},
	}
}
