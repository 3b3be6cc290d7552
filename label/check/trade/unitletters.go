package trade

import (
	"strings"

	"cornerslip/label"
	"cornerslip/label/check"
)

// unitLetterRule finds the letters that typewriters had for figures, and that programs
// which read print take for them.
func unitLetterRule() check.Rule {
	return check.Rule{
		Name: "figure-letter", Severity: label.Warning, Source: practice,
		Doc: "the letter l or O for the figure 1 or 0 before a unit of length", Terms: sentences,
		Example: one("locality", "Valdoura, dunes l km W of the field station"), Counterexample: one("locality", "Valdoura, sector I, km 5; O m. do rio, 10 km W"),
		Row: func(c *check.Context) {
			c.Marked(letterForFigure, func(term, text, _ string) {
				from, to := letterFigure(text)
				c.Suggest(term, "a letter stands where a figure is meant: "+text[from:to], text[:from]+figuresFor.Replace(text[from:to])+text[to:])
			})
		},
	}
}

// letterForFigure are cells in which one does.
var letterForFigure = check.NewMark(sentences, 0, func(text string) bool {
	_, to := letterFigure(text)
	return to > 0
})

// lengthUnits are the units before which only a figure can stand. From memory.
var lengthUnits = map[string]bool{"km": true, "m": true, "cm": true, "mm": true, "mi": true, "mile": true, "miles": true, "ft": true, "feet": true, "yards": true, "yds": true}

// letterFigure returns where letters stand for figures before a unit of length: "l mi.",
// "1O km", "l.5 m"; 0, 0 where none do. O alone is an article, I alone a Roman one, and l'
// an article, too.
func letterFigure(text string) (from, to int) {
	for i := 0; i < len(text); i++ {
		if b := text[i]; b != 'l' && b != 'O' && (b < '0' || b > '9') || i > 0 && strings.IndexByte(" (,;~", text[i-1]) < 0 {
			continue
		}
		end, letters, figures := i, 0, 0
		for ; end < len(text); end++ {
			switch b := text[end]; {
			case b >= '0' && b <= '9':
				figures++
			case b == 'l' || b == 'O':
				letters++
			case b == '.' && end > i && end+1 < len(text) && (text[end+1] >= '0' && text[end+1] <= '9' || text[end+1] == 'O'):
			default:
				goto ended
			}
		}
	ended:
		if letters > 0 && (figures > 0 || text[i:end] == "l") && end+1 < len(text) && text[end] == ' ' && lengthUnits[unitAt(text[end+1:])] {
			return i, end
		}
		i = max(i, end-1)
	}
	return 0, 0
}

// unitAt returns the word that a text begins with.
func unitAt(text string) string {
	n := 0
	for n < len(text) && (text[n] >= 'a' && text[n] <= 'z' || text[n] >= 0x80) {
		n++
	}
	if n < len(text) && (text[n] >= '0' && text[n] <= '9' || text[n] >= 'A' && text[n] <= 'Z' || text[n] == '\'' || text[n] == '-') {
		return ""
	}
	return text[:n]
}
