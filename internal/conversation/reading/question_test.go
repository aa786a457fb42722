package reading

import (
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

func TestAsks(t *testing.T) {
	for question, want := range map[string]fitcheck.Topic{
		"What does the raised box measure over the outside?":              fitcheck.TopicCurbOutside,
		"What are the outside dimensions of the curb?":                    fitcheck.TopicCurbOutside,
		"And what is the inside of the curb?":                             fitcheck.TopicCurbInside,
		"How big is the plastic sheet from edge to edge?":                 fitcheck.TopicPlasticSize,
		"How many layers of plastic should it have: 1, 2 or 3?":           fitcheck.TopicLayers,
		"Acrylic or polycarbonate?":                                       fitcheck.TopicMaterial,
		"What color: clear, white or bronze?":                             fitcheck.TopicColor,
		"How many of them do you need?":                                   fitcheck.TopicCount,
		"What name should I put on this?":                                 fitcheck.TopicName,
		"Where does it ship to? A ZIP code or town and state is enough.":  fitcheck.TopicPlace,
		"What finish for the frame: plain mill aluminum, bronze anodized": fitcheck.TopicFinish,
		"Could you send a photo of it?":                                   fitcheck.TopicPhotos,
	} {
		got := Asks(question)
		if len(got) == 0 || got[0] != want {
			t.Errorf("%q asks %v, want %s first", question, got, want)
		}
	}
	if got := Asks("Thank you for writing."); len(got) != 0 {
		t.Errorf("no question asks %v", got)
	}
}
