package photo

import (
	"bytes"
	"context"
	"image/jpeg"
	"testing"
	"time"
)

// BenchmarkOpen12Megapixels reports how long opening a phone's photo takes against
// decoding it alone: "x-bare-decode".
func BenchmarkOpen12Megapixels(b *testing.B) {
	file := withExif(asJPEG(b, scene(4032, 3024, 1), 90), 6)
	lab := NewLab(Limits{})
	bare := time.Duration(0)
	b.ReportMetric(float64(len(file))/1e6, "MB-file")
	for b.Loop() {
		b.StopTimer()
		start := time.Now()
		if _, err := jpeg.Decode(bytes.NewReader(file)); err != nil {
			b.Fatal(err)
		}
		bare += time.Since(start)
		b.StartTimer()
		if _, err := lab.Open(context.Background(), bytes.NewReader(file)); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed())/float64(bare), "x-bare-decode")
}

func BenchmarkReadHeader(b *testing.B) {
	file := withExif(asJPEG(b, scene(640, 480, 1), 90), 6)
	for b.Loop() {
		if _, err := ReadHeader(file); err != nil {
			b.Fatal(err)
		}
	}
}
