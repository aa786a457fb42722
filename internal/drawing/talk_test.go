package drawing

import (
	"strings"
	"testing"
)

func TestTalkShowsEveryMessage(t *testing.T) {
	lines := []TalkLine{{true, "my dome <cracked>"}, {false, "Sorry to hear.\n- layers: 1, 2 or 3\n- color"}, {true, strings.Repeat("long ", 60)}, {false, "Thanks."}}
	for columns := 1; columns <= 4; columns++ {
		d, err := Talk(TalkData{Title: "A talk", Lines: lines}, columns)
		if err != nil {
			t.Fatal(err)
		}
		var said []string
		for _, m := range d.pages[0].marks {
			if m.part == "message" {
				said = append(said, m.text)
			}
			if m.text != "" && (m.x < 0 || m.x+measure(m.text, m.look) > d.pages[0].w || m.y > d.pages[0].h) {
				t.Errorf("%d columns: %q is beyond the edge", columns, m.text)
			}
		}
		all := strings.Join(said, " ")
		if !strings.Contains(all, "my dome <cracked>") || !strings.Contains(all, "- layers: 1, 2 or 3 - color") || strings.Count(all, "long") != 60 || !strings.Contains(all, "Thanks.") {
			t.Errorf("%d columns: %q", columns, said)
		}
		if _, err := d.SVG(); err != nil {
			t.Error(err)
		}
	}
	if _, err := Talk(TalkData{}, 1); err == nil {
		t.Error("a talk of nothing")
	}
}
