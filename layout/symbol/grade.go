package symbol

import (
	"math"
	"slices"

	"cornerslip/layout"
)

// A Print is how a symbol comes out of a printer.
type Print struct {
	// DPI is the printer's resolution; 0 is that of the symbol's Dot.
	DPI int
	// Gain is by how much ink or toner spreads on each side of a bar.
	Gain layout.Length
	// Paper and Ink are how much light they send back, 0 to 1; 0 is 0.80 for
	// paper and 0.05 for ink: white rag paper and laser toner (common practice,
	// no source).
	Paper, Ink float64
}

// A Grade estimates how well a symbol scans, by the parameters of ISO/IEC
// 15416 (linear symbols) and, for squares, contrast and modulation of ISO/IEC
// 15415. It is reckoned from the dots the printer will paint; what the printer
// does to them it cannot know.
type Grade struct {
	Contrast     float64 // brightest less darkest
	Modulation   float64 // the faintest edge against the contrast; of squares the faintest module
	Defects      float64 // the greatest unevenness within a bar or space; 0 for squares
	Decodability float64 // how far the worst edge is from being misread; 1 for squares
	Letter       byte    // the worst of the four, 'A' to 'D' or 'F'
}

// limits are the least values for A, B, C and D.
type limits [4]float64

func (l limits) letter(v float64) byte {
	for i, least := range l {
		if v >= least-1e-9 {
			return 'A' + byte(i)
		}
	}
	return 'F'
}

// From ISO/IEC 15416, table 3; modulation of squares from ISO/IEC 15415, from
// memory. Defects count downwards.
var (
	contrastLimits     = limits{0.70, 0.55, 0.40, 0.20}
	modulationLimits   = limits{0.70, 0.60, 0.50, 0.40}
	squareLimits       = limits{0.50, 0.40, 0.30, 0.20}
	defectLimits       = limits{-0.15, -0.20, -0.25, -0.30}
	decodabilityLimits = limits{0.62, 0.50, 0.37, 0.25}
)

// Estimate grades b where it lies: a symbol whose corner is off the printer's
// dots is painted unevenly, and its grade says so.
func Estimate(b layout.Bars, p Print) Grade {
	dot := b.Dot
	if p.DPI > 0 {
		dot = layout.Inch / layout.Length(p.DPI)
	}
	if p.Paper == 0 {
		p.Paper = 0.80
	}
	if p.Ink == 0 {
		p.Ink = 0.05
	}
	s := painted(b, dot, p)
	var g Grade
	if b.Rows > 1 {
		g = s.squares(b)
		g.Letter = max(contrastLimits.letter(g.Contrast), squareLimits.letter(g.Modulation))
	} else {
		g = s.line(b)
		g.Letter = max(contrastLimits.letter(g.Contrast), modulationLimits.letter(g.Modulation),
			defectLimits.letter(-g.Defects), decodabilityLimits.letter(g.Decodability))
	}
	return g
}

// scene is a printed symbol: stretches of ink along a line, or rectangles.
type scene struct {
	Print
	ink []layout.Rect // on whole dots, spread by the gain, relative to the symbol's corner
}

// painted paints every dot that a rectangle touches.
func painted(b layout.Bars, dot layout.Length, p Print) scene {
	down := func(l layout.Length) layout.Length { return l - (l%dot+dot)%dot }
	s := scene{Print: p}
	for _, r := range b.Rects {
		x0, y0 := down(b.At.X+r.At.X), down(b.At.Y+r.At.Y)
		x1, y1 := down(b.At.X+r.Right()-1)+dot, down(b.At.Y+r.Bottom()-1)+dot
		ink := layout.Rect{At: layout.Point{X: x0 - b.At.X, Y: y0 - b.At.Y}, Size: layout.Size{W: x1 - x0, H: y1 - y0}}
		s.ink = append(s.ink, ink.Inset(-p.Gain))
	}
	return s
}

