package name

import (
	"strings"
	"testing"

	"cornerslip/label"
)

// pieces shows where a line may break: a bar at each place.
func pieces(runs []label.Run) string {
	var b strings.Builder
	for i, r := range runs {
		t := r.Text
		if !r.Keep {
			// A break is possible behind white space, as UAX #14 has it.
			end := len(strings.TrimRight(t, " "))
			t = strings.ReplaceAll(t[:end], " ", " |") + t[end:]
		}
		b.WriteString(t)
		if i < len(runs)-1 && !r.Glue && strings.HasSuffix(r.Text, " ") {
			b.WriteString("|")
		}
	}
	return strings.ReplaceAll(strings.ReplaceAll(b.String(), "  |", "  |"), "||", "|")
}

func TestBreaks(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"Quercus robur L.", "Quercus |robur |L."},
		{"Q. robur L.", "Q. robur |L."},
		{"Salix × capreola Andersson", "Salix |× capreola |Andersson"},
		{"Salix ×capreola Andersson", "Salix |×capreola |Andersson"},
		{"Salix aurita L. × S. caprea L.", "Salix |aurita |L. |× S. caprea |L."},
		{"+ Crataegomespilus", "+ Crataegomespilus"},
		{"Galium verum L. subsp. verum", "Galium |verum |L. |subsp. verum"},
		{"Carex cf. flacca Schreb.", "Carex |cf. flacca |Schreb."},
		{"Carex flacca cf. subsp. erythrostachys", "Carex |flacca |cf. subsp. erythrostachys"},
		{"Silene caryophylloides subsp. cf. masmenaea (Boiss.) Coode & Cullen", "Silene |caryophylloides |subsp. cf. masmenaea |(Boiss.) |Coode |& Cullen"},
		{"Pinus longaeva D. K. Bailey", "Pinus |longaeva |D. K. Bailey"},
		{"Oxytropis minjanensis Rech. f.", "Oxytropis |minjanensis |Rech. f."},
		{"Carex chordorrhiza Ehrh. ex L. f.", "Carex |chordorrhiza |Ehrh. |ex L. f."},
		{"Gossypium tomentosum Nutt. ex Seem.", "Gossypium |tomentosum |Nutt. |ex Seem."},
		{"Cladoniicola staurospora Diederich, van den Boom & Aptroot 2001", "Cladoniicola |staurospora |Diederich, |van den Boom |& Aptroot |2001"},
		{"Hordeum vulgare L. f. nigrum", "Hordeum |vulgare |L. |f. nigrum"},
		{"Veronica anagallis-aquatica L.", "Veronica |anagallis-aquatica |L."},
		{"Carex sp. A", "Carex sp. A"},
		{"Carex sp. nov.", "Carex sp. nov."},
		{"Paphiopedilum Sorel grex", "Paphiopedilum |Sorel grex"},
		{"Digitalis lutea L. ♀ × D. purpurea L. ♂", "Digitalis |lutea |L. ♀ |× D. purpurea |L. ♂"},
		{"Loranthus (sect. Ischnanthus) gabonensis", "Loranthus |(sect. Ischnanthus) |gabonensis"},
		{"Eichornia crassipes ( (Martius) ) Solms-Laub.", "Eichornia |crassipes |( (Martius) ) |Solms-Laub."},
		{"Boletus versicolor L. : Fr.", "Boletus |versicolor |L. : |Fr."},
		{"Phedimus takesimensis (Nakai) 't Hart", "Phedimus |takesimensis |(Nakai) |'t Hart"},
		{"Aristotelia fruticosa var. δ microphylla Hook.f.", "Aristotelia |fruticosa |var. δ microphylla |Hook.f."},
		{"Calobota acanthoclada (Dinter) Boatwr. & B.-E. van Wyk", "Calobota |acanthoclada |(Dinter) |Boatwr. |& B.-E. van Wyk"},
		{"Carex acuta auct. non L.", "Carex |acuta |auct. |non L."},
		{"Carex flacca s. str.", "Carex |flacca |s. str."},
		{"Carex bebbii Olney, nom. nud.", "Carex |bebbii |Olney, |nom. nud."},
	} {
		runs := Runs(c.text, Parts{}, Options{})
		if got := pieces(runs); got != c.want {
			t.Errorf("%s\n got  %s\n want %s\n%+v", c.text, got, c.want, runs)
		}
		for _, r := range runs {
			if !r.Exact {
				t.Errorf("%s: run %q is not exact", c.text, r.Text)
			}
		}
	}
}
