package table

import (
	"regexp"
	"strconv"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"
)

// A cellReader makes text of a worksheet's cells: what the cell holds, in full,
// and not what a narrow number format leaves of it. A day is written as ISO 8601
// has it, whatever order the screen shows, for the file knows which day it is.
type cellReader struct {
	f         *excelize.File
	sheet     string
	since1904 bool
	formats   map[int]*numberFormat
}

// text returns the text of the cell in column x and row y, from 1, that is
// stored as raw.
func (r *cellReader) text(raw string, x, y int) (string, error) {
	v, err := strconv.ParseFloat(raw, 64)
	if err != nil {
		return raw, nil
	}
	at, err := excelize.CoordinatesToCellName(x, y)
	if err != nil {
		return "", err
	}
	switch kind, err := r.f.GetCellType(r.sheet, at); {
	case err != nil:
		return "", err
	case kind == excelize.CellTypeBool:
		return map[bool]string{false: "FALSE", true: "TRUE"}[v != 0], nil
	case kind != excelize.CellTypeUnset && kind != excelize.CellTypeNumber:
		return raw, nil // figures that are text
	}
	format, err := r.format(at)
	if err != nil {
		return "", err
	}
	switch format.kind {
	case dateFormat:
		if day, ok := r.day(v, format); ok {
			return day, nil
		}
	case plainFormat:
		return format.pad(plainNumber(v)), nil
	}
	return r.f.GetCellValue(r.sheet, at, excelize.Options{RawCellValue: false})
}

// day returns the day of a serial number, with the time of day where the cell
// shows one that is not midnight.
func (r *cellReader) day(v float64, format *numberFormat) (string, bool) {
	if v < 1 {
		return "", false // a time of day, or the day before the first
	}
	t, err := excelize.ExcelDateToTime(v, r.since1904)
	if err != nil || t.Year() > 9999 {
		return "", false
	}
	t = t.Round(time.Second)
	switch {
	case !format.clock || t.Hour() == 0 && t.Minute() == 0 && t.Second() == 0:
		return t.Format(time.DateOnly), true
	case t.Second() == 0:
		return t.Format("2006-01-02T15:04"), true
	}
	return t.Format("2006-01-02T15:04:05"), true
}

// unsolved reports whether a cell holds a formula and no result.
func (r *cellReader) unsolved(x, y int) bool {
	at, err := excelize.CoordinatesToCellName(x, y)
	if err != nil {
		return false
	}
	formula, err := r.f.GetCellFormula(r.sheet, at)
	if err != nil || formula == "" {
		return false
	}
	kind, err := r.f.GetCellType(r.sheet, at)
	return err == nil && kind == excelize.CellTypeUnset // a formula whose result is an empty text has one
}

// plainNumber writes a number in figures with the fifteen digits that
// spreadsheets keep: a binary fraction such as 38.471200000000003 was typed as
// 38.4712.
func plainNumber(v float64) string {
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 15, 64), 64)
	if err != nil {
		short = v
	}
	return strconv.FormatFloat(short, 'f', -1, 64)
}

// A numberFormat is how a cell shows a number.
type numberFormat struct {
	kind     formatKind
	clock    bool // of a date: the time of day is shown, too
	whole    int  // of a plain number: figures before the point, at least
	decimals int  // and behind it
}

type formatKind uint8

const (
	shownFormat formatKind = iota // text beside the figures, a part of a date: taken as it is shown
	plainFormat                   // figures alone
	dateFormat                    // a day of a year
)

// format returns the number format of a cell.
func (r *cellReader) format(at string) (*numberFormat, error) {
	style, err := r.f.GetCellStyle(r.sheet, at)
	if err != nil {
		return nil, err
	}
	if f := r.formats[style]; f != nil {
		return f, nil
	}
	s, err := r.f.GetStyle(style)
	if err != nil {
		return nil, err
	}
	code, builtIn := "", s.NumFmt
	if s.CustomNumFmt != nil {
		code, builtIn = *s.CustomNumFmt, -1
	}
	f := readFormat(builtIn, code)
	r.formats[style] = &f
	return &f, nil
}

// builtInFormats are the number formats that files name by figures alone:
// ISO/IEC 29500-1, 18.8.30. Those of East Asia, 27 to 36 and 50 to 58, are days
// but for 32 to 35 and 55, 56, which are not told apart by their figures.
var builtInFormats = map[int]string{
	0: "General", 1: "0", 2: "0.00", 3: "#,##0", 4: "#,##0.00", 9: "0%", 10: "0.00%", 11: "0.00E+00", 12: "# ?/?", 13: "# ??/??",
	14: "yyyy-mm-dd", 15: "d-mmm-yy", 16: "d-mmm", 17: "mmm-yy", 18: "h:mm AM/PM", 19: "h:mm:ss AM/PM", 20: "h:mm", 21: "h:mm:ss", 22: "m/d/yy h:mm",
	27: "yyyy-mm-dd", 28: "m-d", 29: "m-d", 30: "m-d-yy", 31: "yyyy-mm-dd", 36: "yyyy-mm-dd", 50: "yyyy-mm-dd", 57: "yyyy-mm-dd",
	37: "#,##0", 38: "#,##0", 39: "#,##0.00", 40: "#,##0.00", 45: "mm:ss", 46: "[h]:mm:ss", 47: "mm:ss.0", 48: "##0.0E+0", 49: "@",
}

var (
	quotedInFormat = regexp.MustCompile(`"[^"]*"|\\.|_.|\*.|\[[^\]]*\]`)
	plainInFormat  = regexp.MustCompile(`^[#,?]*([#,0]*)(?:\.([0#?]*))?$`)
)

// readFormat reads the code of a number format, or the figures of one that is
// built in.
func readFormat(builtIn int, code string) numberFormat {
	if builtIn >= 0 {
		code = builtInFormats[builtIn]
		if code == "" {
			return numberFormat{}
		}
	}
	code, _, _ = strings.Cut(code, ";") // of positive numbers
	bare := strings.ToLower(quotedInFormat.ReplaceAllString(code, ""))
	switch bare = strings.TrimSpace(bare); bare {
	case "", "general", "@":
		if strings.ContainsAny(code, `"\`) {
			return numberFormat{}
		}
		return numberFormat{kind: plainFormat}
	}
	if strings.Contains(bare, "e+") || strings.Contains(bare, "e-") || strings.Contains(bare, "/?") {
		return numberFormat{kind: plainFormat} // 1.20E+05 and 1/3 show less than is there
	}
	if m := plainInFormat.FindStringSubmatch(bare); m != nil {
		if strings.ContainsAny(code, `"\`) {
			return numberFormat{} // 120" m"
		}
		return numberFormat{kind: plainFormat, whole: strings.Count(m[1], "0"), decimals: strings.Count(m[2], "0")}
	}
	f := numberFormat{clock: strings.ContainsAny(bare, "hs")}
	year := strings.ContainsAny(bare, "yeg")
	if year && strings.Contains(bare, "d") && strings.Contains(bare, "m") {
		f.kind = dateFormat
	}
	return f
}

// pad gives a number the noughts that the format shows before and behind it:
// an accession 0012, a coordinate 38.4700.
func (f *numberFormat) pad(s string) string {
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "-", s[1:]
	}
	whole, fraction, _ := strings.Cut(s, ".")
	for len(whole) < f.whole {
		whole = "0" + whole
	}
	for len(fraction) < f.decimals {
		fraction += "0"
	}
	if fraction != "" {
		fraction = "." + fraction
	}
	return sign + whole + fraction
}
