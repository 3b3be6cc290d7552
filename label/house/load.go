package house

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// An Error is one fault of a house file.
type Error struct {
	File         string // as the user named it
	Line, Column int    // from 1; 0 if unknown
	Key          string // "label.width_mm", "" if the fault is not of one key
	Message      string // what is wrong and what to do
	Suggest      string // the likely right key or value, "" if there is none
}

func (e *Error) Error() string {
	s := place(e.File, e.Line, e.Column) + ": "
	if e.Key != "" {
		s += e.Key + ": "
	}
	s += e.Message
	if e.Suggest != "" {
		s += fmt.Sprintf(" (did you mean %s?)", e.Suggest)
	}
	return s
}

func place(file string, line, column int) string {
	if line > 0 {
		file += ":" + strconv.Itoa(line)
		if column > 0 {
			file += ":" + strconv.Itoa(column)
		}
	}
	return file
}

// maxSize bounds a house file; a large one has about 200 lines.
const maxSize = 1 << 20

// Load reads a house file. name is the file as the user wrote it; file names
// inside are taken as relative to its folder. The error joins one *Error for
// every fault; with any fault there is no House.
func Load(name string, src []byte) (*House, error) {
	if len(src) > maxSize {
		return nil, &Error{File: name, Message: "is larger than 1 MiB, so it is no house file"}
	}
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	keys, lines, err := scan(src)
	if err != nil {
		return nil, located(name, err)
	}
	h := Default()
	h.file, h.lines = name, lines
	dec := toml.NewDecoder(bytes.NewReader(src)).DisallowUnknownFields()
	err = dec.Decode(&h)
	var unknown *toml.StrictMissingError
	switch {
	case errors.As(err, &unknown):
		var all []error
		for i := range unknown.Errors {
			d := &unknown.Errors[i]
			line, column := d.Position()
			key := strings.Join(d.Key(), ".")
			all = append(all, &Error{File: name, Line: line, Column: column, Key: key, Message: "there is no such key", Suggest: nearKey(key)})
		}
		return nil, join(append(all, validate(&h, keys)...))
	case err != nil:
		return nil, located(name, err)
	}
	if all := validate(&h, keys); all != nil {
		return nil, join(all)
	}
	for _, f := range append([]*string{&h.Register.File, &h.Type.Regular, &h.Type.Italic, &h.Type.Bold, &h.Type.BoldItalic}, pointers(h.Type.Fallback)...) {
		if *f != "" && !filepath.IsAbs(*f) && !strings.Contains(*f, "://") {
			*f = filepath.Join(filepath.Dir(name), *f)
		}
	}
	return &h, nil
}

// join puts faults in the order of their lines.
func join(all []error) error {
	slices.SortStableFunc(all, func(a, b error) int { return cmp.Compare(a.(*Error).Line, b.(*Error).Line) })
	return errors.Join(all...)
}

func pointers(s []string) []*string {
	var p []*string
	for i := range s {
		p = append(p, &s[i])
	}
	return p
}

// located makes an Error of a decoding error.
func located(name string, err error) error {
	e := &Error{File: name, Message: strings.TrimPrefix(err.Error(), "toml: ")}
	var d *toml.DecodeError
	if errors.As(err, &d) {
		e.Line, e.Column = d.Position()
		e.Key = strings.Join(d.Key(), ".")
		if strings.HasSuffix(e.Message, "at start of value") {
			e.Message += `: texts stand in quotes, as in name = "Herbarium", and lists in brackets`
		}
		if f, ok := fields[e.Key]; ok {
			e.Message = "write " + f.form()
		}
	}
	return e
}

// scan returns the keys in the order they are set and the line of each.
func scan(src []byte) (keys []string, lines map[string]int, err error) {
	// The decoder reports faults of syntax with their place; the parser here
	// only finds lines.
	if err := toml.Unmarshal(src, new(map[string]any)); err != nil {
		return nil, nil, err
	}
	lines = map[string]int{}
	var p unstable.Parser
	p.Reset(src)
	table := ""
	for p.NextExpression() {
		e := p.Expression()
		switch e.Kind {
		case unstable.Table, unstable.ArrayTable:
			table, _ = joinKey("", e.Key())
		case unstable.KeyValue:
			walk(&p, src, table, e, func(key string, line int) {
				keys = append(keys, key)
				lines[key] = line
			})
		}
	}
	return keys, lines, p.Error()
}

