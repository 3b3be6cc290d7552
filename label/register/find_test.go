package register

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

func TestFind(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		addSeries(t, r, "VDB 00000 MOD 37,36")
		_, err := r.Issue(t.Context(), registrar(""), "VDOURA", 300)
		must(t, err)
		bryo, err := r.Issue(t.Context(), registrar(""), "VDB", 20)
		must(t, err)
		seven := bryo.Pattern.Format(7)
		duplicate := sheet("", "I. Almeida", "214", "Iris boissieri Henriq.")
		duplicate.For = "PINHEL"
		printOne(t, r,
			sheet("VDOURA-0000123", "I. Almeida & J. Moura", "214", "Iris boissieri Henriq."), // 1
			duplicate, // 2
			sheet("VDOURA-0000124", "I. Almeida", "214a", "Narcissus calcicola Mendonça"),                          // 3
			sheet("VDOURA-0000214", "João Nogueira", "CN97-114", "Drosophyllum lusitanicum (L.) Link"),             // 4
			sheet(seven, "Søren Ærø", "12", "Sphagnum auriculatum Schimp."),                                        // 5
			sheet("LISU 4711", "M. Böhm", "s.n.", "×Sorbopyrus auricularis (Knoop) C.K.Schneid."),                  // 6
			sheet("", "Œnone Łukasiewicz", "1 001", "Carex × boenninghausiana Weihe"),                              // 7
			sheet("VDOURA-0000125", "I. Almeida", "123", "Silene rothmaleri P.Silva"),                              // 8
			sheet("VDOURA-0000126", "Ιωάννης Παπάς", "33/2", "Iris xiphium L. var. lusitanica (Ker Gawl.) Franco"), // 9
		)
		finds := func(text string, want ...int) {
			t.Helper()
			found, err := r.Find(t.Context(), text, 0)
			must(t, err)
			var got []int
			for _, k := range found {
				got = append(got, k.ID)
				if k.Box != nil || k.Cells != nil || k.Run.House != "" || k.Run.Source != "trip.csv" {
					t.Errorf("%q: %+v", text, k)
				}
			}
			if !slices.Equal(got, want) {
				t.Errorf("%q: %v, want %v", text, got, want)
			}
		}
		for _, text := range []string{"VDOURA-0000123", "vdoura-0000123", "VDOURA 123", "vdoura123", " VDOURA--0000123 ", "VDOURA_0000123", "0000123",
			"https://herbarium.example.org/id/VDOURA-0000123", "https://herbarium.example.org/specimen?id=VDOURA-0000123", "http://herbarium.example.org/#VDOURA0000123",
			"https://herbarium.example.org/id/VDOURA-0000123/", "https://herbarium.example.org/VDOURA-0000123?lang=pt", "VDOURA-0000123\n", "vdoura-0000123."} {
			finds(text, 1)
		}
		finds("123", 8, 1) // a catalogue number and a collector's number
		for _, text := range []string{seven, strings.ToLower(seven), "VDB-00007", "vdb 00007", "https://herbarium.example.org/VDB%2000007" + seven[len(seven)-1:], "https://herbarium.example.org/VDB+00007" + seven[len(seven)-1:]} {
			finds(text, 5)
		}
		finds("LISU 4711", 6)
		finds("lisu4711", 6)
		finds("Almeida 214", 2, 1)
		finds("214 almeida", 2, 1)
		finds("ALMEIDA, I. 214", 2, 1)
		finds("Almeida no. 214", 2, 1)
		finds("Almeida nº 214", 2, 1)
		finds("alm 214", 2, 1)
		finds("Moura 214", 1)
		finds("iris 214", 2, 1)
		finds("almeida iris 214", 2, 1)
		finds("almeida narcissus 214")
		finds("Almeida 214a", 3)
		finds("Almeida 214 A", 3, 2, 1)
		finds("214", 4, 2, 1) // figures alone are a catalogue number too
		finds("cn97-114", 4)
		finds("CN97 114", 4)
		finds("nogueira CN 97-114", 4)
		finds("łukasiewicz 1 001", 7)
		finds("Joao nogueira cn97114", 4)
		finds("1001", 7)
		finds("33/2", 9)
		finds("33/123")                                     // not VDOURA-0000123
		finds("herbarium.example.org/id/VDOURA-0000123", 1) //
		finds("https://herbarium.example.org/123", 1)
		finds("https://herbarium.example.org")
		finds("https://herbarium.example.org/lisu%204711", 6)
		finds("Παπας 33/2", 9)
		finds("ΠΑΠΆΣ", 9)
		finds("iris boiss", 2, 1)
		finds("BOISS iris", 2, 1)
		finds("iris", 9, 2, 1)
		finds("iris almeida", 2, 1)
		finds("Íris  bóissièri", 2, 1)
		finds("mendonca", 3)
		finds("soren aero", 5)
		finds("SØREN", 5)
		finds("sorbopyrus", 6)
		finds("× Sorbopyrus", 6)
		finds("x sorbopyrus auric", 6)
		finds("boehm")
		finds("bohm", 6)
		finds("oenone luka", 7)
		finds("carex boenn", 7)
		finds("carex x boenn", 7)
		finds("s.n.")
		finds("bohm s.n.")
		finds("nobody")
		finds("VDOURA-0000299")
		finds("?!")
		finds("https://herbarium.example.org/id/VDOURA-0000299")
		// A printing under way does not crowd out what was printed before.
		rec, err := r.Record(t.Context(), registrar(""), Run{})
		must(t, err)
		for range 2 * DefaultFound {
			must(t, rec.Add(t.Context(), sheet("VDOURA-0000123", "I. Almeida", "214", "Iris")))
		}
		must(t, rec.flush(t.Context()))
		finds("VDOURA-0000123", 1)
		finds("Almeida 214", 2, 1)
		finds("iris boiss", 2, 1)
		must(t, rec.Abandon(t.Context()))
		for _, text := range []string{"", " ", "\n"} {
			_, err := r.Find(t.Context(), text, 0)
			refused(t, err, nil, "collector and number")
		}
		_, err = r.Find(t.Context(), strings.Join(strings.Split("abcdefghijklmnopqrstuvw", ""), " "), 0)
		refused(t, err, nil, "say less")
		if found, err := r.Find(t.Context(), "i", 3); err != nil || len(found) != 3 || found[0].ID != 9 {
			t.Errorf("at most three: %v, %v", found, err)
		}
	})
}

