package drawing

import (
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

// BenchmarkForms makes each kind of drawing in each of its forms.
func BenchmarkForms(b *testing.B) {
	lead := sampleLead(b)
	u := everything()
	r := check(u)
	for name, draw := range map[string]func() (Drawing, error){
		"howto":    func() (Drawing, error) { return HowTo(fitcheck.TopicCurbOutside, "en") },
		"measured": func() (Drawing, error) { return Measured(u, r, "en") },
		"sheet":    func() (Drawing, error) { return Sheet(lead) },
	} {
		for form, render := range map[string]func(Drawing) ([]byte, error){"svg": Drawing.SVG, "pdf": Drawing.PDF, "png": func(d Drawing) ([]byte, error) { return d.PNG(720) }} {
			b.Run(name+"/"+form, func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					d, err := draw()
					if err != nil {
						b.Fatal(err)
					}
					out, err := render(d)
					if err != nil {
						b.Fatal(err)
					}
					b.ReportMetric(float64(len(out)), "bytes")
				}
			})
		}
	}
}

// BenchmarkCrowdedSheet lays out a lead with far more than two pages hold.
func BenchmarkCrowdedSheet(b *testing.B) {
	lead := crowdedLead(b)
	lead.Photos = nil
	for b.Loop() {
		if _, err := Sheet(lead); err != nil {
			b.Fatal(err)
		}
	}
}