// walk reports a key and, where its value is an inline table, the keys within.
func walk(p *unstable.Parser, src []byte, table string, e *unstable.Node, found func(string, int)) {
	key, at := joinKey(table, e.Key())
	found(key, 1+bytes.Count(src[:at], []byte("\n")))
	if v := e.Value(); v.Kind == unstable.InlineTable {
		for it := v.Children(); it.Next(); {
			if n := it.Node(); n.Kind == unstable.KeyValue {
				walk(p, src, key, n, found)
			}
		}
	}
}

// joinKey returns the dotted key and the offset of its last part.
func joinKey(table string, it unstable.Iterator) (key string, at uint32) {
	key = table
	for it.Next() {
		if key != "" {
			key += "."
		}
		key += string(it.Node().Data)
		at = it.Node().Raw.Offset
	}
	return key, at
}

// validate holds every value against what its key may hold.
func validate(h *House, keys []string) []error {
	var all []error
	set := func(key string) bool { return h.lines[key] > 0 }
	bad := func(key, message, suggest string) {
		all = append(all, &Error{File: h.file, Line: h.lines[key], Key: key, Message: message, Suggest: suggest})
	}
	for _, key := range keys {
		f, ok := fields[key]
		if !ok {
			continue
		}
		for _, v := range f.values(h) {
			if why, suggest := f.fault(v); why != "" {
				bad(key, why, suggest)
			}
		}
	}
	if len(all) > 0 {
		return all
	}
	for _, key := range slices.Sorted(mapKeys(h.Words.Own)) {
		if !slices.Contains(WordKeys[:], key) {
			bad("words.own."+key, "the program prints no such word", quoted(nearest(key, WordKeys[:])))
		}
	}
	for _, rule := range slices.Sorted(mapKeys(h.Check.Severity)) {
		f := fields["check.severity"]
		if why, suggest := f.fault(h.Check.Severity[rule]); why != "" {
			bad("check.severity."+rule, why, suggest)
		}
	}
	together(h, set, bad)
	return all
}

// together looks at values that must fit each other. A fault is reported at a
// key that the file sets, so that the line is one the user wrote.
func together(h *House, set func(string) bool, bad func(key, message, suggest string)) {
	for _, l := range []struct {
		key string
		mm  []float64
	}{{"label.heights_mm", h.Label.HeightsMM}, {"packet.heights_mm", h.Packet.HeightsMM},
		{"packet.full_heights_mm", h.Packet.FullHeightsMM}, {"slip.heights_mm", h.Slip.HeightsMM}, {"tag.heights_mm", h.Tag.HeightsMM}} {
		switch {
		case len(l.mm) == 0:
			bad(l.key, "name at least one height", "")
		case !slices.IsSorted(l.mm):
			bad(l.key, "write the heights from small to large", "")
		}
	}
	pairs(h, bad)
	stickers(h, set, bad)
	if n := len(h.Words.Languages); n < 1 || n > 2 {
		bad("words.languages", "name one language, or two for a bilingual label", "")
	} else if n == 2 && h.Words.Languages[0] == h.Words.Languages[1] {
		bad("words.languages", "both languages are the same", "")
	}
	if h.Type.SmallestPt > h.Type.SizePt {
		key := "type.smallest_pt"
		if !set(key) {
			key = "type.size_pt"
		}
		bad(key, fmt.Sprintf("the smallest size, %g pt, is above size_pt, %g pt", h.Type.SmallestPt, h.Type.SizePt), "")
	}
	if len(h.Label.HeightsMM) > 0 && max(h.Label.GlueMM, h.Label.MarginMM)+h.Label.MarginMM >= h.Label.HeightsMM[0] {
		key := "label.heights_mm"
		for _, k := range []string{"label.margin_mm", "label.glue_mm"} {
			if set(k) {
				key = k
			}
		}
		bad(key, fmt.Sprintf("margins and glue edge leave nothing of a label %g mm high", h.Label.HeightsMM[0]), "")
	}
	if n := len(h.Press.Stages); n != len(slices.Compact(slices.Sorted(slices.Values(h.Press.Stages)))) {
		bad("press.stages", "a stage stands twice: name each once", "")
	}
	blocks(h, set, bad)
	pattern(h.Numbers.Pattern, func(message string) { bad("numbers.pattern", message, "") })
}

// pairs wants two numbers where two are meant.
func pairs(h *House, bad func(key, message, suggest string)) {
	want := func(key string, mm []float64, message string) {
		if len(mm) != 2 {
			bad(key, message, "")
		}
	}
	want("bars.sticker_mm", h.Bars.StickerMM, "write width and height, [60, 25]")
	want("mount.size_mm", h.Mount.SizeMM, "write width and height, [297, 420]")
	want("stickers.size_mm", h.Stickers.SizeMM, "write width and height of a sticker, [63, 34]")
	want("stickers.first_mm", h.Stickers.FirstMM, "write how far the first sticker is from the left and the upper edge, [7, 12]")
	want("stickers.pitch_mm", h.Stickers.PitchMM, "write how far it is from one sticker to the next, to the right and down, [66, 34]")
	for _, s := range h.Mount.Spots() {
		want("mount."+s.Name+".size_mm", s.SizeMM, "write width and height, [60, 25]")
		want("mount."+s.Name+".off_mm", s.OffMM, "write the distance from the corner's two edges, [5, 35]")
	}
}

