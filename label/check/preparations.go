package check

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A PreparationKind is what a physical part of a specimen is.
type PreparationKind string

// The kinds of preparation. Sheets get the sheet label, packets the packet
// label, boxes and jars the container label; other parts (a slide, a tissue
// sample) are named on the label and get none of their own.
const (
	Sheet  PreparationKind = "sheet"
	Packet PreparationKind = "packet"
	Box    PreparationKind = "box"
	Jar    PreparationKind = "jar"
	Other  PreparationKind = "other"
)

// A Preparation is one physical part of a specimen, from the Darwin Core term
// preparations.
type Preparation struct {
	Kind PreparationKind
	// Word is how the record calls the part ("sheet", "envelope", "slide");
	// "sheet" where the record says nothing.
	Word string
	// Contents is what the part holds, as written: "capsules".
	Contents string
	// N of Of counts the parts of the same kind, from 1: "Sheet 1 of 2".
	N, Of int
	// Elsewhere is set where the record itself says which of how many it is,
	// for the others have records of their own: "sheet 1 of 2".
	Elsewhere bool
}

// MaxParts is how many parts one specimen may have. Nobody mounts a hundred
// sheets of one gathering as one specimen: it is a slip of the keyboard.
const MaxParts = 99

// A PartError is a piece of the preparations that cannot be read.
type PartError struct {
	Piece   string // as written
	Why     string
	Suggest string // the whole text mended, "" if there is no one way
	// Plain is set where nothing need be wrong: a part of another kind, that
	// is named on the label as it is written.
	Plain bool
}

func (e *PartError) Error() string {
	if e.Piece == "" {
		return e.Why
	}
	return fmt.Sprintf("%q %s", e.Piece, e.Why)
}

// ParsePreparations reads the parts of a specimen: pieces parted by "|" (by
// ";" where there is no "|", by "," "+" "&" or a word for "and" where the pieces
// begin with a count or a known kind), each a word for the kind, perhaps a
// count, perhaps a colon and the contents.
//
//	sheet | sheet | packet: capsules | box: cone
//	2 sheets | packet: seeds, loose flowers
//	2 sheets + cone in box
//	sheet 1 of 2 | packet: capsules
//
// The last is a specimen whose sheets have a record each: the table says that
// they are one. An empty text is one sheet.
//
// What is no known kind is named on the label as it is written and gets no
// label of its own (Other); so do a photograph, a slide, a sample of tissue. Where
// nothing else is named the specimen has one sheet label all the same, which
// says so: somebody printed it for a thing that needs one. ReadPreparations says
// what was taken so. The error is a *PartError that names the piece: a count
// that contradicts itself, or of which nobody knows what it counts, would print
// a wrong number of labels.
func ParsePreparations(text string) ([]Preparation, error) {
	parts, _, err := ReadPreparations(text)
	return parts, err
}

