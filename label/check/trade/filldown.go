package trade

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
)

// A filler is a column that a spreadsheet counts up when it is pulled down, one
// more in each row, and how that is told from what may well count up.
type filler struct {
	term  string
	least int  // so many successive rows
	ahead bool // the figures before the rest count, not those behind it
	may   func(rest string, figures int) bool
}

var fillers = [...]filler{
	{"geodeticDatum", 3, false, func(rest string, _ int) bool { return rest != "" }},
	{"decimalLatitude", 3, true, oddDegrees},
	{"decimalLongitude", 3, true, oddDegrees},
	{"coordinateUncertaintyInMeters", 5, true, func(rest string, figures int) bool { return figures >= 20 && !strings.ContainsAny(rest, "0123456789") }},
	{"eventDate", 4, false, func(rest string, figures int) bool {
		return figures >= 1700 && figures < 2200 && strings.ContainsAny(rest, "0123456789") && !strings.HasPrefix(strings.TrimLeft(rest, "0"), "1.") && !strings.HasPrefix(strings.TrimLeft(rest, "0"), "1/")
	}},
	{"identifiedBy", 4, false, func(rest string, figures int) bool {
		return figures >= 1700 && figures < 2200 && strings.ContainsFunc(rest, unicode.IsLetter)
	}},
	{"permits", 4, false, func(rest string, _ int) bool { return len(rest) > 3 }},
}

// oddDegrees are those of a place: those of a grid or of a transect end in .5 or
// .25, and count up from station to station.
func oddDegrees(rest string, _ int) bool {
	decimals, _, _ := strings.Cut(strings.TrimPrefix(rest, "."), " ")
	decimals = strings.TrimRight(decimals, "0")
	return len(rest) > 3 && rest[0] == '.' && (len(decimals) > 2 || decimals != "" && strings.Contains(rest, "'")) && !strings.HasPrefix(decimals, "333") && !strings.HasPrefix(decimals, "666")
}

// filledRule is about a column that counts where it ought to repeat.
func filledRule() check.Rule {
	datums := func(of ...string) []map[string]string {
		var all [][]string
		for i, s := range of {
			all = append(all, []string{"geodeticDatum", s, "recordNumber", "2" + itoa(14+i)})
		}
		return rows(all...)
	}
	var terms []string
	for _, f := range fillers {
		terms = append(terms, f.term)
	}
	return check.Rule{
		Name: "column-counts", Severity: label.Warning, Source: practice,
		Doc:            "a datum, degrees, an uncertainty, a permit or the year of a day or of a determiner that is one more in each row, as a spreadsheet fills a column that is pulled down",
		Terms:          terms,
		Example:        datums("EPSG:4326", "EPSG:4327", "EPSG:4328"),
		Counterexample: datums("EPSG:4326", "EPSG:4258", "EPSG:4326"),
		Table:          func() check.TableRule { return &filledTable{} },
	}
}

// filledTable keeps what each of the columns counts to, and the cells of it.
type filledTable struct {
	file              string
	now               [len(fillers)]counting
	collector, number string // of the record before
	found             []label.Finding
}

type counting struct {
	rest    string
	figures int
	values  []string // the first three
	cells   []cell
}

func (t *filledTable) Feed(r *check.Record) {
	for i := range fillers {
		f, now := &fillers[i], &t.now[i]
		field := r.Field(f.term)
		rest, figures, ok := f.cut(field.Text)
		if ok && rest == now.rest && figures == now.figures+1 && (f.term != "eventDate" || t.next(r)) {
			now.figures++
			now.cells = append(now.cells, cellOf(field))
			if len(now.values) < 3 {
				now.values = append(now.values, field.Text)
			}
			continue
		}
		t.flush(i)
		*now = counting{values: now.values[:0], cells: now.cells[:0]}
		if ok {
			if t.file == "" {
				t.file = field.Origin.File
			}
			now.rest, now.figures = rest, figures
			now.values, now.cells = append(now.values, field.Text), append(now.cells, cellOf(field))
		}
	}
	t.collector, t.number = r.Collector, r.Number
}

// next reports whether the record is the collector's next after the one before.
func (t *filledTable) next(r *check.Record) bool {
	was, _ := cutCollectors(t.number)
	is, _ := cutCollectors(r.Number)
	a, err := strconv.Atoi(was.digits)
	b, err2 := strconv.Atoi(is.digits)
	return err == nil && err2 == nil && b == a+1 && was.series == is.series && r.Collector == t.collector
}

// cut parts the figures that may count from the rest.
func (f *filler) cut(text string) (rest string, figures int, ok bool) {
	i := 0
	if f.ahead {
		if i < len(text) && text[i] == '-' {
			i++
		}
		for i < len(text) && text[i] >= '0' && text[i] <= '9' {
			i++
		}
		figures, ok := figuresOf(text[:i])
		return text[i:], figures, ok && f.may(text[i:], figures)
	}
	for i = len(text); i > 0 && text[i-1] >= '0' && text[i-1] <= '9'; i-- {
	}
	figures, ok = figuresOf(text[i:])
	return text[:i], figures, ok && f.may(text[:i], figures)
}

// figuresOf is the number of figures, perhaps behind a minus. Most cells have none,
// for which strconv would make an error.
func figuresOf(text string) (int, bool) {
	n, ok := whole(strings.TrimPrefix(text, "-"))
	if ok && text[0] == '-' {
		n = -n
	}
	return int(n), ok
}

func (t *filledTable) flush(i int) {
	f, now := &fillers[i], &t.now[i]
	if len(now.cells) < f.least {
		return
	}
	t.found = append(t.found, label.Finding{
		Origin: now.cells[1].origin(t.file, f.term),
		Value:  now.values[1],
		Message: fmt.Sprintf("counts up from row to row, %s …, as a spreadsheet fills a column that is pulled down: write %q in all %d rows, if the first is right",
			strings.Join(now.values, ", "), now.values[0], len(now.cells)),
		Also: also(f.term, now.cells[2:]),
	})
}

func (t *filledTable) End() []label.Finding {
	for i := range fillers {
		t.flush(i)
	}
	return t.found
}
