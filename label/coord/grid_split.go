package coord

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"cornerslip/label/lang"
)

// A SplitGrid is a UTM or MGRS reference whose parts stand in cells of their
// own; a cell that is empty or missing is "".
type SplitGrid struct {
	Zone       string // 29, 29T, 29N, "UTM 29 T"
	Band       string // T, or N and S for the hemisphere
	Hemisphere string // N, S, "norte"
	Square     string // PE, PE27, 29TPE27
	Easting    string // 623000, "623 000 m", 623.000
	Northing   string
}

var (
	// zoneCell is zone, band or hemisphere, and square.
	zoneCell = regexp.MustCompile(`(?i)^(?:(?:UTM|zone|zona|huso|fuso|fuseau)\b[\s:.,]*)*(\d{1,2})(?:[.,]0+)?\s*°?\s*(?:([C-HJ-NP-X])\s*([A-HJ-NP-Z][A-HJ-NP-V])?|(\p{L}{3,}))?\.?$`)
	// squareCell is a square of 100 km with figures, with its zone or without.
	squareCell = regexp.MustCompile(`(?i)^(\d{1,2}\s?[C-HJ-NP-X]\s?)?([A-HJ-NP-Z][A-HJ-NP-V])\s?(\d{1,5}\s\d{1,5}|\d{0,10})$`)
	// metresCell is a length with what people leave of its name and unit.
	metresCell = regexp.MustCompile(`(?i)^(?:(?:easting|northing|este|norte|[ENXY])\b?\s*[:=.]?\s*)?([+-]?\d[\d .,']*?)\s*(?:m(?:etres?|eters?|etros)?\.?)?\s*(?:easting|northing|este|norte|east|north|[EN])?\.?$`)
	grouped    = regexp.MustCompile(`^\d{1,3}(?:[ .,']\d{3})+$`)
)

// ReadSplitGrid reads a grid reference whose parts stand in cells of their own.
// Where easting and northing hold degrees, as columns headed X and Y do, and no
// zone is given, they are read as those. The error is a *CellError where one
// cell is at fault.
func ReadSplitGrid(g SplitGrid, h Hints) Reading {
	if len(g.Zone)+len(g.Band)+len(g.Hemisphere)+len(g.Square)+len(g.Easting)+len(g.Northing) > longest {
		return refuse(NotConvertible, "the text is too long to be coordinates")
	}
	if r, ok := g.degrees(h); ok {
		return r
	}
	if z := h.System; z.Zone != "" && g.Zone == "" && g.Square == "" {
		g.Zone = z.Zone
		if h.Datum == "" || ofSystem(h.Datum) {
			h.Datum = z.Datum
		}
	}
	t := prepare(g.Zone)
	t.elsewhere(h.Datum)
	return g.read(t, h).of(t)
}

func refuseCell(s Status, c Cell, format string, args ...any) Reading {
	return Reading{Status: s, Err: &CellError{Cell: c, Err: fmt.Errorf(format, args...)}}
}

func (g SplitGrid) read(t prepared, h Hints) Reading {
	zone, letter, square, fault := g.zone(t, h)
	if fault != nil {
		return *fault
	}
	if g.Square != "" && square == "" {
		return g.readSquare(t, zone, letter)
	}
	if square != "" && (g.Easting == "" || len(strings.TrimSpace(g.Easting)) < 6) {
		digits, ok := squareFigures(g.Easting, g.Northing)
		if !ok {
			return refuseCell(Invalid, CellEasting, "the figures in a square are not equally many each way")
		}
		return g.square(t, fmt.Sprintf("%d%c%s%s", zone, letter, square, digits))
	}
	switch {
	case g.Easting == "":
		return refuseCell(NotConvertible, CellEasting, "the easting is missing: fill it in, or clear the northing")
	case g.Northing == "":
		return refuseCell(NotConvertible, CellNorthing, "the northing is missing: fill it in, or clear the easting")
	}
	e, inGroups, okE := metresOf(g.Easting, true)
	n, parted, okN := metresOf(g.Northing, true)
	if parted && !inGroups && strings.Count(g.Northing, ".")+strings.Count(g.Northing, ",") == 1 {
		// 183.514 is metres near the equator or kilometres from it: the easting
		// shows what its point is.
		if !strings.ContainsAny(g.Easting, ".,") {
			return refuseCell(Ambiguous, CellNorthing, "can be thousands or a decimal point: write it without the point")
		}
		n, _, okN = metresOf(g.Northing, false)
	}
	switch {
	case !okE:
		return refuseCell(NotConvertible, CellEasting, "not a number of metres: write it in figures alone")
	case !okN:
		return refuseCell(NotConvertible, CellNorthing, "not a number of metres: write it in figures alone")
	case zone == 0 && h.System.Grid != "":
		r := refuseCell(NotConvertible, CellZone, "%s is not converted here: write degrees", h.System.Grid)
		r.Foreign = true
		return r
	case zone == 0 && !h.System.UTM:
		return refuseCell(NotConvertible, CellZone, "nothing names the grid: write the UTM zone with its band, as 29T, or the name of another grid, as Lambert 72, in verbatimCoordinateSystem")
	case zone == 0:
		return refuseCell(NotConvertible, CellZone, "the UTM zone is missing: write it with its band, as 29T")
	}
	u := UTM{Zone: zone, Easting: e.mm, Northing: n.mm, Step: max(e.step, n.step)}
	r := t.placed(u, letter)
	if r.Status == Invalid && (e.mm < 100_000_000 || e.mm >= 900_000_000) {
		swapped := t.placed(UTM{Zone: zone, Easting: n.mm, Northing: e.mm, Step: u.Step}, letter)
		if swapped.Status == OK {
			return Reading{Status: Ambiguous, Err: &CellError{Cell: CellEasting, Err: fmt.Errorf("easting and northing stand in each other's place: swap the two")}}
		}
	}
	if r.Err != nil {
		r.Err = &CellError{Cell: faultyCell(r, u), Err: r.Err}
	}
	return r
}

