package layout

import (
	"errors"
	"iter"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync/atomic"
	"testing"
	"time"
)

func counting(n int, end error) iter.Seq2[int, error] {
	return func(yield func(int, error) bool) {
		for i := range n {
			if !yield(i, nil) {
				return
			}
		}
		if end != nil {
			yield(0, end)
		}
	}
}

func TestInOrder(t *testing.T) {
	for _, workers := range []int{1, 2, 7} {
		var under, most atomic.Int64
		var got []int
		busy := make([]atomic.Bool, workers)
		err := InOrder(counting(300, nil), workers, func(worker, v int) (int, error) {
			if busy[worker].Swap(true) {
				t.Error("a worker does two things at once")
			}
			defer busy[worker].Store(false)
			if n := under.Add(1); n > most.Load() {
				most.Store(n)
			}
			time.Sleep(time.Duration(rand.IntN(200)) * time.Microsecond)
			under.Add(-1)
			return v * v, nil
		}, func(r int, err error) error {
			got = append(got, r)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range got {
			if r != i*i {
				t.Fatalf("result %d is %d", i, r)
			}
		}
		if len(got) != 300 || most.Load() > int64(workers) {
			t.Errorf("%d results, %d at once", len(got), most.Load())
		}
	}
}

// TestInOrderErrors holds which error wins, that nothing follows it, and that
// no goroutine is left.
func TestInOrderErrors(t *testing.T) {
	before := runtime.NumGoroutine()
	atWork, atEach, atEnd := errors.New("work"), errors.New("each"), errors.New("end")
	for _, c := range []struct {
		name       string
		end        error
		work, each int // the value that fails; -1 for none
		want       error
		seen       int // results before it ends
	}{
		{"none", nil, -1, -1, nil, 50},
		{"the sequence", atEnd, -1, -1, atEnd, 50},
		{"work", nil, 30, -1, atWork, 30},
		{"work before the sequence", atEnd, 49, -1, atWork, 49},
		{"each", nil, -1, 20, atEach, 20},
		{"each before work", atEnd, 30, 20, atEach, 20},
	} {
		for _, workers := range []int{1, 4} {
			var seen []int
			err := InOrder(counting(50, c.end), workers, func(_, v int) (int, error) {
				if v == c.work {
					return v, atWork
				}
				return v, nil
			}, func(r int, err error) error {
				if err != nil {
					return err
				}
				if r == c.each {
					return atEach
				}
				seen = append(seen, r)
				return nil
			})
			if err != c.want || len(seen) != c.seen || !slices.IsSorted(seen) {
				t.Errorf("%s, %d workers: %v after %d results", c.name, workers, err, len(seen))
			}
		}
	}
	for range 100 {
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(time.Millisecond)
	}
	t.Errorf("%d goroutines are left of %d", runtime.NumGoroutine(), before)
}
