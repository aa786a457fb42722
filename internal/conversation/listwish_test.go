package conversation

import "testing"

func TestChangeAsked(t *testing.T) {
	for text, want := range map[string]string{
		"can you make it white outside and clear inside?":        "make it white outside and clear inside",
		"yes but could we change the color to bronze":            "yes but change the color to bronze",
		"Looks good, can you put 3 layers?":                      "Looks good, put 3 layers",
		"¿pueden cambiar el color a blanco?":                     "¿cambiar el color a blanco",
		"it says acrylic, I said polycarbonate":                  "polycarbonate",
		"no, I asked for two layers and the list shows one":      "no, two layers",
		"it has one layer but I need two":                        "two layer",
		"it says 25 1/4, I said 25 1/2":                          "25 1/2 not 25 1/4",
		"you have 3 round ones, I said 2":                        "2 round ones",
		"it says clear for the round, I wanted white over clear": "white over clear for the round",
		"it says the bath is clear, I said white":                "the bath is white",
		"dice acrílico, yo dije policarbonato":                   "policarbonato",
		"did you get that it's a pyramid, not a dome?":           "it's a pyramid, not a dome",
		"could the kitchen one be white instead?":                "the kitchen one should be white instead",
		"can it be done in bronze?":                              "it should be bronze",
		"can I get bronze for the kitchen?":                      "I want bronze for the kitchen",
		"¿puede ser blanco el del baño?":                         "¿que sea blanco el del baño",
		"could it be cheaper with polycarbonate?":                "could it be cheaper with polycarbonate?",
		"can I get a quote for white?":                           "can I get a quote for white?",
		"did you get my photos?":                                 "did you get my photos?",
		"can you tell me what the second layer is for?":          "can you tell me what the second layer is for?",
		"yes. what does it cost? can you do it by friday?":       "yes. what does it cost? can you do it by friday?",
	} {
		if got := changeAsked(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
