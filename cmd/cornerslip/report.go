package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"cornerslip/cmd/internal/job"
)

// reportFindings checks a table and writes what is found to files that can be handed
// on. Each appears whole or not at all.
func (a *app) reportFindings(path string, o *checkFlags, slips *slipFlags) error {
	if err := apart(path, o.csv, o.html); err != nil {
		return err
	}
	j, err := a.job()
	if err != nil {
		return err
	}
	t, release, err := a.table(path)
	if err != nil {
		return err
	}
	defer release()
	var q job.Request
	letGo, err := a.slipRequest(&q, slips)
	if err != nil {
		return err
	}
	defer letGo()

	var s job.Summary
	withheld := 0
	err = a.output(o.html, func(html io.Writer) error {
		return a.output(o.csv, func(csv io.Writer) (err error) {
			s, withheld, err = writeReports(j, t, q, csv, html)
			return err
		})
	})
	if err != nil {
		return err
	}
	for _, out := range []string{o.csv, o.html} {
		if out != "" && out != "-" {
			a.say("wrote %s: %s", out, summaryLine(s))
		}
	}
	if withheld > 0 {
		a.say("exact place withheld in %s", plural(withheld, "finding"))
	}
	if s.Errors > 0 {
		return errSaid
	}
	return nil
}

// writeReports checks the table once for both; either may be nil.
func writeReports(j *job.Job, t *job.Table, q job.Request, csv, html io.Writer) (job.Summary, int, error) {
	var table *job.RemarksCSV
	if csv != nil {
		table = job.NewRemarksCSV(csv)
	}
	page, err := j.NewRemarksPage(t)
	if err != nil {
		return job.Summary{}, 0, err
	}
	s, withheld, err := j.Remarks(t, q, func(m job.Remark) error {
		if table != nil {
			if err := table.Add(m); err != nil {
				return err
			}
		}
		if html != nil {
			return page.Add(m)
		}
		return nil
	})
	if err != nil {
		return s, withheld, err
	}
	if missing := t.Only.Missing(); len(missing) > 0 {
		return s, withheld, noRecord(missing)
	}
	if table != nil {
		if err := table.Flush(); err != nil {
			return s, withheld, err
		}
	}
	if html != nil {
		err = page.Write(html, s, withheld)
	}
	return s, withheld, err
}

// output lets write write a file, or to standard output for "-"; nil is given
// for "".
func (a *app) output(path string, write func(io.Writer) error) error {
	switch path {
	case "":
		return write(nil)
	case "-":
		w := bufio.NewWriter(a.stdout)
		if err := write(w); err != nil {
			return err
		}
		return w.Flush()
	}
	return a.write(path, write)
}

// apart refuses files that would replace the table or each other.
func apart(table string, outs ...string) error {
	for i, out := range outs {
		if out == "" {
			continue
		}
		if out != "-" && sameFile(out, table) {
			return fmt.Errorf("%s is the table itself; name another file", out)
		}
		for _, other := range outs[:i] {
			if out == other || other != "" && sameFile(out, other) {
				return fmt.Errorf("%s is named twice; name a file for each", out)
			}
		}
	}
	return nil
}

func sameFile(a, b string) bool {
	if filepath.Clean(a) == filepath.Clean(b) {
		return true
	}
	x, err := os.Stat(a)
	if err != nil {
		return false
	}
	y, err := os.Stat(b)
	return err == nil && os.SameFile(x, y)
}
