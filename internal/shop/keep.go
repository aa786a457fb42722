package shop

import "time"

// Keep says how long things are kept; then the program lets go of them by itself, within
// the hour. 0 days is for good.
type Keep struct {
	// Talks go with their leads, numbers, photos and history, so long after the last word in
	// them and the last thing that staff did.
	Talks Span `yaml:"talks"`
	// Photos go so long after they came; that there was one stays with the lead.
	Photos Span `yaml:"photos"`
	// RawMail is mail as it came, with its headers; its words and photos stay with the talk.
	RawMail Span `yaml:"raw_mail"`
}

const day = Span(24 * time.Hour)

// defaultKeep lets go of no lead unasked: how long one is needed is the owner's to say.
func defaultKeep() Keep { return Keep{RawMail: 30 * day} }

// leastKept is the shortest time that a talk or photo is kept: a shorter one could end a
// talk that still goes on.
const leastKept = 14 * day

func (f *File) checkKeep(b *binder) {
	for path, kept := range map[string]Span{"keep.talks": f.Keep.Talks, "keep.photos": f.Keep.Photos} {
		if kept != 0 && kept < leastKept {
			b.wrongAt(path, "could end while the customer still writes: write 14 days or more, or 0 days for good")
		}
	}
}
