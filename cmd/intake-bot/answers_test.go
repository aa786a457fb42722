package main

import (
	"strings"
	"testing"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/shop"
)

// The example shop's answers, found in Postgres: what fits, and near misses of it.
func TestAnswersAreFoundInTheDatabase(t *testing.T) {
	f, err := shop.Parse([]byte(deploy.ExampleShop))
	if err != nil {
		t.Fatal(err)
	}
	pool := dbtest.New(t)
	for range 2 { // put again, as at every start
		if err := putAnswers(t.Context(), pool, f); err != nil {
			t.Fatal(err)
		}
	}
	for _, one := range f.Answers {
		for _, q := range append([]string{one.Question}, one.Also...) {
			if got, err := answers.Find(t.Context(), pool, q); err != nil || got != one.Answer["en"] {
				t.Errorf("%q finds %q (%v)", q, got, err)
			}
		}
		for _, q := range one.AlsoInSpanish {
			if got, err := answers.Find(t.Context(), pool, q); err != nil || got != one.Answer["es"] {
				t.Errorf("%q finds %q (%v)", q, got, err)
			}
		}
	}
	for _, c := range []struct{ message, begins string }{
		{"do you guys install these", "We ship parts and don't install"},
		{"It's cracked. Who installs it?", "We ship parts and don't install"},
		{"who measures it for me?", "We work by mail"},
		{"what's the difference between acrylic and polycarbonate", "Acrylic stays clear longer"},
		{"is polycarbonate stronger than acrylic?", "Acrylic stays clear longer"},
		{"acrylic or polycarbonate?", "Acrylic stays clear longer"},
		{"single or double?", "Two layers over any heated room"},
		{"how long does it take", "Sizes that we stock"},
		{"what's your lead time", "Sizes that we stock"},
		{"is there a warranty", "Parts that arrive damaged"},
		{"what warranties do you give?", "Parts that arrive damaged"},
		{"where are you?", "We are at 410"},
		{"can i pick it up", "We are at 410"},
		{"can I return it?", "Stock sizes"},
		{"¿Ustedes instalan?", "Enviamos piezas y no instalamos"},
		{"y cuanto tarda?", "Las medidas en existencia"},
		{"tiene garantia?", "Las piezas que llegan"},
		// Near misses, and what is no question of these.
		{"do you ship?", "Yes, to every state"}, {"can you deliver to my house", "Yes, to every state"},
		{"¿hacen envíos a Texas?", "Sí, a todos los estados"}, {"how soon do you ship?", "Sizes that we stock"}, {"when can you ship it", "Sizes that we stock"}, {"how much for a new skylight dome?", ""}, {"do you make round ones?", "Yes, round ones"}, {"do you sell for RVs?", "Often yes, for campers"},
		{"no ladder here, how?", ""}, {"will it be clear when it arrives", ""}, {"how much to ship it?", "It depends on size"},
		{"26 x 50", ""}, {"acrylic", ""}, {"two layers", ""}, {"yes, that's right", ""}, {"the frame is bent", ""},
		{"can you do a purple one", ""}, {"does it open?", ""}, {"", ""}, {"???", ""}, {"una capa, acrílico", ""},
		{"do you sell skylight shades?", ""}, {"how long is the dome?", ""}, {"are you installing the domes as well as the crates?", ""},
		{"can I pay you to measure it?", "We work by mail"}, {"is my old frame worth anything?", ""}, {"what time do you close?", ""},
		{"¿venden persianas?", ""}, {"' | ! & <-> (: *?", ""}, {"does glass installed by others leak in winter?", ""},
	} {
		got, err := answers.Find(t.Context(), pool, c.message)
		if err != nil || c.begins == "" && got != "" || c.begins != "" && !strings.HasPrefix(got, c.begins) {
			t.Errorf("%q: %q (%v), want %q", c.message, got, err, c.begins)
		}
	}
}