// faultyCell is where a reading's fault is to be mended.
func faultyCell(r Reading, u UTM) Cell {
	switch {
	case r.Status != Invalid:
		return CellZone
	case u.Zone < 1 || u.Zone > 60:
		return CellZone
	case u.Easting < 100_000_000 || u.Easting >= 900_000_000:
		return CellEasting
	}
	return CellNorthing
}

// zone reads the cells for zone, band and hemisphere. The letter is as placed
// takes it.
func (g SplitGrid) zone(t prepared, h Hints) (zone int, letter byte, square string, fault *Reading) {
	no := func(c Cell, format string, args ...any) (int, byte, string, *Reading) {
		r := refuseCell(NotConvertible, c, format, args...)
		return 0, 0, "", &r
	}
	if s := strings.Trim(t.grid, " ;"); s != "" {
		m := zoneCell.FindStringSubmatch(s)
		if m == nil {
			return no(CellZone, "no UTM zone: write it with its band, as 29T")
		}
		zone, _ = strconv.Atoi(m[1])
		if m[2] != "" {
			letter = strings.ToUpper(m[2])[0]
		}
		square = strings.ToUpper(m[3])
		if m[4] != "" {
			switch p := compassOf(m[4], h.Lang); {
			case len(p) == 1 && p[0] == lang.North:
				letter = '+'
			case len(p) == 1 && p[0] == lang.South:
				letter = '-'
			default:
				return no(CellZone, "no UTM zone: write it with its band, as 29T")
			}
		}
		if zone < 1 || zone > 60 {
			r := refuseCell(Invalid, CellZone, "UTM zone %d does not exist: zones run from 1 to 60", zone)
			return 0, 0, "", &r
		}
	}
	if b := strings.ToUpper(strings.TrimSpace(g.Band)); b != "" {
		switch {
		case utf8.RuneCountInString(b) == 1 && strings.Contains(bands, b):
			if letter, fault = agree(letter, b[0], CellBand); fault != nil {
				return 0, 0, "", fault
			}
		case len(compassOf(b, h.Lang)) == 1:
			g.Hemisphere, g.Band = g.Band, ""
		default:
			return no(CellBand, "no band: its letters run from C to X without I and O")
		}
	}
	if s := strings.Trim(g.Hemisphere, " ."); s != "" {
		p := compassOf(s, h.Lang)
		if len(p) != 1 || p[0] != lang.North && p[0] != lang.South {
			return no(CellHemisphere, "no hemisphere: write N or S")
		}
		if letter, fault = ofHemisphere(letter, p[0] == lang.North); fault != nil {
			return 0, 0, "", fault
		}
	}
	return zone, letter, square, nil
}

// agree takes the letter of a second cell beside that of the zone's. N and S
// may stand for the hemisphere in one of them.
func agree(zone, band byte, c Cell) (byte, *Reading) {
	switch {
	case zone == 0 || zone == band:
		return band, nil
	case zone == '+' || zone == '-':
		return ofHemisphere(band, zone == '+')
	case band == 'N' || band == 'S':
		return ofHemisphere(zone, band == 'N')
	case zone == 'N' || zone == 'S':
		return ofHemisphere(band, zone == 'N')
	}
	r := refuseCell(Ambiguous, c, "the letter %c, and %c in the zone's cell: keep one", band, zone)
	return 0, &r
}