func (s scene) reflectance(cover float64) float64 { return s.Paper - (s.Paper-s.Ink)*min(cover, 1) }

// squares looks at the middle of each module through an opening of 0.8 X.
func (s scene) squares(b layout.Bars) Grade {
	m := matrix{modules: b.Modules, rows: b.Rows}
	light, dark := s.reflectance(0), s.reflectance(1)
	g := Grade{Contrast: light - dark, Modulation: 1, Decodability: 1}
	side := b.Module * 4 / 5
	for y := range m.rows {
		for x := range m.cols() {
			at := layout.Point{X: layout.Length(x)*b.Module + (b.Module-side)/2, Y: layout.Length(y)*b.Module + (b.Module-side)/2}
			r := s.reflectance(s.cover(layout.Rect{At: at, Size: layout.Size{W: side, H: side}}))
			away := (r - (light+dark)/2) * 2 / g.Contrast
			if b.Modules[y*len(b.Modules)/b.Rows+x] == '1' {
				away = -away
			}
			g.Modulation = min(g.Modulation, max(0, away))
		}
	}
	return g
}

// cover returns how much of r is inked, on a lattice of points.
func (s scene) cover(r layout.Rect) float64 {
	const n = 16
	var near []layout.Rect
	for _, k := range s.ink {
		if k.Overlaps(r) {
			near = append(near, k)
		}
	}
	hit := 0
	for i := range n * n {
		x := r.At.X + r.W*layout.Length(2*(i%n)+1)/(2*n)
		y := r.At.Y + r.H*layout.Length(2*(i/n)+1)/(2*n)
		for _, k := range near {
			if x >= k.At.X && x < k.Right() && y >= k.At.Y && y < k.Bottom() {
				hit++
				break
			}
		}
	}
	return float64(hit) / (n * n)
}

// aperture is the diameter of the opening that ISO/IEC 15416 measures a module
// of x through.
func aperture(x layout.Length) layout.Length {
	switch {
	case x < 180*layout.MM/1000:
		return 75 * layout.MM / 1000
	case x < 330*layout.MM/1000:
		return 125 * layout.MM / 1000
	case x < 635*layout.MM/1000:
		return 250 * layout.MM / 1000
	}
	return 500 * layout.MM / 1000
}

// line draws the scan reflectance profile across the bars and grades it.
func (s scene) line(b layout.Bars) Grade {
	const perModule = 48
	quiet := 10 * perModule
	n := len(b.Modules)*perModule + 2*quiet
	step := float64(b.Module) / perModule
	inked := make([]float64, n)
	for _, r := range s.ink {
		// Partly covered steps at both ends count in part.
		x0, x1 := float64(r.At.X)/step+float64(quiet), float64(r.Right())/step+float64(quiet)
		for i := max(0, int(x0)); i < min(n, int(math.Ceil(x1))); i++ {
			inked[i] += min(x1, float64(i+1)) - max(x0, float64(i))
		}
	}
	half := int(float64(aperture(b.Module)) / step / 2)
	weight, sum := make([]float64, 2*half+1), 0.0
	for i := range weight { // a round opening is narrower towards its sides
		d := float64(i-half) / (float64(half) + 0.5)
		weight[i] = math.Sqrt(1 - d*d)
		sum += weight[i]
	}
	profile := make([]float64, n)
	for i := range profile {
		cover := 0.0
		for k, w := range weight {
			if j := i + k - half; j >= 0 && j < n {
				cover += w / sum * min(inked[j], 1)
			}
		}
		profile[i] = s.reflectance(cover)
	}
	return gradeProfile(profile, b, step)
}

