package form

import (
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/lang"
	"cornerslip/label/name"
)

// A SlipKind says what a slip is for.
type SlipKind uint8

// The kinds of slip.
const (
	Determination SlipKind = iota // det.: a name for a specimen
	Confirmation                  // conf.: the name it has is right
	Revision                      // rev.: seen for a study of the group
	Comment                       // a remark; a name only where one is given
	TypeSlip                      // kind of type and the name typified
)

// slipWords are the words by which tables name kinds of slip, beside those of
// the program's vocabularies. Common practice, no source.
var slipWords = [...][]string{
	Determination: {"determination", "det", "determinavit", "redetermination", "identification"},
	Confirmation:  {"confirmation", "conf", "confirmavit", "confirmed"},
	Revision:      {"revision", "rev", "revidit", "revised", "vidi", "vidit"},
	Comment:       {"comment", "note", "annotation", "nota"},
	TypeSlip:      {"type", "typus", "typification"},
}

// String returns the kind's word in commands: "determination".
func (k SlipKind) String() string {
	if int(k) < len(slipWords) {
		return slipWords[k][0]
	}
	return ""
}

// ParseSlipKind reads a kind of slip: "determination", "det.", "Bestimmung".
func ParseSlipKind(text string) (SlipKind, bool) {
	plain := func(s string) string { return strings.ToLower(strings.TrimRight(strings.TrimSpace(s), ".")) }
	text = plain(text)
	for k, words := range slipWords {
		for _, w := range words {
			if w == text {
				return SlipKind(k), true
			}
		}
		for _, t := range lang.Tags() {
			v := lang.Words(t)
			for _, w := range [...][]string{{v.SlipDetermination, v.Det}, {v.SlipConfirmation, v.Conf}, {v.SlipRevision, v.Rev}, {v.SlipComment}, {v.SlipType}}[k] {
				if plain(w) == text {
					return SlipKind(k), true
				}
			}
		}
	}
	return 0, false
}

// Slips returns the slips that an identification adds to a specimen: one for
// each of its sheets, boxes and jars, for each bears its label. Each says the
// name, who gave it and when, the institution, and the number of the sheet, in
// case the slip comes loose. A type slip whose plant has another name now is
// followed by a determination slip with that name.
//
// id is a row of a table of identifications, sheet the record of the specimen;
// nil where the row says all itself:
//
//	scientificName, identificationQualifier  the name
//	identifiedBy, dateIdentified             who and when
//	determinerInstitution                    where the determiner works, if not in the house
//	identificationRemarks                    the comment
//	typeStatus, typifiedName                 on type slips: kind of type, name typified (else scientificName)
//	namePublishedIn                          on type slips: its full citation
//	duplicatesTo                             on type slips: the herbaria that hold isotypes (else the sheet's)
//	catalogNumber, recordedBy, recordNumber  the sheet
func Slips(kind SlipKind, id, sheet *check.Record, o Options) []label.Content {
	kinds := []SlipKind{kind}
	if typified := id.Text("typifiedName"); kind == TypeSlip && typified != "" && id.Text("scientificName") != "" && bare(typified) != bare(id.Name) {
		kinds = append(kinds, Determination)
	}
	parts := []check.Preparation{{}}
	if sheet != nil {
		parts = labelled(sheet)
	}
	var all []label.Content
	for _, k := range kinds {
		for _, p := range parts {
			all = append(all, slip(k, id, sheet, p, o))
		}
	}
	return all
}

// bare is a name without its authors and ranks, to compare it by.
func bare(s string) string {
	var words []string
	for _, r := range name.Runs(s, name.Parts{}, name.Options{}) {
		if r.Style&label.Italic != 0 {
			words = append(words, strings.Fields(strings.ToLower(r.Text))...)
		}
	}
	if len(words) == 0 {
		return s
	}
	return strings.Join(words, " ")
}

// A slipper makes the blocks of one slip: b words what the identification
// says, s what the sheet's record says.
type slipper struct {
	b, s *builder
	c    label.Content
}

func (m *slipper) add(role label.Role, runs, right []label.Run) {
	if len(runs) > 0 || len(right) > 0 {
		m.c.Blocks = append(m.c.Blocks, label.Block{Role: role, Runs: runs, Right: right})
	}
}

