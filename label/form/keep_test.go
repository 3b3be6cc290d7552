package form

import (
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/name"
)

// In the wanted text "_" stands for a blank at which a line must not break;
// a word that must stay whole is in brackets.
func TestKeep(t *testing.T) {
	for _, c := range []string{
		// Number and unit: SI brochure 5.4.3 and ISO 80000-1, 7.1.4.
		"slope [300_m] above the bridge",
		"[1.8_km] SSW of the bridge",
		"[alt._1240–1260_m]",
		"tree [18_m,] trunk [30_cm] across",
		"ethanol [70_%]",
		"area [200_m²] of heath",
		"leaves [7–13_×_3–6_cm]",
		"petals [14–17_×_9_mm]",
		"[at_25_°C] in shade",
		"kept 6 open",
		// Abbreviation and figure, approximation, preposition: common practice.
		"road [EN_232] at [km_12]",
		"[c._300_m] wide",
		"[ca._5_ha]",
		"see [p._12,] [fig._3]",
		"[at_300_m] on granite",
		"sheets [from_3] [to_9]",
		"um caule [de_5_m] de altura",
		"[±_30_m]",
		// Initials and surname; The Chicago Manual of Style 7.48, from memory.
		"told by [I._Almeida] and [J.-M._Prates]",
		"[L._da_Costa]",
		"(with [T._Brandão)]",
		"near [S._Pedro] do Sul",
		"[Sta._Maria] da Feira",
		// Names: a rank or an abbreviated genus and its epithet; × and its word.
		"with [E._australis] and [var._rubra]",
		"[Quercus_sp.] nearby",
		"under [×_rubens]",
		"[cf._nigra]",
		"Kunth [L._f.]",
		// Dates: day and month.
		"burnt [on_12_June] 1987",
		"since [1_de_junho] [de_2024]",
		"the [14th_July] fire",
		"[July_14,] 2026",
		"letter [of_12.vi.1987]",
		// Coordinates in running text.
		"[40°_21′_14″_N,] [7°_33′_48″_W]",
		"[40°21'14\"N]",
		"in [N._lat_40]",
		// A dash never begins a line.
		"heath [here_–] burnt",
		// Nothing to keep.
		"Open scrub on granite scree",
		"",
	} {
		want := strings.NewReplacer("_", " ", "[", "", "]", "").Replace(c)
		var got strings.Builder
		for _, r := range keep(want, label.Origin{}) {
			if r.Keep {
				got.WriteString("[" + strings.ReplaceAll(r.Text, " ", "_") + "]")
			} else {
				got.WriteString(r.Text)
			}
		}
		if got.String() != c {
			t.Errorf("keep(%q)\n got %s\nwant %s", want, got.String(), c)
		}
	}
}

func TestKeepIsBounded(t *testing.T) {
	long := "c. " + strings.Repeat("A. B. ", 40) + "end"
	for _, r := range keep(long, label.Origin{}) {
		if r.Keep && len([]rune(r.Text)) > maxKept {
			t.Errorf("%q is kept whole, %d characters", r.Text, len([]rune(r.Text)))
		}
	}
}

func TestKeepCarriesTheOrigin(t *testing.T) {
	at := label.Origin{File: "trip.csv", Line: 3, Column: 7, Row: 2, Term: "habitat"}
	for _, r := range keep("scree at 300 m, with broom", at) {
		if r.Origin != at {
			t.Errorf("%q has origin %+v", r.Text, r.Origin)
		}
	}
}

func FuzzKeep(f *testing.F) {
	for _, s := range []string{"alt. 1240–1260 m, c. 5 km N. of St. João", "  a  1 m\n2 m ", "× x 5 x 7 cm", "1 de maio de", "\xff I. \u00a0J."} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		runs := keep(s, label.Origin{})
		if got := label.String(runs); got != s {
			t.Fatalf("joined %q, want %q", got, s)
		}
		for i, r := range runs {
			if r.Text == "" {
				t.Fatalf("run %d is empty", i)
			}
			if r.Keep && strings.ContainsAny(r.Text, "\n\t") {
				t.Fatalf("%q is kept with a line end in it", r.Text)
			}
		}
	})
}

// Authors of a letter or two stay with their epithet.
func TestShortAuthors(t *testing.T) {
	for text, want := range map[string]string{
		"Arenaria montana L.":                   " L.",
		"Arenaria montana L. subsp. montana":    " L.",
		"Cytisus grandiflorus (Brot.) DC.":      "",
		"Gagea soleirolii DC.":                  " DC.",
		"Salix salviifolia Brot.":               "",
		"Kickxia spuria (L.) Dumort.":           "",
		"Prunus avium L. × Prunus fruticosa L.": " L. L.",
	} {
		runs := shortAuthors(name.Runs(text, name.Parts{}, name.Options{}))
		if got := label.String(runs); got != text {
			t.Errorf("%q became %q", text, got)
		}
		kept := ""
		for i, r := range runs {
			if r.Keep && strings.HasPrefix(r.Text, " ") && i > 0 && runs[i-1].Glue && runs[i-1].Style&label.Italic != 0 {
				kept += r.Text
			}
		}
		if kept != want {
			t.Errorf("%q keeps %q, want %q", text, kept, want)
		}
	}
}
