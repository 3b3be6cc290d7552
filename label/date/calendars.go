package date

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"cornerslip/label/lang"
)

// republican is a date of the calendar of the French Republic: 12 thermidor
// an VII, or its year alone.
var (
	republican = newMark(`(?i)^\W*(?:(?:le\s+)?(\d{1,2})(?:er|e)?\s+)?(vend[ée]miaire|brumaire|frimaire|niv[ôo]se|pluvi[ôo]se|vent[ôo]se|germinal|flor[ée]al|prairial|messidor|thermidor|fructidor|(?:jours?\s+)?compl[ée]mentaires?)\W+(?:de\s+)?(?:l['’]\s*)?an(?:n[ée]e)?\.?\s+([ivx]+|\d{1,2})\W*$`,
		"an", "AN", "An")
	republicanYear = newMark(`(?i)^\W*(?:l['’]\s*)?an\s+([ivx]+)\W*$`, "an ", "AN ", "An ")
)

var republicanMonths = strings.Fields("vendemiaire brumaire frimaire nivose pluviose ventose germinal floreal prairial messidor thermidor fructidor")

// newYears are the days in September on which the Republic's years I to XIV
// began, in 1792 and after: that of the equinox in Paris. From memory; they are
// in any concordance.
var newYears = [14]int{22, 22, 22, 23, 22, 22, 22, 23, 23, 23, 23, 24, 23, 23}

// readRepublican reads a date of the French Republic, which is one of ours but
// is not to be put in the place of what was written unasked.
func readRepublican(text string) (Reading, bool) {
	day, month, year := "", "", ""
	if g := republican.FindStringSubmatch(text); republican.in(text) && g != nil {
		day, month, year = g[1], lang.Fold(g[2]), g[3]
	} else if g := republicanYear.FindStringSubmatch(text); republicanYear.in(text) && g != nil {
		year = g[1]
	} else {
		return Reading{}, false
	}
	y, err := strconv.Atoi(year)
	if err != nil {
		y = romanNumber(year)
	}
	if y < 1 || y > len(newYears) {
		return fail(Ambiguous, "%q: the calendar of the French Republic had the years I to XIV", text), true
	}
	begin := func(y int) Day {
		d := 23 // 1806, which the calendar did not reach
		if y <= len(newYears) {
			d = newYears[y-1]
		}
		return Day{1791 + y, 9, d}
	}
	first, last := begin(y), begin(y+1).Add(-1)
	for i, name := range republicanMonths {
		if name == month {
			first = first.Add(30 * i)
			last = first.Add(29)
		}
	}
	if month != "" && strings.Contains(month, "complement") {
		first = first.Add(360)
	}
	if day != "" {
		n, _ := strconv.Atoi(day)
		if d := first.Add(n - 1); n < 1 || d.Compare(last) > 0 {
			return fail(Ambiguous, "%q: the calendar of the French Republic has no such day", text), true
		}
		first = first.Add(n - 1)
		last = first
	}
	d, err := Interval(Date{from: dayPart(first)}, Date{from: dayPart(last)})
	if err != nil {
		return Reading{}, false
	}
	r := doubtful([]Date{d}, "%q is of the calendar of the French Republic, %s by ours: write that, and this text in verbatimEventDate", text, d.ISO())
	r.Doubt = CalendarDoubt
	return r, true
}

// roman is a date counted back from the Kalends, Nones or Ides of a month, as Latin
// diaries do into the 19th century: a.d. III Non. Apr. 1801.
var roman = newMark(`(?i)^(?:a\.?\s?d\.?\s+|ante\s+diem\s+)?(?:(prid)(?:\.|ie)?\s+|([ivx]{1,5}|\d{1,2})\.?\s+)?([ck]al|non|id)(?:\.|endas|endis|as|is|us|ibus)?\.?\s+([a-z]+)\.?,?\s+(?:a\.\s?|anno\s+)?(1[5-9]\d\d)$`,
	"al", "AL", "on", "ON", "Id", "id", "ID")

