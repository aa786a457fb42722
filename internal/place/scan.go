package place

// longestTown is the most words of a town name that Scan looks at.
const longestTown = 5

// Scan tells how many of the plain words (see Plain), from the first on, form a town's
// name, the longest first; 0 where none do. With a state only its towns count. Ask
// Towns for the towns themselves. Many names are everyday words too (Hope, Normal,
// Orange): whether a town was meant is for the caller to see.
func Scan(words []string, state string) int {
	wanted, known := stateNumber(state)
	if state != "" && !known {
		return 0
	}
	var buf [160]byte
	key, found := buf[:0], 0
	t := load()
	for n := 0; n < len(words) && n < longestTown; n++ {
		if len(words[n]) == 0 || len(words[n]) > 30 {
			break
		}
		key = appendKey(key, words[n])
		for i := range t.namesakes(key) {
			if state == "" || t.towns[i].state == wanted {
				found = n + 1
				break
			}
		}
	}
	return found
}
