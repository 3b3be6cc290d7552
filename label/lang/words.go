package lang

import "strings"

// A Vocabulary holds the words that the program itself prints on labels, slips
// and tags in one language. The latinised abbreviations of the trade (s.n.,
// s.d., leg.) are the same in all. Fields that hold "{n}", "{of}" or "{what}"
// are filled in with Fill; what stands in their place is the record's own
// words or a figure.
//
// Sources: common practice of herbaria; for Latin, W. T. Stearn, Botanical
// Latin (from memory); for Chinese, the usage of herbaria in Taiwan (from
// memory).
type Vocabulary struct {
	// Lists of persons and things: "A, B & C"; And joins running text.
	Comma, LastComma, And string

	// Determination.
	Det, Conf, Rev string

	// The running label.
	With       string // before co-collectors
	Also       string // before a part of the specimen that has no label of its own
	Among      string // before associated plants
	Alt        string // before the elevation
	Depth      string // before the depth of water
	Colon      string // between a word and what it introduces, with its blanks
	Vernacular string
	Uses       string
	Duplicates string // before the codes of the herbaria
	Cultivated string // a whole sentence without its stop
	Accession  string // of a garden: before its accession number
	WildOrigin string // before the origin of cultivated material

	// What is not known, as the trade writes it.
	NoNumber, NoDate, NoPlace, NoCollector string

	// Parts of a specimen, as they stand within a sentence.
	SheetOf     string // {n} {of}
	PacketOf    string // {n} {of}
	BoxOf       string // {n} {of}
	JarOf       string // {n} {of}
	Sheet       string
	Packet      string
	Box         string
	Jar         string
	WithPacket  string // on a sheet: one packet goes with it
	WithPackets string // {n}
	WithBox     string
	WithBoxes   string // {n}
	WithJar     string
	WithJars    string // {n}
	InPacket    string // {what}
	InBox       string // {what}
	InJar       string // {what}
	PartOf      string // {what}: on a packet, box or jar, the sheet it belongs to
	Contents    string // before a line on which to write what a packet holds

	// A label that goes on.
	Continued string // "label continued"
	Of        string // between two figures, "1 of 2"
	Reprinted string // before the date on a label that was printed again

	// What is withheld from the labels that leave the house.
	Withheld     string
	WithheldSite string // habitat and remarks too

	// Captions of the form-like style.
	CaptionFamily     string
	CaptionName       string
	CaptionDet        string
	CaptionType       string
	CaptionPlace      string
	CaptionCoords     string
	CaptionElevation  string
	CaptionHabitat    string
	CaptionAssociates string
	CaptionPlant      string
	CaptionVernacular string
	CaptionUses       string
	CaptionRemarks    string
	CaptionPermit     string
	CaptionCollector  string
	CaptionDate       string
	CaptionTeam       string
	CaptionCatalogue  string
	CaptionStatus     string

	// Slips.
	SlipDetermination string
	SlipConfirmation  string
	SlipRevision      string
	SlipComment       string
	SlipType          string // heads a type slip
	SlipTypeOf        string // between the kind of type and the name
	SlipIsotypes      string // before the codes of the herbaria that hold them
	SlipSheet         string // before the number of the sheet the slip is on

	// Tags.
	TagPress           string
	TagBundle          string
	TagPlants          string // {n}: how many plants
	TagDryer           string
	TagFreezer         string
	TagIn              string
	TagOut             string
	TagDays            string // {n}
	TagDay             string // the same of one
	CautionFreezer     string
	CautionDeepFreezer string // below −60 °C
	CautionDryer       string
	CautionLocal       string // the last word is with local rules
}

// Words returns the vocabulary of a language; of English where the language
// has none. The caller may change what it gets.
func Words(t Tag) *Vocabulary {
	v := english()
	switch t {
	case Portuguese:
		v = portuguese()
	case Spanish:
		v = spanish()
	case French:
		v = french()
	case German:
		v = german()
	case Latin:
		v = latin()
	case Chinese:
		v = chinese()
	}
	return &v
}

// Fill puts values in the place of "{n}", "{of}" and "{what}": pairs of a
// place and its value, "n", "1", "of", "2".
func Fill(pattern string, pairs ...string) string {
	var b strings.Builder
	for pattern != "" {
		open := strings.IndexByte(pattern, '{')
		if open < 0 {
			break
		}
		end := strings.IndexByte(pattern[open:], '}')
		if end < 0 {
			break
		}
		b.WriteString(pattern[:open])
		key := pattern[open+1 : open+end]
		for i := 0; i+1 < len(pairs); i += 2 {
			if pairs[i] == key {
				b.WriteString(pairs[i+1])
			}
		}
		pattern = pattern[open+end+1:]
	}
	b.WriteString(pattern)
	return b.String()
}

// Join writes a list as the language does: "A, B & C".
func (v *Vocabulary) Join(items []string) string {
	return JoinWith(items, v.Comma, v.LastComma)
}

// JoinWith writes a list with a sign between the items and another before the
// last one.
func JoinWith(items []string, sep, last string) string {
	switch len(items) {
	case 0:
		return ""
	case 1:
		return items[0]
	}
	n := len(items) - 1
	return strings.Join(items[:n], sep) + last + items[n]
}