// ofHemisphere is a band's letter with its hemisphere known.
func ofHemisphere(letter byte, north bool) (byte, *Reading) {
	sign := byte('-')
	if north {
		sign = '+'
	}
	switch {
	case letter == 0 || letter == sign || letter == 'S' || letter == 'N' && north:
		return sign, nil
	case (letter >= 'N') == north && letter != '+' && letter != '-':
		return letter, nil
	}
	r := refuseCell(Ambiguous, CellHemisphere, "the hemisphere contradicts the letter behind the zone: keep one")
	return 0, &r
}

// readSquare reads a cell that holds a square.
func (g SplitGrid) readSquare(t prepared, zone int, letter byte) Reading {
	m := squareCell.FindStringSubmatch(strings.TrimSpace(marks.Replace(g.Square)))
	if m == nil {
		return refuseCell(NotConvertible, CellSquare, "no square of MGRS: write 29TPE27")
	}
	head := strings.Join(strings.Fields(m[1]), "")
	if head == "" {
		if zone == 0 || letter == 0 || letter == '+' || letter == '-' {
			r := refuseCell(NotConvertible, CellSquare, "zone and band of the square are missing: write them before it, as 29T")
			r.Foreign = nationalGrid(strings.TrimSpace(g.Square)) != ""
			return r
		}
		head = fmt.Sprintf("%d%c", zone, letter)
	}
	digits := m[3]
	if digits == "" && len(strings.TrimSpace(g.Easting)) < 6 {
		figures, ok := squareFigures(g.Easting, g.Northing)
		if !ok {
			return refuseCell(Invalid, CellEasting, "the figures in a square are not equally many each way")
		}
		digits = figures
	}
	return g.square(t, head+m[2]+strings.Join(strings.Fields(digits), ""))
}

// squareFigures are the figures east and north within a square.
func squareFigures(e, n string) (string, bool) {
	e, n = strings.TrimSpace(e), strings.TrimSpace(n)
	return e + n, len(e) == len(n) && strings.Trim(e+n, "0123456789") == ""
}

func (g SplitGrid) square(t prepared, ref string) Reading {
	p, err := FromMGRS(ref)
	if err != nil {
		return Reading{Status: Invalid, Err: &CellError{Cell: CellSquare, Err: err}}
	}
	return t.place(p)
}

// metresOf reads a cell for an easting or northing. A mark before three figures
// parts thousands if the caller lets it: nobody writes an easting below a
// kilometre.
func metresOf(text string, group bool) (l length, parted, ok bool) {
	m := metresCell.FindStringSubmatch(strings.TrimSpace(marks.Replace(text)))
	if m == nil {
		return length{}, false, false
	}
	s := m[1]
	if parted = group && grouped.MatchString(s); parted {
		s = strings.NewReplacer(",", "", ".", "", "'", "").Replace(s)
	}
	s = strings.ReplaceAll(s, " ", "")
	if i := strings.LastIndexAny(s, ".,"); i >= 0 {
		s = strings.NewReplacer(",", "", ".", "", "'", "").Replace(s[:i]) + "." + s[i+1:]
	}
	whole, frac, _ := strings.Cut(s, ".")
	if strings.Trim(frac, "0") == "" {
		frac = ""
	}
	l.step = 1000
	n, err := strconv.ParseInt(whole+(frac + "000")[:3], 10, 64)
	if err != nil || n < 0 || len(whole) > 9 || strings.Trim(whole+frac, "0123456789") != "" {
		return length{}, false, false
	}
	l.mm = n
	for range min(len(frac), 3) {
		l.step /= 10
	}
	return l, parted, true
}

// degrees reads columns X and Y that hold degrees.
func (g SplitGrid) degrees(h Hints) (Reading, bool) {
	if g.Zone != "" || g.Band != "" || g.Square != "" || g.Easting == "" || g.Northing == "" {
		return Reading{}, false
	}
	e, n := strings.TrimSpace(g.Easting), strings.TrimSpace(g.Northing)
	if p, err := FromDecimal(n, e); err == nil && p.step < Degree {
		return Reading{Status: OK, Point: p, HasLat: true, HasLon: true}, true
	}
	if strings.ContainsAny(marks.Replace(e+n), "°'\"") {
		h.Signed = true
		return ReadPair(n, e, h), true
	}
	return Reading{}, false
}
