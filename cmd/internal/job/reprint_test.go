package job

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/accession"
	"cornerslip/label/register"
	"cornerslip/layout"
)

func when(day int) register.At {
	return register.At{When: time.Date(2026, 7, day, 9, 0, 0, 0, time.UTC), By: "C. Reis", Why: "torn"}
}

// book makes a register with the numbers VDOURA-0000001 to n issued.
func book(t testing.TB, n int) *register.Register {
	t.Helper()
	ctx := t.Context()
	r, err := register.Create(ctx, filepath.Join(t.TempDir(), "herbarium.db"), when(1), register.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	if _, err := r.AddSeries(ctx, when(1), pattern(t, "VDOURA-0000000"), 1); err != nil {
		t.Fatal(err)
	}
	if n > 0 {
		if _, err := r.Issue(ctx, when(1), "", n); err != nil {
			t.Fatal(err)
		}
	}
	return r
}

func pattern(t testing.TB, notation string) accession.Pattern {
	t.Helper()
	p, err := accession.ParsePattern(notation)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func in(house string, t testing.TB) *Job {
	t.Helper()
	o := Options{Date: time.Date(2026, 7, 30, 0, 0, 0, 0, time.UTC)}
	if house != "" {
		o.House = filepath.Join(outside.Root(t), "examples", house)
	}
	j, err := Open(o)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// print prints into memory.
func print(t testing.TB, j *Job, tab *Table, q Request) ([]byte, Report, error) {
	t.Helper()
	var out bytes.Buffer
	_, rep, err := j.Print(tab, q, func(label.Finding) error { return nil }, func(pages func(io.Writer) error) error { return pages(&out) })
	return out.Bytes(), rep, err
}

// printed finds the one label that a text means.
func printed(t testing.TB, r *register.Register, text string, kind label.Kind, pick int) *Printed {
	t.Helper()
	found, _, err := FindPrinted(t.Context(), r, text, kind)
	if err != nil {
		t.Fatal(err)
	}
	if len(found) <= pick {
		t.Fatalf("%q: %d labels found, want more than %d", text, len(found), pick)
	}
	if err := found[pick].Load(t.Context(), r); err != nil {
		t.Fatal(err)
	}
	return &found[pick]
}

// exampleTrip copies the example trip into a folder of its own, with every
// number of it issued.
func exampleTrip(t testing.TB) (tab *Table, r *register.Register) {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(outside.Root(t), "examples", "trip.csv"))
	if err != nil {
		t.Fatal(err)
	}
	return written(t, "trip.csv", string(src)), book(t, 5000)
}

// identifications opens the example's table of them, for slips.
func identifications(t testing.TB, kind label.Kind) *Table {
	t.Helper()
	if kind != label.Slip {
		return nil
	}
	tab, release, err := OpenTable(filepath.Join(outside.Root(t), "examples", "identifications.csv"), nil, nil, TableOptions{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(release)
	return tab
}

// Every label of the example trip, in every kind and house, is kept with the
// marks it was printed with, and is found again when the table is gone and
// another house file is in use.
func TestReprintHasTheSameMarks(t *testing.T) {
	for _, house := range []string{"house.toml", "house-captions.toml", "house-bilingual.toml"} {
		t.Run(house, func(t *testing.T) {
			j := in(house, t)
			tab, r := exampleTrip(t)
			for _, kind := range []label.Kind{label.Sheet, label.Packet, label.Barcode, label.Slip} {
				type drawn struct {
					l   SetLabel
					box []byte
				}
				var first []drawn
				q := Request{Kind: kind, Identifications: identifications(t, kind)}
				if err := j.prepare(&q); err != nil {
					t.Fatal(err)
				}
				if _, err := j.checkAndSet(tab, &q, func(label.Finding) error { return nil }, func(_ *Summary, s setRecord) error {
					for i, l := range s.labels {
						first = append(first, drawn{l, s.encoded[i]})
					}
					return nil
				}); err != nil {
					t.Fatal(err)
				}
				q = Request{Kind: kind, Identifications: q.Identifications, Memory: &Memory{Register: r, At: when(2)}}
				if _, rep, err := print(t, j, tab, q); err != nil || rep.Labels != len(first) {
					t.Fatalf("%s: %d labels printed, want %d; %v", kind, rep.Labels, len(first), err)
				}
				other := in("", t)
				held := 0
				for i := range first {
					d := &first[i]
					text := d.l.Ref.Key
					if strings.HasSuffix(text, "s.n.") || strings.HasPrefix(text, "s.coll.") {
						continue // has no number to be found by
					}
					found, _, err := FindPrinted(t.Context(), r, text, label.Kind(d.l.Ref.Kind))
					if err != nil {
						t.Fatal(err)
					}
					want, err := layout.Decode(d.box)
					if err != nil {
						t.Fatal(err)
					}
					if !slices.ContainsFunc(found, func(p Printed) bool {
						if err := p.Load(t.Context(), r); err != nil {
							t.Fatal(err)
						}
						return slices.ContainsFunc(p.Labels, func(k register.Kept) bool {
							got, err := other.kept(&k, false)
							if err != nil {
								t.Fatal(err)
							}
							return reflect.DeepEqual(got, want)
						})
					}) {
						t.Errorf("%s: no label kept has its marks", d.l.Ref)
					}
					held++
				}
				if held == 0 && len(first) > 0 {
					t.Errorf("%s: no label was held against its first printing", kind)
				}
			}
		})
	}
}

const heading = "catalogNumber,recordedBy,recordNumber,eventDate,scientificName,identifiedBy,dateIdentified,country,locality,preparations,duplicatesTo,notesOfTheOffice\n"

// A run of one label and its reprint are the same file, byte for byte, though
// the table is gone: in every kind, and where the words go on over a second
// label.
func TestReprintIsTheSameFile(t *testing.T) {
	long := strings.Repeat("left side of the glacial valley above the forest track, ", 70)
	for _, c := range []struct {
		name, row string
		q         Request
		find      string
	}{
		{"sheet", "VDOURA-0000007,I. Almeida,7,2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,,", Request{Kind: label.Sheet}, "Almeida 7"},
		{"by number", "VDOURA-0000007,I. Almeida,7,2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,,", Request{Kind: label.Sheet}, "vdoura 7"},
		{"by name", "VDOURA-0000007,I. Almeida,7,2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,,", Request{Kind: label.Sheet}, "sal salviif"},
		{"continued", "VDOURA-0000007,I. Almeida,7,2026-06-02,Salix salviifolia Brot.,,,Portugal,\"" + long + "\",,,", Request{Kind: label.Sheet}, "Almeida 7"},
		{"gift", "VDOURA-0000007,I. Almeida,7,2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,PINHEL,", Request{Kind: label.Sheet, Which: []Sort{Gifts}}, "Almeida 7"},
		{"mount", "VDOURA-0000007,I. Almeida,7,2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,PINHEL,", Request{Kind: label.Sheet, On: OnMount}, "Almeida 7"},
		{"box", "VDOURA-0000007,I. Almeida,7,2026-06-02,Pinus pinea L.,,,Portugal,Manteigas,box: cone,,", Request{Kind: label.Sheet}, "Almeida 7"},
		{"packet", "VDOURA-0000007,I. Almeida,7,2026-06-02,Pinus pinea L.,,,Portugal,Manteigas,sheet | packet: seeds,,", Request{Kind: label.Packet}, "Almeida 7"},
		{"barcode", "VDOURA-0000007,I. Almeida,7,2026-06-02,Pinus pinea L.,,,Portugal,Manteigas,,,", Request{Kind: label.Barcode}, "https://id.valdoura.example/VDOURA-0000007"},
		{"slip", "VDOURA-0000007,I. Almeida,7,2026-06-02,Pinus pinea L.,C. Reis,2026-07,Portugal,Manteigas,,,", Request{Kind: label.Slip}, "pinus pinea"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j, r := in("house.toml", t), book(t, 20)
			tab := written(t, "trip.csv", heading+c.row+"\n")
			c.q.Memory = &Memory{Register: r, At: when(2)}
			first, rep, err := print(t, j, tab, c.q)
			if err != nil {
				t.Fatal(err)
			}
			if err := os.Remove(tab.Source().Name()); err != nil {
				t.Fatal(err)
			}
			p := printed(t, r, c.find, "", 0)
			if len(p.Labels) != rep.Labels || (c.name == "continued") != (rep.Labels > 1) {
				t.Fatalf("%d labels kept, %d printed", len(p.Labels), rep.Labels)
			}
			q := Request{On: c.q.On, Memory: &Memory{Register: r, At: when(20)}}
			for _, k := range p.Labels {
				q.Memory.Again = append(q.Memory.Again, k.ID)
			}
			for range 2 {
				var again bytes.Buffer
				if _, err := j.Reprint(q, Reprint{Printed: *p}, func(pages func(io.Writer) error) error { return pages(&again) }); err != nil {
					t.Fatal(err)
				}
				if !bytes.Equal(first, again.Bytes()) {
					t.Errorf("the reprint is another file")
				}
			}
			if k := printed(t, r, c.find, "", 0).Last(); k.Reprinted != 2 {
				t.Errorf("the register tells of %d reprints, want 2", k.Reprinted)
			}
		})
	}
}

// What is printed of a record that was printed before depends on what has
// changed in it.
func TestPrintedBefore(t *testing.T) {
	const row = "VDOURA-0000007,I. Almeida,7,2026-06-02,Salix salviifolia Brot.,I. Almeida,2026,Portugal,Manteigas,,PINHEL,"
	for _, c := range []struct {
		name    string
		now     string
		memory  Memory
		state   register.State
		labels  int // printed now
		again   int
		left    int
		changed []string // the terms that have
		slip    bool
	}{
		{name: "same", now: row, labels: 2, again: 1},
		{name: "same, new ones only", now: row, memory: Memory{NewOnly: true}, left: 1},
		{name: "a column that no label shows", now: row + "call back", labels: 2, again: 1},
		{name: "words", now: strings.Replace(row, "Manteigas", "Seia", 1), changed: []string{"locality"}},
		{name: "date", now: strings.Replace(row, "06-02", "06-03", 1), changed: []string{"eventDate"}},
		{name: "name", now: strings.Replace(row, "salviifolia Brot.", "atrocinerea Brot.", 1), changed: []string{"scientificName"}, slip: true},
		{name: "determiner", now: strings.Replace(row, "I. Almeida,2026,", "C. Reis,2027,", 1), changed: []string{"dateIdentified", "identifiedBy"}, slip: true},
		{name: "name, thrown away", now: strings.Replace(row, "salviifolia Brot.", "atrocinerea Brot.", 1), memory: Memory{Unmounted: true}, labels: 2},
		{name: "name, mounted", now: strings.Replace(row, "salviifolia Brot.", "atrocinerea Brot.", 1), memory: Memory{Unmounted: true}, state: register.Attached,
			changed: []string{"scientificName"}, slip: true},
		{name: "a further duplicate", now: row[:len(row)-1] + " | ALTAVX,", labels: 2, again: 1, changed: []string{"duplicatesTo"}},
		{name: "another specimen", now: strings.Replace(row, "0007,I. Almeida,7", "0008,I. Almeida,8", 1), labels: 2},
		{name: "another number of the gathering", now: strings.Replace(row, "0007,", "0008,", 1), labels: 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			ctx := t.Context()
			j, r := in("house.toml", t), book(t, 20)
			if _, _, err := print(t, j, written(t, "trip.csv", heading+row+"\n"), Request{Kind: label.Sheet, Memory: &Memory{Register: r, At: when(2)}}); err != nil {
				t.Fatal(err)
			}
			if c.state != "" {
				one, err := r.Range(ctx, "VDOURA-0000007", "")
				if err != nil {
					t.Fatal(err)
				}
				if err := r.Mark(ctx, when(3), c.state, one); err != nil {
					t.Fatal(err)
				}
			}
			c.memory.Register, c.memory.At = r, when(4)
			_, rep, err := print(t, j, written(t, "trip.csv", heading+c.now+"\n"), Request{Kind: label.Sheet, Memory: &c.memory})
			if err != nil && !errors.Is(err, ErrNone) || (err != nil) != (c.labels == 0) {
				t.Fatalf("error %v with %d labels", err, rep.Labels)
			}
			if rep.Labels != c.labels || rep.Again != c.again || rep.PrintedBefore != c.left {
				t.Errorf("%d labels, %d records again, %d left out; want %d, %d, %d", rep.Labels, rep.Again, rep.PrintedBefore, c.labels, c.again, c.left)
			}
			var terms []string
			slip := false
			for _, ch := range rep.Changed {
				slip = ch.Slip
				for _, d := range ch.Terms {
					terms = append(terms, d.Term)
				}
			}
			if !slices.Equal(terms, c.changed) || slip != c.slip {
				t.Errorf("changed %q, slip %v; want %q, %v", terms, slip, c.changed, c.slip)
			}
		})
	}
}

// Records without a number are known again only where nothing has changed.
func TestPrintedBeforeWithoutNumber(t *testing.T) {
	const row = ",I. Almeida,s.n.,2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,,"
	j, r := in("", t), book(t, 0)
	for _, c := range []struct {
		row    string
		labels int
	}{{row, 1}, {row, 0}, {strings.Replace(row, "Manteigas", "Seia", 1), 1}} {
		_, rep, err := print(t, j, written(t, "trip.csv", heading+c.row+"\n"), Request{Kind: label.Sheet, Memory: &Memory{Register: r, At: when(2), NewOnly: true}})
		if err != nil && !errors.Is(err, ErrNone) {
			t.Fatal(err)
		}
		if rep.Labels != c.labels {
			t.Errorf("%s: %d labels, want %d", c.row, rep.Labels, c.labels)
		}
	}
}

// A number that was never issued, is void or another specimen's is refused:
// every one is named, nothing is written and nothing is kept.
func TestNumbersThatMayNotBePrinted(t *testing.T) {
	ctx := t.Context()
	j, r := in("house.toml", t), book(t, 3)
	one, err := r.Range(ctx, "VDOURA-0000002", "")
	if err != nil {
		t.Fatal(err)
	}
	if err := r.Mark(ctx, when(2), register.Void, one); err != nil {
		t.Fatal(err)
	}
	if _, err := r.Assign(ctx, when(2), "", []register.Specimen{{CatalogNumber: "VDOURA-0000003", Collector: "C. Reis", Number: "5"}}, false); err != nil {
		t.Fatal(err)
	}
	const same = ",2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,,\n"
	tab := written(t, "trip.csv", heading+"VDOURA-0000001,I. Almeida,1"+same+"VDOURA-0000002,I. Almeida,2"+same+"VDOURA-0000003,I. Almeida,3"+same+"VDOURA-0000004,I. Almeida,4"+same)
	out, rep, err := print(t, j, tab, Request{Kind: label.Sheet, Memory: &Memory{Register: r, At: when(3)}})
	if len(out) > 0 || !errors.Is(err, ErrNumbers) {
		t.Fatalf("%d bytes written, error %v", len(out), err)
	}
	err = errors.Join(rep.Refused...)
	for _, want := range []string{
		":3: I. Almeida 2: VDOURA-0000002 is void",
		":4: I. Almeida 3: the register has VDOURA-0000003 for C. Reis 5",
		":5: I. Almeida 4: VDOURA-0000004 was never issued",
	} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("the error does not say %q:\n%v", want, err)
		}
	}
	if found, _, err := FindPrinted(ctx, r, "Almeida", ""); err != nil || len(found) > 0 {
		t.Errorf("%d labels are kept though none was printed; %v", len(found), err)
	}
	if row, err := r.Number(ctx, "VDOURA-0000001"); err != nil || row.State != register.Issued {
		t.Errorf("VDOURA-0000001 is %s, want issued; %v", row.State, err)
	}
}

