package conversation

import "example.com/intake-bot/internal/fitcheck"

// PhotoLook is what was seen of one photo or file that a customer sent: why it may be of
// little use, or was not taken at all.
type PhotoLook string

// Photos that are kept, and may be of little use.
const (
	PhotoTooDark  PhotoLook = "too_dark"
	PhotoBlurred  PhotoLook = "blurred"
	PhotoTooSmall PhotoLook = "too_small"
	PhotoSame     PhotoLook = "same" // one that was sent before
)

// Files that are not taken. They do not count among a message's photos.
const (
	PhotoVideo    PhotoLook = "video"
	PhotoDocument PhotoLook = "document"
	PhotoAnimated PhotoLook = "animated"
	PhotoTooLarge PhotoLook = "too_large"
	PhotoBroken   PhotoLook = "broken"
	PhotoOther    PhotoLook = "other"
)

// Kept says whether the picture was kept all the same.
func (l PhotoLook) Kept() bool {
	switch l {
	case PhotoTooDark, PhotoBlurred, PhotoTooSmall, PhotoSame:
		return true
	}
	return false
}

// ackLooks says a kind word about a photo that is of little use, or could not be opened,
// and how a better one is made: once for each of the two in a talk.
func (t *turn) ackLooks() (said bool) {
	m := &t.talk.Memory
	for _, look := range t.heard.looks {
		told := "photo_refused"
		if look.Kept() {
			told = "photo_better"
		}
		key := "photo." + string(look)
		if m.Raised[told] > 0 || !t.book.Has(key) {
			continue
		}
		m.Raised[told]++
		t.say.add(t.line(key, 0, nil))
		said = true
	}
	return said
}

// HasPhotos says whether any photo came so far.
func (t Talk) HasPhotos() bool {
	return t.Value(fitcheck.TopicPhotos, 0) != nil
}
