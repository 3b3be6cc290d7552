package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"cornerslip/cmd/internal/job"
)

const rangeHelp = `Numbers are single ones, or ranges with two full stops between the first and the
last: VDOURA-0000101..VDOURA-0000120, or VDOURA-0000101..120. All of them change,
or none.`

func (a *app) registerVoidCommand() *cobra.Command {
	takenOff := false
	c := &cobra.Command{
		Use:   "void NUMBER… | FIRST..LAST",
		Short: "Make spoiled numbers void, so that they are never issued again",
		Long: `void says that numbers are on no sheet and never will be: a sticker that was torn,
stained or lost before it was used. They are never issued again. If one turns up
on a sheet after all, mark it as attached. A reason is needed. A number that the
register has as attached is refused, unless you say that its sticker was taken off
the sheet (--taken-off).

` + rangeHelp,
		Example: `  cornerslip register void VDOURA-0000101 --why "torn in the printer" --register herbarium.db
  cornerslip register void VDOURA-0000101..VDOURA-0000120 --why "sheet of stickers wet" --register herbarium.db`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return fmt.Errorf("which number? as in: cornerslip register void VDOURA-0000101 --why \"torn in the printer\"")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return a.registerMark(job.StateVoid, args, takenOff) },
	}
	a.bookFlags(c)
	a.whyFlag(c)
	c.Flags().BoolVar(&takenOff, "taken-off", false, "the stickers of attached numbers were taken off their sheets")
	return c
}

func (a *app) registerMarkCommand() *cobra.Command {
	states := markStates()
	c := &cobra.Command{
		Use:   "mark STATE NUMBER… | FIRST..LAST",
		Short: "Bring numbers into another state: attached, lost, transferred, …",
		Long: `mark says what has become of numbers and their specimens. STATE is one of
` + states + `.
All but printed and attached need a reason (--why), and so does bringing one of
them back.

` + rangeHelp,
		Example: `  cornerslip register mark transferred VDOURA-0000101 --why "exchange with ALTAVX, list of 3 May" --register herbarium.db
  cornerslip register mark attached VDOURA-0000101..VDOURA-0000120 --register herbarium.db
  cornerslip register mark "held elsewhere" VDOURA-0000007 --why "number of the seed collection's book" --register herbarium.db`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) < 2 {
				return fmt.Errorf("which state, and which numbers? as in: cornerslip register mark lost VDOURA-0000101 --why \"not found in the inventory\"; states are %s", states)
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			word, numbers := args[0], args[1:]
			if strings.EqualFold(word, "held") && len(numbers) > 1 && strings.EqualFold(numbers[0], "elsewhere") {
				word, numbers = word+" "+numbers[0], numbers[1:]
			}
			state, err := job.ParseState(word)
			if err != nil {
				return err
			}
			return a.registerMark(state, numbers, false)
		},
	}
	a.bookFlags(c)
	a.whyFlag(c)
	return c
}

func markStates() string {
	var words []string
	for _, s := range job.MarkStates() {
		words = append(words, string(s))
	}
	return strings.Join(words, ", ")
}

// whyExamples are reasons that messages show.
var whyExamples = map[job.RegisterState]string{"void": "torn in the printer", "lost": "not found in the inventory", "transferred": "exchange with ALTAVX",
	"deaccessioned": "destroyed by insects", "held elsewhere": "number of the seed collection's book"}

func (a *app) registerMark(state job.RegisterState, words []string, takenOff bool) error {
	if job.NeedsReason(state) {
		if err := a.needWhy("making a number "+string(state), whyExamples[state]); err != nil {
			return err
		}
	}
	at, err := a.at()
	if err != nil {
		return err
	}
	return a.withBook(false, func(ctx context.Context, _ *job.Job, r *job.Register) error {
		ranges, err := job.Ranges(ctx, r, words)
		if err != nil {
			return err
		}
		if state == job.StateVoid && !takenOff {
			if err := job.OnNoSheet(ctx, r, ranges); err != nil {
				return err
			}
		}
		n, names := 0, make([]string, len(ranges))
		for i, one := range ranges {
			n += one.Len()
			names[i] = one.String()
		}
		what := strings.Join(names, ", ")
		if n > 1 && job.NeedsReason(state) && !a.sure(fmt.Sprintf("make %s %s: %s?", counted(n, "number"), state, what)) {
			return nil
		}
		if err := r.Mark(ctx, at, state, ranges...); err != nil {
			if a.why == "" && strings.Contains(err.Error(), "needs a reason") {
				err = fmt.Errorf("%w; say it as in --why \"found again in the wrong folder\"", err)
			}
			return err
		}
		if state == job.StateVoid {
			a.say("%s %s void now and never issued again (%s)", what, isAre(n), counted(n, "number"))
		} else {
			a.say("%s %s %s now (%s)", what, isAre(n), state, counted(n, "number"))
		}
		return nil
	})
}
