package table

import (
	"strings"
	"testing"
)

// What a table hardly does without is pointed out under a heading that nobody
// knows, and under no other one.
func TestPointOut(t *testing.T) {
	for _, c := range []struct{ in, heading, suggest string }{
		{"country,final call\nPortugal,Erica arborea L.\nPortugal,Tilia × europaea L.\nPortugal,Tilia 'Redmond'\n", "final call", "scientificName"},
		{"country,final call\nPortugal,Erica sp.\nPortugal,Carex cf. nigra\nPortugal,Rosa ×alba\n", "final call", "scientificName"},
		{"country,final call,first call\nPortugal,Erica arborea L.,Erica\nPortugal,Erica umbellata L.,Erica\nPortugal,Nardus stricta L.,?\n", "final call", "scientificName"},
		{"country,final call\nPortugal,Quercus robur\nPortugal,Dryopteris filix-mas\nPortugal,Quercus suber\n", "final call", "scientificName"},
		{"country,obs when\nPortugal,2026-04-12\nPortugal,2026-04-13\nPortugal,2026-04-13\n", "obs when", "eventDate"},

		{"country,who\nPortugal,I. Almeida\nPortugal,I. Almeida & R. Prates\nPortugal,\"Costa, T.\"\n", "who", "recordedBy"},
		{"country,scored by\nPortugal,I. Almeida\nPortugal,I. Almeida\nPortugal,R. Prates\n", "", ""},
		{"country,collector,who\nPortugal,T. Costa,I. Almeida\nPortugal,T. Costa,I. Almeida\nPortugal,T. Costa,R. Prates\n", "", ""},
		{"species,where to\nCarex acuta,\"Portugal, Lindoso\"\nCarex acuta,\"Portugal, Parada\"\nCarex nigra,\"Spain, Entrimo\"\n", "where to", "locality"},
		{"species,country,reference\nCarex acuta,PT,\"Almeida, Prates\"\nCarex acuta,PT,\"Almeida, Costa\"\nCarex nigra,ES,\"Costa, Teles\"\n", "", ""},
		{"country,date received\nPortugal,2026-04-12\nPortugal,2026-04-13\nPortugal,2026-04-13\n", "", ""},

		{"country,final call\nPortugal,Erica arborea L.\n", "", ""}, // one row says little
		{"family,genus,species,final call\nEricaceae,Erica,arborea,Erica arborea L.\nEricaceae,Erica,umbellata,Erica umbellata L.\nEricaceae,Erica,cinerea,Erica cinerea L.\n", "", ""},
		{"country,host call\nPortugal,Erica arborea L.\nPortugal,Erica arborea L.\nPortugal,Quercus robur L.\n", "", ""},
		{"country,spot\nPortugal,Serra do Gerês\nPortugal,Lindoso bridge\nPortugal,Parada village\n", "", ""},
		{"country,aspect seen\nPortugal,Oak forest\nPortugal,Wet meadow\nPortugal,Rocky slopes with broom\n", "", ""},
		{"country,flow\nAustria,Wassermäßig fließend\nAustria,Wasser kaum fließend\nAustria,Wassermäßig fließend\n", "", ""},
		{"country,stand\nPortugal,Quercion roboris\nPortugal,Wet meadow\nPortugal,Rocky slopes\n", "", ""},
		{"country,obs when,shown when\nPortugal,2026-04-12,2026-05-12\nPortugal,2026-04-13,2026-05-12\nPortugal,2026-04-13,2026-05-12\n", "", ""},
		{"country,typed in, modified on\nPortugal,0,2026-05-12\nPortugal,1,2026-05-12\nPortugal,0,2026-05-12\n", "", ""},
		{"country,date,obs when\nPortugal,2026-04-12,2026-05-12\nPortugal,2026-04-13,2026-05-12\nPortugal,2026-04-13,2026-05-12\n", "", ""},
	} {
		tb, _ := readAll(t, c.in, Options{})
		heading, suggest := "", ""
		for _, f := range tb.Findings() {
			if strings.Contains(f.Message, "no other heading says") {
				heading, suggest = f.Value, f.Suggest
			}
		}
		if heading != c.heading || suggest != c.suggest {
			t.Errorf("%q: pointed at %q (%q), want %q (%q)", c.in, heading, suggest, c.heading, c.suggest)
		}
	}
}