// stickers wants a sheet described whole or not at all.
func stickers(h *House, set func(string) bool, bad func(key, message, suggest string)) {
	s := h.Stickers
	if len(s.PitchMM) == 2 && (s.PitchMM[0] < 0 || s.PitchMM[1] < 0) {
		bad("stickers.pitch_mm", fmt.Sprintf("a pitch of %g × %g mm goes backwards: write distances from 0 up", s.PitchMM[0], s.PitchMM[1]), "")
	}
	if s.Columns == 0 && s.Rows == 0 || len(s.SizeMM) != 2 {
		return
	}
	for _, k := range []struct {
		key     string
		missing bool
	}{{"columns", s.Columns == 0}, {"rows", s.Rows == 0}, {"size_mm", s.SizeMM[0] == 0 || s.SizeMM[1] == 0}} {
		if !k.missing {
			continue
		}
		key := "stickers." + k.key
		for _, at := range []string{"stickers.columns", "stickers.rows"} {
			if !set(key) {
				key = at
			}
		}
		bad(key, "a sheet of stickers needs columns, rows and size_mm; "+k.key+" is missing", "")
	}
}

// blocks wants each block exactly once, so that none is lost in silence.
func blocks(h *House, set func(string) bool, bad func(key, message, suggest string)) {
	at := map[string]string{}
	last := "label.body"
	for _, l := range []struct {
		key    string
		blocks []string
	}{{"label.head", h.Label.Head}, {"label.body", h.Label.Body}, {"label.foot", h.Label.Foot}, {"label.leave_out", h.Label.LeaveOut}} {
		if set(l.key) {
			last = l.key
		}
		for _, b := range l.blocks {
			known := slices.Contains(Blocks[:], b)
			if !known && l.key == "label.leave_out" {
				continue // a term
			}
			if !known {
				bad(l.key, fmt.Sprintf("%q is no block of a label", b), quoted(nearest(b, Blocks[:])))
				continue
			}
			if other := at[b]; other != "" {
				key := l.key
				if !set(key) {
					key = other
				}
				bad(key, fmt.Sprintf("the block %q stands in %s and in %s: keep it in one", b, other, l.key), "")
			}
			at[b] = l.key
		}
	}
	for _, b := range []string{"associates", "date"} { // may stand within another
		if at[b] == "" {
			at[b] = last
		}
	}
	for _, b := range h.Label.RunOn {
		switch {
		case !slices.Contains(Blocks[:], b):
			bad("label.run_on", fmt.Sprintf("%q is no block of a label", b), quoted(nearest(b, Blocks[:])))
		case !slices.Contains(h.Label.Body, b):
			bad("label.run_on", fmt.Sprintf("the block %q does not stand in the body: only there paragraphs go on", b), "")
		}
	}
	whole, half := at["plant"] != "", at["habitat"] != "" || at["description"] != ""
	switch {
	case whole && half:
		bad(last, `"plant" is "habitat" and "description" together: name the whole or the halves`, "")
		return
	case half:
		at["plant"] = last
	default:
		at["habitat"], at["description"] = last, last
	}
	for _, b := range Blocks {
		if at[b] == "" {
			bad(last, fmt.Sprintf("the block %q stands nowhere: put it in head, body or foot, or in leave_out", b), "")
		}
	}
}

// pattern wants letters and signs that bars can hold, and one row of zeros.
func pattern(p string, bad func(string)) {
	if p == "" {
		return
	}
	for _, r := range p {
		if r < 0x20 || r > 0x7e {
			bad(fmt.Sprintf("bars cannot hold %q: use letters A to Z, figures and plain signs", r))
			return
		}
	}
	zeros := strings.FieldsFunc(p, func(r rune) bool { return r != '0' })
	switch {
	case len(zeros) == 0:
		bad(`write the figures as a row of zeros, as in "VDOURA-0000000"`)
	case len(zeros) > 1:
		bad("there are two rows of zeros: the figures of a number stand together")
	case strings.ContainsAny(p, "123456789"):
		bad("figures other than the row of zeros make the number hard to read back: take them out")
	case len(zeros[0]) > 18:
		bad("18 figures are enough")
	}
}
