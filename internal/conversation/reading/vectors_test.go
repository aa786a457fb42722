package reading

import (
	"bufio"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

// unreadable are texts that the library makes a number of and a careful person does not.
var unreadableVectors = map[string]bool{`25 9/8"`: true, `25 3/0"`: true, "12 12 12": true}

// TestLengthsAgainstALibrary compares what both claim to read, as a second opinion from
// outside: testdata/quantity_vectors.tsv says where the values come from.
func TestLengthsAgainstALibrary(t *testing.T) {
	f, err := os.Open("testdata/quantity_vectors.tsv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	agreed, ours := 0, 0
	for sc := bufio.NewScanner(f); sc.Scan(); {
		text, value, ok := strings.Cut(sc.Text(), "\t")
		if !ok || strings.HasPrefix(text, "#") {
			continue
		}
		got := Read(Input{Text: text, Asked: askedOf(fitcheck.TopicCurbOutside)})
		if unreadableVectors[text] {
			if len(got.Facts) > 0 {
				t.Errorf("%q: %s", text, formOfReading(got))
			}
			continue
		}
		if value == "-" {
			ours += len(got.Facts)
			continue
		}
		want, err := strconv.ParseFloat(value, 64)
		if err != nil {
			t.Fatal(err)
		}
		if len(got.Facts) != 1 {
			t.Errorf("%q: want %v in, got %s", text, want, formOfReading(got))
			continue
		}
		size, _ := got.Facts[0].Value.(fitcheck.Size)
		if d := math.Abs(size.One.Inches() - want); d > 1e-6 {
			t.Errorf("%q: want %v in, got %v", text, want, size.One.Inches())
			continue
		}
		agreed++
	}
	if agreed < 300 || ours < 30 {
		t.Errorf("agreed on %d, read %d that the library does not", agreed, ours)
	}
	t.Logf("agreed on %d lengths; read %d more that the library does not", agreed, ours)
}
