package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
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

	which  []string
	order  string
	gutter float64
	byDest bool
	cuts   string
	start  string
	skip   []string
	blank  string
	flap   float64
	// more adds what a command alone has to the request, and says how to let
	// go of it; nil adds nothing.
	more func(*job.Request) (func(), error)
	// memory says how a register keeps what is printed; nil where none does.
	memory *memoryFlags
	set    func(string) bool // whether a flag was given
}

func (a *app) printCommand(c *cobra.Command, kind label.Kind, ending string) (*cobra.Command, *printFlags) {
	p := &printFlags{}
	if kind != label.Tag {
		p.memory = &memoryFlags{}
		a.memoryFlags(c, p.memory)
	}
	c.Args = oneTable
	c.RunE = func(_ *cobra.Command, args []string) error { return a.print(args[0], kind, ending, p) }
	a.tableFlags(c)
	a.forceFlag(c)
	f := c.Flags()
	p.set = f.Changed
	f.StringVarP(&p.out, "output", "o", "", "the PDF `file` to write (default: the table's name with -"+ending+".pdf)")
	f.StringVar(&p.paper, "paper", "", "`size` of the paper: A4, A3, Letter, or width x height such as 300x450 (mm) or 11.5x16.5in (default: the house's, else A4)")
	f.BoolVar(&p.exceptBad, "except-bad", false, "print the good records although others have errors; those are listed")
	f.BoolVar(&p.list, "list", false, "say of every label how it was set")
	f.StringVar(&p.order, "order", "", "`how` labels follow each other on paper: across (paper by paper, down the columns) or stack (cut all papers as one pile, and the cut piles lie in order) (default: the house's, else across)")
	f.Float64Var(&p.gutter, "gutter", 0, "`millimetres` left between labels; 0 lets neighbours share a cut (default: the house's, else 0)")
	f.StringVar(&p.cuts, "cuts", "", "write the cutting list, which cut comes first, to this `file`: .pdf for a small page with a picture, else text; - shows it here")
	return c, p
}

// stickerFlags are those of labels that go on stickers.
func (p *printFlags) stickerFlags(c *cobra.Command, usual string) {
	f := c.Flags()
	f.StringVar(&p.on, "on", "", "`where` the labels go: paper (many on one sheet, to cut) or stickers (the sheet described under [stickers] in the house file) (default: "+usual+")")
	f.StringVar(&p.start, "start", "", "the first free sticker of a part-used sheet: `row,column` such as 2,3, or a number counted row by row")
	f.StringArrayVar(&p.skip, "skip", nil, "a further `place` that is used or spoilt, as in 4,1; may be said several times")
}

func (a *app) sheetCommand() *cobra.Command {
	guide := false
	c, p := a.printCommand(&cobra.Command{
		Use:   "sheet trip.csv",
		Short: "Print the labels of the mounting sheets",
		Long: `sheet makes the collection labels: one for each sheet of a specimen, for its box
or jar, for further copies, and for each herbarium that gets a duplicate.

Labels are ganged on paper, with ticks where the cuts run. Or each is printed on
its own mounting sheet, in the lower-right corner (--on mount): only the labels of
your own sheets go there; the run says which others are left to be printed on
paper. Records with the same word or number in the column mount share a sheet,
and their labels are lettered A, B and so on in the order of the table.

--guide prints one sheet, at its true size, to lay under or beside your mounts: the
places for the label and for whatever the house file has under [mount], and a
tick each centimetre. It needs no table.

Print at 100 %, never "fit to page".`,
		Example: `  cornerslip sheet trip.csv -o labels.pdf
  cornerslip sheet trip.csv --house house.toml --paper A3 -o labels.pdf
  cornerslip sheet trip.csv --only "Almeida 214" -o one.pdf
  cornerslip sheet trip.csv --which gifts --by-destination -o gifts.pdf
  cornerslip sheet trip.csv --order stack --cuts cuts.pdf -o labels.pdf
  cornerslip sheet trip.csv --on mount -o mounts.pdf
  cornerslip sheet --on mount --guide --house house.toml -o guide.pdf`,
	}, label.Sheet, "labels")
	f := c.Flags()
	f.StringVar(&p.on, "on", "paper", "`where` the labels go: paper (many on one sheet, to cut) or mount (each on its mounting sheet)")
	f.StringSliceVar(&p.which, "which", nil, "only these `labels`: sheets (one for each of your own), copies (further ones), boxes (of boxes and jars), gifts (for other herbaria); parted by commas")
	f.BoolVar(&p.byDest, "by-destination", false, "begin a new paper for the labels of each herbarium")
	f.BoolVar(&guide, "guide", false, "print one sheet with the places of the mount, instead of labels")
	c.Args = func(c *cobra.Command, args []string) error {
		if guide && len(args) > 0 {
			return fmt.Errorf("the guide shows no records; leave %s out, or --guide", args[0])
		}
		if guide {
			return nil
		}
		return oneTable(c, args)
	}
	c.RunE = func(_ *cobra.Command, args []string) error {
		if guide {
			return a.guide(p)
		}
		return a.print(args[0], label.Sheet, "labels", p)
	}
	return c
}

