package job

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"cornerslip/cmd/outside"
	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/form"
	"cornerslip/layout"
)

// everyKind yields every label of a table in a house: of each kind, slips of
// each sort, and the tag of the whole press.
func everyKind(t *testing.T, j *Job, tableName string, each func(*check.Record, *label.Content, []*layout.Box)) {
	t.Helper()
	tab, release, err := OpenTable(tableName, nil, nil, TableOptions{})
	if err != nil {
		t.Fatal(err)
	}
	defer release()
	set := func(q *Request, r *check.Record, contents []label.Content) {
		measures := j.measures(q)
		for i := range contents {
			boxes, _, err := j.setter.Set(&contents[i], measures(&contents[i]))
			if err != nil {
				t.Fatal(err)
			}
			each(r, &contents[i], boxes)
		}
	}
	requests := map[label.Kind]*Request{}
	options := map[label.Kind]form.Options{}
	for _, k := range []label.Kind{label.Sheet, label.Packet, label.Barcode, label.Slip, label.Tag} {
		requests[k] = &Request{Kind: k}
		if options[k], err = j.formOptions(requests[k]); err != nil {
			t.Fatal(err)
		}
	}
	load := &form.Load{}
	var first *check.Record
	e := check.New(j.checkOptions())
	for row, err := range tab.Rows() {
		if err != nil {
			t.Fatal(err)
		}
		r, _ := e.Row(row)
		if r.Empty() {
			continue
		}
		for k, q := range requests {
			o := options[k]
			if k != label.Slip {
				set(q, r, j.contents(q, &o, r))
				continue
			}
			for kind := form.Determination; kind <= form.TypeSlip; kind++ {
				set(q, r, form.Slips(kind, r, nil, o))
			}
		}
		if first == nil {
			first = r
		}
		load.Add(r)
	}
	set(&Request{Kind: label.Tag, Bundle: &BundleRequest{}}, first, []label.Content{form.Bundle(load, j.press(), options[label.Tag])})
}

var (
	wrongStart = regexp.MustCompile(`^[.,;:)\]!?»”]`)
	wrongSigns = regexp.MustCompile(`\.\.|,,|;;|,\.|;\.|:\.| [.,;]|\( | \)|\(\)|  |: :|[|{}]| / /`)
	looseEnd   = regexp.MustCompile(`[,;:(&]$`)
)

// ownOrder is a house that has most things where the others have not.
const ownOrder = `[herbarium]
name = "Valdoura Field Station Herbarium"
headings = ["Plants of Portugal"]
[label]
head = ["project"]
body = ["status", "collector", "name", "family", "det", "associates", "place", "coords", "habitat", "description", "type", "notes"]
foot = ["date", "team", "number", "symbol", "house"]
run_on = ["coords", "habitat", "notes"]
collectors = "all"
sorted = ["associatedTaxa"]
[name]
family = "own line"
determiner = "right"
[separators]
country = ": "
[words.own]
number = ", no."
[packet]
heading = false
[duplicates]
show = "count"
[press]
stages = ["freezer"]
freezer_days = 3
freezer_celsius = -80
`

// TestNoLooseWords looks for dangling commas, doubled full stops, empty
// captions and lines that start with punctuation, on paper, on every label of
// every kind of the example trip and of 1,534 real records in three houses. A
// sign that stands so in the record's own cell is the record's.
func TestNoLooseWords(t *testing.T) {
	tables := []string{filepath.Join(outside.Root(t), "examples", "trip.csv"), outside.Shared(t, "real/taurus-plants.csv")}
	houses := map[string]string{"own order": filepath.Join(t.TempDir(), "house.toml")}
	if err := os.WriteFile(houses["own order"], []byte(ownOrder), 0o666); err != nil {
		t.Fatal(err)
	}
	for _, h := range []string{"house", "house-captions", "house-bilingual"} {
		houses[h] = filepath.Join(outside.Root(t), "examples", h+".toml")
	}
	for name, house := range houses {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			j, err := Open(Options{House: house, Date: time.Date(2026, 11, 30, 0, 0, 0, 0, time.UTC)})
			if err != nil {
				t.Fatal(err)
			}
			count := map[label.Kind]int{}
			for _, table := range tables {
				everyKind(t, j, table, func(r *check.Record, c *label.Content, boxes []*layout.Box) {
					count[c.Kind]++
					for _, fault := range looseWords(r, c, boxes) {
						t.Errorf("%v: %s", boxes[0].Ref, fault)
					}
				})
			}
			for kind, least := range map[label.Kind]int{label.Sheet: 1534, label.Packet: 20, label.Container: 3, label.Barcode: 20, label.Slip: 5 * 1534, label.Tag: 1534} {
				if count[kind] < least {
					t.Errorf("only %d labels of kind %s", count[kind], kind)
				}
			}
		})
	}
}

