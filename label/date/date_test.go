package date

import (
	"os"
	"strings"
	"testing"
	"time"

	"cornerslip/cmd/outside"
	"cornerslip/label/lang"
	"pgregory.net/rapid"
)

// TestDates holds the reader to verbatim forms seen on labels and in guides.
func TestDates(t *testing.T) {
	data, err := os.ReadFile(outside.Shared(t, "checks/dates.tsv"))
	if err != nil {
		t.Fatal(err)
	}
	rows := strings.Split(strings.TrimSpace(string(data)), "\n")
	for _, row := range rows[1:] {
		f := strings.Split(row, "\t")
		want := f[2] + "\t" + f[3]
		if got := ReadLine(f[1]); got != want {
			t.Errorf("row %s: %q: got %q, want %q (%v)", f[0], f[1], got, want, Read(f[1], Hints{}).Err)
		}
	}
	if len(rows) < 60 {
		t.Errorf("only %d rows", len(rows)-1)
	}
}

// The rules behind the forms, one or two of each kind. Readings follow from
// ISO 8601, Darwin Core's term notes and the calendar; what a form means is
// common practice on labels.
var forms = []struct{ in, want string }{
	// intervals
	{"12-15.6.1932", "ok\t1932-06-12/1932-06-15"},
	{"28.6.-3.7.1932", "ok\t1932-06-28/1932-07-03"},
	{"Dec. 28, 1931-Jan. 2, 1932", "ok\t1931-12-28/1932-01-02"},
	{"Dec. 1931-Jan. 1932", "ok\t1931-12/1932-01"},
	{"vom 12. bis 15. Mai 1932", "ok\t1932-05-12/1932-05-15"},
	{"between 1900 and 1905", "ok\t1900/1905"},
	{"V-VI.1932", "ok\t1932-05/1932-06"},
	{"1932, 1933", "ok\t1932/1933"},
	{"May and July 1932", "ambiguous\t"}, // June is not said
	{"11 & 13 Feb 1914", "ambiguous\t"},
	{"12-14 May and 3 June 1932", "ambiguous\t"},
	{"1932/3", "ambiguous\t"}, // March 1932, or two years
	{"winter 1910-11", "ok\t1910/1911"},
	{"1906-07", "ok\t1906-07"}, // ISO 8601 says a month
	{"5 Oct - 8 Sept 1901", "invalid\t"},
	// unknown parts
	{"XX DEC 1932", "ok\t1932-12"},
	{"1999-03-XX", "ok\t1999-03"},
	{"00.00.1987", "ok\t1987"},
	{"2003-07-00", "ok\t2003-07"},
	{"19--", "ok\t1900/1999"},
	{"May 193-", "incomplete\t"},
	{"12 May", "incomplete\t"},
	{"12-14 May", "incomplete\t"},
	{"s.d.", "incomplete\t"},
	{"", "incomplete\t"},
	// years of two figures
	{"14.iii.93", "ambiguous\t"},
	{"8/21/79", "ambiguous\t"},
	{"60s", "ambiguous\t"},
	{"21-10-28", "ambiguous\t"},
	// day and month
	{"05.06.1977", "ambiguous\t"},
	{"2021-28-10", "ok\t2021-10-28"},
	{"2021/04/03", "ok\t2021-04-03"},
	{"Fri 3/4/2020", "ok\t2020-04-03"}, // 4 March was a Wednesday
	{"Thu 3/4/2020", "ambiguous\t"},
	// ordinals and languages
	{"1.er mai 1932", "ok\t1932-05-01"},
	{"12.º de outubro de 1932", "ok\t1932-10-12"},
	{"6th of May, 1932", "ok\t1932-05-06"},
	{"3 Haziran 1932", "ok\t1932-06-03"},
	{"3. kesäkuuta 1932", "ok\t1932-06-03"},
	{"3 czerwca 1932", "ok\t1932-06-03"},
	{"3 června 1932", "ok\t1932-06-03"},
	{"3 июня 1932 г.", "ok\t1932-06-03"},
	{"14 Martii 1832", "ok\t1832-03-14"},
	{"7bre 1832", "ok\t1832-09"},
	{"1932年3月5–7日", "ok\t1932-03-05/1932-03-07"},
	{"3 jui 1932", "ambiguous\t"}, // juin or juillet
	// approximate and open
	{"c. 1890", "ok\t1890~"},
	{"c1890", "ok\t1890~"},
	{"after 1900", "ok\t1901/.."},
	{"since May 1900", "ok\t1900-05/.."},
	{"pre-1900", "ok\t../1899"},
	{"prior to 12 May 1900", "ok\t../1900-05-11"},
	{"early May 1920", "ok\t1920-05"},
	{"1932?", "ambiguous\t"},
	{"1860 or 1861", "ambiguous\t"},
	{"[May 1932]", "ok\t1932-05"},
	{"19th century", "ambiguous\t"},
	// impossible
	{"31 June 1902", "invalid\t"},
	{"29 Feb 1900", "invalid\t"},
	{"Feb. 29, 1904", "ok\t1904-02-29"},
	{"13/1902", "invalid\t"},
	{"1932-13-13", "invalid\t"},
	{"12 May 1932, 25:10", "invalid\t"},
	// slips
	{"l2 May 1934", "ambiguous\t"},
	{"1O May 1934", "ambiguous\t"},
	{"Setpember 1934", "ambiguous\t"},
	{"Ju1y 1934", "ambiguous\t"},
	// calendars
	{"25 Oct. (7 Nov.) 1917", "ok\t1917-11-07"},
	{"7 Nov. 1917 (N.S.)", "ok\t1917-11-07"},
	{"25 Oct./7 Nov. 1917", "ambiguous\t"},
	{"May 1850 (O.S.)", "ambiguous\t"},
	// machines
	{"1999-07-12 00:00:00.0", "ok\t1999-07-12"},
	{"1999-07-12 13:15:00", "ok\t1999-07-12T13:15:00"},
	{"12 May 1932, 2:30 p.m.", "ok\t1932-05-12T14:30"},
	{"12 May 1932, 08:00-09:30", "ok\t1932-05-12T08:00/1932-05-12T09:30"},
	{"12 May 1932 8h-10h", "ok\t1932-05-12T08/1932-05-12T10"},
	{"150703", "ambiguous\t"},
	{"07152003", "ok\t2003-07-15"},
	{"37817.5", "ambiguous\t"},
	{"null", "invalid\t"},
	{"?", "invalid\t"},
	{"X", "invalid\t"},
	{"-2000", "ambiguous\t"},
	{"1932-", "ambiguous\t"},
}

