package check

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"cornerslip/label/date"
)

// voucher is a collector with a number after the name, and others after that:
// "Prates 2048, Costa", "Teles s.n.", "Almeida & Mota RLB 5028".
var voucher = regexp.MustCompile(`^(\D*?\pL\D*?)[\s,:;]*((?:[A-Z]{2,4}[- ]?|[A-Z]-?)?\d[\w./-]*(?:(?:,| ?&| and|;) ?(?:\d{1,6}[A-Za-z]?|[A-Z]\b))*|s\. ?n\.|s/n|sn\b\.?)\s*(?:[,;&+]\s*(\PN+?)|(?:and|with|y|e|et|und)\s+(\PN+?))?(?:\s*[(\[]\s*((?:[A-Z]{1,8}(?:[- ]?\d{3,}[A-Za-z]?)?!?)(?:[,;! ]+[A-Z]{1,8}(?:[- ]?\d{3,}[A-Za-z]?)?!?)*)\s*[)\]])?$`)

// sheetNumber is a herbarium's code with the number of a sheet: "VDOURA 0012345".
var sheetNumber = regexp.MustCompile(`^[A-Z]{1,8}[- ]?\d{4,}[A-Za-z]?$`)

// archivedVoucher is a voucher as sequence archives have it: the herbarium's code,
// perhaps a collection of it, and the number of the sheet, "VDOURA:F:0012345".
// Source: INSDC feature table definition, /specimen_voucher.
var archivedVoucher = regexp.MustCompile(`^[A-Z]{1,8}(?:<[A-Z-]+>)?:(?:[A-Za-z-]{1,12}:)?[\w.-]*\d[\w.-]*$`)

// footNote is a sign behind a voucher that leads to a note below the printed table.
var footNote = regexp.MustCompile(`(\d[A-Za-z]?|[)\]])\s*[*†‡§]{1,3}$`)

// numberInBrackets is a number behind the collector in brackets or behind a sign: "Almeida
// (214)", "Almeida #214".
var numberInBrackets = regexp.MustCompile(`\s*(?:\((?:#|no?\. ?|nr\. ?)?(\d{1,6}[a-z]?)\)|#(\d{1,6}[a-z]?))$`)

// initialedNumber is a number behind two to four letters, which are the collector's
// where they are no herbarium's: "IMA0214", "IMA-214.1".
var initialedNumber = regexp.MustCompile(`^([A-Z]{2,4})[- ]?\d{1,5}(?:\.\d{1,2}|[a-z])?$`)

// unreadVoucher reports whether a cell should hold collector and number and holds
// something else.
func (c *Context) unreadVoucher() bool {
	return c.Text("collectorAndNumber") != "" && c.Text("recordedBy") == "" && c.Text("recordNumber") == "" && !Absent("recordedBy", c.Text("collectorAndNumber"))
}

// readVoucher parts collector and number that stand in one cell, where the table
// has no columns for them. A herbarium's code with the number of its sheet is no
// collector.
func (c *Context) readVoucher() {
	f := c.Field("collectorAndNumber")
	if f.Text == "" {
		return
	}
	if strings.Contains(f.Text, "_") && !strings.Contains(f.Text, " ") {
		f.Text = spaced(f.Text)
	}
	f.Text = footNote.ReplaceAllString(f.Text, "$1")
	if c.row.Table().Tells("collectorAndNumber", "eventDate") && c.Text("eventDate") == "" {
		if people, day := dateBehind(f.Text, c.Options.Dates); day != "" {
			c.readAs(f, "eventDate", day)
			f.Text = people
			if !strings.ContainsAny(people, "0123456789") && !voucher.MatchString(people) && c.Text("recordedBy") == "" {
				c.readAs(f, "recordedBy", people)
				return
			}
		}
	}
	f.Text = numberInBrackets.ReplaceAllString(f.Text, " $1$2")
	if archivedVoucher.MatchString(f.Text) {
		if c.Text("catalogNumber") == "" {
			c.readAs(f, "catalogNumber", f.Text)
		}
		return
	}
	m := voucher.FindStringSubmatch(f.Text)
	if m != nil && !oneTrip(m[2]) {
		m = nil
	}
	if people, number := c.Text("recordedBy"), c.Text("recordNumber"); people != "" || number != "" {
		term, text := "", ""
		switch {
		case number != "" && c.Text("catalogNumber") == "" && sheetNumber.MatchString(f.Text) && !strings.HasSuffix(f.Text, number):
			term, text = "catalogNumber", f.Text
		case number == "" && m != nil && !isCode(m[1]) && strings.Contains(people, longestWord(m[1])):
			term, text = "recordNumber", m[2]
		case number == "" && hasInitials(f.Text, people):
			term, text = "recordNumber", f.Text
		default:
			return // it repeats what the columns say, or is told at its heading
		}
		c.readAs(f, term, text)
		return
	}
	if m == nil || isCode(m[1]) {
		if c.initialed(f.Text) {
			c.readAs(f, "recordNumber", f.Text)
			return
		}
		if sheetNumber.MatchString(f.Text) && c.Text("catalogNumber") == "" {
			c.readAs(f, "catalogNumber", f.Text)
		}
		if !strings.ContainsAny(f.Text, "0123456789") && !isCode(f.Text) && (isPerson(f.Text) || strings.Contains(f.Text, " & ")) {
			c.readAs(f, "recordedBy", f.Text) // whose number is not known
		}
		return
	}
	if m[2] == "sn" || m[2] == "sn." {
		m[2] = "s.n."
	}
	people := m[1]
	if others := m[3] + m[4]; others != "" {
		people += " | " + others
	}
	c.readAs(f, "recordedBy", people)
	c.readAs(f, "recordNumber", m[2])
	if sheetNumber.MatchString(m[5]) && c.Text("catalogNumber") == "" {
		c.readAs(f, "catalogNumber", m[5]) // "(VDOURA 0012345)"
	}
}

