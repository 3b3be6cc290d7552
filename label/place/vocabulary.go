package place

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// A Vocabulary is a list of the words that a standard lets a column hold.
type Vocabulary struct {
	// Source names the list and its version.
	Source string
	// Terms are its words as the standard writes them.
	Terms []string

	accepted map[string]bool   // written exactly so
	known    map[string]string // squeezed spelling: term; "" where two share it
	words    []vocabularyWords // for abbreviations
	stem     string            // what an abbreviation may leave out, and write as "types" or "typus": "type"
	slips    bool              // a letter may be missing
}

type vocabularyWords struct {
	words []string
	term  string
}

// Has reports whether s is exactly a word of the list, or a label that the
// list itself gives it in another language.
func (v *Vocabulary) Has(s string) bool { return v.accepted[s] }

// Match returns the term that s can be read as and no other: another case or
// spacing of it, its IRI, a synonym of the list, or an abbreviation of at
// least three letters ("Human obs", "vag."). It is false where two terms could
// be meant, or none.
func (v *Vocabulary) Match(s string) (term string, ok bool) {
	s = strings.TrimFunc(s, func(r rune) bool { return unicode.IsSpace(r) || !unicode.IsPrint(r) })
	if hasNamespace(s) {
		s = s[strings.LastIndexAny(s, "/#:")+1:]
	}
	k := squeeze(s)
	if k == "" {
		return "", false
	}
	if term, ok := v.known[k]; ok {
		return term, term != ""
	}
	if v.stem != "" {
		for _, end := range []string{"types", "typus", "typi", "tipo", "tipos"} {
			if one, ok := strings.CutSuffix(k, end); ok {
				if term, ok := v.known[one+v.stem]; ok {
					return term, term != ""
				}
			}
		}
		if term, ok := v.known[k+v.stem]; ok && len(k) > 2 {
			return term, term != ""
		}
	}
	if term = v.abbreviated(s); term == "" && v.slips {
		term = v.slip(k)
	}
	return term, term != ""
}

// hasNamespace reports whether s is the address of a term, in full or with the
// prefix of a namespace that terms of these lists have.
func hasNamespace(s string) bool {
	scheme, _, ok := strings.Cut(s, ":")
	return ok && slices.Contains([]string{"http", "https", "dwc", "dcmitype", "dwcem", "dwcdoe", "dwcpw"}, strings.ToLower(scheme))
}

// abbreviated finds the one term whose words begin as those of s do.
func (v *Vocabulary) abbreviated(s string) string {
	in := splitWords(s)
	if len(in) == 0 {
		return ""
	}
	found := ""
	for _, w := range v.words {
		if len(w.words) != len(in) || w.term == found {
			continue
		}
		match := true
		for i, x := range in {
			if utf8.RuneCountInString(x) < 3 || !strings.HasPrefix(w.words[i], x) {
				match = false
				break
			}
		}
		if !match {
			continue
		}
		if found != "" {
			return ""
		}
		found = w.term
	}
	return found
}

// slip finds the one term of which k lacks one letter.
func (v *Vocabulary) slip(k string) string {
	found := ""
	for _, t := range v.Terms {
		w := squeeze(t)
		if len(k) < 4 || len(w) != len(k)+1 {
			continue
		}
		for i := range w {
			if w[:i]+w[i+1:] != k {
				continue
			}
			if found != "" && found != t {
				return ""
			}
			found = t
			break
		}
	}
	return found
}

// splitWords cuts at blanks, punctuation and where a capital follows a small
// letter, and squeezes each word.
func splitWords(s string) []string {
	var b strings.Builder
	small := false
	for _, r := range s {
		switch {
		case unicode.IsUpper(r) && small:
			b.WriteByte(' ')
			b.WriteRune(r)
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		default:
			b.WriteByte(' ')
		}
		small = unicode.IsLower(r)
	}
	words := strings.Fields(b.String())
	for i, w := range words {
		words[i] = squeeze(w)
	}
	return slices.DeleteFunc(words, func(w string) bool { return w == "" })
}

