package name

import (
	"regexp"
	"strings"
)

// tautonym finds a species whose epithet is its genus again. Names of animals may be
// made so, those of plants, algae and fungi never (ICN Art. 23.4).
func (f *faults) tautonym() {
	if d := &f.p.found; d.genus.end > 0 && d.epithet.end > 0 && !d.formula && strings.EqualFold(d.genus.of(f.p.text), d.epithet.of(f.p.text)) {
		f.say("the epithet repeats the genus, which no name of a plant may: see which of the two is meant", "")
	}
}

// bracketed is an author that is only that of the first name: "(L.)". A year is
// in the brackets of animals, to which nobody is added; words of doubt and of
// width, such as "s.l.", are no authors, nor is another name of the plant with its
// epithet cut short, "(Phaca pendul.)". Without a sign of authors it may be a
// vernacular name.
var (
	bracketed  = regexp.MustCompile(`^\(\s*\p{Lu}[^()\d]*(?:\.| & | ex )[^()\d]*\)$`)
	noAuthorIn = regexp.MustCompile(`^\(\s*\p{Lu}\p{Ll}{3,} (?:\p{Ll}{2,}|[a-eg-z])\.?\s*\)$|(?i)^\(\s*(?:det|herb|coll|leg|fig|syn|type|typus|var|subsp|ssp|cf|aff|pl|photo|no)\b`)
)

// firstOnly is what is said of them.
const firstOnly = "only the author in brackets is given, who named the plant first: add the one who gave it this name"

// firstAlone finds the author of a first name, in brackets, behind which the author who
// moved the plant is missing (ICN Art. 49.1, Rec. 49A).
func (f *faults) firstAlone(column string) {
	d := &f.p.found
	if d.level < levelSpecies || d.formula {
		return
	}
	authors := strings.TrimRight(d.authors.of(f.p.text), " ,;:")
	rest := strings.TrimSpace(f.p.text[max(d.authors.end, d.lowest.end):])
	if bracketed.MatchString(authors) && !noAuthorIn.MatchString(authors) && rest == "" && (column == "" || strings.TrimSpace(column) == authors) {
		f.say(firstOnly, "")
	}
}

// counted is a figure between the epithet and the author: a footnote, or the number
// of a plant.
var counted = regexp.MustCompile(`^(\p{Lu}\p{Ll}{2,}(?:-\p{Ll}+)? (?:[×x] ?)?\p{Ll}[\p{Ll}-]{2,}(?: (?:subsp|ssp|var|f)\. \p{Ll}[\p{Ll}-]{2,})?) \d{1,2} (\(?\p{Lu}[\pL.'’-]*.*)$`)

// figureBefore finds it.
func (f *faults) figureBefore() {
	if m := counted.FindStringSubmatch(f.p.text); m != nil && f.authorIn(m[1]+" "+m[2]) {
		f.say("a figure stands before the author", m[1]+" "+m[2])
	}
}

// stopsTwice finds two full stops in a name: "Th.. Fr.".
func (f *faults) stopsTwice() {
	if mended, ok := oneStop(f.p.text); ok {
		f.say("two full stops stand where one is meant", mended)
	}
}

// bracketJoined are authors in brackets with the next right behind: "(Sw.)Kuntze".
var bracketJoined = regexp.MustCompile(`(\(\p{Lu}[^()\d]*\))(\p{Lu}(?:\p{Ll}|\.))`)

// joinedBracket finds it.
func (f *faults) joinedBracket() {
	if strings.Contains(f.p.text, ")") && f.p.found.level >= levelSpecies && !f.p.found.formula {
		if mended := bracketJoined.ReplaceAllString(f.p.text, "$1 $2"); mended != f.p.text {
			f.sayHabit("no blank parts the author in brackets from the next", mended)
		}
	}
}

// authors finds what only the end of a name's authors, or the year behind them, can
// have wrong.
func (f *faults) authors() {
	p := f.p
	if p.found.level < levelSpecies || p.found.formula {
		return
	}
	if word := strings.TrimSpace(joinsNobody.FindString(p.text)); word != "" && word != "&" && p.found.authors.end > 0 {
		f.say("nobody follows "+word, "")
	}
	if mended := yearJoined.ReplaceAllString(p.text, "$1 $2"); mended != p.text {
		f.sayHabit("no blank stands before the year", mended)
	}
	if m := inAuthor.FindStringSubmatch(p.text[p.found.lowest.end:]); m != nil {
		f.say("a figure stands in the author "+m[1], "")
	}
	if m := binomial.FindStringSubmatch(p.text); m != nil && smallAuthors.MatchString(m[2]) {
		suggest := ""
		if !strings.Contains(m[2], " ") {
			suggest = m[1] + " " + capitalised(m[2])
		}
		f.sayHabit("authors begin with a capital letter", suggest)
	}
}

// binomial is a name and what stands behind it.
var binomial = regexp.MustCompile(`^(\p{Lu}\p{Ll}{2,}(?:-\p{Ll}+)? (?:[×x] ?)?\p{Ll}[\p{Ll}-]{2,}) (\(?\p{Ll}+\..*)$`)

// inAuthor is a figure in an author's name that was read for a letter: "L1nk".
var inAuthor = regexp.MustCompile(`^ (?:\([^()]*\) )?(\p{Lu}\p{Ll}*[01]\p{Ll}+)\.?$`)

// twice is a name behind which the same name begins again.
var twice = regexp.MustCompile(`^(\p{Lu}\p{Ll}{2,}(?:-\p{Ll}+)? (?:[×x] ?)?\p{Ll}[\p{Ll}-]{2,})(| .*\pL.*) (\p{Lu}\p{Ll}{2,}(?:-\p{Ll}+)? (?:[×x] ?)?\p{Ll}[\p{Ll}-]{2,})(.*)$`)

// wholeTwice finds a name that was pasted twice.
func (f *faults) wholeTwice() {
	t := f.p.text
	genus, rest, _ := strings.Cut(t, " ")
	if !strings.Contains(rest, genus) {
		return
	}
	m := twice.FindStringSubmatch(t)
	if m == nil || m[1] != m[3] || strings.ContainsAny(m[2], "[]=:;,/+×") {
		return
	}
	switch before, behind := strings.TrimSpace(m[2]), strings.TrimSpace(m[4]); {
	case before == behind || behind == "":
		f.say("the whole name stands twice", strings.TrimSpace(m[1]+" "+before))
	case before == "":
		f.say("the whole name stands twice", m[1]+" "+behind)
	}
}
