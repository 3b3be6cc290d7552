package job

import (
	"cmp"
	"fmt"
	"hash/maphash"
	"slices"

	"cornerslip/label/check"
)

// A slipSet is the identifications of one record, in the order of their dates.
type slipSet struct {
	sheet int   // the record; -1 where the first identification says all itself
	row   int   // of the record, else of that identification
	ids   []int // of slipCheck.ids; the first of them in the table is first
	first int
}

// ownSpecimen is what rows have in common that are of one specimen, where no
// record says so.
func ownSpecimen(r *check.Record) string {
	switch catalogue := r.Text("catalogNumber"); {
	case catalogue != "":
		return "c" + catalogue
	case r.Number != "":
		return "k" + fold(r.Collector) + "\x00" + plainNumber(r.Number)
	}
	return "r" + fmt.Sprint(r.Row) // nothing tells whether another row is of the same
}

// dayOf is the first day of an identification, in an order of numbers.
func dayOf(r *check.Record) int32 {
	d := r.Identified.Start()
	return int32(d.Year*10000 + d.Month*100 + d.Day)
}

// said are the texts that a slip says.
func (id *identification) said() [4]string {
	return [4]string{id.Name, id.Text("identifiedBy"), id.Text("dateIdentified"), id.Text("identificationRemarks")}
}

var digestSeed = maphash.MakeSeed()

// digest is equal for identifications that say the same, and hardly ever for
// others.
func (c *slipCheck) digest(id *identification) uint64 {
	return maphash.Comparable(digestSeed, id.said())
}

// sets groups the good identifications by record: in the order of the records,
// and each group by date. What has no date comes last, in the order of the
// rows.
func (c *slipCheck) sets() ([]slipSet, error) {
	var all []slipSet
	bySheet, byOwn := make([]int32, len(c.found)), map[string]int32{}
	for i := range c.ids {
		id := &c.ids[i]
		if id.bad {
			continue
		}
		var set int32 // counted from 1
		if id.sheet >= 0 {
			set = bySheet[id.sheet]
		} else {
			set = byOwn[id.own]
		}
		if set == 0 {
			s := slipSet{sheet: id.sheet, row: id.row, first: i}
			if id.sheet >= 0 {
				s.row = c.found[id.sheet].row
			}
			all = append(all, s)
			if set = int32(len(all)); id.sheet >= 0 {
				bySheet[id.sheet] = set
			} else {
				byOwn[id.own] = set
			}
		}
		all[set-1].ids = append(all[set-1].ids, i)
	}
	slices.SortStableFunc(all, func(a, b slipSet) int { return cmp.Compare(a.row, b.row) })
	for i := range all {
		s := &all[i]
		slices.SortStableFunc(s.ids, func(a, b int) int {
			x, y := c.ids[a].day, c.ids[b].day
			if (x == 0) != (y == 0) {
				return cmp.Compare(y, x) // undated last
			}
			return cmp.Compare(x, y)
		})
		if err := c.repeated(s); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// repeated finds what is said twice of one record. Where the house calls that
// an error, the second makes no slip.
func (c *slipCheck) repeated(s *slipSet) error {
	for i, at := range s.ids {
		for _, before := range s.ids[:i] {
			a, b := &c.ids[at], &c.ids[before]
			if a.kind != b.kind || a.says != b.says {
				continue
			}
			again, err := c.isRepeated(s, a, b)
			if err != nil {
				return err
			}
			if again {
				break
			}
		}
	}
	s.ids = slices.DeleteFunc(s.ids, func(i int) bool { return c.ids[i].bad })
	return nil
}

func (c *slipCheck) isRepeated(s *slipSet, a, b *keptIdentification) (bool, error) {
	id, err := c.take(a)
	if err != nil {
		return false, err
	}
	other, err := c.take(b)
	if err != nil || id.said() != other.said() {
		return false, err
	}
	whose, err := c.whose(s)
	if err != nil {
		return false, err
	}
	c.report(ruleRepeated, id, "scientificName", "", "the row on line %d says the same of %s: remove one of them", other.Origin.Line, whose.Key())
	a.give(id.findings)
	return true, nil
}

// whose returns the record of a set, else the identification that stands for
// it.
func (c *slipCheck) whose(s *slipSet) (*check.Record, error) {
	if s.sheet >= 0 {
		return c.record(s.sheet)
	}
	id, err := c.take(&c.ids[s.first])
	return id.Record, err
}
