package fitcheck

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
	"testing"
	"time"
)

// The inside of fullLine's curb as it is, and between drywall, which takes the whole
// diagnosis to see.
const (
	soundInside   = `"curb_inside":{"width_in":22.5,"length_in":46.5}`
	drywallInside = `"curb_inside":{"width_in":21.5,"length_in":45.5}`
)

// manyUnits is a line of n full units with this inside.
func manyUnits(n int, inside string) []byte {
	head, tail, _ := strings.Cut(fullLine, `"units":[`)
	unit := strings.Replace(strings.TrimSuffix(tail, `]}`), soundInside, inside, 1)
	return []byte(head + `"units":[` + strings.Repeat(unit+",", n-1) + unit + "]}\n")
}

// The most units that a line may hold are answered, each as one alone would be, and one
// more is refused by name.
func TestTheMostUnits(t *testing.T) {
	var out bytes.Buffer
	if bad, err := CheckLines(bytes.NewReader(manyUnits(MaxUnits, soundInside)), &out, DefaultRules(), nil); err != nil || bad != 0 {
		t.Fatal(bad, err)
	}
	var answer struct{ Units []json.RawMessage }
	if err := json.Unmarshal(out.Bytes(), &answer); err != nil || len(answer.Units) != MaxUnits {
		t.Fatalf("%d units, %v", len(answer.Units), err)
	}
	for i, u := range answer.Units {
		if !bytes.Equal(u, answer.Units[0]) {
			t.Fatalf("unit %d: %s, the first: %s", i+1, u, answer.Units[0])
		}
	}
	if strings.Count(out.String(), "\n") != 1 {
		t.Error("not one line")
	}
}

func TestOneUnitTooMany(t *testing.T) {
	line := `{"units":[` + strings.Repeat("{},", MaxUnits) + `{}]}`
	if _, err := DecodeJob([]byte(line)); err == nil || !strings.HasPrefix(err.Error(), "units: has 10001") {
		t.Errorf("%v", err)
	}
	if _, err := DecodeJob([]byte(strings.Replace(line, "{},", "", 1))); err != nil {
		t.Errorf("at the limit: %v", err)
	}
}

// Memory grows with the units and no faster: a unit among two hundred takes as many
// allocations as one among twenty.
func TestMemoryIsInProportion(t *testing.T) {
	rules := DefaultRules()
	each := func(n int) float64 {
		line := manyUnits(n, drywallInside)
		return testing.AllocsPerRun(1, func() {
			if _, err := CheckLines(bytes.NewReader(line), io.Discard, rules, nil); err != nil {
				t.Error(err)
			}
		}) / float64(n)
	}
	if few, many := each(20), each(200); many > 1.02*few {
		t.Errorf("%.0f allocations a unit of two hundred, %.0f of twenty", many, few)
	}
}

// A unit among the most that a line may hold takes about as long as one among ten.
func BenchmarkManyUnits(b *testing.B) {
	rules := DefaultRules()
	few, many := manyUnits(10, soundInside), manyUnits(MaxUnits, soundInside)
	run := func(line []byte) time.Duration {
		start := time.Now()
		if _, err := CheckLines(bytes.NewReader(line), io.Discard, rules, nil); err != nil {
			b.Fatal(err)
		}
		return time.Since(start)
	}
	var ratio float64
	n := 0.0
	for b.Loop() {
		var small time.Duration
		for range MaxUnits / 10 / 10 {
			small += run(few)
		}
		ratio += float64(run(many)) / float64(10*small)
		n++
	}
	b.ReportMetric(ratio/n, "ratio")
}
