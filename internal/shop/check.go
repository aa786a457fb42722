package shop

import (
	"fmt"
	"sort"
	"time"
)

// check looks at what no single setting shows: order, duplicates, what must go together.
func (f *File) check(b *binder) {
	f.checkHours(b)
	f.checkTolerances(b)
	f.checkStock(b)
	f.checkAddress(b)
	f.checkPrices(b)
	f.checkShipping(b)
	f.checkTimes(b)
	f.checkKeep(b)
	f.checkAnswers(b)
}

func (f *File) checkHours(b *binder) {
	if f.Zone.Location == nil || !b.has("hours") {
		return
	}
	for d := range 7 {
		if len(f.Hours.day(time.Weekday(d))) > 0 {
			return
		}
	}
	// A mistake in a day leaves it closed; that one has been told already.
	for _, m := range b.mistakes {
		if len(m.Setting) > 6 && m.Setting[:6] == "hours." {
			return
		}
	}
	b.wrongAt("hours", "is never open: write at least one day, like monday: 8:00-17:00")
}

// rising reports settings that don't grow from each to the next.
func rising(b *binder, path string, names []string, values []Inches) {
	for i := 1; i < len(values); i++ {
		if values[i] < values[i-1] {
			b.wrongAt(path+"."+names[i], "%s is less than %s, %s: write it as much or more", values[i], names[i-1], values[i-1])
		}
	}
}

func (f *File) checkTolerances(b *binder) {
	g := f.Tolerances.CapGap
	rising(b, "tolerances.cap_gap", []string{"sound_from", "sound_to", "loose_over"}, []Inches{g.SoundFrom, g.SoundTo, g.LooseOver})
	if g.AimFor < g.SoundFrom || g.AimFor > g.SoundTo {
		b.wrongAt("tolerances.cap_gap.aim_for", "%s is not a sound gap: write one from %s to %s", g.AimFor, g.SoundFrom, g.SoundTo)
	}
	r := f.Tolerances.Grip
	rising(b, "tolerances.grip", []string{"short_under", "sound_from", "sound_to", "long_over"},
		[]Inches{r.ShortUnder, r.SoundFrom, r.SoundTo, r.LongOver})
	for name, s := range map[string]Sides{"dome": f.Making.Dome, "unit": f.Making.Unit} {
		rising(b, "making."+name, []string{"smallest", "largest"}, []Inches{s.Smallest, s.Largest})
	}
}

func (f *File) checkStock(b *binder) {
	seen := map[string]int{}
	for i, s := range f.Stock {
		path := fmt.Sprintf("stock[%d]", i+1)
		if first, twice := seen[s.Code]; twice && s.Code != "" {
			b.wrongAt(path+".code", "%q is the code of stock[%d] too: give each its own", s.Code, first)
		} else {
			seen[s.Code] = i + 1
		}
		if s.Layers > 0 && len(s.Colors) > 0 && len(s.Colors) != s.Layers {
			b.wrongAt(path+".colors", "has %d for layers: %d: write one for each layer, from outside to inside", len(s.Colors), s.Layers)
		}
		if s.Part == "unit" && s.Finish == "" && !b.has(path+".finish") {
			b.wrongAt(path+".finish", "is missing: a unit has metal; write mill, bronze_anodized, bronze_powder_coat or other")
		}
	}
}

// The bot answers within minutes or it is of no use; a carrier's webhook has long been
// answered by then.
const longestWait = Span(10 * time.Minute)

func (f *File) checkTimes(b *binder) {
	if f.Replies.AtMost < f.Replies.Quiet {
		b.wrongAt("replies.at_most", "is shorter than quiet: write it as long or longer")
	}
	if f.Replies.AtMost > longestWait {
		b.wrongAt("replies.at_most", "keeps people waiting: write 10m or less")
	}
	last := Span(time.Hour)
	for i, after := range f.Reminders.After {
		path := fmt.Sprintf("reminders.after[%d]", i+1)
		if after < last {
			b.wrongAt(path, "comes too soon: write an hour or more, each longer than the one before")
		}
		last = after + 1
	}
	if len(f.Reminders.After) > 2 {
		b.wrongAt("reminders.after", "has %d reminders: write two at most", len(f.Reminders.After))
	}
	if f.Reminders.GiveUp < last {
		b.wrongAt("reminders.give_up", "comes before the last reminder: write a longer time")
	}
}

// languages are those that the bot speaks.
var languages = map[string]bool{"en": true, "es": true}

func (f *File) checkAnswers(b *binder) {
	for i, a := range f.Answers {
		path := fmt.Sprintf("answers[%d].answer", i+1)
		if b.has(path) && a.Answer["en"] == "" && !b.has(path+".en") {
			b.wrongAt(path, "has no English text: write en: and the answer")
		}
		for _, language := range sortedKeys(a.Answer) {
			if !languages[language] {
				b.wrongAt(path+"."+language, "is not a language of the bot: write en or es")
			}
		}
	}
}

func (f *File) checkWording(b *binder, check WordingCheck) {
	for _, key := range sortedKeys(f.Wording) {
		for _, language := range sortedKeys(f.Wording[key]) {
			path := "wording." + key + "." + language
			text := f.Wording[key][language]
			if text == "" {
				continue // told already
			}
			if err := check(key, language, text); err != nil {
				b.wrongAt(path, "%s", err)
			}
		}
	}
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}
