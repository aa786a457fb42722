package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// knownTown leaves out a town that is that of the known place: "how long is shipping to Duluth?"
// tells nothing new, and must not cost the ZIP code or the yes before it.
func (t *turn) knownTown(r reading.Reading, text string, asked []fitcheck.Topic) reading.Reading {
	known, said := t.talk.Place(), ""
	r.Facts = slices.DeleteFunc(slices.Clone(r.Facts), func(f reading.Fact) bool {
		p, ok := f.Value.(fitcheck.Place)
		if ok = ok && p.City != "" && p.ZIP == "" && (p.State == "" || p.State == known.State) && townOf(known, p.City); ok {
			said = f.Said
		}
		return ok
	})
	r.Unclear = slices.DeleteFunc(slices.Clone(r.Unclear), func(u reading.Unclear) bool {
		ok := u.Topic != nil && *u.Topic == fitcheck.TopicPlace && u.Why == reading.WhyPlace && known.State != "" && townOf(known, u.Said)
		if ok {
			said = u.Said
		}
		return ok
	})
	if said == "" || !slices.Contains(asked, fitcheck.TopicConfirm) {
		return r
	}
	without := regexp.MustCompile(`(?i)(?:\b(?:to|in|near|a|en|para)\s+)?`+regexp.QuoteMeta(said)).ReplaceAllString(text, "")
	return t.read(without, asked)
}

// townOf says whether the name is the place's town, or that of its ZIP code.
func townOf(p fitcheck.Place, name string) bool {
	e, ok := place.ByZIP(p.ZIP)
	return p.City != "" && place.SameName(p.City, name) || ok && place.SameName(e.City, name)
}
