package table

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode"

	"github.com/gocarina/gocsv"
	"golang.org/x/text/unicode/norm"

	"cornerslip/label"
)

// termsCSV lists the terms a heading can be: those of Darwin Core (dwc, with
// the Dublin Core terms it takes in as dcterms), after the list of terms of
// June 2025; our own (cornerslip), for what Darwin Core has no term; the
// identifiers of archive rows (archive); the parts of a place that some tables
// give columns of their own (part; see partsCSV); the names of older Darwin Cores with
// the term of now (obsolete: Darwin Core 2003 to 2009, from TDWG's lists of
// replaced terms and, where those are silent, from their definitions); and
// further Dublin Core terms (dc) and names in occurrence downloads of GBIF
// (gbif, from memory), which no label needs but which are no mistakes either.
//
//go:embed vocabulary/terms.csv
var termsCSV []byte

// headingsCSV lists the plain words that tables of field records use, by
// language, and the term each stands for. Common practice, no source. Where
// two terms are named, resolve says which.
//
//go:embed vocabulary/headings.csv
var headingsCSV []byte

// A termEntry is a row of termsCSV.
type termEntry struct {
	Term       string `csv:"term"`
	Vocabulary string `csv:"vocabulary"`
	Now        string `csv:"now"`
	Meaning    string `csv:"meaning"`
}

// A wordsEntry is a row of headingsCSV.
type wordsEntry struct {
	Term     string `csv:"term"`
	Language string `csv:"language"`
	Words    string `csv:"words"`
	Unit     string `csv:"unit"`
}

// A meaning is what a heading can stand for.
type meaning struct {
	terms    []string // in order of preference
	plain    bool     // a plain word, not a term's name
	own      string   // the name it has in another vocabulary, "" if none
	language string   // of a plain word
	unit     string   // "metres" or "feet" if the words name it
}

// words are the meanings of headings by their key.
type words struct {
	meanings map[string]*meaning
	// loose are the meanings of plain words by looseKey; nil where two words
	// that differ in meaning have one.
	loose map[string]*meaning
	// cut are the meanings of words of which ten letters are left; nil where
	// words that differ in meaning begin so.
	cut map[string]*meaning
	// names are the terms a suggestion may name, by key.
	names map[string]string
	// inner are the terms of columns that are read with others.
	inner map[string]bool
}

var vocabulary = sync.OnceValue(func() *words {
	v := &words{meanings: map[string]*meaning{}, loose: map[string]*meaning{}, cut: map[string]*meaning{}, names: map[string]string{}, inner: map[string]bool{}}
	var terms []termEntry
	var plain []wordsEntry
	must(decodeEmbedded("terms.csv", termsCSV, &terms))
	must(decodeEmbedded("headings.csv", headingsCSV, &plain))
	others := map[string]string{}
	for _, t := range terms {
		key := headingKey(t.Term)
		switch t.Vocabulary {
		case "dc", "gbif":
			others[key] = t.Term
		case "part": // read with the columns that go with it, but for these
			v.inner[t.Term] = true
			if strings.HasSuffix(t.Term, "From") || strings.HasSuffix(t.Term, "To") {
				v.meanings[key] = &meaning{terms: []string{t.Term}}
			}
		case "obsolete":
			if _, ok := v.meanings[key]; !ok {
				v.meanings[key] = &meaning{terms: strings.Split(t.Now, "|")}
			}
		default:
			v.meanings[key] = &meaning{terms: []string{t.Term}}
			v.names[key] = t.Term
			defer v.shorten(t.Term, key)
		}
	}
	for _, p := range plain {
		for w := range strings.SplitSeq(p.Words, " | ") {
			key := headingKey(w)
			defer v.loosen(w, key) // when all are known
			defer v.shorten(w, key)
			if m, ok := v.meanings[key]; !ok {
				v.meanings[key] = &meaning{terms: strings.Split(p.Term, "|"), plain: true, language: p.Language, unit: p.Unit}
				if v.meanings[key].terms[0] != "collectorAndNumber" { // which nobody means by a slip
					v.names[key] = v.meanings[key].terms[0]
				}
			} else if m.plain && m.language != p.Language {
				m.language = "" // a word of several languages tells none
			}
		}
	}
	for key, name := range others {
		if m, ok := v.meanings[key]; ok {
			m.own = name
		} else {
			v.meanings[key] = &meaning{terms: []string{name}}
		}
	}
	return v
})

// shorten notes what is left of a word when a dBASE table cuts it, unless whole
// words are left: "Duplicates" is not the rest of "duplicates distributed to".
func (v *words) shorten(word, key string) {
	at := 0
	for _, w := range wordPart.FindAllString(word, -1) {
		if at += len(headingKey(w)); at == cutLetters {
			return
		}
	}
	if len(key) <= cutLetters {
		return
	}
	m, begin := v.meanings[key], key[:cutLetters]
	if old, ok := v.cut[begin]; ok && (old == nil || old.terms[0] != m.terms[0] || old.unit != m.unit) {
		m = nil
	}
	v.cut[begin] = m
}

// cutLetters are the letters that a heading of a dBASE table, such as the one of
// a shapefile, may have.
// Source: dBASE III file format, field descriptor: eleven bytes with a closing zero.
const cutLetters = 10

// loosen notes the loose form of a plain word.
func (v *words) loosen(word, key string) {
	m := v.meanings[key]
	loose := looseKey(word)
	switch m.terms[0] {
	case "copies", "preparations":
		return // a label or a sheet is not what labels and sheets are
	case "year", "month", "day":
		if !strings.Contains(loose, "|") {
			return // nor a day what days are, or a German Tag what tags are
		}
	}
	if old, ok := v.loose[loose]; ok && (old == nil || old.terms[0] != m.terms[0] || old.unit != m.unit) {
		m = nil
	}
	v.loose[loose] = m
}

