package register

import (
	"errors"
	"reflect"
	"testing"
)

// askedOf are specimens as a table has them.
var askedOf = []Specimen{
	{Collector: "I. Almeida", Number: "214", Date: "2026-06-14", Name: "Cytisus striatus (Hill) Rothm."},
	{Collector: "Almeida, I.", Number: "215", Date: "2026-06-14", Name: "Genista florida L."},
	{Collector: "T. Brandão", Number: "97-12", OccurrenceID: "urn:uuid:0", Name: "Iris boissieri Henriq."},
}

func TestPropose(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		if _, err := r.Assign(t.Context(), registrar(""), "", askedOf[:1], false); err != nil {
			t.Fatal(err)
		}
		all := append(askedOf[:3:3], Specimen{Collector: "I. Almeida"}, Specimen{CatalogNumber: "LUPA 12"})
		got, err := r.Propose(t.Context(), all)
		if err != nil {
			t.Fatal(err)
		}
		if got[0].Number != "VDOURA-0000001" || got[0].Fresh || !got[1].Fresh || got[1].Number != "" || !got[2].Fresh || !errors.Is(got[3].Err, ErrNeedsIdentifier) || !got[4].Foreign {
			t.Errorf("%+v", got)
		}
		if s, _ := r.Series(t.Context()); s[0].Highest != 1 {
			t.Errorf("asking issued numbers up to %d", s[0].Highest)
		}
		// What is proposed is what is done.
		done, err := r.Assign(t.Context(), registrar(""), "", all, true)
		for i := range done {
			if err != nil || done[i].Fresh != got[i].Fresh || done[i].Foreign != got[i].Foreign || (done[i].Err == nil) != (got[i].Err == nil) {
				t.Errorf("%d: %+v, proposed %+v (%v)", i, done[i], got[i], err)
			}
		}
	})
}

func TestCount(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		if _, err := r.AddSeries(t.Context(), registrar(""), pattern(t, "VDB-00000"), 501); err != nil {
			t.Fatal(err)
		}
		issued, err := r.Issue(t.Context(), registrar(""), "VDOURA", 10)
		if err != nil {
			t.Fatal(err)
		}
		issued.Last = 3
		if err := r.Mark(t.Context(), registrar("spoiled"), Void, issued); err != nil {
			t.Fatal(err)
		}
		got, err := r.Count(t.Context())
		want := map[string]map[State]int{"VDOURA": {Issued: 7, Void: 3}, "VDB": {Unknown: 500}}
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%v %v", got, err)
		}
		for name, states := range got { // a slow twin
			twin := map[State]int{}
			for row, err := range r.List(t.Context(), Filter{Series: name}) {
				if err != nil {
					t.Fatal(err)
				}
				twin[row.State] += row.Range.Len()
			}
			if !reflect.DeepEqual(states, twin) {
				t.Errorf("%s: %v, listed %v", name, states, twin)
			}
		}
	})
}

func TestMeant(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		r := p.create(t)
		if _, err := r.Assign(t.Context(), registrar(""), "", askedOf, false); err != nil {
			t.Fatal(err)
		}
		for text, want := range map[string][]int{
			"VDOURA-0000002":                     {2},
			"vdoura 2":                           {2},
			"2":                                  {2},
			"https://example.org/VDOURA-0000003": {3},
			"urn:uuid:0":                         {3},
			"Almeida 214":                        {1},
			"almeida no. 214":                    {1},
			"ALMEIDA":                            {1, 2},
			"brandao 97-12":                      {3},
			"brandao 97 12":                      {3},
			"97/2":                               nil, // a collector's number, not VDOURA-0000002
			"iris boiss":                         {3},
			"Almeida 21":                         nil,
			"Almeida 214 Genista":                nil,
			"LUPA 12":                            nil,
			"VDOURA-0000004":                     nil,
			"-":                                  nil,
		} {
			rows, err := r.Meant(t.Context(), text, 0)
			var got []int
			for _, row := range rows {
				got = append(got, row.Range.First)
			}
			if err != nil || !reflect.DeepEqual(got, want) {
				t.Errorf("%q: %v %v, want %v", text, got, err, want)
			}
		}
		if rows, err := r.Meant(t.Context(), "i", 1); err != nil || len(rows) != 1 {
			t.Errorf("%d rows for a limit of 1 (%v)", len(rows), err)
		}
		if _, err := r.Meant(t.Context(), " ", 0); err == nil {
			t.Error("nothing was asked and no error came")
		}
	})
}

func TestGathering(t *testing.T) {
	same := []Specimen{{Collector: "I. Almeida", Number: "97-12"}, {Collector: "Almeida, I.", Number: "97 12"}}
	if same[0].Gathering() != same[1].Gathering() || same[0].Gathering() == "" {
		t.Errorf("%q and %q", same[0].Gathering(), same[1].Gathering())
	}
	for _, s := range []Specimen{{Collector: "I. Almeida", Number: "s.n."}, {Number: "12"}, {}} {
		if s.Gathering() != "" {
			t.Errorf("%v has the key %q", s, s.Gathering())
		}
	}
}