// ReadPreparations is ParsePreparations that also tells what a reader of the
// label should know: pieces that are no known kind, with the kind they are
// near, and that no piece gets a label of its own.
func ReadPreparations(text string) (parts []Preparation, doubts []*PartError, err error) {
	if strings.TrimSpace(text) == "" {
		return []Preparation{{Kind: Sheet, Word: "sheet", N: 1, Of: 1}}, nil, nil
	}
	pieces, join := splitParts(text)
	whole := func(i int, with string) string { // the text with one piece mended
		all := slices.Clone(pieces)
		all[i] = with
		for j := range all {
			all[j] = strings.TrimSpace(all[j])
		}
		return strings.Join(slices.DeleteFunc(all, func(s string) bool { return s == "" }), join)
	}
	var how []int // parts that say only how a sheet is kept
	for i, piece := range pieces {
		if piece = strings.Trim(piece, " \t\r\n\u00a0;,"); piece == "" {
			continue // a separator too many hides nothing
		}
		p, n, doubt, err := parsePart(piece)
		if err != nil {
			if err.Suggest != "" { // of the piece; made whole here
				err.Suggest = whole(i, err.Suggest)
			}
			return nil, nil, err
		}
		if doubt != nil {
			if doubt.Suggest != "" {
				doubt.Suggest = whole(i, doubt.Suggest)
			}
			doubts = append(doubts, doubt)
		}
		if len(parts)+n > MaxParts {
			return nil, nil, &PartError{Why: fmt.Sprintf("more than %d parts for one specimen: check the count", MaxParts)}
		}
		if p.Kind == Sheet && n == 1 && !p.Elsewhere && p.Contents == "" && (piece[0] < '0' || piece[0] > '9') && saysHow(p.Word) {
			how = append(how, len(parts))
		}
		for range n {
			parts = append(parts, p)
		}
	}
	parts = withoutHow(parts, how)
	if len(parts) == 0 {
		return nil, nil, &PartError{Why: `no part is named: write "sheet", or leave the cell empty for one sheet`}
	}
	if err := countParts(parts); err != nil {
		return nil, nil, err
	}
	if len(doubts) == 0 && !slices.ContainsFunc(parts, func(p Preparation) bool { return p.Kind != Other }) {
		doubts = append(doubts, &PartError{Why: `names no sheet, packet, box or jar: one sheet label is printed, which names this; write "sheet" beside it if there is one`})
	}
	return parts, doubts, nil
}

// withoutHow leaves out parts that say once more of a sheet how it is kept,
// where another word names it.
func withoutHow(parts []Preparation, how []int) []Preparation {
	for _, i := range slices.Backward(how) {
		word := foldPart(parts[i].Word)
		if slices.ContainsFunc(parts, func(p Preparation) bool { return p.Kind == Sheet && foldPart(p.Word) != word }) {
			parts = slices.Delete(parts, i, i+1)
		}
	}
	return parts
}

// splitParts cuts a text into pieces and says what joins them again.
func splitParts(text string) (pieces []string, join string) {
	if strings.Contains(text, "|") {
		return strings.Split(text, "|"), " | " // and a semicolon parts the contents of a packet
	}
	if strings.Contains(text, ";") {
		return strings.Split(text, ";"), "; "
	}
	signs := append([]string{",", "+", "&", " / ", "/"}, joinWords...)
	pieces = []string{text}
	for changed := true; changed; {
		changed = false
		for i := 0; i < len(pieces) && !changed; i++ {
			for _, sign := range signs {
				if a, b, ok := cutParts(pieces[i], sign, len(pieces) > 1); ok {
					pieces = slices.Insert(pieces, i+1, b)
					pieces[i] = a
					changed = true
					break
				}
			}
		}
	}
	return pieces, " | "
}

// cutParts cuts a piece at the first sign, outside of brackets, whose left side
// begins with a count or a known kind and whose right side does; the right may
// be anything where the left has a count or has labels and no contents.
func cutParts(text, sign string, cut bool) (a, b string, ok bool) {
	if _, known := partKind[foldPart(text)]; known {
		return "", "", false // pressed and dried
	}
	depth := 0
	for i := 0; i+len(sign) <= len(text); i++ {
		switch text[i] {
		case '(', '[':
			depth++
		case ')', ']':
			depth--
		}
		if depth > 0 || !strings.EqualFold(text[i:i+len(sign)], sign) || sign == "/" && aroundFigures(text, i) {
			continue
		}
		a, b = strings.TrimSpace(text[:i]), strings.TrimSpace(text[i+len(sign):])
		if a == "" || b == "" {
			continue
		}
		left, right := begins(a), begins(b)
		strict := strings.TrimSpace(sign) != sign || sign == "/" // words, and strokes, join other things too
		switch {
		case left == "" || left == Other && right == Other && strings.Contains(a, ":"):
			continue
		case right == "" && (strict || strings.Contains(a, ":") || left == Other):
			continue
		case right == Other && (strings.Contains(a, ":") || holds(sign) || holdsSomething(a)):
			continue
		}
		return a, b, true
	}
	return "", "", false
}

