package place

import (
	"bytes"
	"compress/flate"
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
