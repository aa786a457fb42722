package reading

// oppositeOf are the sides that lie across from each other.
var oppositeOf = map[string]string{"left": "right", "right": "left", "top": "bottom", "bottom": "top", "upper": "lower",
	"lower": "upper", "uphill": "downhill", "downhill": "uphill",
	"front": "back", "back": "front", "north": "south", "south": "north", "east": "west", "west": "east",
	"izquierda": "derecha", "derecha": "izquierda",
	"izquierdo": "derecho", "derecho": "izquierdo", "arriba": "abajo", "abajo": "arriba", "norte": "sur", "sur": "norte"}

// acrossFrom: "top edge 46, bottom edge 46 1/8", "30 1/4 on the left and 30 1/2 on the right": two
// sides that lie across from each other are one measure taken twice, no width and length.
func (r *reader) acrossFrom(a, b *quantity) bool {
	first := r.sideBetween(a.first, a.last+1) // the words for a side belong to the length
	return first != "" && oppositeOf[first] == r.sideBetween(b.first, b.last+1)
}

// sideBetween is the side that is named between two tokens, "" where none or several are.
func (r *reader) sideBetween(from, to int) string {
	side := ""
	for i := from; i < to; i++ {
		if w := r.wordText(i); oppositeOf[w] != "" {
			if side != "" {
				return ""
			}
			side = w
		}
	}
	return side
}
