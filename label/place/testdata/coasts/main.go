// Coasts packs where land is for package place. It reads land-10m.json of the
// npm package world-atlas, which is Natural Earth's land at 1:10,000,000, and
// writes coasts.bin. To do it again with a newer version, in any empty folder:
//
//	npm pack world-atlas@2.0.2
//	tar xzf world-atlas-2.0.2.tgz
//	go run <module>/label/place/testdata/coasts/main.go package/land-10m.json <module>/label/place/coasts.bin
//
// The packed file is raw DEFLATE of the lengths of runs, as varints, of cells of
// a quarter of a degree from 90° S, 180° W eastwards and then northwards: cells
// at sea and cells by land by turns, the first run at sea. A cell is by land if
// land lies in it or in a neighbouring one; to the east and west so many cells
// are neighbours as are needed for the width of one at the equator.
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
	"slices"
)

const (
	cell    = 0.25
	columns = int(360 / cell)
	lines   = int(180 / cell)
)

type point struct{ x, y float64 }

func main() {
	if len(os.Args) != 3 {
		log.Fatal("usage: coasts land-10m.json coasts.bin")
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
	rings, err := decode(src)
	if err != nil {
		return err
	}
	land := rasterize(rings)
	near := widen(land)
	var raw []byte
	run, was := uint64(0), false
	for _, line := range near {
		for _, is := range line {
			if is != was {
				raw = binary.AppendUvarint(raw, run)
				run, was = 0, is
			}
			run++
		}
	}
	raw = binary.AppendUvarint(raw, run)
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
	fmt.Printf("%d rings, %d bytes, %d packed\n", len(rings), len(raw), b.Len())
	return os.WriteFile(to, b.Bytes(), 0o644)
}

// decode reads TopoJSON: arcs are differences of whole numbers, and a negative
// index means one read backwards.
func decode(src []byte) ([][]point, error) {
	var in struct {
		Transform struct{ Scale, Translate [2]float64 }
		Arcs      [][][2]float64
		Objects   struct {
			Land struct {
				Geometries []struct {
					Type string
					Arcs json.RawMessage
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
	var rings [][]point
	for _, g := range in.Objects.Land.Geometries {
		var polygons [][][]int
		if g.Type == "Polygon" {
			polygons = make([][][]int, 1)
			if err := json.Unmarshal(g.Arcs, &polygons[0]); err != nil {
				return nil, err
			}
		} else if err := json.Unmarshal(g.Arcs, &polygons); err != nil {
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
				// Natural Earth has a metre of land at 0, 0, as a joke.
				if math.Abs(ring[0].x) > 0.01 || math.Abs(ring[0].y) > 0.01 {
					rings = append(rings, ring)
				}
			}
		}
	}
	return rings, nil
}

type raster [lines][columns]bool

// rasterize marks the cells that an outline passes through and those whose
// middle lies within.
func rasterize(rings [][]point) *raster {
	land := new(raster)
	mark := func(x, y float64) {
		line := min(max(int((y+90)/cell), 0), lines-1)
		land[line][(int((x+180)/cell)+columns)%columns] = true
	}
	var crossings [lines][]float64
	for _, ring := range rings {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			steps := int(math.Max(math.Abs(q.x-p.x), math.Abs(q.y-p.y))/(cell/5)) + 1
			for j := 0; j <= steps; j++ {
				t := float64(j) / float64(steps)
				mark(p.x+(q.x-p.x)*t, p.y+(q.y-p.y)*t)
			}
			low, high := math.Min(p.y, q.y), math.Max(p.y, q.y)
			for line := range lines {
				if y := (float64(line)+0.5)*cell - 90; y >= low && y < high {
					crossings[line] = append(crossings[line], p.x+(y-p.y)/(q.y-p.y)*(q.x-p.x))
				}
			}
		}
	}
	// The ring about the south pole is open there.
	for line := range int((90 - 83) / cell) {
		for column := range columns {
			land[line][column] = true
		}
	}
	for line, xs := range crossings {
		slices.Sort(xs)
		for i := 0; i+1 < len(xs); i += 2 {
			for x := xs[i]; x < xs[i+1]; x += cell / 2 {
				mark(x, (float64(line)+0.5)*cell-90)
			}
		}
	}
	return land
}

func widen(land *raster) *raster {
	near := new(raster)
	for line := range lines {
		edge := math.Min(math.Abs((float64(line)+0.5)*cell-90)+cell/2, 89.9)
		reach := min(int(math.Ceil(1/math.Cos(edge*math.Pi/180))), columns/2)
		for column := range columns {
			if !land[line][column] {
				continue
			}
			for l := max(line-1, 0); l <= min(line+1, lines-1); l++ {
				for c := column - reach; c <= column+reach; c++ {
					near[l][(c+columns)%columns] = true
				}
			}
		}
	}
	return near
}
