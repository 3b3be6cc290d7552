package main

import (
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

func (a *app) registerListCommand() *cobra.Command {
	var series, from, to, states, csvFile string
	var asJSON bool
	c := &cobra.Command{
		Use:   "list",
		Short: "List numbers with their states and specimens",
		Long: `list shows the numbers of the register in order, with their states and whose they
are. Neighbours of which nothing else is known and that came about together stand
in one line. Days and times are UTC.

--csv and --json give every number a line of its own, but for stretches of unknown
numbers, whose last number stands in lastNumber. Both have: catalogNumber,
lastNumber ("" for a single number), disposition (the state), recordedBy,
recordNumber, eventDate, scientificName, occurrenceID, when (of the change that
brought the state), by, why. "register import" reads such a table again.`,
		Example: `  cornerslip register list --register herbarium.db
  cornerslip register list --state issued --register herbarium.db  # given out, not printed
  cornerslip register list --from VDOURA-0004300 --to 4400 --csv numbers.csv --register herbarium.db`,
		Args: noWords,
		RunE: func(*cobra.Command, []string) error {
			if err := oneFormat(asJSON, csvFile); err != nil {
				return err
			}
			return a.withBook(true, func(ctx context.Context, j *job.Job, r *job.Register) error {
				f, err := j.Filter(ctx, r, series, from, to, states)
				if err != nil {
					return err
				}
				return a.registerList(ctx, r, f, asJSON, csvFile)
			})
		},
	}
	a.bookFlags(c)
	_ = c.Flags().MarkHidden("by") // it changes nothing
	a.forceFlag(c)
	f := c.Flags()
	f.StringVar(&series, "series", "", "only this series, by its `name`")
	f.StringVar(&from, "from", "", "from this `number` on, in full or in figures")
	f.StringVar(&to, "to", "", "up to this `number`, in full or in figures")
	f.StringVar(&states, "state", "", "only numbers in these `states`, parted by commas: issued,void")
	f.BoolVar(&asJSON, "json", false, "write one JSON object a line for each number")
	f.StringVar(&csvFile, "csv", "", "write a table to this `file` (- for here)")
	return c
}

// numberJSON is the JSON of a number; its keys are kept stable.
type numberJSON struct {
	CatalogNumber  string            `json:"catalogNumber"`
	LastNumber     string            `json:"lastNumber"`
	Disposition    job.RegisterState `json:"disposition"`
	RecordedBy     string            `json:"recordedBy"`
	RecordNumber   string            `json:"recordNumber"`
	EventDate      string            `json:"eventDate"`
	ScientificName string            `json:"scientificName"`
	OccurrenceID   string            `json:"occurrenceID"`
	When           string            `json:"when"`
	By             string            `json:"by"`
	Why            string            `json:"why"`
}

var numberHead = []string{"catalogNumber", "lastNumber", "disposition", "recordedBy", "recordNumber", "eventDate", "scientificName", "occurrenceID", "when", "by", "why"}

func numberOf(row job.RegisterRow) numberJSON {
	n := numberJSON{Disposition: row.State, When: stamp(row.When), By: row.By, Why: row.Why}
	if row.Range.Last > 0 {
		n.CatalogNumber = row.Range.Pattern.Format(row.Range.First)
		if row.Range.Len() > 1 {
			n.LastNumber = row.Range.Pattern.Format(row.Range.Last)
		}
	}
	s := row.Specimen
	n.RecordedBy, n.RecordNumber, n.EventDate, n.ScientificName, n.OccurrenceID = s.Collector, s.Number, s.Date, s.Name, s.OccurrenceID
	return n
}

// stamp is a time as other programs read it.
func stamp(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.UTC().Format(time.RFC3339)
}

func (a *app) registerList(ctx context.Context, r *job.Register, f job.NumberFilter, asJSON bool, csvFile string) error {
	numbers := 0
	err := a.to(csvFile, func(w io.Writer) error {
		rows := func(each func(job.RegisterRow) error) error {
			for row, err := range r.List(ctx, f) {
				if err != nil {
					return err
				}
				numbers += row.Range.Len()
				if err := each(row); err != nil {
					return err
				}
			}
			return nil
		}
		switch {
		case asJSON:
			return rows(func(row job.RegisterRow) error { return encode(w, numberOf(row)) })
		case csvFile != "":
			return csvTo(w, numberHead, func(out func(...string) error) error {
				return rows(func(row job.RegisterRow) error {
					n := numberOf(row)
					return out(n.CatalogNumber, n.LastNumber, string(n.Disposition), n.RecordedBy, n.RecordNumber, n.EventDate, n.ScientificName, n.OccurrenceID, n.When, n.By, n.Why)
				})
			})
		}
		l := &numberLines{w: w}
		if err := rows(l.add); err != nil {
			return err
		}
		return l.flush()
	})
	if err != nil {
		return err
	}
	switch {
	case numbers == 0:
		a.say("no number of %s is like that", r.Address())
	case csvFile != "" && csvFile != "-":
		a.say("wrote %s: %s", csvFile, counted(numbers, "number"))
	case !asJSON && csvFile == "":
		a.say("%s", counted(numbers, "number"))
	}
	return nil
}

// numberLines shows numbers, neighbours without a specimen together.
type numberLines struct {
	w    io.Writer
	held job.RegisterRow // waits for its neighbours
}

func (l *numberLines) add(row job.RegisterRow) error {
	h := &l.held
	if h.Range.Last > 0 && h.Range.Series == row.Range.Series && h.Range.Last+1 == row.Range.First && h.State == row.State && h.When.Equal(row.When) &&
		h.By == row.By && h.Why == row.Why && h.Specimen == (job.NumberSpecimen{}) && row.Specimen == (job.NumberSpecimen{}) {
		h.Range.Last = row.Range.Last
		return nil
	}
	if err := l.flush(); err != nil {
		return err
	}
	l.held = row
	return nil
}

func (l *numberLines) flush() error {
	row := l.held
	l.held = job.RegisterRow{}
	if row.Range.Last == 0 {
		return nil
	}
	width := 2*len(row.Range.Pattern.Format(row.Range.First)) + len(" to ")
	_, err := fmt.Fprintf(l.w, "%-*s  %s\n", width, row.Range, stateLine(row))
	return err
}

// stateLine says what is known of a number.
func stateLine(row job.RegisterRow) string {
	line := fmt.Sprintf("%-14s  %s", row.State, day(row.When))
	if text := specimenText(row.Specimen); text != "" {
		line += "  " + text
	}
	line += "  (" + row.By
	if row.Why != "" {
		line += ": " + row.Why
	}
	return line + ")"
}

// specimenText names a specimen: "I. Almeida 214, Cytisus striatus, 2026-06-14".
func specimenText(s job.NumberSpecimen) string {
	if s == (job.NumberSpecimen{}) {
		return ""
	}
	parts := []string{s.String()}
	for _, more := range []string{s.Name, s.Date} {
		if more != "" {
			parts = append(parts, more)
		}
	}
	return strings.Join(parts, ", ")
}

func (a *app) registerHistoryCommand() *cobra.Command {
	var csvFile string
	var asJSON bool
	c := &cobra.Command{
		Use:   "history [NUMBER]",
		Short: "Show what happened to a number, or in the whole register",
		Long: `history shows every change, the first first: when, by whom, what, of which numbers
and why. With a number it shows what concerns that number alone. Nothing is ever
taken out of the history. Days and times are UTC.

--csv and --json have for each change: id (counts from 1 without a gap), when, by,
what, first, last (numbers; "" if it is of none), state (what they became; "" if
they stayed as they were), label (the id of the printed label it is of, 0 if
none), why.`,
		Example: `  cornerslip register history VDOURA-0004217 --register herbarium.db
  cornerslip register history --csv history.csv --register herbarium.db`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return fmt.Errorf("the history of one number at a time, but there are %d; if it holds a space, put it in quotes", len(args))
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if err := oneFormat(asJSON, csvFile); err != nil {
				return err
			}
			number := ""
			if len(args) == 1 {
				if number = args[0]; strings.TrimSpace(number) == "" {
					return fmt.Errorf("which number? leave it out for the history of the whole register")
				}
			}
			return a.withBook(true, func(ctx context.Context, _ *job.Job, r *job.Register) error {
				return a.registerHistory(ctx, r, number, asJSON, csvFile)
			})
		},
	}
	a.bookFlags(c)
	_ = c.Flags().MarkHidden("by") // it changes nothing
	a.forceFlag(c)
	c.Flags().BoolVar(&asJSON, "json", false, "write one JSON object a line for each change")
	c.Flags().StringVar(&csvFile, "csv", "", "write a table to this `file` (- for here)")
	return c
}

