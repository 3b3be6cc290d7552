package table

// A termIndex finds the column of a term, as a map would in four times the
// time: rules ask for a hundred terms a row, most of which a table lacks.
type termIndex []struct {
	term   string
	column int
}

// newTermIndex keeps the first column of each term.
func newTermIndex(columns []Column) termIndex {
	n := 16
	for n < 4*len(columns) {
		n *= 2
	}
	x := make(termIndex, n)
	for i := range columns {
		term := columns[i].Term
		if term == "" {
			continue
		}
		at := x.place(term)
		for x[at].term != "" && x[at].term != term {
			at = (at + 1) & (n - 1)
		}
		if x[at].term == "" {
			x[at].term, x[at].column = term, i
		}
	}
	return x
}

// place is where the search for a term begins. Length and three letters tell
// Darwin Core's terms apart but for a few.
func (x termIndex) place(term string) int {
	n := uint32(len(term))
	h := n*0x9E3779B1 ^ uint32(term[0])*0x85EBCA6B ^ uint32(term[n/2])*0xC2B2AE35 ^ uint32(term[n-1])*0x27D4EB2F
	return int(h^h>>15) & (len(x) - 1)
}

// find returns the column of a term, counted from 0.
func (x termIndex) find(term string) (int, bool) {
	if len(x) == 0 || term == "" {
		return 0, false
	}
	for at := x.place(term); x[at].term != ""; at = (at + 1) & (len(x) - 1) {
		if x[at].term == term {
			return x[at].column, true
		}
	}
	return 0, false
}
