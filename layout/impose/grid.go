package impose

import (
	"fmt"
	"strconv"
	"strings"

	"cornerslip/layout"
)

// A Grid is a sheet of stickers that are cut already: equal places in columns
// and rows, described by the numbers on its wrapper. Labels go row by row.
type Grid struct {
	// Paper is the sheet; zero is A4.
	Paper   layout.Size
	Columns int
	Rows    int
	// Place is the size of one sticker.
	Place layout.Size
	// First is the upper left corner of the first place.
	First layout.Point
	// Pitch is from one place's left edge to the next one's, and from top to top;
	// zero is the size of a place: no gaps.
	Pitch layout.Size
	// Start is how many places of the first sheet are used up.
	Start int
	// Skip lists further places of the first sheet that are used up or spoilt,
	// counted from 0 row by row.
	Skip []int
	// Margin is what the printer leaves blank along each edge of the paper;
	// zero is 5 mm, below zero none. The footer keeps within it.
	Margin layout.Length
	// Footer is printed beside the stickers, above or below them, where there
	// is room.
	Footer Footer
	// Name returns how messages call label i; nil calls it by its number.
	Name func(i int) string
}

func (g Grid) withDefaults() Grid {
	if g.Paper == (layout.Size{}) {
		g.Paper = layout.Size{W: 210 * layout.MM, H: 297 * layout.MM}
	}
	if g.Pitch.W == 0 {
		g.Pitch.W = g.Place.W
	}
	if g.Pitch.H == 0 {
		g.Pitch.H = g.Place.H
	}
	g.Margin = orDefault(g.Margin, defaultMargin)
	return g
}

// Plan gives each label a place, in the middle of it.
func (g Grid) Plan(sizes []layout.Size) (*Plan, error) {
	g = g.withDefaults()
	if err := g.valid(); err != nil {
		return nil, err
	}
	free := g.free()
	p := &Plan{gang: Gang{Paper: g.Paper, NoTicks: true, Margin: g.Margin, Footer: g.Footer}}
	fresh := sheet{trim: layout.Rect{Size: g.Paper}, waste: g.edges()}
	for i, s := range sizes {
		if s.W <= 0 || s.H <= 0 {
			return nil, fmt.Errorf("%s of %s: it has no size", nameOf(g.Name, i), s)
		}
		if s.W > g.Place.W || s.H > g.Place.H {
			return nil, fmt.Errorf("%s of %s does not fit a sticker of %s", nameOf(g.Name, i), s, g.Place)
		}
		if len(free) == 0 {
			free = all(g.Columns * g.Rows)
			p.sheets = append(p.sheets, fresh)
		} else if len(p.sheets) == 0 {
			p.sheets = append(p.sheets, fresh)
		}
		at := g.at(free[0])
		at.X += (g.Place.W - s.W) / 2
		at.Y += (g.Place.H - s.H) / 2
		free = free[1:]
		last := &p.sheets[len(p.sheets)-1]
		last.places = append(last.places, Place{Index: i, At: at, Size: s})
	}
	return p, nil
}

func (g Grid) at(place int) layout.Point {
	return layout.Point{
		X: g.First.X + layout.Length(place%g.Columns)*g.Pitch.W,
		Y: g.First.Y + layout.Length(place/g.Columns)*g.Pitch.H,
	}
}

// edges returns the parts of the sheet above and below the stickers.
func (g Grid) edges() []layout.Rect {
	bottom := g.at(g.Columns*g.Rows-1).Y + g.Place.H
	return []layout.Rect{
		{Size: layout.Size{W: g.Paper.W, H: g.First.Y}},
		{At: layout.Point{Y: bottom}, Size: layout.Size{W: g.Paper.W, H: g.Paper.H - bottom}},
	}
}

// Last returns where the last place of the sheet lies.
func (g Grid) Last() layout.Rect {
	g = g.withDefaults()
	return layout.Rect{At: g.at(g.Columns*g.Rows - 1), Size: g.Place}
}