// gradeProfile finds the elements in a profile, whose samples are step apart,
// and rates them.
func gradeProfile(profile []float64, b layout.Bars, step float64) Grade {
	light, dark := slices.Max(profile), slices.Min(profile)
	g := Grade{Contrast: light - dark, Modulation: 1}
	// Elements lie between the crossings of the middle reflectance.
	middle := (light + dark) / 2
	var edges, peaks []float64
	from := 0
	for i := 1; i <= len(profile); i++ {
		if i < len(profile) && (profile[i-1] > middle) == (profile[i] > middle) {
			continue
		}
		element := profile[from:i]
		peak := slices.Min(element)
		if element[0] > middle {
			peak = slices.Max(element)
		}
		if len(peaks) > 0 {
			g.Modulation = min(g.Modulation, math.Abs(peak-peaks[len(peaks)-1])/g.Contrast)
		}
		peaks = append(peaks, peak)
		g.Defects = max(g.Defects, unevenness(element, middle)/g.Contrast)
		if i < len(profile) {
			a, c := profile[i-1], profile[i]
			edges = append(edges, (float64(i-1)+(a-middle)/(a-c))*step)
		}
		from = i
	}
	want := trueEdges(b.Modules)
	switch {
	case len(edges) != len(want): // a bar or space has vanished
	case b.Symbology == Code39:
		g.Decodability = decodability39(edges)
	default:
		g.Decodability = decodability128(edges, want)
	}
	return g
}

// unevenness returns how far an element's reflectance turns back between its
// two ends.
func unevenness(element []float64, middle float64) float64 {
	sign := 1.0
	if element[0] <= middle {
		sign = -1
	}
	worst := 0.0
	before := make([]float64, len(element))
	best := math.Inf(-1)
	for i, r := range element {
		best = max(best, sign*r)
		before[i] = best
	}
	best = math.Inf(-1)
	for i := len(element) - 1; i >= 0; i-- {
		best = max(best, sign*element[i])
		worst = max(worst, min(before[i], best)-sign*element[i])
	}
	return worst
}

// trueEdges returns where dark and light change, in modules.
func trueEdges(modules string) []int {
	var out []int
	last := byte('0')
	for i := range len(modules) + 1 {
		c := byte('0')
		if i < len(modules) {
			c = modules[i]
		}
		if c != last {
			out = append(out, i)
		}
		last = c
	}
	return out
}

// decodability128 follows ISO/IEC 15417: in a character of 11 modules each
// distance from an edge to the next of the same kind must stay off the
// thresholds half way to the next whole module, and its bars together within
// 1.75 modules of their sum.
func decodability128(edges []float64, want []int) float64 {
	worst := 1.0
	for at := 0; at+6 < len(edges); at += 6 {
		e, w := edges[at:at+7], want[at:at+7]
		module := (e[6] - e[0]) / 11
		for i := range 4 {
			off := math.Abs((e[i+2]-e[i])/module - float64(w[i+2]-w[i]))
			worst = min(worst, (0.5-off)/0.5)
		}
		bars := (e[1]-e[0]+e[3]-e[2]+e[5]-e[4])/module - float64(w[1]-w[0]+w[3]-w[2]+w[5]-w[4])
		worst = min(worst, (1.75-math.Abs(bars))/1.75)
	}
	return max(0, worst)
}

// decodability39 follows ISO/IEC 16388, from memory: of the nine elements of a
// character of width S those wider than S/8 are wide; narrow and wide elements
// must both keep off that threshold.
func decodability39(edges []float64) float64 {
	worst := 1.0
	for at := 0; at+9 < len(edges); at += 10 {
		e := edges[at : at+10]
		threshold := (e[9] - e[0]) / 8
		var narrow, wide []float64
		for i := range 9 {
			if w := e[i+1] - e[i]; w < threshold {
				narrow = append(narrow, w)
			} else {
				wide = append(wide, w)
			}
		}
		if len(narrow) != 6 || len(wide) != 3 {
			return 0
		}
		mean := func(all []float64) (sum float64) {
			for _, w := range all {
				sum += w / float64(len(all))
			}
			return sum
		}
		worst = min(worst,
			(threshold-slices.Max(narrow))/(threshold-mean(narrow)),
			(slices.Min(wide)-threshold)/(mean(wide)-threshold))
	}
	return max(0, worst)
}
