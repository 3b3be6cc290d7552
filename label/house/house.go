// Package house reads an institution's own settings, house.toml, into plain
// values. It knows what a key may hold, not what it does: turning values into
// the options of other packages is the business of the job that composes them.
//
// Keys that end in _mm are millimetres, in _pt points, in _percent percent.
package house

import (
	_ "embed"
	"slices"
)

// House is everything a house file can say. Every field has a key of the same
// place in the file; Default gives the values of an empty file.
type House struct {
	Herbarium   Herbarium   `toml:"herbarium"`
	Numbers     Numbers     `toml:"numbers"`
	Register    Register    `toml:"register"`
	Label       Label       `toml:"label"`
	Type        Type        `toml:"type"`
	Words       Words       `toml:"words"`
	Name        Name        `toml:"name"`
	Dates       Dates       `toml:"dates"`
	Coordinates Coordinates `toml:"coordinates"`
	Separators  Separators  `toml:"separators"`
	Bars        Bars        `toml:"bars"`
	Packet      Packet      `toml:"packet"`
	Slip        Slip        `toml:"slip"`
	Tag         Tag         `toml:"tag"`
	Duplicates  Duplicates  `toml:"duplicates"`
	Sensitive   Sensitive   `toml:"sensitive"`
	Check       Check       `toml:"check"`
	Paper       Paper       `toml:"paper"`
	Stickers    Stickers    `toml:"stickers"`
	Mount       Mount       `toml:"mount"`
	Printer     Printer     `toml:"printer"`
	Press       Press       `toml:"press"`

	file  string
	lines map[string]int // of the keys that the file sets
}

// Place returns where the file sets a key ("check.severity.datum"):
// "house.toml:14", or the file alone where it does not set it.
func (h *House) Place(key string) string { return place(h.file, h.lines[key], 0) }

// Herbarium says who the house is.
type Herbarium struct {
	Name     string   `toml:"name"`     // heads every label; "" prints none
	Code     string   `toml:"code"`     // its code in Index Herbariorum style, "" if it has none
	Address  []string `toml:"address"`  // lines below the name
	Headings []string `toml:"headings"` // lines below those, "Flora of Portugal"; a record's own project line replaces them
}

// Numbers says which catalogue numbers are the house's own.
type Numbers struct {
	// Pattern is the house's series: letters and signs as they are, a row of
	// zeros for the digits. "" takes every number for the house's own.
	Pattern string `toml:"pattern"`
	// Word stands before the catalogue number on labels; "" prints none.
	Word string `toml:"word"`
}

// Register says where the house's book of numbers and printed labels is.
type Register struct {
	// File is a file, or the postgres:// address of a database; "" is none.
	File string `toml:"file"`
	// Network says that the file lies on a drive that several computers share.
	Network bool `toml:"network"`
}

// Label says what a sheet label looks like.
type Label struct {
	WidthMM     float64   `toml:"width_mm" min:"60" max:"210"`
	HeightsMM   []float64 `toml:"heights_mm" min:"25" max:"297"` // from the first choice up
	MarginMM    float64   `toml:"margin_mm" min:"2" max:"20"`    // no ink closer to the edge
	GlueMM      float64   `toml:"glue_mm" min:"0" max:"30"`      // the top edge kept free for glue, where that is more than the margin
	TallerFirst bool      `toml:"taller_first"`                  // a taller label before smaller type
	Style       string    `toml:"style" one:"running|captions"`
	Justified   bool      `toml:"justified"`
	Head        []string  `toml:"head"`   // blocks above the rule
	Body        []string  `toml:"body"`   // blocks between head and foot
	Foot        []string  `toml:"foot"`   // blocks at a fixed height from the lower edge
	RunOn       []string  `toml:"run_on"` // blocks of the body that go on in the paragraph before them
	Collectors  string    `toml:"collectors" one:"first|all"`
	LeaveOut    []string  `toml:"leave_out"`
	Sorted      []string  `toml:"sorted" one:"associatedTaxa|vernacularName|uses|permits|restrictions|duplicatesTo"` // list columns in alphabetical order
}

// Blocks are the names that Head, Body and Foot are made of. "plant" stands for
// "habitat" and "description" together; "associates" and "date" may stand apart
// from "plant" (or "habitat") and "collector".
var Blocks = [...]string{"house", "project", "status", "family", "name", "det", "type", "place", "coords", "plant", "habitat", "associates", "description", "notes",
	"collector", "date", "team", "number", "symbol"}

