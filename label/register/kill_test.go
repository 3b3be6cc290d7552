package register

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// TestKill lets eight processes take numbers from one register, singly, in
// ranges and by assigning, and keep labels of some, while they are killed at
// random moments and started again. Each writes down every number after the
// call that gave it has returned. At the end no number was given out twice,
// none is lost, each has a state, and the history tells who took it.
//
// What a killed process shows is that a change is whole or absent; that it
// outlives a power cut is the databases' own promise (SQLite: synchronous,
// PostgreSQL: synchronous_commit, both on).
//
// 600 numbers or more are taken; as many as it says with REGISTER_KILL_NUMBERS:
//
//	REGISTER_KILL_NUMBERS=10000 go test -timeout 10m -run TestKill -v ./label/register
func TestKill(t *testing.T) {
	goal := 600
	if text := os.Getenv("REGISTER_KILL_NUMBERS"); text != "" {
		n, err := strconv.Atoi(text)
		must(t, err)
		goal = n
	}
	test := func(t *testing.T, p place, o Options) {
		r, err := Create(t.Context(), p.fresh(), registrar(""), o)
		must(t, err)
		defer r.Close()
		addSeries(t, r, "VDOURA-0000000")
		h := &hunt{r: r, dir: t.TempDir(), address: r.full(), rnd: rand.New(rand.NewPCG(uint64(goal), 0))}
		start := time.Now()
		h.run(t, goal)
		took := time.Since(start)
		h.judge(t)
		t.Logf("%s: %d numbers by %d processes in %.1f s, %d killed; %d numbers were taken by a process that died before it could write them down",
			p.name, h.highest, hunters, took.Seconds(), h.kills, h.stranded)
	}
	each(t, func(t *testing.T, p place) { test(t, p, Options{}) })
	// With the journal that a network share needs.
	t.Run("SQLite with a journal", func(t *testing.T) {
		test(t, place{name: "SQLite with a journal", dir: t.TempDir()}, Options{Network: true})
	})
}

const (
	hunters   = 8
	killEvery = 25 // one kill for so many numbers at least
	killerJob = "take"
)

func init() { children[killerJob] = take }

// A hunt is one run of the kill test.
type hunt struct {
	r                        *Register
	dir, address             string
	rnd                      *rand.Rand
	started                  int
	kills, highest, stranded int
}

// start starts the process that is called n. It says no more than a number and
// what it takes is in a file of its own.
func (h *hunt) start(t *testing.T, n int) (*exec.Cmd, *bytes.Buffer) {
	t.Helper()
	h.started++
	said := new(bytes.Buffer)
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childJob+"="+killerJob, "REGISTER_TEST_ADDRESS="+h.address, "REGISTER_TEST_DIR="+h.dir,
		fmt.Sprintf("REGISTER_TEST_NAME=%d", n), fmt.Sprintf("REGISTER_TEST_SEED=%d", h.started))
	cmd.Stderr = said
	must(t, cmd.Start())
	return cmd, said
}

func (h *hunt) run(t *testing.T, goal int) {
	cmds, said := make([]*exec.Cmd, hunters), make([]*bytes.Buffer, hunters)
	for i := range cmds {
		cmds[i], said[i] = h.start(t, i)
	}
	stop := func() { must(t, os.WriteFile(filepath.Join(h.dir, "stop"), nil, 0o666)) }
	t.Cleanup(func() {
		for _, cmd := range cmds {
			cmd.Process.Kill()
		}
	})
	deadline := time.Now().Add(100*time.Second + time.Duration(goal)*20*time.Millisecond)
	for {
		time.Sleep(time.Duration(5+h.rnd.IntN(60)) * time.Millisecond)
		all, err := h.r.Series(t.Context())
		must(t, err)
		if h.highest = all[0].Highest; h.highest >= goal && h.kills >= goal/killEvery && h.allTook() {
			break
		}
		if time.Now().After(deadline) {
			t.Fatalf("only %d numbers after all this time", h.highest)
		}
		i := h.rnd.IntN(hunters)
		cmds[i].Process.Kill()
		cmds[i].Wait()
		if said[i].Len() > 0 {
			t.Fatalf("process %d: %s", i, said[i])
		}
		h.kills++
		cmds[i], said[i] = h.start(t, i)
	}
	stop()
	for i, cmd := range cmds {
		if err := cmd.Wait(); err != nil {
			t.Fatalf("process %d: %v: %s", i, err, said[i])
		}
	}
}

// allTook reports whether each process has written something down.
func (h *hunt) allTook() bool {
	for i := range hunters {
		if info, err := os.Stat(filepath.Join(h.dir, fmt.Sprint("notes", i))); err != nil || info.Size() == 0 {
			return false
		}
	}
	return true
}

