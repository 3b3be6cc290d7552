package job

import (
	"cmp"
	"io"
	"slices"
	"strings"

	"cornerslip/label"
	"cornerslip/layout"
	"cornerslip/layout/svg"
	"cornerslip/layout/text"
)

// A Proof is one set label, to look at.
type Proof struct {
	SetLabel
	Box *layout.Box
}

// Proof checks the table and hands every set label to each, in order.
func (j *Job) Proof(t *Table, q Request, say func(label.Finding) error, each func(Proof) error) (Summary, error) {
	if err := j.prepare(&q); err != nil {
		return Summary{}, err
	}
	return j.checkAndSet(t, &q, say, func(_ *Summary, r setRecord) error {
		for i, l := range r.labels {
			b, err := layout.Decode(r.encoded[i])
			if err != nil {
				return err
			}
			if err := each(Proof{l, b}); err != nil {
				return err
			}
		}
		return nil
	})
}

// WriteText shows a label in the terminal; styled asks for italics and bold.
func (j *Job) WriteText(w io.Writer, b *layout.Box, styled bool) error {
	return text.Write(w, b, text.Options{Styled: styled})
}

// WriteSVG writes a label as a picture that needs no font.
func (j *Job) WriteSVG(w io.Writer, b *layout.Box) error {
	return svg.Write(w, layout.Page{Size: b.Size, Boxes: []layout.Placed{{Box: b}}}, j.fonts, svg.Options{Fonts: svg.Outlines})
}

// ProofJSON is what `proof --json` writes of a label; its keys are kept
// stable.
type ProofJSON struct {
	Row     int          `json:"row"`
	Kind    string       `json:"kind"`
	Label   int          `json:"label"`
	Of      int          `json:"of"`
	Size    [2]float64   `json:"size_mm"`
	Lines   []LineJSON   `json:"lines"`
	Symbols []SymbolJSON `json:"symbols"`
}

// LineJSON is a line of text: where its baseline starts, and its runs.
type LineJSON struct {
	X    float64   `json:"x_mm"`
	Y    float64   `json:"y_mm"`
	Runs []RunJSON `json:"runs"`
}

// RunJSON is a stretch of a line in one style.
type RunJSON struct {
	Text   string  `json:"text"`
	Italic bool    `json:"italic"`
	Bold   bool    `json:"bold"`
	Size   float64 `json:"size_pt"`
}

// SymbolJSON is a barcode.
type SymbolJSON struct {
	Symbology string  `json:"symbology"`
	Text      string  `json:"text"`
	X         float64 `json:"x_mm"`
	Y         float64 `json:"y_mm"`
	W         float64 `json:"w_mm"`
	H         float64 `json:"h_mm"`
	Dots      int     `json:"module_dots"`
	Modules   string  `json:"modules"`
}

// JSON returns the label as `proof --json` writes it.
func (p Proof) JSON() ProofJSON {
	b := p.Box
	out := ProofJSON{
		Row: b.Ref.Row, Kind: b.Ref.Kind, Label: b.Ref.Label, Of: b.Ref.Of,
		Size: [2]float64{b.Size.W.MM(), b.Size.H.MM()}, Lines: []LineJSON{}, Symbols: []SymbolJSON{},
	}
	for _, l := range layout.Lines(b.Marks) {
		line := LineJSON{X: round4(l[0].At.X), Y: round4(l[0].At.Y)}
		for _, t := range l {
			s := t.S
			if t.Actual != "" {
				s = t.Actual
			}
			line.Runs = append(line.Runs, RunJSON{s, t.Style&layout.Italic != 0, t.Style&layout.Bold != 0, t.Size.Pt()})
		}
		last := &line.Runs[len(line.Runs)-1]
		last.Text = strings.TrimRight(last.Text, " ")
		out.Lines = append(out.Lines, line)
	}
	slices.SortStableFunc(out.Lines, func(a, b LineJSON) int { return cmp.Compare(a.Y, b.Y) })
	for _, m := range b.Marks {
		if s, ok := m.(layout.Bars); ok {
			out.Symbols = append(out.Symbols, SymbolJSON{
				Symbology: s.Symbology, Text: s.S, X: round4(s.At.X), Y: round4(s.At.Y), W: round4(s.W), H: round4(s.H),
				Dots: int(s.Module / s.Dot), Modules: s.Modules,
			})
		}
	}
	return out
}

// round4 is millimetres to a tenth of a micrometre, for people to read.
func round4(l layout.Length) float64 { return float64(l.MulDiv(10000, int64(layout.MM))) / 10000 }
