package staff

import (
	"fmt"
	"net/http"
	"slices"
	"strings"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// checkPage is the fit check by hand, for a customer on the phone.
type checkPage struct {
	frame
	Groups []checkGroup
	Fields []checkField // of all groups
	Who    []checkField // for a lead that is made of it
	Result *unitPart
	Cure   []string // cautions
}

type checkField struct {
	Topic   string
	Name    string
	Value   string
	Hint    string
	Choices []choice
	Wrong   string
}

// checkGroup is some of the fields, from one place to before another.
type checkGroup struct {
	Name     string
	from, to int
}

// Of are the fields of a group.
func (p *checkPage) Of(g checkGroup) []checkField { return p.Fields[g.from:g.to] }

// checkHints show how a value is written.
var checkHints = map[fitcheck.Topic]string{
	fitcheck.TopicPlace: "55802, or Duluth, MN", fitcheck.TopicCount: "1", fitcheck.TopicCurbOutside: "25 1/2 x 49 1/2", fitcheck.TopicCurbInside: "22 1/2 x 46 1/2",
	fitcheck.TopicCurbDiagonals: "55 3/4 and 55 5/8", fitcheck.TopicCurbHeight: "4", fitcheck.TopicFrameInside: "25 7/8 x 49 7/8", fitcheck.TopicPlasticSize: "25 3/4 x 49 3/4, 30 round",
	fitcheck.TopicRetainerOpening: "23 1/2 x 47 1/2", fitcheck.TopicRetainerOutside: "26 x 50", fitcheck.TopicBulgeBase: "22 x 46", fitcheck.TopicDomeRise: "6",
	fitcheck.TopicRoofSlope: "4/12, or flat", fitcheck.TopicLayers: "1, 2 or 3", fitcheck.TopicColor: "clear over white", fitcheck.TopicProblem: "cracked, leaking",
	fitcheck.TopicImpactRisk: "hail, trees, none", fitcheck.TopicPhone: "(218) 555-0142", fitcheck.TopicEmail: "ana@example.com",
}

// checkTopics are the form's, in the order in which one asks on the phone.
var checkTopics = []fitcheck.Topic{fitcheck.TopicUse, fitcheck.TopicPlace, fitcheck.TopicCount, fitcheck.TopicStyle,
	fitcheck.TopicWant, fitcheck.TopicFrameCondition, fitcheck.TopicProblem, fitcheck.TopicRoofSlope, fitcheck.TopicRoofCovering, fitcheck.TopicImpactRisk,
	fitcheck.TopicCurbOutside, fitcheck.TopicCurbInside, fitcheck.TopicCurbDiagonals, fitcheck.TopicCurbHeight,
	fitcheck.TopicFrameInside, fitcheck.TopicPlasticSize, fitcheck.TopicRetainerOpening, fitcheck.TopicRetainerOutside,
	fitcheck.TopicBulgeBase, fitcheck.TopicDomeRise, fitcheck.TopicOutline, fitcheck.TopicProfile,
	fitcheck.TopicLayers, fitcheck.TopicMaterial, fitcheck.TopicColor, fitcheck.TopicFinish}

var whoTopics = []fitcheck.Topic{fitcheck.TopicName, fitcheck.TopicPhone, fitcheck.TopicEmail}

// choicesOf lists the values of a topic that has only a few, as the fit check's own error
// names them, so that the two can't differ.
func choicesOf(t fitcheck.Topic) []choice {
	switch t {
	case fitcheck.TopicProblem, fitcheck.TopicImpactRisk, fitcheck.TopicPlace, fitcheck.TopicColor, fitcheck.TopicName:
		return nil
	}
	_, err := fitcheck.DecodeValue(t, []byte(`"?"`))
	if err == nil {
		return nil
	}
	_, allowed, found := strings.Cut(err.Error(), "must be one of ")
	if !found {
		return nil
	}
	var out []choice
	for _, value := range strings.Split(allowed, ", ") {
		out = append(out, choice{value, plain(value)})
	}
	return out
}

func (s *Server) checkForm(v *visit) error {
	return v.show(http.StatusOK, "check.html", v.checkPage())
}

func (v *visit) checkPage() *checkPage {
	p := &checkPage{frame: v.frame("Check numbers")}
	for _, t := range checkTopics {
		p.Fields = append(p.Fields, checkField{Topic: string(t), Name: topicName(t), Choices: choicesOf(t), Hint: checkHints[t], Value: clean(v.r.PostFormValue(string(t)))})
	}
	at := func(t fitcheck.Topic) int { return slices.Index(checkTopics, t) }
	p.Groups = []checkGroup{{"Where and what", 0, at(fitcheck.TopicCurbOutside)}, {"The curb, in inches (or 648 mm)", at(fitcheck.TopicCurbOutside), at(fitcheck.TopicFrameInside)},
		{"The old skylight", at(fitcheck.TopicFrameInside), at(fitcheck.TopicLayers)}, {"The new one", at(fitcheck.TopicLayers), len(checkTopics)}}
	for _, t := range whoTopics {
		p.Who = append(p.Who, checkField{Topic: string(t), Name: topicName(t), Hint: checkHints[t], Value: clean(v.r.PostFormValue(string(t)))})
	}
	return p
}

// entries reads the form as facts; wrong fields are marked.
func (p *checkPage) entries(fields []checkField) (entries []conversation.Entry, ok bool) {
	ok = true
	for i := range fields {
		f := &fields[i]
		if f.Value == "" {
			continue
		}
		topic := fitcheck.Topic(f.Topic)
		value, err := readValue(topic, f.Value)
		if err != nil {
			f.Wrong, ok = err.Error(), false
			continue
		}
		e := conversation.Entry{Topic: topic, Value: value, Said: f.Value, By: conversation.FromStaff}
		if topic.OfUnit() {
			e.Unit = 1
		}
		entries = append(entries, e)
	}
	return entries, ok
}

// check shows what the check says of the form's numbers.
func (s *Server) check(v *visit) error {
	p := v.checkPage()
	entries, ok := p.entries(p.Fields)
	if !ok {
		return v.show(http.StatusUnprocessableEntity, "check.html", p)
	}
	talk := conversation.Talk{Ledger: entries}
	if talk.UnitCount() == 0 {
		p.Bad = "Enter at least one thing about the skylight."
		return v.show(http.StatusUnprocessableEntity, "check.html", p)
	}
	result := conversation.Look(talk, v.shop())
	page := leadPage{Lead: &db.LeadView{Talk: talk}}
	part := page.unitPart(1, talk.Units()[0], result.Units[0], false)
	p.Result = &part
	for _, c := range result.Cautions {
		p.Cure = append(p.Cure, firstOf(cautionWords[c], plain(c)))
	}
	return v.show(http.StatusOK, "check.html", p)
}

// openByHand makes a lead of the form: the customer called, so all of it is in staff's
// words, and the lead is in the hands of who took the call.
func (s *Server) openByHand(v *visit) error {
	p := v.checkPage()
	entries, ok := p.entries(p.Fields)
	who, also := p.entries(p.Who)
	if !ok || !also {
		return v.show(http.StatusUnprocessableEntity, "check.html", p)
	}
	talk := conversation.Talk{Channel: conversation.Terminal, Ledger: append(who, entries...), Language: "en"}
	for _, e := range who {
		switch text, _ := e.Value.(fitcheck.Text); e.Topic {
		case fitcheck.TopicEmail:
			talk.Email, talk.Channel = strings.ToLower(string(text)), conversation.Email
		case fitcheck.TopicPhone:
			talk.Phone = string(text)
		}
	}
	if talk.Phone != "" {
		talk.Channel = conversation.SMS
	}
	if talk.Phone+talk.Email == "" {
		p.Bad = "A lead needs a number or a mail address, so that one can call back."
		return v.show(http.StatusUnprocessableEntity, "check.html", p)
	}
	var ref string
	err := pgx.BeginFunc(v.ctx, s.opts.Pool, func(tx pgx.Tx) (err error) {
		var id int64
		if ref, id, err = db.OpenByHand(v.ctx, tx, talk, v.now); err != nil {
			return err
		}
		return v.doIn(tx, id, func(d *deed) error { return d.opened(talk.Ledger) })
	})
	if err != nil {
		return err
	}
	return v.done(Base+"/lead/"+ref, "Lead %s was made and is in your hands.", ref)
}

func (d *deed) opened(entries []conversation.Entry) error {
	if err := d.note(db.DeedOpened, db.HistoryDetail{}); err != nil {
		return err
	}
	for _, e := range entries {
		if err := d.then(func(t conversation.Talk) (conversation.Outcome, error) {
			return conversation.StaffFact(t, e, d.v.now, d.v.shop())
		}); err != nil {
			return fmt.Errorf("lead by hand: %w", err)
		}
	}
	if err := d.then(func(t conversation.Talk) (conversation.Outcome, error) {
		return conversation.StaffWrote(t, d.v.now, d.v.shop()) // silent until it is let go on
	}); err != nil {
		return err
	}
	return d.hold()
}
