package trade

// An index finds what was kept under a sum, as a map would at twice the time and
// half as much memory again: the rules that look at the whole table ask it for every
// record. What is kept stands in chunks, which never move.
type index[V any] struct {
	slots  []slot // a power of two of them, at most three in four taken
	chunks [][]V
	n      int
}

type slot struct {
	key uint64
	at  int32 // of the value, counted from 1; 0 is an empty slot
}

const (
	firstSlots = 64
	chunkSize  = 128
)

// find returns the value kept under key, nil if there is none. It may be changed.
func (x *index[V]) find(key uint64) *V {
	if len(x.slots) == 0 {
		return nil
	}
	mask := uint64(len(x.slots) - 1)
	for i := key & mask; x.slots[i].at != 0; i = (i + 1) & mask {
		if x.slots[i].key == key {
			return x.at(x.slots[i].at - 1)
		}
	}
	return nil
}

func (x *index[V]) at(i int32) *V { return &x.chunks[i/chunkSize][i%chunkSize] }

// add keeps a value under a key that has none.
func (x *index[V]) add(key uint64, v V) *V {
	if 4*(x.n+1) > 3*len(x.slots) {
		x.grow()
	}
	if x.n%chunkSize == 0 {
		x.chunks = append(x.chunks, make([]V, chunkSize))
	}
	x.n++
	x.place(key, int32(x.n))
	p := x.at(int32(x.n - 1))
	*p = v
	return p
}

func (x *index[V]) place(key uint64, at int32) {
	mask := uint64(len(x.slots) - 1)
	i := key & mask
	for x.slots[i].at != 0 {
		i = (i + 1) & mask
	}
	x.slots[i] = slot{key, at}
}

func (x *index[V]) grow() {
	old := x.slots
	x.slots = make([]slot, max(firstSlots, 2*len(old)))
	for _, s := range old {
		if s.at != 0 {
			x.place(s.key, s.at)
		}
	}
}

// all goes through the values in the order in which they came.
func (x *index[V]) all(yield func(*V) bool) {
	for i := range int32(x.n) {
		if !yield(x.at(i)) {
			return
		}
	}
}
