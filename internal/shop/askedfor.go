package shop

import (
	"regexp"
	"slices"
)

// What a question asks for: an answer to "where do you ship?" is none to "when can you
// ship?", however many words the two share. What asks for none of these asks whether, what
// or how. English and Spanish, without accents.
var askedFor = []struct {
	what  string
	words *regexp.Regexp
}{
	{"time", regexp.MustCompile(`^\W*(\w+ )?when\b|\bwhen (can|could|do|does|will|would|should|is|are)\b|\b(how (long|soon|fast|quick|quickly|many (days|weeks|months))|what (day|date)|lead times?|turnaround|today|tomorrow|this week|next week|rush|` +
		`cuando|cuanto (tiempo|tarda|tardan|tardaria|tardarian|demora|demoran|dura|duran)|cuantos (dias|meses|anos)|cuantas semanas|que (dia|tan rapido|tan pronto)|hoy|manana)\b`)},
	{"money", regexp.MustCompile(`\b(what ?('s|s|is|are) (the |your )?(shipping|freight|delivery)` +
		`( costs?| fees?| charges?| rates?)?( to| for| on)?\b|` +
		`how much|price|prices|priced|pricing|cost|costs|quote|cheap|cheaper|expensive|` +
		`cuanto (cuesta|cuestan|vale|valen|sale|salen|cobran|cobra|es|seria|por|me)|a como|precio|precios|costo|costos|cuesta|cuestan|caro|barato)\b`)},
	{"reason", regexp.MustCompile(`\b(why|hows come|how come|por ?que)\b`)},
	{"place", regexp.MustCompile(`\b(where|wheres|donde|adonde)\b`)},
}

// notMoney are "how much does it ..." of something else than a price.
var notMoney = regexp.MustCompile(`\bhow much (time|longer|warning|room|space|play|bigger|smaller|stronger|light|better|weight|snow)\b`)

// whatFor is what a question asks for, "" for none of these.
func whatFor(question string) string {
	for _, a := range askedFor {
		if a.words.MatchString(question) && !(a.what == "money" && notMoney.MatchString(question)) {
			return a.what
		}
	}
	return ""
}

// AskForTheSame says whether a question asks for what one of the ways to ask for an
// answer does; all without accents and in small letters.
func AskForTheSame(question string, ways []string) bool {
	what := whatFor(question)
	return slices.ContainsFunc(ways, func(way string) bool { return whatFor(way) == what })
}
