package conversation

import "testing"

func TestChangeAsked(t *testing.T) {
	for text, want := range map[string]string{
		"can you make it white outside and clear inside?":  "make it white outside and clear inside",
		"yes but could we change the color to bronze":      "yes but change the color to bronze",
		"Looks good, can you put 3 layers?":                "Looks good, put 3 layers",
		"¿pueden cambiar el color a blanco?":               "¿cambiar el color a blanco",
		"can you tell me what the second layer is for?":    "can you tell me what the second layer is for?",
		"yes. what does it cost? can you do it by friday?": "yes. what does it cost? can you do it by friday?",
	} {
		if got := changeAsked(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