// readRoman reads a date of the Roman calendar. In a leap year the sixth day before
// the Kalends of March counts twice, the 24th and the 25th of February.
func readRoman(text string) (Reading, bool) {
	if !roman.in(text) {
		return Reading{}, false
	}
	g := roman.FindStringSubmatch(text)
	if g == nil {
		return Reading{}, false
	}
	month, err := ParseMonth(g[4])
	if err != nil {
		return Reading{}, false
	}
	year, _ := strconv.Atoi(g[5])
	anchor := 1
	switch long := month == 3 || month == 5 || month == 7 || month == 10; strings.ToLower(g[3]) {
	case "non":
		anchor = 5
		if long {
			anchor = 7
		}
	case "id":
		anchor = 13
		if long {
			anchor = 15
		}
	}
	back := 1
	switch {
	case g[1] != "":
		back = 2
	case g[2] != "":
		if back, err = strconv.Atoi(g[2]); err != nil {
			back = romanNumber(g[2])
		}
	}
	if back < 1 || anchor == 1 && back > 19 || anchor > 1 && back > 8 {
		return fail(Ambiguous, "%q: the Roman calendar has no such day", text), true
	}
	if anchor == 1 && month == 3 && IsLeap(year) && back >= 6 {
		back++
	}
	d, err := New(year, month, anchor)
	if err != nil {
		return Reading{}, false
	}
	day := Date{from: dayPart(d.Start().Add(1 - back))}
	r := doubtful([]Date{day}, "%q is of the Roman calendar, %s by ours: write that, and this text in verbatimEventDate", text, day.ISO())
	r.Doubt = CalendarDoubt
	return r, true
}

// romanNumber reads a small Roman figure.
func romanNumber(s string) int {
	value := map[byte]int{'i': 1, 'v': 5, 'x': 10}
	s, n := strings.ToLower(s), 0
	for i := range len(s) {
		v := value[s[i]]
		if i+1 < len(s) && v < value[s[i+1]] {
			v = -v
		}
		n += v
	}
	return n
}

// Years of the Buddhist era, which are 543 ahead, with the words that say so;
// and Thai months, which leave no doubt. From memory.
var (
	buddhist   = regexp.MustCompile(`(?:\b(?i:B\.?\s?E)\b\.?|พ\.?\s?ศ\.?)\s*(2[45]\d{2})\b|\b(2[45]\d{2})\s*(?:(?i:B\.\s?E\.|BE\b)|พ\.?ศ\.?)`)
	thaiYear   = regexp.MustCompile(`\b(2[45]\d{2})\b`)
	thaiMonths = strings.NewReplacer(
		"มกราคม", " January ", "ม.ค.", " January ", "กุมภาพันธ์", " February ", "ก.พ.", " February ", "มีนาคม", " March ", "มี.ค.", " March ",
		"เมษายน", " April ", "เม.ย.", " April ", "พฤษภาคม", " May ", "พ.ค.", " May ", "มิถุนายน", " June ", "มิ.ย.", " June ",
		"กรกฎาคม", " July ", "ก.ค.", " July ", "สิงหาคม", " August ", "ส.ค.", " August ", "กันยายน", " September ", "ก.ย.", " September ",
		"ตุลาคม", " October ", "ต.ค.", " October ", "พฤศจิกายน", " November ", "พ.ย.", " November ", "ธันวาคม", " December ", "ธ.ค.", " December ",
		"๐", "0", "๑", "1", "๒", "2", "๓", "3", "๔", "4", "๕", "5", "๖", "6", "๗", "7", "๘", "8", "๙", "9")
)

// aheadOfOurs is how many years the Buddhist era is ahead.
const aheadOfOurs = 543

// fromThai writes dates of the Buddhist era as ours.
func fromThai(s string) string {
	thai := strings.ContainsFunc(s, func(r rune) bool { return 'ก' <= r && r <= '๛' })
	if !thai && !strings.ContainsAny(s, "Bb") {
		return s
	}
	ours := func(y string) string {
		n, _ := strconv.Atoi(y)
		return strconv.Itoa(n - aheadOfOurs)
	}
	if thai {
		s = thaiMonths.Replace(s)
	}
	s = buddhist.ReplaceAllStringFunc(s, func(t string) string {
		g := buddhist.FindStringSubmatch(t)
		return ours(g[1] + g[2])
	})
	if thai {
		s = thaiYear.ReplaceAllStringFunc(s, ours)
		s = strings.NewReplacer("พ.ศ.", " ", "พศ", " ", "วันที่", " ", "เดือน", " ").Replace(s)
	}
	return s
}

// eraFigures are Japanese and Chinese eras before figures with stops, or in
// Latin letters: 昭和42.5.3, Showa 42.
var (
	eraFigures = regexp.MustCompile(`(民國|民国|昭和|大正|明治|平成|令和)\s*(\d{1,3})\s*[./-]\s*(\d{1,2})\s*[./-]\s*(\d{1,2})`)
	eraWords   = regexp.MustCompile(`(?i)\b(sh[oō]wa|taish[oō]|meiji|heisei|reiwa)\s*(\d{1,2})\b`)
	eraLetter  = regexp.MustCompile(`^([MTSHR])\s?(\d{1,2})\.(\d{1,2})\.(\d{1,2})$`)
	eraOf      = map[string]string{"showa": "昭和", "taisho": "大正", "meiji": "明治", "heisei": "平成", "reiwa": "令和",
		"M": "明治", "T": "大正", "S": "昭和", "H": "平成", "R": "令和"}
)

