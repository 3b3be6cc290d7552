package check

import "testing"

// TestBareNumber: the collector's own name is no part of the number. Common
// practice, no source; the persons are invented.
func TestBareNumber(t *testing.T) {
	for _, tt := range []struct{ text, collector, want string }{
		{"Almeida 214", "I. Almeida", "214"},
		{"Almeida P18099", "Inês P. Almeida", "P18099"},
		{"Almeida, I da  21696", "Almeida I da", "21696"},
		{"I. Almeida 214a", "Almeida, I.", "214a"},
		{"ALMEIDA 214", "Inês Almeida", "214"},
		{"IA 214", "I. Almeida", "IA 214"},
		{"Prates 214", "I. Almeida", "Prates 214"},
		{"Almeida & Prates 214", "I. Almeida", "Almeida & Prates 214"},
		{"Almeida214", "I. Almeida", "Almeida214"},
		{"Almeida s.n.", "I. Almeida", "Almeida s.n."},
		{"Valdoura 12", "I. Almeida", "Valdoura 12"},
		{"Almeida 214", "", "Almeida 214"},
		{"214", "I. Almeida", "214"},
		{"é 1", "é", "é 1"},
		{"", "I. Almeida", ""},
	} {
		if got := bareNumber(tt.text, tt.collector); got != tt.want {
			t.Errorf("%q of %s: %q, not %q", tt.text, tt.collector, got, tt.want)
		}
	}
}
