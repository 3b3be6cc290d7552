package fonts

type sfnt struct{ metrics Metrics }

func parse([]byte) (*sfnt, error)                 { panic("coming") }
func (*sfnt) glyph(r rune) (uint16, bool)         { panic("coming") }
func (*sfnt) rune(g uint16) (rune, bool)          { panic("coming") }
func (f *Face) Covers(cluster string) bool        { panic("coming") }
func Default() *Set                               { panic("coming") }
func (s *Set) With(files ...string) (*Set, error) { panic("coming") }
