package email

import (
	"context"
	"errors"
	"fmt"
	"net"
	"time"

	"github.com/emersion/go-imap/v2"
	"github.com/emersion/go-imap/v2/imapclient"
)

// session is one connection to the mailbox. The library has neither contexts nor
// timeouts for its commands: a command on a server that hangs returns only when the
// connection is closed, which is what do sees to.
type session struct {
	w        *Watcher
	ctx      context.Context
	c        *imapclient.Client
	stop     func() bool
	validity uint32
	news     chan struct{} // something changed in the folder

	unreadable map[imap.UID]bool // the server refuses to give these
}

var errSlow = errors.New("mail server did not answer in time")

func (w *Watcher) connect(ctx context.Context) (*session, error) {
	dialing, cancel := context.WithTimeout(ctx, w.cfg.Command)
	defer cancel()
	conn, err := w.cfg.Security.dial(dialing, w.cfg.Address, w.cfg.TLS)
	if err != nil {
		return nil, err
	}
	s := &session{w: w, ctx: ctx, news: make(chan struct{}, 1), unreadable: map[imap.UID]bool{}}
	if err := s.greet(conn); err != nil {
		conn.Close()
		return nil, err
	}
	s.stop = context.AfterFunc(ctx, func() { s.c.Close() })
	if err := s.login(); err != nil {
		s.close()
		return nil, err
	}
	return s, nil
}

func (s *session) greet(conn net.Conn) error {
	// Nothing may be asked of the server from within the handler.
	options := &imapclient.Options{
		TLSConfig: tlsFor(s.w.cfg.Address, s.w.cfg.TLS),
		UnilateralDataHandler: &imapclient.UnilateralDataHandler{
			Mailbox: func(d *imapclient.UnilateralDataMailbox) {
				if d.NumMessages != nil {
					s.tell()
				}
			},
		},
	}
	watchdog := time.AfterFunc(s.w.cfg.Command, func() { conn.Close() })
	defer watchdog.Stop()
	if s.w.cfg.Security == StartTLS {
		c, err := imapclient.NewStartTLS(conn, options)
		if err != nil {
			return fmt.Errorf("STARTTLS: %w", err)
		}
		s.c = c
		return nil
	}
	s.c = imapclient.New(conn, options)
	if err := s.c.WaitGreeting(); err != nil {
		return fmt.Errorf("greeting: %w", err)
	}
	return nil
}

func (s *session) tell() {
	select {
	case s.news <- struct{}{}:
	default:
	}
}

// do runs one command, and closes the connection under it when it takes too long or the
// context ends.
func (s *session) do(what string, f func() error) error {
	return s.doFor(s.w.cfg.Command, what, f)
}

func (s *session) doFor(d time.Duration, what string, f func() error) error {
	slow := false
	done := make(chan struct{})
	watchdog := time.AfterFunc(d, func() {
		defer close(done)
		slow = true
		s.c.Close()
	})
	err := f()
	if !watchdog.Stop() {
		<-done
	}
	if slow {
		return fmt.Errorf("%s: %w", what, errSlow)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", what, err)
	}
	return nil
}

func (s *session) login() error {
	a := s.w.cfg.Account
	if a.Token == nil {
		return s.do("log in", func() error { return s.c.Login(a.User, a.Password).Wait() })
	}
	var caps imap.CapSet
	if err := s.do("capabilities", func() error { caps = s.c.Caps(); return nil }); err != nil {
		return err
	}
	m, err := a.mechanism(s.ctx, func(name string) bool { return caps.Has(imap.AuthCap(name)) })
	if err != nil {
		return err
	}
	return s.do("log in", func() error { return s.c.Authenticate(m) })
}

// open makes the folder for what is taken in, and opens the one that is watched.
func (s *session) open() error {
	taken := s.w.cfg.TakenIn
	if err := s.do("make the folder", func() error { return s.c.Create(taken, nil).Wait() }); err != nil {
		var said *imap.Error
		if !errors.As(err, &said) {
			return err
		}
		// It said no: mostly because the folder is there. That is now looked at.
		if err := s.do("look at the folder", func() error {
			_, err := s.c.Status(taken, &imap.StatusOptions{UIDValidity: true}).Wait()
			return err
		}); err != nil {
			return err
		}
	}
	return s.do("open the mailbox", func() error {
		d, err := s.c.Select(s.w.cfg.Folder, nil).Wait()
		if err == nil {
			s.validity = d.UIDValidity
		}
		return err
	})
}

func (s *session) close() {
	s.stop()
	_ = s.c.Close() // it may be closed already
}

// why gives the reason behind a connection that was closed from our side.
func (s *session) why(err error) error {
	if cause := context.Cause(s.ctx); cause != nil {
		return cause
	}
	return err
}