// Type says the faces and sizes.
type Type struct {
	SizePt     float64  `toml:"size_pt" min:"8" max:"14"`     // data, first choice
	SmallestPt float64  `toml:"smallest_pt" min:"8" max:"14"` // data, never less
	NamePt     float64  `toml:"name_pt" min:"8" max:"18"`
	SmallPt    float64  `toml:"small_pt" min:"7" max:"14"` // house lines
	Regular    string   `toml:"regular"`                   // TrueType files; "" is the built-in face
	Italic     string   `toml:"italic"`
	Bold       string   `toml:"bold"`
	BoldItalic string   `toml:"bold_italic"`
	Fallback   []string `toml:"fallback"` // further files, for characters the faces lack
}

// Words are the language or languages of the words the program prints, and the
// house's own words in their place.
type Words struct {
	// Languages are BCP 47 tags; a second one makes the label bilingual.
	Languages []string `toml:"languages" one:"en|pt|es|fr|de|la|zh-Hant"`
	// Own maps a WordKeys key to a word; a key with "" prints no word, a
	// missing key the language's own.
	Own map[string]string `toml:"own"`
}

// WordKeys are the keys of Words.Own.
var WordKeys = [...]string{"det", "conf", "rev", "collector", "number", "with", "elevation", "habitat", "associates", "description",
	"vernacular", "uses", "duplicates", "project", "permit", "cultivated", "sheet", "continued", "date", "locality", "coordinates"}

// Name says how names are set.
type Name struct {
	Bold        bool   `toml:"bold"`
	Family      string `toml:"family" one:"name line|own line|none"`
	FamilyStyle string `toml:"family_style" one:"capitals|upright|italic"`
	Determiner  string `toml:"determiner" one:"left|right"` // the edge at which determiner and date stand
}

// Dates says how dates are printed, and how figures alone are read.
type Dates struct {
	Style string `toml:"style" one:"14 March 2026|14 Mar 2026|14.iii.2026|2026-03-14|March 14, 2026"`
	// Order settles a date such as 3/4/2026: "ask" leaves it an error.
	Order string `toml:"order" one:"ask|day first|month first"`
	// Century settles a year of two figures: "ask" leaves it an error.
	Century string `toml:"century" one:"ask|1800s|1900s|2000s"`
}

// Coordinates says how coordinates and elevations are printed.
type Coordinates struct {
	Style     string `toml:"style" one:"as written|decimal|minutes|seconds|utm|mgrs"`
	Elevation string `toml:"elevation" one:"as written|metres|feet|both"`
}

// Separators stand between things of the same kind.
type Separators struct {
	Country    string `toml:"country"`  // after the country
	Province   string `toml:"province"` // after the province
	Places     string `toml:"places"`
	People     string `toml:"people"`
	LastPerson string `toml:"last_person"`
	Duplicates string `toml:"duplicates"`
}

// Bars says how the catalogue number is barred.
type Bars struct {
	OnLabel    bool      `toml:"on_label"`
	Symbology  string    `toml:"symbology" one:"code128|code39|datamatrix|qr"`
	DPI        int       `toml:"dpi" one:"300|600|1200"`
	ModuleDots int       `toml:"module_dots" min:"0" max:"40"` // 0 lets the program choose
	StickerMM  []float64 `toml:"sticker_mm" min:"8" max:"150"` // width, height
	// ReductionMM is taken off each bar to make up for ink that spreads, by the
	// calibration page.
	ReductionMM float64 `toml:"reduction_mm" min:"0" max:"0.2"`
}

// Packet says what packet labels carry.
type Packet struct {
	WidthMM   float64   `toml:"width_mm" min:"40" max:"210"`
	HeightsMM []float64 `toml:"heights_mm" min:"15" max:"297"`
	Heading   bool      `toml:"heading"` // the house's name
	Name      bool      `toml:"name"`
	Bars      bool      `toml:"bars"`
	// The full label, of specimens that are kept in packets alone.
	FullWidthMM   float64   `toml:"full_width_mm" min:"60" max:"210"`
	FullHeightsMM []float64 `toml:"full_heights_mm" min:"25" max:"297"`
	FlapMM        float64   `toml:"flap_mm" min:"8" max:"60"` // of a folded packet, at each side
}

