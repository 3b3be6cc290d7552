package job

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"testing"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/table"
)

// A planting is a copy of a clean trip in which one fault is put.
type planting struct {
	*trip
	*rand.Rand
	row   int      // from 0
	terms []string // where the fault may be found; set notes what it changes
	rows  []int    // other rows where it may be found as well
	anew  []byte   // the file, where the fault is not in a cell
}

func (p *planting) has(term string) bool { return p.column(term) >= 0 }

func (p *planting) get(term string) string { return p.at(p.row, term) }

func (p *planting) at(row int, term string) string {
	if i := p.column(term); i >= 0 {
		return p.trip.rows[row][i]
	}
	return ""
}

// set changes a cell that is to be found; false if nothing would change.
func (p *planting) set(term, value string) bool {
	i := p.column(term)
	if i < 0 || p.trip.rows[p.row][i] == value {
		return false
	}
	p.trip.rows[p.row][i] = value
	p.terms = append(p.terms, term)
	return true
}

// change is set with a function of what stands there; an empty cell stays.
func (p *planting) change(term string, f func(string) string) bool {
	was := p.get(term)
	return was != "" && p.set(term, f(was))
}

// quietly changes a cell that belongs to the fault but is not where it is said.
func (p *planting) quietly(term, value string) bool {
	i := p.column(term)
	if i >= 0 {
		p.trip.rows[p.row][i] = value
	}
	return i >= 0
}

// planted says what stands in the cells now.
func (p *planting) planted() string {
	var all []string
	for _, term := range p.terms {
		all = append(all, fmt.Sprintf("%s %q", term, p.get(term)))
	}
	return strings.Join(all, ", ")
}

func (p *planting) pick(of ...string) string { return of[p.IntN(len(of))] }

// A plantedFault is one way in which a table goes wrong, and the rule that is to
// find it; where there are several, with "|" between them, one of them is, and the
// first counts.
type plantedFault struct {
	rule, how string
	plant     func(p *planting) bool // false where the row has no room for it
}

func (f plantedFault) first() string { first, _, _ := strings.Cut(f.rule, "|"); return first }

// tally counts what became of the faults of one kind.
type tally struct{ planted, found, elsewhere, missed, besides int }

func (a *tally) add(b tally) {
	a.planted, a.found, a.elsewhere, a.missed, a.besides = a.planted+b.planted, a.found+b.found, a.elsewhere+b.elsewhere, a.missed+b.missed, a.besides+b.besides
}

// checked returns all that is said of a file.
func checked(j *Job, name string, src []byte) ([]label.Finding, error) {
	tab, err := table.Open(table.Bytes(name, src), table.Options{})
	if err != nil {
		return nil, err
	}
	var all []label.Finding
	_, err = j.Check(&Table{Table: tab}, func(f label.Finding) error {
		all = append(all, f)
		return nil
	})
	return all, err
}

// A cellPlace in a table is one that a finding names.
type cellPlace struct {
	row  int
	term string
}

func placesOf(f label.Finding) []cellPlace {
	all := []cellPlace{{f.Row, f.Term}}
	for _, c := range f.Also {
		all = append(all, cellPlace{c.Row, c.Term})
	}
	return all
}

// judge tells what became of one fault. Findings that the clean table had are
// no answer to it.
func (p *planting) judge(rules string, was map[string]bool, fs []label.Finding) (t tally, said []string) {
	t.planted = 1
	right, near := 0, 0
	of := strings.Split(rules, "|")
	for _, f := range fs {
		if was[findingKey(f)] {
			continue
		}
		isRule := slices.Contains(of, f.Rule)
		if f.Severity != label.Note || isRule {
			said = append(said, fmt.Sprintf("%s %d %s %s", f.Rule, f.Row, f.Term, f))
		}
		in, inRow := false, false
		for _, at := range placesOf(f) {
			here := at.row == p.row+1 || slices.Contains(p.rows, at.row-1)
			inRow = inRow || here
			in = in || here && (slices.Contains(p.terms, at.term) || p.terms == nil)
		}
		switch {
		case isRule && in:
			right++
		case (f.Severity != label.Note || isRule) && inRow:
			near++
		}
	}
	switch {
	case right > 0:
		t.found = 1
		t.besides = right - 1 + near
	case near > 0:
		t.elsewhere = 1
	default:
		t.missed = 1
	}
	return t, said
}

// findingKey tells a finding from others: what it counts may change.
func findingKey(f label.Finding) string {
	return fmt.Sprint(f.Rule, f.Row, f.Term, f.Value)
}

// plantings is how often each rule's faults are planted at least, and least how
// often each way is.
const (
	plantings = 21
	least     = 5
)

// floors are the rules of which not every planting can be found, with the share
// in percent that must be, and why.
var floors = map[string]floor{
	"coordinates-sea":  {85, "what lies in the sea may fit exchanged, and islands lie there"},
	"coordinates-sign": {85, "south of the line another country or the sea may be the nearer reading"},
	"date-unreadable":  {90, "what is no date may be a month with a doubt"},
	"name-spelling":    {90, "what is misspelt may be a good epithet, or short"},
	"number-order":     {80, "two figures exchanged may lead beyond the first and last number, or no farther than a day or two"},
}

// usually is the share that must be found of all other rules.
const usually = 95

type floor struct {
	percent int
	why     string
}