func TestForms(t *testing.T) {
	for _, f := range append(forms, furtherForms...) {
		r := Read(f.in, Hints{})
		if got := ReadLine(f.in); got != f.want {
			t.Errorf("%q: got %q, want %q (%v)", f.in, got, f.want, r.Err)
		}
		if (r.Status == OK) != (r.Err == nil) || (r.Status == OK) == r.Date.IsZero() {
			t.Errorf("%q: status %s, date %v, error %v", f.in, r.Status, r.Date, r.Err)
		}
	}
}

func TestCandidates(t *testing.T) {
	for in, want := range map[string]string{
		"03/04/2020":       "2020-04-03 2020-03-04",
		"37817":            "2003-07-15",
		"'93":              "1993 1893 2093",
		"0ct., 1934":       "1934-10",
		"Mon 15 July 2003": "2003-07-15",
		"1900s":            "1900/1999 1900/1909",
		"1860 or 1861":     "1860/1861",
	} {
		var got []string
		for _, d := range Read(in, Hints{}).Candidates {
			got = append(got, d.ISO())
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%q: candidates %q, want %q", in, got, want)
		}
	}
}

func TestHints(t *testing.T) {
	for _, c := range []struct {
		in    string
		hints Hints
		want  string
	}{
		{"03/04/2020", Hints{Order: DayFirst}, "2020-04-03"},
		{"03/04/2020", Hints{Order: MonthFirst}, "2020-03-04"},
		{"03/14/2020", Hints{Order: DayFirst}, "2020-03-14"},
		{"2020/03/04", Hints{Order: DayFirst}, "2020-03-04"},
		{"14.iii.93", Hints{Century: 1800}, "1893-03-14"},
		{"3/4/93", Hints{Century: 1900, Order: DayFirst}, "1993-04-03"},
		{"13/4/26", Hints{Century: 1900, Order: DayFirst}, "1926-04-13"},
		{"25-12-26", Hints{Century: 1900, Order: DayFirst}, "1926-12-25"},
		{"4/13/26", Hints{Century: 1900, Order: MonthFirst}, "1926-04-13"},
		{"85-12-26", Hints{Century: 1900, Order: DayFirst}, "1985-12-26"},
	} {
		d, status, err := Parse(c.in, c.hints)
		if status != OK || d.ISO() != c.want {
			t.Errorf("%q with %+v: %s %s (%v), want %s", c.in, c.hints, status, d, err, c.want)
		}
	}
}

