package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
	"cornerslip/layout"
)

// printFlags are those of the commands that make pages.
type printFlags struct {
	out       string
	paper     string
	on        string
	symbology string
	exceptBad bool
	list      bool
	// more adds what a command alone has to the request, and says how to let
	// go of it; nil adds nothing.
	more func(*job.Request) (func(), error)
}

func (a *app) printCommand(c *cobra.Command, kind label.Kind, ending string) (*cobra.Command, *printFlags) {
	p := &printFlags{}
	c.Args = oneTable
	c.RunE = func(_ *cobra.Command, args []string) error { return a.print(args[0], kind, ending, p) }
	a.tableFlags(c)
	a.forceFlag(c)
	f := c.Flags()
	f.StringVarP(&p.out, "output", "o", "", "the PDF `file` to write (default: the table's name with -"+ending+".pdf)")
	f.StringVar(&p.paper, "paper", "", "`size` of the paper: A4, A3, Letter, or width x height in mm such as 300x450 (default: the house's, else A4)")
	f.BoolVar(&p.exceptBad, "except-bad", false, "print the good records although others have errors; those are listed")
	f.BoolVar(&p.list, "list", false, "say of every label how it was set")
	return c, p
}

func (a *app) sheetCommand() *cobra.Command {
	c, p := a.printCommand(&cobra.Command{
		Use:   "sheet trip.csv",
		Short: "Print the labels of the mounting sheets",
		Long: `sheet makes the collection labels: one for each sheet of a specimen, for its box
or jar, for further copies, and for each herbarium that gets a duplicate.

Labels are ganged on paper, with ticks where the cuts run; or each is printed on
its own A3 mounting sheet, in the lower-right corner (--on mount).
Print at 100 %, never "fit to page".`,
		Example: `  cornerslip sheet trip.csv -o labels.pdf
  cornerslip sheet trip.csv --house house.toml --paper A3 -o labels.pdf
  cornerslip sheet trip.csv --only "Almeida 214" -o one.pdf
  cornerslip sheet trip.csv --on mount -o mounts.pdf`,
	}, label.Sheet, "labels")
	c.Flags().StringVar(&p.on, "on", "paper", "`where` the labels go: paper (many on one sheet, to cut) or mount (each on its mounting sheet)")
	return c
}

func (a *app) packetCommand() *cobra.Command {
	c, _ := a.printCommand(&cobra.Command{
		Use:   "packet trip.csv",
		Short: "Print the labels of the packets",
		Long: `packet makes a label for each packet that a record names under preparations
("sheet | packet: capsules"): collector and number, the number of the sheet, what
is in it and what it is part of.`,
		Example: `  cornerslip packet trip.csv -o packets.pdf`,
	}, label.Packet, "packets")
	return c
}

func (a *app) barcodeCommand() *cobra.Command {
	c, p := a.printCommand(&cobra.Command{
		Use:   "barcode trip.csv",
		Short: "Print the catalogue numbers as bars",
		Long: `barcode makes a sticker for each record with a catalogue number of the house's
own: the institution, the number as bars and in figures. A number of another
house is not barred.
Print at 100 %: bars that were scaled do not scan.`,
		Example: `  cornerslip barcode trip.csv --house house.toml -o barcodes.pdf
  cornerslip barcode trip.csv --symbology datamatrix -o barcodes.pdf`,
	}, label.Barcode, "barcodes")
	c.Flags().StringVar(&p.symbology, "symbology", "", "`kind` of bars: code128, code39, datamatrix or qr (default: the house's, else code128)")
	return c
}

func (a *app) print(path string, kind label.Kind, ending string, p *printFlags) error {
	if p.on != "" && p.on != "paper" && p.on != "mount" {
		return fmt.Errorf("--on %q is not known; say paper or mount", p.on)
	}
	out := p.out
	if out == "" {
		if path == "-" {
			return errors.New("where to? name the file to write, as in: -o labels.pdf")
		}
		out = strings.TrimSuffix(path, filepath.Ext(path)) + "-" + ending + ".pdf"
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
	bar := a.progress()
	r := newReporter(a.stderr, label.Warning)
	q := job.Request{
		Kind: kind, Mount: p.on == "mount", Paper: p.paper, Symbology: p.symbology, ExceptBad: p.exceptBad,
		Progress: bar.step,
	}
	if p.more != nil {
		release, err := p.more(&q)
		if err != nil {
			return err
		}
		defer release()
	}
	if p.list {
		q.Each = func(l job.SetLabel) { fmt.Fprintf(a.stderr, "%s: %s\n", l.Ref, l.Report) }
	}
	s, rep, err := j.Print(t, q, r.add, func(write func(io.Writer) error) error {
		return job.WriteFile(out, a.force, write)
	})
	bar.done()
	r.flush()
	switch {
	case errors.Is(err, job.ErrNone):
		a.say("%s", nothingFor(kind))
		return nil
	case errors.Is(err, job.ErrData):
		a.say("%s; nothing was written", summaryLine(s))
		if len(s.Bad) > 0 && len(s.Bad) < s.Chosen {
			a.say("--except-bad prints the other %s", plural(s.Chosen-len(s.Bad), "record"))
		}
		return errSaid
	case err != nil:
		return err
	}
	for _, b := range s.Bad {
		a.say("not printed: %s:%d: row %d, %s", b.File, b.Line, b.Row, b.Key)
	}
	a.report(out, rep, p.on == "mount")
	return nil
}

func nothingFor(kind label.Kind) string {
	switch kind {
	case label.Packet:
		return "no record has a packet under preparations; nothing was written"
	case label.Barcode:
		return "no record has a catalogue number of the house's own; nothing was written"
	case label.Slip:
		return "no identification makes a slip; nothing was written"
	}
	return "the table has no record to print; nothing was written"
}

// report says what was printed, and which labels are not like the others.
func (a *app) report(out string, rep job.Report, mount bool) {
	where := plural(rep.Papers, "sheet") + " of " + rep.PaperSize.String()
	if mount {
		where = plural(rep.Papers, "mount") + " of " + rep.PaperSize.String()
	}
	a.say("wrote %s: %s of %s on %s", out, plural(rep.Labels, "label"), plural(rep.Records, "record"), where)
	if rep.Without > 0 {
		a.say("%s without such a label", plural(rep.Without, "record"))
	}
	if len(rep.Sizes) > 1 {
		sizes := make([]layout.Size, 0, len(rep.Sizes))
		for size := range rep.Sizes {
			sizes = append(sizes, size)
		}
		slices.SortFunc(sizes, func(x, y layout.Size) int { return int(x.H-y.H) + int(x.W-y.W)/1000 })
		parts := make([]string, len(sizes))
		for i, size := range sizes {
			parts[i] = fmt.Sprintf("%d of %s", rep.Sizes[size], size)
		}
		a.say("sizes: %s", strings.Join(parts, ", "))
	}
	for _, l := range rep.Smaller {
		a.say("smaller type, %s pt: %s", l.Report.Text.Decimal(layout.Pt, 2), l.Ref)
	}
	if n := len(rep.Withheld); n > 0 {
		var keys []string
		for _, l := range rep.Withheld {
			if !slices.Contains(keys, l.Ref.Key) {
				keys = append(keys, l.Ref.Key)
			}
		}
		a.say("exact place withheld on %s for other herbaria: %s", plural(n, "label"), strings.Join(keys, ", "))
	}
	for _, l := range rep.Continued {
		a.say("goes on over %d labels: %s", l.Ref.Of, l.Ref.Key)
	}
	a.say("print at 100 %%, not \"fit to page\"")
}
