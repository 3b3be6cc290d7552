package register

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// match finds the holder of every specimen: first of those that say who they
// are, so that a row without an identifier is never taken for one that has it
// further down in the table.
func (m *matcher) match() {
	for i, sp := range m.specimens {
		if h := m.of[i]; h != nil && m.answers[i].Err == nil {
			m.give(i, m.numbered(i, sp, h))
		}
	}
	m.claim()
	for i, sp := range m.specimens {
		if sp.CatalogNumber == "" && sp.OccurrenceID != "" {
			m.give(i, m.identified(i, sp))
		}
	}
	for i, sp := range m.specimens {
		if sp.CatalogNumber == "" && sp.OccurrenceID == "" {
			m.give(i, m.gathered(i, sp))
		}
	}
	// Rows were matched in three passes; numbers go in the table's order.
	m.news = m.news[:0]
	for i, h := range m.of {
		if h != nil && h.fresh() && m.answers[i].Err == nil && h.rows[0] == i {
			m.news = append(m.news, h)
		}
	}
}

// claim notes which gatherings have rows with an occurrenceID that is new to
// the register.
func (m *matcher) claim() {
	m.claims = map[string][]int{}
	for i, sp := range m.specimens {
		if sp.CatalogNumber != "" || sp.OccurrenceID == "" || m.byID[indexKey(sp.OccurrenceID)] != nil {
			continue
		}
		if key, ok := gatheringKey(sp); ok {
			m.claims[key] = append(m.claims[key], i)
		}
	}
}

// give notes the answer for specimen i.
func (m *matcher) give(i int, err error) {
	a := &m.answers[i]
	h := m.of[i]
	if err != nil {
		*a, m.of[i] = Assignment{Err: err}, nil
		return
	}
	a.State = h.state
	if h.fresh() {
		a.Fresh = true
		return
	}
	for _, s := range m.all {
		if s.id == h.series {
			a.Number = s.Pattern.Format(h.n)
		}
	}
}

// take makes h the holder of specimen i and keeps what the row adds to what is
// known of it.
func (m *matcher) take(i int, sp Specimen, h *holder) {
	m.of[i] = h
	h.rows = append(h.rows, i)
	if h.state == Unknown && !h.fresh() {
		return // a number passed over has nothing it could be told apart by until it is imported
	}
	key, ok := gatheringKey(sp)
	date, knows := h.gathering[key]
	id := indexKey(sp.OccurrenceID)
	if h.described && !h.fresh() {
		if m.answers[i].Differs = h.differs(sp); m.answers[i].Differs != "" {
			return
		}
	}
	switch {
	case !ok:
	case !knows:
		h.gathering[key] = sp.Date
		m.byKey[key] = append(m.byKey[key], h)
		m.learned = append(m.learned, learned{h, kindGathering, key, sp.Date})
	case date == "" && sp.Date != "":
		// Next year's gathering of the same number must not pass for it.
		h.gathering[key] = sp.Date
		m.dated = append(m.dated, learned{h, kindGathering, key, sp.Date})
	}
	if sp.OccurrenceID != "" && !h.occurrence[id] {
		h.occurrence[id] = true
		if h.state != Void { // else it is no specimen's any more
			m.byID[id] = h
		}
		m.learned = append(m.learned, learned{h, kindOccurrence, id, ""})
	}
	if !h.described {
		h.known, h.described = sp, true
		m.describe = append(m.describe, h)
	}
}

// differs says in which words sp is another specimen than the one that the
// register has the number for, "" if it may be the same.
func (h *holder) differs(sp Specimen) string {
	key, ok := gatheringKey(sp)
	_, knows := h.gathering[key]
	identified := sp.OccurrenceID != "" && h.occurrence[indexKey(sp.OccurrenceID)]
	other := false
	switch {
	case knows || sp.blank():
	case ok && len(h.gathering) > 0:
		other = true
	case !identified: // one of the two has no number; nor may what else is known differ
		a, b := words(h.known.Collector), words(sp.Collector)
		slices.Sort(a)
		slices.Sort(b)
		other = len(a) > 0 && len(b) > 0 && !slices.Equal(a, b) || !agree(h.known.Date, sp.Date) ||
			numbered(h.known.Number) && numbered(sp.Number) && joined(h.known.Number) != joined(sp.Number)
	}
	if other {
		return fmt.Sprintf("the register has this number for %s, the record is of %s", h, sp)
	}
	if sp.OccurrenceID != "" && len(h.occurrence) > 0 && !identified && !sp.Shared {
		return fmt.Sprintf("the register has this number for the occurrenceID %q, the record has %q", slices.Min(slices.Collect(maps.Keys(h.occurrence))), sp.OccurrenceID)
	}
	return ""
}

// create makes a new holder for specimen i.
func (m *matcher) create(i int, sp Specimen) {
	h := &holder{state: Issued, occurrence: map[string]bool{}, gathering: map[string]string{}}
	m.news = append(m.news, h)
	m.take(i, sp, h)
}