// Examples of dwc:eventDate (Darwin Core, term version 2023-06-28) and of
// ISO 8601-1:2019, clauses 5.2 to 5.5.
func TestFromISO(t *testing.T) {
	for in, want := range map[string]string{
		"1963-03-08T14:07-06:00": "1963-03-08T14:07-06:00",
		"2009-02-20T08:40Z":      "2009-02-20T08:40Z",
		"2018-08-29T15:19":       "2018-08-29T15:19",
		"1809-02-12":             "1809-02-12",
		"1906-06":                "1906-06",
		"1971":                   "1971",
		"2007-03-01T13:00:00Z/2008-05-11T15:30:00Z": "2007-03-01T13:00:00Z/2008-05-11T15:30:00Z",
		"1900/1909":              "1900/1909",
		"2007-11-13/15":          "2007-11-13/2007-11-15",
		"2007-11-13/12-02":       "2007-11-13/2007-12-02",
		"2007-11/12":             "2007-11/2007-12",
		"2007-03-01/2008-05":     "2007-03-01/2008-05",
		"1985-04-12T10:15/14:30": "1985-04-12T10:15/1985-04-12T14:30",
		"19850412":               "1985-04-12",
		"1985102":                "1985-04-12",
		"1985-102":               "1985-04-12",
		"1985-W15-5":             "1985-04-12",
		"1985W155":               "1985-04-12",
		"1985-W15":               "1985-04-08/1985-04-14",
		"19850412T101530Z":       "1985-04-12T10:15:30Z",
		"1985-04-12T24:00":       "1985-04-12T24:00",
		"1963-03-08T14":          "1963-03-08T14",
	} {
		if d, err := FromISO(in); err != nil || d.ISO() != want {
			t.Errorf("%q: %q (%v), want %q", in, d, err, want)
		}
	}
	for in, want := range map[string]string{
		"":                       "is not an ISO 8601 date",
		"63":                     "is not an ISO 8601 date",
		"0":                      "is not an ISO 8601 date",
		"0000":                   "year 0 is out of range",
		"1963-03-08T4":           "time \"4\" is not ISO 8601",
		"1963-03-08T14:0":        "is not ISO 8601",
		"1963-03-08T14:67-0600":  "minute 67",
		"1963-03-08T25:00":       "hour 25",
		"1963-03-08T24:01":       "hour 24",
		"1963-03-08T14:07+20:00": "zone +20:00",
		"1963-03T14:07":          "has a time of day but no day",
		"1963-13":                "month 13",
		"1963-00":                "month 00",
		"1963-02-29":             "February 1963 has 28 days",
		"1900-366":               "1900 has 365 days",
		"1985-W53":               "week 53",
		"1985-W15-8":             "day 8 of the week",
		"1949-01-15/":            "the end of the interval",
		"../1899":                "is not an ISO 8601 date",
		"1890~":                  "is not an ISO 8601 date",
		"1950/1949":              "lies before the beginning",
		"2021_06_03T24:00":       "is not an ISO 8601 date",
		" 1963":                  "is not an ISO 8601 date",
	} {
		if d, err := FromISO(in); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, error %v, want one with %q", in, d, err, want)
		}
	}
}

// TestCalendar holds the calendar to Go's own over all of the days that
// dates can have.
func TestCalendar(t *testing.T) {
	ref := time.Date(1, 1, 1, 0, 0, 0, 0, time.UTC)
	d := Day{1, 1, 1}
	last := Day{9999, 12, 31}
	for ; d.Compare(last) < 0; d = d.Add(17) {
		want := Day{ref.Year(), int(ref.Month()), ref.Day()}
		if d != want || d.Weekday() != ref.Weekday() || d.DayOfYear() != ref.YearDay() {
			t.Fatalf("%v %s %d, want %v", d, d.Weekday(), d.DayOfYear(), ref)
		}
		y, w := ref.ISOWeek()
		if y >= 1 && y < 9999 {
			if week, err := newWeek(y, w, 0); err != nil || d.Compare(week.Start()) < 0 || d.Compare(week.End()) > 0 {
				t.Fatalf("week %d of %d is %v (%v), without %v", w, y, week, err, d)
			}
		}
		ref = ref.AddDate(0, 0, 17)
	}
}

