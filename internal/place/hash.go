package place

import "bytes"

// The index is an open hash table over the keys; namesakes hang on one slot, the
// largest first.

const (
	hashStart = 14695981039346656037 // FNV-1a, 64 bits
	hashPrime = 1099511628211
)

func hashMore(h uint64, b []byte) uint64 {
	for _, c := range b {
		h = (h ^ uint64(c)) * hashPrime
	}
	return h
}

// find gives the largest town of a key, -1 where there is none.
func (t *table) find(key []byte) int32 { return t.findHashed(key, hashMore(hashStart, key)) }

func (t *table) findHashed(key []byte, h uint64) int32 {
	return t.slots[t.slot(key, h)]
}

// slot is where a key is or belongs.
func (t *table) slot(key []byte, h uint64) uint64 {
	mask := uint64(len(t.slots) - 1)
	i := (h ^ h>>32) & mask
	for t.slots[i] >= 0 && !bytes.Equal(t.keyAt(t.slots[i]), key) {
		i = (i + 1) & mask
	}
	return i
}

// index fills the slots: at most half full, so that a miss ends soon.
func (t *table) index() {
	size := 1
	for size < 2*len(t.towns) {
		size *= 2
	}
	t.slots = make([]int32, size)
	for i := range t.slots {
		t.slots[i] = -1
	}
	for i := range t.towns {
		key := t.keyAt(int32(i))
		t.enlist(t.slot(key, hashMore(hashStart, key)), int32(i))
	}
}

// enlist hangs a town on its slot behind the larger ones.
func (t *table) enlist(slot uint64, i int32) {
	before := int32(-1)
	at := t.slots[slot]
	for at >= 0 && t.towns[at].population >= t.towns[i].population {
		before, at = at, t.towns[at].next
	}
	t.towns[i].next = at
	if before < 0 {
		t.slots[slot] = i
	} else {
		t.towns[before].next = i
	}
}
