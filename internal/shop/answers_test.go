package shop

import (
	"strings"
	"testing"

	"example.com/intake-bot/deploy"
)

func TestAnswersAreFoundOnlyWhereTheyFitWell(t *testing.T) {
	f, err := Parse([]byte(deploy.ExampleShop))
	if err != nil {
		t.Fatal(err)
	}
	a := f.Questions()
	for _, c := range []struct{ message, begins string }{
		{"Do you install?", "We ship parts and don't install"},
		{"do you guys install these", "We ship parts and don't install"},
		{"It's cracked. Who installs it?", "We ship parts and don't install"},
		{"what's the difference between acrylic and polycarbonate", "Acrylic stays clear longer"},
		{"is polycarbonate stronger than acrylic?", "Acrylic stays clear longer"},
		{"acrylic or polycarbonate?", "Acrylic stays clear longer"},
		{"single or double?", "Two layers over any heated room"},
		{"how long does it take", "Sizes that we stock"},
		{"what's your lead time", "Sizes that we stock"},
		{"do I have to climb up there?", "Please don't go up for us"},
		{"is there a warranty", "Parts that arrive damaged"},
		{"where are you?", "We are at 410"},
		{"can you send somebody to measure?", "We work by mail"}, {"could I get a man to put it in?", "We ship parts"},
		{"what's shipping to duluth", "It depends on size"}, {"do you ship to a PO box?", "No, domes go by carrier"},
		{"when can i get a quote?", "Once the list is complete"}, {"how long till somebody calls me?", "Once the list"},
		{"can i pick it up", "We are at 410"},
		{"¿Ustedes instalan?", "Enviamos piezas y no instalamos"},
		{"y cuanto tarda?", "Las medidas en existencia"},
		{"tiene garantía", "Las piezas que llegan"},
		// What is asked for must agree: when, how much, where.
		{"when can you ship?", "Sizes that we stock"},
		{"when do you ship", "Sizes that we stock"},
		{"how fast can you ship", "Sizes that we stock"},
		{"do you ship", "Yes, to every state"},
		{"where do you ship to?", "Yes, to every state"},
		{"how much is the shipping?", "It depends on size"}, {"how much to ship it?", "It depends on size"},
		{"¿cuándo pueden mandarlo?", ""}, {"¿cuánto tardan en enviar?", "Las medidas en existencia"},
		{"how much for a new skylight dome?", ""}, {"how much to keep my frame", ""},
		{"¿cuánto cuesta un domo de plástico?", ""}, {"when do you install", ""}, {"why do you ship", ""},
		{"how long is the warranty?", "Parts that arrive damaged"},
		{"do you make round ones?", "Yes, round ones"}, {"can you make a round dome", "Yes, round ones"},
		{"do you sell for RVs?", "Often yes, for campers"}, {"do you make skylights for an rv", "Often yes, for campers"},
		{"do you have any for mobile homes?", "Often yes, for campers"}, {"¿hacen redondos?", "Sí, también redondos"},
		{"what do you recommend for insulation?", "Two layers over any"}, {"I want two layers, what do you recommend for hail?", "Acrylic stays clear"},
		// What is no question of these: talk, measures, answers.
		{"26 x 50", ""},
		{"acrylic", ""},
		{"two layers", ""},
		{"it's a metal frame that caps a wood box", ""},
		{"yes, that's right", ""},
		{"Hanna Lindwall, Saint Paul MN 55104", ""},
		{"the dome is cracked and it leaks", ""},
		{"the frame is bent", ""},
		{"can you do a purple one", ""},
		{"does it open?", ""},
		{"whats the difference between the two", ""}, // of whatever was asked last
		{"¿qué preio tiene", ""}, {"tengo que arreglar un tragaluz, tiene una gotera", ""},
		{"inside? let me see. 22 1/2 by 46 1/2", ""},
		{"whats a lip", "The flat rim"},
		{"what's a curb?", "The raised wooden box"},
		{"what do you mean by retainer", "The metal frame that is screwed"},
		{"¿Qué es la pestaña?", "El borde plano"},
		{"warranty?", "Parts that arrive damaged"},
		{"", ""},
		{"???", ""},
		{"una capa, acrílico", ""},
	} {
		got := a.Find(c.message)
		if c.begins == "" && got != "" || c.begins != "" && !strings.HasPrefix(got, c.begins) {
			t.Errorf("%q: %q, want %q", c.message, got, c.begins)
		}
	}
}

func TestEveryQuestionOfTheOwnersFindsItsOwnAnswer(t *testing.T) {
	f, err := Parse([]byte(deploy.ExampleShop))
	if err != nil {
		t.Fatal(err)
	}
	a := f.Questions()
	for _, one := range f.Answers {
		for _, q := range append([]string{one.Question}, one.Also...) {
			if got := a.Find(q); got != one.Answer["en"] {
				t.Errorf("%q finds %q", q, got)
			}
		}
		for _, q := range one.AlsoInSpanish {
			if got := a.Find(q); got != one.Answer["es"] {
				t.Errorf("%q finds %q", q, got)
			}
		}
	}
}
