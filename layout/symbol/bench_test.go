package symbol

import "testing"

func BenchmarkMake(b *testing.B) {
	for _, s := range []string{Code128, Code39, DataMatrix, QR} {
		b.Run(s, func(b *testing.B) {
			o := Options{Symbology: s}
			if got := mustMake(b, "VDOURA-0000123", o); got.S != "VDOURA-0000123" {
				b.Fatalf("says %q", got.S)
			}
			for b.Loop() {
				if _, err := Make("VDOURA-0000123", o); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
