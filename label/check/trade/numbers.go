package trade

import (
	"cmp"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/date"
)

// numberRules are about what spreadsheets do to numbers.
func numberRules() []check.Rule {
	numbers := []string{"recordNumber", "catalogNumber"}
	return []check.Rule{
		{
			Name: "number-month", Severity: label.Warning, Source: spreadsheets + "; " + fieldNumbers + " (year-hyphen numbers)",
			Doc: "a number that a spreadsheet made a month or a date: 5-97 became May-97", Terms: numbers,
			Example: one("recordNumber", "May-97"), Counterexample: one("recordNumber", "97-5"),
			Row: func(c *check.Context) {
				for _, term := range numbers {
					if message, suggest := monthNumber(c, c.Text(term)); message != "" {
						c.Suggest(term, message, suggest)
					}
				}
			},
		},
		{
			Name: "number-scientific", Severity: label.Error, Source: spreadsheets,
			Doc: "a number that a spreadsheet wrote with an exponent: its last figures may be lost", Terms: numbers,
			Example: one("recordNumber", "1.23457E+11"), Counterexample: one("recordNumber", "E12"),
			Row: func(c *check.Context) {
				for _, term := range numbers {
					if text := c.Text(term); strings.ContainsAny(text, "eE") && exponent.MatchString(text) {
						c.Report(term, "a spreadsheet's way of writing a long number, whose last figures may be lost: format the column as text and type the number again")
					}
				}
			},
		},
		{
			Name: "number-zeros", Severity: label.Warning, Source: spreadsheets,
			Doc: "a number that lost its leading zeros, which the others of its kind have", Terms: numbers,
			Example: rows([]string{"catalogNumber", "0001234"}, []string{"catalogNumber", "0001235", "recordNumber", "215"}, []string{"catalogNumber", "0001236", "recordNumber", "216"},
				[]string{"catalogNumber", "0001237", "recordNumber", "217"}, []string{"catalogNumber", "0001238", "recordNumber", "218"}, []string{"catalogNumber", "1239", "recordNumber", "219"}),
			Counterexample: rows([]string{"catalogNumber", "0001234"}, []string{"catalogNumber", "0001235", "recordNumber", "215"}, []string{"catalogNumber", "0001236", "recordNumber", "216"},
				[]string{"catalogNumber", "0001237", "recordNumber", "217"}, []string{"catalogNumber", "0001238", "recordNumber", "218"}, []string{"catalogNumber", "1001239", "recordNumber", "219"}),
			Table: func() check.TableRule { return &zerosTable{} },
		},
	}
}

// exponent is how spreadsheets write 123456789012: a collector's own number
// has neither the point nor the plus ("5E12" may be one).
var exponent = regexp.MustCompile(`^[0-9](?:[.,][0-9]+[eE][+-]?|[eE]\+)[0-9]{2}$`)

// wordHyphen is a month's word and two figures, either way round.
var (
	monthFirst = regexp.MustCompile(`^(\p{L}{3,10})\.?[-/ ]([0-9]{2})$`)
	monthLast  = regexp.MustCompile(`^([0-9]{1,2})(?:[-/ ]|\. )(\p{L}{3,10})\.?$`)
	monthSign  = regexp.MustCompile(`^([0-9]{1,2})月([0-9]{1,2})日$`)
	fullDate   = regexp.MustCompile(`^(?:[0-9]{4}-[0-9]{2}-[0-9]{2}(?:[ T][0-9:.]+)?|[0-9]{1,2}/[0-9]{1,2}/[0-9]{4})$`)
)

// monthNumber tells whether a number looks like what a spreadsheet makes of
// two figures with a hyphen.
func monthNumber(c *check.Context, text string) (message, suggest string) {
	if n := len(text); n < 4 || n > 24 || strings.IndexByte("-/ ", text[n-3]) < 0 && strings.IndexByte("-/ .", text[1]) < 0 && strings.IndexByte("-/ .", text[2]) < 0 && (text[0] < '0' || text[0] > '9' || n < 8) {
		return "", ""
	}
	const do = "a spreadsheet makes that of figures with a hyphen: format the column as text and type the number again"
	if m := monthFirst.FindStringSubmatch(text); m != nil {
		if month := spreadsheetMonth(m[1]); month > 0 {
			return do, itoa(month) + "-" + m[2]
		}
	}
	if m := monthLast.FindStringSubmatch(text); m != nil {
		// A spreadsheet writes the day first whichever way it was typed.
		if month := spreadsheetMonth(m[2]); month > 0 {
			d, _ := strconv.Atoi(m[1])
			if d > 12 {
				return do, ""
			}
			if d == month {
				return do, itoa(d) + "-" + itoa(month)
			}
			return do, itoa(d) + "-" + itoa(month) + " or " + itoa(month) + "-" + itoa(d)
		}
	}
	if m := monthSign.FindStringSubmatch(text); m != nil {
		return do, m[1] + "-" + m[2]
	}
	if fullDate.MatchString(text) && text != c.Text("eventDate") && text != c.Text("verbatimEventDate") {
		// Some number by the day: then the date is the day's.
		if r := date.Read(text, date.Hints{}); r.Status == date.OK && !c.Date.IsZero() && r.Date.WithoutTime() == c.Date.WithoutTime() {
			return "", ""
		}
		return "a date where a number is meant: " + do, ""
	}
	return "", ""
}

