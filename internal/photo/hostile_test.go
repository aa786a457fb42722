package photo

import (
	"bytes"
	"context"
	"errors"
	"math/rand/v2"
	"testing"
	"time"
)

// Bytes changed at random anywhere in a HEIC give a picture or a refusal, soon.
func TestHostileHEIC(t *testing.T) {
	lab := NewLab(Limits{})
	random := rand.New(rand.NewPCG(3, 3))
	opened, refusals := 0, 0
	for range 60 {
		file := bytes.Clone(read(t, "small.heic"))
		for range 1 + random.IntN(6) {
			file[random.IntN(len(file))] = byte(random.Uint32())
		}
		ctx, cancel := context.WithTimeout(context.Background(), 30*time.Second)
		_, err := lab.Open(ctx, bytes.NewReader(file))
		cancel()
		var refused *Refused
		switch {
		case err == nil:
			opened++
		case errors.As(err, &refused):
			refusals++
		default:
			t.Fatal(err)
		}
	}
	if opened == 0 || refusals == 0 {
		t.Errorf("%d opened, %d refused: the changes prove nothing", opened, refusals)
	}
}

// The size in the codec's own parameters counts where it is larger than the container's:
// read from a file made by libheif, and with the number of its columns changed.
func TestHEVCSize(t *testing.T) {
	file := read(t, "small.heic")
	at := bytes.Index(file, []byte("hvcC"))
	w, h := hevcSize(file[at+4:])
	if w < 320 || w > 384 || h < 240 || h > 256 {
		t.Errorf("%d x %d, want 320 x 240, or a little more: whole blocks", w, h)
	}
	for n := range 60 {
		hevcSize(file[at+4 : at+4+n])
	}
}

func TestGolomb(t *testing.T) {
	// Table 9-2 of ITU-T H.265: 1 -> 0, 010 -> 1, 011 -> 2, 00100 -> 3, 00111 -> 6, 0001000 -> 7.
	r := bitReader{b: []byte{0b10100110, 0b01000011, 0b10001000, 0b10000000}}
	for _, want := range []uint64{0, 1, 2, 3, 6, 7} {
		if got := r.golomb(); got != want {
			t.Errorf("%d, want %d", got, want)
		}
	}
	if r := (bitReader{b: []byte{0, 0, 0, 0, 0, 0}}); r.golomb() != 0 || !r.ended() {
		t.Error("zeros have no end")
	}
}
