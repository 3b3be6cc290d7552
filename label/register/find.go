package register

import (
	"context"
	"errors"
	"net/url"
	"slices"
	"strings"
	"unicode"
)

// A phrase is a name or a collector as printed. Each distinct text is kept
// once, with its words, so that a search for words looks through some
// thousand texts and not through every label.
type phrase struct{ role, text string }

const (
	roleName      = "name"
	roleCollector = "collector"
)

// keepPhrases finds or makes the phrases of the pending labels.
func (c *change) keepPhrases(rec *Recording) error {
	if len(rec.phrases) > 100_000 { // a cache, not a store
		clear(rec.phrases)
	}
	missing := map[string]map[string]string{roleName: {}, roleCollector: {}} // key to text
	for _, l := range rec.pending {
		for _, p := range []phrase{{roleName, l.Name}, {roleCollector, l.Collector}} {
			if _, ok := rec.phrases[p]; !ok && p.text != "" {
				missing[p.role][indexKey(p.text)] = p.text
			}
		}
	}
	for _, role := range []string{roleName, roleCollector} {
		texts := missing[role]
		keys := make([]string, 0, len(texts))
		for key := range texts {
			keys = append(keys, key)
		}
		slices.Sort(keys) // the same ids in every run
		err := chunks(keys, func(part []string) error {
			in, args := marks(part)
			return c.each(func(scan func(...any) error) error {
				var id int64
				var key string
				if err := scan(&id, &key); err != nil {
					return err
				}
				rec.phrases[phrase{role, texts[key]}] = id
				return nil
			}, "SELECT id, key FROM phrases WHERE role = '"+role+"' AND key IN ("+in+")", args...)
		})
		if err != nil {
			return err
		}
		if err := c.addPhrases(rec, role, keys, texts); err != nil {
			return err
		}
	}
	return nil
}

func (c *change) addPhrases(rec *Recording, role string, keys []string, texts map[string]string) error {
	var rows, index [][]any
	for _, key := range keys {
		p := phrase{role, texts[key]}
		if _, ok := rec.phrases[p]; ok {
			continue
		}
		id, err := c.id("phrases")
		if err != nil {
			return err
		}
		rec.phrases[p] = id
		rows = append(rows, []any{id, role, key, p.text})
		for _, w := range words(p.text) {
			index = append(index, []any{w, id, role})
		}
	}
	if err := c.insert("phrases", "id, role, key, text", rows); err != nil {
		return err
	}
	return c.insert("words", "word, phrase, role", index)
}

// DefaultFound is how many labels Find returns at most if nothing is said.
const DefaultFound = 20

// Find returns the printed labels that a text means, the newest first, at most
// limit of them (0 is DefaultFound). The text is a catalogue number, typed or
// scanned, in figures alone too; an address that ends in one; a collector and
// number, "Almeida 214"; or the beginnings of words of a name or a collector,
// "iris boiss". Accents and capitals do not count.
func (r *Register) Find(ctx context.Context, text string, limit int) ([]Kept, error) {
	if limit <= 0 {
		limit = DefaultFound
	}
	f := finder{s: r.read(ctx), limit: limit}
	kept, err := f.find(text)
	return kept, r.wrap(err)
}

type finder struct {
	s     *session
	limit int
	open  string // a condition that leaves out printings that are not finished
	ids   []int
}

func (f *finder) find(text string) ([]Kept, error) {
	if strings.TrimSpace(text) == "" {
		return nil, errors.New("say what to find: a number, a collector and number, or part of a name")
	}
	var open []int
	err := f.s.each(func(scan func(...any) error) error {
		open = append(open, 0)
		return scan(&open[len(open)-1])
	}, "SELECT id FROM runs WHERE done = 0")
	if err != nil {
		return nil, err
	}
	if len(open) > 0 {
		f.open = " AND run NOT IN (" + integers(open) + ")"
	}
	if err := f.byCatalogue(text); err != nil {
		return nil, err
	}
	onlyFigures := strings.Trim(strings.TrimSpace(text), "0123456789") == ""
	if len(f.ids) == 0 || onlyFigures {
		if err := f.byNumber(text); err != nil {
			return nil, err
		}
	}
	if len(f.ids) == 0 {
		if err := f.byWords(words(text)); err != nil {
			return nil, err
		}
	}
	slices.Sort(f.ids)
	f.ids = slices.Compact(f.ids)
	slices.Reverse(f.ids)
	return f.s.kept(f.ids[:min(f.limit, len(f.ids))])
}

