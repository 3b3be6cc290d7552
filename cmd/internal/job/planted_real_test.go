package job

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"cornerslip/cmd/outside"
	"cornerslip/label/table"
)

// realTrip reads records of the real table as a trip, n from the one on.
func realTrip(t *testing.T, from, n int) *trip {
	t.Helper()
	src, err := os.ReadFile(outside.Shared(t, "real/taurus-plants.csv"))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(src)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	tab, err := table.Open(table.Bytes("taurus-plants.csv", src), table.Options{})
	if err != nil {
		t.Fatal(err)
	}
	real := &trip{heading: rows[0], comma: ',', rows: rows[from : from+n]}
	for _, c := range tab.Columns() {
		real.terms = append(real.terms, c.Term)
	}
	stops, people := map[string]int{}, map[string]int{}
	at := func(of map[string]int, key string) int {
		if _, ok := of[key]; !ok {
			of[key] = len(of)
		}
		return of[key]
	}
	for _, r := range real.rows {
		real.stop = append(real.stop, at(stops, r[real.column("locality")]))
		real.person = append(real.person, at(people, r[real.column("recordedBy")]))
	}
	return real
}

// Faults planted into records of somebody's table are found as those in invented
// ones are. PLANTED_REAL plants each so many times instead of once.
func TestPlantedInRealTable(t *testing.T) {
	j := benchJob(t, false)
	j.House.Herbarium.Code = "VDOURA"
	times := 1
	if n, err := strconv.Atoi(os.Getenv("PLANTED_REAL")); err == nil {
		times = n
	}
	var clean []*trip
	said := map[*trip]map[string]bool{}
	for n := range 4 {
		real := realTrip(t, 1+n*380, 150)
		fs, err := checked(j, "trip.csv", real.bytes())
		if err != nil {
			t.Fatal(err)
		}
		said[real] = map[string]bool{}
		for _, f := range fs {
			for _, at := range placesOf(f) {
				said[real][fmt.Sprint(f.Rule, at.row, at.term)] = true
			}
		}
		clean = append(clean, real)
	}
	byHow, details := make([]tally, len(plantedFaults)), make([][]string, len(plantedFaults))
	plantAll(t, func(i int) {
		f := plantedFaults[i]
		for n, tries := 0, 0; n < times && tries < 60; tries++ {
			rnd := rand.New(rand.NewPCG(uint64(i)+7, uint64(tries)))
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
			had := false // the fault was there before
			for _, term := range p.terms {
				had = had || said[from][fmt.Sprint(f.first(), p.row+1, term)]
			}
			if had {
				continue
			}
			one, what := p.judge(f.rule, nil, fs)
			byHow[i].add(one)
			if one.found == 0 {
				details[i] = append(details[i], fmt.Sprintf("%s, %s: record %d (%s) %v", f.rule, f.how, p.row+1, p.planted(), what[:min(3, len(what))]))
			}
		}
	})
	var sum tally
	for i := range byHow {
		sum.add(byHow[i])
	}
	t.Logf("%d planted, %d found, %d elsewhere, %d missed", sum.planted, sum.found, sum.elsewhere, sum.missed)
	for _, d := range details {
		for _, l := range d {
			t.Log(l)
		}
	}
	if sum.planted < 100*times || sum.found*100 < 90*sum.planted {
		t.Errorf("%d of %d found", sum.found, sum.planted)
	}
}
