package staff

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// lookWords say why a photo may be of little use.
var lookWords = map[string]string{"too_dark": "dark", "blurred": "blurred", "too_small": "small", "same": "the same as another"}

// talkParts fills in photos, messages and history.
func (p *leadPage) talkParts(v *visit) {
	of := map[int][]photoPart{}
	for _, ph := range p.Lead.Photos {
		part := photoPart{TalkPhoto: ph, Of: strings.ToLower(topicName(fitcheck.Topic(ph.Of))), Shown: ph.State == "kept", Doubt: firstOf(lookWords[ph.Look], plain(ph.Why))}
		p.Photos = append(p.Photos, part)
		of[ph.N] = append(of[ph.N], part)
	}
	heard := map[int]bool{}
	for _, e := range p.Lead.Talk.Ledger {
		heard[e.Message] = true
	}
	for _, m := range p.Lead.Messages {
		p.Talk = append(p.Talk, said{TalkMessage: m, Author: p.author(m), When: p.clock.at(m.At), There: p.clock.there(m.At, p.Lead.TimeZone),
			Fate: fate(m), Photos: of[m.N], Noted: heard[m.N]})
	}
	for _, h := range p.Lead.History {
		p.History = append(p.History, historyRow{HistoryEntry: h, When: p.clock.at(h.At), Text: deedWords(h),
			Undo: undoable(h), Undid: h.UndoneBy != 0})
	}
}

func (p *leadPage) author(m db.TalkMessage) string {
	switch m.From {
	case conversation.FromBot:
		return "the assistant"
	case conversation.FromStaff:
		return "one of us"
	}
	return p.Who
}

// fate says what became of a message out, where it is not simply sent.
func fate(m db.TalkMessage) string {
	switch m.Send {
	case db.SendQueued:
		return "waits to be sent"
	case db.SendSending:
		return "on its way"
	case db.SendFailed:
		return "was refused (" + m.Code + ")"
	case db.SendHeld:
		return "was not sent: " + plain(m.Code)
	case db.SendUnknown:
		return "nobody can tell whether it went"
	}
	return ""
}

// forms fills in what can be chosen.
func (p *leadPage) forms(v *visit) {
	for _, r := range p.Lead.Reach {
		if r.Channel == conversation.Terminal {
			continue
		}
		name := channelWords[r.Channel] + " to " + firstOf(phoneWords(r.Address.Address), r.Address.Address)
		p.Reach = append(p.Reach, reachChoice{string(r.Channel) + " " + r.Address.Address, name, r.OptedOut})
	}
	if nightThere(v.now, p.Lead.TimeZone) {
		p.Night = "It is " + p.Theirs + " where they are."
		if p.Theirs == "" {
			p.Night = "It is night where they are."
		}
	}
	p.asks()
	p.topics()
	p.fixing(v.r.URL.Query().Get("fix"))
	for _, s := range []conversation.Status{conversation.StatusQuoted, conversation.StatusOrdered, conversation.StatusDeclined} {
		if s != p.Lead.Talk.Lead.Status {
			p.Marks = append(p.Marks, choice{string(s), statusWords[s]})
		}
	}
}

// askable are what the assistant may be sent to get.
var askable = []fitcheck.Topic{fitcheck.TopicCurbOutside, fitcheck.TopicCurbInside, fitcheck.TopicCurbDiagonals,
	fitcheck.TopicCurbHeight, fitcheck.TopicFrameInside, fitcheck.TopicPlasticSize, fitcheck.TopicRetainerOpening,
	fitcheck.TopicRetainerOutside, fitcheck.TopicBulgeBase, fitcheck.TopicDomeRise, fitcheck.TopicRoofSlope,
	fitcheck.TopicStyle, fitcheck.TopicFrameCondition, fitcheck.TopicLayers, fitcheck.TopicMaterial, fitcheck.TopicColor,
	fitcheck.TopicFinish, fitcheck.TopicImpactRisk}

func (p *leadPage) asks() {
	p.Asks = []choice{{"photos", "a photo of the whole skylight, edge and frame"}}
	units := max(p.Lead.Talk.UnitCount(), 1)
	for n := 1; n <= units; n++ {
		for _, t := range askable {
			name := strings.ToLower(topicName(t))
			if units > 1 {
				name += fmt.Sprintf(" of skylight %d", n)
			}
			p.Asks = append(p.Asks, choice{string(t) + "@" + strconv.Itoa(n), name})
		}
	}
}

