package place

import (
	"bytes"
	"compress/flate"
	"math/rand/v2"
	"testing"
)

// Places whose distance from land is common knowledge, from memory.
func TestOffCoast(t *testing.T) {
	for _, p := range []struct {
		lat, lon, metres float64
		off              bool
		what             string
	}{
		{45, -30, 0, true, "Atlantic"}, {36.5, -14, 0, true, "between Madeira and the mainland"}, {37.75, -129.5, 0, true, "the Pacific six degrees off California"},
		{-13.16, -82.5, 0, true, "six degrees off Peru"}, {-33.5, -80.6, 0, false, "by Juan Fernández"}, {61.6, 0.5, 0, true, "the North Sea off Shetland"},
		{0, 0, 0, true, "the Gulf of Guinea"}, {42, 51, 0, true, "the middle of the Caspian Sea"}, {80, 179.99, 0, true, "the Arctic Ocean at 180°"}, {-30, 179.99, 0, true, "the Pacific at 180°"},
		{38.5, -10.3, 0, true, "90 km off Cabo Espichel"}, {38.5, -10.3, 80e3, false, "the same, where 80 km are nothing"}, {38.42, -9.22, 0, false, "Cabo Espichel"}, {38.4, -9.4, 0, false, "15 km off it"},
		{39.42, -9.51, 0, false, "Berlenga"}, {0.92, -29.35, 0, false, "São Pedro e São Paulo"}, {-3.86, -33.81, 0, false, "Rocas"}, {35.94, -3.03, 0, false, "Alborán"}, {28.4, -178.3, 0, false, "Kure"},
		{52.9, 173.15, 0, false, "Attu, beyond 180°"}, {-16.8, 179.99, 0, false, "Taveuni at 180°"}, {-16.8, -179.99, 0, false, "Taveuni at 180°"}, {40.32, -7.61, 0, false, "Torre"}, {-90, 0, 0, false, "South Pole"},
		{44.0, -82.5, 0, false, "Lake Huron"}, {-1, 33, 0, false, "Lake Victoria"}, {91, 0, 0, false, "no place"},
	} {
		if got := OffCoast(p.lat, p.lon, p.metres); got != p.off {
			t.Errorf("%s (%v, %v) within %v m is off all coasts: %v", p.what, p.lat, p.lon, p.metres, got)
		}
	}
	for _, p := range knownPoints {
		if OffCoast(p.lat, p.lon, 0) && p.codes != "" {
			t.Errorf("%s (%v, %v) is on land", p.what, p.lat, p.lon)
		}
	}
}

// A damaged file is an error, never a panic.
func FuzzUnpackCoasts(f *testing.F) {
	f.Add([]byte{255, 255, 255, 255, 15, 1})
	f.Add([]byte{0, 1})
	f.Fuzz(func(t *testing.T, raw []byte) {
		var b bytes.Buffer
		w, _ := flate.NewWriter(&b, flate.BestSpeed)
		w.Write(raw)
		w.Close()
		unpackCoasts(b.Bytes())
	})
}

