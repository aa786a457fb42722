package staff

import (
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// leadPage is one lead: what to do, whether one can order from it, and what the customer
// really said.
type leadPage struct {
	frame
	Lead     *db.LeadView
	Status   string
	Stroke   string
	Who      string // the customer
	Phone    string
	Email    string
	Where    string
	Theirs   string // the time of day where they are
	Channel  string
	State    string
	Waited   string
	Hands    string // in whose hands, empty for nobody's
	Mine     bool
	Free     bool // nobody has it
	Done     bool // ordered, declined or shut
	Quiet    bool // the assistant says nothing
	OptedOut bool
	Head     string // can one order from it?
	Way      string // how the answer is drawn: go, notyet, over
	Do       []string
	Units    []unitPart
	Facts    []factRow // of the whole lead
	Cautions []string
	Photos   []photoPart
	Talk     []said
	Reach    []reachChoice
	Night    string // a caution before a text at night there
	Asks     []choice
	Topics   []choiceGroup
	Fix      fixForm
	History  []historyRow
	Others   []db.Other
	Marks    []choice
	Before   string // draft kept after something went wrong
}

// unitPart is one kind of unit with what the check says.
type unitPart struct {
	N        int
	Several  bool
	Title    string
	Part     string
	Verdict  string
	Order    string // size to be ordered, in words
	Stock    string
	Span     string // where only a range is known
	Why      string
	Facts    []factRow
	Findings []finding
	Missing  string
	Wanted   string // photos
	Ship     string
	ShipNote []string
	Estimate string
	Lines    []fitcheck.EstimateLine
	NoPrice  string
	Drawn    bool
}

// factRow is a number or choice with the words that it came from.
type factRow struct {
	Topic   fitcheck.Topic
	Unit    int
	Name    string
	Value   string
	Said    string
	Message int  // jump to it; 0: none
	Ours    bool // staff's own
	Seq     int
	Older   []string // what stood before
	Doubt   bool     // a finding speaks of it
}

type finding struct {
	Word     string
	Severity fitcheck.Severity
	Text     string
	Source   string
	Code     string
}

type photoPart struct {
	db.TalkPhoto
	Of    string
	Doubt string // why it may be of little use
	Shown bool
}

type said struct {
	db.TalkMessage
	Author string
	When   string
	There  string
	Fate   string // of a message out
	Photos []photoPart
	Noted  bool // reading took something from it
}

type choice struct{ Value, Name string }

type choiceGroup struct {
	Name    string
	Choices []choice
}

type reachChoice struct {
	Value, Name string
	OptedOut    bool
}

// fixForm is the form for a fact, filled in where one row is to be put right.
type fixForm struct {
	Topic, Value, Hint string
}

type historyRow struct {
	db.HistoryEntry
	When  string
	Text  string
	Undo  bool
	Undid bool
}

func (s *Server) lead(v *visit) error {
	view, err := db.ViewLead(v.ctx, s.opts.Pool, v.r.PathValue("ref"))
	if err != nil {
		return err
	}
	if view.Talk.Ref != v.r.PathValue("ref") {
		http.Redirect(v.w, v.r, Base+"/lead/"+view.Talk.Ref, http.StatusSeeOther)
		return nil
	}
	if err := db.NoteSeen(v.ctx, s.opts.Pool, v.who.ID, view.ID, v.now); err != nil {
		return err
	}
	p, err := v.leadPage(view)
	if err != nil {
		return err
	}
	return v.show(http.StatusOK, "lead.html", p)
}

func (v *visit) leadPage(view *db.LeadView) (*leadPage, error) {
	t := &view.Talk
	check := conversation.Look(*t, v.shop())
	record := conversation.NewRecord(*t, nil, nil)
	p := &leadPage{frame: v.frame("Lead " + t.Ref), Lead: view, Status: statusWords[t.Lead.Status], Stroke: string(t.Lead.Status),
		Phone: word(record.Customer.Phone), Email: word(record.Customer.Email), Channel: channelWords[t.Channel],
		State: stateWords[t.State], Quiet: t.Memory.Quiet || t.State == conversation.WithStaff,
		Mine: view.Hands.StaffID == v.who.ID, Free: view.Hands.StaffID == 0, Hands: view.Hands.Name,
		OptedOut: t.State == conversation.Silenced, Others: view.Others}
	p.Live = true
	p.Who = firstOf(word(record.Customer.Name), phoneWords(p.Phone), p.Email, "somebody")
	p.Where = placeWords(word(record.Place.City), word(record.Place.State), word(record.Place.ZIP))
	p.Theirs = p.clock.there(v.now, view.TimeZone)
	switch t.Lead.Status {
	case conversation.StatusOrdered, conversation.StatusDeclined, conversation.StatusClosed:
		p.Done = true
	}
	if view.Since != nil {
		p.Waited = howLong(v.now.Sub(*view.Since))
	}
	p.checkParts(v, check)
	p.talkParts(v)
	p.forms(v)
	return p, nil
}

func word(s *string) string {
	if s == nil {
		return ""
	}
	return *s
}

// checkParts fills in what the check says.
func (p *leadPage) checkParts(v *visit, check fitcheck.Result) {
	units := p.Lead.Talk.Units()
	for i, u := range units {
		p.Units = append(p.Units, p.unitPart(i+1, u, check.Units[i], len(units) > 1))
	}
	for _, t := range fitcheck.LeadTopics {
		if row, ok := p.row(t, 0, nil); ok {
			p.Facts = append(p.Facts, row)
		}
	}
	for _, c := range check.Cautions {
		p.Cautions = append(p.Cautions, firstOf(cautionWords[c], plain(c)))
	}
	p.Head, p.Way = p.canOrder(check)
	p.Do = whatToDo(p, check)
	for i := range p.Units {
		p.Units[i].Drawn = drawable(units[i])
	}
}

// drawable says whether there is anything to draw to scale.
func drawable(u fitcheck.Unit) bool {
	for _, t := range fitcheck.SizeTopics {
		if u.SizeOf(t).Complete() {
			return true
		}
	}
	return false
}

func (p *leadPage) unitPart(n int, u fitcheck.Unit, r fitcheck.UnitResult, several bool) unitPart {
	part := unitPart{N: n, Several: several, Title: fmt.Sprintf("Skylight %d", n), Part: partWords[r.Replace],
		Verdict: verdictWords[r.Verdict], Why: reasons(r.Reasons), Missing: topicList(r.Missing), Wanted: topicList(r.PhotosWanted)}
	if !several {
		part.Title = "The skylight"
	}
	if u.Count > 1 {
		part.Title += fmt.Sprintf(", %d of it", u.Count)
	}
	part.order(r.Order)
	doubt := map[fitcheck.Topic]bool{}
	for _, f := range r.Findings {
		doubt[f.Topic] = doubt[f.Topic] || f.Severity != fitcheck.Note
		part.Findings = append(part.Findings, finding{severityWords[f.Severity], f.Severity, f.Text, f.Source, plain(string(f.Code))})
	}
	for _, t := range fitcheck.UnitTopics {
		if row, ok := p.row(t, n, doubt); ok {
			part.Facts = append(part.Facts, row)
		}
	}
	part.ship(r.Ship)
	if e := r.Estimate; e != nil {
		part.NoPrice, part.Lines = e.Reason, e.Lines
		if e.Reason == "" {
			part.Estimate = fmt.Sprintf("%d to %d %s", e.Low, e.High, e.Currency)
		}
	}
	return part
}

func (u *unitPart) order(o *fitcheck.Order) {
	switch {
	case o == nil:
	case o.FrameInside != nil:
		u.Order = sizeWords(*o.FrameInside) + " inside the flange"
	case o.PlasticSize != nil:
		u.Order = sizeWords(*o.PlasticSize) + " plastic, edge to edge"
	case o.Low != nil && o.High != nil:
		u.Span = sizeWords(*o.Low) + " to " + sizeWords(*o.High)
	}
	if o != nil && o.Stock != nil {
		u.Stock = *o.Stock
	}
}

func (u *unitPart) ship(s *fitcheck.Ship) {
	if s == nil {
		return
	}
	u.ShipNote = s.Notes
	switch s.By {
	case "staff":
		u.Ship = "to be worked out by one of us"
		return
	case "freight":
		u.Ship = "freight"
		if s.FreightClass != nil {
			u.Ship += ", class " + strconv.FormatFloat(*s.FreightClass, 'f', -1, 64)
		}
	default:
		u.Ship = s.By
	}
	u.Ship += fmt.Sprintf(": each %.1f lb, billed as %d lb", s.WeightLb, s.BilledLb)
	if c := s.CartonIn; c[0] > 0 {
		u.Ship += fmt.Sprintf(", carton %g x %g x %g in", c[0], c[1], c[2])
	}
}

func topicList(topics []fitcheck.Topic) string {
	words := make([]string, len(topics))
	for i, t := range topics {
		words[i] = strings.ToLower(topicName(t))
	}
	return strings.Join(words, "; ")
}

// row is the fact that stands for a topic, with what stood before it.
func (p *leadPage) row(t fitcheck.Topic, unit int, doubt map[fitcheck.Topic]bool) (factRow, bool) {
	e, seq := p.Lead.Entry(t, unit)
	if seq == 0 {
		return factRow{}, false
	}
	row := factRow{Topic: t, Unit: unit, Name: topicName(t), Value: valueWords(e.Value), Said: e.Said, Message: e.Message,
		Ours: e.By == conversation.FromStaff, Seq: seq, Doubt: doubt[t]}
	if t == fitcheck.TopicPhone {
		row.Value = phoneWords(row.Value)
	}
	for i, old := range p.Lead.Talk.Ledger {
		if old.Topic == t && old.Unit == unit && i+1 != seq {
			was := valueWords(old.Value)
			if old.Undone {
				was += " (taken back)"
			}
			row.Older = append(row.Older, was)
		}
	}
	return row, true
}

// Key is the row's topic and unit as the form names them.
func (r factRow) Key() string { return conversation.Ask{Topic: r.Topic, Unit: r.Unit}.String() }

// nightThere says whether it is night where the customer may be.
func nightThere(now time.Time, zone string) bool {
	there, err := time.LoadLocation(zone)
	if zone == "" || err != nil {
		return false
	}
	hour := now.In(there).Hour()
	return hour < 8 || hour >= 20
}
