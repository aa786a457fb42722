package conversation

import "testing"

// What answers nothing is taken as what it is, and not for a misunderstanding; messages as
// people write them, invented.
func TestSmallTalk(t *testing.T) {
	for _, c := range []struct{ text, kind string }{
		{"brb", "wait"}, {"let me measure", "wait"}, {"un momento", "wait"},
		{"He'll measure Sunday", "later"}, {"my husband will measure it tomorrow", "later"}, {"mi esposo lo mide el domingo", "later"}, {"will get that tonight", "later"},
		{"tomorrow", ""}, {"can you send it tomorrow?", ""}, {"send me two by Friday?", ""},
		{"thanks so much", "thanks"}, {"ok", "thanks"}, {"gracias", "thanks"},
		{"need a dome", "errand"}, {"hi, i'm looking for a replacement skylight", "errand"}, {"do you guys do skylights", "errand"},
		{"busco un domo nuevo", "errand"}, {"I have a couple of old bubble skylights", "errand"},
		{"i dont get what the dome is", ""}, {"what's a curb", ""}, {"purple", ""},
		{"the roof is steep and we have a long story to tell about how this skylight came to be", ""},
	} {
		kind := ""
		switch smallTalk(c.text) {
		case waitWords:
			kind = "wait"
		case laterWords:
			kind = "later"
		case thankWords:
			kind = "thanks"
		case errandWords:
			kind = "errand"
		}
		if kind != c.kind {
			t.Errorf("%q is %q, want %q", c.text, kind, c.kind)
		}
	}
}
