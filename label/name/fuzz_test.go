package name

import (
	"reflect"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"cornerslip/label"
)

// holds checks what must be true of every text, with and without columns.
func holds(t *testing.T, text string, c Parts, o Options) {
	t.Helper()
	runs := Runs(text, c, o)
	if s := label.String(runs); s != text {
		t.Fatalf("runs of %q join to %q", text, s)
	}
	if !reflect.DeepEqual(runs, Runs(text, c, o)) {
		t.Fatalf("%q is set in two ways", text)
	}
	for i, r := range runs {
		if r.Text == "" || !r.Exact {
			t.Fatalf("%q: run %d is empty or not exact: %+v", text, i, r)
		}
		if i == len(runs)-1 && r.Glue {
			t.Fatalf("%q: the last run is glued to nothing", text)
		}
		if r.Style&label.Italic == 0 {
			continue
		}
		if i+1 < len(runs) && !runs[i+1].Keep && !r.Glue && runs[i+1].Style == r.Style && !r.Keep {
			t.Fatalf("%q: runs %d and %d could be one", text, i, i+1)
		}
		for _, ch := range r.Text {
			if strings.ContainsRune("()[]{}<>,×+=/|“”\"„«»", ch) {
				t.Fatalf("%q: %q is italic", text, r.Text)
			}
		}
	}
	if strings.ContainsAny(text, "<>") {
		return
	}
	m := Markup(text, o)
	if unmark.Replace(m) != text {
		t.Fatalf("the mark-up %q of %q is not its text", m, text)
	}
	open := false
	for rest := m; rest != ""; {
		switch {
		case strings.HasPrefix(rest, "<i>"):
			if open {
				t.Fatalf("%q: italics open twice", m)
			}
			open, rest = true, rest[3:]
			if r, _ := utf8.DecodeRuneInString(rest); unicode.IsSpace(r) || strings.HasPrefix(rest, "<") {
				t.Fatalf("%q: italics begin with white space or nothing", m)
			}
		case strings.HasPrefix(rest, "</i>"):
			if !open {
				t.Fatalf("%q: italics close twice", m)
			}
			open, rest = false, rest[4:]
		default:
			rest = rest[1:]
		}
	}
	if open {
		t.Fatalf("%q: italics stay open", m)
	}
	if c == (Parts{}) && markRuns(runs) != m {
		t.Fatalf("%q: runs say %q, mark-up %q", text, markRuns(runs), m)
	}
}

func seeds(f *testing.F) {
	for _, file := range []string{"code.txt", "forms.txt"} {
		for _, s := range marked(f, file) {
			f.Add(unmark.Replace(s), "", "", "", false)
		}
	}
	f.Add("Draba bruniifolia var. nana", "Draba", "bruniifolia", "heterocoma", true)
	f.Add("Muscari cf. neglectum / armeniacum", "Muscari", "cf. neglectum / armeniacum", "", false)
	f.Add("quercus robur l. f. alba", "Quercus", "robur", "alba", false)
	f.Add("“‘'Rosa “ ’t s × x (\xff) \ufeff", "Rosa", "’", "(", true)
	f.Add("Carex [(", "Carex", "", "", false)
}

func FuzzRuns(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, text, genus, species, rest string, upright bool) {
		o := Options{UprightFamilies: upright}
		holds(t, text, Parts{}, o)
		c := Parts{Genus: genus, SpecificEpithet: species, InfraspecificEpithet: rest, Authorship: rest}
		holds(t, text, c, o)
		n := Parse(text, c)
		for _, s := range []string{n.Uninomial, n.Genus, n.Epithet, n.Infraspecific, n.Authorship, n.Cultivar, n.Open, n.Qualifier} {
			if !strings.Contains(text, s) {
				t.Fatalf("%q: %q is no part of it", text, s)
			}
		}
	})
}

func FuzzCompose(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, text, genus, species, rest string, _ bool) {
		c := Parts{Genus: genus, SpecificEpithet: species, InfraspecificEpithet: rest, Authorship: genus, Qualifier: rest, Family: species}
		got, problems := Compose(text, c)
		// What was written is there still, in its order.
		at := 0
		for _, r := range strings.TrimRight(text, " ") {
			if Parse(text, c).Blank {
				break
			}
			k := strings.IndexRune(got[at:], r)
			if k < 0 && r != utf8.RuneError {
				t.Fatalf("%q: %q of it is lost in %q", text, r, got)
			}
			if k >= 0 {
				at += k
			}
		}
		// A doubt is printed or spoken of.
		if q := strings.TrimSpace(rest); (strings.HasPrefix(q, "cf.") || strings.HasPrefix(q, "aff.")) && !strings.Contains(got, q[:strings.Index(q, ".")+1]) && len(problems) == 0 {
			t.Fatalf("%q: the doubt %q is lost in %q", text, q, got)
		}
	})
}

func FuzzMentions(f *testing.F) {
	f.Add("with Erica australis and Pterospartum tridentatum", "Erica australis L.", true)
	f.Add("on N. slope, Q. suber (Quercus ilex subsp. ballota)", "Quercus suber", false)
	f.Fuzz(func(t *testing.T, text, known string, taxa bool) {
		o := Options{TaxonField: taxa}
		runs := Mentions(text, []string{known}, o)
		if s := label.String(runs); s != text {
			t.Fatalf("runs of %q join to %q", text, s)
		}
		if !reflect.DeepEqual(runs, Mentions(text, []string{known}, o)) {
			t.Fatalf("%q is set in two ways", text)
		}
	})
}

// TestSpacing holds names to a rule of their own making: white space is no
// part of a name, so more of it changes no italics.
func TestSpacing(t *testing.T) {
	for _, file := range []string{"checks/names-code.tsv", "checks/names-parser.tsv"} {
		for _, r := range readTable(t, file) {
			want := strings.ReplaceAll(r[1], " ", "  ")
			if got := Markup(strings.ReplaceAll(r[0], " ", "  "), Options{}); got != want {
				t.Errorf("got  %s\nwant %s", got, want)
			}
		}
	}
}

func BenchmarkRuns(b *testing.B) {
	var names []string
	for _, r := range records(b) {
		names = append(names, r.text)
	}
	if got := markRuns(Runs(names[0], Parts{}, Options{})); got != "<i>Ballota acetabulosa</i> (L.) Benth." {
		b.Fatal(got)
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		Runs(names[i%len(names)], Parts{}, Options{})
	}
}

func BenchmarkRunsColumns(b *testing.B) {
	rs := records(b)
	if got := markRuns(Runs(rs[0].text, rs[0].parts, Options{})); got != "<i>Ballota acetabulosa</i> (L.) Benth." {
		b.Fatal(got)
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		r := rs[i%len(rs)]
		Runs(r.text, r.parts, Options{})
	}
}
