package reading

import (
	"regexp"
	"testing"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// typical is a message of middling length that answers a question and says more.
const typical = "its abt 25 1/2 bt 49 1/2 on the outside i think, inside is 22 1/2 x 46 1/2"

// sizePattern is a size as a plain pattern would look for it: what a single pass costs
// that understands nothing.
var sizePattern = regexp.MustCompile(`(\d+(?:[ -]\d+/\d+|\.\d+)?)\s*(?:"|in|inches|ft|feet|mm|cm)?\s*(?:x|by|\*)\s*(\d+(?:[ -]\d+/\d+|\.\d+)?)`)

// BenchmarkRead gives the time for a typical message and, as "ratio", how many passes
// of a size pattern take as long.
func BenchmarkRead(b *testing.B) {
	in := Input{Text: typical, Asked: []fitcheck.Topic{fitcheck.TopicCurbOutside}}
	Read(in)
	b.ReportAllocs()
	for b.Loop() {
		Read(in)
	}
	own := float64(b.Elapsed()) / float64(b.N)
	b.StopTimer()
	const passes = 2000
	start := time.Now()
	for range passes {
		sizePattern.FindAllStringIndex(typical, -1)
	}
	b.ReportMetric(own/(float64(time.Since(start))/passes), "ratio")
}

// BenchmarkReadLong reads as much as is read of one message at all.
func BenchmarkReadLong(b *testing.B) {
	text := ""
	for len(text) < maxRunes {
		text += "We have a cracked dome on our house in Tulsa OK, the curb is 25 1/2 x 49 1/2 outside. "
	}
	Read(Input{Text: text})
	b.ReportAllocs()
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		Read(Input{Text: text})
	}
}

// BenchmarkReadWords reads a message without a number.
func BenchmarkReadWords(b *testing.B) {
	in := Input{Text: "metal frame that caps over a wood box with screws around the side, plastic is cracked", Asked: []fitcheck.Topic{fitcheck.TopicStyle}}
	Read(in)
	b.ReportAllocs()
	for b.Loop() {
		Read(in)
	}
}