// topics are what a fact may be of; one unit more than there are, for one that only
// staff heard of.
func (p *leadPage) topics() {
	lead := choiceGroup{Name: "the customer"}
	for _, t := range fitcheck.LeadTopics {
		if t != fitcheck.TopicConfirm && t != fitcheck.TopicPhotos {
			lead.Choices = append(lead.Choices, choice{string(t), topicName(t)})
		}
	}
	for n := 1; n <= p.Lead.Talk.UnitCount()+1; n++ {
		g := choiceGroup{Name: "skylight " + strconv.Itoa(n)}
		if n > p.Lead.Talk.UnitCount() {
			g.Name = "one more skylight (" + strconv.Itoa(n) + ")"
		}
		for _, t := range fitcheck.UnitTopics {
			g.Choices = append(g.Choices, choice{string(t) + "@" + strconv.Itoa(n), topicName(t)})
		}
		p.Topics = append(p.Topics, g)
	}
	p.Topics = append(p.Topics, lead)
}

func (p *leadPage) fixing(key string) {
	var a conversation.Ask
	if key == "" || a.UnmarshalText([]byte(key)) != nil {
		return
	}
	p.Fix.Topic = a.String()
	if e, seq := p.Lead.Entry(a.Topic, a.Unit); seq > 0 {
		p.Fix.Value = valueWords(e.Value)
	}
}

// deedWords say a line of history.
func deedWords(h db.HistoryEntry) string {
	d := h.Detail
	topic := func() string {
		var a conversation.Ask
		if a.UnmarshalText([]byte(d.Topic)) != nil {
			return plain(d.Topic)
		}
		name := strings.ToLower(topicName(a.Topic))
		if a.Unit > 1 {
			name += " of skylight " + strconv.Itoa(a.Unit)
		}
		return name
	}
	status := func(s string) string { return firstOf(statusWords[conversation.Status(s)], plain(s)) }
	switch h.Deed {
	case db.DeedTook:
		if d.Holder != "" {
			return "took it over from " + d.Holder
		}
		return "took it in hand"
	case db.DeedTookByText:
		return "took it in hand by text"
	case db.DeedPutBack:
		return "put it back"
	case db.DeedWrote:
		return "wrote to the customer"
	case db.DeedReleased:
		return "let the assistant go on"
	case db.DeedAsked:
		return "had the assistant ask for " + topic()
	case db.DeedCorrected:
		return change("set "+topic(), d)
	case db.DeedTookBack:
		return change("took back "+topic(), d)
	case db.DeedNoted:
		return "noted: " + d.Text
	case db.DeedMarked:
		return strings.TrimSuffix("marked it: "+status(d.Status)+". "+d.Text, " ")
	case db.DeedShut:
		return "shut it as spam"
	case db.DeedReopened:
		return "opened it again"
	case db.DeedMerged:
		return "joined lead " + d.Ref + " into this one"
	case db.DeedTookApart:
		return "took lead " + d.Ref + " out again"
	case db.DeedOpened:
		return "made this lead by hand"
	case db.DeedSaw:
		return "looked at it"
	case db.DeedShown:
		return "looked at all that is kept of a person"
	case db.DeedExported:
		return "exported all that is kept of a person"
	}
	return strings.TrimSpace(plain(string(h.Deed)) + " " + d.Ref + " " + d.Text)
}

func change(what string, d db.HistoryDetail) string {
	text := what
	if d.Before != "" {
		text += ", was " + d.Before
	}
	if d.After != "" {
		text += ", now " + d.After
	}
	if d.Verdict != "" {
		text += ". " + d.Verdict
	}
	if d.Text != "" {
		text += " (" + d.Text + ")"
	}
	return text
}

// undoable says whether a deed can be undone from the history.
func undoable(h db.HistoryEntry) bool {
	switch h.Deed {
	case db.DeedTook, db.DeedTookByText, db.DeedCorrected, db.DeedMarked, db.DeedShut, db.DeedMerged:
		return h.UndoneBy == 0
	}
	return false
}
