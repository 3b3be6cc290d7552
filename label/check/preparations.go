package check

import (
	"fmt"
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
}

func (e *PartError) Error() string {
	if e.Piece == "" {
		return e.Why
	}
	return fmt.Sprintf("%q %s", e.Piece, e.Why)
}

// partWords are the words for parts that labels of the trade use, by
// language: English, Portuguese, Spanish, French, German. Common practice, no
// source. The first of each kind is the one messages name.
var partWords = []struct {
	kind  PreparationKind
	words []string
}{
	{Sheet, []string{"sheet", "herbarium sheet", "mounted sheet", "pressed sheet", "pressed specimen", "voucher", "voucher sheet",
		"exsiccata", "folha", "exsicata", "pliego", "hoja", "exsicado", "planche", "part d'herbier", "bogen", "herbarbogen", "beleg"}},
	{Packet, []string{"packet", "envelope", "pocket", "fragment packet", "pacote", "sobre", "sachet", "pochette", "enveloppe",
		"kapsel", "tüte", "umschlag"}},
	{Box, []string{"box", "carton", "caixa", "caja", "boîte", "boite", "schachtel", "karton"}},
	{Jar, []string{"jar", "bottle", "vial", "frasco", "bocal", "flacon", "glas"}},
	{Other, []string{"other", "slide", "microscope slide", "pollen slide", "tissue", "silica", "silica gel", "dna", "dna extract", "photo", "photograph",
		"drawing", "seed", "seeds", "wood", "wood sample", "spirit", "living plant", "cutting"}},
}

// partKind finds the kind by word, in lower case, singular or plural.
var partKind = func() map[string]PreparationKind {
	m := map[string]PreparationKind{}
	for _, k := range partWords {
		for _, w := range k.words {
			m[w] = k.kind
			m[plural(w)] = k.kind
		}
	}
	for w, k := range map[string]PreparationKind{ // irregular plurals
		"pliegos": Sheet, "bögen": Sheet, "herbarbögen": Sheet, "belege": Sheet, "exsiccatae": Sheet, "parts d'herbier": Sheet,
		"kapseln": Packet, "tüten": Packet, "umschläge": Packet, "schachteln": Box, "gläser": Jar, "bocaux": Jar,
	} {
		m[w] = k
	}
	return m
}()

// plural is the regular plural of English, Portuguese, Spanish and French.
func plural(w string) string {
	switch {
	case strings.HasSuffix(w, "s"):
		return w
	case strings.HasSuffix(w, "x"):
		return w + "es"
	case strings.HasSuffix(w, "y"):
		return strings.TrimSuffix(w, "y") + "ies"
	}
	return w + "s"
}