// Every fault that a rule is to find is planted alone into clean tables, each
// several times in each of several ways, and must be found by that rule in that
// cell. Of the clean tables nothing is said above a note.
func TestPlantedFaults(t *testing.T) {
	j := benchJob(t, false)
	j.House.Herbarium.Code = "VDOURA"
	var clean []*trip
	said := map[*trip]map[string]bool{}
	for n := range 3 * len(habits) {
		rnd := rand.New(rand.NewPCG(20260514, uint64(n)))
		trip := newTrip(habits[n%len(habits)], rnd, 60+rnd.IntN(25))
		fs, err := checked(j, "trip.csv", trip.bytes())
		if err != nil {
			t.Fatal(err)
		}
		said[trip] = map[string]bool{}
		for _, f := range fs {
			said[trip][findingKey(f)] = true
			if f.Severity != label.Note {
				t.Errorf("%s, clean: %s", habits[n%len(habits)].name, f)
			}
		}
		clean = append(clean, trip)
	}
	byHow, details := make([]tally, len(plantedFaults)), make([][]string, len(plantedFaults))
	ways := map[string]int{}
	for _, f := range plantedFaults {
		ways[f.first()]++
	}
	plantAll(t, func(i int) {
		f := plantedFaults[i]
		var sum tally
		for n, tries := 0, 0; n < max(least, plantings/ways[f.first()]) && tries < 1500; tries++ {
			rnd := rand.New(rand.NewPCG(uint64(i), uint64(tries)))
			from := clean[rnd.IntN(len(clean))]
			p := &planting{trip: from.clone(), Rand: rnd, row: rnd.IntN(len(from.rows))}
			if !f.plant(p) {
				continue
			}
			n++
			src := p.anew
			if src == nil {
				src = p.bytes()
			}
			fs, err := checked(j, "trip.csv", src)
			if err != nil {
				t.Errorf("%s, %s: %v", f.rule, f.how, err)
				continue
			}
			one, said := p.judge(f.rule, said[from], fs)
			sum.add(one)
			if one.found == 0 || one.besides > 0 {
				details[i] = append(details[i], fmt.Sprintf("%s, %s: planted in record %d (%s)\n\t%s", f.rule, f.how, p.row+1, p.planted(), strings.Join(said, "\n\t")))
			}
		}
		byHow[i] = sum
	})
	report(t, byHow)
	if os.Getenv("PLANTED") != "" { // tells of each that was not found alone
		for _, d := range slices.Concat(details...) {
			t.Log(d)
		}
	}
}

// plantAll calls with every fault, some at a time.
func plantAll(t *testing.T, with func(i int)) {
	t.Helper()
	defer debug.SetGCPercent(debug.SetGCPercent(400)) // thousands of small tables come and go
	var wg sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := range next {
				with(i)
			}
		})
	}
	for i := range plantedFaults {
		next <- i
	}
	close(next)
	wg.Wait()
}

// report prints what was found of each rule and way, and holds it against the
// floors.
func report(t *testing.T, byHow []tally) {
	t.Helper()
	byRule := map[string]*tally{}
	for i, f := range plantedFaults {
		if byRule[f.first()] == nil {
			byRule[f.first()] = &tally{}
		}
		byRule[f.first()].add(byHow[i])
	}
	line := "%-34s %-40s %7s %5s %9s %6s %7s"
	t.Logf(line, "rule", "fault", "planted", "found", "elsewhere", "missed", "besides")
	show := func(rule, how string, s tally) {
		t.Logf(line, rule, how, fmt.Sprint(s.planted), fmt.Sprint(s.found), fmt.Sprint(s.elsewhere), fmt.Sprint(s.missed), fmt.Sprint(s.besides))
	}
	for i, f := range plantedFaults {
		if byHow[i].found < byHow[i].planted || byHow[i].besides > 0 || byHow[i].planted == 0 {
			show(f.first(), f.how, byHow[i])
		}
	}
	var sum tally
	for _, rule := range slices.Sorted(maps.Keys(byRule)) {
		s := *byRule[rule]
		sum.add(s)
		show(rule, "", s)
		least := usually
		if f, ok := floors[rule]; ok {
			least = f.percent
		}
		if s.planted < 20 {
			t.Errorf("%s: planted %d times only", rule, s.planted)
		}
		if s.found*100 < least*s.planted {
			t.Errorf("%s: %d of %d found, less than %d %%", rule, s.found, s.planted, least)
		}
	}
	show("all", "", sum)
}

// Each rule that looks at a table has its planting, or a reason for none.
func TestPlantedFaultsCoverRules(t *testing.T) {
	rules, err := benchJob(t, false).Rules()
	if err != nil {
		t.Fatal(err)
	}
	planted := map[string]bool{}
	for _, f := range plantedFaults {
		planted[f.first()] = true
	}
	names := map[string]bool{}
	for _, r := range rules {
		if r.Severity != check.Off {
			names[r.Name] = true
		}
	}
	for _, r := range table.Rules() {
		names[r.Name] = true
	}
	for _, name := range slices.Sorted(maps.Keys(names)) {
		if why, ok := notPlanted[name]; ok == planted[name] {
			t.Errorf("%s: planted %v, %q", name, planted[name], why)
		}
	}
	for _, f := range plantedFaults {
		for _, rule := range strings.Split(f.rule, "|") {
			if !names[rule] {
				t.Errorf("no rule is called %s", rule)
			}
		}
	}
}
