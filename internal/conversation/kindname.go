package conversation

import (
	"maps"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// lookWords are the words for each look by which a kind may be called.
var lookWords = map[string][]string{
	"round":   {"round", "rounds", "circular", "redondo", "redonda", "redondos", "redondas"},
	"square":  {"square", "squares", "cuadrado", "cuadrada", "cuadrados", "cuadradas"},
	"long":    {"long", "longer", "rectangular", "rectangle", "rectangles", "oblong", "largos", "largas", "rectangulares", "skinny", "narrow", "angostos", "angostas"},
	"pyramid": {"pyramid", "pyramids", "piramide", "piramides"},
	"barrel":  {"barrel", "barrels", "barril", "barriles"},
	"clear":   {"clear", "transparente", "transparentes"},
	"white":   {"white", "blanco", "blanca", "blancos", "blancas"},
	"bronze":  {"bronze", "bronce"},
	"big":     {"big", "bigger", "large", "larger", "biggest", "huge", "grande", "grandes"},
	"small":   {"small", "smaller", "little", "smallest", "tiny", "wee", "chico", "chica", "chicos", "chicas", "pequeno", "pequena", "pequenos", "pequenas"},
}

// kindNames are the words that tell the kinds of a talk apart by their shape or how large they
// are, where just one of them has it; where there is but one, those that would be another's.
func (t *turn) kindNames() map[string]int {
	if t.talk.UnitCount() == 1 {
		return t.otherLook()
	}
	if t.talk.UnitCount() < 2 {
		return nil
	}
	looks := map[string][]int{}
	var areas []float64
	for i, u := range t.talk.Units() {
		if c := u.Color; c.Outer != "" && (c.Inner == "" || c.Inner == c.Outer) {
			looks[string(c.Outer)] = append(looks[string(c.Outer)], i+1)
		}
		size := lookSize(u)
		if !size.Complete() {
			size = t.heldSize(i + 1)
		}
		looks[u.Profile] = append(looks[u.Profile], i+1)
		areas = append(areas, area(size))
		switch {
		case u.Outline == fitcheck.OutlineRound || size.Diameter > 0:
			looks["round"] = append(looks["round"], i+1)
		case size.Complete() && size.Width == size.Length, u.Outline == fitcheck.OutlineRectangle && !size.Complete():
			looks["square"] = append(looks["square"], i+1)
		case size.Complete():
			looks["long"] = append(looks["long"], i+1)
		}
	}
	if len(looks["square"]) == 0 && len(looks["long"]) == 1 {
		looks["square"] = looks["long"] // not the round one
	} else if len(looks["long"]) == 0 {
		looks["long"] = looks["square"]
	}
	if !slices.Contains(areas, 0) {
		looks["big"], looks["small"] = extreme(areas, 1), extreme(areas, -1)
	}
	names := t.looksTold()
	if unit := onlyDome(t.talk.Units()); unit > 0 {
		names["dome"] = unit
	}
	for look, words := range lookWords {
		for _, w := range words {
			if units := looks[look]; len(units) == 1 {
				names[w] = units[0]
			}
		}
	}
	return names
}

// onlyDome is the one kind that is a dome where all others are of another shape, 0 for none.
func onlyDome(units []fitcheck.Unit) int {
	found := 0
	for i, u := range units {
		switch u.Profile {
		case fitcheck.ProfilePyramid, fitcheck.ProfileBarrel, fitcheck.ProfileFlat:
			continue
		}
		if found > 0 {
			return 0
		}
		found = i + 1
	}
	return found
}

// looksTold are the words for the looks that kinds were said to have, where just one has it.
func (t *turn) looksTold() map[string]int {
	names, twice := map[string]int{}, map[string]bool{}
	for unit := 1; unit <= t.talk.UnitCount(); unit++ {
		for _, look := range strings.Fields(t.talk.Memory.Looks[unit]) {
			if look == "rectangle" {
				look = "long"
			}
			for _, w := range lookWords[look] {
				twice[w] = twice[w] || names[w] > 0
				names[w] = unit
			}
		}
	}
	maps.DeleteFunc(names, func(w string, _ int) bool { return twice[w] })
	return names
}

// lookSize is the size that shows how large a kind is.
func lookSize(u fitcheck.Unit) fitcheck.Size {
	for _, topic := range []fitcheck.Topic{fitcheck.TopicPlasticSize, fitcheck.TopicCurbOutside, fitcheck.TopicRetainerOpening, fitcheck.TopicCurbInside, fitcheck.TopicFrameInside} {
		if s := u.SizeOf(topic); s != nil && s.Complete() {
			return *s
		}
	}
	return fitcheck.Size{}
}

// kindSizes are the sizes that are known of each of several kinds.
func (t *turn) kindSizes() map[int][]fitcheck.Size {
	units := t.talk.Units()
	if len(units) < 2 {
		return nil
	}
	sizes := map[int][]fitcheck.Size{}
	for i := range units {
		for _, topic := range fitcheck.SizeTopics {
			if s := units[i].SizeOf(topic); s != nil && s.Width > 0 && s.Length > 0 {
				sizes[i+1] = append(sizes[i+1], *s)
			}
		}
		if s, ok := t.nominalOf(i + 1); ok && len(sizes[i+1]) == 0 {
			sizes[i+1] = append(sizes[i+1], s)
		}
	}
	return sizes
}

// heldSize is a size that was told of a kind and of which it is still asked what it measures: it
// tells as well how large the kind is.
func (t *turn) heldSize(unit int) fitcheck.Size {
	held := t.talk.Memory.Early
	if p := t.talk.Memory.Pending; p != nil {
		held = append(slices.Clone(held), p)
	}
	for _, p := range held {
		if p.Unit != unit || p.Why != reading.WhyWhich {
			continue
		}
		r := reading.Read(reading.Input{Text: p.Said, Asked: []fitcheck.Topic{fitcheck.TopicPlasticSize}, Language: t.talk.Language})
		for _, f := range r.Facts {
			if s, ok := f.Value.(fitcheck.Size); ok && s.Complete() {
				return s
			}
		}
	}
	return fitcheck.Size{}
}

func area(s fitcheck.Size) float64 {
	if s.Diameter > 0 {
		return float64(s.Diameter) * float64(s.Diameter)
	}
	return float64(s.Width) * float64(s.Length)
}

// extreme is the one kind that is the largest (sign 1) or the smallest (-1), none where two are.
func extreme(areas []float64, sign float64) []int {
	var found []int
	best := 0.0
	for i, a := range areas {
		switch {
		case len(found) == 0 || sign*a > sign*best:
			best, found = a, []int{i + 1}
		case a == best:
			found = append(found, i+1)
		}
	}
	return found
}

// otherLook are the words for a look that the one skylight so far does not have: who says "the
// round one" beside a rectangle speaks of another.
func (t *turn) otherLook() map[string]int {
	u := t.talk.Units()[0]
	size := lookSize(u)
	names := map[string]int{}
	switch {
	case u.Outline == fitcheck.OutlineRound || size.Diameter > 0:
		for _, look := range []string{"square", "long"} {
			for _, w := range lookWords[look] {
				names[w] = 2
			}
		}
	case size.Complete():
		for _, w := range lookWords["round"] {
			names[w] = 2
		}
	}
	return names
}

// called is what a kind is called by as one would say it: "the big one", "los redondos", "living room".
func (t *turn) called(name string, unit int) string {
	switch {
	case len(name) == 1:
		return strings.ToUpper(name) // "A"
	case !reading.IsLook(name) && onlyRoom[name]:
		return name + " room"
	case !reading.IsLook(name):
		return accented(name)
	}
	if t.talk.Language == "en" && reading.IsLook(strings.TrimSuffix(name, "s")) {
		name = strings.TrimSuffix(name, "s") // "the pyramid ones"
	}
	key := "unit.look"
	if n, _ := t.talk.Value(fitcheck.TopicCount, unit).(fitcheck.Whole); n > 1 || t.talk.Language == "es" && strings.HasSuffix(name, "s") {
		key = "unit.looks"
	}
	if strings.HasSuffix(strings.TrimSuffix(name, "s"), "a") {
		key += "_f" // "las redondas"
	}
	return t.line(key, 0, wording.Args{"size": accented(name)})
}

// onlyRoom are names that are no whole word for a room by themselves.
var onlyRoom = map[string]bool{"living": true, "dining": true, "family": true, "laundry": true, "utility": true, "locker": true, "conference": true, "storage": true, "powder": true, "bonus": true, "guest": true, "master": true}

// accented writes a word as it is spelled, where the reading has it without its accent.
func accented(room string) string {
	if words := strings.Fields(room); len(words) > 1 {
		for k := range words {
			words[k] = accented(words[k])
		}
		return strings.Join(words, " ")
	}
	if word, ok := map[string]string{"bano": "baño", "recamara": "recámara", "lavanderia": "lavandería", "television": "televisión", "huespedes": "huéspedes", "maquinas": "máquinas", "ninos": "niños", "musica": "música", "salon": "salón", "habitacion": "habitación", "oracion": "oración", "pequeno": "pequeño", "pequena": "pequeña", "pequenos": "pequeños", "pequenas": "pequeñas", "piramide": "pirámide"}[room]; ok {
		return word
	}
	return room
}
