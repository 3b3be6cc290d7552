package para

import (
	"bufio"
	"bytes"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"cornerslip/cmd/outside"
)

// breakTest reads a LineBreakTest.txt of the Unicode Character Database: each
// line a text, and whether it may be broken before each code point.
func breakTest(t *testing.T, path string) (texts []string, breaks [][]int, rules []string) {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for sc := bufio.NewScanner(f); sc.Scan(); {
		data, comment, _ := strings.Cut(sc.Text(), "#")
		fields := strings.Fields(data)
		if len(fields) == 0 {
			continue
		}
		var text strings.Builder
		var at []int
		for i, f := range fields {
			switch f {
			case "÷":
				if i < len(fields)-1 {
					at = append(at, text.Len())
				}
			case "×":
			default:
				n, err := strconv.ParseUint(f, 16, 32)
				if err != nil {
					t.Fatalf("%s: %q: %v", path, f, err)
				}
				text.WriteRune(rune(n))
			}
		}
		texts, breaks, rules = append(texts, text.String()), append(breaks, at), append(rules, comment)
	}
	return texts, breaks, rules
}

func offsets(text string) []int {
	var at []int
	for _, o := range Opportunities(nil, text) {
		at = append(at, o.Off)
	}
	return at
}

// TestUnicode17 holds the opportunities against the test file of Unicode 17,
// which the segmenter's module carries.
func TestUnicode17(t *testing.T) {
	path := filepath.Join(outside.Module(t, "github.com/go-text/typesetting"), "segmenter", "test", "LineBreakTest.txt")
	texts, breaks, rules := breakTest(t, path)
	if len(texts) < 19_000 {
		t.Fatalf("only %d cases in %s", len(texts), path)
	}
	for i, text := range texts {
		if got := offsets(text); !slices.Equal(got, breaks[i]) {
			t.Errorf("%+q: breaks at %v, want %v: %s", text, got, breaks[i], rules[i])
		}
	}
}

// FuzzOpportunities holds the way by stretches against the segmenter's answer
// for the whole text.
func FuzzOpportunities(f *testing.F) {
	for _, text := range []string{
		"Portugal: Beira Alta, 5 km a sul de Folgosinho", "40°23′41″ N 7°32′18″ W (WGS 84, ±30 m), 1 240 m",
		"a.(b [c] (.5) d( e", "« a » \"b\" well-drained -5 - x/y", "12.vi.1987 alt. e\u0301 植 物 a ", "  a  ) b\n c\u00a0d \u2060e", "a ) b ( c . d",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s := new(scanner)
		got, want := s.opportunities(nil, text), s.ask(nil, text, 0)
		if !slices.Equal(got, want) {
			t.Fatalf("%+q: got %v, want %v", text, got, want)
		}
	})
}

// TestStretches holds the two against each other on random mixtures of what
// the way by stretches tells apart.
func TestStretches(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 17))
	bits := []string{
		"a", "É", "ž", "7", ".", ",", ":", ";", "(", "[", ")", "]", " ", " ", " ", "  ", "-", "–", "—", "/", "'", "\"", "«", "»", "“", "”",
		"!", "?", "%", "°", "′", "×", "±", "&", "\u0301", "\u00a0", "\u202f", "\u2060", "\u200b", "\u00ad", "植", "。", "「", "か", "\n", "\t", "№", "$", "\u2026", "א", "🇵", "{", "}",
	}
	for range 200_000 {
		var b strings.Builder
		for range 1 + r.IntN(9) {
			b.WriteString(bits[r.IntN(len(bits))])
		}
		s := new(scanner)
		text := b.String()
		if got, want := s.opportunities(nil, text), s.ask(nil, text, 0); !slices.Equal(got, want) {
			t.Fatalf("%+q: got %v, want %v", text, got, want)
		}
	}
}

// changed are the rules of UAX #14 that differ between Unicode 15.0 and 17,
// and the texts of 15.0's test file that they touch.
var changed = []struct {
	rule  string
	texts *regexp.Regexp
}{
	{"LB15a and LB15b (15.1): spaces beside quotation marks, by which side the mark opens; LB15 of 15.0 is gone", regexp.MustCompile(`["«»]`)},
	{"LB15c (16.0): a break before a decimal mark that follows a space", regexp.MustCompile(` \.\d`)},
	{"LB20a (16.0): a hyphen that opens a word stays with it", regexp.MustCompile(`^-\x{308}?\D`)},
	{"LB21a (16.0): a break after the hyphen only if no Hebrew letter follows", regexp.MustCompile(`^\x{5d0}-\x{5d0}$`)},
	{"LB25 (16.0): no break between a full stop or comma and a figure", regexp.MustCompile(`[.,]\x{308}?\d`)},
}

