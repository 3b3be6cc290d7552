// Package label holds the nouns of a label's words: what a label says, in
// which order and style, and where each word came from. It imports nothing of
// ours and knows no places on paper.
package label

import "strings"

// A Kind is a kind of printed label.
type Kind string

// The kinds. Their words are the command's and the JSON's.
const (
	Sheet     Kind = "sheet"     // the collection label on the mount
	Packet    Kind = "packet"    // on the folded paper that holds loose parts
	Container Kind = "container" // on a box or jar
	Barcode   Kind = "barcode"   // the number as bars
	Slip      Kind = "slip"      // determination, confirmation, revision, type, comment
	Tag       Kind = "tag"       // travels with the plant through the press
)

// A Style is how a run looks. Styles combine as bits.
type Style uint8

const (
	Italic Style = 1 << iota
	Bold
	// Capitals sets the run in letterspaced capitals; its text stays as it
	// was typed, and so it is copied and searched.
	Capitals
	// Small sets the run one step smaller than the block around it.
	Small
)

// A Run is a stretch of text in one style. Within a block, runs follow each
// other without a space: the text holds every space that is wanted.
type Run struct {
	Text  string
	Style Style
	// Keep forbids a line break anywhere inside Text.
	Keep bool
	// Glue forbids a line break where this run meets the next. Inside the
	// next run, behind a space it begins with, a line may still break.
	Glue bool
	// Exact marks text that somebody typed as a name, number or personal
	// name: it is never hyphenated, and nothing in it is replaced.
	Exact  bool
	Origin Origin
}

// A Role says what a block is; the typesetter gives each its size and place.
type Role string

const (
	// The head, centred above the rule.
	House   Role = "house"   // the institution, letterspaced capitals
	Project Role = "project" // "Plants of …"

	// The body, floating between head and foot.
	Status Role = "status" // "Cultivated", said before anything else
	Family Role = "family" // where it has a line of its own
	Name   Role = "name"   // the scientific name, the largest line
	Det    Role = "det"    // determiner and date, earlier determinations
	Type   Role = "type"   // kind of type and its citation
	Place  Role = "place"  // locality, from large to small
	Coords Role = "coords" // coordinates, datum, uncertainty, elevation
	Plant  Role = "plant"  // habitat, associates, description
	Notes  Role = "notes"  // vernacular name, uses, remarks, permits
	Blank  Role = "blank"  // an empty line to write on; Runs is its caption
	Text   Role = "text"   // plain lines of packets, tags and slips
	Key    Role = "key"    // collector and number where they head a packet or tag

	// The foot, at a fixed height from the lower edge.
	Collector Role = "collector" // collector and number left, date right
	Team      Role = "team"      // co-collectors left, duplicates right
	Number    Role = "number"    // catalogue number left, part right
	Symbol    Role = "symbol"    // bars, with the number beside or below
)

// A Zone is a part of a label that has a place of its own: the head above the
// rule, the foot at a fixed height from the lower edge, the body between them.
type Zone uint8

// The zones.
const (
	ByRole Zone = iota // where blocks of the role stand usually
	InHead
	InBody
	InFoot
)

// A Block is what stands together as one paragraph: words that may turn over,
// and perhaps words at the right end of the same line.
type Block struct {
	Role Role
	// Zone is where a house wants the block, if not where its role stands.
	Zone Zone
	Runs []Run
	// Right is set at the right edge: on the block's first line for Family
	// beside Name, on its last line elsewhere; on a line of its own, still
	// at the right, where there is no room.
	Right []Run
	// Caption stands in a hanging column before the block in the captioned
	// style; nil elsewhere.
	Caption []Run
	// Bars is the barcode of a Symbol block.
	Bars *Bars
	// Tight keeps the block close to the one before; otherwise a change of
	// role opens a group with white space above it.
	Tight bool
}

// Bars asks for a barcode.
type Bars struct {
	Symbology string // "code128", "code39", "datamatrix", "qr"; "" lets the program choose
	Text      string // what a scanner shall read: printable ASCII
}

// Content is all the words of one printed label in reading order.
type Content struct {
	Kind   Kind
	Blocks []Block
	// Lang is the BCP 47 tag of the words the program wrote ("en").
	Lang string
	// Key is how people name the specimen, "I. Almeida 214"; it is repeated
	// at the head of a continuation.
	Key []Run
	// Continued is what a continuation says before "2 of 2", in Lang:
	// "label continued".
	Continued string
	// OfWord stands between the two figures: "of".
	OfWord string
	// Part tells the labels of one record apart ("Sheet 1 of 2", "PINHEL").
	Part string
	// For is the code of the herbarium a duplicate goes to; "" is our own.
	For    string
	Origin Origin // the record
}

// String returns the text of the runs joined, without style.
func String(runs []Run) string {
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.Text)
	}
	return b.String()
}
