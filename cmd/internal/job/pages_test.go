package job

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/impose"
)

type fataler interface {
	Helper()
	Fatal(...any)
	Fatalf(string, ...any)
}

// pagesOf returns the pages of a print as they go to the printer, and the
// labels in the order in which they were set.
func pagesOf(t fataler, j *Job, tab *Table, q Request) ([]layout.Page, []SetLabel, Report) {
	t.Helper()
	rep := newReport()
	if err := j.prepare(&q); err != nil {
		t.Fatal(err)
	}
	r, err := newRun()
	if err != nil {
		t.Fatal(err)
	}
	defer r.close()
	var all []SetLabel
	_, err = j.checkAndSet(tab, &q, func(label.Finding) error { return nil }, func(_ *Summary, s setRecord) error {
		for sort, n := range s.leftOut {
			rep.LeftOut[sort] += n
		}
		for i, l := range s.labels {
			all = append(all, l)
			rep.count(l)
			if err := r.put(&l, s.encoded[i]); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := r.done(); err != nil {
		t.Fatal(err)
	}
	rep.title = q.title(tab.Source().Name())
	pages, err := j.impose(&q, r, &rep)
	if err != nil {
		t.Fatal(err)
	}
	printed, _, err := j.forPrinter(pages, rep.PaperSize)
	if err != nil {
		t.Fatal(err)
	}
	var out []layout.Page
	for p, err := range printed {
		if err != nil {
			t.Fatal(err)
		}
		if err := p.Check(); err != nil {
			t.Fatal(err)
		}
		out = append(out, p)
	}
	return out, all, rep
}

// labelsOn returns the labels of a page, without footers and legends.
func labelsOn(p layout.Page) []layout.Ref {
	var out []layout.Ref
	for _, b := range p.Boxes {
		if b.Box.Ref.Row > 0 {
			out = append(out, b.Box.Ref)
		}
	}
	return out
}

// trips draws tables of a few records with parts, copies and duplicates.
func trips() *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		var b strings.Builder
		b.WriteString("catalogNumber,recordedBy,recordNumber,eventDate,scientificName,country,locality,preparations,copies,duplicatesTo\n")
		for i := range rapid.IntRange(1, 14).Draw(t, "records") {
			parts := rapid.SampledFrom([]string{"", "sheet | sheet", "sheet | packet: seeds", "packet", "sheet | box: cone", "sheet | jar"}).Draw(t, "parts")
			to := rapid.SampledFrom([]string{"", "PINHEL", "PINHEL | ALTAVX", "SOUTELO"}).Draw(t, "to")
			long := strings.Repeat("left side of the glacial valley above the forest track, ", rapid.SampledFrom([]int{0, 1, 3, 12, 45, 70}).Draw(t, "long"))
			fmt.Fprintf(&b, "VDOURA-%07d,I. Almeida,%d,2026-06-02,Salix salviifolia Brot.,Portugal,\"%s\",%s,%d,%s\n",
				i+1, i+1, strings.TrimSuffix(long, ", "), parts, rapid.IntRange(1, 2).Draw(t, "copies"), to)
		}
		return b.String()
	})
}

