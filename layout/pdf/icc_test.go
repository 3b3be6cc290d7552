package pdf

import (
	"bytes"
	"encoding/binary"
	"math"
	"os"
	"testing"
)

// profile builds the sRGB profile after ICC.1:2001-04 (profile version 2.1):
// the colorants and the white point of IEC 61966-2-1, adapted to D50 as ICC
// publishes them in sRGB2014.icc, and the standard's transfer curve at 1024
// points.
func profile() []byte {
	type tag struct {
		sig  string
		data []byte
	}
	be := binary.BigEndian
	text := func(kind, s string) []byte { return append([]byte(kind+"\x00\x00\x00\x00"), s+"\x00"...) }
	xyz := func(v ...uint32) []byte {
		b := []byte("XYZ \x00\x00\x00\x00")
		for _, n := range v {
			b = be.AppendUint32(b, n)
		}
		return b
	}
	const name = "sRGB IEC61966-2.1"
	desc := be.AppendUint32([]byte("desc\x00\x00\x00\x00"), uint32(len(name)+1))
	desc = append(desc, name+"\x00"...)
	desc = append(desc, make([]byte, 4+4+2+1+67)...) // no Unicode, no Macintosh form
	curve := be.AppendUint32([]byte("curv\x00\x00\x00\x00"), 1024)
	for i := range 1024 {
		curve = be.AppendUint16(curve, uint16(math.Round(65535*linear(float64(i)/1023))))
	}
	tags := []tag{
		{"desc", desc},
		{"cprt", text("text", "No rights reserved; made for cornerslip from IEC 61966-2-1")},
		{"wtpt", xyz(0xF6D6, 0x10000, 0xD32D)},
		{"rXYZ", xyz(0x6FA2, 0x38F5, 0x0390)},
		{"gXYZ", xyz(0x6299, 0xB785, 0x18DA)},
		{"bXYZ", xyz(0x24A0, 0x0F84, 0xB6CF)},
		{"rTRC", curve}, {"gTRC", nil}, {"bTRC", nil}, // shared
	}
	table := be.AppendUint32(nil, uint32(len(tags)))
	var data []byte
	at, size := 0, 0
	for _, t := range tags {
		if t.data != nil {
			at, size = 128+4+12*len(tags)+len(data), len(t.data)
			data = append(data, t.data...)
			for len(data)%4 != 0 {
				data = append(data, 0)
			}
		}
		table = append(table, t.sig...)
		table = be.AppendUint32(table, uint32(at))
		table = be.AppendUint32(table, uint32(size))
	}
	head := make([]byte, 128)
	be.PutUint32(head, uint32(128+len(table)+len(data)))
	be.PutUint32(head[8:], 0x02100000)
	copy(head[12:], "mntrRGB XYZ ")
	for i, n := range []uint16{2026, 1, 1, 0, 0, 0} {
		be.PutUint16(head[24+2*i:], n)
	}
	copy(head[36:], "acsp")
	for i, n := range []uint32{0xF6D6, 0x10000, 0xD32D} { // the D50 of the connection space
		be.PutUint32(head[68+4*i:], n)
	}
	return append(append(head, table...), data...)
}

// linear is the transfer function of IEC 61966-2-1, from a stored value to
// light.
func linear(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func TestProfile(t *testing.T) {
	want := profile()
	if os.Getenv("UPDATE") == "1" {
		if err := os.WriteFile("srgb.icc", want, 0o644); err != nil {
			t.Fatal(err)
		}
		srgb = want
	}
	if len(srgb) != len(want) {
		t.Fatalf("srgb.icc has %d bytes, want %d: run with UPDATE=1", len(srgb), len(want))
	}
	// Powers may differ in the last bit between machines: a step of the curve
	// may be one off.
	curve := bytes.Index(want, []byte("curv\x00\x00\x00\x00")) + 12
	for i := range want {
		if i < curve && srgb[i] != want[i] {
			t.Fatalf("srgb.icc differs at byte %d", i)
		}
	}
	for i := range 1024 {
		got, want := int(binary.BigEndian.Uint16(srgb[curve+2*i:])), int(binary.BigEndian.Uint16(want[curve+2*i:]))
		if got-want > 1 || want-got > 1 {
			t.Errorf("point %d of the curve is %d, want %d", i, got, want)
		}
	}
	// The colorants add up to the white point but for the rounding of the
	// published values.
	be := binary.BigEndian
	sum := [3]int64{}
	for _, sig := range []string{"rXYZ", "gXYZ", "bXYZ"} {
		i := bytes.Index(srgb[132:], []byte(sig)) + 132
		at := be.Uint32(srgb[i+4:])
		for k := range sum {
			sum[k] += int64(be.Uint32(srgb[int(at)+8+4*k:]))
		}
	}
	for k, want := range []int64{0xF6D6, 0x10000, 0xD32D} {
		if d := sum[k] - want; d < -16 || d > 16 {
			t.Errorf("the colorants add up to %#x, the white point is %#x", sum[k], want)
		}
	}
}
