package main

import (
	"encoding/json"
	"fmt"
	"time"

	"example.com/intake-bot/internal/channels/terminal"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/shop"
)

type chatCommand struct {
	shopFlag
	JSON bool       `name:"json" help:"For programs: a message a line in (text, or {\"text\":…,\"photos\":[…]}), a line of JSON out for each, the lead at the end."`
	At   *time.Time `placeholder:"TIME" help:"Set the clock, like 2026-03-02T21:15:00-06:00; it then stands still."`
}

func (c *chatCommand) Run(s streams) error {
	f, err := c.load()
	if err != nil {
		return err
	}
	talkShop, err := talking(f)
	if err != nil {
		return err
	}
	now := time.Now
	if c.At != nil {
		now = func() time.Time { return *c.At }
	}
	partner := newChat(talkShop, f.Questions(), now)
	if c.JSON {
		bad, err := terminal.Lines(s.in, s.out, partner)
		if err == nil && bad > 0 {
			return errSilent
		}
		return err
	}
	greeting := terminal.Wrap("", fmt.Sprintf("You are a customer of %s. Write as you would text; /photo FILE sends a photo, Ctrl-D ends.", talkShop.Name))
	if err := terminal.Keyboard(s.in, s.out, greeting+"\n", s.terminal(), partner); err != nil {
		return err
	}
	lead, err := partner.Lead()
	if err != nil {
		return err
	}
	return writeSheet(s.out, lead)
}

// chat is a talk in memory: the same turns as the bot's, without a database.
type chat struct {
	shop     *conversation.Shop
	answers  *shop.Answers
	now      func() time.Time
	talk     conversation.Talk
	messages []conversation.Message
	photos   []conversation.RecordPhoto
}

// chatRef stands for a lead's ref where there is no database to make one.
const chatRef = "CHAT"

func newChat(s *conversation.Shop, answers *shop.Answers, now func() time.Time) *chat {
	return &chat{shop: s, answers: answers, now: now, talk: conversation.Talk{Ref: chatRef, Channel: conversation.Terminal,
		State: conversation.Opening, OpenedAt: now(), Lead: conversation.Lead{Status: conversation.StatusOpen}}}
}

// Answer takes a turn.
func (c *chat) Answer(m terminal.Message) (terminal.Answer, error) {
	now := c.now()
	in := c.keep(conversation.FromCustomer, m.Text, now)
	in.Photos, in.Answer = len(m.Photos), c.answers.Find(m.Text)
	out, err := conversation.Respond(c.talk, []conversation.Message{*in}, now, c.shop)
	if err != nil {
		return terminal.Answer{}, err
	}
	c.talk = out.Talk
	for k := range m.Photos {
		photo := conversation.RecordPhoto{ID: fmt.Sprintf("%s-%d-%d", chatRef, in.N, k+1), FromMessage: in.N}
		if of, ok := out.PhotosOf[in.N]; ok {
			photo.Of = &of
		}
		c.photos = append(c.photos, photo)
	}
	answer := terminal.Answer{Say: []string{}, Asking: c.talk.Asking(), State: string(c.talk.State)}
	for _, u := range out.Say {
		c.keep(conversation.FromBot, u.Text, now)
		answer.Say = append(answer.Say, u.Text)
	}
	answer.Over = len(answer.Asking) == 0 && c.talk.Lead.Status != conversation.StatusOpen
	return answer, nil
}

func (c *chat) keep(from, text string, at time.Time) *conversation.Message {
	c.messages = append(c.messages, conversation.Message{N: len(c.messages) + 1, At: at, From: from,
		Channel: conversation.Terminal, Text: text})
	return &c.messages[len(c.messages)-1]
}

// Lead is the lead record as it stands.
func (c *chat) Lead() (json.RawMessage, error) {
	r := conversation.NewRecord(c.talk, c.messages, c.photos)
	if r.Language == "" {
		r.Language = "en" // nothing was said yet
	}
	b, err := json.Marshal(r)
	if err != nil {
		return nil, fmt.Errorf("lead record: %w", err)
	}
	return b, nil
}