// wordPart is a word of a heading, a number or a sign for one.
var wordPart = regexp.MustCompile(`\p{Lu}?\p{Ll}+|\p{L}+|\d+|#`)

// numberWords stand for "number", fillWords for nothing.
var (
	numberWords = wordSet("no. | nº | n° | nr. | nro. | num. | núm. | n. | number | número | numéro | numero | numer | nummer | номер | #")
	fillWords   = wordSet("de | da | do | del | la | der | des | du | di | of | the | le | el")
)

var numberSigns = strings.NewReplacer("N.º", "no", "n.º", "no", "N.°", "no", "n.°", "no", "Nº", "no", "nº", "no", "N°", "no", "n°", "no", "№", "no")

// looseKey is what a heading's words have in common in any order, with one word
// for "number", without articles and the plural's s: "Nº de coleta" and
// "Num. coleta" have one, so have "Date of gathering" and "Gathering date".
func looseKey(s string) string {
	var parts []string
	for _, w := range wordPart.FindAllString(norm.NFKC.String(numberSigns.Replace(s)), -1) {
		key := headingKey(w)
		for _, suffix := range []string{"nummer", "nr"} { // Sammelnummer, insamlingsnr
			if rest, ok := strings.CutSuffix(key, suffix); ok && len(rest) > 3 {
				key = rest
				parts = append(parts, "no")
			}
		}
		switch {
		case numberWords[key]:
			parts = append(parts, "no")
		case fillWords[key]:
		case len(key) > 3:
			parts = append(parts, strings.TrimSuffix(key, "s")) // the plural
		default:
			parts = append(parts, key)
		}
	}
	slices.Sort(parts)
	return strings.Join(parts, "|")
}

// A Word is a heading that stands for a term.
type Word struct {
	Term     string // of Darwin Core or ours; two, parted by |, if it depends on other headings
	Language string // of the words, as BCP 47 has it
	Words    []string
	Unit     string // "metres" or "feet" if the words name it
}

// Words returns the plain words that are taken for headings, in the order of
// terms.
func Words() []Word {
	var plain []wordsEntry
	must(decodeEmbedded("headings.csv", headingsCSV, &plain))
	out := make([]Word, len(plain))
	for i, p := range plain {
		out[i] = Word{p.Term, p.Language, strings.Split(p.Words, " | "), p.Unit}
	}
	return out
}

// An OwnTerm is a column that Darwin Core has no term for.
type OwnTerm struct{ Term, Meaning string }

// HeadingsOf returns the headings of terms whose columns have another word than the
// term above them.
func (t *Table) HeadingsOf() map[string]*label.Heading {
	all := map[string]*label.Heading{}
	for i := range t.columns {
		h, term := strings.TrimSpace(t.columns[i].Heading), t.columns[i].Term
		if t.columns[i].Known && h != "" && barePrefixed(h) != term && all[term] == nil && t.Index(term) == i {
			all[term] = &label.Heading{Text: h, Inner: vocabulary().inner[term]}
		}
	}
	return all
}

// OwnTerms returns the columns of our own.
func OwnTerms() []OwnTerm {
	var terms []termEntry
	must(decodeEmbedded("terms.csv", termsCSV, &terms))
	var out []OwnTerm
	for _, t := range terms {
		if t.Vocabulary == "cornerslip" {
			out = append(out, OwnTerm{t.Term, t.Meaning})
		}
	}
	return out
}

// must is for what is embedded and tested: it cannot fail on a user.
func must(err error) {
	if err != nil {
		panic(err)
	}
}

// decodeEmbedded reads a table of ours by struct tags, through our own lexer.
func decodeEmbedded(name string, b []byte, out any) error {
	in := newInput(strings.NewReader(string(b)), utf8Charset, 0, nil)
	r := recordReader{newLexer(in, Options{Comma: ',', Quote: '"', MaxCell: defaultMaxCell, MaxRow: defaultMaxRow})}
	if err := gocsv.UnmarshalDecoder(gocsv.NewSimpleDecoderFromCSVReader(r), out); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

// recordReader gives the lexer's rows in the shape of encoding/csv's Reader,
// as gocsv wants them.
type recordReader struct{ l *lexer }

func (r recordReader) Read() ([]string, error) {
	ok, err := r.l.next()
	if err != nil {
		return nil, err
	}
	if !ok {
		return nil, io.EOF
	}
	text := string(r.l.b[:r.l.length])
	row := make([]string, len(r.l.fields))
	for i := range row {
		row[i] = r.l.text(text, &r.l.fields[i])
	}
	return row, nil
}

func (r recordReader) ReadAll() ([][]string, error) {
	var rows [][]string
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return rows, nil
		}
		if err != nil {
			return nil, err
		}
		rows = append(rows, row)
	}
}

// plainLetters are what people type for letters that have no accent to lose.
var plainLetters = strings.NewReplacer("ß", "ss", "ł", "l", "Ł", "l", "ø", "o", "Ø", "o", "đ", "d", "Đ", "d", "ı", "i", "æ", "ae", "Æ", "ae", "œ", "oe", "Œ", "oe")

// headingKey is what two spellings of a heading have in common: letters
// without case and accents, and figures. "SCIENTIFIC_NAME", "Scientific Name"
// and "scientificName" have one key, so have "Nº" and "no.".
func headingKey(s string) string {
	ascii := true
	for i := range len(s) {
		ascii = ascii && s[i] < 0x80
	}
	if !ascii {
		s = norm.NFKD.String(plainLetters.Replace(s))
	}
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '#':
			b.WriteString("no")
		case r == '&' || r == '+':
			b.WriteString("and")
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(unicode.ToLower(r))
		}
	}
	return b.String()
}
