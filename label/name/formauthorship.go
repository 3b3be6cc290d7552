package name

import (
	"regexp"
	"strings"
)

// AuthorFaults says what is wrong with the way the authors of a name are written,
// where they stand by themselves, in a column of their own: half a pair of brackets,
// a word that joins two people and has nobody on one side, a figure in a name, small
// letters all through. The most telling is the first. What names no people, such as
// "auct." or "nom. nud.", has none.
func AuthorFaults(text string) []Fault {
	f := authorship{text: strings.TrimSpace(text)}
	if f.text == "" {
		return nil
	}
	f.brackets()
	f.figures()
	f.joined()
	f.years()
	f.sides()
	f.stops()
	f.stopMissing()
	f.small()
	f.firstAlone()
	return f.list
}

// authorship collects them.
type authorship struct {
	text string
	faultList
}

// partners are the brackets that close others.
var partners = map[rune]rune{'(': ')', '[': ']'}

func (f *authorship) brackets() {
	var open []rune
	for _, r := range f.text {
		switch r {
		case '(', '[':
			open = append(open, r)
		case ')', ']':
			if len(open) == 0 || partners[open[len(open)-1]] != r {
				f.say("the bracket "+string(r)+" is not opened", "")
				return
			}
			open = open[:len(open)-1]
		}
	}
	if len(open) > 0 {
		f.say("the bracket "+string(open[0])+" is not closed", "")
	}
}

// figured is a figure inside a person's name or right behind it: "L1nk", "Link2".
// A year behind a full stop is told for its blank, and years have letters behind them.
var figured = regexp.MustCompile(`\pL[\pL'’-]*\d+(?:\pL[\pL\d]*|$|[\s,)&])`)

func (f *authorship) figures() {
	if word := figured.FindString(f.text); word != "" {
		f.say("a figure stands in the author "+strings.TrimRight(word, " ,)&"), "")
	}
}

func (f *authorship) joined() {
	if mended := bracketJoined.ReplaceAllString(f.text, "$1 $2"); mended != f.text {
		f.sayHabit("no blank parts the author in brackets from the next", mended)
	}
}

// yearJoined is a year right behind an abbreviated name: "L.1753", "Lév.(1851)".
var yearJoined = regexp.MustCompile(`(\pL\.)(\(?(?:1[789]|20)\d\d\b)`)

func (f *authorship) years() {
	if mended := yearJoined.ReplaceAllString(f.text, "$1 $2"); mended != f.text {
		f.sayHabit("no blank stands before the year", mended)
	}
}

// Words and signs that stand between two people, at an end of the text.
var (
	joinsNobody  = regexp.MustCompile(`(?:\s(?:et|ex|in|and|und)|\s*&)$`)
	joinsNobody0 = regexp.MustCompile(`^(?:(?:et|ex|and|und)\s|&)`)
	looseEnd     = regexp.MustCompile(`[\s,;:–—-]+$`)
	looseStart   = regexp.MustCompile(`^[\s,;:–—-]+`)
)

func (f *authorship) sides() {
	t := f.text
	if word := strings.TrimSpace(joinsNobody.FindString(t)); word != "" {
		f.say("nobody follows "+word, "")
		return
	}
	if word := strings.TrimSpace(joinsNobody0.FindString(t)); word != "" {
		f.say("nobody stands before "+word, "")
		return
	}
	if cut := looseEnd.ReplaceAllString(t, ""); cut != t && cut != "" {
		f.say("ends with \""+strings.TrimSpace(t[len(cut):])+"\", and nothing follows", cut)
		return
	}
	if cut := looseStart.ReplaceAllString(t, ""); cut != t && cut != "" {
		f.sayHabit("begins with \""+strings.TrimSpace(t[:len(t)-len(cut)])+"\", which is printed", cut)
	}
}

func (f *authorship) stops() {
	if mended, ok := oneStop(f.text); ok {
		f.say("two full stops stand where one is meant", mended)
	} else if n := len(f.text); strings.HasSuffix(f.text, "..") && !strings.HasSuffix(f.text, "...") {
		f.say("ends with two full stops", f.text[:n-1])
	}
}

// oneStop takes one of two full stops inside a text. Three leave something out.
func oneStop(t string) (string, bool) {
	i := strings.Index(t, "..")
	if i <= 0 || i+2 >= len(t) || t[i+2] == '.' || strings.Count(t, "..") > 1 {
		return t, false
	}
	return t[:i] + t[i+1:], true
}

// smallAuthors are abbreviations of authors that are typed most, in small letters, all
// there is or in brackets with more behind.
var smallAuthors = regexp.MustCompile(`^(?:\((?:` + smallWords + `)\.\)\s*\p{Ll}+\.?|(?:` + smallWords + `)\.|l\.f\.)$`)

// smallWords are their words. Those that stand for something else behind a name, such as
// "var." and "hort.", are not among them. From memory, after the standard forms.
const smallWords = "l|dc|mill|willd|lam|hedw|pers|ach|aubl|benth|boiss|bonpl|brid|brot|cav|desf|desr|ehrh|endl|engelm|engl|gaertn|griseb|hack|haw|hoffm|hoffmanns|hook|humb|jacq|juss|kotschy|ledeb|lindl|maxim|medik|meisn|mert|michx|miq|mutis|nutt|oerst|planch|poepp|poir|pourr|rchb|roem|rothm|roxb|rydb|salisb|samp|schltr|schrad|schreb|schult|scop|spreng|standl|steud|sw|thunb|torr|trel|vill|wedd|welw"

func (f *authorship) small() {
	if smallAuthors.MatchString(f.text) {
		suggest := ""
		if !strings.Contains(f.text, " ") {
			suggest = capitalised(f.text)
		}
		f.sayHabit("authors begin with a capital letter", suggest)
	}
}

func (f *authorship) firstAlone() {
	if bracketed.MatchString(f.text) && !noAuthorIn.MatchString(f.text) {
		f.say(firstOnly, "")
	}
}
