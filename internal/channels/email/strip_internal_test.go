package email

import (
	"strings"
	"testing"
)

// FuzzStrip: nothing is invented: every line of the new text is a line of the mail.
func FuzzStrip(f *testing.F) {
	f.Add("25 x 49\n\nThanks,\nDana\n\nOn Mon, Mar 2, 2026 at 9:00 AM Shop <a@b.example> wrote:\n> how big?\n", "Dana Fields")
	f.Add("> a\nb\n>> c\n-- \nd", "")
	f.Fuzz(func(t *testing.T, text, sender string) {
		s := strip(cleanMarks(strings.ToValidUTF8(text, "")), sender)
		known := map[string]bool{}
		for _, l := range splitLines(cleanMarks(strings.ToValidUTF8(text, ""))) {
			known[strings.TrimSpace(unmark(l.text))] = true
		}
		for _, b := range s.blocks {
			for l := range strings.SplitSeq(b.Text, "\n") {
				if !known[strings.TrimSpace(l)] {
					t.Errorf("%q is no line of %q", l, text)
				}
			}
		}
	})
}

func FuzzHTML(f *testing.F) {
	f.Add("<p>a<b>b</b></p><blockquote>c<div>d</div></blockquote><img src=cid:x><table><tr><td>e</table>")
	f.Add(strings.Repeat("<div>", 600) + "deep")
	f.Fuzz(func(t *testing.T, source string) {
		out := htmlText(cleanMarks(strings.ToValidUTF8(source, "")))
		if strings.ContainsRune(out, lineEdge) {
			t.Errorf("%q -> %q", source, out)
		}
	})
}

func TestDeepHTMLIsReadAsWords(t *testing.T) {
	out := htmlText("<style>p{}</style>" + strings.Repeat("<div>", 5000) + "24 x 48" + strings.Repeat("</div>", 5000))
	if strings.TrimSpace(out) != "24 x 48" {
		t.Errorf("got %q", clip(out, 100))
	}
}

func TestUnflow(t *testing.T) {
	for _, f := range []struct {
		name, in string
		delSp    bool
		want     string
	}{
		{"joined", "one \ntwo\n", false, "one two\n\n"},
		{"delsp", "on \ne\n", true, "one\n\n"},
		{"not into another depth", "> q \nmine\n", false, "> q \nmine\n\n"},
		{"space-stuffed", " From here\n", false, "From here\n\n"},
		{"signature's mark", "a\n-- \nb\n", false, "a\n-- \nb\n\n"},
	} {
		if got := unflow(f.in, f.delSp); got != f.want {
			t.Errorf("%s: %q, want %q", f.name, got, f.want)
		}
	}
}