func all(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// free returns the free places of the first sheet.
func (g Grid) free() []int {
	used := map[int]bool{}
	for _, k := range g.Skip {
		used[k] = true
	}
	var out []int
	for k := g.Start; k < g.Columns*g.Rows; k++ {
		if !used[k] {
			out = append(out, k)
		}
	}
	return out
}

// mostPlaces keeps a slip of the pen from making a sheet of millions.
const mostPlaces = 10000

func (g Grid) valid() error {
	n := g.Columns * g.Rows
	switch {
	case g.Paper.W < leastPaper || g.Paper.H < leastPaper || g.Paper.W > mostPaper || g.Paper.H > mostPaper:
		return fmt.Errorf("paper of %s: each side must be from %s to %s", g.Paper, leastPaper, mostPaper)
	case g.Columns < 1 || g.Rows < 1 || g.Columns > mostPlaces || g.Rows > mostPlaces || n > mostPlaces:
		return fmt.Errorf("a sheet of %d columns and %d rows: at least one of each is needed, and at most %d places", g.Columns, g.Rows, mostPlaces)
	case g.Place.W <= 0 || g.Place.H <= 0:
		return fmt.Errorf("stickers of %s: they must have a size", g.Place)
	case g.Pitch.W < 0 || g.Pitch.H < 0:
		return fmt.Errorf("pitch of %s: it must not be negative", g.Pitch)
	case g.Columns > 1 && g.Pitch.W < g.Place.W || g.Rows > 1 && g.Pitch.H < g.Place.H:
		return fmt.Errorf("pitch of %s: stickers of %s would overlap; it must be at least their size", g.Pitch, g.Place)
	case g.First.X < 0 || g.First.Y < 0:
		return fmt.Errorf("first sticker at %s, %s: it must not lie outside the paper", g.First.X, g.First.Y)
	case g.Start < 0 || g.Start >= n:
		return fmt.Errorf("%d places used up: the sheet of %d × %d has %d, so 0 to %d are possible", g.Start, g.Columns, g.Rows, n, n-1)
	}
	last := g.at(n - 1)
	if right, bottom := last.X+g.Place.W, last.Y+g.Place.H; right > g.Paper.W || bottom > g.Paper.H {
		return fmt.Errorf("%d columns and %d rows of stickers reach to %s, %s, and %s ends at %s, %s; check pitch and first sticker",
			g.Columns, g.Rows, right, bottom, NameOf(g.Paper), g.Paper.W, g.Paper.H)
	}
	for _, k := range g.Skip {
		if k < 0 || k >= n {
			return fmt.Errorf("place %d is to be skipped: the sheet of %d × %d has %d", k+1, g.Columns, g.Rows, n)
		}
	}
	if len(g.free()) == 0 {
		return fmt.Errorf("no place of the first sheet is free; take a new sheet and skip none")
	}
	return nil
}

// ParsePlace reads a place as people say it, row and column from 1: "2,3" is
// the third sticker of the second row; a single number counts row by row. It
// returns the place counted from 0, which as Start is the first one free.
func (g Grid) ParsePlace(text string) (int, error) {
	row, column, both := strings.Cut(strings.TrimSpace(text), ",")
	r, err := strconv.Atoi(strings.TrimSpace(row))
	if err != nil {
		return 0, fmt.Errorf("place %q: give row and column, as in 2,3, or how many places to count", text)
	}
	if !both {
		if n := g.Columns * g.Rows; r < 1 || r > n {
			return 0, fmt.Errorf("place %d: the sheet of %d × %d has places 1 to %d", r, g.Columns, g.Rows, n)
		}
		return r - 1, nil
	}
	c, err := strconv.Atoi(strings.TrimSpace(column))
	if err != nil {
		return 0, fmt.Errorf("place %q: give row and column, as in 2,3", text)
	}
	if r < 1 || r > g.Rows || c < 1 || c > g.Columns {
		return 0, fmt.Errorf("place %d,%d: the sheet has %d rows of %d places; the last place is %d,%d", r, c, g.Rows, g.Columns, g.Rows, g.Columns)
	}
	return (r-1)*g.Columns + c - 1, nil
}

// Picture draws the first sheet for the terminal, a line for each row: × is
// used up, ■ will be printed on, □ stays free.
func (g Grid) Picture(labels int) string {
	marks := make([]string, g.Columns*g.Rows)
	for k := range marks {
		marks[k] = "×"
	}
	for i, k := range g.free() {
		if marks[k] = "□"; i < labels {
			marks[k] = "■"
		}
	}
	var b strings.Builder
	for k, m := range marks {
		b.WriteString(m)
		if (k+1)%g.Columns == 0 {
			b.WriteByte('\n')
		} else {
			b.WriteByte(' ')
		}
	}
	return b.String()
}
