package email

import (
	"errors"
	"time"

	"github.com/emersion/go-imap/v2"
)

// errGone: the server closed the connection.
var errGone = errors.New("mail server closed the connection")

// wait returns when there may be new mail, and at the latest when it is time to look
// anyway: a server may forget to say.
func (s *session) wait() error {
	if !s.c.Caps().Has(imap.CapIdle) {
		return s.poll()
	}
	var end func() error
	if err := s.do("IDLE", func() error {
		cmd, err := s.c.Idle()
		if err != nil {
			return err
		}
		end = func() error { return errors.Join(cmd.Close(), cmd.Wait()) }
		return nil
	}); err != nil {
		return err
	}
	err := s.until(s.w.cfg.Idle)
	return errors.Join(err, s.do("end of IDLE", end))
}

// poll sleeps, then lets the server say what is new.
func (s *session) poll() error {
	if err := s.until(s.w.cfg.Poll); err != nil {
		return err
	}
	return s.do("NOOP", func() error { return s.c.Noop().Wait() })
}

func (s *session) until(d time.Duration) error {
	t := time.NewTimer(d)
	defer t.Stop()
	select {
	case <-s.news:
	case <-t.C:
	case <-s.c.Closed():
		return errGone
	case <-s.ctx.Done():
		return s.ctx.Err()
	}
	return nil
}
