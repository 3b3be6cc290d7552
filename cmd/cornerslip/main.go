// Command cornerslip turns a table of plant collection records into printed
// labels: sheet labels, packet labels and barcodes, as PDF.
package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"regexp"
	"runtime/debug"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

func main() {
	if os.Getenv("GOGC") == "" {
		// Checking and setting make much that lives for one row only; a heap of a
		// few dozen megabytes more saves a fifth of the time.
		debug.SetGCPercent(400)
	}
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// The exit codes.
const (
	exitOK    = 0
	exitData  = 1 // the data has errors; nothing was written
	exitUsage = 2 // wrong use, or a file that cannot be read or written
)

// app is one call of the program.
type app struct {
	stdin          io.Reader
	stdout, stderr io.Writer

	house     string
	date      string
	langs     []string
	backlog   bool
	dates     string
	encoding  string
	comma     string
	literal   bool
	worksheet string
	only      []string
	force     bool
	book      string // the register
	by, why   string // of a change in it

	inputs map[string]string // the files that are read, and what they are

	asks    bool          // somebody answers, though no terminal is seen
	answers *bufio.Reader // of stdin
}

// run is the program; it returns the exit code.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	a := &app{stdin: stdin, stdout: stdout, stderr: stderr}
	root := a.root()
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(stdout)
	root.SetErr(stderr)
	err := root.Execute()
	switch {
	case err == nil:
		return exitOK
	case errors.Is(err, errSaid): // every finding was shown already
		return exitData
	case errors.Is(err, job.ErrData):
		a.say("%v", err)
		return exitData
	}
	for line := range strings.Lines(err.Error()) {
		fmt.Fprintf(stderr, "cornerslip: %s", strings.TrimRight(line, "\n")+"\n")
	}
	return exitUsage
}

// errSaid is returned where everything has been said on the way.
var errSaid = errors.New("the data has errors")

func (a *app) say(format string, args ...any) {
	fmt.Fprintf(a.stderr, "cornerslip: "+format+"\n", args...)
}

func (a *app) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "cornerslip",
		Short: "Labels for herbarium sheets, packets and numbers, from a table to paper",
		Long: `cornerslip reads a table of collection records (CSV, with Darwin Core or plain
field headings) and makes PDF pages of labels that are ready to print and cut.

A first try:
  cornerslip check trip.csv                # what is wrong with the table
  cornerslip proof trip.csv                # how the labels will look, here
  cornerslip sheet trip.csv -o labels.pdf  # the labels, to print at 100 %`,
		Version:       job.Version,
		Args:          anyCommand,
		RunE:          func(c *cobra.Command, _ []string) error { return c.Help() },
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.SetFlagErrorFunc(flagError)
	f := root.PersistentFlags()
	f.StringVar(&a.house, "house", "", "the house `file`, such as house.toml: your herbarium's own settings")
	f.StringVar(&a.date, "date", "", "the `day` of the run, as 2026-07-30 (default: today)")
	f.StringSliceVar(&a.langs, "lang", nil, "`language` of the words the program prints: en, pt, es, fr, de, la, zh-Hant; two make it bilingual (pt,en)")
	root.AddCommand(
		a.checkCommand(), a.mendCommand(), a.sheetCommand(), a.packetCommand(), a.barcodeCommand(), a.slipCommand(), a.tagCommand(), a.proofCommand(),
		a.reprintCommand(), a.listCommand(), a.calibrateCommand(), a.registerCommand(), a.attachCommand(),
		a.readCommand(), a.houseCommand(), a.fontsCommand(),
	)
	return root
}

