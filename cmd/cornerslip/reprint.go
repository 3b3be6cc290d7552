package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
)

// reprintFlags say which label is printed again, and how.
type reprintFlags struct {
	printFlags
	kind      string
	pick      int
	as        string
	table     string
	marked    bool
	unmounted bool
}

func (a *app) reprintCommand() *cobra.Command {
	p := &reprintFlags{}
	c := &cobra.Command{
		Use:   `reprint "Almeida 214"`,
		Short: "Print one label again, exactly as it was",
		Long: `reprint finds a label in the register and prints it again: the same words and the
same lines, even where the table is gone or the house file has changed.

Say what you have: a catalogue number, typed or scanned; collector and number; or
part of a name. Where several labels fit they are shown, and you choose one.

Where the table it was printed from says something else by now, reprint shows
what, and asks which you mean. A label whose determination has changed stays as
it is: the sheet gets a slip.

The paper may be part used: --start names the first free place, row and column
from 1. Why a label was printed again is kept in the register. For a sheet that is
mounted, --marked adds a small line "reprinted" with the day; keep the damaged
label in the packet on the sheet.`,
		Example: `  cornerslip reprint "Almeida 214" --register herbarium.db --why torn
  cornerslip reprint VDOURA-0004217 --register herbarium.db --kind sheet --why "ink ran" -o one.pdf
  cornerslip reprint "iris boiss" --house house.toml --pick 2 --start 3,1 --why lost`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return fmt.Errorf("which label? as in: %s \"Almeida 214\"", c.CommandPath())
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error { return a.reprint(c.Context(), strings.Join(args, " "), p) },
	}
	a.bookFlags(c)
	a.whyFlag(c)
	a.forceFlag(c)
	a.readFlags(c)
	f := c.Flags()
	f.StringVarP(&p.out, "output", "o", "", "the PDF `file` to write (default: reprint- and the label's number; a further one gets -2)")
	f.StringVar(&p.kind, "kind", "", "only labels of this `kind`: sheet, packet, container (of a box or jar), barcode or slip")
	f.IntVar(&p.pick, "pick", 0, "which of the labels that fit, by its `number` in the list")
	f.StringVar(&p.as, "as", "", "which words, where the record has changed: `printed` (as it was) or now (as the table has it)")
	f.StringVar(&p.table, "table", "", "the `table` to hold the label against (default: the one it was printed from, if it is there)")
	f.BoolVar(&p.marked, "marked", false, "add a small line \"reprinted\" with the day")
	f.BoolVar(&p.unmounted, "unmounted", false, "with --as now: the printed label was thrown away and never mounted")
	f.StringVar(&p.on, "on", "", "`where` it goes: paper, mount or stickers (default: stickers for barcode labels if the house has any, else paper)")
	f.StringVar(&p.paper, "paper", "", "`size` of the paper, as in A4 (default: the house's, else A4)")
	f.StringVar(&p.start, "start", "", "the first free place of a part-used paper: `row,column` such as 2,3, or a number counted row by row")
	f.StringArrayVar(&p.skip, "skip", nil, "a further `place` that is used or spoilt, as in 4,1; may be said several times")
	return c
}

