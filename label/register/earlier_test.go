package register

import (
	"errors"
	"testing"
)

// What is known of specimens that are about to be printed again: by number, by
// collector and number, by the record that a duplicate was printed from.
func TestKnown(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		ctx := t.Context()
		r := p.create(t)
		if _, err := r.Issue(ctx, registrar("spoiled"), "", 9); err != nil {
			t.Fatal(err)
		}
		void, err := r.Range(ctx, "VDOURA-0000005", "")
		if err != nil {
			t.Fatal(err)
		}
		if err := r.Mark(ctx, registrar("spoiled"), Void, void); err != nil {
			t.Fatal(err)
		}
		if _, err := r.Assign(ctx, registrar("spoiled"), "", []Specimen{{CatalogNumber: "VDOURA-0000006", Collector: "C. Reis", Number: "5"}}, false); err != nil {
			t.Fatal(err)
		}
		labels := []Label{
			{Kind: "sheet", Label: 1, Of: 1, CatalogNumber: "VDOURA-0000001", Collector: "I. Almeida | T. Brandão", Number: "214", Name: "Iris boissieri Henriq.", Date: "2026-06-14", Record: []byte("a")},
			{Kind: "sheet", Label: 1, Of: 1, For: "PINHEL", Part: "PINHEL", Collector: "I. Almeida | T. Brandão", Number: "214", Name: "Iris boissieri Henriq.", Date: "2026-06-14", Record: []byte("a")},
			{Kind: "sheet", Label: 1, Of: 1, Collector: "T. Brandão", Number: "97-12", Name: "Erica arborea L.", Date: "2026-06-15", Record: []byte("b")},
			{Kind: "sheet", Label: 1, Of: 1, Collector: "T. Brandão", Number: "s.n.", Name: "Erica umbellata L.", Record: []byte("c")},
			{Kind: "barcode", Label: 1, Of: 1, CatalogNumber: "VDOURA-0000002", Record: []byte("none")},
			{Kind: "barcode", Label: 1, Of: 1, CatalogNumber: "VDOURA-0000003", Record: []byte("none")},
		}
		if _, err := r.Remember(ctx, registrar("spoiled"), Run{Program: "test"}, func(yield func(Label, error) bool) {
			for _, l := range labels {
				if !yield(l, nil) {
					return
				}
			}
		}); err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name     string
			specimen Specimen
			err      error
			state    State
			earlier  int
			loose    bool
		}{
			{"number", Specimen{CatalogNumber: "VDOURA-0000001"}, nil, Printed, 1, false}, // a duplicate is found by its gathering alone
			{"number and gathering", Specimen{CatalogNumber: "VDOURA-0000001", Collector: "I. Almeida", Number: "214", Date: "2026-06-14"}, nil, Printed, 2, false},
			{"corrected date", Specimen{CatalogNumber: "VDOURA-0000001", Collector: "I. Almeida", Number: "214", Date: "2026-06-15"}, nil, Printed, 2, false},
			{"another number of the gathering", Specimen{CatalogNumber: "VDOURA-0000007", Collector: "I. Almeida", Number: "214", Date: "2026-06-14"}, nil, Issued, 0, false},
			{"no number yet", Specimen{Collector: "I. Almeida", Number: "214", Date: "2026-06-14"}, nil, "", 2, false},
			{"no number, another day", Specimen{Collector: "I. Almeida", Number: "214", Date: "2027-06-14"}, nil, "", 0, false},
			{"another collector", Specimen{Collector: "M. Almeida", Number: "214"}, nil, "", 0, false},
			{"number with a hyphen", Specimen{Collector: "T. Brandão", Number: "97-12"}, nil, "", 1, false},
			{"number given since", Specimen{CatalogNumber: "VDOURA-0000008", Collector: "T. Brandão", Number: "97-12"}, nil, Issued, 1, false},
			{"without number", Specimen{Collector: "T. Brandão", Number: "s.n.", Name: "Erica umbellata L."}, nil, "", 1, true},
			{"bare", Specimen{CatalogNumber: "VDOURA-0000002"}, nil, Printed, 1, false},
			{"bare, the next", Specimen{CatalogNumber: "VDOURA-0000003"}, nil, Printed, 1, false},
			{"bare, fresh", Specimen{CatalogNumber: "VDOURA-0000004"}, nil, Issued, 0, false},
			{"void", Specimen{CatalogNumber: "VDOURA-0000005"}, ErrVoid, Void, 0, false},
			{"another specimen's", Specimen{CatalogNumber: "VDOURA-0000006", Collector: "I. Almeida", Number: "6"}, ErrClash, Issued, 0, false},
			{"its own, in other words", Specimen{CatalogNumber: "VDOURA-0000006", Collector: "REIS C", Number: "5"}, nil, Issued, 0, false},
			{"never issued", Specimen{CatalogNumber: "VDOURA-0000010"}, ErrNotIssued, "", 0, false},
			{"foreign", Specimen{CatalogNumber: "ALTAVX 55871"}, nil, "", 0, false},
		} {
			known, err := r.Known(ctx, []Specimen{c.specimen})
			if err != nil {
				t.Fatal(err)
			}
			k := known[0]
			if !errors.Is(k.Err, c.err) || (k.Err != nil) != (c.err != nil) {
				t.Errorf("%s: error %v, want %v", c.name, k.Err, c.err)
			}
			if k.State != c.state || len(k.Earlier) != c.earlier || k.Loose != c.loose {
				t.Errorf("%s: %q, %d labels, loose %v; want %q, %d, %v", c.name, k.State, len(k.Earlier), k.Loose, c.state, c.earlier, c.loose)
			}
		}
	})
}