// holdsSomething reports whether a piece says what is in it: envelope with
// capsules.
func holdsSomething(piece string) bool {
	word, _, _ := cutCount(piece)
	k, name, inside, ok := kindOf(word)
	return ok && inside != "" && (k == Packet || k == Box || k == Jar && vessel(name))
}

// holds reports whether a joining word may also stand before contents: packet
// with seeds.
func holds(sign string) bool { return slices.Contains(holdsWords, sign) }

func aroundFigures(s string, i int) bool {
	digit := func(j int) bool { return j >= 0 && j < len(s) && s[j] >= '0' && s[j] <= '9' }
	return digit(i-1) && digit(i+1) || i > 0 && s[i-1] == 'w' // sheet 1/2, w/ seeds
}

// begins returns the kind that a piece begins with; Sheet for a count whose word
// is not known, "" if it begins with neither.
func begins(piece string) PreparationKind {
	head, _, _ := strings.Cut(piece, ":")
	word, _, counted := cutCount(strings.TrimSpace(head))
	if k, _, _, ok := kindOf(word); ok {
		return k
	}
	if counted && word != "" {
		return Sheet
	}
	first := strings.Fields(word)
	for n := min(3, len(first)); n > 0; n-- {
		if k, ok := partKind[foldPart(strings.Join(first[:n], " "))]; ok {
			return k
		}
	}
	return ""
}

// countParts fills in which of how many each part is.
func countParts(parts []Preparation) error {
	of := map[PreparationKind]int{}
	elsewhere := map[PreparationKind]int{} // how many there are with those of other records
	for i := range parts {
		p := &parts[i]
		of[p.Kind]++
		if p.Elsewhere {
			if n := elsewhere[p.Kind]; n != 0 && n != p.Of {
				return &PartError{Why: fmt.Sprintf("one %s is of %d and another of %d: write how many there are in all", p.Word, n, p.Of)}
			}
			elsewhere[p.Kind] = p.Of
		} else {
			p.N = of[p.Kind]
		}
	}
	for i := range parts {
		p := &parts[i]
		switch {
		case elsewhere[p.Kind] == 0:
			p.Of = of[p.Kind]
		case !p.Elsewhere:
			return &PartError{Why: fmt.Sprintf("one %s says which of %d it is and another does not: say it of each", p.Word, elsewhere[p.Kind])}
		case slices.ContainsFunc(parts[:i], func(q Preparation) bool { return q.Kind == p.Kind && q.N == p.N }):
			return &PartError{Why: fmt.Sprintf("%s %d of %d stands twice: give each its own place", p.Word, p.N, p.Of)}
		}
	}
	return nil
}

// whichPart is how a record says which part of a specimen it holds, in the
// languages of the words for parts.
var whichPart = regexp.MustCompile(`(?i)^(.*?\pL)\s+(?:n[o.º°]*\s*)?([0-9]{1,3})\s*(?:of|de|von|sur|/)\s*([0-9]{1,3})$`)

// cutWhich takes "1 of 2" off "sheet 1 of 2".
func cutWhich(head string) (word string, n, of int, ok bool) {
	m := whichPart.FindStringSubmatch(head)
	if m == nil {
		return head, 0, 0, false
	}
	n, _ = strconv.Atoi(m[2])
	of, _ = strconv.Atoi(m[3])
	return m[1], n, of, true
}

// someCount is a count that is two, or a guess: 2-3 sheets, 2? sheets, ca. 4
// packets.
var someCount = regexp.MustCompile(`(?i)^(?:[0-9]+\s*(?:(?:-|–|to|or|/)\s*[0-9]+\s+|[?+]\s*)|(?:ca?\.?|about|circa|ca)\s*[0-9]+\s+|\?\s*)(.+)$`)

