package para

func Opportunities(dst []Opportunity, text string) []Opportunity       { panic("coming") }
func Segments(text string, keep []Span) []Segment                      { panic("coming") }
func AppendSegments(dst []Segment, text string, keep []Span) []Segment { panic("coming") }
func Sensible(text string) []Place                                     { panic("coming") }
func Break(items []Item, o Options) Result                             { panic("coming") }
func Greedy(items []Item, o Options) Result                            { panic("coming") }