// Slip says how large slips are.
type Slip struct {
	WidthMM   float64   `toml:"width_mm" min:"60" max:"210"`
	HeightsMM []float64 `toml:"heights_mm" min:"18" max:"297"`
}

// Tag says how large the tags of single plants are.
type Tag struct {
	WidthMM   float64   `toml:"width_mm" min:"30" max:"210"`
	HeightsMM []float64 `toml:"heights_mm" min:"12" max:"297"`
}

// Duplicates says what the labels of gifts show.
type Duplicates struct {
	Show string `toml:"show" one:"destination|list|count"`
}

// Sensitive names the taxa whose places are coarsened on what leaves the house.
type Sensitive struct {
	Taxa []string `toml:"taxa"`
}

// Check sets the rules.
type Check struct {
	Backlog           bool              `toml:"backlog"`
	PrintPlaceholders bool              `toml:"print_placeholders"`
	Severity          map[string]string `toml:"severity" one:"error|warning|note|off"`
}

// Paper says what labels are ganged on.
type Paper struct {
	Size     string  `toml:"size" one:"A4|A3|Letter"`
	Order    string  `toml:"order" one:"across|stack"`
	GutterMM float64 `toml:"gutter_mm" min:"0" max:"30"` // between neighbours; 0 lets them share a cut
	Ticks    bool    `toml:"ticks"`
	Footer   bool    `toml:"footer"` // a line about the run and a rule, on what is cut off
}

// Stickers is a sheet of stickers that are cut already, by the numbers on its
// wrapper. Columns 0 says that the house has none.
type Stickers struct {
	Paper   string    `toml:"paper" one:"A4|A3|Letter"`
	Columns int       `toml:"columns" min:"0" max:"100"`
	Rows    int       `toml:"rows" min:"0" max:"100"`
	SizeMM  []float64 `toml:"size_mm" min:"0" max:"300"`     // width, height of one
	FirstMM []float64 `toml:"first_mm" min:"0" max:"300"`    // from the paper's left and upper edge to the first
	PitchMM []float64 `toml:"pitch_mm" min:"-300" max:"300"` // from one to the next; 0 is its size
}

// Mount says what the sheets of the house are, and what is kept free on them.
type Mount struct {
	SizeMM    []float64 `toml:"size_mm" min:"200" max:"600"` // width, height
	MarginMM  float64   `toml:"margin_mm" min:"0" max:"50"`  // from the label to the lower and the right edge
	Glue      string    `toml:"glue" one:"not said|top|left|all"`
	DrawSpots bool      `toml:"draw_spots"` // on the labels' sheets, not on the guide alone

	Barcode     Spot `toml:"barcode"`
	Packet      Spot `toml:"packet"`
	Slips       Spot `toml:"slips"`
	Stamp       Spot `toml:"stamp"`
	ScaleBar    Spot `toml:"scale_bar"`
	ColourChart Spot `toml:"colour_chart"`
}

// A Spot is a place on the mounting sheet that is kept free.
type Spot struct {
	On     bool      `toml:"on"`
	Corner string    `toml:"corner" one:"upper left|upper right|lower left|lower right"`
	SizeMM []float64 `toml:"size_mm" min:"3" max:"400"` // width, height
	OffMM  []float64 `toml:"off_mm" min:"0" max:"500"`  // from the corner's two edges; 0 is the sheet's margin
}

// Spots returns the spots of a sheet by the last part of their keys, in the
// order of the house file.
func (m *Mount) Spots() []NamedSpot {
	return []NamedSpot{
		{"barcode", &m.Barcode}, {"packet", &m.Packet}, {"slips", &m.Slips},
		{"stamp", &m.Stamp}, {"scale_bar", &m.ScaleBar}, {"colour_chart", &m.ColourChart},
	}
}

// A NamedSpot is a spot with the last part of its key.
type NamedSpot struct {
	Name string
	*Spot
}

// Printer describes the printer at hand and corrects for it, by the
// calibration page.
type Printer struct {
	OffsetXMM     float64 `toml:"offset_x_mm" min:"-20" max:"20"` // moves everything right
	OffsetYMM     float64 `toml:"offset_y_mm" min:"-20" max:"20"` // moves everything down
	ScaleXPercent float64 `toml:"scale_x_percent" min:"95" max:"105"`
	ScaleYPercent float64 `toml:"scale_y_percent" min:"95" max:"105"`
	MarginMM      float64 `toml:"margin_mm" min:"0" max:"20"` // the printer cannot print closer to the edge
	// Papers are the sizes it takes, by name or as width x height; none means
	// that nothing is known.
	Papers []string `toml:"papers"`
	Feed   string   `toml:"feed" one:"any|short edge|long edge"`
}