// Whatever is asked for, each label is there exactly once, nothing is printed
// where the printer does not print, and no footer lies on a label.
func TestPagesHoldEveryLabel(t *testing.T) {
	j := opened(t)
	tables := map[string]*Table{}
	rapid.Check(t, func(r *rapid.T) {
		text := trips().Draw(r, "trip")
		tab := tables[text]
		if tab == nil {
			tab = written(t, "trip.csv", text)
			tables[text] = tab
		}
		q := Request{
			Kind:          rapid.SampledFrom([]label.Kind{label.Sheet, label.Packet, label.Barcode}).Draw(r, "kind"),
			Paper:         rapid.SampledFrom([]string{"", "A3", "Letter", "300x450"}).Draw(r, "paper"),
			Order:         rapid.SampledFrom([]string{"", "stack"}).Draw(r, "order"),
			ByDestination: rapid.Bool().Draw(r, "by destination"),
		}
		if g := rapid.SampledFrom([]float64{0, 0, 4}).Draw(r, "gutter"); g > 0 {
			q.Gutter = &g
		}
		if q.Kind == label.Sheet && rapid.Bool().Draw(r, "mount") {
			q = Request{Kind: label.Sheet, On: OnMount}
		}
		j.House.Printer.Feed = rapid.SampledFrom([]string{"any", "short edge", "long edge"}).Draw(r, "feed")
		pages, all, rep := pagesOf(r, j, tab, q)
		if len(pages) != rep.Papers {
			r.Fatalf("%d pages, %d papers", len(pages), rep.Papers)
		}
		want := map[layout.Ref]int{}
		for _, l := range all {
			want[l.Ref]++
		}
		for _, p := range pages {
			goes := ""
			for k, ref := range labelsOn(p) {
				if want[ref]--; want[ref] < 0 {
					r.Fatalf("%v is there too often", ref)
				}
				if k > 0 && q.ByDestination && ref.For != goes {
					r.Fatalf("labels for %q and %q share a paper", ref.For, goes)
				}
				goes = ref.For
			}
			// Descenders count a third of the em here, more than they reach.
			if ink := impose.Ink(p); !(layout.Rect{Size: p.Size}).Inset(4*layout.MM - layout.Pt).Contains(ink) {
				r.Fatalf("ink at %v of a page of %v", ink, p.Size)
			}
			if f := j.House.Printer.Feed; f == "short edge" && p.Size.W > p.Size.H || f == "long edge" && p.Size.H > p.Size.W {
				r.Fatalf("a page of %v for a printer that takes the %s first", p.Size, f)
			}
			footersApart(r, p)
		}
		for ref, n := range want {
			if n != 0 {
				r.Fatalf("%v is missing", ref)
			}
		}
	})
}

func footersApart(t fataler, p layout.Page) {
	t.Helper()
	rect := func(b layout.Placed) layout.Rect {
		s := b.Box.Size
		if b.Turn%2 == 1 {
			s = s.Turned()
		}
		return layout.Rect{At: b.At, Size: s}
	}
	for i, a := range p.Boxes {
		if a.Box.Size == p.Size || a.Box.Size == p.Size.Turned() {
			continue // the lines of a turned page
		}
		for _, b := range p.Boxes[i+1:] {
			if b.Box.Size != p.Size && b.Box.Size != p.Size.Turned() && rect(a).Overlaps(rect(b)) {
				t.Fatalf("%v and %v overlap", a.Box.Ref, b.Box.Ref)
			}
		}
	}
}

const sharedTrip = `recordedBy,recordNumber,eventDate,scientificName,country,locality,preparations,copies,duplicatesTo,mount
I. Almeida,1,2026-06-02,Salix salviifolia Brot.,Portugal,Manteigas,,2,PINHEL,a
I. Almeida,2,2026-06-02,Salix salviifolia Brot.,Portugal,Manteigas,sheet | sheet | jar,,PINHEL | ALTAVX,
I. Almeida,3,2026-06-02,Salix salviifolia Brot.,Portugal,"LONG",,,,a
I. Almeida,4,2026-06-02,Salix salviifolia Brot.,Portugal,Manteigas,,,,b
I. Almeida,5,2026-06-02,Salix salviifolia Brot.,Portugal,Manteigas,,,,a
`

