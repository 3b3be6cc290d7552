package date

import (
	"strings"
)

// keepList adds a list of two: neighbours are an interval, others a list with
// a hole, which no interval says.
func (m *matcher) keepList(a, b fields, even bool, order string) {
	da, err := a.date(a.y)
	db, err2 := b.date(b.y)
	if err == nil {
		err = err2
	}
	if err != nil {
		m.found.add(Date{}, err)
	}
	if !even || err != nil {
		return
	}
	d, err := Interval(da, db)
	if err == nil && da.End().Add(1) != db.Start() {
		m.loose = append(m.loose, d)
		return
	}
	m.keep(a, b, true, order)
}

// tryList matches a list of three or more.
func (m *matcher) tryList(pattern string) {
	star := strings.IndexByte(pattern, '*') - 1
	letter := pattern[star : star+1]
	times := len(m.values) - (len(pattern) - 2)
	if times < 3 {
		return
	}
	letters := pattern[:star] + strings.Repeat(letter, times) + pattern[star+2:]
	var shared fields
	var members []fields
	loose := false
	for i := range letters {
		g := m.gaps[i]
		inner := i > star && i < star+times
		switch {
		case i == 0:
		case inner && (g.dash || g.longDash || g.to):
			loose = true
		case inner && !g.lists() && !g.slash && (letter != "m" || !g.space):
			return
		case !inner && !g.inside():
			return
		}
		var f fields
		if !m.take(&f, letters[i], i, &f) || f.twoFigures || f.span != 0 {
			return
		}
		switch letters[i] {
		case letter[0]:
			members = append(members, f)
		case 'm':
			shared.m, shared.hasM = f.m, true
		default:
			shared.y = f.y
		}
	}
	m.listed(members, shared, loose)
}

// listed adds a list: neighbours are an interval.
func (m *matcher) listed(members []fields, shared fields, loose bool) {
	var ds []Date
	for _, f := range members {
		if !f.hasM {
			f.m, f.hasM = shared.m, shared.hasM
		}
		if f.y == 0 {
			f.y = shared.y
		}
		d, err := f.date(f.y)
		if err != nil {
			m.found.add(d, err)
			return
		}
		ds = append(ds, d)
	}
	for i := 1; i < len(ds); i++ {
		if ds[i-1].End().Add(1) != ds[i].Start() {
			loose = true
		}
	}
	d, err := Interval(ds[0], ds[len(ds)-1])
	if err == nil && loose {
		m.loose = append(m.loose, d)
		return
	}
	m.found.add(d, err)
}