// dateBehind parts a text from the date that stands behind it, after a sign: "Almeida
// 214, 12 May 2014", "Almeida (v.2014)". The day is "" where none does.
func dateBehind(text string, how date.Hints) (before, day string) {
	rest := strings.TrimRight(text, ") ")
	if !endsInYear.MatchString(rest) {
		return text, ""
	}
	for i, r := range rest {
		if r == ' ' && wholeDay.MatchString(rest[i+1:]) && date.Read(rest[i+1:], how).Status != date.Invalid {
			return strings.TrimRight(rest[:i], " ,;(:|/"), rest[i+1:]
		}
		if r != ',' && r != ';' && r != '(' && r != ':' && r != '|' && !(r == '/' && slashBefore.MatchString(rest[i:])) {
			continue
		}
		if d := strings.TrimSpace(rest[i+1:]); d != "" && date.Read(d, how).Status != date.Invalid && len(d) < 30 {
			return strings.TrimRight(rest[:i], " ,;(:|/"), d
		}
	}
	return text, ""
}

// slashBefore is a slash that parts a date from what stands before it, and not a day from its month.
var slashBefore = regexp.MustCompile(`^/(?: |[^/]*\pL|\d{4}-)`)

// wholeDay is a day with its month and year, as it stands behind a blank.
var wholeDay = regexp.MustCompile(`^(?:\d{1,2}[./-](?:\d{1,2}|[ivxIVX]+)[./-]\d{4}|\d{1,2}\.? \pL{3,}\.? \d{4}|\pL{3,}\.? \d{1,2}, \d{4}|\d{4}-\d\d-\d\d)$`)

// endsInYear is a year at the end, or the day of a date that begins with it.
var endsInYear = regexp.MustCompile(`(?:1[789]|20)\d\d(?:-\d\d){0,2}$`)

// oneTrip reports whether several numbers behind a collector, "447, 448A" or
// "3489A, C", are of one trip: they have as many figures and rise. A number of less
// or more figures may be a year or the page of a book.
func oneTrip(numbers string) bool {
	last := ""
	for _, s := range strings.FieldsFunc(numbers, func(r rune) bool { return strings.ContainsRune(",;& ", r) }) {
		figures := strings.TrimRight(s, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ")
		switch {
		case s == "and" || figures == "":
		case last != "" && (len(figures) != len(last) || figures < last):
			return false
		default:
			last = figures
		}
	}
	return true
}

// initialed reports whether a voucher is a number behind letters of its collector,
// whose name the table does not have: beside the sheet's own number, which begins
// otherwise, or with too few figures or a part of a number for one.
func (c *Context) initialed(text string) bool {
	m := initialedNumber.FindStringSubmatch(text)
	if m == nil || m[1] == c.Text("institutionCode") {
		return false
	}
	sheet := c.Text("catalogNumber")
	return sheet != "" && !strings.HasPrefix(sheet, m[1]) || strings.Contains(text, ".")
}

// hasInitials reports whether a number stands behind the initials of the first of
// the people who collected it: "IMA 214" of Inês M. Almeida.
func hasInitials(number, people string) bool {
	m := initialedNumber.FindStringSubmatch(number)
	if m == nil {
		return false
	}
	initials := ""
	for _, w := range personWords(cutAtSign(people)) {
		if first, _ := utf8.DecodeRuneInString(w); unicode.IsUpper(first) {
			initials += string(first)
		}
	}
	return m[1] == initials
}

// cutAtSign is the first person of several, as far as signs part them.
func cutAtSign(people string) string {
	first, _, _ := strings.Cut(people, "|")
	first, _, _ = strings.Cut(first, "&")
	first, _, _ = strings.Cut(first, ";")
	return first
}

// spaced writes blanks in a voucher that was made the name of a sample, as in
// "Prates_et_al_79_135" and "Teles_SN". Between figures stood a hyphen.
func spaced(s string) string {
	s = strings.ReplaceAll(figuresJoined.ReplaceAllString(s, "$1-$2"), "_", " ")
	if people, ok := strings.CutSuffix(s, " SN"); ok {
		return people + " s.n."
	}
	return s
}

var figuresJoined = regexp.MustCompile(`(\d)_(\d)`)
