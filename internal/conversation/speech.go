package conversation

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// textLimit is two segments of a concatenated text in the GSM alphabet: 2 x 153
// characters (3GPP TS 23.038 and TS 23.040).
const textLimit = 306

// speech collects what one turn says, part by part; parts become as few texts as fit.
type speech struct {
	parts   []string
	kind    UtteranceKind
	picture fitcheck.Topic
}

func (s *speech) add(parts ...string) {
	for _, p := range parts {
		if p = strings.TrimSpace(p); p != "" {
			s.parts = append(s.parts, p)
		}
	}
}

// utterances packs the parts: a mail takes all in one, a text at most two segments.
func (s *speech) utterances(channel Channel) []Utterance {
	if len(s.parts) == 0 {
		return nil
	}
	kind := s.kind
	if kind == "" {
		kind = Reply
	}
	if channel == Email {
		return []Utterance{{Text: strings.Join(s.parts, "\n\n"), Kind: kind, Picture: s.picture}}
	}
	var out []Utterance
	for _, text := range packed(s.parts) {
		out = append(out, Utterance{Text: text, Kind: kind})
	}
	out[len(out)-1].Picture = s.picture
	return out
}

// packed joins parts to texts within the limit, in order; a part that is too long by
// itself is cut between sentences, then between words.
func packed(parts []string) []string {
	var texts []string
	for _, part := range parts {
		for _, piece := range pieces(part) {
			if n := len(texts); n > 0 && runes(texts[n-1])+1+runes(piece) <= textLimit {
				texts[n-1] += separator(texts[n-1], piece) + piece
				continue
			}
			texts = append(texts, piece)
		}
	}
	return texts
}

// separator keeps lists on lines of their own.
func separator(before, piece string) string {
	if strings.HasPrefix(piece, "- ") || strings.Contains(before, "\n- ") {
		return "\n"
	}
	return " "
}

func pieces(part string) []string {
	var out []string
	for runes(part) > textLimit {
		cut := cutAt(part)
		out = append(out, strings.TrimSpace(part[:cut]))
		part = strings.TrimSpace(part[cut:])
	}
	return append(out, part)
}

// cutAt is where to cut a text that is too long: after the last sentence that fits,
// else after the last word, else in the middle of it.
func cutAt(part string) int {
	end := 0
	for n := range part {
		if end++; end > textLimit {
			end = n
			break
		}
	}
	head := part[:end]
	for _, mark := range []string{"\n", ". ", "? ", "; ", " "} {
		if i := strings.LastIndex(head, mark); i > len(head)/3 {
			return i + len(mark)
		}
	}
	return len(head)
}

func runes(s string) int { return len([]rune(s)) }