// ParsePreparations reads the parts of a specimen: pieces parted by "|"
// (by ";" where there is no "|"), each a word for the kind, perhaps a count, perhaps a colon and the
// contents.
//
//	sheet | sheet | packet: capsules | box: cone
//	2 sheets | packet: seeds, loose flowers
//	sheet 1 of 2 | packet: capsules
//
// The last is a specimen whose sheets have a record each: the table says that
// they are one. An empty text is one sheet. The error is a *PartError that names
// the piece.
func ParsePreparations(text string) ([]Preparation, error) {
	if strings.TrimSpace(text) == "" {
		return []Preparation{{Kind: Sheet, Word: "sheet", N: 1, Of: 1}}, nil
	}
	var parts []Preparation
	sign, join := ";", "; "
	if strings.Contains(text, "|") {
		sign, join = "|", " | " // and a semicolon parts the contents of a packet
	}
	pieces := strings.Split(text, sign)
	for i, piece := range pieces {
		if piece = strings.Trim(piece, " \t\r\n\u00a0;"); piece == "" {
			continue // a separator too many hides nothing
		}
		p, n, err := parsePart(piece)
		if err != nil {
			pe := err.(*PartError)
			if pe.Suggest != "" { // of the piece; made whole here
				pieces[i] = pe.Suggest
				for j := range pieces {
					pieces[j] = strings.TrimSpace(pieces[j])
				}
				pe.Suggest = strings.Join(slices.DeleteFunc(pieces, func(s string) bool { return s == "" }), join)
			}
			return nil, pe
		}
		if len(parts)+n > MaxParts {
			return nil, &PartError{Why: fmt.Sprintf("more than %d parts for one specimen: check the count", MaxParts)}
		}
		for range n {
			parts = append(parts, p)
		}
	}
	if len(parts) == 0 {
		return nil, &PartError{Why: `no part is named: write "sheet", or leave the cell empty for one sheet`}
	}
	if err := countParts(parts); err != nil {
		return nil, err
	}
	return parts, nil
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

// parsePart reads one piece and says how many times it stands for.
func parsePart(piece string) (p Preparation, n int, err error) {
	head, contents, _ := strings.Cut(piece, ":")
	p.Contents = strings.Join(strings.Fields(contents), " ")
	word, which, of, told := cutWhich(strings.Join(strings.Fields(head), " "))
	counted := false
	if n = 1; !told {
		word, n, counted = cutCount(word)
	}
	if word == "" {
		return p, 0, &PartError{Piece: piece, Why: `does not say what it is: write "sheet", "packet: capsules", "box: cone" or "jar: flowers"`}
	}
	if c, err := strconv.Atoi(p.Contents); err == nil && !counted {
		if c != 1 {
			word = plural(word)
		}
		return p, 0, &PartError{Piece: piece, Why: "has a number for its contents: put the count first and say what is inside",
			Suggest: fmt.Sprintf("%d %s", c, word)}
	}
	if told {
		if of < 1 || of > MaxParts || which < 1 || which > of {
			return p, 0, &PartError{Piece: piece, Why: fmt.Sprintf(`is no part: write "%s 1 of 2", the first figure not above the second, which is at most %d`, word, MaxParts)}
		}
		p.N, p.Of, p.Elsewhere = which, of, true
	}
	if n < 1 || n > MaxParts {
		return p, 0, &PartError{Piece: piece, Why: fmt.Sprintf("has a count that is not from 1 to %d", MaxParts)}
	}
	kind, ok := partKind[strings.ToLower(word)]
	if !ok {
		e := &PartError{Piece: piece, Why: "is no kind of part: write sheet, packet, box, jar or other, and after a colon what is in it"}
		if near := nearest(strings.ToLower(word), partKind); near != "" {
			e.Suggest = strings.Replace(piece, word, near, 1)
		}
		return p, 0, e
	}
	p.Kind, p.Word = kind, word
	return p, n, nil
}

// cutCount takes a count off a word: "2 sheets", "2 × sheet", "sheet x2",
// "sheets (2)".
func cutCount(s string) (word string, n int, counted bool) {
	digits := func(r rune) bool { return r >= '0' && r <= '9' }
	front := len(s) - len(strings.TrimLeftFunc(s, digits))
	if front > 0 {
		n, err := strconv.Atoi(s[:front])
		rest := s[front:]
		if err != nil {
			n = 0
		}
		w := strings.TrimLeft(rest, " ×*")
		if x, ok := strings.CutPrefix(w, "x "); ok {
			w = x
		}
		return strings.TrimSpace(w), n, true
	}
	body := strings.TrimRight(s, " )")
	back := len(body) - len(strings.TrimRightFunc(body, digits))
	if back > 0 {
		word := body[:len(body)-back]
		// "sheet x2" and "box2" differ: the x of box is part of its word.
		if w := strings.TrimRight(word, " "); strings.HasSuffix(w, " x") || strings.HasSuffix(w, "×") || strings.HasSuffix(w, "*") || strings.HasSuffix(w, "(") || w != word {
			n, err := strconv.Atoi(body[len(body)-back:])
			if err != nil {
				n = 0
			}
			if strings.HasSuffix(w, " x") {
				w = w[:len(w)-2]
			}
			return trimCount(w), n, true
		}
	}
	return s, 1, false
}

func trimCount(s string) string { return strings.Trim(s, " (×*") }

// nearest returns the key that is closest to the word, or "" if none is near.
func nearest[V any](word string, keys map[string]V) string {
	names := make([]string, 0, len(keys))
	for k := range keys {
		names = append(names, k)
	}
	slices.Sort(names)
	best, at := "", min(2, 1+utf8.RuneCountInString(word)/4)
	for _, k := range names {
		if d := distance(word, k); d < at || d == at && best == "" {
			best, at = k, d
		}
	}
	return best
}

// distance is the optimal string alignment distance: letters put in, left
// out, changed, and neighbours exchanged.
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	if d := len(x) - len(y); d > 8 || d < -8 {
		return max(len(x), len(y))
	}
	prev2, prev, cur := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(x); i++ {
		cur[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				cur[j] = min(cur[j], prev2[j-2]+1)
			}
		}
		prev2, prev, cur = prev, cur, prev2
	}
	return prev[len(y)]
}