// On mounts stand our own sheets alone, what goes on above its beginning, and
// gatherings that share a sheet on the one of the first.
func TestMounts(t *testing.T) {
	j := opened(t)
	text := strings.Replace(sharedTrip, "LONG", strings.Repeat("left side of the glacial valley above the forest track, ", 70), 1)
	pages, _, rep := pagesOf(t, j, written(t, "trip.csv", text), Request{Kind: label.Sheet, On: OnMount})
	var got []string
	for _, p := range pages {
		var on []string
		for _, r := range labelsOn(p) {
			on = append(on, fmt.Sprintf("%s %d/%d", strings.TrimPrefix(r.Key, "I. Almeida "), r.Label, r.Of))
		}
		got = append(got, strings.Join(on, ", "))
	}
	want := []string{"1 1/1, 3 1/2, 3 2/2, 5 1/1", "2 1/1", "2 1/1", "4 1/1"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
	if rep.Shared != 1 || rep.LeftOut[Gifts] != 3 || rep.LeftOut[Boxes] != 1 || rep.LeftOut[Copies] != 1 || rep.LeftOut[Sheets] != 0 {
		t.Errorf("shared %d, left out %v", rep.Shared, rep.LeftOut)
	}
	boxes := pages[0].Boxes
	if boxes[2].At.X != boxes[1].At.X || boxes[2].At.Y+boxes[2].Box.Size.H+5*layout.MM != boxes[1].At.Y {
		t.Errorf("the continuation lies at %v, its beginning at %v", boxes[2].At, boxes[1].At)
	}
	for i, letter := range []string{"A", "B", "", "C"} {
		if letter == "" {
			continue
		}
		found := false
		for _, m := range boxes[i].Box.Marks {
			if w, ok := m.(layout.Text); ok && w.Style == layout.Bold && strings.HasPrefix(w.S, letter) && len(w.S) <= 3 {
				found = true
			}
		}
		if !found {
			t.Errorf("label %d is not lettered %s", i+1, letter)
		}
	}
}

// The sorts of labels are a partition: printed one by one they are what is
// printed in all.
func TestSorts(t *testing.T) {
	j := opened(t)
	rapid.Check(t, func(r *rapid.T) {
		tab := written(t, "trip.csv", trips().Draw(r, "trip"))
		kind := rapid.SampledFrom([]label.Kind{label.Sheet, label.Packet}).Draw(r, "kind")
		count := func(which []Sort) map[layout.Ref]int {
			q := Request{Kind: kind, Which: which}
			if err := j.prepare(&q); err != nil {
				r.Fatal(err)
			}
			n := map[layout.Ref]int{}
			if _, err := j.checkAndSet(tab, &q, func(label.Finding) error { return nil }, func(_ *Summary, s setRecord) error {
				for _, l := range s.labels {
					n[l.Ref]++
				}
				return nil
			}); err != nil {
				r.Fatal(err)
			}
			return n
		}
		all, sum := count(nil), map[layout.Ref]int{}
		for _, s := range sorts(kind) {
			for ref, n := range count([]Sort{s}) {
				sum[ref] += n
				if (ref.For != "") != (s == Gifts) {
					r.Fatalf("%v is among the %s", ref, s)
				}
			}
		}
		if len(all) != len(sum) {
			r.Fatalf("%d labels, by sorts %d", len(all), len(sum))
		}
		for ref, n := range all {
			if sum[ref] != n {
				r.Fatalf("%v: %d times, by sorts %d", ref, n, sum[ref])
			}
		}
	})
}

// Folded packets have each label upside down on the flap, and full pages of
// small blanks come out of the same plan.
func TestBlanksHoldEveryLabel(t *testing.T) {
	j := opened(t)
	text := "recordedBy,recordNumber,eventDate,scientificName,country,preparations\n"
	for i := range 9 {
		text += fmt.Sprintf("I. Almeida,%d,2026-06-02,Salix salviifolia Brot.,Portugal,sheet | packet: seeds\n", i+1)
	}
	tab := written(t, "trip.csv", text)
	for _, blank := range []string{"letter-quarter", "letter-half", "A6", "A5", "A4", "square", "150x120"} {
		pages, all, rep := pagesOf(t, j, tab, Request{Kind: label.Packet, Blank: blank})
		n := 0
		for _, p := range pages {
			n += len(labelsOn(p))
			if ink := impose.Ink(p); !(layout.Rect{Size: p.Size}).Inset(4*layout.MM - layout.Pt).Contains(ink) {
				t.Errorf("%s: ink at %v", blank, ink)
			}
		}
		if n != 9 || len(all) != 9 || rep.Face == (layout.Size{}) || len(rep.Continued) > 0 {
			t.Errorf("%s: %d labels of %d, face %v", blank, n, len(all), rep.Face)
		}
	}
}

// The cutting list of a run names each paper once and as small pages says as
// much as in words.
func TestCutListOfRun(t *testing.T) {
	j := opened(t)
	var text strings.Builder
	text.WriteString("recordedBy,recordNumber,eventDate,scientificName,country\n")
	for i := range 30 {
		fmt.Fprintf(&text, "I. Almeida,%d,2026-06-02,Salix salviifolia Brot.,Portugal\n", i+1)
	}
	var rep Report
	_, rep, err := j.Print(written(t, "trip.csv", text.String()), Request{Kind: label.Sheet}, func(label.Finding) error { return nil },
		func(write func(io.Writer) error) error { return write(io.Discard) })
	if err != nil {
		t.Fatal(err)
	}
	list := rep.CutList()
	for _, want := range []string{"papers 1 to 3 of 4, cut alike:", "paper 4 of 4:", "1: down, 105 mm from the left edge", "both strips at once"} {
		if !strings.Contains(list, want) {
			t.Errorf("the list lacks %q:\n%s", want, list)
		}
	}
	var out bytes.Buffer
	if err := j.WriteCuts(&out, &rep); err != nil || bytes.Count(out.Bytes(), []byte("/Type /Page ")) != 2 {
		t.Errorf("%v, %d pages", err, bytes.Count(out.Bytes(), []byte("/Type /Page ")))
	}
}

func TestFooterSaysTheRun(t *testing.T) {
	j := opened(t)
	tab := written(t, "trip.csv", "recordedBy,recordNumber,eventDate,scientificName,country\nI. Almeida,1,2026-06-02,Salix salviifolia Brot.,Portugal\n")
	pages, _, _ := pagesOf(t, j, tab, Request{Kind: label.Sheet})
	foot := pages[0].Boxes[len(pages[0].Boxes)-1].Box
	var text strings.Builder
	strokes := 0
	for _, m := range foot.Marks {
		switch m := m.(type) {
		case layout.Text:
			text.WriteString(m.S)
		case layout.Stroke:
			strokes++
		}
	}
	for _, want := range []string{"Sheet labels of trip.csv", "2027-06-01", "page 1 of 1", "print at 100 %"} {
		if !strings.Contains(text.String(), want) {
			t.Errorf("the footer says %q, without %q", text.String(), want)
		}
	}
	if strokes != 12 {
		t.Errorf("a rule of %d lines", strokes)
	}
	j.House.Paper.Footer = false
	pages, _, _ = pagesOf(t, j, tab, Request{Kind: label.Sheet})
	if n := len(pages[0].Boxes); n != 1 {
		t.Errorf("%d boxes without a footer", n)
	}
}

func TestPrinterWarnings(t *testing.T) {
	j := opened(t)
	j.House.Printer.Papers = []string{"A4", "11.5x16.5in"}
	for size, want := range map[string]string{
		"A4": "", "A4 landscape": "", "292.1x419.1": "",
		"A3": "the pages are A3, and the printer takes A4, 11.5x16.5in by the house file: it may shrink or cut them",
	} {
		s, err := impose.ParsePaper(size)
		if err != nil {
			t.Fatal(err)
		}
		got, err := j.cannotTake(s)
		if err != nil || strings.Join(got, "") != want {
			t.Errorf("%s: %q, %v, want %q", size, got, err, want)
		}
	}
}
