package name

import (
	"regexp"
	"strings"
	"unicode"
)

// A Fault is something in the way a name is written that no name has.
type Fault struct {
	// Capitals: only the size of letters is not as in names of today. Older
	// works and programs write so, and it is printed as it stands.
	Capitals bool
	// InGenus: it is the genus that is written wrongly.
	InGenus bool
	// Rankless: an infraspecific epithet has no rank before it.
	Rankless bool
	// Habit: a program or a hand writes all its names so.
	Habit   bool
	Message string // lower case, no full stop
	Suggest string // the whole text mended, "" if it is not known how
}

// Faults says what is wrong with the way a text is written, as far as it names a
// plant at all: a bracket without its partner, a rank without its epithet, figures
// in an epithet, a genus in small letters, a sign at the end. A text that says
// something else than names do, in whatever words, has none. The most telling is
// the first.
func Faults(text string, c Parts) []Fault {
	var p parser
	p.read(text, c, Options{})
	f := faults{p: &p}
	if len(p.toks) == 0 {
		return nil
	}
	f.underscores()
	f.markup()
	f.italics()
	f.family(strings.TrimSpace(c.Family))
	f.epithetAlone(strings.TrimSpace(c.Genus))
	f.wholeTwice()
	f.commaBeforeAuthor()
	f.runOn()
	f.shouted()
	f.initial(strings.TrimSpace(c.Genus))
	f.smallGenus(strings.TrimSpace(c.Genus), authorLike(strings.TrimSpace(c.Authorship)))
	if p.found.level != noLevel {
		f.brackets()
		f.figures()
		f.figureBefore()
		f.words()
		f.doubts()
		f.tautonym()
		f.capitals()
		f.ending()
		f.stopsTwice()
		f.firstAlone(c.Authorship)
		f.dashes()
		f.quotedAuthors()
		f.joinedBracket()
		f.authors()
		f.stopMissing()
		f.rankless(c.Rank)
		f.blanks()
	}
	return f.list
}

// faults collects them.
type faults struct {
	p *parser
	faultList
}

// A faultList is what has been said of a text.
type faultList struct{ list []Fault }

func (f *faultList) say(message, suggest string) {
	f.list = append(f.list, Fault{Message: message, Suggest: suggest})
}

// sayHabit is say for what a program or a hand does to all its names.
func (f *faultList) sayHabit(message, suggest string) {
	f.list = append(f.list, Fault{Message: message, Suggest: suggest, Habit: true})
}

// sayGenus is say for what is wrong with the genus, as it mostly is in all of a table.
func (f *faults) sayGenus(message, suggest string) {
	f.list = append(f.list, Fault{Message: message, Suggest: suggest, InGenus: true, Habit: true})
}

// with returns the text with other letters in place of a stretch.
func (f *faults) with(start, end int, letters string) string {
	return f.p.text[:start] + letters + f.p.text[end:]
}

func (f *faults) underscores() {
	if t := f.p.text; strings.Contains(t, "_") && !strings.ContainsAny(t, " \t") {
		mended := strings.ReplaceAll(t, "_", " ")
		if len(t) > 2 && t[1] == '_' && t[0] >= 'A' && t[0] <= 'Z' {
			mended = t[:1] + "." + mended[1:] // "Q_suber"
		}
		f.sayHabit("underscores stand where names have spaces", mended)
	}
}

// shortGenus is a genus of which an initial is left: "Q. suber L.".
var shortGenus = regexp.MustCompile(`^([A-Z][a-z]?)\.\s*(?:[×x] ?|cf\. |aff\. )?\p{Ll}[\p{Ll}-]{3,}($|[\s,])`)

func (f *faults) initial(genus string) {
	m := shortGenus.FindStringSubmatch(f.p.text)
	if m == nil {
		return
	}
	suggest := ""
	if strings.HasPrefix(genus, m[1]) && len(genus) > len(m[1])+1 {
		suggest = genus + " " + strings.TrimSpace(f.p.text[len(m[1])+1:])
	}
	f.sayGenus("only the initial of the genus is written: whoever reads the label alone cannot know it, so write the genus in full", suggest)
}

// authored is a name with a comma before its author: "Quercus suber, (L.) Mill.".
// A stop, a bracket or an ampersand tells authors from other words.
var authored = regexp.MustCompile(`^(\p{Lu}[\pL-]+ [×x ]{0,2}\p{Ll}[\pL-]+(?: (?:subsp|ssp|var|f)\. \p{Ll}[\pL-]+)?), ?((?:\(?(?:\p{Lu}[\pL.'’-]*\.?|ex|et|&|in|f\.|de|von|van|da)\)?[ ,]?\s?)+)$`)