// collect adds the newest labels for which the condition holds.
func (f *finder) collect(condition string, args ...any) error {
	return f.s.each(func(scan func(...any) error) error {
		var id int
		err := scan(&id)
		f.ids = append(f.ids, id)
		return err
	}, "SELECT id FROM labels WHERE "+condition+f.open+" ORDER BY id DESC LIMIT ?", append(args, f.limit)...)
}

// byCatalogue takes the text for a catalogue number, or for an address that has
// one in it.
func (f *finder) byCatalogue(text string) error {
	text = strings.TrimSpace(text)
	all, err := f.s.series()
	if err != nil {
		return err
	}
	keys := []string{catalogKey(text)}
	try := func(s Series, text string) bool {
		one, n, err := parse([]Series{s}, text) // a check character left out is supplied
		if err == nil {
			keys = append(keys, catalogKey(one.Pattern.Format(n)))
		}
		return err == nil
	}
	parts, last := addressParts(text)
	for _, part := range parts {
		keys = append(keys, catalogKey(part))
	}
	for _, s := range all {
		found := try(s, text)
		for _, part := range parts {
			found = try(s, part) || found
		}
		if !found { // figures alone are a number of any series
			try(s, s.Pattern.Code+last)
		}
	}
	slices.Sort(keys)
	for _, key := range slices.Compact(keys) {
		if key == "" {
			continue
		}
		// What the index is made for must be said again for it to be used.
		if err := f.collect("catalog_key = ? AND catalog_key <> ''", key); err != nil {
			return err
		}
	}
	return nil
}

// addressParts returns the parts of a web address that may be a number, and the
// last of its path. Any other text has no parts: "33/2" is a collector's number.
func addressParts(text string) (parts []string, last string) {
	_, rest, ok := strings.Cut(text, "://")
	if !ok {
		i := strings.IndexByte(text, '/')
		if i < 0 || !strings.Contains(text[:i], ".") { // herbarium.example.org/VDOURA-0000123
			return nil, text
		}
		rest = text
	}
	if plain, err := url.PathUnescape(rest); err == nil {
		rest = plain
	}
	path, _, _ := strings.Cut(rest, "?")
	path, _, _ = strings.Cut(path, "#")
	path = strings.TrimRight(path, "/")
	last = path[strings.LastIndexByte(path, '/')+1:]
	fields := strings.FieldsFunc(rest, func(r rune) bool { return strings.ContainsRune("/?&=#", r) })
	if len(fields) < 2 { // the first is the host
		return nil, ""
	}
	return fields[1:], last
}

// numberWords stand before a number and mean nothing else there.
var numberWords = []string{"no", "nr", "n", "num", "number", "numero", "nro", ""}

// mostParts is in how many parts a collector's number may be written: "214 a",
// "CN 97-114".
const mostParts = 3

// byNumber takes one field of the text, or some together, for the collector's
// number and the others for words of the collector or the name.
func (f *finder) byNumber(text string) error {
	fields := strings.Fields(text)
	for i := range fields {
		for size := 1; size <= mostParts && i+size <= len(fields); size++ {
			key := recordKey(strings.Join(fields[i:i+size], ""))
			if key == "" || !strings.ContainsFunc(key, unicode.IsNumber) {
				continue
			}
			before, after := fields[:i:i], fields[i+size:]
			if len(before) > 0 && slices.Contains(numberWords, joined(before[len(before)-1])) {
				before = before[:len(before)-1]
			}
			if err := f.numbered(key, words(strings.Join(append(before, after...), " "))); err != nil {
				return err
			}
		}
	}
	return nil
}