// TestUnicode15 holds the opportunities against the test file of Unicode 15.0,
// which Debian packages. Where they differ, a rule has changed since.
func TestUnicode15(t *testing.T) {
	path := outside.File(t, "/usr/share/unicode/auxiliary/LineBreakTest.txt")
	head, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	texts, breaks, rules := breakTest(t, path)
	if len(texts) < 7_000 {
		t.Fatalf("only %d cases in %s", len(texts), path)
	}
	differ := make([]int, len(changed))
	for i, text := range texts {
		got := offsets(text)
		if slices.Equal(got, breaks[i]) {
			continue
		}
		k := slices.IndexFunc(changed, func(c struct {
			rule  string
			texts *regexp.Regexp
		}) bool {
			return c.texts.MatchString(text)
		})
		if k < 0 {
			t.Errorf("%+q: breaks at %v, want %v: %s", text, got, breaks[i], rules[i])
			continue
		}
		differ[k]++
	}
	sum := 0
	for k, n := range differ {
		t.Logf("%d differ by %s", n, changed[k].rule)
		sum += n
		if n == 0 && bytes.HasPrefix(head, []byte("# LineBreakTest-15.0.")) {
			t.Errorf("nothing differs by %s: the explanation is out of date", changed[k].rule)
		}
	}
	if sum > len(texts)/200 {
		t.Errorf("%d of %d cases differ", sum, len(texts))
	}
}

func TestSegments(t *testing.T) {
	show := func(segs []Segment) string {
		var b strings.Builder
		for _, s := range segs {
			b.WriteString("[" + s.Text + "]")
			if s.Soft {
				b.WriteString("-")
			}
			b.WriteString(s.Space)
			if s.Break == Forced {
				b.WriteString("!")
			}
		}
		return b.String()
	}
	for _, c := range []struct {
		text string
		keep []Span
		want string
	}{
		{"", nil, ""},
		{"xisto", nil, "[xisto]!"},
		{"solo de xisto", nil, "[solo] [de] [xisto]!"},
		{"a  b ", nil, "[a]  [b] !"},
		{"5 km a sul", []Span{{0, 4}}, "[5 km] [a] [sul]!"},
		{"I. M. Almeida 214", []Span{{0, 13}, {6, 17}}, "[I. M. Almeida 214]!"},
		{"a b c", []Span{{0, 2}}, "[a] [b] [c]!"}, // the span ends with the space
		{"a b c", []Span{{1, 3}}, "[a] [b] [c]!"}, // it starts with it
		{"a b c", []Span{{2, 3}}, "[a] [b] [c]!"},
		{"a b c", []Span{{0, 3}}, "[a b] [c]!"},
		{"a b", []Span{{0, 1}, {9, 4}, {-1, 99}}, "[a b]!"},
		{"12.vi.1987", nil, "[12.vi.1987]!"},
		{"5\u00a0km\u202fE", nil, "[5\u00a0km\u202fE]!"},
		{"um\nlugar", nil, "[um]\n![lugar]!"},
		{"um\nlugar", []Span{{0, 8}}, "[um]\n![lugar]!"},
		{"mont\u00adanha", nil, "[mont\u00ad]-[anha]!"},
		{"a\u200bb", nil, "[a]\u200b[b]!"},
		{"well-drained", nil, "[well-][drained]!"},
		{"植物学", nil, "[植][物][学]!"},
		{"植物学", []Span{{0, 9}}, "[植物学]!"},
		{"\u3000植", nil, "[]\u3000[植]!"},
		{"a\xffb \xff", nil, "[a\xffb] [\xff]!"},
	} {
		if got := show(Segments(c.text, c.keep)); got != c.want {
			t.Errorf("%q keep %v: got %q, want %q", c.text, c.keep, got, c.want)
		}
	}
}

