package date

import "errors"

// Read reads a date as [Parse] does and tells all it found out.
func Read(text string, h Hints) Reading {
	d, err := FromISO(text)
	if err != nil {
		return Reading{Status: Invalid, Err: errors.New("not yet")}
	}
	return Reading{Status: OK, Date: d}
}
