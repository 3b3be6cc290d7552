package main

import (
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"cornerslip/cmd/internal/job"
	"cornerslip/label"
)

// slipFlags say which slips are made.
type slipFlags struct {
	identifications string
	as              string
}

func (s *slipFlags) add(f *pflag.FlagSet) {
	s.addTable(f)
	f.StringVar(&s.as, "as", "", "which `slip`, where the table has no column slip: determination, confirmation, revision, comment or type")
}

func (s *slipFlags) addTable(f *pflag.FlagSet) {
	f.StringVar(&s.identifications, "identifications", "", "the `table` of identifications, a row each; joined to the records by catalogNumber, or by collector and number")
}

// slipRequest puts the flags into a request and says how to let go of the table.
func (a *app) slipRequest(q *job.Request, s *slipFlags) (func(), error) {
	release := func() {}
	var err error
	if q.Slip, err = job.ParseSlip(s.as); err != nil || s.identifications == "" {
		return release, err
	}
	comma, err := delimiter(a.comma)
	if err != nil {
		return release, err
	}
	a.reads(s.identifications, "the table of identifications")
	q.Identifications, release, err = job.OpenTable(s.identifications, a.stdin, nil, job.TableOptions{Encoding: a.encoding, Comma: comma, Literal: a.literal})
	if err != nil {
		return func() {}, err
	}
	return release, nil
}

func (a *app) slipCommand() *cobra.Command {
	s := &slipFlags{}
	c, p := a.printCommand(&cobra.Command{
		Use:   "slip trip.csv",
		Short: "Print slips that add a determination to a sheet",
		Long: `slip makes the slips that are added to a sheet when a plant is named anew: the
name, who gave it and when, the institution, and the sheet's number in case the
slip comes loose. A label that was printed once is never changed.

The identifications are a table of their own, one row each, with the columns
scientificName, identifiedBy and dateIdentified; catalogNumber, or recordedBy and
recordNumber, say whose it is. A Darwin Core archive may bring it along. Without
one, each row of the table makes a slip by itself. A column slip says which kind:
determination, confirmation, revision, comment or type; a type slip takes
typeStatus, typifiedName and namePublishedIn.

Slips come in the order of the records, those of one record by date, one for
each of its sheets, boxes and jars. Where records share a mount (column mount of
the table), slips bear the letters A, B and so on of their labels.
Sheets treated long ago may carry poison: gloves, no food, fresh air.`,
		Example: `  cornerslip slip trip.csv --identifications det.csv -o slips.pdf
  cornerslip slip det.csv --as confirmation -o slips.pdf
  cornerslip slip archive.zip --only "Almeida 214" -o slips.pdf`,
	}, label.Slip, "slips")
	s.add(c.Flags())
	p.more = func(q *job.Request) (func(), error) { return a.slipRequest(q, s) }
	return c
}