// Well-known days of the change of calendars: Rome, Sweden's lost leap year
// excepted, Britain, Russia (history books, from memory).
func TestJulian(t *testing.T) {
	for in, want := range map[Day]Day{
		{1582, 10, 5}:  {1582, 10, 15},
		{1700, 2, 29}:  {1700, 3, 11},
		{1752, 9, 3}:   {1752, 9, 14},
		{1800, 2, 29}:  {1800, 3, 12},
		{1917, 10, 25}: {1917, 11, 7},
		{1918, 2, 1}:   {1918, 2, 14},
	} {
		if got := fromJulian(in.Year, in.Month, in.Day); got != want {
			t.Errorf("%v (O.S.) is %v, want %v", in, got, want)
		}
	}
}

func TestDateParts(t *testing.T) {
	for _, c := range []struct {
		in               string
		start, end       string
		year, month, day int
		from, to, days   int
	}{
		{"1922-03-20", "1922-03-20", "1922-03-20", 1922, 3, 20, 79, 79, 1},
		{"1924-02", "1924-02-01", "1924-02-29", 1924, 2, 0, 0, 0, 29},
		{"1900", "1900-01-01", "1900-12-31", 1900, 0, 0, 0, 0, 365},
		{"1981-12-30/1982-01-03", "1981-12-30", "1982-01-03", 0, 0, 0, 364, 3, 5},
		{"2021-01-15/2021-02-02", "2021-01-15", "2021-02-02", 2021, 0, 0, 15, 33, 19},
		{"1980-01-10/1980-01-15", "1980-01-10", "1980-01-15", 1980, 1, 0, 10, 15, 6},
		{"2007-03-01T13:00/15:00", "2007-03-01", "2007-03-01", 2007, 3, 1, 60, 60, 1},
	} {
		d, err := FromISO(c.in)
		if err != nil {
			t.Fatal(err)
		}
		y, _ := d.Year()
		m, _ := d.Month()
		day, _ := d.Day()
		from, _ := d.StartDayOfYear()
		to, _ := d.EndDayOfYear()
		if d.Start().String() != c.start || d.End().String() != c.end || y != c.year || m != c.month || day != c.day || from != c.from || to != c.to || d.Days() != c.days {
			t.Errorf("%s: %v %v %d %d %d %d %d %d", c.in, d.Start(), d.End(), y, m, day, from, to, d.Days())
		}
	}
}

func TestOrder(t *testing.T) {
	open := func(s string) Date { return Read(s, Hints{}).Date }
	sorted := []Date{open("../1899"), open("1900"), open("1900-01-01/1902"), open("1900/.."), open("1900-01-02"), open("1901")}
	for i, a := range sorted {
		for j, b := range sorted {
			want := min(max(i-j, -1), 1)
			if got := a.Compare(b); got != want {
				t.Errorf("%v against %v: %d, want %d", a, b, got, want)
			}
		}
	}
	if a, b := open("1900"), open("1901-05"); !a.Before(b) || !b.After(a) || a.After(b) || b.Before(a) || a.Before(a) {
		t.Error("1900 lies before May 1901")
	}
	if !open("1900/..").Covers(open("1901-05")) || open("1900").Covers(open("1900-12/1901-01")) || open("1900").Covers(open("1900/..")) {
		t.Error("Covers")
	}
}