func (a *app) reprint(ctx context.Context, text string, p *reprintFlags) error {
	switch {
	case p.as != "" && p.as != "printed" && p.as != "now":
		return fmt.Errorf("--as %q is not known; say printed or now", p.as)
	case p.kind != "" && !slices.Contains([]string{"sheet", "packet", "container", "barcode", "slip"}, p.kind):
		return fmt.Errorf("--kind %q is not known; say sheet, packet, container, barcode or slip", p.kind)
	}
	j, err := a.job()
	if err != nil {
		return err
	}
	r, err := a.openBook(ctx, j, job.RegisterOptions{})
	if err != nil {
		return err
	}
	defer r.Close()
	if p.out != "" { // said now, not after all questions are answered
		if err := job.CanWrite(p.out, a.force); err != nil {
			return err
		}
	}
	one, err := a.pickPrinted(ctx, r, text, p)
	if err != nil {
		return err
	}
	if err := one.Load(ctx, r); err != nil {
		return err
	}
	k := one.Last()
	a.say("%s, printed on %s%s", one, day(k.When), earlierTimes(one))
	if j, err = a.keptHouse(j, k.Run.House); err != nil {
		return err
	}
	t, since, release := a.since(j, one, p)
	defer release()
	now, err := a.whichWords(one, t, since, p)
	if err != nil {
		return err
	}
	if a.why == "" {
		if a.why = a.answer("why is it printed again (torn, ink ran, lost)?"); a.why == "" {
			return errors.New(`say why it is printed again, as in: --why "torn"`)
		}
	}
	at, err := a.at()
	if err != nil {
		return err
	}
	mounted := isMounted(ctx, r, one)
	if mounted && !p.marked && !now {
		answer := a.answer("it is on a mounted sheet; add a small line \"reprinted\" with the day (y/n)?")
		p.marked = strings.HasPrefix(strings.ToLower(answer), "y")
	}
	if p.out == "" {
		p.out = a.freeName("reprint-"+fileName(one), ".pdf")
	}
	q := job.Request{On: p.on, Paper: p.paper, Memory: &job.Memory{Register: r, At: at}}
	for _, l := range one.Labels {
		q.Memory.Again = append(q.Memory.Again, l.ID)
	}
	write := func(write func(io.Writer) error) error { return a.writePages(p.out, write) }
	var rep job.Report
	if now {
		q.Memory.Anew = true
		rep, err = a.reprintChanged(j, t, q, one, since, write)
	} else {
		rep, err = j.Reprint(q, job.Reprint{Printed: *one, Marked: p.marked, Start: p.start, Skip: p.skip}, write)
	}
	if err != nil {
		return err
	}
	a.say("wrote %s: %s on %s of %s", p.out, plural(rep.Labels, "label"), plural(rep.Papers, "sheet"), rep.PaperSize)
	if rep.Picture != "" {
		a.say("the paper's places (■ printed on, □ still free, × used up):")
		fmt.Fprint(a.stderr, rep.Picture)
	}
	a.keepDamaged(one, mounted && !p.marked)
	a.scans(rep.Scans)
	a.advice(rep.Warnings)
	return nil
}

// pickPrinted finds the one label that is meant.
func (a *app) pickPrinted(ctx context.Context, r *job.Register, text string, p *reprintFlags) (*job.Printed, error) {
	found, more, err := job.FindPrinted(ctx, r, text, label.Kind(p.kind))
	if err != nil {
		return nil, err
	}
	if len(found) == 0 && p.kind != "" {
		return nil, fmt.Errorf("no %s label that was printed fits %q; leave --kind out to see the others", p.kind, text)
	}
	if len(found) == 0 {
		return nil, fmt.Errorf("no label that was printed fits %q; try the catalogue number, collector and number, or the first letters of the name", text)
	}
	if p.pick == 0 && len(found) == 1 {
		return &found[0], nil
	}
	if p.pick == 0 {
		const most = 20
		a.say("%d labels fit %q:", len(found), text)
		for i, one := range found {
			if i == most {
				a.say("     and %d more", len(found)-i)
				break
			}
			a.say("%4d  %s, printed on %s", i+1, &one, day(one.Last().When))
		}
		if more {
			a.say("there may be others: say more of the name or the number")
		}
		for p.pick == 0 {
			answer := a.answer("which one?")
			if answer == "" {
				return nil, errors.New("which one? say --pick and its number, or --kind")
			}
			if p.pick, err = strconv.Atoi(answer); err != nil || p.pick < 1 || p.pick > len(found) {
				a.say("%q is not one of the numbers shown; type one from 1 to %d, or Enter alone to stop", answer, len(found))
				p.pick = 0
			}
		}
	}
	if p.pick < 1 || p.pick > len(found) {
		return nil, fmt.Errorf("there is no label %d: %d fit", p.pick, len(found))
	}
	return &found[p.pick-1], nil
}

func earlierTimes(one *job.Printed) string {
	n := one.Last().Reprinted
	switch {
	case len(one.Earlier) > 0:
		return ", before that on " + day(one.Earlier[0])
	case n > 0:
		return fmt.Sprintf(", reprinted %s since", times(n))
	}
	return ""
}

func times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// keptHouse returns the job by which a label is placed: that of the house file
// named, else of the one it was printed with.
func (a *app) keptHouse(j *job.Job, kept string) (*job.Job, error) {
	if a.house != "" || kept == "" {
		return j, nil
	}
	date, err := a.today()
	if err != nil {
		return nil, err
	}
	with, err := job.Open(job.Options{House: "house.toml", HouseText: []byte(kept), Date: date, Languages: a.langs})
	if err != nil {
		a.say("warning: the house file it was printed with cannot be used here (%v); paper and printer are taken as usual", err)
		return j, nil
	}
	return with, nil
}

