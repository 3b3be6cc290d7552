package trade

import (
	"slices"
	"testing"

	"cornerslip/label"
)

// Weekdays as labels have them, whole and shortened: 14 May 2026 was a
// Thursday. The words are those of calendars, from memory.
func TestWeekdays(t *testing.T) {
	for text, wrong := range map[string]bool{
		"Thursday, 14 May 2026": false, "Thu, 14 May 2026": false, "Thurs. 14 May 2026": false, "14 May 2026 (Thu)": false, "quinta-feira, 14 de maio de 2026": false, "qui., 14 de maio de 2026": false,
		"jueves 14 mayo 2026": false, "jeudi 14 mai 2026": false, "jeu. 14 mai 2026": false, "Do, 14.5.2026": false, "Do. 14.5.2026": false, "Donnerstag 14.5.2026": false, "gio 14 maggio 2026": false,
		"Fri, 14 May 2026": true, "Mon 14 May 2026": true, "Tue. 14 May 2026": true, "14 May 2026, Sat": true, "seg., 14 de maio de 2026": true, "ter. 14 de maio de 2026": true, "segunda-feira, 14 de maio": true,
		"Mo, 14.5.2026": true, "Di 14.5.2026": true, "Fr. 14.5.2026": true, "lun. 14 mai 2026": true, "sáb 14 mayo 2026": true, "Mi 14.5.2026": true,
		// words that are no weekdays here
		"segunda semana de maio de 2026": false, "mar. 2026": false, "di 14 maggio 2026": false, "14 do 5 de 2026": false, "sexta visita, maio 2026": false, "fr. et fl. May 2026": false, "Sa 14.5.2026 x": true,
	} {
		_, fs := run(t, open(t, rows([]string{"eventDate", "2026-05-14", "verbatimEventDate", text})...), options(t))
		fs = slices.DeleteFunc(fs, func(f label.Finding) bool { return f.Rule != "weekday" })
		if (len(fs) > 0) != wrong {
			t.Errorf("%q: %v", text, fs)
		}
	}
}

// TestYearFilled: a determination of 1 January in the year of collecting is a year
// that a data base filled up, and the year alone is suggested; and so is the month.
func TestYearFilled(t *testing.T) {
	for identified, want := range map[string]string{"2026-01-01": "2026", "2026-01-01T00:00:00.000+0000": "2026", "2026-01-01T16:20:00Z": "", "2025-01-01": "", "2026-01-02": "", "2026": "-", "2027-01-01": "-",
		"2026-05-01": "2026-05", "2026-05-01T00:00:00.000+0000": "2026-05", "2026-05-01T09:10:00Z": "", "2026-05-02": "", "2026-04-01": "", "2026-06-01": "-"} {
		_, fs := run(t, open(t, rows([]string{"eventDate", "2026-05-14", "dateIdentified", identified})...), options(t))
		got := "-"
		for _, f := range fs {
			if f.Rule == "identified-early" {
				got = f.Suggest
			}
		}
		if got != want {
			t.Errorf("%s: the suggestion is %q, not %q", identified, got, want)
		}
	}
}

// A verbatim date that can be read in several ways must have the day among them.
func TestDisagreeingReadings(t *testing.T) {
	for verbatim, want := range map[string]bool{"3-5-36": true, "14-5-26": false, "5/6/2026": true, "5/6/1926": true, "13/5/26": false, "Whitsun": false, "": false} {
		_, fs := run(t, open(t, rows([]string{"eventDate", "2026-05-14", "verbatimEventDate", verbatim})...), options(t))
		got := slices.ContainsFunc(fs, func(f label.Finding) bool { return f.Rule == "date-disagrees" })
		if got != want {
			t.Errorf("%q: %v", verbatim, fs)
		}
	}
}
