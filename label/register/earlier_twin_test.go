package register

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

// TestKnownTwin holds what is known of random specimens against a walk over
// every label that was printed.
func TestKnownTwin(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		issue(t, r, 30)
		rnd := rand.New(rand.NewPCG(4, 4))
		pick := func(words ...string) string { return words[rnd.IntN(len(words))] }
		number := func() string {
			return pick("", fmt.Sprintf("VDOURA-%07d", 1+rnd.IntN(30)), fmt.Sprint("LISU ", 1+rnd.IntN(9)))
		}
		var labels []Label
		for i := range 600 {
			l := sheet(number(), pick("I. Almeida", "I. Almeida & J. Moura", "J. Moura", "Moura, J.", ""), pick("", "s.n.", fmt.Sprint(1+rnd.IntN(12))), pick("", "Iris", "Silene", "Carex"))
			l.Date = pick("", "2026-06-14", "2026-06-15")
			l.Record = []byte(fmt.Sprint("record ", i))
			labels = append(labels, l)
			if rnd.IntN(3) == 0 { // a duplicate for another herbarium
				l.CatalogNumber, l.For = "", "PINHEL"
				labels = append(labels, l)
			}
		}
		printOne(t, r, labels...)
		var all []Kept
		numbered := map[string]string{}
		for id := range labels {
			k, err := r.Load(t.Context(), id+1)
			must(t, err)
			all = append(all, k)
			if key := catalogKey(k.CatalogNumber); key != "" {
				numbered[string(k.Record)] = key
			}
		}
		var specimens []Specimen
		for range 300 {
			specimens = append(specimens, Specimen{CatalogNumber: number(), Collector: pick("I. Almeida", "Almeida, I.", "J. Moura", ""), Number: pick("", "s.n.", fmt.Sprint(1+rnd.IntN(12))),
				Date: pick("", "2026-06-14", "2026-06-15"), Name: pick("", "Iris", "Silene")})
		}
		known, err := r.Known(t.Context(), specimens)
		must(t, err)
		for i, sp := range specimens {
			var want, got []int
			catalog, record := catalogKey(sp.CatalogNumber), recordKey(sp.Number)
			for _, k := range all {
				of, own := catalogKey(k.CatalogNumber), catalogKey(k.CatalogNumber)
				if of == "" {
					of = numbered[string(k.Record)]
				}
				near := own != "" && own == catalog || record != "" && recordKey(k.Number) == record
				switch {
				case catalog == "" && record == "":
					near = sp.Name != "" && k.Name == sp.Name && own == "" && recordKey(k.Number) == ""
				case catalog != "" && of != "":
					near = near && catalog == of
				default:
					near = near && k.Shows(sp)
				}
				if near {
					want = append(want, k.ID)
				}
			}
			for _, k := range known[i].Earlier {
				got = append(got, k.ID)
			}
			if !slices.Equal(got, want) {
				t.Errorf("%s %q of %s: %v, want %v", sp, sp.CatalogNumber, sp.Date, got, want)
			}
		}
	})
}
