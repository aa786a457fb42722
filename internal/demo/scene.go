package demo

import (
	"context"
	"fmt"
	"regexp"
	"strings"
	"time"

	"example.com/intake-bot/internal/channels/terminal"
	"example.com/intake-bot/internal/conversation"
)

// scene is one customer's talk as it goes on.
type scene struct {
	stage    *Stage
	customer *Customer
	persona  *persona
	way      way
	ref      string
	talk     conversation.Talk
	heard    int // how many of the bot's texts were shown
	bot      []string
	broken   []string
}

func (s *scene) run(ctx context.Context) error {
	opens := s.customer.Opens
	if s.stage.Pace <= 0 {
		opens = []string{strings.Join(opens, "\n")}
	}
	for i, words := range opens {
		photos := 0
		if i == 0 {
			photos = s.customer.Encloses
		}
		if err := s.send(ctx, text{words: words, photos: photos}); err != nil {
			return err
		}
	}
	silent := 0
	for n := 0; ; n++ {
		before := s.heard
		if err := s.listen(ctx); err != nil {
			return err
		}
		if silent++; s.heard > before {
			silent = 0
		}
		asking := s.talk.Asking()
		if len(asking) == 0 {
			break
		}
		if n == mostTexts || silent == mostSilent {
			return fmt.Errorf("the talk comes to no end; asked now: %s", strings.Join(asking, ", "))
		}
		if err := s.send(ctx, s.persona.answer(asking)); err != nil {
			return err
		}
	}
	return s.close(ctx)
}

// close sends the last texts. After an opt-out one text comes, and nothing more.
func (s *scene) close(ctx context.Context) error {
	for _, words := range s.customer.Closes {
		before, silenced := s.heard, s.talk.State == conversation.Silenced
		if err := s.send(ctx, text{words: words}); err != nil {
			return err
		}
		if err := s.listen(ctx); err != nil {
			return err
		}
		answers := s.heard - before
		switch {
		case silenced && answers > 0:
			s.broken = append(s.broken, fmt.Sprintf("%d texts after the opt-out", answers))
		case !silenced && s.talk.State == conversation.Silenced && answers != 1:
			s.broken = append(s.broken, fmt.Sprintf("%d texts confirm the opt-out, not one", answers))
		}
		if answers == 0 {
			fmt.Fprintf(s.stage.Out, "      (no answer)\n")
		}
	}
	return nil
}

func (s *scene) send(ctx context.Context, t text) error {
	if err := s.pause(ctx, t.words); err != nil {
		return err
	}
	var photos [][]byte
	words := t.words
	for n := range t.photos {
		photo, err := drawPhoto(n)
		if err != nil {
			return err
		}
		photos = append(photos, photo)
		words = strings.TrimSpace(words + " [photo]")
	}
	fmt.Fprintln(s.stage.Out, terminal.Wrap("you:  ", words))
	if err := s.way.send(ctx, t.words, photos); err != nil {
		return err
	}
	if s.stage.Sent == nil {
		return nil
	}
	return s.stage.Sent(ctx)
}

// pause gives people who watch time to read.
func (s *scene) pause(ctx context.Context, words string) error {
	if s.stage.Pace <= 0 {
		return nil
	}
	select {
	case <-time.After(s.stage.Pace + time.Duration(len(words))*s.stage.Pace/60):
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// misheard are the sentences that should have come and did not, or the reverse.
func (s *scene) misheard() []string {
	all := strings.Join(s.bot, "\n")
	wrong := s.broken
	for _, pattern := range s.customer.Hears {
		if !regexp.MustCompile(pattern).MatchString(all) {
			wrong = append(wrong, fmt.Sprintf("nothing that the bot said matches %q", pattern))
		}
	}
	for _, pattern := range s.customer.Once {
		n := 0
		for _, text := range s.bot {
			if regexp.MustCompile(pattern).MatchString(text) {
				n++
			}
		}
		if n != 1 {
			wrong = append(wrong, fmt.Sprintf("%d of the bot's texts match %q, not one", n, pattern))
		}
	}
	for _, pattern := range s.customer.Never {
		if regexp.MustCompile(pattern).MatchString(all) {
			wrong = append(wrong, fmt.Sprintf("the bot said what matches %q", pattern))
		}
	}
	return wrong
}
