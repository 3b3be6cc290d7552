package register

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

// A model is a series as a plain list of states, by number; the first is
// unused.
type model struct {
	states []State
	rnd    *rand.Rand
}

func (m *model) highest() int { return len(m.states) - 1 }

func (m *model) grow(to int, s State) {
	for m.highest() < to {
		m.states = append(m.states, s)
	}
}

// allowed is the table of steps, said once more.
func allowed(from, to State) bool {
	switch {
	case to == Issued || to == Unknown || from == to:
		return false
	case to == Printed:
		return from == Issued || from == Unknown
	case from == Void:
		return to == Attached
	}
	return true
}

// TestModel does random things to a register and to a plain list, and holds
// after each that both say the same, errors included.
func TestModel(t *testing.T) {
	each(t, func(t *testing.T, p place) {
		rounds, steps := 12, 40
		if p.name == "PostgreSQL" {
			rounds, steps = 3, 30
		}
		for seed := range uint64(rounds) {
			r := p.create(t)
			m := &model{states: []State{""}, rnd: rand.New(rand.NewPCG(seed, 9))}
			done := ""
			for range steps {
				what := m.step(t, r)
				done += what + "\n"
				if got, want := states(t, r), m.String(); got != want {
					t.Fatalf("seed %d: after\n%sthe register has\n%s\nand it should be\n%s", seed, done, got, want)
				}
			}
			// What every number was last is what the history says last.
			told := make([]State, len(m.states))
			for e, err := range r.History(t.Context(), "") {
				must(t, err)
				for n := e.Range.First; e.State != "" && n <= e.Range.Last; n++ {
					told[n] = e.State
				}
			}
			if !slices.Equal(told, m.states) {
				t.Errorf("seed %d: the history ends with %v, the register with %v", seed, told, m.states)
			}
			whole(t, r)
		}
	})
}

func (m *model) step(t *testing.T, r *Register) string {
	number := func(n int) string { return fmt.Sprintf("VDOURA-%07d", n) }
	any := func() State { return States()[m.rnd.IntN(len(States()))] }
	switch m.rnd.IntN(5) {
	case 0:
		count := 1 + m.rnd.IntN(6)
		got, err := r.Issue(t.Context(), registrar(""), "", count)
		if err != nil || got.First != m.highest()+1 || got.Last != m.highest()+count {
			t.Fatalf("issue %d after %d: %v, %v", count, m.highest(), got, err)
		}
		m.grow(got.Last, Issued)
		return fmt.Sprint("issue ", count)
	case 1:
		n := 1 + m.rnd.IntN(m.highest()+8)
		_, err := r.MoveUp(t.Context(), registrar("test"), number(n))
		if (err == nil) != (n > m.highest()) {
			t.Fatalf("move up to %d from %d: %v", n, m.highest(), err)
		}
		m.grow(n, Unknown)
		return fmt.Sprint("move up to ", n)
	case 2:
		n, state := 1+m.rnd.IntN(m.highest()+8), any()
		_, clashes := importAll(t, r, ImportOptions{}, Old{Specimen: Specimen{CatalogNumber: number(n)}, State: state})
		free := n > m.highest() || m.states[n] == Unknown
		if fine := state != Unknown && (free || m.states[n] == state); fine != (len(clashes) == 0) {
			t.Fatalf("import %d as %s: %v", n, state, clashes)
		}
		if free && state != Unknown {
			m.grow(n, Unknown)
			m.states[n] = state
		}
		return fmt.Sprintf("import %d as %s", n, state)
	default:
		if m.highest() == 0 {
			return "nothing"
		}
		first := 1 + m.rnd.IntN(m.highest())
		last, to := first+m.rnd.IntN(4), any()
		err := r.Mark(t.Context(), registrar("test"), to, span(first, last))
		fine := last <= m.highest()
		for n := first; n <= min(last, m.highest()); n++ {
			fine = fine && allowed(m.states[n], to)
		}
		if (err == nil) != fine {
			t.Fatalf("mark %d to %d as %s, %v: %v", first, last, to, m.states[first:min(last, m.highest())+1], err)
		}
		for n := first; fine && n <= last; n++ {
			m.states[n] = to
		}
		return fmt.Sprintf("mark %d to %d as %s: %v", first, last, to, err)
	}
}

// String is as states shows a register.
func (m *model) String() string {
	text, first := "", 1
	for n := 1; n <= m.highest(); n++ {
		if n < m.highest() && m.states[n+1] == m.states[n] {
			continue
		}
		if text != "" {
			text += ", "
		}
		if first == n {
			text += fmt.Sprintf("%d %s", n, m.states[n])
		} else {
			text += fmt.Sprintf("%d-%d %s", first, n, m.states[n])
		}
		first = n + 1
	}
	return text
}
