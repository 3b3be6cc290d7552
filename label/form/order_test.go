package form

import (
	"strings"
	"testing"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/lang"
)

// zones writes a label's blocks with the zone of each: h, b or f; "=" marks a
// block that stands where its role usually does.
func zones(c label.Content) string {
	var all []string
	for _, b := range c.Blocks {
		s := string(b.Role)
		switch b.Zone {
		case label.InHead:
			s += ":h"
		case label.InBody:
			s += ":b"
		case label.InFoot:
			s += ":f"
		}
		all = append(all, s)
	}
	return strings.Join(all, " ")
}

// Blocks stand where the house puts them.
func TestZones(t *testing.T) {
	r := record(t, base()...)
	for _, c := range []struct {
		name string
		o    Options
		want string
	}{
		{"usual", Options{House: []string{"House"}}, "house name place coords plant collector team number"},
		{"moved", Options{House: []string{"House"}, Head: []label.Role{label.Number, label.Name}, Body: []label.Role{label.Collector, label.Place, Date},
			Foot: []label.Role{label.Coords, label.Team, label.House}}, "number:h name:h collector:b place text coords:f team house:f"},
	} {
		if got := zones(Sheet(r, c.o)[0]); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
	// The second label of a record and those of gifts stand alike.
	r = record(t, base("preparations", "sheet | sheet", "duplicatesTo", "PINHEL | ALTAVX")...)
	o := Options{Body: []label.Role{label.Team, label.Number, label.Place}, Foot: []label.Role{label.Collector}, RunOn: nil}
	for _, l := range Sheet(r, o) {
		want := "team:b number:b place collector"
		if l.For != "" {
			want = "team:b place collector"
		}
		if got := zones(l); got != want {
			t.Errorf("%s: %s, want %s", l.Part, got, want)
		}
	}
}

// Captions stand in the body alone; elsewhere the word leads the value.
func TestCaptionsOfMovedBlocks(t *testing.T) {
	r := record(t, base("identifiedBy", "M. Quental")...)
	o := Options{Captions: true, Body: []label.Role{label.Name, label.Collector}, Foot: []label.Role{label.Det, label.Team}}
	want := "Name Cytisus striatus (Hill) Rothm.\tFabaceae\nCollector I. Almeida 214\t14 June 2026\nDet. M. Quental\nwith T. Brandão"
	if got := lines(Sheet(r, o)[0]); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// Paragraphs that run on keep their signs in order.
func TestRunOn(t *testing.T) {
	for _, c := range []struct {
		row  []string
		o    Options
		want string // the body
	}{
		{nil, Options{RunOn: []label.Role{label.Coords, label.Plant}}, "PORTUGAL. Guarda: Manteigas, above Caldas. 40.3722° N, 7.5625° W (WGS84). Open scrub."},
		{nil, Options{RunOn: []label.Role{label.Plant}}, "PORTUGAL. Guarda: Manteigas, above Caldas.\n40.3722° N, 7.5625° W (WGS84). Open scrub."},
		{[]string{"decimalLatitude", "", "decimalLongitude", ""}, Options{RunOn: []label.Role{label.Coords, label.Plant}}, "PORTUGAL. Guarda: Manteigas, above Caldas. Open scrub."},
		{nil, Options{RunOn: []label.Role{Date}, Body: []label.Role{label.Place, Date, label.Plant}}, "PORTUGAL. Guarda: Manteigas, above Caldas. 14 June 2026.\nOpen scrub."},
		// Not with words at the right, under captions, or as the first.
		{nil, Options{RunOn: []label.Role{label.Place}, Body: []label.Role{label.Name, label.Place}}, "Cytisus striatus (Hill) Rothm.\tFabaceae\nPORTUGAL. Guarda: Manteigas, above Caldas."},
		{nil, Options{RunOn: []label.Role{label.Place}, Body: []label.Role{label.Place}}, "PORTUGAL. Guarda: Manteigas, above Caldas."},
		{nil, Options{Captions: true, RunOn: []label.Role{label.Plant}, Body: []label.Role{label.Place, label.Plant}}, "Locality PORTUGAL. Guarda: Manteigas, above Caldas\nHabitat Open scrub"},
	} {
		if c.o.Body == nil {
			c.o.Body = []label.Role{label.Place, label.Coords, label.Plant}
		}
		c.o.Foot = []label.Role{}
		l := Sheet(record(t, base(c.row...)...), c.o)[0]
		if got := strings.NewReplacer(thin, " ", "\u00a0", " ").Replace(lines(l)); got != c.want {
			t.Errorf("run on %v\n got %q\nwant %q", c.o.RunOn, got, c.want)
		}
		for _, f := range faults(l) {
			t.Error(f)
		}
	}
}

// Who collected, under which number, when.
func TestCollectors(t *testing.T) {
	team := record(t, base("recordedBy", "I. Almeida | T. Brandão | L. Sarmento")...)
	alone := record(t, base("recordedBy", "I. Almeida")...)
	for _, c := range []struct {
		r    *check.Record
		o    Options
		want string
	}{
		{team, Options{}, "I. Almeida 214\t14 June 2026\nwith T. Brandão & L. Sarmento"},
		{team, Options{AllCollectors: true}, "I. Almeida, T. Brandão & L. Sarmento 214\t14 June 2026"},
		{alone, Options{AllCollectors: true}, "I. Almeida 214\t14 June 2026"},
		{team, Options{Words: map[string]string{"number": "No."}}, "I. Almeida No. 214\t14 June 2026\nwith T. Brandão & L. Sarmento"},
		{alone, Options{Words: map[string]string{"number": ", No."}}, "I. Almeida, No. 214\t14 June 2026"},
		{alone, Options{Words: map[string]string{"number": "#", "collector": "leg."}}, "leg. I. Almeida #214\t14 June 2026"},
		{alone, Options{Foot: []label.Role{Date, label.Collector}}, "14 June 2026\nI. Almeida 214"},
		{alone, Options{LeaveOut: []string{"date"}}, "I. Almeida 214"},
		{alone, Options{LeaveOut: []string{"eventDate"}}, "I. Almeida 214"},
		{team, Options{Lang: lang.French, AllCollectors: true, LastPersonSep: " et "}, "I. Almeida, T. Brandão et L. Sarmento 214\t14 juin 2026"},
	} {
		if c.o.Foot == nil {
			c.o.Foot = []label.Role{label.Collector, label.Team}
		}
		c.o.Body = []label.Role{}
		l := Sheet(c.r, c.o)[0]
		if got := lines(l); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
		for _, f := range faults(l) {
			t.Error(f)
		}
		bold := ""
		for _, b := range l.Blocks {
			for _, run := range b.Runs {
				if run.Style&label.Bold != 0 {
					bold += run.Text
				}
			}
		}
		if !strings.HasSuffix(bold, "214") {
			t.Errorf("%q: bold is %q", c.want, bold)
		}
	}
}
