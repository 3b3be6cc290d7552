package trade

import (
	"math/rand/v2"
	"testing"
)

// TestIndex holds the index against a map, its slow twin: with keys that crowd into
// a few slots, and with sums.
func TestIndex(t *testing.T) {
	for _, bits := range []int{4, 12, 64} {
		rng := rand.New(rand.NewPCG(1, uint64(bits)))
		var x index[int]
		twin := map[uint64]int{}
		var order []uint64
		for i := range 20000 {
			key := rng.Uint64() >> (64 - bits)
			if bits == 12 {
				key <<= 40 // the lower bits are alike
			}
			got, want := x.find(key), twin[key]
			if _, ok := twin[key]; ok != (got != nil) || ok && *got != want {
				t.Fatalf("%d bits, %x: %v, want %d", bits, key, got, want)
			}
			if got == nil {
				*x.add(key, -1) = i
				twin[key], order = i, append(order, key)
			} else {
				*got, twin[key] = i, i
			}
		}
		n := 0
		for v := range x.all {
			if *v != twin[order[n]] {
				t.Fatalf("%d bits: value %d is %d, want %d", bits, n, *v, twin[order[n]])
			}
			n++
		}
		if n != len(twin) {
			t.Errorf("%d bits: %d values, want %d", bits, n, len(twin))
		}
	}
}
