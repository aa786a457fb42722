package preflight

import (
	"context"
	"net"
	"net/http"
	"strings"
	"sync"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/sms"
)

// Settings are what the bot would be started with. What is missing in them is told as
// wrong by whoever read them, and not looked at here.
type Settings struct {
	DatabaseURL string
	ShopFile    string
	// ReadShop reads the shop file as the bot does; found is a word on whose it is, and
	// example names what is still the invented shop's: "name", "phone".
	ReadShop  func(path string) (found string, example []string, err error)
	PublicURL string
	Carrier   *sms.Config // nil: not looked at
	Mail      *Mail       // nil: the shop only texts

	Transport http.RoundTripper // to PUBLIC_URL; nil: the usual one, and straight there
	Lookup    func(ctx context.Context, host string) ([]string, error)
	Now       func() time.Time
	Patience  time.Duration // with each server; 0: 15 s
}

// Mail is the shop's mailbox and the server that takes its mail.
type Mail struct {
	Box  email.WatcherConfig
	Post email.SenderConfig
}

func (s *Settings) fill() {
	if s.Lookup == nil {
		s.Lookup = net.DefaultResolver.LookupHost
	}
	if s.Now == nil {
		s.Now = time.Now
	}
	if s.Patience == 0 {
		s.Patience = 15 * time.Second
	}
}

// Run makes all checks, side by side, and gives their lines in an order for reading.
func Run(ctx context.Context, s Settings) []Line {
	s.fill()
	checks := []func(context.Context, *Settings) []Line{checkShop, checkDatabase, checkCarrier, checkAddress, checkMailbox, checkPost}
	found := make([][]Line, len(checks))
	var group sync.WaitGroup
	for i, check := range checks {
		group.Go(func() {
			ctx, cancel := context.WithTimeout(ctx, s.Patience)
			defer cancel()
			found[i] = check(ctx, &s)
		})
	}
	group.Wait()
	var lines []Line
	for _, some := range found {
		lines = append(lines, some...)
	}
	return lines
}

func checkShop(_ context.Context, s *Settings) []Line {
	const check = "shop file"
	if s.ShopFile == "" {
		return nil
	}
	found, example, err := s.ReadShop(s.ShopFile)
	switch {
	case err != nil:
		return []Line{wrong(check, err.Error(), "mend the lines named here; intake-bot shop check "+s.ShopFile+" looks again, intake-bot init writes a new one")}
	case len(example) > 0:
		return []Line{unknown(check, found, "still the invented shop's, which customers would be told: "+strings.Join(example, ", ")+". Put your own in "+s.ShopFile)}
	}
	return []Line{ok(check, "%s", found)}
}
