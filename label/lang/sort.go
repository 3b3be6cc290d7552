package lang

import (
	"slices"
	"sync"

	"golang.org/x/text/collate"
	"golang.org/x/text/language"
)

// collators keeps a pool of collators for each language: a collator serves one
// caller at a time, and making one takes longer than the sorting.
var collators sync.Map // Tag → *sync.Pool

// SortFunc puts items in the alphabetical order of a language by their text:
// accents and case part words that are else alike, signs count for nothing
// before letters. Latin sorts as the root of the Unicode Collation Algorithm.
// Items of equal text keep their order.
func SortFunc[T any](t Tag, items []T, text func(T) string) {
	if len(items) < 2 {
		return
	}
	p, ok := collators.Load(t)
	if !ok {
		p, _ = collators.LoadOrStore(t, &sync.Pool{New: func() any {
			tag, err := language.Parse(string(t))
			if err != nil || t == Latin {
				tag = language.Und
			}
			return collate.New(tag)
		}})
	}
	pool := p.(*sync.Pool)
	c := pool.Get().(*collate.Collator)
	defer pool.Put(c)
	slices.SortStableFunc(items, func(a, b T) int { return c.CompareString(text(a), text(b)) })
}