// since holds the label against the table it was printed from.
func (a *app) since(j *job.Job, one *job.Printed, p *reprintFlags) (*job.Table, job.Since, func()) {
	nothing := func() {}
	if k := one.Last().Kind; k == label.Slip || k == label.Barcode {
		return nil, job.Since{}, nothing // a later determination is another slip, and bars say a number alone
	}
	path := p.table
	if path == "" {
		if path = one.Last().Run.Source; path == "" {
			return nil, job.Since{}, nothing
		}
		if _, err := os.Stat(path); err != nil {
			return nil, job.Since{}, nothing // gone, and not needed
		}
	}
	a.only = nil
	t, release, err := a.table(path)
	var s job.Since
	if err == nil {
		if s, err = j.Since(t, one.Last()); err != nil {
			release()
		}
	}
	if err != nil {
		a.say("warning: the label was not held against its table: %v", err)
		return nil, job.Since{}, nothing
	}
	if s.Row == 0 && p.table != "" {
		a.say("warning: %s has no such record; the label is printed as it was", path)
	}
	return t, s, release
}

// whichWords decides whether the label is printed as the record is now.
func (a *app) whichWords(one *job.Printed, t *job.Table, s job.Since, p *reprintFlags) (now bool, err error) {
	if len(s.Terms) == 0 {
		if p.as == "now" && t == nil {
			return false, errors.New("--as now needs the table; name it, as in --table trip.csv")
		}
		return p.as == "now" && s.Row > 0, nil
	}
	a.say("the record has changed since, in %s, row %d:", t.Source().Name(), s.Row)
	for _, d := range s.Terms {
		a.say("  %s: printed %q, now %q", d.Term, short(d.Then), short(d.Now))
	}
	if s.Slip && one.Last().Kind != label.Slip {
		if p.as == "now" && p.unmounted {
			return true, nil
		}
		a.say("its determination has changed: the label stays, and the sheet gets a slip, as in:")
		a.say("  cornerslip slip %s --only %s", quote(t.Source().Name()), quote(fmt.Sprintf("row %d", s.Row)))
		if p.as == "now" {
			return false, errors.New("the label of a mounted sheet is not printed with another name; say --unmounted if it was thrown away before")
		}
		return false, nil
	}
	switch p.as {
	case "now":
		return true, nil
	case "printed":
		return false, nil
	}
	switch strings.ToLower(a.answer("print it as it was (p), or as the record is now (n)?")) {
	case "p", "printed":
		return false, nil
	case "n", "now":
		return true, nil
	}
	return false, errors.New("which words? say --as printed or --as now")
}

// reprintChanged prints the label as the record is now.
func (a *app) reprintChanged(j *job.Job, t *job.Table, q job.Request, one *job.Printed, s job.Since, write func(func(io.Writer) error) error) (job.Report, error) {
	r := newReporter(a.stderr, label.Warning)
	sum, rep, err := j.PrintChanged(t, q, one, s.Row, r.add, write)
	r.flush()
	if errors.Is(err, job.ErrData) {
		a.say("%s; nothing was written", summaryLine(sum))
		return rep, errSaid
	}
	return rep, err
}

// isMounted reports whether the register has the specimen of a sheet label of
// our own on its sheet.
func isMounted(ctx context.Context, r *job.Register, one *job.Printed) bool {
	k := one.Last()
	if k.Kind != label.Sheet || k.For != "" || k.CatalogNumber == "" {
		return false
	}
	row, err := r.Number(ctx, k.CatalogNumber)
	return err == nil && row.State == "attached"
}

// keepDamaged reminds of what belongs to a label that is printed again.
func (a *app) keepDamaged(one *job.Printed, unmarked bool) {
	if k := one.Last(); k.Kind != label.Sheet || k.For != "" {
		return
	}
	a.say("if the specimen is mounted, keep the damaged label in the packet on its sheet")
	if unmarked {
		a.say("the register has it as mounted: --marked adds a small line \"reprinted\" with the day")
	}
}

// fileName is a label's number or key as part of a file's name.
func fileName(one *job.Printed) string {
	k := one.Last()
	text := k.CatalogNumber
	if text == "" {
		text = one.Key()
	}
	if k.For != "" {
		text += " " + k.For
	}
	words := strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	return strings.Join(append(words, string(k.Kind)), "-")
}

// freeName returns a name that no file has yet, with a number where it must.
func (a *app) freeName(name, end string) string {
	free := name + end
	for n := 2; !a.force; n++ {
		if _, err := os.Lstat(free); err != nil {
			break
		}
		free = fmt.Sprintf("%s-%d%s", name, n, end)
	}
	return free
}

// answer asks the person at the keyboard; "" where there is none.
func (a *app) answer(question string) string {
	if !a.asks {
		f, ok := a.stdin.(*os.File)
		if !ok || !term.IsTerminal(int(f.Fd())) {
			return ""
		}
	}
	fmt.Fprintf(a.stderr, "%s ", question)
	if a.answers == nil {
		a.answers = bufio.NewReader(a.stdin)
	}
	line, _ := a.answers.ReadString('\n')
	return strings.TrimSpace(line)
}
