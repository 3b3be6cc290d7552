package main

import (
	"context"
	"os/user"
	"time"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

// bookFlags are those of every command that works with the register.
func (a *app) bookFlags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&a.book, "register", "", "the register: a `file`, or the postgres:// address of a database (default: the house's)")
	f.StringVar(&a.by, "by", "", "your `name`, as the register's history shall show it (default: the name you are logged in with)")
}

// whyFlag is that of commands whose changes need a reason.
func (a *app) whyFlag(c *cobra.Command) {
	c.Flags().StringVar(&a.why, "why", "", "the `reason`, as the register's history shall show it")
}

// at says when, by whom and why the register is changed now.
func (a *app) at() (job.At, error) {
	by := a.by
	if by == "" {
		if u, err := user.Current(); err == nil {
			if by = u.Name; by == "" {
				by = u.Username
			}
		}
	}
	when, err := a.now()
	return job.At{When: when, By: by, Why: a.why}, err
}

// now returns the second at which the register is changed: the beginning of the
// day where --date names one.
func (a *app) now() (time.Time, error) {
	if a.date != "" {
		return a.today()
	}
	return time.Now(), nil
}

// openBook opens the register for a command.
func (a *app) openBook(ctx context.Context, j *job.Job, o job.RegisterOptions) (*job.Register, error) {
	r, err := j.OpenRegister(ctx, a.book, o)
	return r, job.RegisterAdvice(err)
}