// Press gives the house's own times for pressing, drying and freezing, from
// which tags fill in dates. 0 leaves a blank to fill in by hand.
type Press struct {
	Stages         []string `toml:"stages" one:"press|dryer|freezer"` // in their order
	PressDays      int      `toml:"press_days" min:"0" max:"60"`
	DryerDays      int      `toml:"dryer_days" min:"0" max:"60"`
	DryerCelsius   float64  `toml:"dryer_celsius" min:"0" max:"80"`
	FreezerDays    int      `toml:"freezer_days" min:"0" max:"60"`
	FreezerCelsius float64  `toml:"freezer_celsius" min:"-90" max:"0"`
	Rule           string   `toml:"rule"` // printed before the usual cautions
}

//go:embed template.toml
var template []byte

// Template returns a house file to start from: every key with its meaning and
// its default value, so that loading it unchanged gives Default.
func Template() []byte { return slices.Clone(template) }

// Default returns the values of an empty house file.
func Default() House {
	return House{
		Label: Label{
			WidthMM: 105, HeightsMM: []float64{74, 99, 148}, MarginMM: 5.5, TallerFirst: true, Style: "running", Collectors: "first",
			Head: []string{"house", "project"},
			Body: []string{"status", "family", "name", "det", "type", "place", "coords", "plant", "notes"},
			Foot: []string{"collector", "team", "number", "symbol"},
		},
		Type:        Type{SizePt: 9, SmallestPt: 8, NamePt: 11, SmallPt: 7.5},
		Words:       Words{Languages: []string{"en"}},
		Name:        Name{Family: "name line", FamilyStyle: "capitals", Determiner: "left"},
		Dates:       Dates{Style: "14 March 2026", Order: "ask", Century: "ask"},
		Coordinates: Coordinates{Style: "as written", Elevation: "as written"},
		Separators:  Separators{Country: ". ", Province: ": ", Places: ", ", People: ", ", LastPerson: " & ", Duplicates: ", "},
		Bars:        Bars{Symbology: "code128", DPI: 300, StickerMM: []float64{60, 25}},
		Packet: Packet{WidthMM: 70, HeightsMM: []float64{37, 74}, Heading: true,
			FullWidthMM: 105, FullHeightsMM: []float64{74, 99, 148}, FlapMM: 25.4},
		Slip:       Slip{WidthMM: 102, HeightsMM: []float64{25, 37, 49}},
		Tag:        Tag{WidthMM: 52.5, HeightsMM: []float64{13.5, 18, 27}},
		Duplicates: Duplicates{Show: "destination"},
		Paper:      Paper{Size: "A4", Order: "across", Ticks: true, Footer: true},
		Stickers:   Stickers{Paper: "A4", SizeMM: []float64{0, 0}, FirstMM: []float64{0, 0}, PitchMM: []float64{0, 0}},
		Mount: Mount{
			SizeMM: []float64{297, 420}, MarginMM: 5, Glue: "not said", DrawSpots: true,
			Barcode:     Spot{Corner: "upper right", SizeMM: []float64{60, 25}, OffMM: []float64{0, 0}},
			Packet:      Spot{Corner: "upper left", SizeMM: []float64{89, 74}, OffMM: []float64{0, 0}},
			Slips:       Spot{Corner: "lower left", SizeMM: []float64{105, 77}, OffMM: []float64{0, 20}},
			Stamp:       Spot{Corner: "upper right", SizeMM: []float64{45, 30}, OffMM: []float64{0, 35}},
			ScaleBar:    Spot{Corner: "lower left", SizeMM: []float64{110, 10}, OffMM: []float64{0, 0}},
			ColourChart: Spot{Corner: "upper left", SizeMM: []float64{100, 25}, OffMM: []float64{99, 0}},
		},
		Printer: Printer{ScaleXPercent: 100, ScaleYPercent: 100, MarginMM: 4, Feed: "any"},
		Press:   Press{Stages: []string{"press", "dryer", "freezer"}},
	}
}