func TestSensible(t *testing.T) {
	type cut struct {
		before  string
		penalty int
		hyphen  bool
	}
	for _, c := range []struct {
		text string
		want []cut // the places that must be there; "" lists nothing
	}{
		{"https://herbarium.example.org/id/VDOURA-0001234", []cut{
			{"https:", besideOrphan, false}, {"https://", afterSlash, false}, {"https://herbarium.", afterMark, false},
			{"https://herbarium.example.org/", afterSlash, false}, {"https://herbarium.example.org/id/VDOURA-", afterMark, false},
			{"https://herb", insideWord, false},
		}},
		{"Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoch", []cut{
			{"L", besideOrphan, true}, {"Ll", insideWord, true}, {"Llanfairpwllgwyngyllgogerychwyrndrobwllllantysiliogogogoc", besideOrphan, true},
		}},
		{"0123456789", []cut{{"01234", insideWord, false}}},
		{"(xisto)", []cut{{"(", besideOrphan, false}, {"(xisto", besideOrphan, false}, {"(xis", insideWord, true}}},
		{"12.5", []cut{{"12.", afterMark, false}}},
		{"x\u0302y\u0304ab", []cut{{"x\u0302", besideOrphan, true}, {"x\u0302y\u0304", insideWord, true}}},
		{"植物", []cut{{"植", besideOrphan, false}}},
		{"a", nil},
		{"", nil},
	} {
		got := map[string]Place{}
		for _, p := range Sensible(c.text) {
			got[c.text[:p.Off]] = p
		}
		for _, w := range c.want {
			p, ok := got[w.before]
			if !ok || p.Penalty != w.penalty || p.Hyphen != w.hyphen {
				t.Errorf("%q after %q: got %+v %v, want %+v", c.text, w.before, p, ok, w)
			}
		}
		if c.want == nil && len(got) > 0 {
			t.Errorf("%q: got %v, want no place", c.text, got)
		}
		for before := range got {
			if r, _ := utf8.DecodeRuneInString(c.text[len(before):]); r == '\u0302' || r == '\u0304' {
				t.Errorf("%q: cut between a letter and its accent", c.text)
			}
		}
	}
}

// FuzzSegments checks that nothing of a text is lost or doubled whatever it
// holds, and that kept spans are.
func FuzzSegments(f *testing.F) {
	f.Add("Portugal: Beira Alta, 5 km a sul de Folgosinho", 16, 28)
	f.Add("\xff\u00ad\u200b\n 植物 https://a.b/c-d", 0, 99)
	f.Fuzz(func(t *testing.T, text string, a, b int) {
		at := 0
		segs := Segments(text, []Span{{a, b}})
		for i, s := range segs {
			if s.Off != at || text[at:at+len(s.Text)] != s.Text {
				t.Fatalf("%q: segment %d %+v does not start at %d", text, i, s, at)
			}
			at += len(s.Text)
			if !strings.HasPrefix(text[at:], s.Space) || strings.TrimFunc(s.Space, hangs) != "" {
				t.Fatalf("%q: segment %d %+v has a wrong space", text, i, s)
			}
			at += len(s.Space)
			if s.Break == Allowed && a < at && at < b && strings.TrimFunc(text[max(a, 0):at], hangs) != "" {
				t.Fatalf("%q: broken at %d inside %d to %d", text, at, a, b)
			}
		}
		if at != len(text) {
			t.Fatalf("%q: %d of %d bytes", text, at, len(text))
		}
		if n := len(segs); n > 0 && segs[n-1].Break != Forced {
			t.Fatalf("%q: the last segment's break is not forced", text)
		}
		last := 0
		for _, p := range Sensible(text) {
			if p.Off <= last || p.Off >= len(text) || p.Penalty <= 0 || p.Penalty > MaxPenalty {
				t.Fatalf("%q: %+v after %d", text, p, last)
			}
			if utf8.ValidString(text) && !utf8.RuneStart(text[p.Off]) {
				t.Fatalf("%q: %+v cuts a character", text, p)
			}
			last = p.Off
		}
	})
}

func BenchmarkSegments(b *testing.B) {
	const text = "Portugal: Beira Alta: Guarda, Manteigas, vale do Zêzere, 2,3 km a sul da vila, margem esquerda do ribeiro, em encosta xistosa. " +
		"Carvalhal aberto com Cytisus e Erica, solo granítico. Árvore de 8 m; folhas pubescentes; flores amarelas, frequentes (n.v. codeço). " +
		"40°23′41″ N 7°32′18″ W (WGS 84, ±30 m), 1 240 m, Herbário VDOURA"
	dst := AppendSegments(nil, text, nil)
	if len(dst) < 50 {
		b.Fatalf("%d segments", len(dst))
	}
	b.ReportAllocs()
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		dst = AppendSegments(dst[:0], text, nil)
	}
}
