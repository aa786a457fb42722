package reading

// Numbers that are names: of rooms in a list, and on a sticker.

var stickerWords = wordsOf(`sticker label model stamped tag etiqueta modelo serial`)

// roomsOf are words before numbers of rooms and buildings.
var roomsOf = wordsOf(`units rooms apts apartments suites buildings bldgs classrooms lots stalls bays unidades
	cuartos departamentos apartamentos`)

// codeList: "over units 204, 206 and 208": numbers of rooms, which measure and count nothing.
func (r *reader) codeList(i int) bool {
	if !r.among(i-1, roomsOf) {
		return false
	}
	last, n := i, 1
	for j := i + 1; j < len(r.toks); j++ {
		t := &r.toks[j]
		switch {
		case t.kind == numToken && t.dec == 0 && !r.by(j+1) && r.unitAt(j+1) == noUnit && !r.markAt(j+1, '/'):
			last, n = j, n+1
			continue
		case t.mark(',') || t.mark('&') || t.mark('-') || t.is("and", "y"):
			continue
		}
		break
	}
	if n < 2 && len(r.toks[i].text) < 3 || r.by(last+1) || last+1 < len(r.toks) && r.toks[last+1].kind == numToken {
		return false
	}
	r.use(i, last)
	return true
}

// stickerCode: "CM2546-84", "VS-3046", "the label says 2246": a maker's number for a size
// is no measure.
func (r *reader) stickerCode(i int) bool {
	t := &r.toks[i]
	if t.dec > 0 || r.by(i+1) || r.by(i-1) || r.unitAt(i+1) != noUnit && !r.toks[i+1].glued {
		return false
	}
	if !t.code && !r.dashedCode(i) && !r.stickerTold(i) {
		return false
	}
	end := i
	for r.codeDash(end+1) || end+1 < len(r.toks) && r.toks[end+1].glued && r.toks[end+1].kind != markToken {
		end++
	}
	r.use(i, end)
	return true
}

// dashedCode: "VS-3046": a number after a few letters and a dash.
func (r *reader) dashedCode(i int) bool {
	if i < 2 || !r.markAt(i-1, '-') || !r.toks[i-1].glued || !r.toks[i].glued || len(r.toks[i].text) < 3 {
		return false
	}
	letters := &r.toks[i-2]
	return letters.kind == wordToken && len(letters.text) <= 4 && r.unitAt(i-2) == noUnit
}

// stickerTold: "the label says 2246".
func (r *reader) stickerTold(i int) bool {
	if len(r.toks[i].text) != 4 || r.markAt(i+1, '/') {
		return false
	}
	return r.anyOf(r.sentenceFirst(i), i, stickerWords) || r.askedSize() == "none" && r.wordAt(i-1, "says", "dice")
}
