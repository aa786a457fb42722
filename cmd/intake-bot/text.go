package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"strings"
	"time"

	"example.com/intake-bot/internal/channels/terminal"
)

type textCommand struct {
	From  string   `default:"+12185550160" placeholder:"NUMBER" help:"The number to text from, like +12185550160."`
	Dir   string   `env:"DEMO_DIR" placeholder:"DIR" help:"The demo's folder, where it is not the usual one."`
	Words []string `arg:"" help:"What to say."`
}

// Run texts as a customer and shows what comes back.
func (c *textCommand) Run(ctx context.Context, s streams) error {
	base, err := findCarrier(c.Dir)
	if err != nil {
		return err
	}
	words := strings.Join(c.Words, " ")
	if strings.TrimSpace(words) == "" {
		return errors.New(`nothing to say: make text SAY="my skylight dome cracked"`)
	}
	ctx, cancel := context.WithTimeout(ctx, time.Minute)
	defer cancel()
	req, err := http.NewRequestWithContext(ctx, http.MethodPost, base+"/person/"+url.PathEscape(c.From), strings.NewReader(words))
	if err != nil {
		return fmt.Errorf("text the demo: %w", err)
	}
	req.Header.Set("Content-Type", "text/plain; charset=utf-8")
	res, err := http.DefaultClient.Do(req)
	if err != nil {
		return fmt.Errorf("the demo does not answer at %s: start it with make demo, in another terminal (%w)", base, err)
	}
	defer res.Body.Close()
	body, err := io.ReadAll(io.LimitReader(res.Body, 1<<20))
	if err != nil {
		return fmt.Errorf("text the demo: %w", err)
	}
	if res.StatusCode != http.StatusOK {
		return fmt.Errorf("the stand-in carrier says: %s", strings.TrimSpace(string(body)))
	}
	for _, line := range strings.Split(strings.TrimSpace(string(body)), "\n") {
		if _, err := fmt.Fprintln(s.out, terminal.Wrap("shop: ", line)); err != nil {
			return err
		}
	}
	return nil
}