func TestFormat(t *testing.T) {
	dates := strings.Fields("2026-03-14 1898-08-01 1922-03-20/1922-03-22 1901-09-08/1901-10-05 1999-12-28/2000-01-02 1903-03/1903-05 1910-12/1911-01 1860/1864 2026-03 2026 2007-03-01/2008-05 ../1899 1901/.. 1890~")
	for _, c := range []struct {
		form Form
		lang lang.Tag
		want string
	}{
		{LongMonth, lang.English, "14 March 2026|1 August 1898|20–22 March 1922|8 September – 5 October 1901|28 December 1999 – 2 January 2000|March–May 1903|December 1910 – January 1911|1860–1864|March 2026|2026|1 March 2007 – May 2008|before 1900|after 1900|c. 1890"},
		{MonthDay, lang.English, "March 14, 2026|August 1, 1898|March 20–22, 1922|September 8 – October 5, 1901|December 28, 1999 – January 2, 2000|March–May 1903|December 1910 – January 1911|1860–1864|March 2026|2026|March 1, 2007 – May 2008|before 1900|after 1900|c. 1890"},
		{ShortMonth, lang.English, "14 Mar 2026|1 Aug 1898|20–22 Mar 1922|8 Sep – 5 Oct 1901|28 Dec 1999 – 2 Jan 2000|Mar–May 1903|Dec 1910 – Jan 1911|1860–1864|Mar 2026|2026|1 Mar 2007 – May 2008|before 1900|after 1900|c. 1890"},
		{RomanMonth, lang.English, "14.iii.2026|1.viii.1898|20–22.iii.1922|8.ix–5.x.1901|28.xii.1999–2.i.2000|iii–v.1903|xii.1910–i.1911|1860–1864|iii.2026|2026|1.iii.2007–v.2008|before 1900|after 1900|c. 1890"},
		{ISOForm, lang.English, "2026-03-14|1898-08-01|1922-03-20/1922-03-22|1901-09-08/1901-10-05|1999-12-28/2000-01-02|1903-03/1903-05|1910-12/1911-01|1860/1864|2026-03|2026|2007-03-01/2008-05|../1899|1901/..|1890~"},
		{LongMonth, lang.Portuguese, "14 de março de 2026|1 de agosto de 1898|20–22 de março de 1922|8 de setembro – 5 de outubro de 1901|28 de dezembro de 1999 – 2 de janeiro de 2000|março–maio de 1903|dezembro de 1910 – janeiro de 1911|1860–1864|março de 2026|2026|1 de março de 2007 – maio de 2008|antes de 1900|depois de 1900|c. 1890"},
		{ShortMonth, lang.Portuguese, "14 mar. 2026|1 ago. 1898|20–22 mar. 1922|8 set. – 5 out. 1901|28 dez. 1999 – 2 jan. 2000|mar.–mai. 1903|dez. 1910 – jan. 1911|1860–1864|mar. 2026|2026|1 mar. 2007 – mai. 2008|antes de 1900|depois de 1900|c. 1890"},
		{LongMonth, lang.French, "14 mars 2026|1er août 1898|20–22 mars 1922|8 septembre – 5 octobre 1901|28 décembre 1999 – 2 janvier 2000|mars–mai 1903|décembre 1910 – janvier 1911|1860–1864|mars 2026|2026|1er mars 2007 – mai 2008|avant 1900|après 1900|c. 1890"},
		{LongMonth, lang.German, "14. März 2026|1. August 1898|20.–22. März 1922|8. September – 5. Oktober 1901|28. Dezember 1999 – 2. Januar 2000|März–Mai 1903|Dezember 1910 – Januar 1911|1860–1864|März 2026|2026|1. März 2007 – Mai 2008|vor 1900|nach 1900|c. 1890"},
		{LongMonth, lang.Latin, "14 Martii 2026|1 Augusti 1898|20–22 Martii 1922|8 Septembris – 5 Octobris 1901|28 Decembris 1999 – 2 Januarii 2000|Martio–Maio 1903|Decembri 1910 – Januario 1911|1860–1864|Martio 2026|2026|1 Martii 2007 – Maio 2008|ante 1900|post 1900|c. 1890"},
		{LongMonth, lang.Chinese, "2026年3月14日|1898年8月1日|1922年3月20–22日|1901年9月8日–10月5日|1999年12月28日 – 2000年1月2日|1903年3–5月|1910年12月 – 1911年1月|1860–1864年|2026年3月|2026年|2007年3月1日 – 2008年5月|1900年前|1900年後|約1890年"},
	} {
		for i, want := range strings.Split(c.want, "|") {
			d := Read(dates[i], Hints{}).Date
			if got := d.Format(Style{Form: c.form}, c.lang); got != want {
				t.Errorf("%s %s %d: %q, want %q", c.lang, dates[i], c.form, got, want)
			}
		}
	}
	d, _ := FromISO("1963-03-08T14:07-06:00")
	if got := d.Format(Style{Time: true}, lang.English); got != "8 March 1963, 14:07 UTC-06:00" {
		t.Errorf("time: %q", got)
	}
	d, _ = FromISO("1901-09-08/1901-10-05")
	if got := d.Pieces(Style{}, lang.English); len(got) != 2 || got[0] != "8 September –" {
		t.Errorf("pieces: %q", got)
	}
}

