package email

import (
	"errors"
)

// Limits bound what is read of one mail. Zero fields mean the defaults.
type Limits struct {
	Bytes      int64 // of the whole mail, encoded: 35 MiB, what large providers let through
	Header     int64 // of one header: 256 KiB
	Depth      int   // of parts within parts: 12
	Parts      int   // 200
	Text       int   // bytes of one text part that are looked at: 512 KiB
	Photos     int   // 20
	PhotoBytes int   // of one photo, decoded: 25 MiB
}

// ErrTooLarge and ErrMalformed are why a mail can't be read at all.
var (
	ErrTooLarge  = errors.New("mail too large")
	ErrMalformed = errors.New("mail malformed")
)

func (l Limits) orDefault() Limits {
	def := func(v *int, d int) {
		if *v <= 0 {
			*v = d
		}
	}
	if l.Bytes <= 0 {
		l.Bytes = 35 << 20
	}
	if l.Header <= 0 {
		l.Header = 256 << 10
	}
	def(&l.Depth, 12)
	def(&l.Parts, 200)
	def(&l.Text, 512<<10)
	def(&l.Photos, 20)
	def(&l.PhotoBytes, 25<<20)
	return l
}