// partNumber is a number that names one of several things, loneFigure one that
// stands among words, trailing one behind them without a sign of counting.
var (
	partNumber = regexp.MustCompile(`(?i)(?:\bno\.?|\bnr\.?|\bnum\.?|n[.]?[º°]|#)\s*[0-9]+$`)
	bareWhich  = regexp.MustCompile(`(?i)^[0-9]{1,2}\s*(?:of|de|von|sur|/)\s*[0-9]{1,2}$`)
	loneFigure = regexp.MustCompile(`(?:^|\s)[-+]?[0-9]+(?:\s|$)`)
	trailing   = regexp.MustCompile(`^[^0-9].*[^0-9x×*(–-]\s*[0-9]+$`)
)

// isPlural reports whether a word for a part is the plural of another.
func isPlural(word string) bool {
	w := foldPart(word)
	_, known := partKind[w]
	_, single := partKind[strings.TrimSuffix(w, "s")]
	_, boxes := partKind[strings.TrimSuffix(w, "es")]
	return known && strings.HasSuffix(w, "s") && (single || boxes)
}

// parsePart reads one piece and says how many times it stands for. What is said
// of a piece that can be read all the same comes as a doubt.
func parsePart(piece string) (p Preparation, n int, doubt, err *PartError) {
	head, contents, _ := strings.Cut(piece, ":")
	p.Contents = strings.Join(strings.Fields(contents), " ")
	head = strings.Join(strings.Fields(head), " ")
	word, which, of, told := cutWhich(head)
	counted := false
	if n = 1; !told {
		word, n, counted = cutCount(word)
		if first, rest, ok := strings.Cut(word, " "); ok && !counted {
			if many := numberWords[strings.ToLower(first)]; many != 0 {
				word, n, counted = rest, many, true
			}
		}
	}
	if m := someCount.FindStringSubmatch(head); m != nil || n < 0 {
		rest := word
		if m != nil {
			rest = m[1]
		}
		if k, _, _, ok := kindOf(rest); ok && k != Other {
			return p, 0, nil, &PartError{Piece: piece, Why: "does not say how many there are: write one number"}
		}
		n = 1
	}
	if word == "" && head == "1" && p.Contents == "" {
		return Preparation{Kind: Sheet, Word: "1"}, 1, nil, nil
	}
	if m := bareWhich.FindStringSubmatch(piece); m != nil {
		return p, 0, nil, &PartError{Piece: piece, Why: `does not say what it is: write "sheet" before it`, Suggest: "sheet " + piece}
	}
	if word == "" {
		e := &PartError{Piece: piece, Why: `does not say what it is: write "sheet", "packet: capsules", "box: cone" or "jar: flowers"`}
		if counted && p.Contents == "" && n > 1 && n <= MaxParts {
			e.Suggest = fmt.Sprintf("%d sheets", n)
		}
		return p, 0, nil, e
	}
	if duplicateWord[foldPart(word)] {
		return p, 0, nil, &PartError{Piece: piece, Why: `counts duplicates, which are no parts of this specimen: name the herbaria in duplicatesTo, and here the sheets`}
	}
	if c, err := strconv.Atoi(p.Contents); err == nil && !counted && !told && isPlural(word) { // sheets: 3
		n, counted, p.Contents = c, true, ""
	} else if err == nil && !counted {
		if c != 1 {
			word = plural(word)
		}
		return p, 0, nil, &PartError{Piece: piece, Why: "has a number for its contents: put the count first and say what is inside",
			Suggest: fmt.Sprintf("%d %s", c, word)}
	}
	kind, name, inside, known := kindOf(word)
	if partNumber.MatchString(head) && (kind == Sheet || kind == Packet || kind == Box) && n != 1 {
		return p, 0, nil, &PartError{Piece: piece, Why: fmt.Sprintf(`has a number and not a count: write which of how many it is, as in "%s 1 of 2", or only "%[1]s"`, kind)}
	}
	if !counted && !told && (kind == Sheet || kind == Packet || kind == Box) && loneFigure.MatchString(word) {
		return p, 0, nil, &PartError{Piece: piece, Why: fmt.Sprintf(`has a number in its midst: put the count first, as in "2 %s"`, plural(string(kind)))}
	}
	if kind == Jar && !vessel(name) && counted && known && trailing.MatchString(head) { // Spirit coll. 12345
		inside, n = head, 1
	}
	if !known {
		if near := nearPart(word); near != "" {
			kind, name = partKind[near], word
			doubt = &PartError{Piece: piece, Why: fmt.Sprintf("is taken for a misspelt %q", near), Suggest: strings.Replace(piece, word, near, 1)}
		} else {
			doubt = &PartError{Piece: piece, Why: "is no part that gets a label of its own: it is named on the label as it is written; parts with labels are sheet, packet, box and jar", Plain: n == 1 && !answersOnly(word)}
			return Preparation{Kind: Other, Word: head, Contents: p.Contents}, 1, doubt, nil
		}
	}
	if told {
		if of < 1 || of > MaxParts || which < 1 || which > of {
			return p, 0, nil, &PartError{Piece: piece, Why: fmt.Sprintf(`is no part: write "%s 1 of 2", the first figure not above the second, which is at most %d`, word, MaxParts)}
		}
		p.N, p.Of, p.Elsewhere = which, of, true
	}
	p.Kind, p.Word = kind, name
	if p.Contents == "" {
		p.Contents = inside
	} else if inside != "" {
		p.Contents = inside + ": " + p.Contents
	}
	if kind == Other {
		if counted { // three photographs are one thing to be named
			p.Word, n = head, 1
		}
		return p, n, doubt, nil
	}
	if n < 1 || n > MaxParts {
		return p, 0, nil, &PartError{Piece: piece, Why: fmt.Sprintf("has a count that is not from 1 to %d", MaxParts)}
	}
	return p, n, doubt, nil
}

