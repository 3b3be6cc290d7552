package name

import (
	"regexp"
	"strings"
)

// afterFamily is a name behind a family and perhaps what lies between the two:
// "Sapotaceae Chrysophyllum albidum", "Fabaceae Mimosoideae Albizia zygia". With
// a colon it is a way of writing, "Poaceae: Stipa sp.", unless the family has its
// own column, too.
var afterFamily = regexp.MustCompile(`^(\p{Lu}\p{Ll}{3,}ae)(?:\s*[-–—:;,.|/>]+\s*|\s+)(?:\p{Lu}\p{Ll}+(?:oideae|eae|inae)(?:\s*[-–—:;,.|/>]+\s*|\s+))*(\p{Lu}\p{Ll}{2,}(?:-\p{Ll}+)? (?:[×x] ?|cf\.? |aff\.? )?(?:\p{Ll}[\p{Ll}-]{2,}|sp\.|spp\.).*)$`)

// family finds the family before a name: no name of a species has it.
func (f *faults) family(column string) {
	m := afterFamily.FindStringSubmatch(f.p.text)
	switch {
	case m == nil || !familyEnding(m[1]):
	case !strings.HasPrefix(strings.TrimLeft(f.p.text[len(m[1]):], " "), ":"):
		f.sayHabit("the family stands before the name: its place is the column family", m[2])
	case column != "":
		f.sayHabit("the family stands before the name and in its own column: it is printed twice", m[2])
	}
}

// dashes finds a dash for the hyphen of an epithet: "uva–ursi".
func (f *faults) dashes() {
	p, mended, was := f.p, f.p.text, ""
	for i := range p.toks {
		if t := &p.toks[i]; t.italic && strings.Contains(p.textOf(i), "–") {
			was = p.textOf(i)
			mended = strings.Replace(mended, was, strings.ReplaceAll(was, "–", "-"), 1)
		}
	}
	if was != "" {
		f.sayHabit("a dash stands in the epithet "+was+": write a hyphen", mended)
	}
}

// quotedAuthors finds authors in quotation marks.
func (f *faults) quotedAuthors() {
	p := f.p
	if q := p.found.quoted; q.end > 0 {
		a, b := p.toks[q.start], p.toks[q.end]
		f.sayHabit("the authors stand in quotation marks, which are printed", p.text[:a.start]+p.text[a.end:b.start]+p.text[b.end:])
	}
}

// epithetAlone finds a word in small letters that is all there is: an epithet
// without its genus, or a genus without its capital. Vernacular names are
// written so too, but do not end as Latin does.
func (f *faults) epithetAlone(genus string) {
	p := f.p
	if t := &p.toks[0]; len(p.toks) != 1 || genus != "" || t.class != word || t.upper || t.alien || t.code || t.dot || t.letters < 4 || t.kind != plainWord || alive[p.text] || !lonely.MatchString(p.text) {
		return
	}
	f.say("one word in small letters: an epithet has its genus before it, and a genus a capital", "")
}

// lonely are words that end as epithets do and as words of living languages hardly
// do. What ends in -a alone may be Portuguese or Spanish.
var lonely = regexp.MustCompile(`^\p{Ll}{3,}(?:us|um|ensis|ense|inalis|ii|ifera|oides|folia|flora|iana|icola|rubra)$|^(?:alba|nigra|robur)$`)

// alive are words of living languages among them.
var alive = map[string]bool{"fungus": true, "cactus": true, "virus": true, "album": true, "museum": true, "focus": true, "status": true,
	"numerous": true, "various": true, "deciduous": true, "herbaceous": true, "glabrous": true, "herbarium": true, "arboretum": true, "aquarium": true, "medium": true, "genus": true, "campus": true,
	"comum": true, "nenhum": true, "algum": true}
