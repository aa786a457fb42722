package reading

var (
	weatherNames = wordsOf(`hail hailstorm storm wind tree limb branch snow tornado hurricane tornadoes granizo viento
		tormenta arbol rama nieve huracan ice squirrels squirrel raccoon bear`)
	weatherVerbs = wordsOf(`got hit took broke smashed cracked busted tore did killed damaged punched beat destroyed
		ruined fell came shattered split ripped blew wrecked landed crushed went lo le la se los las me nos rompio pego
		tumbo quebro cayo`)
)

// weatherActs: "26 x 26 hail got it": what stands after the size did the harm, and is not what is so large.
func (r *reader) weatherActs(h *hit) bool {
	return r.among(h.last, weatherNames) && r.among(h.last+1, weatherVerbs)
}
