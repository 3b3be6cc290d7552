package job

import (
	"fmt"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
	"cornerslip/label/form"
	"cornerslip/label/house"
)

// A BundleRequest asks for tags of whole presses instead of tags of plants.
type BundleRequest struct {
	// Each is how many plants lie in a press; 0 puts all into one.
	Each int
}

var stages = map[string]form.Stage{"press": form.InPress, "dryer": form.InDryer, "freezer": form.InFreezer}

// press turns the house's times into those of a bundle tag; the first stage
// begins on the day of the run.
func (j *Job) press() form.Press {
	h := j.House.Press
	p := form.Press{Rule: h.Rule}
	if d := j.o.Date; !d.IsZero() {
		p.Pressed = date.Day{Year: d.Year(), Month: int(d.Month()), Day: d.Day()}
	}
	for _, name := range h.Stages {
		p.Stays = append(p.Stays, stayAt(&h, stages[name]))
	}
	return p
}

func stayAt(h *house.Press, s form.Stage) form.Stay {
	switch s {
	case form.InDryer:
		return form.Stay{Stage: s, Days: h.DryerDays, Celsius: h.DryerCelsius}
	case form.InFreezer:
		return form.Stay{Stage: s, Days: h.FreezerDays, Celsius: h.FreezerCelsius}
	}
	return form.Stay{Stage: s, Days: h.PressDays}
}

// bundlesAndSet is checkAndSet for the tags of presses: each is called with one
// tag at a time.
func (j *Job) bundlesAndSet(t *Table, q *Request, say func(label.Finding) error, each func(*Summary, setRecord) error) (Summary, error) {
	if q.Bundle.Each < 0 {
		return Summary{}, fmt.Errorf("a press of %d plants: say how many lie in one", q.Bundle.Each)
	}
	s, err := j.checkScoped(t, tagScope, say)
	if err != nil {
		return s, err
	}
	if missing := t.Only.Missing(); len(missing) > 0 {
		return s, fmt.Errorf("the table has no record called %s", quoted(missing))
	}
	if s.fatal(q.ExceptBad) {
		return s, ErrData
	}
	o, err := j.formOptions(q)
	if err != nil {
		return s, err
	}
	measures, press := j.measures(q), j.press()
	bad := map[int]bool{}
	for _, b := range s.Bad {
		bad[b.Row] = true
	}
	load := &form.Load{}
	var first *check.Record
	done := func() error {
		if load.Len() == 0 {
			return nil
		}
		set, err := j.setContents(first, []label.Content{form.Bundle(load, press, o)}, measures)
		if err != nil {
			return err
		}
		set.count = load.Len()
		load = &form.Load{}
		return each(&s, set)
	}
	err = j.scan(t, check.New(j.checkOptions()), func(r rowResult) error {
		if !r.chosen || bad[r.record.Row] {
			return nil
		}
		if load.Len() == 0 {
			first = r.record
		}
		if load.Add(r.record); q.Bundle.Each > 0 && load.Len() == q.Bundle.Each {
			return done()
		}
		return nil
	})
	if err == nil {
		err = done()
	}
	if err == nil && t.Digest() != s.Digest {
		err = fmt.Errorf("%s was changed while it was being printed; run the command again", t.Source().Name())
	}
	return s, err
}