func looseWords(r *check.Record, c *label.Content, boxes []*layout.Box) (found []string) {
	say := func(format string, a ...any) { found = append(found, fmt.Sprintf(format, a...)) }
	typed := func(s string) bool { // so somebody wrote it
		for _, f := range r.Terms {
			if strings.Contains(f.Text, s) {
				return true
			}
		}
		return false
	}
	for _, box := range boxes {
		if len(box.Marks) == 0 {
			say("nothing on it")
		}
		for _, line := range layout.Lines(box.Marks) {
			var text strings.Builder
			for _, m := range line {
				text.WriteString(m.S)
			}
			s := strings.TrimRight(text.String(), " ")
			if m := wrongStart.FindString(s); m != "" && !typed(s) {
				say("a line starts with %q: %q", m, s)
			}
			if m := wrongSigns.FindString(s); m != "" && !typed(m) {
				say("%q in %q", m, s)
			}
			if s == "" {
				say("an empty line")
			}
		}
	}
	for _, b := range c.Blocks {
		if b.Caption != nil && (strings.TrimSpace(label.String(b.Caption)) == "" || len(b.Runs) == 0 && b.Role != label.Blank) {
			say("caption %q of %q", label.String(b.Caption), label.String(b.Runs))
		}
		for _, runs := range [][]label.Run{b.Runs, b.Right} {
			s := label.String(runs)
			if m := looseEnd.FindString(s); m != "" && !slices.ContainsFunc(runs, func(x label.Run) bool { return x.Origin.Term != "" && strings.HasSuffix(x.Text, m) }) {
				say("%q ends in %q", s, m)
			}
			if s == "" && len(runs) > 0 {
				say("empty words in %s", b.Role)
			}
		}
	}
	return found
}

// TestLooseWordsAreSeen holds the looking itself against labels that are wrong.
func TestLooseWordsAreSeen(t *testing.T) {
	at := label.Origin{Row: 1, Term: "habitat"}
	cell := func(s string) label.Run { return label.Run{Text: s, Origin: at} }
	j := opened(t)
	r := &check.Record{}
	for _, c := range []struct {
		runs  []label.Run
		fault bool
	}{
		{[]label.Run{cell("Scree"), {Text: "."}}, false},
		{[]label.Run{cell("Scree."), {Text: "."}}, true},
		{[]label.Run{cell("Scree"), {Text: " , with"}}, true},
		{[]label.Run{cell("Scree"), {Text: ","}}, true},
		{[]label.Run{{Text: ". Scree"}}, true},
		{[]label.Run{{Text: "()"}}, true},
		{[]label.Run{cell("Scree,")}, false},
	} {
		content := &label.Content{Kind: label.Sheet, Blocks: []label.Block{{Role: label.Plant, Runs: c.runs}}}
		boxes, _, err := j.setter.Set(content, j.measures(&Request{})(content))
		if err != nil {
			t.Fatal(err)
		}
		if got := looseWords(r, content, boxes); len(got) > 0 != c.fault {
			t.Errorf("%q: %q", label.String(c.runs), got)
		}
	}
	content := &label.Content{Kind: label.Sheet, Blocks: []label.Block{{Role: label.Plant, Runs: []label.Run{cell("Scree")}, Caption: []label.Run{{Text: " "}}}}}
	boxes, _, err := j.setter.Set(content, j.measures(&Request{})(content))
	if err != nil {
		t.Fatal(err)
	}
	if len(looseWords(r, content, boxes)) == 0 {
		t.Error("an empty caption is not seen")
	}
}
