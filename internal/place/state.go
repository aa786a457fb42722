package place

// State finds the two-letter postal code that a word or phrase names: a state, the
// District of Columbia, a territory or a military region, by its English or Spanish
// name, its postal code or a usual short form, in any case. Many codes are also words
// ("in", "or", "me", "hi"): whether a word was meant as a state is for the caller to see.
func State(word string) (string, bool) {
	var buf [96]byte
	plain := appendPlain(buf[:0], word)
	if code, ok := stateOfKey(squeeze(plain)); ok {
		return code, true
	}
	var keyBuf [96]byte
	return stateOfKey(appendKey(keyBuf[:0], word))
}

func stateOfKey(key []byte) (string, bool) {
	code, ok := stateByKey[string(key)]
	return code, ok
}

// squeeze removes the spaces of b in place.
func squeeze(b []byte) []byte {
	out := b[:0]
	for _, c := range b {
		if c != ' ' {
			out = append(out, c)
		}
	}
	return out
}

// longestState is the most words that a name of a state has ("distrito de columbia",
// "estado libre asociado…" is not one).
const longestState = 4

// ScanState tells how many of the plain words (see Plain), from the first on, name a
// state, the longest name first, and which; 0 where none do.
func ScanState(words []string) (int, string) {
	var plainBuf, keyBuf [128]byte
	plain, key := plainBuf[:0], keyBuf[:0]
	found, code := 0, ""
	for n := 0; n < len(words) && n < longestState; n++ {
		if len(words[n]) == 0 || len(words[n]) > 30 {
			break
		}
		plain = append(plain, words[n]...)
		key = appendKey(key, words[n])
		if c, ok := stateOfKey(squeeze(plain)); ok {
			found, code = n+1, c
		} else if c, ok := stateOfKey(key); ok {
			found, code = n+1, c
		}
	}
	return found, code
}

// NearState finds the state whose name a misspelt word must have meant: one edit in
// a word of six letters or more, two from nine on, and no other state as near.
func NearState(word string) (string, bool) {
	if code, ok := State(word); ok {
		return code, true
	}
	key := squeeze(appendPlain(nil, word))
	limit := nearStateLimit(len(key))
	best, bestCode := limit+1, ""
	for name, code := range stateByKey {
		if len(name) < 4 {
			continue
		}
		d := editDistance(string(key), name, limit)
		switch {
		case d < best:
			best, bestCode = d, code
		case d == best && code != bestCode:
			bestCode = ""
		}
	}
	return bestCode, best <= limit && bestCode != ""
}

func nearStateLimit(length int) int {
	switch {
	case length >= 9:
		return 2
	case length >= 6:
		return 1
	}
	return 0
}

// StateName gives the English name of a postal code, "" where there is none.
func StateName(code string) string { return nameOfState[code] }

// Military reports whether the code is a region of military addresses.
func Military(code string) bool { return code == "AA" || code == "AE" || code == "AP" }
