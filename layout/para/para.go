// Package para breaks words of known width into lines. Where a line may be
// broken follows Unicode's UAX #14; which of the allowed breaks are taken is
// chosen for the paragraph as a whole (Knuth and Plass 1981, "Breaking
// Paragraphs into Lines").
package para

import "cornerslip/layout"

// A Kind says whether a line may end at a place.
type Kind uint8

// The kinds of break.
const (
	Allowed   Kind = iota
	Forbidden      // the next item stays on the same line
	Forced         // the line ends here
)

// An Item is what stands between two places where a line could be broken:
// mostly a word with its punctuation.
type Item struct {
	Width layout.Length // without the space that follows
	Space layout.Length // the space after it, if the line goes on
	// Stretch and Shrink are how much that space may grow (more costs more)
	// and at most shrink in justified lines.
	Stretch, Shrink layout.Length
	Break           Kind // after it
	// Penalty is what breaking here costs beyond the usual: a break with
	// penalty p is as bad as leaving p thousandths more of the line empty. 0
	// is none; 100 mild, 1000 strong; values beyond MaxPenalty count as that.
	Penalty int
	// Hyphen is the width of the hyphen that is added if the line breaks here.
	Hyphen layout.Length
}

// MaxPenalty is the largest penalty told apart.
const MaxPenalty = 10_000

// Options say how lines are to be filled. A zero First is Rest.
type Options struct {
	First, Rest layout.Length // the measure of the first line, and of all others
	// Justify fills each line but the last by its spaces; otherwise lines
	// are ragged at the right.
	Justify bool
	// ShortLast is the width under which the last of several lines looks like
	// a leftover. It is avoided where another breaking can.
	ShortLast layout.Length
	// LastRoom is the width that is to stay free at the end of the last line,
	// if it can without another line.
	LastRoom layout.Length
	// Buf is used for Result.Breaks if it has room.
	Buf []int
}

// A Result is a paragraph broken into lines.
type Result struct {
	Breaks []int // the last item of each line
	// Demerits is what the breaking costs; lower is better. It compares
	// breakings of the same items with the same options only.
	Demerits int64
	// Overfull is set if a line runs out of its measure, because what stands
	// between two allowed breaks is wider than it.
	Overfull bool
	// Short is set if the last line is shorter than Options.ShortLast.
	Short bool
	// Crowded is set if Options.LastRoom is not free on the last line.
	Crowded bool
}

// A Span is a stretch of a text in bytes, End not included.
type Span struct{ Start, End int }

// An Opportunity is a place where a line may be broken: before text[Off].
type Opportunity struct {
	Off    int
	Forced bool // the line must end here
}

// A Segment is a part of a text between two places where a line may end.
type Segment struct {
	Off   int    // where Text starts
	Text  string // without the white space that follows
	Space string // that white space; "" where the break needs none
	Break Kind   // after it: Allowed or Forced; Forced after the last one
	// Soft is set where Text ends with a soft hyphen: a line that ends here
	// shows a hyphen.
	Soft bool
}

// A Place is where a word that is wider than the line may be broken, from bad
// to worse.
type Place struct {
	Off     int  // before text[Off]
	Penalty int  // for Item.Penalty
	Hyphen  bool // a hyphen is due: the break is inside a word of letters
}