func (a *app) packetCommand() *cobra.Command {
	empty := 0
	c, p := a.printCommand(&cobra.Command{
		Use:   "packet trip.csv",
		Short: "Print the labels of the packets, or packets to fold",
		Long: `packet makes a label for each packet that a record names under preparations
("sheet | packet: capsules"): collector and number, the number of the sheet, what
is in it and what it is part of. Mosses and others that are kept in packets alone
have their full label there.

Labels are cut and glued on. Or packets are folded from blanks (--blank): each is
printed with lines to cut and fold along, and its label so that it faces the
reader when the packet is closed. The size of a blank is that of the uncut paper:

  letter-quarter, letter-half, letter   parts of a Letter sheet
  A6, A5, A4                            parts of an A4 sheet, or the whole
  square                                148 x 148 mm, for seeds
  120x160                               any other, in millimetres

The lower part is folded back first, then the upper part over it, then both sides
to the front; the run says how large the closed packet is.
--empty prints blanks with lines to write on and needs no table.`,
		Example: `  cornerslip packet trip.csv -o packets.pdf
  cornerslip packet trip.csv --blank A5 -o packets.pdf
  cornerslip packet trip.csv --blank letter-half --flap 31.75 -o packets.pdf
  cornerslip packet --empty 8 --blank A6 -o blanks.pdf`,
	}, label.Packet, "packets")
	p.stickerFlags(c, "paper")
	f := c.Flags()
	f.StringVar(&p.blank, "blank", "", "fold packets from this `blank`: letter-quarter, letter-half, letter, A6, A5, A4, square, or width x height in mm")
	f.Float64Var(&p.flap, "flap", 0, "how far the sides of a folded packet are turned back, in `millimetres` (default: the house's, else 25.4)")
	f.IntVar(&empty, "empty", 0, "how many packets to print with lines to write on, a `count`, instead of a table's")
	f.StringSliceVar(&p.which, "which", nil, "only these `labels`: packets (your own), copies (further ones), gifts (for other herbaria); parted by commas")
	f.BoolVar(&p.byDest, "by-destination", false, "begin a new paper for the labels of each herbarium")
	c.Args = func(c *cobra.Command, args []string) error {
		if f.Changed("empty") && len(args) > 0 {
			return fmt.Errorf("empty packets show no records; leave %s out, or --empty", args[0])
		}
		if f.Changed("empty") {
			return nil
		}
		return oneTable(c, args)
	}
	c.RunE = func(_ *cobra.Command, args []string) error {
		if f.Changed("empty") {
			return a.emptyPackets(p, empty)
		}
		return a.print(args[0], label.Packet, "packets", p)
	}
	return c
}

func (a *app) barcodeCommand() *cobra.Command {
	c, p := a.printCommand(&cobra.Command{
		Use:   "barcode trip.csv",
		Short: "Print the catalogue numbers as bars",
		Long: `barcode makes a sticker for each record with a catalogue number of the house's
own: the institution, the number as bars and in figures. A number of another
house is not barred.

A house that describes its sheets of stickers (under [stickers] in the house file)
has them printed there, a label on each sticker; --start and --skip leave out what
is used up. Otherwise they are cut from paper.

With a register, --count issues new numbers and prints their stickers in one go,
before there are records. If the printing fails the numbers stay issued, and
--numbers prints them.
Print at 100 %: bars that were scaled do not scan.`,
		Example: `  cornerslip barcode trip.csv --house house.toml -o barcodes.pdf
  cornerslip barcode trip.csv --house house.toml --start 2,3 --skip 4,1 -o barcodes.pdf
  cornerslip barcode trip.csv --symbology datamatrix -o barcodes.pdf
  cornerslip barcode --register herbarium.db --count 200 -o barcodes.pdf
  cornerslip barcode --register herbarium.db --numbers VDOURA-0000101..VDOURA-0000200 -o barcodes.pdf`,
	}, label.Barcode, "barcodes")
	p.stickerFlags(c, "stickers if the house has any, else paper")
	c.Flags().StringVar(&p.symbology, "symbology", "", "`kind` of bars: code128, code39, datamatrix or qr (default: the house's, else code128)")
	n := &numbersFlags{}
	n.add(c)
	bare := func() bool { return p.set("count") || p.set("numbers") }
	c.Args = func(c *cobra.Command, args []string) error {
		if bare() && len(args) > 0 {
			return fmt.Errorf("the numbers of %s, or others with --count or --numbers: say one of the two", args[0])
		}
		if bare() {
			return nil
		}
		return oneTable(c, args)
	}
	c.RunE = func(_ *cobra.Command, args []string) error {
		if bare() {
			return a.bareNumbers(p, n)
		}
		return a.print(args[0], label.Barcode, "barcodes", p)
	}
	return c
}