// answerWord are words that answer a question and name no part, folded; inWord
// those that say where it is kept.
var (
	answerWord = setOf("yes no y n x ok true false ja nein sim não nao si sí oui non")
	inWord     = setOf("in at im am en em na dans au")
)

// answersOnly reports whether a piece names no thing at all; nor do three
// letters, which are as likely a slip.
func answersOnly(word string) bool {
	w := foldPart(word)
	first, _, more := strings.Cut(w, " ")
	return utf8.RuneCountInString(w) < 4 || answerWord[w] || more && inWord[first]
}

// duplicateWord are words for duplicates, folded.
var duplicateWord = map[string]bool{"dup": true, "dups": true, "dupl": true, "duplicate": true, "duplicates": true, "dupla": true, "duplicado": true, "duplicados": true, "duplicata": true,
	"duplicatas": true, "duplicata(s)": true, "double": true, "doubles": true, "dublette": true, "dubletten": true, "duplicati": true, "duplicato": true}

// nearPart returns the word for a part that a misspelt one was meant for, ""
// if none is near.
func nearPart(word string) string {
	w := foldPart(word)
	if n := utf8.RuneCountInString(w); n < 4 || strings.Contains(w, " ") && n < 9 {
		return ""
	}
	allowed := 1
	if utf8.RuneCountInString(w) >= 8 {
		allowed = 2
	}
	near, at := "", allowed+1
	for _, word := range partNames {
		if d := len(word) - len(w); d > 2 || d < -2 || partKind[word] == Other || utf8.RuneCountInString(word) < 5 && word[0] != w[0] {
			continue
		}
		if d := distance(w, word); d < at {
			near, at = word, d
		}
	}
	return near
}

// partNames are the words of partKind in order.
var partNames = slices.Sorted(maps.Keys(partKind))
