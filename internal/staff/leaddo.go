package staff

import (
	"fmt"
	"strings"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// canOrder answers in one line what staff ask first, and how that line is drawn.
func (p *leadPage) canOrder(check fitcheck.Result) (head, way string) {
	status := p.Lead.Talk.Lead.Status
	switch status {
	case conversation.StatusOrdered:
		return "It is ordered.", "over"
	case conversation.StatusDeclined:
		return "It came to nothing.", "over"
	case conversation.StatusClosed:
		return "This lead is shut.", "over"
	}
	whole := len(p.Units) > 0
	open := len(p.Lead.Talk.Lead.WhyStaff) > 0
	for i, u := range p.Units {
		r := check.Units[i]
		whole = whole && u.Order != "" && r.Verdict == fitcheck.VerdictFits && r.Replace != fitcheck.ReplaceStaff
		open = open || u.Missing != ""
	}
	switch {
	case !whole:
		return "Don't order from this yet.", "notyet"
	case open:
		return "The size holds. Settle the rest, then order.", "notyet"
	case status == conversation.StatusOpen:
		return "The size holds. The talk is not over yet.", "notyet"
	}
	return "You can order from this.", "go"
}

// whatToDo says for each unit what to order, or what stands in the way, and what came up
// beside it.
func whatToDo(p *leadPage, check fitcheck.Result) []string {
	var do []string
	if p.Lead.Talk.Lead.Urgent {
		do = append(do, "urgent: call first.")
	}
	for i, u := range p.Units {
		name := ""
		if u.Several {
			name = fmt.Sprintf("Skylight %d: ", i+1)
		}
		switch r := check.Units[i]; {
		case r.Replace == fitcheck.ReplaceStaff:
			do = append(do, name+"decide which part it takes"+inBrackets(u.Why)+".")
		case u.Order == "":
			do = append(do, name+u.Part+": "+u.Verdict+".")
		case r.Verdict == fitcheck.VerdictFits:
			do = append(do, name+u.Part+", "+u.Order+".")
		default:
			do = append(do, name+u.Part+", "+u.Order+", once this is settled: "+u.Verdict+".")
		}
		if u.Missing != "" {
			do = append(do, name+"still open: "+u.Missing+".")
		}
	}
	if len(p.Units) == 0 {
		do = append(do, "nothing is known of the skylight yet.")
	}
	if why := p.Lead.Talk.Lead.WhyStaff; len(why) > 0 {
		do = append(do, "came to us because: "+strings.Join(why, "; ")+".")
	}
	for i, line := range do {
		do[i] = strings.ToUpper(line[:1]) + line[1:]
	}
	return do
}

func inBrackets(text string) string {
	if text == "" {
		return ""
	}
	return " (" + text + ")"
}