// With --except-bad the good records are printed.
func TestNumbersThatMayNotBePrintedExcept(t *testing.T) {
	j, r := in("house.toml", t), book(t, 1)
	const same = ",2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,,\n"
	tab := written(t, "trip.csv", heading+"VDOURA-0000001,I. Almeida,1"+same+"VDOURA-0000002,I. Almeida,2"+same)
	_, rep, err := print(t, j, tab, Request{Kind: label.Sheet, ExceptBad: true, Memory: &Memory{Register: r, At: when(3)}})
	if err != nil || rep.Labels != 1 || len(rep.Refused) != 1 {
		t.Errorf("%d labels, %d refused, %v", rep.Labels, len(rep.Refused), err)
	}
}

// A label whose file could not be written does not count as printed.
func TestNothingIsKeptOfAFailedPrinting(t *testing.T) {
	j, r := in("house.toml", t), book(t, 3)
	tab := written(t, "trip.csv", heading+"VDOURA-0000001,I. Almeida,1,2026-06-02,Salix salviifolia Brot.,,,Portugal,Manteigas,,,\n")
	q := Request{Kind: label.Sheet, Memory: &Memory{Register: r, At: when(3)}}
	full := errors.New("disk full")
	for name, write := range map[string]func(func(io.Writer) error) error{
		"no folder": func(pages func(io.Writer) error) error {
			return WriteFile(filepath.Join(t.TempDir(), "none", "out.pdf"), false, pages)
		},
		"full": func(pages func(io.Writer) error) error { return pages(failing{full}) },
	} {
		if _, _, err := j.Print(tab, q, func(label.Finding) error { return nil }, write); err == nil {
			t.Errorf("%s: no error", name)
		}
		if found, _, err := FindPrinted(t.Context(), r, "Almeida 1", ""); err != nil || len(found) > 0 {
			t.Errorf("%s: %d labels count as printed; %v", name, len(found), err)
		}
	}
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

// The line "reprinted" touches no ink of the label and stays off its edge, on
// every label of the example trip in every house; all else is as it was.
func TestMarkReprinted(t *testing.T) {
	for _, house := range []string{"house.toml", "house-captions.toml", "house-bilingual.toml"} {
		j := in(house, t)
		tab, _ := exampleTrip(t)
		marked, refused := 0, 0
		q := Request{Kind: label.Sheet}
		if err := j.prepare(&q); err != nil {
			t.Fatal(err)
		}
		_, err := j.checkAndSet(tab, &q, func(label.Finding) error { return nil }, func(_ *Summary, s setRecord) error {
			for i := range s.labels {
				before, err := layout.Decode(s.encoded[i])
				if err != nil {
					return err
				}
				b, err := layout.Decode(s.encoded[i])
				if err != nil {
					return err
				}
				switch err := j.markReprinted(b); {
				case errors.Is(err, ErrNoRoom):
					refused++
					continue
				case err != nil:
					return err
				}
				marked++
				n := len(before.Marks)
				if !reflect.DeepEqual(b.Marks[:n], before.Marks) || len(b.Marks) == n {
					t.Errorf("%s: the marks before have changed, or none was added", s.labels[i].Ref)
				}
				top, low := b.Size.H, layout.Length(0)
				for _, m := range b.Marks[n:] {
					if text, ok := m.(layout.Text); ok {
						top = min(top, text.At.Y-text.Size*7/10)
						if text.At.X < 2*layout.MM || text.At.X+text.Width() > b.Size.W-2*layout.MM {
							t.Errorf("%s: the line runs out of the label", s.labels[i].Ref)
						}
					}
				}
				for _, m := range before.Marks {
					switch m := m.(type) {
					case layout.Text:
						low = max(low, m.At.Y)
					case layout.Bars:
						low = max(low, m.Bottom())
					}
				}
				if top < low {
					t.Errorf("%s: the line's top at %s is above the label's lowest line at %s", s.labels[i].Ref, top, low)
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
		if marked == 0 || refused > 0 {
			t.Errorf("%s: %d labels marked, %d without room", house, marked, refused)
		}
	}
}