// request is what the flags ask for.
func (p *printFlags) request(kind label.Kind) job.Request {
	q := job.Request{
		Kind: kind, On: p.on, Paper: p.paper, Symbology: p.symbology, ExceptBad: p.exceptBad,
		Order: p.order, ByDestination: p.byDest, Start: p.start, Skip: p.skip, Blank: p.blank, Flap: p.flap,
	}
	for _, w := range p.which {
		q.Which = append(q.Which, job.Sort(strings.TrimSpace(w)))
	}
	if p.set("gutter") {
		q.Gutter = &p.gutter
	}
	return q
}

func (a *app) print(path string, kind label.Kind, ending string, p *printFlags) error {
	out := p.out
	if out == "" {
		if path == "-" {
			return errors.New("where to? name the file to write, as in: -o " + ending + ".pdf")
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
	m, letGo, err := a.memory(j, p.memory)
	if err != nil {
		return err
	}
	defer letGo()
	bar := a.progress()
	r := newReporter(a.stderr, label.Warning)
	q := p.request(kind)
	q.Progress, q.Memory = bar.step, m
	if p.more != nil {
		release, err := p.more(&q)
		if err != nil {
			return err
		}
		defer release()
	}
	if err := a.ready(out, p.cuts); err != nil {
		return err
	}
	if p.list {
		q.Each = func(l job.SetLabel) { fmt.Fprintf(a.stderr, "%s: %s\n", l.Ref, l.Report) }
	}
	s, rep, err := j.Print(t, q, r.add, func(write func(io.Writer) error) error {
		return a.writePages(out, write)
	})
	bar.done()
	r.flush()
	a.refused(rep, p.exceptBad, false)
	switch {
	case errors.Is(err, job.ErrNumbers):
		return errSaid
	case errors.Is(err, job.ErrNone) && rep.Held > 0:
		a.remembered(path, kind, m, rep)
		a.say("there is nothing new to print; nothing was written")
		return nil
	case errors.Is(err, job.ErrNone):
		a.say("%s", nothingFor(kind))
		return nil
	case errors.Is(err, job.ErrData):
		a.say("%s; nothing was written", summaryLine(s))
		if !s.Refused && len(s.Bad) > 0 && len(s.Bad) < s.Chosen {
			a.say("--except-bad prints the other %s", plural(s.Chosen-len(s.Bad), "record"))
		}
		return errSaid
	case err != nil:
		return err
	}
	for _, b := range s.Bad {
		a.say("not printed: %s:%d: row %d, %s", b.File, b.Line, b.Row, b.Key)
	}
	a.report(out, pieceOf(kind), rep, p.on == job.OnMount)
	a.remembered(path, kind, m, rep)
	if p.on == job.OnMount {
		a.leftOut(path, rep)
	}
	return a.cuts(j, p.cuts, &rep)
}

// guide prints the places of the mount.
func (a *app) guide(p *printFlags) error {
	if p.out == "" {
		p.out = "guide.pdf"
	}
	j, err := a.job()
	if err != nil {
		return err
	}
	rep, err := j.Guide(p.paper, func(write func(io.Writer) error) error { return a.writePages(p.out, write) })
	if err != nil {
		return err
	}
	a.say("wrote %s: the guide for mounting sheets of %s", p.out, rep.PaperSize)
	a.advice(rep.Warnings)
	return nil
}

// emptyPackets prints packets to write on.
func (a *app) emptyPackets(p *printFlags, n int) error {
	if p.out == "" {
		p.out = "packets.pdf"
	}
	j, err := a.job()
	if err != nil {
		return err
	}
	rep, err := j.PrintEmpty(p.request(label.Packet), n, func(write func(io.Writer) error) error { return a.writePages(p.out, write) })
	if err != nil {
		return err
	}
	a.say("wrote %s: %s on %s of %s", p.out, plural(rep.Labels, "packet"), plural(rep.Papers, "sheet"), rep.PaperSize)
	a.say("closed packets are %s × %s mm", rep.Face.W.Decimal(layout.MM, 0), rep.Face.H.Decimal(layout.MM, 0))
	a.advice(rep.Warnings)
	return a.cuts(j, p.cuts, &rep)
}
