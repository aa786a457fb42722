package drawing

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// jpegOf is a photo of a size: a roof under a sky.
func jpegOf(t testing.TB, w, h int) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		c := color.RGBA{150, 190, 225, 255}
		if y > h/2 {
			c = color.RGBA{95, 85, 78, 255}
		}
		for x := range w {
			img.SetRGBA(x, y, c)
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// sampleLead is a lead as staff get it: drywall was taken for wood, and a code is flagged.
func sampleLead(t testing.TB) SheetData {
	t.Helper()
	zone := time.FixedZone("CST", -6*3600)
	u := fitcheck.Unit{Count: 2, Style: fitcheck.StyleCurbMount, FrameCondition: fitcheck.ConditionBent, Want: fitcheck.WantCompleteUnit,
		CurbOutside: size(25.5, 49.5), CurbInside: size(21.5, 45.5), CurbDiagonals: fitcheck.Diagonals{First: fitcheck.FromInches(55.6875), Second: fitcheck.FromInches(55.75)},
		CurbHeight: high(3.5), RoofSlope: &fitcheck.Slope{Rise: 2 * inch, Run: 12 * inch}, Layers: 2, Material: fitcheck.MaterialAcrylic,
		Color: fitcheck.Color{Outer: fitcheck.ColorBronze, Inner: fitcheck.ColorClear}, Finish: fitcheck.FinishMill}
	job := fitcheck.Job{Use: fitcheck.UseHome, Place: fitcheck.Place{City: "Ames", State: "IA", ZIP: "50010"}, Units: []fitcheck.Unit{u}}
	rules := fitcheck.DefaultRules()
	rules.Prices = &fitcheck.PriceBook{Currency: "USD", Allowance: 20,
		Unit: &fitcheck.PartPrices{Base: 18000, PerSquareFoot: 3150, Layers: map[int]fitcheck.Percent{1: 100, 2: 145}}}
	res := fitcheck.Check(job, rules)
	facts := []SheetFact{
		{fitcheck.TopicCount, fitcheck.Whole(2), "two of them", 1},
		{fitcheck.TopicCurbOutside, size(25, 49), "the box is 25 x 49", 3},
		{fitcheck.TopicStyle, fitcheck.Choice(u.Style), "metal frame over a wood box", 5},
		{fitcheck.TopicFrameCondition, fitcheck.Choice(u.FrameCondition), "a branch bent it", 5},
		{fitcheck.TopicWant, fitcheck.Choice(u.Want), "the whole thing please", 6},
		{fitcheck.TopicCurbOutside, u.CurbOutside, "went up again, 25 1/2 x 49 1/2", 7},
		{fitcheck.TopicCurbInside, u.CurbInside, "21 1/2 by 45 1/2 inside", 8},
		{fitcheck.TopicCurbDiagonals, u.CurbDiagonals, "55 11/16 and 55 3/4", 9},
		{fitcheck.TopicCurbHeight, u.CurbHeight, "3 1/2 high", 9},
		{fitcheck.TopicRoofSlope, *u.RoofSlope, "2 in 12", 10},
		{fitcheck.TopicLayers, fitcheck.Whole(2), "double", 11},
		{fitcheck.TopicMaterial, fitcheck.Choice(u.Material), "acrylic", 11},
		{fitcheck.TopicColor, u.Color, "bronze over clear", 11},
		{fitcheck.TopicFinish, fitcheck.Choice(u.Finish), "plain mill", 12},
	}
	return SheetData{Shop: "Pinwheel Dome Supply", Ref: "R7KQ4", Page: "https://leads.example.com/staff/lead/R7KQ4",
		Status: "ready", Qualified: true, Urgent: true,
		Opened: time.Date(2026, 3, 2, 21, 15, 0, 0, zone), Ready: time.Date(2026, 3, 2, 21, 48, 0, 0, zone), Printed: time.Date(2026, 3, 3, 8, 2, 0, 0, zone),
		Name: "Dana Whitlock", Phone: "+12185550161", Email: "dana@example.com", Channel: "sms", Language: "en", TimeZone: "America/Chicago",
		Place: job.Place, Use: fitcheck.UseHome, Problem: []string{fitcheck.ProblemCracked, fitcheck.ProblemLeaking}, Cautions: res.Cautions,
		Units: []SheetUnit{{u, res.Units[0], facts}}, Photos: []SheetPhoto{{jpegOf(t, 640, 480), fitcheck.TopicStyle, 6}, {jpegOf(t, 300, 480), "", 8}}}
}

// crowdedLead has more of everything than two pages hold.
func crowdedLead(t testing.TB) SheetData {
	d := sampleLead(t)
	d.Paper = A4
	d.Name = "محمد 👨‍👩‍👧 <b>Ampersand & Sons</b> " + strings.Repeat("x", 500)
	said := strings.Repeat("the tape says something long ", 20)
	u := &d.Units[0]
	facts := u.Facts
	u.Facts = nil
	for range 7 {
		for _, f := range facts {
			f.Said = said
			u.Facts = append(u.Facts, f)
		}
	}
	for range 14 {
		d.Units = append(d.Units, *u)
	}
	for len(d.Photos) < 23 {
		d.Photos = append(d.Photos, SheetPhoto{Data: []byte("no photo"), Message: 3})
	}
	return d
}