// take is the process: it takes numbers until a file says stop.
func take() error {
	name, dir := os.Getenv("REGISTER_TEST_NAME"), os.Getenv("REGISTER_TEST_DIR")
	seed, err := strconv.ParseUint(os.Getenv("REGISTER_TEST_SEED"), 10, 64)
	if err != nil {
		return err
	}
	rnd := rand.New(rand.NewPCG(seed, 1))
	ctx := context.Background()
	r, err := Open(ctx, os.Getenv("REGISTER_TEST_ADDRESS"), Options{Wait: time.Minute})
	if err != nil {
		return err
	}
	defer r.Close()
	notes, err := os.OpenFile(filepath.Join(dir, "notes"+name), os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o666)
	if err != nil {
		return err
	}
	defer notes.Close()
	at := At{When: moment, By: "process " + name}
	for i := 0; ; i++ {
		if _, err := os.Stat(filepath.Join(dir, "stop")); !errors.Is(err, os.ErrNotExist) {
			return err
		}
		var numbers []string
		print := false
		switch rnd.IntN(10) {
		case 0, 1:
			got, err := r.Issue(ctx, at, "", 2+rnd.IntN(19))
			if err != nil {
				return err
			}
			numbers = slices.Collect(got.Numbers())
		case 2:
			var rows []Specimen
			for range 5 {
				rows = append(rows, Specimen{Collector: "Process " + name, Number: fmt.Sprint(rnd.Uint64())})
			}
			got, err := r.Assign(ctx, at, "", rows, false)
			if err != nil {
				return err
			}
			for _, a := range got {
				numbers = append(numbers, a.Number)
			}
		default:
			got, err := r.Issue(ctx, at, "", 1)
			if err != nil {
				return err
			}
			numbers, print = []string{got.String()}, rnd.IntN(3) == 0
		}
		if _, err := notes.WriteString(strings.Join(numbers, "\n") + "\n"); err != nil {
			return err
		}
		if !print {
			continue
		}
		_, err := r.Remember(ctx, at, Run{Program: name}, func(yield func(Label, error) bool) {
			yield(Label{CatalogNumber: numbers[0], Collector: "Process " + name, Number: "1", Box: []byte(numbers[0])}, nil)
		})
		if err != nil {
			return err
		}
	}
}

// judge holds what the processes wrote down against the register.
func (h *hunt) judge(t *testing.T) {
	all, err := h.r.Series(t.Context())
	must(t, err)
	h.highest = all[0].Highest
	by := map[int]string{} // number to the process that wrote it down
	for i := range hunters {
		text, err := os.ReadFile(filepath.Join(h.dir, fmt.Sprint("notes", i)))
		must(t, err)
		for line := range strings.Lines(string(text)) {
			got, err := h.r.Range(t.Context(), line, "")
			must(t, err)
			if who, twice := by[got.First]; twice {
				t.Errorf("%s was given to %s and to process %d", got, who, i)
			}
			by[got.First] = fmt.Sprintf("process %d", i)
		}
	}
	issued := map[int]string{} // number to the process that the history names
	for e, err := range h.r.History(t.Context(), "") {
		must(t, err)
		for n := e.Range.First; e.What == Issued.event() && n <= e.Range.Last; n++ {
			if issued[n] != "" {
				t.Errorf("number %d was issued to %s and to %s", n, issued[n], e.By)
			}
			issued[n] = e.By
		}
	}
	next := 1
	for row, err := range h.r.List(t.Context(), Filter{}) {
		must(t, err)
		if row.Range.First != next || row.State != Issued && row.State != Printed {
			t.Errorf("number %d: %+v", next, row)
		}
		if row.State == Printed && next%7 == 0 {
			found, err := h.r.Find(t.Context(), row.Range.String(), 0)
			if err != nil || len(found) != 1 {
				t.Errorf("number %d is printed, and found are %v (%v)", next, found, err)
			}
		}
		next = row.Range.Last + 1
	}
	if next != h.highest+1 {
		t.Errorf("the numbers end with %d, the highest is %d", next-1, h.highest)
	}
	for n, who := range by {
		if n > h.highest || issued[n] != who {
			t.Errorf("number %d was given to %s; the history has %q", n, who, issued[n])
		}
	}
	for n := 1; n <= h.highest; n++ {
		if issued[n] == "" {
			t.Errorf("the history does not know number %d", n)
		}
		if by[n] == "" {
			h.stranded++
		}
	}
	if most := 20 * h.kills; h.stranded > most {
		t.Errorf("%d numbers were never written down, more than %d kills can explain", h.stranded, h.kills)
	}
	whole(t, h.r)
}