// eraYear is the year of our calendar; 0 if the era had none such.
func eraYear(era string, n int) int {
	e, ok := eras[era]
	if !ok || n < e.from || n > e.last {
		return 0
	}
	return e.before + n
}

func fromEras(s string) string {
	if strings.ContainsAny(s, "國国和正治成") {
		s = eraFigures.ReplaceAllString(s, "$1${2}年${3}月${4}日")
	}
	if strings.ContainsAny(s, "wWhHjJ") {
		s = eraWords.ReplaceAllStringFunc(s, func(t string) string {
			g := eraWords.FindStringSubmatch(t)
			n, _ := strconv.Atoi(g[2])
			if y := eraYear(eraOf[lang.Fold(g[1])], n); y > 0 {
				return strconv.Itoa(y)
			}
			return t
		})
	}
	return s
}

// julianDay is a day of the astronomers' count; such a number begins with 24
// from 1858 to 2132.
var julianDay = regexp.MustCompile(`^(?i:J\.?\s?D\.?\s*)?(24\d{5})(?:\.\d+)?$`)

// giveOrTake is a year with a tolerance.
var giveOrTake = regexp.MustCompile(`^(\d{4})\s*(?:±|\+/-|\+-)\s*(\d{1,2})(?:\s*(?:years?|yrs?))?$`)

// weekOf is a week by its number, in words.
var weekOf = regexp.MustCompile(`(?i)^(?:week|wk|kw|kalenderwoche|semana|semaine|settimana)\.?\s*(\d{1,2})\s*[,/.\s]\s*(?:of |de |von )?\s*(\d{4})$`)

// readCounted reads what counts days and weeks otherwise. Each has one
// reading, but one that nobody should rely on unasked.
func readCounted(text string) (Reading, bool) {
	if len(text) > 40 {
		return Reading{}, false
	}
	if r, ok := readRoman(text); ok {
		return r, true
	}
	if r, ok := readRepublican(text); ok {
		return r, true
	}
	if strings.HasPrefix(text, "24") || text[0]|0x20 == 'j' {
		if g := julianDay.FindStringSubmatch(text); g != nil {
			n, _ := strconv.Atoi(g[1])
			d := Date{from: dayPart(fromNumber(n - 2440588))}
			return doubtful([]Date{d}, "%q can be the number of a day in the astronomers' count, %s: write the date", text, d.ISO()), true
		}
	}
	if strings.ContainsAny(text, "±+") {
		if g := giveOrTake.FindStringSubmatch(text); g != nil {
			y, _ := strconv.Atoi(g[1])
			n, _ := strconv.Atoi(g[2])
			if d, err := New(y-n, 0, 0); err == nil {
				if e, err := New(y+n, 0, 0); err == nil {
					d, _ = Interval(d, e)
					return doubtful([]Date{d}, "%q gives a year and how sure it is: write the first and the last year, or ca. and the year", text), true
				}
			}
		}
	}
	if strings.ContainsAny(text, "kKmMzZ") {
		if g := weekOf.FindStringSubmatch(text); g != nil {
			y, _ := strconv.Atoi(g[2])
			w, _ := strconv.Atoi(g[1])
			if d, err := newWeek(y, w, 0); err == nil {
				return doubtful([]Date{d}, "%q counts weeks, %s if they are those of ISO 8601: write the days", text, d.ISO()), true
			}
		}
	}
	if g := eraLetter.FindStringSubmatch(text); strings.IndexByte("MTSHR", text[0]) >= 0 && g != nil {
		var n [3]int
		for i := range n {
			n[i], _ = strconv.Atoi(g[i+2])
		}
		if y := eraYear(eraOf[g[1]], n[0]); y > 0 {
			if d, err := newFull(y, n[1], n[2]); err == nil {
				return doubtful([]Date{d}, "%q can be a year of a Japanese era, %s: write the date", text, d.ISO()), true
			}
		}
	}
	return Reading{}, false
}

// beyond doubts a year that is of the Buddhist era, more likely than ours.
func beyond(r Reading, text string) Reading {
	y, ok := r.Date.Year()
	if r.Status != OK || !ok || y < 2400 || y >= 2600 {
		return r
	}
	ours := func(p part) part { p.year -= aheadOfOurs; return p }
	d := r.Date
	d.from = ours(d.from)
	if d.interval {
		d.to = ours(d.to)
	}
	if d.from.day == 29 && d.from.month == 2 && !IsLeap(int(d.from.year)) {
		return r
	}
	return doubtful([]Date{d}, "%q: %d is still to come; if it is a year of the Buddhist era, write %s", text, y, fmt.Sprint(d.ISO()))
}
