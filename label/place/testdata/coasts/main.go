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
	"cmp"
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
	polygons, err := decode(src)
	if err != nil {
		return err
	}
	land := rasterize(polygons)
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
	fmt.Printf("%d polygons, %d bytes, %d packed\n", len(polygons), len(raw), b.Len())
	return os.WriteFile(to, b.Bytes(), 0o644)
}

// decode reads TopoJSON: arcs are differences of whole numbers, and a negative
// index means one read backwards.
func decode(src []byte) ([][][]point, error) {
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
	var all [][][]point
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
			var rings [][]point
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
					rings = append(rings, unroll(ring))
				}
			}
			if len(rings) > 1 { // a hole may lie a turn away from its outline
				west := slices.MinFunc(rings[0], func(p, q point) int { return cmp.Compare(p.x, q.x) }).x
				for _, hole := range rings[1:] {
					for hole[0].x < west {
						for i := range hole {
							hole[i].x += 360
						}
					}
					for hole[0].x >= west+360 {
						for i := range hole {
							hole[i].x -= 360
						}
					}
				}
			}
			all = append(all, rings)
		}
	}
	return all, nil
}

// unroll lets the longitudes of a ring run on beyond 180°, where the file's
// turn back to -180°, and leads one that goes round the south pole through it.
func unroll(ring []point) []point {
	for i := 1; i < len(ring); i++ {
		for ring[i].x-ring[i-1].x > 180 {
			ring[i].x -= 360
		}
		for ring[i].x-ring[i-1].x < -180 {
			ring[i].x += 360
		}
	}
	first, last := ring[0], ring[len(ring)-1]
	if math.Abs(first.x-last.x) > 180 {
		ring = append(ring, point{last.x, -90}, point{first.x, -90})
	}
	return ring
}

type raster [lines][columns]bool

// rasterize marks the cells that an outline passes through and those whose
// middle lies within.
func rasterize(polygons [][][]point) *raster {
	land := new(raster)
	mark := func(x, y float64) {
		line := min(max(int((y+90)/cell), 0), lines-1)
		land[line][(int((x+540)/cell)+columns)%columns] = true
	}
	for _, rings := range polygons { // some of which overlap
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
				for line := max(int((low+90)/cell)-1, 0); line < lines; line++ {
					y := (float64(line)+0.5)*cell - 90
					if y >= high {
						break
					}
					if y >= low {
						crossings[line] = append(crossings[line], p.x+(y-p.y)/(q.y-p.y)*(q.x-p.x))
					}
				}
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