// spreadsheetMonth reads a month as spreadsheets write it: "May", "mai",
// "Mai". Words in capitals are prefixes ("MAR-12").
func spreadsheetMonth(word string) int {
	letters := []rune(word)
	if !unicode.IsLower(letters[len(letters)-1]) {
		return 0
	}
	for _, r := range letters[1:] {
		if !unicode.IsLower(r) {
			return 0
		}
	}
	month, err := date.ParseMonth(word)
	if err != nil || romanOnly(word) {
		return 0
	}
	return month
}

// romanOnly reports whether a word is a Roman figure ("xii", "vii").
func romanOnly(word string) bool { return strings.Trim(strings.ToLower(word), "ivx") == "" }

// zeroGroup are the numbers with one prefix in one column.
type zeroGroup struct {
	first  int     // width of the first that begins with a zero
	widths [16]int // how many begin with a zero, by width
	// short are numbers without a zero at the front, of any width, and those of
	// another width than the first: 24 bytes each.
	short []shortNumber
}

type shortNumber struct {
	cell
	digits int32
	number uint64
}

// zerosTable keeps 24 bytes for each number that has fewer figures than the
// longest, as long as any of its kind begin with zeros.
type zerosTable struct {
	file   string
	groups [2]map[string]*zeroGroup
}

var zeroTerms = [2]string{"recordNumber", "catalogNumber"}

// enoughZeros is how many numbers with leading zeros make a rule of them.
const enoughZeros = 5

func (z *zerosTable) Feed(r *check.Record) {
	for i, term := range zeroTerms {
		f := r.Field(term)
		prefix, digits := cutNumber(f.Text)
		if digits == "" || len(digits) > 15 {
			continue
		}
		z.file = f.Origin.File
		if z.groups[i] == nil {
			z.groups[i] = map[string]*zeroGroup{}
		}
		g := z.groups[i][prefix]
		if g == nil {
			g = &zeroGroup{}
			z.groups[i][strings.Clone(prefix)] = g
		}
		if digits[0] == '0' && len(digits) > 1 {
			if g.first == 0 {
				g.first = len(digits)
			}
			if g.widths[len(digits)]++; len(digits) == g.first && g.widths[g.first] > 1 {
				continue
			}
		}
		n, _ := strconv.ParseUint(digits, 10, 64)
		g.short = append(g.short, shortNumber{cellOf(f), int32(len(digits)), n})
	}
}

// cutNumber takes the figures off the end of a number.
func cutNumber(s string) (prefix, digits string) {
	i := len(s)
	for i > 0 && s[i-1] >= '0' && s[i-1] <= '9' {
		i--
	}
	return s[:i], s[i:]
}

func (z *zerosTable) End() []label.Finding {
	var all []label.Finding
	for i, term := range zeroTerms {
		for _, prefix := range slices.Sorted(maps.Keys(z.groups[i])) {
			g := z.groups[i][prefix]
			width := 0
			for w, n := range g.widths {
				if n > g.widths[width] {
					width = w
				}
			}
			zeros := g.widths[width]
			if zeros < enoughZeros || width != g.first && g.widths[g.first] > 1 {
				continue // two widths are in use
			}
			g.short = slices.DeleteFunc(g.short, func(n shortNumber) bool { return int(n.digits) >= width })
			if len(g.short) == 0 || len(g.short) > zeros/5 {
				continue
			}
			slices.SortFunc(g.short, func(a, b shortNumber) int { return cmp.Compare(a.row, b.row) })
			for _, n := range g.short {
				all = append(all, label.Finding{
					Origin: n.origin(z.file, term), Value: fmt.Sprintf("%s%0*d", prefix, n.digits, n.number),
					Message: fmt.Sprintf("%d figures, where %s of its kind have %d and begin with zeros: format the column as text", n.digits, plural(zeros, "other"), width),
					Suggest: fmt.Sprintf("%s%0*d", prefix, width, n.number),
				})
			}
		}
	}
	return all
}