// A list is how vocabularies are written below: a term a line and, behind a
// colon, its labels in other languages that count as the term itself, and
// behind a bar, spellings that mean it. Entries are parted by commas.
func newVocabulary(source, list string) *Vocabulary {
	v := &Vocabulary{Source: source, accepted: map[string]bool{}, known: map[string]string{}}
	know := func(spelling, term string) {
		k := squeeze(spelling)
		if k == "" {
			return
		}
		if t, ok := v.known[k]; ok && t != term {
			term = ""
		}
		v.known[k] = term
		if term != "" {
			v.words = append(v.words, vocabularyWords{splitWords(spelling), term})
		}
	}
	var synonyms [][2]string
	for line := range strings.Lines(strings.TrimSpace(list)) {
		line, spellings, _ := strings.Cut(strings.TrimSpace(line), "|")
		term, labels, _ := strings.Cut(line, ":")
		term = strings.TrimSpace(term)
		v.Terms = append(v.Terms, term)
		v.accepted[term] = true
		know(term, term)
		for _, l := range splitList(labels) {
			v.accepted[l] = true
			synonyms = append(synonyms, [2]string{l, term})
		}
		for _, s := range splitList(spellings) {
			synonyms = append(synonyms, [2]string{s, term})
		}
	}
	for _, s := range synonyms {
		if t, ok := v.known[squeeze(s[0])]; ok && slices.Contains(v.Terms, t) && squeeze(t) == squeeze(s[0]) {
			continue // a term's own spelling outranks another's synonym
		}
		know(s[0], s[1])
	}
	return v
}

func splitList(s string) []string {
	var out []string
	for _, x := range strings.Split(s, ",") {
		if x = strings.TrimSpace(x); x != "" {
			out = append(out, x)
		}
	}
	return out
}

// numbered takes for a spelling of each term the end of its address where that
// is a letter and the term's place in the list: e001, e002.
func (v *Vocabulary) numbered(letter string) *Vocabulary {
	for i, t := range v.Terms {
		v.known[fmt.Sprintf("%s%03d", letter, i+1)] = t
	}
	return v
}

// anyCase takes every term with a first letter of either case, for lists that
// are published in both.
func (v *Vocabulary) anyCase() *Vocabulary {
	for _, t := range v.Terms {
		r, n := utf8.DecodeRuneInString(t)
		v.accepted[string(unicode.ToUpper(r))+t[n:]] = true
		v.accepted[string(unicode.ToLower(r))+t[n:]] = true
		v.accepted[strings.ToLower(t)] = true
	}
	return v
}

// BasisOfRecord is the list of Darwin Core's classes.
func BasisOfRecord() *Vocabulary { return basisOfRecord() }

// TypeStatus is the list of kinds of nomenclatural types.
func TypeStatus() *Vocabulary { return typeStatus() }

// TaxonRank is the list of ranks.
func TaxonRank() *Vocabulary { return taxonRank() }

// EstablishmentMeans is the list of ways in which a plant came to be where it
// was found.
func EstablishmentMeans() *Vocabulary { return establishmentMeans() }

// DegreeOfEstablishment is the list of how far it has settled there.
func DegreeOfEstablishment() *Vocabulary { return degreeOfEstablishment() }

// Pathway is the list of how it was brought.
func Pathway() *Vocabulary { return pathway() }

// OccurrenceStatus is present or absent.
func OccurrenceStatus() *Vocabulary { return occurrenceStatus() }

// Sex is the list of sexes.
func Sex() *Vocabulary { return sex() }

// DCMIType is the list of kinds of resources.
func DCMIType() *Vocabulary { return dcmiType() }

var (
	basisOfRecord         = sync.OnceValue(func() *Vocabulary { return newVocabulary(basisSource, basisList) })
	taxonRank             = sync.OnceValue(func() *Vocabulary { return newVocabulary(rankSource, rankList).anyCase() })
	establishmentMeans    = sync.OnceValue(func() *Vocabulary { return newVocabulary(establishmentSource, establishmentList).numbered("e") })
	degreeOfEstablishment = sync.OnceValue(func() *Vocabulary { return newVocabulary(degreeSource, degreeList).numbered("d") })
	pathway               = sync.OnceValue(func() *Vocabulary { return newVocabulary(pathwaySource, pathwayList).numbered("p") })
	occurrenceStatus      = sync.OnceValue(func() *Vocabulary { return newVocabulary(occurrenceSource, occurrenceList) })
	sex                   = sync.OnceValue(func() *Vocabulary { return newVocabulary(sexSource, sexList).anyCase() })
	typeStatus            = sync.OnceValue(func() *Vocabulary {
		v := newVocabulary(typeSource, typeList).anyCase()
		v.stem = "type"
		return v
	})
	dcmiType = sync.OnceValue(func() *Vocabulary {
		v := newVocabulary(dcmiSource, dcmiList)
		v.slips = true
		return v
	})
)