// TestFindTwin holds the search against a plain walk over all labels.
func TestFindTwin(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		rnd := rand.New(rand.NewPCG(3, 3))
		pick := func(words ...string) string { return words[rnd.IntN(len(words))] }
		var all []Label
		for i := range 1200 {
			all = append(all, sheet("", pick("I. Almeida", "J. Moura", "Inês Moura", "A. Íris", ""), fmt.Sprint(1+rnd.IntN(40)),
				pick("Iris boissieri", "Íris almeidae", "Silene", fmt.Sprintf("Carex sp%d", i), "")))
		}
		printOne(t, r, all...)
		for range 150 {
			var said []string
			number := ""
			for range 1 + rnd.IntN(2) {
				said = append(said, pick("iris", "ALM", "Moura", "boiss", "ines", "i", "c", "silene", "carex", "sp1", "zz", "sp"))
			}
			if rnd.IntN(2) == 0 {
				number = fmt.Sprint(1 + rnd.IntN(45))
			}
			text := strings.TrimSpace(strings.Join(said, " ") + " " + number)
			var want []int
			for i := len(all) - 1; i >= 0 && len(want) < DefaultFound; i-- {
				has := strings.Fields(strings.NewReplacer("í", "i", "ê", "e", ".", " ").Replace(strings.ToLower(all[i].Collector + " " + all[i].Name)))
				fits := number == "" || all[i].Number == number
				for _, w := range said {
					fits = fits && slices.ContainsFunc(has, func(h string) bool { return strings.HasPrefix(h, strings.ToLower(w)) })
				}
				if fits {
					want = append(want, i+1)
				}
			}
			found, err := r.Find(t.Context(), text, 0)
			must(t, err)
			var got []int
			for _, k := range found {
				got = append(got, k.ID)
			}
			if !slices.Equal(got, want) {
				t.Errorf("%q: %v, want %v", text, got, want)
			}
		}
	})
}
