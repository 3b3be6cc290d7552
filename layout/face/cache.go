package face

import (
	"hash/maphash"
	"strings"
	"sync"

	"cornerslip/layout"
)

type key struct {
	text  string
	style layout.Style
}

const (
	shards   = 16
	perShard = 1024 // words; a shard holds at most twice as many
	longest  = 256  // bytes; longer texts are hardly ever met again
)

// A cache keeps words. Each shard has two generations: what is still in use
// moves from the old one to the young one, and when that is full the old one
// is let go.
type cache [shards]struct {
	mu         sync.RWMutex
	young, old map[key]*Word
}

var seed = maphash.MakeSeed()

func shard(k key) uint64 { return maphash.String(seed, k.text) % shards }

func (c *cache) get(k key) *Word {
	if len(k.text) > longest {
		return nil
	}
	s := &c[shard(k)]
	s.mu.RLock()
	w := s.young[k]
	old := w == nil && len(s.old) > 0
	if old {
		w = s.old[k]
	}
	s.mu.RUnlock()
	if old && w != nil {
		c.put(k, w)
	}
	return w
}

func (c *cache) put(k key, w *Word) {
	if len(k.text) > longest {
		return
	}
	s := &c[shard(k)]
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.young) >= perShard {
		s.old, s.young = s.young, nil
	}
	if s.young == nil {
		s.young = make(map[key]*Word)
	}
	k.text = strings.Clone(k.text) // it may be part of a whole table
	s.young[k] = w
}