// tableFlags are those of every command that reads a table.
func (a *app) tableFlags(c *cobra.Command) {
	f := c.Flags()
	f.StringArrayVar(&a.only, "only", nil, "only this `record`: \"Almeida 214\", a catalogue number, \"row 14\" or \"rows 3-9\"; may be said several times")
	f.BoolVar(&a.backlog, "backlog", false, "an old collection: records may lack collector and place")
	f.StringVar(&a.dates, "dates", "", "`how` the table writes dates in figures: \"day first\" or \"month first\", and the century of years with two figures, as in \"day first, 1900s\" (default: the house's, else what can be read two ways is an error)")
	a.readFlags(c)
}

// readFlags say how a table is written.
func (a *app) readFlags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&a.encoding, "encoding", "", "character `encoding` of the table, such as windows-1252 (default: UTF-8, or as its first bytes say)")
	f.StringVar(&a.comma, "delimiter", "", "what stands between the cells, the `sign`: comma, semicolon, tab, pipe (default: found from the heading row)")
	f.StringVar(&a.worksheet, "worksheet", "", "the `name` of the worksheet, where the table is a workbook (default: the first with headings that are known)")
	f.BoolVar(&a.literal, "no-quotes", false, "quotation marks in the table are ordinary characters")
}

func (a *app) forceFlag(c *cobra.Command) {
	c.Flags().BoolVar(&a.force, "force", false, "replace the file if it is there already")
}

// today returns the date of the run: the only place that asks the clock.
func (a *app) today() (time.Time, error) {
	if a.date == "" {
		now := time.Now()
		return time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, time.UTC), nil
	}
	t, err := time.Parse(time.DateOnly, a.date)
	if err != nil {
		return t, fmt.Errorf("--date %q is not a date; write it as 2026-07-30", a.date)
	}
	return t, nil
}

// job opens the house file.
func (a *app) job() (*job.Job, error) {
	t, err := a.today()
	if err != nil {
		return nil, err
	}
	a.reads(a.house, "the house file")
	return job.Open(job.Options{House: a.house, Date: t, Languages: a.langs, Backlog: a.backlog, Dates: a.dates})
}

// notParsed is what a flag's error ends with where its value is of another
// kind.
var notParsed = regexp.MustCompile(`^invalid argument (".*") for "(?:-\w, )?(--[-\w]+)" flag: (?:strconv|parse error)`)

// flagError says a fault of the flags in the program's words.
func flagError(c *cobra.Command, err error) error {
	if m := notParsed.FindStringSubmatch(err.Error()); m != nil {
		kind := "write a number, as in 3 or 2.5"
		if f := c.Flag(strings.TrimPrefix(m[2], "--")); f != nil && f.Value.Type() == "int" {
			kind = "write a whole number, as in 3"
		} else if f != nil && f.Value.Type() == "bool" {
			kind = "say it alone, without a value"
		}
		return fmt.Errorf("%s %s: %s", m[2], m[1], kind)
	}
	return fmt.Errorf("%w; \"%s --help\" shows what there is", err, c.CommandPath())
}

// anyCommand wants a command that there is; without any, the help is shown.
func anyCommand(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	c.SuggestionsMinimumDistance = 2 // letters
	near := ""
	if all := c.SuggestionsFor(args[0]); len(all) > 0 {
		near = " (did you mean " + strings.Join(all, " or ") + "?)"
	}
	return fmt.Errorf("there is no \"%s %s\"%s; \"%[1]s --help\" shows what there is", c.CommandPath(), args[0], near)
}

// noWords wants flags alone.
func noWords(c *cobra.Command, args []string) error {
	if len(args) > 0 {
		return fmt.Errorf("what is %q for? \"%s\" takes no such word; \"%[2]s --help\" shows what there is", args[0], c.CommandPath())
	}
	return nil
}

// oneTable wants exactly one table.
func oneTable(c *cobra.Command, args []string) error {
	switch len(args) {
	case 0:
		return fmt.Errorf("which table? as in: %s trip.csv (or - for standard input)", c.CommandPath())
	case 1:
		return nil
	}
	return fmt.Errorf("one table at a time, but there are %d: %s", len(args), strings.Join(args, ", "))
}
