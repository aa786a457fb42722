package email

import (
	"errors"
	"time"

	"github.com/emersion/go-imap/v2"
)

// errGone: the server closed the connection.
var errGone = errors.New("mail server closed the connection")

// idleMost is the longest that one IDLE lasts: RFC 2177 section 3 wants it begun anew at
// least every 29 minutes.
const idleMost = 28 * time.Minute

// wait returns when there may be new mail, and at the latest when it is time to look
// anyway. IDLE alone is not enough: a server should tell of mail that came between the
// last look and the begin of IDLE as soon as IDLE begins, but some only tell of what comes
// after it (the library's own server is one), and such a mail would lie there until the
// next one comes.
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
	err := s.until(min(s.w.cfg.Poll, idleMost))
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
