package photo

import (
	"bytes"
	"context"
	"image"
	"image/jpeg"
	"math/rand/v2"
	"testing"
	"time"
)

// BenchmarkOpen12Megapixels reports how long opening a phone's photo takes against
// decoding it alone: "x-bare-decode". The picture has a small sensor's grain, so that
// the file is as large as a phone's.
func BenchmarkOpen12Megapixels(b *testing.B) {
	file := withExif(asJPEG(b, grainy(scene(4032, 3024, 1), 10), 90), 6)
	lab := NewLab(Limits{})
	bare := time.Duration(0)
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
	b.ReportMetric(float64(len(file))/1e6, "MB-file")
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

func grainy(m *image.RGBA, most int) *image.RGBA {
	random := rand.New(rand.NewPCG(5, 5))
	for i, v := range m.Pix {
		if i%4 != 3 {
			m.Pix[i] = byteOf(float64(v) + float64(random.IntN(2*most+1)-most))
		}
	}
	return m
}
