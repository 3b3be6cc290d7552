package impose

import (
	"math/rand/v2"
	"testing"

	"cornerslip/layout"
)

func BenchmarkPlan(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	same, mixed := make([]layout.Size, 10000), make([]layout.Size, 10000)
	for i := range same {
		same[i] = size(105, 74)
		mixed[i] = size(105, []layout.Length{74, 74, 74, 99, 148}[r.IntN(5)])
	}
	for name, sizes := range map[string][]layout.Size{"same": same, "mixed": mixed} {
		b.Run(name, func(b *testing.B) {
			p, err := Gang{}.Plan(sizes)
			if err != nil {
				b.Fatal(err)
			}
			n := 0
			for i := range p.Len() {
				n += len(p.Places(i))
			}
			if n != len(sizes) {
				b.Fatalf("%d of %d labels have a place", n, len(sizes))
			}
			for b.Loop() {
				if _, err := (Gang{}).Plan(sizes); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