func (f *faults) commaBeforeAuthor() {
	if !strings.Contains(f.p.text, ",") {
		return
	}
	m := authored.FindStringSubmatch(f.p.text)
	if m == nil || !strings.ContainsAny(m[2], ".(&") || strings.HasPrefix(m[2], "var.") {
		return
	}
	f.sayHabit("a comma stands before the author, where names have none", m[1]+" "+strings.TrimSpace(m[2]))
}

// joined is an epithet behind which the author begins without a blank: "tremulaL."
var joined = regexp.MustCompile(`^(\p{Lu}\p{Ll}{2,}(?:-\p{Ll}+)? (?:cf\. ?|aff\. ?|[×x] ?)?\p{Ll}[\p{Ll}-]{2,})(\p{Lu}\p{Ll}{0,9}\.(?:[\s,].*)?|\p{Lu}|\(\p{Lu}[^()]*\) ?\p{Lu}.*)$`)

// bracketRun is a bracket behind which the author begins without a blank, too.
var bracketRun = regexp.MustCompile(`\)(\pL)`)

func (f *faults) runOn() {
	if m := joined.FindStringSubmatch(f.p.text); m != nil {
		f.say("the epithet and its author run into each other", m[1]+" "+bracketRun.ReplaceAllString(m[2], ") $1"))
	}
}

// loud are signs of doubt, and words for a species that is not named, in capitals.
var loud = regexp.MustCompile(`^(\p{Lu}\p{Ll}{2,}(?:-\p{Ll}+)?) (C[Ff]|A[Ff]{2}|S[Pp]{1,2})\.?(?: (\p{Ll}[\p{Ll}-]{2,}.*))?$`)

func (f *faults) shouted() {
	m := loud.FindStringSubmatch(f.p.text)
	if m == nil {
		return
	}
	word, rest := strings.ToLower(m[2])+".", m[3]
	if word[0] != 's' && rest == "" {
		f.say(word+" stands before the word that is in doubt", "")
		return
	}
	f.sayHabit(word+" is written in small letters, with a full stop", strings.TrimSpace(m[1]+" "+word+" "+rest))
}

// rankless finds an infraspecific epithet before which no rank stands (ICN Art.
// 24.1: the two are connected by a term denoting the rank).
func (f *faults) rankless(rank string) {
	if d := &f.p.found; d.infras == 0 || d.rank != (span{}) || d.formula || f.p.found.hybrid {
		return
	}
	infra := f.p.found.infra[0]
	suggest := ""
	if r := abbreviation(rank); r != "" {
		suggest = f.with(infra.start, infra.start, r+" ")
	}
	f.say("no rank stands before "+infra.of(f.p.text)+": write subsp., var. or f.; two words of one epithet have a hyphen between them", suggest)
	f.list[len(f.list)-1].Rankless = true
}

// slanted finds the asterisks and underscores around what is typed as italics:
// "*Quercus suber* L.".
var slanted = regexp.MustCompile(`(^|[\s(])(?:\*{1,2}(\pL[^*_]*?)\*{1,2}|__?(\pL[^*_]*?)__?)($|[\s),;])`)

func (f *faults) italics() {
	if !strings.ContainsAny(f.p.text, "*_") {
		return
	}
	mended := slanted.ReplaceAllString(f.p.text, "$1$2$3$4")
	mended = slanted.ReplaceAllString(mended, "$1$2$3$4") // those that share a blank
	if mended != f.p.text {
		f.sayHabit("the signs of typed italics are printed: take them out, for the label sets the name in italics", mended)
	}
}

// markup finds the tags and references of web pages, which a label prints letter
// by letter.
func (f *faults) markup() {
	p, mended := f.p, strings.NewReplacer("&amp;", "&", "&times;", "×", "&#215;", "×").Replace(f.p.text)
	for i := range p.toks {
		if p.toks[i].class == tag {
			mended = strings.ReplaceAll(mended, p.textOf(i), "")
		}
	}
	if mended != p.text {
		f.say("the marks of a web page are printed as letters: take them out", strings.Join(strings.Fields(mended), " "))
	}
}

