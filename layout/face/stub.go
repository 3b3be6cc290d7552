package face

import (
	"cornerslip/fonts"
	"cornerslip/layout"
)

func New(set *fonts.Set) *Setter                                             { return &Setter{set} }
func (s *Setter) Metrics(style layout.Style, size layout.Length) Metrics     { panic("coming") }
func (s *Setter) Space(style layout.Style, size layout.Length) layout.Length { panic("coming") }
func (s *Setter) Word(text string, style layout.Style) (*Word, error)        { panic("coming") }
func (w *Word) Width(size, tracking layout.Length) layout.Length             { panic("coming") }
func (w *Word) Texts(dst []layout.Text, at layout.Point, size, tracking layout.Length, grey layout.Grey) ([]layout.Text, layout.Point) {
	panic("coming")
}
func (w *Word) Ink(size layout.Length) (left, right, above, below layout.Length) { panic("coming") }
