package pdf

import (
	"iter"
	"sync"
)

// inOrder calls work for each value of in on several goroutines, and each for
// every result in the order of the input, on the caller's. work is told which
// worker it runs on, from 0, so that it can keep things of its own. At most
// two values for each worker are on the way. The first error in input order
// ends it and is returned.
func inOrder[T, R any](in iter.Seq2[T, error], workers int, work func(worker int, v T) (R, error), each func(R, error) error) error {
	type task struct {
		v    T
		r    R
		err  error
		done chan struct{}
	}
	tasks := make(chan *task, workers)
	var wait sync.WaitGroup
	for i := range workers {
		wait.Go(func() {
			for t := range tasks {
				t.r, t.err = work(i, t.v)
				close(t.done)
			}
		})
	}
	defer func() {
		close(tasks)
		wait.Wait()
	}()

	var pending []*task
	take := func() error {
		t := pending[0]
		pending = pending[1:]
		<-t.done
		return each(t.r, t.err)
	}
	var last error
	for v, err := range in {
		if err != nil {
			last = err // after the errors of values that came before it
			break
		}
		if len(pending) == 2*workers {
			if err := take(); err != nil {
				return err
			}
		}
		t := &task{v: v, done: make(chan struct{})}
		pending = append(pending, t)
		tasks <- t
	}
	for len(pending) > 0 {
		if err := take(); err != nil {
			return err
		}
	}
	return last
}
