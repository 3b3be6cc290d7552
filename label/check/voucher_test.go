package check

import "testing"

// onlyRecord reads a table of one record.
func onlyRecord(t *testing.T, in string) *Record {
	t.Helper()
	records, _ := run(t, New(Options{}), openBytes(t, "t.csv", []byte(in)))
	if len(records) != 1 {
		t.Fatalf("%q: %d records", in, len(records))
	}
	return records[0]
}

// TestVoucher parts collector and number of one cell. The forms are common
// practice, no source; the names are invented.
func TestVoucher(t *testing.T) {
	for _, c := range []struct{ in, collector, number string }{
		{"Almeida 9858", "Almeida", "9858"},
		{"Almeida & R. Costa 14967", "Almeida & R. Costa", "14967"},
		{"Costa R.G. 17471", "Costa R.G.", "17471"},
		{"Teles et al. 2010-0139 (VDOURA)", "Teles et al.", "2010-0139"},
		{"Teles s.n.", "Teles", "s.n."},
		{"Prates 2048, Costa, Mota", "Prates | Costa, Mota", "2048"},
		{"Almeida 13 & Costa", "Almeida | Costa", "13"},
		{"Almeida, Costa & Mota RLB 5028", "Almeida, Costa & Mota", "RLB 5028"},
		{"Almeida41617", "Almeida", "41617"},
		{"Almeida 220 (VDOURA 0012345)", "Almeida", "220"},
		{"Almeida and Prates 221 (VDOURA) *", "Almeida and Prates", "221"},
		{"Almeida 222 **", "Almeida", "222"},
		{"Almeida 223a†", "Almeida", "223a"},
		{"Almeida & Costa 221 [VDOURA 0012346, COI]", "Almeida & Costa", "221"},
		{"Almeida_and_Prates_948", "Almeida and Prates", "948"}, // the name of a sample
		{"Teles_et_al_79_135", "Teles et al", "79-135"},
		{"Teles_SN", "Teles", "s.n."},
		{"Almeida 447, 448", "Almeida", "447, 448"}, // several of one trip
		{"Almeida 420B, 421, 422", "Almeida", "420B, 421, 422"},
		{"Almeida 3489A, C (VDOURA)", "Almeida", "3489A, C"},
		{"Almeida 447 and 448", "Almeida", "447 and 448"},
		{"Almeida 447, 2019", "", ""}, // perhaps a year
		{"Almeida 447, 446", "", ""},
		{"Almeida 448, B. Costa", "Almeida | B. Costa", "448"},
		{"Almeida sn", "Almeida", "s.n."},
		{"VDOURA 12345", "", ""}, // a sheet of a herbarium
		{"Almeida", "", ""},      // perhaps no collector
		{"Almeida & Costa", "Almeida & Costa", ""},
		{"I. Almeida", "I. Almeida", ""},
		{"9858", "", ""},
		{"IMA 214", "", ""}, // a sheet's number as well
		{"IMA0214.1", "", "IMA0214.1"},
	} {
		r := onlyRecord(t, "Species,Voucher,Country\nErica arborea L.,\""+c.in+"\",Portugal\n")
		if r.Text("recordedBy") != c.collector || r.Text("recordNumber") != c.number {
			t.Errorf("%s: %q %q", c.in, r.Text("recordedBy"), r.Text("recordNumber"))
		}
	}
}

// TestVoucherSheet: the number of the sheet stands in brackets.
func TestVoucherSheet(t *testing.T) {
	for in, want := range map[string]string{"Almeida 220 (VDOURA 0012345)": "VDOURA 0012345", "Almeida 220 (VDOURA)": "", "Almeida 220 (VDOURA 0012345, COI 12)": ""} {
		r := onlyRecord(t, "Species,Voucher,Country\nErica arborea L.,\""+in+"\",Portugal\n")
		if r.Text("catalogNumber") != want {
			t.Errorf("%s: %q", in, r.Text("catalogNumber"))
		}
	}
}

// TestVoucherBeside: beside columns of collectors and numbers, a voucher is the
// sheet's number, or says the number that the column lacks.
func TestVoucherBeside(t *testing.T) {
	for _, c := range []struct{ collector, number, voucher, wantNumber, wantSheet string }{
		{"I. Almeida", "214", "VDOURA 0012345", "214", "VDOURA 0012345"},
		{"I. Almeida", "5028", "IA 5028", "5028", ""}, // his letters and number once more
		{"I. Almeida", "", "IA 5028", "IA 5028", ""},
		{"Inês M. Almeida & R. Costa", "", "IMA5028", "IMA5028", ""},
		{"I. Almeida", "", "RC 5028", "", ""},
		{"I. Almeida", "214", "Almeida 214", "214", ""},
		{"I. Almeida", "", "Almeida 214", "214", ""},
		{"I. Almeida", "", "Prates 214", "", ""}, // whose number it is cannot be told
		{"I. Almeida", "", "VDOURA 0012345", "", ""},
		{"I. Almeida", "", "VDOURA:F:0012345", "", "VDOURA:F:0012345"}, // as sequence archives have it
		{"I. Almeida", "214", "VDOURA:12345", "214", "VDOURA:12345"},
		{"Almeida, I. & Costa, R.", "", "Almeida & Costa 17", "17", ""},
	} {
		r := onlyRecord(t, "Species,Collector,Coll. no.,Voucher,Country\nErica arborea L.,\""+c.collector+"\","+c.number+","+c.voucher+",Portugal\n")
		if r.Text("recordedBy") != c.collector || r.Text("recordNumber") != c.wantNumber || r.Text("catalogNumber") != c.wantSheet {
			t.Errorf("%s, %s, %s: number %q, sheet %q", c.collector, c.number, c.voucher, r.Text("recordNumber"), r.Text("catalogNumber"))
		}
	}
}