func (f *finder) numbered(key string, said []string) error {
	const condition = "record_key = ? AND record_key <> ''"
	if len(said) == 0 {
		return f.collect(condition, key)
	}
	found, err := f.phrases(said)
	if err != nil || len(found) == 0 {
		return err
	}
	all, got := uint32(1)<<len(said)-1, 0
	rows, err := f.s.rows("SELECT id, COALESCE(collector, 0), COALESCE(name, 0) FROM labels WHERE "+condition+f.open+" ORDER BY id DESC", key)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() && got < f.limit {
		var id int
		var collector, name int64
		if err := rows.Scan(&id, &collector, &name); err != nil {
			return err
		}
		if found[collector].mask|found[name].mask == all {
			f.ids = append(f.ids, id)
			got++
		}
	}
	return rows.Err()
}

// mostWords is how many words of a search are looked at.
const mostWords = 16

// A hit says which of the words that were searched a phrase has.
type hit struct {
	mask uint32
	role string
}

// phrases returns the phrases that have words beginning with what was said.
func (f *finder) phrases(said []string) (map[int64]hit, error) {
	found := map[int64]hit{}
	if len(said) > mostWords {
		return nil, errors.New("more words than can be searched; say less")
	}
	for i, w := range said {
		err := f.s.each(func(scan func(...any) error) error {
			var id int64
			var role string
			if err := scan(&id, &role); err != nil {
				return err
			}
			found[id] = hit{found[id].mask | 1<<i, role}
			return nil
		}, "SELECT phrase, role FROM words WHERE word >= ? AND word < ?", w, w+"\U0010FFFF")
		if err != nil {
			return nil, err
		}
	}
	return found, nil
}

// fewPhrases is up to how many phrases are looked up one by one. Beyond, so
// many labels have one of them that the newest are found by walking back.
const fewPhrases = 100

// byWords finds labels whose name and collector together have all words.
func (f *finder) byWords(said []string) error {
	if len(said) == 0 {
		return nil
	}
	found, err := f.phrases(said)
	if err != nil {
		return err
	}
	all := uint32(1)<<len(said) - 1
	whole := map[string][]int64{}             // phrases with all words, by role
	partly := map[string]map[uint32][]int64{} // by role and words
	for id, h := range found {
		if h.mask == all {
			whole[h.role] = append(whole[h.role], id)
		}
		if partly[h.role] == nil {
			partly[h.role] = map[uint32][]int64{}
		}
		partly[h.role][h.mask] = append(partly[h.role][h.mask], id)
	}
	for _, role := range []string{roleName, roleCollector} {
		if err := f.phrase(role, whole[role], ""); err != nil {
			return err
		}
	}
	// A name with some of the words and a collector with the others.
	for mask, names := range partly[roleName] {
		var collectors []int64
		for other, ids := range partly[roleCollector] {
			if mask|other == all && mask != all && other != all {
				collectors = append(collectors, ids...)
			}
		}
		if len(collectors) == 0 {
			continue
		}
		if len(names) <= fewPhrases || len(names) <= len(collectors) {
			err = f.phrase(roleName, names, " AND collector IN ("+integers(collectors)+")")
		} else {
			err = f.phrase(roleCollector, collectors, " AND name IN ("+integers(names)+")")
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// phrase collects the newest labels that have one of the phrases.
func (f *finder) phrase(role string, ids []int64, and string) error {
	if len(ids) > fewPhrases {
		// The sign keeps the database from sorting all that fit.
		return f.collect("+" + role + " IN (" + integers(ids) + ")" + and)
	}
	for _, id := range ids {
		if err := f.collect(role+" = ?"+and, id); err != nil {
			return err
		}
	}
	return nil
}
