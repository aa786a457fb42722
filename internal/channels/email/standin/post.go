// Package standin is a post office in miniature, for the demo and the tests: one mailbox
// that is read by IMAP, and a submission server that takes the shop's mail and keeps
// it. It can be told to fail as real servers do. No mail ever leaves the machine.
package standin

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log"
	"net"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/emersion/go-imap/v2"
	"github.com/emersion/go-imap/v2/imapserver"
	"github.com/emersion/go-imap/v2/imapserver/imapmemserver"
	"github.com/emersion/go-smtp"
)

// Config is the one mailbox that there is.
type Config struct {
	Address  string // the shop's, also the name to log in with
	Password string
	// OnMail is told of each mail once, in either direction. It must not call the post
	// office.
	OnMail func(Mail)
	Now    func() time.Time // nil: time.Now
}

// Mail is one mail that was put into the mailbox, or that the shop sent.
type Mail struct {
	Inbound  bool // from a person to the shop
	From, To string
	Raw      []byte
	At       time.Time
}

// Office is the stand-in. Its zero value is of no use; see New.
type Office struct {
	cfg  Config
	user *imapmemserver.User

	mu      sync.Mutex
	mails   []Mail
	changed chan struct{}
	next    []Fault
	refused map[string]int

	imap, smtp string
	imapServer *imapserver.Server
	submission *smtp.Server
	serving    sync.WaitGroup
}

// New makes an office with an empty mailbox.
func New(cfg Config) (*Office, error) {
	if cfg.Now == nil {
		cfg.Now = time.Now
	}
	o := &Office{cfg: cfg, user: imapmemserver.NewUser(cfg.Address, cfg.Password),
		changed: make(chan struct{}), refused: map[string]int{}}
	if err := o.user.Create("INBOX", nil); err != nil {
		return nil, fmt.Errorf("stand-in mailbox: %w", err)
	}
	return o, nil
}

// Start serves on two ports of this machine until Close.
func (o *Office) Start() error {
	if err := o.StartMailbox(); err != nil {
		return err
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return fmt.Errorf("stand-in submission: %w", err)
	}
	o.smtp = l.Addr().String()
	o.submission = smtp.NewServer(backend{o})
	o.submission.Domain, o.submission.AllowInsecureAuth = "localhost", true
	o.submission.MaxMessageBytes, o.submission.MaxRecipients = 40<<20, 10
	o.submission.ErrorLog = log.New(io.Discard, "", 0)
	o.serving.Go(func() { _ = o.submission.Serve(l) }) // ends with Close
	return nil
}

// StartMailbox serves the mailbox again after StopMailbox, on the same port.
func (o *Office) StartMailbox() error {
	address := "127.0.0.1:0"
	if o.imap != "" {
		address = o.imap
	}
	l, err := net.Listen("tcp", address)
	if err != nil {
		return fmt.Errorf("stand-in mailbox: %w", err)
	}
	o.imap = l.Addr().String()
	users := imapmemserver.New()
	users.AddUser(o.user)
	server := imapserver.New(&imapserver.Options{
		NewSession: func(*imapserver.Conn) (imapserver.Session, *imapserver.GreetingData, error) {
			return users.NewSession(), nil, nil
		},
		Caps:         imap.CapSet{imap.CapIMAP4rev1: {}, imap.CapMove: {}, imap.CapUIDPlus: {}},
		InsecureAuth: true, Logger: log.New(io.Discard, "", 0),
	})
	o.imapServer = server
	o.serving.Go(func() { _ = server.Serve(l) }) // ends with StopMailbox
	return nil
}

// StopMailbox takes the mailbox away, as a restart of its server does; mail stays.
func (o *Office) StopMailbox() error { return o.imapServer.Close() }

// Close stops serving.
func (o *Office) Close() error {
	err := o.imapServer.Close()
	if o.submission != nil {
		err = errors.Join(err, o.submission.Close())
	}
	o.serving.Wait()
	return err
}

// IMAP and SMTP are the addresses that are served, host and port.
func (o *Office) IMAP() string { return o.imap }
func (o *Office) SMTP() string { return o.smtp }

// Put lays a mail from a person into the mailbox, as the receiving server would: with
// the envelope's sender on top.
func (o *Office) Put(from string, raw []byte) error {
	full := slices.Concat([]byte("Return-Path: <"+from+">\r\n"), raw)
	r := &literal{Reader: strings.NewReader(string(full)), size: int64(len(full))}
	if _, err := o.user.Append("INBOX", r, &imap.AppendOptions{Time: o.cfg.Now()}); err != nil {
		return fmt.Errorf("stand-in mailbox: %w", err)
	}
	o.keep(Mail{Inbound: true, From: from, To: o.cfg.Address, Raw: full})
	return nil
}

type literal struct {
	io.Reader
	size int64
}

func (l *literal) Size() int64 { return l.size }

// Left is how many mails lie in a folder; -1 where there is no such folder.
func (o *Office) Left(folder string) int {
	d, err := o.user.Status(folder, &imap.StatusOptions{NumMessages: true})
	if err != nil || d.NumMessages == nil {
		return -1
	}
	return int(*d.NumMessages)
}

func (o *Office) keep(m Mail) {
	o.mu.Lock()
	defer o.mu.Unlock()
	m.At = o.cfg.Now()
	o.mails = append(o.mails, m)
	close(o.changed)
	o.changed = make(chan struct{})
	if o.cfg.OnMail != nil {
		o.cfg.OnMail(m)
	}
}

// To are the mails that the shop sent to an address, oldest first.
func (o *Office) To(address string) []Mail {
	o.mu.Lock()
	defer o.mu.Unlock()
	var found []Mail
	for _, m := range o.mails {
		if !m.Inbound && strings.EqualFold(m.To, address) {
			found = append(found, m)
		}
	}
	return found
}

// WaitTo waits until the shop has sent n mails to an address, and returns them.
func (o *Office) WaitTo(ctx context.Context, address string, n int) ([]Mail, error) {
	for {
		o.mu.Lock()
		changed := o.changed
		o.mu.Unlock()
		if got := o.To(address); len(got) >= n {
			return got, nil
		}
		select {
		case <-changed:
		case <-ctx.Done():
			return o.To(address), fmt.Errorf("waiting for %d mails: %w", n, ctx.Err())
		}
	}
}
