package check

import (
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/table"
)

// The letter O is read by the stated country, else by the language of the headings;
// decimals without a sign by the country.
func TestCoordinatesSettled(t *testing.T) {
	for _, c := range []struct{ rows, want string }{
		{"Récolteur;Lieu-dit;Coordonnées\nA. Martin;Brest;48°21'50\" N, 3°44'30\" O\n", "W"},
		{"Récolteur;Lieu-dit;Coordonnées;Pays\nA. Martin;Brest;48°21'50\" N, 3°44'30\" O;France\n", "W"},
		{"Sammler;Fundort;Koordinaten\nA. Brandt;Hamburg;53°33' N, 9°59' O\n", "E"},
		{"Toplayan;Lokalite;Koordinat\nA. Kaya;Van;38°29'12\" K, 43°22'10\" D\n", "E"},
		{"Kerääjä;Paikka;Koordinaatit\nA. Mäki;Turku;P 60°27' I 22°16'\n", "E"},
		{"Sběratel;Lokalita;Souřadnice\nA. Novák;Plzeň;49°44'10\" s.š., 13°22'30\" v.d.\n", "E"},
		{"Collector;Locality;Coordinates\nA. Lee;Van;38°29'12\" K, 43°22'10\" D\n", "?"},
		{"Collector;Locality;Coordinates\nA. Lee;Brest;48°21'50\" N, 3°44'30\" O\n", "?"},
		{"Raccoglitore;Località;Coordinate;Paese\nA. Ferri;Aosta;45.7375, 7.3201;Italia\n", "E"},
		{"Raccoglitore;Località;Coordinate;Paese\nA. Ferri;Braga;41.5454, 8.4265;Portugal\n", "?"},
		{"Raccoglitore;Località;Coordinate\nA. Ferri;Aosta;45.7375, 7.3201\n", "?"},
	} {
		tb, err := table.Open(table.Bytes("t.csv", []byte(c.rows)), table.Options{})
		if err != nil {
			t.Fatal(err)
		}
		rs, fs := run(t, New(options(t)), tb)
		got := "?"
		switch lon := rs[0].Coordinates.Lon; {
		case !rs[0].HasCoordinates:
		case lon > 0:
			got = "E"
		default:
			got = "W"
		}
		said := false
		for _, f := range fs {
			said = said || f.Severity == label.Warning && strings.HasSuffix(f.Message, "printed as written")
		}
		if got != c.want || said != (got == "?") {
			t.Errorf("%s: %s, said %v", c.rows, got, said)
		}
	}
}
