// Borders packs the outlines of countries for package place. It reads
// borders.json of the npm package @rapideditor/country-coder and writes
// borders.bin. To do it again with a newer version, in any empty folder:
//
//	npm pack @rapideditor/country-coder@5.6.1
//	tar xzf rapideditor-country-coder-5.6.1.tgz
//	go run <module>/label/place/testdata/borders/main.go package/src/data/borders.json <module>/label/place/borders.bin
//
// The packed file is raw DEFLATE of: the number of regions; for each the
// number of its codes and two letters each, the most specific first; the
// number of its rings; for each the number of its points, and each point's
// longitude and latitude in 1/100,000 degree as the difference from the point
// before, from 0, 0 at the beginning of a region. Numbers are varints,
// differences zigzag varints. The last point of a ring, which repeats the
// first, is left out. Nothing is simplified or rounded beyond the five
// decimals. Morocco is cut at the border of 1975, 27°40' N: the file gives it
// all that it holds of Western Sahara.
package main

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"io"
	"log"
	"math"
	"os"
	"slices"
)

// further are the codes of regions that the file gives none or others. Where
// states disagree, all of them are named, so that a label that follows any is
// not called wrong.
var further = map[string][]string{ // by Wikidata's identifier
	"Q7835":    {"UA", "RU"}, // Crimea: UN General Assembly resolution 68/262
	"Q23681":   {"CY"},       // Northern Cyprus: UN Security Council resolution 541
	"Q9143535": {"GB", "CY"}, // Akrotiri
	"Q9206745": {"GB", "CY"}, // Dhekelia
	"Q620634":  {"EG", "SD"}, // Bir Tawil, claimed by neither
	"Q1246":    {"XK", "RS"}, // Kosovo; XK is user-assigned
	"Q6250":    {"EH", "MA"}, // Western Sahara
	"Q865":     {"TW", "CN"}, // Taiwan
	"Q36678":   {"PS", "IL"}, // West Bank
	"Q39760":   {"PS"},       // Gaza Strip
	"Q9648":    {"FK", "GB", "AR"},
	"Q35086":   {"GS", "GB", "AR"},
}

// parts are codes of the file that ISO 3166-1 only reserves, by the country or
// territory they are part of.
var parts = map[string]string{"FX": "FR", "AC": "SH", "TA": "SH", "DG": "IO", "IC": "ES", "EA": "ES", "CQ": "GG", "CP": "FR"}

type feature struct {
	Properties struct {
		Code      string `json:"iso1A2"`
		Status    string `json:"isoStatus"`
		Country   string `json:"country"`
		Groups    []string
		Wikidata  string
		EnglishIs string `json:"nameEn"`
	}
	Geometry *struct {
		Coordinates [][][][2]float64
	}
}

func main() {
	if len(os.Args) != 3 {
		log.Fatal("usage: borders borders.json borders.bin")
	}
	if err := run(os.Args[1], os.Args[2]); err != nil {
		log.Fatal(err)
	}
}

func run(from, to string) error {
	src, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	var in struct{ Features []feature }
	if err := json.Unmarshal(src, &in); err != nil {
		return err
	}
	in.Features = slices.DeleteFunc(in.Features, func(f feature) bool { return f.Geometry == nil })
	for i, f := range in.Features {
		if f.Properties.Code == "MA" {
			south := cutMorocco(&in.Features[i])
			in.Features = append(in.Features, south)
			break
		}
	}
	raw := binary.AppendUvarint(nil, uint64(len(in.Features)))
	for _, f := range in.Features {
		codes := codesOf(f)
		if len(codes) == 0 {
			return fmt.Errorf("%s has no code", f.Properties.EnglishIs)
		}
		raw = binary.AppendUvarint(raw, uint64(len(codes)))
		for _, c := range codes {
			raw = append(raw, c...)
		}
		if raw, err = appendRings(raw, f); err != nil {
			return err
		}
	}
	var b bytes.Buffer
	w, err := flate.NewWriter(&b, flate.BestCompression)
	if err != nil {
		return err
	}
	if _, err := io.Copy(w, bytes.NewReader(raw)); err != nil {
		return err
	}
	if err := w.Close(); err != nil {
		return err
	}
	fmt.Printf("%d regions, %d bytes, %d packed\n", len(in.Features), len(raw), b.Len())
	return os.WriteFile(to, b.Bytes(), 0o644)
}

// codesOf returns a region's codes: its own, the territory's it is part of,
// the country's.
func codesOf(f feature) []string {
	p := f.Properties
	if codes := further[p.Wikidata]; codes != nil {
		return codes
	}
	var codes []string
	add := func(c string) {
		if part := parts[c]; part != "" {
			c = part
		}
		if len(c) == 2 && c != "EU" && c != "UN" && !slices.Contains(codes, c) {
			codes = append(codes, c)
		}
	}
	add(p.Code)
	for _, g := range p.Groups {
		add(g)
	}
	add(p.Country)
	return codes
}

// cutMorocco leaves what is north of 27°40' N and returns the rest.
func cutMorocco(f *feature) (south feature) {
	const border = 27 + 40.0/60
	south = *f
	south.Properties.Wikidata = "Q6250"
	north, rest := *f.Geometry, *f.Geometry
	north.Coordinates, rest.Coordinates = nil, nil
	for _, polygon := range f.Geometry.Coordinates {
		var n, s [][][2]float64
		for _, ring := range polygon {
			if r := cut(ring, border, 1); r != nil {
				n = append(n, r)
			}
			if r := cut(ring, border, -1); r != nil {
				s = append(s, r)
			}
		}
		north.Coordinates, rest.Coordinates = append(north.Coordinates, n), append(rest.Coordinates, s)
	}
	f.Geometry, south.Geometry = &north, &rest
	return south
}

// cut keeps the part of a closed ring on one side of a parallel; pieces of it
// stay joined along the parallel, where a point is in or out whatever the
// joints.
func cut(ring [][2]float64, lat, side float64) [][2]float64 {
	var out [][2]float64
	for i, p := range ring[:len(ring)-1] {
		q := ring[i+1]
		if (p[1]-lat)*side >= 0 {
			out = append(out, p)
		}
		if (p[1]-lat)*(q[1]-lat) < 0 {
			out = append(out, [2]float64{p[0] + (lat-p[1])/(q[1]-p[1])*(q[0]-p[0]), lat})
		}
	}
	if len(out) < 3 {
		return nil
	}
	return append(out, out[0])
}

func appendRings(raw []byte, f feature) ([]byte, error) {
	var rings [][][2]float64
	for _, polygon := range f.Geometry.Coordinates {
		rings = append(rings, polygon...)
	}
	raw = binary.AppendUvarint(raw, uint64(len(rings)))
	var last [2]int64
	for _, ring := range rings {
		n := len(ring) - 1
		if n < 3 || ring[0] != ring[n] {
			return nil, fmt.Errorf("%s: a ring is not closed", f.Properties.EnglishIs)
		}
		raw = binary.AppendUvarint(raw, uint64(n))
		for _, p := range ring[:n] {
			for i, v := range p {
				at := int64(math.Round(v * 1e5))
				raw = binary.AppendVarint(raw, at-last[i])
				last[i] = at
			}
		}
	}
	return raw, nil
}
