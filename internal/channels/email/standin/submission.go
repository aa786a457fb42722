package standin

import (
	"errors"
	"io"
	"strings"
	"time"

	"github.com/emersion/go-sasl"
	"github.com/emersion/go-smtp"
)

// Fault is one way in which handing over a mail can go wrong.
type Fault struct {
	Code   int           // answer to the mail's end with this; 0: as it would have been
	Accept bool          // the mail is taken all the same
	Cut    bool          // cut the connection in place of an answer
	Delay  time.Duration // before the answer
}

// Faults that happen to real servers.
var (
	Greylisted = Fault{Code: 451}
	ServerFull = Fault{Code: 452}
	Rejected   = Fault{Code: 554}
	CutBefore  = Fault{Cut: true}
	CutAfter   = Fault{Cut: true, Accept: true} // the send that can't be known
)

// Fail makes the next mails fail, one after the other.
func (o *Office) Fail(next ...Fault) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.next = append(o.next, next...)
}

// Refuse makes mail to an address fail with a code such as 550; 0 ends it.
func (o *Office) Refuse(address string, code int) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.refused[strings.ToLower(address)] = code
}

func (o *Office) fault() (Fault, bool) {
	o.mu.Lock()
	defer o.mu.Unlock()
	if len(o.next) == 0 {
		return Fault{}, false
	}
	f := o.next[0]
	o.next = o.next[1:]
	return f, true
}

func (o *Office) refusal(address string) int {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.refused[strings.ToLower(address)]
}

type backend struct{ o *Office }

func (b backend) NewSession(c *smtp.Conn) (smtp.Session, error) {
	return &session{o: b.o, conn: c}, nil
}

// session is one connection to the submission server.
type session struct {
	o        *Office
	conn     *smtp.Conn
	loggedIn bool
	from     string
	to       []string
}

func (s *session) AuthMechanisms() []string { return []string{sasl.Plain} }

func (s *session) Auth(string) (sasl.Server, error) {
	return sasl.NewPlainServer(func(_, user, password string) error {
		if user != s.o.cfg.Address || password != s.o.cfg.Password {
			return smtp.ErrAuthFailed
		}
		s.loggedIn = true
		return nil
	}), nil
}

func (s *session) Mail(from string, _ *smtp.MailOptions) error {
	if !s.loggedIn {
		return smtp.ErrAuthRequired
	}
	s.from = from
	return nil
}

func (s *session) Rcpt(to string, _ *smtp.RcptOptions) error {
	if code := s.o.refusal(to); code != 0 {
		return refusal(code)
	}
	s.to = append(s.to, to)
	return nil
}

func (s *session) Reset()        { s.from, s.to = "", nil }
func (s *session) Logout() error { return nil }

func (s *session) Data(body io.Reader) error {
	raw, err := io.ReadAll(body)
	if err != nil {
		return err
	}
	f, faulty := s.o.fault()
	if !faulty || f.Accept || (f.Code == 0 && !f.Cut) {
		if err := s.take(raw); err != nil {
			return err
		}
	}
	time.Sleep(f.Delay)
	switch {
	case f.Cut:
		return errors.Join(s.conn.Conn().Close(), refusal(421))
	case f.Code != 0:
		return refusal(f.Code)
	}
	return nil
}

// take delivers: to the mailbox where it is for the shop itself.
func (s *session) take(raw []byte) error {
	for _, to := range s.to {
		if strings.EqualFold(to, s.o.cfg.Address) {
			if err := s.o.Put(s.from, raw); err != nil {
				return err
			}
			continue
		}
		s.o.keep(Mail{From: s.from, To: to, Raw: raw})
	}
	return nil
}

func refusal(code int) error { return &smtp.SMTPError{Code: code, Message: "as it was told to"} }