// eventJSON is the JSON of a change; its keys are kept stable.
type eventJSON struct {
	ID    int               `json:"id"`
	When  string            `json:"when"`
	By    string            `json:"by"`
	What  string            `json:"what"`
	First string            `json:"first"`
	Last  string            `json:"last"`
	State job.RegisterState `json:"state"`
	Label int               `json:"label"`
	Why   string            `json:"why"`
}

func eventOf(e job.RegisterEvent) eventJSON {
	out := eventJSON{ID: e.ID, When: stamp(e.When), By: e.By, What: string(e.What), State: e.State, Label: e.Label, Why: e.Why}
	if e.Range.Last > 0 {
		out.First, out.Last = e.Range.Pattern.Format(e.Range.First), e.Range.Pattern.Format(e.Range.Last)
	}
	return out
}

func (a *app) registerHistory(ctx context.Context, r *job.Register, number string, asJSON bool, csvFile string) error {
	changes := 0
	err := a.to(csvFile, func(w io.Writer) error {
		events := func(each func(job.RegisterEvent) error) error {
			for e, err := range r.History(ctx, number) {
				if err != nil {
					return err
				}
				changes++
				if err := each(e); err != nil {
					return err
				}
			}
			return nil
		}
		switch {
		case asJSON:
			return events(func(e job.RegisterEvent) error { return encode(w, eventOf(e)) })
		case csvFile != "":
			return csvTo(w, []string{"id", "when", "by", "what", "first", "last", "state", "label", "why"}, func(row func(...string) error) error {
				return events(func(e job.RegisterEvent) error {
					o := eventOf(e)
					return row(strconv.Itoa(o.ID), o.When, o.By, o.What, o.First, o.Last, string(o.State), strconv.Itoa(o.Label), o.Why)
				})
			})
		}
		return events(func(e job.RegisterEvent) error {
			_, err := fmt.Fprintln(w, eventLine(e))
			return err
		})
	})
	if err == nil && csvFile != "" && csvFile != "-" {
		a.say("wrote %s: %s", csvFile, counted(changes, "change"))
	}
	return err
}

func eventLine(e job.RegisterEvent) string {
	line := fmt.Sprintf("%s  %-14s", e.When.UTC().Format("2006-01-02 15:04"), e.What)
	if e.Range.Last > 0 {
		line += "  " + e.Range.String()
	}
	if e.Label > 0 {
		line += fmt.Sprintf("  label %d", e.Label)
	}
	line += "  by " + e.By
	if e.Why != "" {
		line += ": " + e.Why
	}
	return line
}
