// Package photo takes in the pictures that people send of their skylights, from
// anybody's phone, safely: a photo shows staff what words can't, but a file from a
// stranger can also be huge, broken, hostile, or tell where its sender lives.
//
// A Lab opens a file by what it holds, never by its name: it looks at the size before
// at any pixel, turns the picture upright, shrinks it, and writes it anew, so that
// nothing but the pixels is left. It judges by computation whether the picture is too
// dark, too blurred or too small to be of use, and whether two are the same. A Fetcher
// gets pictures from the carrier that keeps them, and from nowhere else.
package photo

// Photo is a picture made safe.
type Photo struct {
	Kind          Kind   // what it came as
	JPEG          []byte // the picture itself: upright, shrunk, without metadata
	Width, Height int    // of JPEG
	Thumb         []byte // a small JPEG of it
	SHA256        [32]byte
	// SHA256 is of the file as it came: the same file again has the same.
	Likeness Likeness
	Look     Look
	Troubles []Trouble // why it may be of little use; the picture is kept all the same
}

// Limits bound what one picture may cost. The zero value of a field means its default.
type Limits struct {
	Bytes  int64 // of the file; default 25 MB, what mail servers take
	Pixels int64 // width times height; default 64 million, above nearly all phones
	Memory int64 // estimated bytes while decoding; default 1 GiB
	Side   int   // longer side of the stored picture; default 2048
	Thumb  int   // longer side of the thumbnail; default 320
}

func (l Limits) orDefault() Limits {
	set(&l.Bytes, 25_000_000)
	set(&l.Pixels, 64_000_000)
	set(&l.Memory, 1<<30)
	set(&l.Side, 2048)
	set(&l.Thumb, 320)
	return l
}

func set[N int | int64](field *N, value N) {
	if *field <= 0 {
		*field = value
	}
}