func slip(kind SlipKind, id, sheet *check.Record, part check.Preparation, o Options) label.Content {
	m := &slipper{b: newBuilder(id, &o)}
	m.s = m.b
	if sheet != nil {
		m.s = newBuilder(sheet, &o)
	}
	m.c = m.b.content(label.Slip)
	m.c.Key = m.s.key(0)
	m.c.Part = m.b.word("", func(v *lang.Vocabulary) string {
		return [...]string{v.SlipDetermination, v.SlipConfirmation, v.SlipRevision, v.SlipComment, v.SlipType}[kind]
	})
	if part.Of > 1 { // which of its sheets the slip goes on
		m.c.Part += ", " + m.s.partName(part)
	}
	if kind == TypeSlip {
		m.typified(id)
	} else {
		m.add(label.Name, m.b.scientificName(), nil)
		m.add(label.Text, m.remarks(id, sheet), nil)
	}
	word := ""
	if kind != Comment {
		key := [...]string{"det", "conf", "rev", "", "det"}[kind]
		word = m.b.word(key, func(v *lang.Vocabulary) string { return [...]string{v.Det, v.Conf, v.Rev, "", v.Det}[kind] })
	}
	// Not the block of the sheet label, which closes up to the name.
	m.add(label.Text, styled(m.b.determined(word), label.Small), styled(m.institution(), label.Small))
	m.add(label.Number, m.sheetNumber(part), m.letter(part))
	for i := 1; i < len(m.c.Blocks); i++ { // the citation belongs to the name
		m.c.Blocks[i].Tight = kind == TypeSlip && i < len(m.c.Blocks)-2
	}
	return m.c
}

// typified adds the kind of type, the name typified with its citation, and
// where the isotypes are.
func (m *slipper) typified(id *check.Record) {
	b := m.b
	status := b.field("typeStatus")
	runs := from(shortAuthors(name.Mentions(status.Text, []string{id.Text("typifiedName"), id.Text("scientificName")}, b.o.Name)), status.Origin)
	if len(runs) == 0 {
		runs = said(b.word("", func(v *lang.Vocabulary) string { return v.SlipType }))
	}
	m.add(label.Type, styled(runs, label.Bold), nil)
	if f := b.field("typifiedName"); f.Text != "" {
		typified := from(shortAuthors(name.Runs(f.Text, name.Parts{}, b.o.Name)), f.Origin)
		if b.o.BoldName {
			styled(typified, label.Bold)
		}
		m.add(label.Name, typified, nil)
	} else {
		m.add(label.Name, b.scientificName(), nil)
	}
	m.add(label.Text, trimmed(b.text("namePublishedIn")), nil)
	m.add(label.Text, m.isotypes(status.Text), nil)
}

// remarks returns the comment. In a table of identifications plain remarks are
// about the identification; in a table of specimens they are not.
func (m *slipper) remarks(id, sheet *check.Record) []label.Run {
	if runs := m.b.mentions("identificationRemarks"); runs != nil || sheet == nil {
		return runs
	}
	return m.b.mentions("occurrenceRemarks")
}

// institution returns the determiner's, else the house's name or code.
func (m *slipper) institution() []label.Run {
	o := m.b.o
	switch f := m.b.field("determinerInstitution"); {
	case f.Text != "":
		return []label.Run{{Text: f.Text, Exact: true, Origin: f.Origin}}
	case len(o.House) > 0 && o.House[0] != "":
		return []label.Run{{Text: o.House[0]}}
	}
	return said(o.Code)
}

// isotypes returns the herbaria that hold duplicates of the type. Only those
// of a holotype are isotypes (International Code of Nomenclature, Art. 9.5, from memory);
// the duplicates of others are named as such.
func (m *slipper) isotypes(status string) []label.Run {
	b := m.b
	if len(b.r.DuplicatesTo) == 0 {
		b = m.s
	}
	if len(b.r.DuplicatesTo) == 0 {
		return nil
	}
	at := b.r.Field("duplicatesTo").Origin
	var list [][]label.Run
	for _, code := range b.r.DuplicatesTo {
		list = append(list, []label.Run{{Text: code, Keep: true, Exact: true, Origin: at}})
	}
	w := b.word("", func(v *lang.Vocabulary) string { return v.SlipIsotypes })
	if s := strings.ToLower(status); s != "" && !strings.Contains(s, "holot") && !strings.Contains(s, "holót") {
		return tie(b.duplicatesWord(), joined(list, ", ", ", ")...)
	}
	return tie(spaced(w), joined(list, ", ", b.first.And)...)
}

// letter returns that of a gathering that shares its sheet, as its label has
// it. Its boxes and jars share nothing.
func (m *slipper) letter(p check.Preparation) []label.Run {
	if m.s == m.b || p.Kind != check.Sheet {
		return nil
	}
	return m.s.lettered(nil)
}

// sheetNumber returns how the sheet is found again: its catalogue number, the
// collector's, and which of several sheets it is.
func (m *slipper) sheetNumber(part check.Preparation) []label.Run {
	s := m.s
	var p prose
	if number := s.catalogNumber(); number != nil {
		w := s.o.NumberWord
		if w == "" {
			w = s.word("", func(v *lang.Vocabulary) string { return v.SlipSheet })
		}
		p.add("", tie(spaced(w), number...)...)
	}
	if s.r.Collector != "" || s.r.Number != "" {
		p.add(", ", s.key(0)...)
	}
	if part.Kind != "" && !p.empty() {
		w := s.counted(part)
		if w == "" && part.Kind != check.Sheet && part.Kind != check.Packet {
			w = s.both(func(v *lang.Vocabulary) string { return kindWords(v, part.Kind).alone })
		}
		p.add(", ", said(w)...)
	}
	return p.runs
}