// numbered takes a specimen that has a number of ours.
func (m *matcher) numbered(i int, sp Specimen, h *holder) error {
	if h.state == Void {
		return faultf(ErrVoid, "%s: %s is void; empty the cell to be given another number", sp.at(), m.answers[i].Number)
	}
	if sp.OccurrenceID != "" {
		if other := m.byID[indexKey(sp.OccurrenceID)]; other != nil && other != h {
			return faultf(ErrClash, "%s: its occurrenceID belongs to %s and its number is %s; one of the two is wrong", sp.at(), m.name(other), m.answers[i].Number)
		}
		if j, ok := m.disputed[indexKey(sp.OccurrenceID)]; ok && m.of[j] != h {
			return m.twice(sp, j)
		}
	}
	m.take(i, sp, h)
	if id := indexKey(sp.OccurrenceID); sp.OccurrenceID != "" && m.byID[id] == nil {
		m.disputed[id] = i
	}
	return nil
}

// twice says that sp has the occurrenceID of row j.
func (m *matcher) twice(sp Specimen, j int) error {
	return faultf(ErrClash, "%s: it has the occurrenceID of %s, which has the number %s; each specimen needs its own", sp.at(), m.specimens[j].at(), m.answers[j].Number)
}

// identified takes a specimen with an occurrenceID and no number.
func (m *matcher) identified(i int, sp Specimen) error {
	key, gathered := gatheringKey(sp)
	if h := m.byID[indexKey(sp.OccurrenceID)]; h != nil {
		if len(h.rows) > 0 && !m.sameGathering(h, sp) {
			return faultf(ErrClash, "%s: it has the occurrenceID of %s; each specimen needs its own", sp.at(), m.specimens[h.rows[0]].at())
		}
		m.take(i, sp, h)
		return nil
	}
	if j, ok := m.disputed[indexKey(sp.OccurrenceID)]; ok {
		return m.twice(sp, j)
	}
	if !gathered {
		m.create(i, sp)
		return nil
	}
	// The register may know the specimen from a time when its record had no
	// identifier yet.
	var earlier []*holder
	for _, h := range m.byKey[key] {
		if len(h.rows) > 0 && sp.Shared && m.specimens[h.rows[0]].Shared {
			return faultf(ErrAmbiguous, "%s: preparations says that it is one specimen with %s, and their occurrenceIDs that they are two; give both the same occurrenceID", sp.at(), m.specimens[h.rows[0]].at())
		}
		if len(h.occurrence) == 0 && !h.fresh() && len(h.rows) == 0 && agree(h.gathering[key], sp.Date) {
			earlier = append(earlier, h)
		}
	}
	switch len(earlier) {
	case 0:
		m.create(i, sp)
	case 1:
		for _, j := range m.claims[key] {
			if other := m.specimens[j]; other.OccurrenceID != sp.OccurrenceID && agree(earlier[0].gathering[key], other.Date) {
				return faultf(ErrAmbiguous, "%s: %s was given to a specimen of this gathering before it had an occurrenceID, and %s could be that one too; write the number in the right one's cell", sp.at(), m.name(earlier[0]), other.at())
			}
		}
		m.take(i, sp, earlier[0])
	default:
		return m.severalFit(sp, earlier)
	}
	return nil
}

// gathered takes a specimen that only collector, number and part tell apart.
func (m *matcher) gathered(i int, sp Specimen) error {
	key, ok := gatheringKey(sp)
	if !ok {
		return faultf(ErrNeedsIdentifier, "%s: without a collector and a number the specimen could not be told from others; give it an occurrenceID", sp.at())
	}
	fit := m.byKey[key]
	switch len(fit) {
	case 0:
		m.create(i, sp)
		return nil
	case 1:
	default:
		return m.severalFit(sp, fit)
	}
	h := fit[0]
	if len(h.rows) > 0 {
		other := m.specimens[h.rows[0]]
		if !sp.Shared || !other.Shared {
			return faultf(ErrAmbiguous, "%s: nothing tells it from %s; give each an occurrenceID or say in preparations that they are one specimen", sp.at(), other.at())
		}
	}
	if !agree(h.gathering[key], sp.Date) {
		return faultf(ErrAmbiguous, "%s: %s was given to %s collected on %s, and this one is of %s; if it is the same, write that number in the cell, else give it an occurrenceID",
			sp.at(), m.name(h), sp, h.gathering[key], sp.Date)
	}
	m.take(i, sp, h)
	return nil
}

// agree reports whether two dates may be of one gathering: a collector who
// begins at 1 again each year must not share a number with the year before.
func agree(a, b string) bool { return a == "" || b == "" || a == b }

// sameGathering reports whether sp may be a further part of the row that h
// has already.
func (m *matcher) sameGathering(h *holder, sp Specimen) bool {
	other := m.specimens[h.rows[0]]
	other.Part, sp.Part = "", ""
	a, okA := gatheringKey(other)
	b, okB := gatheringKey(sp)
	if !okA && !okB { // nothing is known that they could differ in but the collector
		a, b = strings.Join(words(other.Collector), " "), strings.Join(words(sp.Collector), " ")
	}
	return okA == okB && a == b && agree(other.Date, sp.Date)
}

func (m *matcher) severalFit(sp Specimen, fit []*holder) error {
	names := ""
	for i, h := range fit[:min(3, len(fit))] {
		if i > 0 {
			names += ", "
		}
		names += m.name(h)
	}
	return faultf(ErrAmbiguous, "%s: several specimens of this gathering have numbers (%s); write the right one in the cell, or give the record an occurrenceID", sp.at(), names)
}

// name is the number of a holder, or where it stands if it has none yet.
func (m *matcher) name(h *holder) string {
	if h.fresh() {
		return m.specimens[h.rows[0]].at()
	}
	for _, s := range m.all {
		if s.id == h.series {
			return s.Pattern.Format(h.n)
		}
	}
	return "?"
}