// Every stretch of open sea is a sea that has a name: a gap in the land would
// be one more. Of less than ten cells are bays.
func TestSeas(t *testing.T) {
	near := coasts()
	var seen [coastLines][coastColumns]bool
	fill := func(line, column int) (cells int) {
		todo := [][2]int{{line, column}}
		for len(todo) > 0 {
			l, c := todo[len(todo)-1][0], (todo[len(todo)-1][1]+coastColumns)%coastColumns
			todo = todo[:len(todo)-1]
			if l < 0 || l >= coastLines || near[l][c] || seen[l][c] {
				continue
			}
			seen[l][c] = true
			cells++
			todo = append(todo, [2]int{l - 1, c}, [2]int{l + 1, c}, [2]int{l, c - 1}, [2]int{l, c + 1})
		}
		return cells
	}
	for _, sea := range []struct {
		lat, lon float64
		name     string
	}{
		{0, -30, "oceans"}, {-80.12, -73.38, "Ronne shelf, west"}, {-79.88, -74.12, "Ronne shelf"}, {-40.38, 146.12, "Bass Strait"}, {-9.88, 121.62, "Savu Sea"}, {-7.62, 115.12, "Java and South China Sea"}, {-7.62, 122.62, "Flores and Banda Sea"},
		{-6.62, 130.88, "Banda Sea, east"}, {-4.88, 132.62, "Ceram Sea, east"}, {-2.62, 126.88, "Ceram Sea"}, {-1.38, 126.12, "Molucca Sea"}, {1.38, 123.12, "Celebes Sea"}, {5.88, 119.62, "Sulu Sea"}, {9.38, -77.12, "Caribbean Sea"}, {9.38, 119.62, "Sulu Sea, north"},
		{11.12, -67.38, "Venezuelan Basin"}, {15.62, 41.12, "Red Sea"}, {22.12, -76.62, "Old Bahama Channel"}, {25.62, 53.12, "Gulf, east"}, {28.62, 49.38, "Gulf, west"}, {31.12, 18.88, "Mediterranean, east"}, {34.38, 130.12, "Sea of Japan"}, {36.38, -1.38, "Mediterranean, west"},
		{38.12, 119.88, "Bohai"}, {41.12, 18.38, "Adriatic"}, {41.62, 29.88, "Black Sea"}, {44.62, 144.38, "Sea of Okhotsk"}, {47.12, -63.12, "Gulf of Saint Lawrence"}, {50.12, -2.62, "Channel"}, {54.88, -81.38, "Hudson Bay"}, {55.12, 15.88, "Baltic"}, {59.12, -67.62, "Ungava Bay"},
		{59.38, -79.38, "Belcher Islands"}, {60.88, 19.38, "Gulf of Bothnia"}, {62.88, -80.88, "Hudson Bay, north"}, {62.88, -75.62, "Hudson Strait"}, {64.38, -79.62, "Foxe Basin"}, {65.38, 38.62, "White Sea"}, {70.38, -98.88, "Franklin Strait"}, {71.12, -102.62, "M'Clintock Channel"},
		{71.12, -91.38, "Gulf of Boothia"}, {73.62, -112.88, "Viscount Melville Sound"}, {77.12, -98.88, "Bathurst Island"}, {42, 51, "Caspian Sea"}, {45.62, 49.62, "Caspian Sea, north"},
	} {
		line, column := coastAt(sea.lat, sea.lon)
		if fill(line, column) == 0 {
			t.Errorf("%s: %v, %v is none", sea.name, sea.lat, sea.lon)
		}
	}
	for l := range near {
		for c := range near[l] {
			if n := fill(l, c); n >= 10 {
				t.Errorf("%.2f, %.2f lies in a sea without a name, of %d cells", (float64(l)+0.5)*coastCell-90, (float64(c)+0.5)*coastCell-180, n)
			}
		}
	}
}

// Looking through the cells about a place finds what going to many places about
// it does.
func TestOffCoastTwin(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 9))
	for range 3000 {
		lat, lon, metres := rnd.Float64()*178-89, rnd.Float64()*360-180, rnd.Float64()*60e3
		off := OffCoast(lat, lon, metres)
		slow := true
		for i := range 400 {
			// A square, as the cells are.
			y := lat + (float64(i%20)/9.5-1)*metres/degreeMetres
			x := lon + (float64(i/20)/9.5-1)*metres/degreeMetres/cosine(lat)
			if !OffCoast(max(-90, min(90, y)), x, 0) {
				slow = false
			}
		}
		if off != slow && metres/degreeMetres/cosine(lat) < 20 {
			t.Fatalf("%v, %v within %v m: %v, not %v", lat, lon, metres, off, slow)
		}
	}
}