// drawDate draws any date that collecting can have.
func drawDate(t *rapid.T) Date {
	part := func(label string) Date {
		y := rapid.IntRange(1500, 2099).Draw(t, label)
		m := rapid.IntRange(0, 12).Draw(t, label+" month")
		if m == 0 {
			d, _ := New(y, 0, 0)
			return d
		}
		d, _ := New(y, m, rapid.IntRange(0, DaysInMonth(y, m)).Draw(t, label+" day"))
		if d.from.day != 0 {
			d.from.time = rapid.SampledFrom([]string{"", "", "14", "14Z", "08+01", "09:05", "14:07:30", "14:07:30.25Z", "00:00-06:00", "23:59+0530"}).Draw(t, label+" time")
		}
		return d
	}
	a := part("from")
	switch rapid.IntRange(0, 4).Draw(t, "kind") {
	case 0:
		b := part("to")
		if b.Compare(a) < 0 {
			a, b = b, a
		}
		if a.Start() == b.Start() && (a.from.time == "") != (b.from.time == "") {
			a, b = a.WithoutTime(), b.WithoutTime() // half a day's time is no interval that people write
		}
		if d, err := Interval(a, b); err == nil {
			a = d
		}
	case 1:
		a, _ = Interval(Date{}, a.WithoutTime())
	case 2:
		a, _ = Interval(a.WithoutTime(), Date{})
	}
	a.circa = rapid.IntRange(0, 5).Draw(t, "circa") == 0
	return a
}

// TestRoundTrip: what is printed and read again is the same date, in every
// style and language.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDate(t)
		if got, err := FromISO(d.ISO()); d.IsPlain() && (err != nil || got != d) {
			t.Fatalf("%q is read as %v (%v)", d.ISO(), got, err)
		}
		s := Style{Form: Form(rapid.IntRange(0, 4).Draw(t, "form")), Time: rapid.Bool().Draw(t, "time")}
		l := rapid.SampledFrom(lang.Tags()).Draw(t, "lang")
		want := d
		if !s.Time {
			want = d.WithoutTime()
		}
		text := d.Format(s, l)
		got, status, err := Parse(text, Hints{Lang: l})
		if got != want {
			t.Fatalf("%s printed as %q is read as %s %s (%v)", want, text, status, got, err)
		}
	})
}

func TestParseDayAndMonth(t *testing.T) {
	for in, want := range map[string]int{"23rd": 23, "1": 1, "05": 5, "1er": 1, "7.": 7, "IV": 0, "32": 0, "0": 0, "?": 0, "x": 0, "": 0, "-1": 0, "1st": 1, "5a": 0, "5ª": 5} {
		if got, err := ParseDay(in); got != want || (err == nil) != (want != 0) {
			t.Errorf("day %q: %d (%v), want %d", in, got, err, want)
		}
	}
	for in, want := range map[string]int{"X": 10, "IV": 4, "4": 4, "04": 4, "April": 4, "avril": 4, "Ma": 0, "?": 0, "13": 0, "0": 0, "": 0, "jui": 0} {
		if got, err := ParseMonth(in); got != want || (err == nil) != (want != 0) {
			t.Errorf("month %q: %d (%v), want %d", in, got, err, want)
		}
	}
}

// No word may be in two lists, or its class would hang on their order.
func TestWordLists(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range wordLists {
		own := map[string]bool{}
		for _, w := range strings.Fields(l.words) {
			f := lang.Fold(w)
			if seen[f] && !own[f] {
				t.Errorf("%q is in two lists", w)
			}
			seen[f], own[f] = true, true
			if m := lang.FindMonth(w); len(m) > 0 && w != "des" {
				t.Errorf("%q is a month too", w)
			}
			if _, roman := lang.ParseRomanMonth(w); roman {
				t.Errorf("%q is a Roman figure too", w)
			}
		}
	}
}
