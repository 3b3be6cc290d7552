package coord

import "errors"

// Read reads coordinates as [Parse] does and tells all it found out.
func Read(text string, h Hints) Reading { return Reading{Status: Invalid, Err: errors.New("not yet")} }

// ReadPair reads coordinates as [ParsePair] does and tells all it found out.
func ReadPair(lat, lon string, h Hints) Reading { return Read(lat+" "+lon, h) }
