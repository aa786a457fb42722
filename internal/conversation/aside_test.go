package conversation

import "testing"

// What answers nothing is taken as what it is, and not for a misunderstanding; messages as
// people write them, invented.
func TestSmallTalk(t *testing.T) {
	for _, c := range []struct{ text, kind string }{
		{"brb", "wait"}, {"let me measure", "wait"}, {"un momento", "wait"},
		{"He'll measure Sunday", "later"}, {"my husband will measure it tomorrow", "later"}, {"mi esposo lo mide el domingo", "later"}, {"will get that tonight", "later"},
		{"ill have to go out and look", "look"}, {"he has to go back up again for that. one minute", "look"}, {"hang on let me get the ladder", "look"},
		{"gotta ask my husband", "look"}, {"on my way out to look", "look"}, {"voy a checar y le aviso", "look"}, {"ahorita subo", "look"},
		{"can you come out and look at it", ""}, {"i can't get up there to measure", ""}, {"let me see the price first", "wait"}, {"i need to see samples", ""},
		{"someone has to come look at it", ""}, {"no puedo subir a medir", ""},
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
		case toLookWords:
			kind = "look"
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
