package form

import (
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
	Comment                       // a remark without a name of its own
	TypeSlip                      // kind of type and the name typified
)

// Slip returns the slip that is added to a sheet: the name, who gave it and
// when, the institution, and the number of the sheet, in case the slip comes
// loose. id is a row of the table of identifications, or the record itself:
//
//	scientificName, identificationQualifier  the name
//	identifiedBy, dateIdentified             who and when
//	identificationRemarks                    the comment
//	typeStatus, typifiedName                 on type slips: kind of type, name typified (else scientificName)
//	namePublishedIn                          on type slips: its full citation
//	duplicatesTo                             on type slips: the herbaria that hold isotypes
//	catalogNumber, recordedBy, recordNumber  the sheet
func Slip(kind SlipKind, id *check.Record, o Options) label.Content {
	b := newBuilder(id, &o)
	c := b.content(label.Slip)
	c.Part = b.word("", func(v *lang.Vocabulary) string {
		return [...]string{v.SlipDetermination, v.SlipConfirmation, v.SlipRevision, v.SlipComment, v.SlipType}[kind]
	})
	add := func(role label.Role, runs, right []label.Run) {
		if len(runs) > 0 || len(right) > 0 {
			c.Blocks = append(c.Blocks, label.Block{Role: role, Runs: runs, Right: right})
		}
	}
	switch kind {
	case TypeSlip:
		status := b.field("typeStatus")
		runs := from(name.Mentions(status.Text, []string{id.Text("typifiedName"), id.Text("scientificName")}, o.Name), status.Origin)
		if len(runs) == 0 {
			runs = said(b.word("", func(v *lang.Vocabulary) string { return v.SlipType }))
		}
		add(label.Type, styled(runs, label.Bold), nil)
		if f := b.field("typifiedName"); f.Text != "" {
			add(label.Name, from(name.Runs(f.Text, name.Parts{}, o.Name), f.Origin), nil)
		} else {
			add(label.Name, b.scientificName(), nil)
		}
		var more prose
		more.add("", b.text("namePublishedIn")...)
		add(label.Text, more.runs, nil)
		add(label.Text, b.isotypes(), nil)
	default:
		add(label.Name, b.scientificName(), nil)
	}
	if kind != TypeSlip {
		add(label.Text, b.mentions("identificationRemarks"), nil)
	}
	key := [...]string{"det", "conf", "rev", "", "det"}[kind]
	word := b.word(key, func(v *lang.Vocabulary) string { return [...]string{v.Det, v.Conf, v.Rev, "", v.Det}[kind] })
	add(label.Det, b.determined(word), b.institution())
	add(label.Number, b.sheetNumber(), nil)
	tighten(c.Blocks)
	return c
}

// institution returns the house's name, else its code.
func (b *builder) institution() []label.Run {
	if len(b.o.House) > 0 && b.o.House[0] != "" {
		return []label.Run{{Text: b.o.House[0]}}
	}
	return said(b.o.Code)
}

// isotypes returns the herbaria that hold isotypes.
func (b *builder) isotypes() []label.Run {
	if len(b.r.DuplicatesTo) == 0 {
		return nil
	}
	at := b.r.Field("duplicatesTo").Origin
	var list [][]label.Run
	for _, code := range b.r.DuplicatesTo {
		list = append(list, []label.Run{{Text: code, Keep: true, Exact: true, Origin: at}})
	}
	w := spaced(b.word("", func(v *lang.Vocabulary) string { return v.SlipIsotypes }))
	return tie(w, joined(list, ", ", b.first.And)...)
}

// sheetNumber returns how the sheet is found again: its catalogue number and
// the collector's.
func (b *builder) sheetNumber() []label.Run {
	var p prose
	if number := b.catalogNumber(); number != nil {
		w := b.o.NumberWord
		if w == "" {
			w = b.word("", func(v *lang.Vocabulary) string { return v.SlipSheet })
		}
		p.add("", tie(spaced(w), number...)...)
	}
	if b.r.Collector != "" || b.r.Number != "" {
		p.add(", ", b.key(0)...)
	}
	return p.runs
}
