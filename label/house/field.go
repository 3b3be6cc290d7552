package house

import (
	"fmt"
	"iter"
	"maps"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A field is what one key may hold, read from the tags of the structs so that
// a key and its limits stand in one place.
type field struct {
	key      string
	index    []int // of reflect's FieldByIndex
	kind     reflect.Kind
	list     bool
	one      []string // the values it may have
	min, max float64  // limits of a number; both 0 for none
}

// fields are the keys, "label.width_mm" and so on.
var fields = func() map[string]field {
	m := map[string]field{}
	var visit func(t reflect.Type, prefix string, index []int)
	visit = func(t reflect.Type, prefix string, index []int) {
		for i := range t.NumField() {
			sf := t.Field(i)
			name := sf.Tag.Get("toml")
			if name == "" {
				continue
			}
			f := field{key: prefix + name, index: append(slices.Clone(index), i), kind: sf.Type.Kind()}
			if f.kind == reflect.Struct {
				visit(sf.Type, f.key+".", f.index)
				continue
			}
			if f.kind == reflect.Slice {
				f.list, f.kind = true, sf.Type.Elem().Kind()
			}
			if one := sf.Tag.Get("one"); one != "" {
				f.one = strings.Split(one, "|")
			}
			if s := sf.Tag.Get("min"); s != "" {
				f.min = number(s)
				f.max = number(sf.Tag.Get("max"))
			}
			m[f.key] = f
		}
	}
	visit(reflect.TypeFor[House](), "", nil)
	return m
}()

func number(s string) float64 {
	n, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic("house: a limit is no number: " + s)
	}
	return n
}

// Keys returns every key of a house file, sorted; the keys of the tables
// words.own and check.severity are the user's own and not among them.
func Keys() []string { return slices.Sorted(maps.Keys(fields)) }

// values returns the field's value, or each of a list.
func (f field) values(h *House) []any {
	v := reflect.ValueOf(h).Elem().FieldByIndex(f.index)
	if v.Kind() == reflect.Map {
		return nil // looked at key by key
	}
	if !f.list {
		return []any{v.Interface()}
	}
	var all []any
	for i := range v.Len() {
		all = append(all, v.Index(i).Interface())
	}
	return all
}

// fault says what is wrong with a value, "" if nothing is.
func (f field) fault(v any) (why, suggest string) {
	var n float64
	switch v := v.(type) {
	case string:
		if f.one != nil && !slices.Contains(f.one, v) {
			return fmt.Sprintf("%q is not one of %s", v, choice(f.one, strconv.Quote)), quoted(nearest(v, f.one))
		}
		for _, r := range v {
			if r < 0x20 || r == 0x7f {
				return fmt.Sprintf("holds the control character U+%04X: take it out", r), ""
			}
		}
		return "", ""
	case int:
		if f.one != nil && !slices.Contains(f.one, strconv.Itoa(v)) {
			return fmt.Sprintf("%d is not one of %s", v, choice(f.one, func(s string) string { return s })), ""
		}
		n = float64(v)
	case float64:
		n = v
	default:
		return "", ""
	}
	if f.min == 0 && f.max == 0 {
		return "", ""
	}
	if math.IsNaN(n) || n < f.min || n > f.max {
		return fmt.Sprintf("%g is not from %g to %g%s", n, f.min, f.max, f.unit()), ""
	}
	return "", ""
}

// form says how a value of the field is written.
func (f field) form() string {
	one := map[reflect.Kind]string{
		reflect.String: `text in quotes, "like this"`, reflect.Bool: "true or false",
		reflect.Int: "a whole number", reflect.Float64: "a number" + in(f.unit()), reflect.Map: "a table of keys and values",
	}[f.kind]
	switch {
	case f.list && f.kind == reflect.String:
		return `a list of texts, ["one", "two"]`
	case f.list:
		return "a list of numbers" + in(f.unit()) + ", [74, 99]"
	case f.one != nil && f.kind == reflect.String:
		return choice(f.one, strconv.Quote)
	}
	return one
}

func (f field) unit() string {
	switch {
	case strings.HasSuffix(f.key, "_mm"):
		return " mm"
	case strings.HasSuffix(f.key, "_pt"):
		return " pt"
	case strings.HasSuffix(f.key, "_percent"):
		return " %"
	case strings.HasSuffix(f.key, "_days"):
		return " days"
	case strings.HasSuffix(f.key, "_celsius"):
		return " °C"
	}
	return ""
}

func in(unit string) string {
	if unit == "" {
		return ""
	}
	return ", in" + unit
}

// choice writes "a, b or c".
func choice(words []string, quote func(string) string) string {
	var b strings.Builder
	for i, w := range words {
		switch {
		case i == 0:
		case i == len(words)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		b.WriteString(quote(w))
	}
	return b.String()
}

func quoted(s string) string {
	if s == "" {
		return ""
	}
	return strconv.Quote(s)
}

func mapKeys(m map[string]string) iter.Seq[string] { return maps.Keys(m) }

// nearKey returns the known key, or table, that an unknown one was meant for.
// The same last part in another table comes before a similar word.
func nearKey(key string) string {
	known := Keys()
	tables := map[string]bool{}
	for _, k := range known {
		tables[k[:strings.LastIndex(k, ".")]] = true
	}
	last := key[strings.LastIndex(key, ".")+1:]
	var leaves []string
	for _, k := range known {
		leaf := k[strings.LastIndex(k, ".")+1:]
		if leaf == last && strings.Contains(key, ".") {
			leaves = append(leaves, k)
		}
	}
	if len(leaves) == 1 {
		return leaves[0]
	}
	if !strings.Contains(key, ".") {
		if t := nearest(key, slices.Sorted(maps.Keys(tables))); t != "" {
			return "[" + t + "]"
		}
		for _, k := range known { // a key written before any table
			if strings.HasSuffix(k, "."+key) {
				return k
			}
		}
	}
	if near := nearest(key, known); near != "" {
		return near
	}
	best := ""
	for _, k := range known {
		if leaf := k[strings.LastIndex(k, ".")+1:]; best == "" && nearest(last, []string{leaf}) != "" {
			best = k
		}
	}
	return best
}

// nearest returns the word of the list that is closest to s, "" if none is
// near: one slip in four letters, and one more.
func nearest(s string, words []string) string {
	best, at := "", 2+utf8.RuneCountInString(s)/4
	for _, w := range words {
		if strings.EqualFold(w, s) {
			return w
		}
		if d := distance(strings.ToLower(s), strings.ToLower(w)); d < at {
			best, at = w, d
		}
	}
	return best
}

// distance counts letters put in, left out or changed, after Levenshtein.
func distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(x); i++ {
		diagonal := row[0]
		row[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			diagonal, row[j] = row[j], min(row[j]+1, row[j-1]+1, diagonal+cost)
		}
	}
	return row[len(y)]
}