// TestVoucherOfInitials: beside the number of the sheet, letters and figures are the
// collector's number, though nobody says whose letters they are.
func TestVoucherOfInitials(t *testing.T) {
	for _, c := range []struct{ sheet, voucher, want string }{
		{"VDOURA0012345", "IMA0214", "IMA0214"},
		{"VDOURA0012345", "IMA-214", "IMA-214"},
		{"IMA0012345", "IMA0214", ""},
		{"VDOURA0012345", "VDOURA0012345", ""},
		{"VDOURA0012345", "K000412345", ""},
	} {
		r := onlyRecord(t, "Species,Accession,Voucher,Country\nErica arborea L.,"+c.sheet+","+c.voucher+",Portugal\n")
		if r.Text("recordNumber") != c.want || r.Text("catalogNumber") != c.sheet || r.Text("recordedBy") != "" {
			t.Errorf("%s, %s: %q", c.sheet, c.voucher, r.Text("recordNumber"))
		}
	}
}

// TestVoucherDate: the heading says that the date stands behind collector and number.
func TestVoucherDate(t *testing.T) {
	for _, c := range []struct{ heading, in, collector, number, day string }{
		{"Collector, number, date", "Almeida 214, 12 May 2014", "Almeida", "214", "2014-05-12"},
		{"Collector, number, date", "Almeida & R. Costa 214 (12.v.2014)", "Almeida & R. Costa", "214", "2014-05-12"},
		{"Collector, number, date", "Almeida 214; May 12, 2014", "Almeida", "214", "2014-05-12"},
		{"Collector, number, date", "Almeida 214", "Almeida", "214", ""},
		{"Collector & date", "Almeida, 12 May 2014", "Almeida", "", "2014-05-12"},
		{"Collector & date", "I. Almeida 13.5.2014", "I. Almeida", "", "2014-05-13"},
		{"Collector & date", "Almeida 214 12 May 2014", "Almeida", "214", "2014-05-12"},
		{"Collector & date", "Almeida 214/2014", "Almeida", "214/2014", ""},
		{"Collector (collection #)", "Almeida (#214)", "Almeida", "214", ""},
		{"Collector (collection #)", "Almeida #214", "Almeida", "214", ""},
		{"Collector (year)", "Almeida (2014)", "Almeida", "", "2014"},
		{"Collector/Date", "Almeida 214/14 May 2014", "Almeida", "214", "2014-05-14"},
		{"Collector/Date", "Almeida s.n./14 May 2014", "Almeida", "s.n.", "2014-05-14"},
		{"Collector/Date", "Almeida 214/2014-05-14", "Almeida", "214", "2014-05-14"},
		{"Collected by / date", "I. Almeida / 13.05.2014", "I. Almeida", "", "2014-05-13"},
		{"Collector / date", "I. Almeida, R. Costa, v.2014", "I. Almeida, R. Costa", "", "2014-05"},
	} {
		r := onlyRecord(t, "Species,\""+c.heading+"\",Country\nErica arborea L.,\""+c.in+"\",Portugal\n")
		if r.Text("recordedBy") != c.collector || r.Text("recordNumber") != c.number || r.Date.ISO() != c.day {
			t.Errorf("%s %s: %q %q %q", c.heading, c.in, r.Text("recordedBy"), r.Text("recordNumber"), r.Date.ISO())
		}
	}
}

// TestPlaceWithDate: a date among the words for a place is told once, at the heading.
func TestPlaceWithDate(t *testing.T) {
	for heading, want := range map[string]int{"Locality, date": 0, "Locality": 2} {
		_, fs := run(t, New(Options{}), openBytes(t, "t.csv", []byte("Species,\""+heading+"\",Leg.\nErica arborea L.,\"Lindoso, 12.v.2014\",I. Almeida\nErica cinerea L.,\"Parada, 13.v.2014\",I. Almeida\n")))
		n := 0
		for _, f := range fs {
			if f.Rule == "date-missing" {
				n += max(1, len(f.Also))
			}
		}
		if n != want {
			t.Errorf("%s: the date is missing in %d records, want %d", heading, n, want)
		}
	}
}
