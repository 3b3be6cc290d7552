package job

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"cornerslip/label/check"
)

// A Selection chooses records: by catalogue number, by collector and number,
// or by row. The empty selection is of all records.
type Selection struct {
	wants []want
}

type want struct {
	text     string // as the user wrote it
	from, to int    // rows; 0 if it names no rows
	folded   string
	found    bool
}

var rowsPattern = regexp.MustCompile(`(?i)^rows?\s*(\d+)(?:\s*[-–]\s*(\d+))?$`)

// Select reads what users write: "Almeida 214", "I. Almeida 214a",
// "VDOURA-0004217", "row 14", "rows 3-9".
func Select(texts []string) (*Selection, error) {
	s := &Selection{}
	for _, text := range texts {
		text = strings.TrimSpace(text)
		if text == "" {
			return nil, fmt.Errorf("nothing stands after --only; name a record: \"Almeida 214\", a catalogue number, or \"row 14\"")
		}
		w := want{text: text, folded: fold(text)}
		if m := rowsPattern.FindStringSubmatch(text); m != nil {
			w.from, _ = strconv.Atoi(m[1])
			w.to = w.from
			if m[2] != "" {
				w.to, _ = strconv.Atoi(m[2])
			}
			if w.from < 1 || w.to < w.from {
				return nil, fmt.Errorf("--only %q: rows count from 1, the smaller first", text)
			}
		}
		s.wants = append(s.wants, w)
	}
	return s, nil
}

// All reports whether no choice was made.
func (s *Selection) All() bool { return s == nil || len(s.wants) == 0 }

// Match reports whether r was chosen, and remembers what was found.
func (s *Selection) Match(r *check.Record) bool {
	if s.All() {
		return true
	}
	hit := false
	for i := range s.wants {
		w := &s.wants[i]
		if w.matches(r) {
			w.found, hit = true, true
		}
	}
	return hit
}

// names reports whether r is chosen, and remembers nothing: it may be called
// from many goroutines.
func (s *Selection) names(r *check.Record) bool {
	if s.All() {
		return true
	}
	for i := range s.wants {
		if s.wants[i].matches(r) {
			return true
		}
	}
	return false
}

// Missing returns the choices that no record answered to.
func (s *Selection) Missing() []string {
	if s == nil {
		return nil
	}
	var out []string
	for _, w := range s.wants {
		if !w.found {
			out = append(out, w.text)
		}
	}
	return out
}

func (w *want) matches(r *check.Record) bool {
	if w.from > 0 {
		return w.from <= r.Row && r.Row <= w.to
	}
	if c := fold(r.Text("catalogNumber")); c != "" && c == w.folded {
		return true
	}
	if fold(r.Key()) == w.folded {
		return true
	}
	// "Almeida 214" names "I. Almeida 214": the words asked for are the last
	// ones of the key.
	return r.Number != "" && strings.HasSuffix(" "+fold(r.Key()), " "+w.folded) && strings.Contains(w.folded, " ")
}

// fold makes what people type comparable: lower case, single spaces, no
// full stops or hyphens.
func fold(s string) string {
	s = strings.ToLower(s)
	s = strings.NewReplacer(".", " ", "-", "", "–", "", ",", " ").Replace(s)
	return strings.Join(strings.Fields(s), " ")
}
