package check

// findingCases are the findings of the sound row with some cells changed, in
// the order given.
var findingCases = []struct {
	set  []string
	want []string
}{
	{nil, nil},
	{[]string{"recordedBy", "", "recordNumber", ""}, []string{
		`error collector-missing: recordedBy (empty): no collector is given: fill in who collected it, or write "s.coll." if it is not known`,
		`warning number-missing: recordNumber (empty): no collector's number is given: the label prints s.n.`,
	}},
	{[]string{"decimalLatitude", "95.2"}, []string{`error coordinates-range: decimalLatitude "95.2": latitude is beyond 90°`}},
	{[]string{"decimalLongitude", "-180.01"}, []string{`error coordinates-range: decimalLongitude "-180.01": longitude is beyond 180°`}},
	{[]string{"decimalLatitude", "1e999"}, []string{`error coordinates-range: decimalLatitude "1e999": latitude is beyond 90°`}},
}
