package main

import (
	"context"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

func (a *app) registerFindCommand() *cobra.Command {
	var limit int
	var asJSON bool
	c := &cobra.Command{
		Use:   "find \"Almeida 214\"",
		Short: "Find a number, a specimen or its printed labels",
		Long: `find looks for numbers, and for labels that were printed, by a catalogue number
(typed or scanned, in figures alone too), a collector and number, an occurrenceID,
or the beginnings of words of a name or collector. Capitals and accents do not
count. It shows the number, its state, whose it is, and when which labels were
printed. The command ends with 1 if nothing is found. Days are UTC.

--json writes an object a line for each number, or each specimen without one: the
keys of "register list --json", and labels, a list of objects: id, kind, part
("Sheet 1 of 2"), for (the herbarium a duplicate goes to), label, of (which of how
many), when, by, reprinted (how many times).`,
		Example: `  cornerslip register find "Almeida 214" --register herbarium.db
  cornerslip register find VDOURA-0004217 --register herbarium.db
  cornerslip register find "iris boiss" --register herbarium.db`,
		Args: func(_ *cobra.Command, args []string) error {
			if strings.TrimSpace(strings.Join(args, " ")) == "" {
				return fmt.Errorf("find what? as in: cornerslip register find \"Almeida 214\"")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if limit < 1 {
				return fmt.Errorf("--limit %d: say how many may be shown, at least 1", limit)
			}
			return a.registerFind(strings.Join(args, " "), limit, asJSON)
		},
	}
	a.bookFlags(c)
	_ = c.Flags().MarkHidden("by") // it changes nothing
	c.Flags().IntVar(&limit, "limit", 20, "show at most so many, a `count`")
	c.Flags().BoolVar(&asJSON, "json", false, "write one JSON object a line for each number")
	return c
}

// foundJSON is the JSON of what was found; its keys are kept stable.
type foundJSON struct {
	numberJSON
	Labels []labelJSON `json:"labels"`
}

type labelJSON struct {
	ID        int    `json:"id"`
	Kind      string `json:"kind"`
	Part      string `json:"part"`
	For       string `json:"for"`
	Label     int    `json:"label"`
	Of        int    `json:"of"`
	When      string `json:"when"`
	By        string `json:"by"`
	Reprinted int    `json:"reprinted"`
}

func (a *app) registerFind(text string, limit int, asJSON bool) error {
	return a.withBook(true, func(ctx context.Context, _ *job.Job, r *job.Register) error {
		found, err := job.FindNumbers(ctx, r, text, limit)
		if err != nil {
			return err
		}
		more := len(found) > limit
		found = found[:min(limit, len(found))]
		if len(found) == 0 && !asJSON {
			a.say("nothing in %s is like %q; try fewer words, or the beginning of a name", r.Address(), text)
		}
		if len(found) == 0 {
			return errSaid
		}
		switch {
		case asJSON:
			for i := range found {
				if err := encode(a.stdout, foundOf(&found[i])); err != nil {
					return err
				}
			}
		case len(found) == 1:
			showFound(a.stdout, &found[0])
		default:
			tableOfFound(a.stdout, found)
		}
		if more || len(found) == limit && limit > 1 {
			a.say("these are the first %d; say more words, or --limit %d", limit, 10*limit)
		}
		return nil
	})
}

func foundOf(f *job.Found) foundJSON {
	o := foundJSON{numberOf(f.Number), []labelJSON{}}
	if o.CatalogNumber == "" {
		o.CatalogNumber = f.Number.Specimen.CatalogNumber
	}
	for _, l := range f.Labels {
		o.Labels = append(o.Labels, labelJSON{l.ID, string(l.Kind), l.Part, l.For, l.Label.Label, l.Of, stamp(l.When), l.By, l.Reprinted})
	}
	return o
}

// foundNumber is how a find is called: by its number, else as what it is.
func foundNumber(f *job.Found) string {
	switch {
	case f.Number.Range.Last > 0:
		return f.Number.Range.String()
	case f.Number.Specimen.CatalogNumber != "":
		return f.Number.Specimen.CatalogNumber
	}
	return "no number"
}

// showFound shows one find whole.
func showFound(w io.Writer, f *job.Found) {
	fmt.Fprintln(w, foundNumber(f))
	if text := specimenText(f.Number.Specimen); text != "" {
		fmt.Fprintf(w, "  %s\n", text)
	}
	if id := f.Number.Specimen.OccurrenceID; id != "" {
		fmt.Fprintf(w, "  %s\n", id)
	}
	if f.Number.State != "" {
		fmt.Fprintf(w, "  %s since %s, by %s", f.Number.State, day(f.Number.When), f.Number.By)
		if f.Number.Why != "" {
			fmt.Fprintf(w, ": %s", f.Number.Why)
		}
		fmt.Fprintln(w)
	}
	for _, l := range f.Labels {
		fmt.Fprintf(w, "  %s: printed on %s by %s", labelText(&l), day(l.When), l.By)
		if l.Reprinted > 0 {
			fmt.Fprintf(w, ", reprinted %s", counted(l.Reprinted, "time"))
		}
		fmt.Fprintln(w)
	}
	if len(f.Labels) == 0 {
		fmt.Fprintln(w, "  no label of it is kept")
	}
}

// labelText says what a label is: "sheet label, Sheet 1 of 2".
func labelText(l *job.KeptLabel) string {
	text := string(l.Kind) + " label"
	switch {
	case l.For != "":
		text += " for " + l.For
	case l.Part != "" && !strings.EqualFold(l.Part, string(l.Kind)):
		text += ", " + l.Part
	}
	if l.Of > 1 {
		text += fmt.Sprintf(", %d of %d", l.Label.Label, l.Of)
	}
	return text
}

// labelsByDay says when which labels were printed: "2026-07-30 2 sheet,
// 1 barcode", the newest day first.
func labelsByDay(labels []job.KeptLabel) string {
	var days []string
	kinds := map[string][]string{} // of a day, in order
	counts := map[string]int{}
	for i := range labels {
		l := &labels[i]
		on, kind := day(l.When), string(l.Kind)
		if l.For != "" {
			kind += " for " + l.For
		}
		if kinds[on] == nil {
			days = append(days, on)
		}
		if counts[on+kind]++; counts[on+kind] == 1 {
			kinds[on] = append(kinds[on], kind)
		}
	}
	for i, on := range days {
		words := make([]string, len(kinds[on]))
		for k, kind := range kinds[on] {
			words[k] = fmt.Sprintf("%d %s", counts[on+kind], kind)
		}
		days[i] = on + " " + strings.Join(words, ", ")
	}
	return strings.Join(days, "; ")
}

// tableOfFound shows several finds a line each.
func tableOfFound(w io.Writer, found []job.Found) {
	rows := [][]string{{"number", "state", "since", "specimen", "labels"}}
	for i := range found {
		f := &found[i]
		since := ""
		if f.Number.State != "" {
			since = day(f.Number.When)
		}
		rows = append(rows, []string{foundNumber(f), string(f.Number.State), since, specimenText(f.Number.Specimen), labelsByDay(f.Labels)})
	}
	columns(w, rows)
}

// columns shows rows in columns as wide as they need.
func columns(w io.Writer, rows [][]string) {
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	for _, row := range rows {
		var b strings.Builder
		for i, cell := range row {
			b.WriteString(cell)
			if i < len(row)-1 {
				b.WriteString(strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)+2))
			}
		}
		fmt.Fprintln(w, strings.TrimRight(b.String(), " "))
	}
}
