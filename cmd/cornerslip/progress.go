package main

import (
	"os"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// progress shows how far a long run is, on a terminal only.
type progress struct{ bar *progressbar.ProgressBar }

// showAfter is how many records a run may have before anyone wants to see it
// move.
const showAfter = 500

func (a *app) progress() *progress {
	f, ok := a.stderr.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return &progress{}
	}
	return &progress{progressbar.NewOptions(-1,
		progressbar.OptionSetWriter(f), progressbar.OptionSetDescription("setting labels"),
		progressbar.OptionShowCount(), progressbar.OptionThrottle(100*time.Millisecond), progressbar.OptionClearOnFinish())}
}

func (p *progress) step(done, of int) {
	if p.bar == nil || done < showAfter {
		return
	}
	if of > 0 && p.bar.GetMax() != of {
		p.bar.ChangeMax(of)
	}
	p.bar.Set(done)
}

func (p *progress) done() {
	if p.bar != nil {
		p.bar.Finish()
	}
}
