package demo

import (
	"context"
	"crypto/rand"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// Filling puts invented leads in all states before the staff's page, so that there is
// something to look at. Each is a real talk with the bot, only without the way there.
type Filling struct {
	Pool  *pgxpool.Pool
	Shop  *conversation.Shop
	Now   time.Time
	Staff int64 // the account in whose hands some leads are
}

// passer is somebody who wrote at some time, and how far it went.
type passer struct {
	name, place string
	first       string // what they begin with
	curb        string
	inside      string
	plastic     string
	stops       int // after so many messages they fall silent; 0: they stay
	urgent      bool
}

var passers = []passer{
	{name: "Ana", place: "55802", first: "Hi, the dome on my skylight cracked in the hail. It's a house.", curb: "25 1/2 x 49 1/2", inside: "22 1/2 x 46 1/2"},
	{name: "Ben", place: "Madison, WI", first: "need two complete skylights for a flat roof, commercial building", curb: "38 1/4 x 38 1/4", inside: "35 1/4 x 35 1/4"},
	{name: "Carla", place: "89502", first: "Plastic dome is hazy, metal frame is fine", plastic: "25 3/4 x 49 3/4"},
	{name: "Dev", place: "Portland, OR", first: "URGENT water coming in, dome blew off and the hole is open", curb: "30 x 54", inside: "27 x 51", urgent: true},
	{name: "Elsa", place: "60614", first: "skylight leaks, want the whole unit", curb: "25 1/2 x 49 1/2", inside: "22 1/2 x 45"},
	{name: "Finn", place: "98103", first: "hello, do you sell domes?", stops: 2},
	{name: "Gwen", place: "Burlington, VT", first: "My skylight is flat glass and fogged up", curb: "22 x 46"},
	{name: "Hugo", place: "78704", first: "Can I talk to a person about a skylight", stops: 1},
	{name: "Ines", place: "33139", first: "need a complete curb mount skylight for our house", curb: "49 1/2 x 49 1/2", inside: "46 1/2 x 46 1/2"},
	{name: "Joan", place: "Boise, ID", first: "cracked dome on the garage", curb: "26 x 26", stops: 4},
}

// Fill makes n leads and gives the refs.
func (f *Filling) Fill(ctx context.Context, n int) ([]string, error) {
	refs := make([]string, 0, n)
	for i := range n {
		// The first have just come in; the others lie days apart.
		at := f.Now.Add(-time.Duration(20+i*17) * time.Minute)
		if i >= 12 {
			at = f.Now.Add(-time.Duration(i-8) * 29 * time.Hour)
		}
		ref, err := f.one(ctx, i, at)
		if err != nil {
			return refs, fmt.Errorf("invented lead %d: %w", i+1, err)
		}
		refs = append(refs, ref)
	}
	return refs, nil
}

func (f *Filling) one(ctx context.Context, i int, at time.Time) (ref string, err error) {
	p := passers[i%len(passers)]
	var id int64
	text := p.first
	for n := range 16 {
		err := pgx.BeginFunc(ctx, f.Pool, func(tx pgx.Tx) error {
			arrivals := db.Arrivals{NewRef: func() (string, error) { return db.NewRef(rand.Reader) }}
			kept, err := arrivals.Keep(ctx, tx, db.Arrival{Channel: conversation.SMS, Address: fmt.Sprintf("+1218555%04d", 100+i),
				ProviderID: fmt.Sprintf("FILL%d-%d", i, n), Text: text, At: at})
			if err != nil {
				return err
			}
			id = kept.ConversationID
			var asking []conversation.Ask
			ref, asking, err = f.turn(ctx, tx, id, at)
			text = p.answer(asking, n)
			return err
		})
		if err != nil {
			return ref, err
		}
		if text == "" {
			break
		}
		at = at.Add(time.Duration(1+i%3) * time.Minute)
	}
	return ref, f.further(ctx, id, i, at)
}

// turn lets the bot answer, as a job of it would.
func (f *Filling) turn(ctx context.Context, tx pgx.Tx, id int64, now time.Time) (ref string, asking []conversation.Ask, err error) {
	h, err := db.HoldTalk(ctx, tx, id)
	if err != nil {
		return "", nil, err
	}
	var in []conversation.Message
	for i := range h.Waiting {
		h.Waiting[i].Message.N = h.LastN + i + 1
		in = append(in, h.Waiting[i].Message)
	}
	out, err := conversation.Respond(h.Talk, in, now, f.Shop)
	if err != nil {
		return "", nil, err
	}
	if _, err := db.SaveTurn(ctx, tx, db.Turn{Held: h, Handled: h.Waiting, Outcome: out, To: h.Newest, Now: now,
		Record: conversation.NewRecord(out.Talk, nil, nil)}); err != nil {
		return "", nil, err
	}
	return out.Talk.Ref, out.Talk.Memory.Asking, db.TakeAsSent(ctx, tx, id)
}

// answer is what a passer writes to a question; "" where they write no more.
func (p *passer) answer(asking []conversation.Ask, n int) string {
	if len(asking) == 0 || p.stops > 0 && n+1 >= p.stops {
		return ""
	}
	said := map[string]string{
		"name": "I'm " + p.name + ", " + p.place, "place": p.place, "use": "a house, just one",
		"count": "one", "style": "metal frame on a raised wood box", "problem": "cracked, frame is good",
		"frame_condition": "good", "curb_outside": p.curb, "curb_inside": p.inside,
		"plastic_size": p.plastic, "layers": "2 layers, clear, acrylic, mill finish", "color": "clear",
		"material": "acrylic", "finish": "mill", "confirm": "yes", "photos": "can't",
	}
	if text := said[string(asking[0].Topic)]; text != "" {
		return text
	}
	return "I don't know"
}

// further is what staff did with some of them since.
func (f *Filling) further(ctx context.Context, id int64, i int, at time.Time) error {
	status := map[int]conversation.Status{13: conversation.StatusPickedUp, 15: conversation.StatusQuoted, 18: conversation.StatusOrdered, 21: conversation.StatusDeclined,
		24: conversation.StatusOrdered, 28: conversation.StatusQuoted, 30: conversation.StatusOrdered, 32: conversation.StatusPickedUp}[i]
	shut := i == 26
	if f.Staff == 0 || status == "" && !shut {
		return nil
	}
	return pgx.BeginFunc(ctx, f.Pool, func(tx pgx.Tx) error {
		h, err := db.HoldTalk(ctx, tx, id)
		if err != nil {
			return err
		}
		at = at.Add(time.Hour)
		deed, detail := db.DeedMarked, db.HistoryDetail{Status: string(status), From: string(h.Talk.Lead.Status)}
		out, err := conversation.StaffMark(h.Talk, status, at, f.Shop)
		if shut {
			deed = db.DeedShut
			out, err = conversation.StaffShut(h.Talk, at, f.Shop)
		}
		if err != nil {
			return err
		}
		if status == conversation.StatusPickedUp {
			deed, detail = db.DeedTook, db.HistoryDetail{}
		}
		if _, err := db.SaveDeed(ctx, tx, h, out, conversation.NewRecord(out.Talk, nil, nil), "", db.Address{}, at); err != nil {
			return err
		}
		if !shut {
			if err := db.TakeInHand(ctx, tx, id, f.Staff, at); err != nil {
				return err
			}
		}
		_, err = db.Note(ctx, tx, f.Staff, id, deed, detail, at)
		return err
	})
}
