package form

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"cornerslip/label"
	"cornerslip/label/check"
	"cornerslip/label/lang"
)

// A part is what stands at the right of the number: which part of the
// specimen this is, and what else belongs to it.
type part []label.Run

// both returns a pattern filled in, in both languages of a bilingual label;
// what the record says ("{what}") stands once.
func (b *builder) both(of func(*lang.Vocabulary) string, pairs ...string) string {
	s := lang.Fill(of(b.first), pairs...)
	if b.second != nil {
		for i := 0; i+1 < len(pairs); i += 2 {
			if pairs[i] == "what" {
				pairs = append(append([]string{}, pairs[:i]...), pairs[i+2:]...)
				break
			}
		}
		if t := strings.TrimSpace(lang.Fill(of(b.second), pairs...)); t != "" && !strings.EqualFold(t, s) {
			s += " / " + t
		}
	}
	return s
}

// counted returns "sheet 1 of 2", or "" where there is one.
func (b *builder) counted(p check.Preparation) string {
	if p.Of < 2 {
		return ""
	}
	return b.both(func(v *lang.Vocabulary) string { return b.countedIn(v, p) })
}

func (b *builder) countedIn(v *lang.Vocabulary, p check.Preparation) string {
	n, of := strconv.Itoa(p.N), strconv.Itoa(p.Of)
	if w := b.o.Words["sheet"]; w != "" && p.Kind == check.Sheet {
		return w + " " + n + " " + b.first.Of + " " + of
	}
	return lang.Fill(kindWords(v, p.Kind).of, "n", n, "of", of)
}

// The words for a kind of part.
type kindWord struct{ alone, of, with, withN, in string }

func kindWords(v *lang.Vocabulary, k check.PreparationKind) kindWord {
	switch k {
	case check.Packet:
		return kindWord{v.Packet, v.PacketOf, v.WithPacket, v.WithPackets, v.InPacket}
	case check.Box:
		return kindWord{v.Box, v.BoxOf, v.WithBox, v.WithBoxes, v.InBox}
	case check.Jar:
		return kindWord{v.Jar, v.JarOf, v.WithJar, v.WithJars, v.InJar}
	}
	return kindWord{v.Sheet, v.SheetOf, "", "", ""}
}

// partOfSheet returns what a sheet says of itself: which of how many it is,
// and what goes with it ("Sheet 1 of 2, capsules in packet"). A packet stands
// on the sheet named before it; if all packets are named after the last of
// several sheets, they stand on the first. Boxes and jars belong to all.
func (b *builder) partOfSheet(sheet check.Preparation) part {
	at := b.r.Field("preparations").Origin
	var pieces []string
	if s := b.counted(sheet); s != "" {
		pieces = append(pieces, upperEach(s))
	}
	if sheet.Contents != "" {
		pieces = append(pieces, sheet.Contents)
	}
	for _, kind := range []check.PreparationKind{check.Packet, check.Box, check.Jar} {
		empty := 0
		for i, p := range b.r.Preparations {
			switch {
			case p.Kind != kind || kind == check.Packet && sheetOf(b.r.Preparations, i) != sheet.N:
			case p.Contents == "":
				empty++
			default:
				pieces = append(pieces, b.both(func(v *lang.Vocabulary) string { return kindWords(v, kind).in }, "what", p.Contents))
			}
		}
		switch {
		case empty == 1:
			pieces = append(pieces, b.both(func(v *lang.Vocabulary) string { return kindWords(v, kind).with }))
		case empty > 1:
			pieces = append(pieces, b.both(func(v *lang.Vocabulary) string { return kindWords(v, kind).withN }, "n", strconv.Itoa(empty)))
		}
	}
	for _, p := range b.r.Preparations {
		if p.Kind == check.Other {
			// Not "with", which stands before persons on the line above or below.
			s := b.word("", func(v *lang.Vocabulary) string { return v.Also }) + " " + p.Word
			if p.Contents != "" {
				s += b.first.Colon + p.Contents
			}
			pieces = append(pieces, s)
		}
	}
	return b.lettered(listed(pieces, at))
}

// lettered puts the letter of a gathering that shares its mount before what
// else is said of the sheet: the same letter stands beside the plant.
func (b *builder) lettered(p part) part {
	if b.o.Letter == nil {
		return p
	}
	letter := b.o.Letter(b.r)
	if letter == "" {
		return p
	}
	runs := part{{Text: letter, Style: label.Bold, Keep: true, Glue: len(p) > 0, Origin: b.r.Field("mount").Origin}}
	if len(p) > 0 {
		runs = append(append(runs, label.Run{Text: ", "}), p...)
	}
	return runs
}

// sheetOf returns which sheet the packet at i of the list stands on, from 1.
func sheetOf(list []check.Preparation, i int) int {
	first, lastSheet, firstPacket := 1, -1, len(list)
	for j, p := range list {
		switch p.Kind {
		case check.Sheet:
			if lastSheet < 0 {
				first = p.N
			}
			lastSheet = j
		case check.Packet:
			firstPacket = min(firstPacket, j)
		}
	}
	if firstPacket > lastSheet {
		return first
	}
	n := first
	for _, p := range list[:i] {
		if p.Kind == check.Sheet {
			n = p.N
		}
	}
	return n
}

// partOfContainer returns what a box or jar says of itself: what it is and
// what is inside, and that a sheet belongs to it.
func (b *builder) partOfContainer(p check.Preparation) part {
	s := b.counted(p)
	if s == "" {
		s = b.both(func(v *lang.Vocabulary) string { return kindWords(v, p.Kind).alone })
	}
	s = upperEach(s)
	if p.Contents != "" {
		s += b.first.Colon + p.Contents
	}
	return keep(s, b.r.Field("preparations").Origin)
}

// listed writes pieces as a list.
func listed(pieces []string, at label.Origin) part {
	var p prose
	for _, s := range pieces {
		runs := keep(s, at)
		if utf8.RuneCountInString(s) <= maxKept {
			runs = []label.Run{{Text: s, Keep: true, Origin: at}}
		}
		p.add(", ", runs...)
	}
	return p.runs
}

// partName tells the labels of one record apart.
func (b *builder) partName(p check.Preparation) string {
	if s := b.counted(p); s != "" {
		return upperEach(s)
	}
	return upperFirst(kindWords(b.first, p.Kind).alone)
}