// deadLatin is two words of which one ends, or which both end, as words of no living
// language do: "taraxacum officinale" is no vernacular name, "erva doce" may be one.
var deadLatin = regexp.MustCompile(`^\p{Ll}+(us|um) \p{Ll}+(us|um|is|ii|ens|ans|inale)$|^\p{Ll}{4,} \p{Ll}+(ensis|ianum|ianus|iana|folia|folium|folius|florum|florus|flora|oides|icum|icus|atum|atus|inale|inalis)$`)

// smallGenus finds a genus that does not begin with a capital. Vernacular names
// are written so too: only an author, "sp.", the column of the genus or endings tell.
func (f *faults) smallGenus(column string, authored bool) {
	p := f.p
	t := &p.toks[0]
	if t.class != word || t.upper || t.alien || t.code || t.dot || t.letters < 4 {
		return
	}
	capital := strings.ToUpper(p.text[t.start:t.start+1]) + p.text[t.start+1:]
	switch {
	case t.start > 0 || p.text[0] >= 0x80 || capital == p.text: // begins with a figure
	case t.role == roleGenus, strings.EqualFold(p.textOf(0), column):
		f.sayGenus("a genus begins with a capital letter", capital)
	case t.kind != plainWord || p.found.level != noLevel || len(p.toks) < 2 || !p.latin(0):
	case p.toks[1].class == word && p.toks[1].kind == open && p.toks[1].dot:
		f.sayGenus("a genus begins with a capital letter", capital)
	case !p.isEpithet(1) || !p.latin(1):
	case len(p.toks) == 2 && deadLatin.MatchString(p.text):
		f.sayGenus("a genus begins with a capital letter", capital)
	case authored && len(p.toks) == 2, len(p.toks) > 2 && (p.toks[2].class == openSign || p.toks[2].class == word && (p.toks[2].upper || p.toks[2].kind == open && p.toks[2].dot)) && f.authorIn(capital):
		f.sayGenus("a genus begins with a capital letter", capital)
	}
}

// authorIn reports whether a text names an author, or an aggregate.
func (f *faults) authorIn(text string) bool {
	n := Parse(text, Parts{})
	return n.Authorship != "" || n.Open != ""
}

func (f *faults) brackets() {
	p := f.p
	for i := range p.toks {
		t := &p.toks[i]
		switch t.class {
		case openSign:
			if t.pair == 0 {
				f.say("the bracket "+p.textOf(i)+" is not closed", "")
				return
			}
		case closeSign:
			if !f.closes(i) && !f.listed(i) {
				f.say("the bracket "+p.textOf(i)+" is not opened", "")
				return
			}
		}
	}
}

func (f *faults) closes(i int) bool {
	for k := range i {
		if f.p.toks[k].class == openSign && f.p.toks[k].pair == i {
			return true
		}
	}
	return false
}

// blanks finds a blank inside of a bracket or before a comma.
func (f *faults) blanks() {
	p := f.p
	mended := strings.NewReplacer("( ", "(", " )", ")", " ,", ",").Replace(p.text)
	if mended != p.text {
		f.say("a blank stands inside a bracket or before a comma", mended)
	}
}

// listed reports whether a bracket stands behind the letter or figure of a list:
// "b) griseola".
func (f *faults) listed(i int) bool {
	if i == 0 || !f.p.toks[i].glued {
		return false
	}
	t := &f.p.toks[i-1]
	return t.class == number || t.greek || t.class == word && t.letters == 1 && !t.upper
}

// figures finds a figure inside a word that stands where an epithet does.
func (f *faults) figures() {
	p := f.p
	for i := 1; i < len(p.toks); i++ {
		t, b := &p.toks[i], &p.toks[i-1]
		if t.class != word || !t.code || t.upper || t.letters < 4 || t.italic || strings.Contains(p.textOf(i), "_") {
			continue
		}
		named := b.taken == levelGenus || b.taken == levelInfrageneric || b.taken == levelSpecies || b.class == word && (b.kind == rankInfra || b.kind == qualifier) || b.class == crossSign
		if !named {
			continue
		}
		letters := strings.Trim(p.bare(i), "0123456789")
		suggest := ""
		if onlyLetters(letters) {
			suggest = f.with(t.start, t.start+len(p.bare(i)), letters)
		}
		f.say("a figure stands in the epithet "+p.bare(i), suggest)
		return
	}
}

