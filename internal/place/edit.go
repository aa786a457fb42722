package place

// maxEditLength bounds what is compared: no town name is as long.
const maxEditLength = 48

// editDistance counts the edits between two keys (optimal string alignment: a letter
// left out, put in or changed, or two neighbours swapped); above limit it is limit + 1.
func editDistance(a, b string, limit int) int {
	if len(a) > maxEditLength || len(b) > maxEditLength || len(a)-len(b) > limit || len(b)-len(a) > limit {
		return limit + 1
	}
	var rows [3][maxEditLength + 1]uint8
	before, last, row := &rows[0], &rows[1], &rows[2]
	for j := range len(b) + 1 {
		last[j] = uint8(j)
	}
	for i := 1; i <= len(a); i++ {
		row[0] = uint8(i)
		least := row[0]
		for j := 1; j <= len(b); j++ {
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+differs(a[i-1], b[j-1]))
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
			least = min(least, row[j])
		}
		if int(least) > limit {
			return limit + 1
		}
		before, last, row = last, row, before
	}
	return min(int(last[len(b)]), limit+1)
}

func differs(a, b byte) uint8 {
	if a == b {
		return 0
	}
	return 1
}
