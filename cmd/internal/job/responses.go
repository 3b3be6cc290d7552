package job

import (
	"iter"

	"cornerslip/label/check/bdq"
	"cornerslip/label/table"
	"cornerslip/layout"
)

// Responses answers the data quality tests of TDWG for every record of the
// table, empty rows included, and hands each answer to each in order: values
// that encode as JSON objects of row, test, status and result.
func (j *Job) Responses(t *Table, each func(answer any) error) error {
	respond := bdq.Responder(j.today())
	work := func(_ int, row *table.Row) ([]bdq.Answer, error) { return collect(respond(row)), nil }
	return layout.InOrder(t.Rows(), j.Workers, work, func(answers []bdq.Answer, err error) error {
		if err != nil {
			return err
		}
		for _, a := range answers {
			if err := each(a); err != nil {
				return err
			}
		}
		return nil
	})
}

func collect[T any](seq iter.Seq[T]) []T {
	var all []T
	for v := range seq {
		all = append(all, v)
	}
	return all
}
