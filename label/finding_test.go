package label

import "testing"

func TestOriginString(t *testing.T) {
	for _, c := range []struct {
		o    Origin
		want string
	}{
		{Origin{File: "trip.csv"}, "trip.csv"},
		{Origin{File: "trip.csv", Line: 14}, "trip.csv:14"},
		{Origin{File: "trip.csv", Line: 14, Column: 3}, "trip.csv:14:3"},
		// Columns of a worksheet have letters: A1 references, ISO/IEC 29500-1, 18.17.2.3.
		{Origin{File: "trip.xlsx", Line: 14}, "trip.xlsx:14"},
		{Origin{File: "trip.xlsx", Line: 14, Column: 3}, "trip.xlsx:C14"},
		{Origin{File: "TRIP.XLSX", Line: 1, Column: 26}, "TRIP.XLSX:Z1"},
		{Origin{File: "trip.xlsm", Line: 2, Column: 27}, "trip.xlsm:AA2"},
		{Origin{File: "trip.xlsx", Line: 2, Column: 702}, "trip.xlsx:ZZ2"},
		{Origin{File: "trip.xlsx", Line: 2, Column: 703}, "trip.xlsx:AAA2"},
		{Origin{File: "trip.xlsx", Line: 2, Column: 16384}, "trip.xlsx:XFD2"},
	} {
		if got := c.o.String(); got != c.want {
			t.Errorf("%+v is shown as %s, not %s", c.o, got, c.want)
		}
	}
}
