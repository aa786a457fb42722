package main

import (
	"context"
	"fmt"
	"log/slog"
	"net"
	"strings"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/intake"
)

// post is the mail side of the bot: the mailbox that is watched, and the links that go
// out. Where the shop has no mailbox there are only the links.
type post struct {
	pictures    *intake.Pictures
	unsubscribe *intake.Unsubscribe
	watcher     *email.Watcher
	end         context.CancelFunc
	ended       chan struct{}
}

// newPost prepares the links; startBot opens the rest with addMail and watch.
func newPost(ctx context.Context, o botOptions) (*post, error) {
	key, err := db.LinkKey(ctx, o.pool, "picture")
	if err != nil {
		return nil, err
	}
	return &post{pictures: intake.NewPictures(key, o.publicURL, o.clock)}, nil
}

// addMail gives a service's options what mail takes, if the shop has any.
func (p *post) addMail(options *intake.Options, o botOptions, shop func() *conversation.Shop) error {
	if o.mail.address == "" {
		return nil
	}
	carrier, err := email.NewSender(email.SenderConfig{Address: o.mail.smtp.server, Security: o.mail.smtp.security,
		Account: o.mail.smtp.account, Hello: domainOf(o.mail.address)})
	if err != nil {
		return fmt.Errorf("SMTP_ADDRESS: %w", err)
	}
	options.Mail = intake.MailSettings{Own: []string{o.mail.address}, AuthServer: o.mail.authServer}
	if o.mail.checkDKIM {
		options.Mail.LookupTXT = lookupTXT
	}
	sender := intake.EmailSender{Pool: o.pool, Carrier: carrier, Address: o.mail.address, Picture: p.pictures.Mail, Step: o.hooks.step,
		Name: func() string { return shop().Name }, Foot: func() string { return footOf(shop()) }}
	if strings.HasPrefix(o.publicURL, "https://") { // RFC 8058 wants nothing less
		sender.Unsubscribe = func(messageID int64) string { return p.unsubscribe.Link(messageID) }
	}
	options.Senders[conversation.Email] = sender
	return nil
}

// footOf stands below each mail: who writes, and where a person is.
func footOf(s *conversation.Shop) string {
	foot := []string{s.Name}
	for _, line := range []string{s.Address, s.Phone, s.Email} {
		if line != "" {
			foot = append(foot, line)
		}
	}
	return strings.Join(foot, "\n")
}

func domainOf(address string) string { return address[strings.LastIndex(address, "@")+1:] }

// lookupTXT asks the domain name system, and not for long.
func lookupTXT(domain string) ([]string, error) {
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	return net.DefaultResolver.LookupTXT(ctx, domain)
}

// open makes the links that need the service, and the watcher of the mailbox.
func (p *post) open(ctx context.Context, o botOptions, service *intake.Service) error {
	key, err := db.LinkKey(ctx, o.pool, "mail")
	if err != nil {
		return err
	}
	p.unsubscribe = intake.NewUnsubscribe(service, key, o.publicURL)
	if o.mail.address == "" {
		return nil
	}
	p.watcher, err = email.NewWatcher(email.WatcherConfig{Address: o.mail.imap.server, Security: o.mail.imap.security,
		Account: o.mail.imap.account, Folder: o.mail.folder, TakenIn: o.mail.takenIn, Store: service.TakeMail, Log: o.log, Poll: o.mail.poll,
		Lock: mailboxLock(o.pool, o.mail, o.log)})
	if err != nil {
		return fmt.Errorf("IMAP_ADDRESS: %w", err)
	}
	return nil
}

func mailboxLock(pool *pgxpool.Pool, set mailSettings, log *slog.Logger) func(context.Context) (<-chan struct{}, func(), error) {
	return intake.MailboxLock(pool, strings.Join([]string{set.imap.server, set.imap.account.User, set.folder}, " "), log)
}

// health is how the watching of the mailbox goes; nil where there is none.
func (p *post) health() func() email.Health {
	if p.watcher == nil {
		return nil
	}
	return p.watcher.Health
}

// watch takes mail in until stop.
func (p *post) watch() {
	if p.watcher == nil {
		return
	}
	ctx, cancel := context.WithCancel(context.Background())
	p.end, p.ended = cancel, make(chan struct{})
	go func() {
		defer close(p.ended)
		_ = p.watcher.Run(ctx) // it returns the context's end
	}()
}

// stop takes no more mail in. What is stored but not yet moved away comes again, and
// changes nothing then.
func (p *post) stop() {
	if p.end != nil {
		p.end()
		<-p.ended
	}
}