// words finds a word that stands twice, and a rank without its epithet.
func (f *faults) words() {
	p := f.p
	for i := range p.toks {
		t := &p.toks[i]
		if t.class != word {
			continue
		}
		last := i+1 >= len(p.toks)
		if !last && !p.toks[i+1].glued && p.toks[i+1].class == word && p.textOf(i) == p.textOf(i+1) &&
			(t.upper && (t.letters > 1 || i+2 == len(p.toks)) || ranks[p.bare(i)]) {
			f.say(p.textOf(i)+" stands twice", f.with(t.end, p.toks[i+1].end, ""))
			return
		}
		if ranks[p.bare(i)] && !t.italic && p.found.genus.end > 0 && (last || f.noEpithet(i+1)) {
			f.rankAlone(i)
			return
		}
	}
}

// ranks are the words for ranks below the species that mean nothing else.
var ranks = map[string]bool{"subsp": true, "ssp": true, "var": true, "subvar": true, "nothosubsp": true, "nothovar": true, "convar": true}

// noEpithet reports whether an author stands at i, and no epithet, Greek letter,
// doubt or further rank.
func (f *faults) noEpithet(i int) bool {
	t := &f.p.toks[i]
	return t.class == comma || t.class == word && t.upper && !t.italic && !t.greek && t.kind != qualifier && !t.caps ||
		t.class == word && t.upper && t.dot && t.letters == 1 && !t.italic && !t.greek
}

func (f *faults) rankAlone(i int) {
	p := f.p
	t := &p.toks[i]
	if w := p.bare(i); (w == "ssp" || w == "subsp") && i == len(p.toks)-1 && p.found.epithet.end == 0 {
		f.say(p.textOf(i)+" is a subspecies: of several species write spp.", f.with(t.start, t.end, "spp."))
		return
	}
	f.say("no epithet follows "+p.textOf(i), "")
}

// doubts finds "c.f.", and a doubt that stands behind what it doubts.
func (f *faults) doubts() {
	p := f.p
	for i := 1; i < len(p.toks); i++ {
		t, b := &p.toks[i], &p.toks[i-1]
		if b.class == word && p.textOf(i-1) == "c." && p.textOf(i) == "f." && t.glued {
			suggest := ""
			if i+1 < len(p.toks) {
				suggest = f.with(b.start, t.end, "cf.")
			}
			f.say("the sign of doubt is written cf., before the word that is in doubt", suggest)
			return
		}
	}
	i := len(p.toks) - 1
	if w := p.bare(i); i > 0 && (w == "cf" || w == "aff") && p.toks[i].class == word && p.toks[i-1].class != openSign &&
		p.toks[i-1].kind != either && p.toks[i-1].kind != and && p.toks[i-1].kind != open {
		f.say(p.textOf(i)+" stands before the word that is in doubt", "")
	}
}

// capitals finds epithets that begin with a capital, as works of old write those
// that are made of persons and genera (Art. 60.2, Rec. 60F: small today), and names
// all in capitals.
func (f *faults) capitals() {
	p := f.p
	if p.caps && p.found.genus.end > 0 {
		f.list = append(f.list, Fault{Capitals: true, Message: "all in capitals, and printed so"})
		return
	}
	mended, was := p.text, ""
	for i := range p.toks {
		t := &p.toks[i]
		if t.italic && t.upper && !t.caps && (t.taken == levelSpecies || t.taken == levelInfra) {
			s := p.textOf(i)
			mended, was = mended[:t.start]+strings.ToLower(s)+mended[t.end:], s
			if len(mended) != len(p.text) {
				return
			}
		}
	}
	if was != "" {
		f.list = append(f.list, Fault{Capitals: true, Message: "the epithet " + was + " begins with a capital, where epithets are written small today", Suggest: mended})
	}
}

// ending finds a sign that nothing follows.
func (f *faults) ending() {
	text := strings.TrimRightFunc(f.p.text, unicode.IsSpace)
	cut := strings.TrimRight(text, " ,;:-–—+×&")
	if cut == text {
		if n := len(text); strings.HasSuffix(text, "..") && !strings.HasSuffix(text, "...") {
			f.say("ends with two full stops", text[:n-1])
		}
		return
	}
	sign := strings.TrimSpace(text[len(cut):])
	if f.p.found.epithet.end == 0 && sign == "×" {
		return // some hybrid of the genus
	}
	if strings.ContainsAny(sign, "×+&") {
		f.say("nothing follows "+sign, "")
		return
	}
	f.say("ends with \""+sign+"\", and nothing follows", cut)
}
