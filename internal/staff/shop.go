package staff

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"time"

	"github.com/riverqueue/river"
	"github.com/riverqueue/river/rivertype"

	"example.com/intake-bot/internal/db"
)

// shopPage is the owner's: who works here, what is failing, what the bot would say.
type shopPage struct {
	frame
	People  []db.Staff
	Once    string // a password for the first log-in, shown once
	OnceFor string
	Jobs    []jobRow
	Counts  []db.Tally
	File    string
	Recent  []historyRow
}

type jobRow struct {
	ID        int64
	Kind      string
	State     string
	Attempt   int
	When      string
	Error     string
	CanRetry  bool
	Arguments string
}

const keyOnce = "once"

func (s *Server) shop(v *visit) error {
	p := shopPage{frame: v.frame("The shop")}
	p.OnceFor, p.Once, _ = strings.Cut(s.sessions.PopString(v.ctx, keyOnce), " ")
	var err error
	if p.People, err = db.ListStaff(v.ctx, s.opts.Pool); err != nil {
		return err
	}
	if err := p.jobs(v); err != nil {
		return err
	}
	if s.opts.ShopFile != nil {
		p.File = s.opts.ShopFile()
	}
	lines, err := db.RecentHistory(v.ctx, s.opts.Pool, 60)
	if err != nil {
		return err
	}
	for _, h := range lines {
		p.Recent = append(p.Recent, historyRow{HistoryEntry: h, When: p.At(h.At), Text: deedWords(h)})
	}
	return v.show(http.StatusOK, "shop.html", p)
}

// jobs lists what gave up or fails, and counts the rest.
func (p *shopPage) jobs(v *visit) error {
	list, err := v.s.queue.JobList(v.ctx, river.NewJobListParams().
		States(rivertype.JobStateDiscarded, rivertype.JobStateRetryable, rivertype.JobStateCancelled).First(100))
	if err != nil {
		return fmt.Errorf("list jobs: %w", err)
	}
	for _, j := range list.Jobs {
		row := jobRow{ID: j.ID, Kind: j.Kind, State: string(j.State), Attempt: j.Attempt, When: p.At(j.CreatedAt),
			CanRetry: j.State != rivertype.JobStateRunning, Arguments: string(j.EncodedArgs)}
		if n := len(j.Errors); n > 0 {
			row.Error = j.Errors[n-1].Error
		}
		p.Jobs = append(p.Jobs, row)
	}
	p.Counts, err = db.CountJobs(v.ctx, v.s.opts.Pool)
	return err
}

func (s *Server) retryJob(v *visit) error {
	id, err := strconv.ParseInt(v.r.PathValue("id"), 10, 64)
	if err != nil {
		return db.ErrNotFound
	}
	job, err := s.queue.JobRetry(v.ctx, id)
	if errors.Is(err, rivertype.ErrNotFound) {
		return db.ErrNotFound
	}
	if err != nil {
		return fmt.Errorf("try job %d again: %w", id, err)
	}
	if _, err := db.Note(v.ctx, s.opts.Pool, v.who.ID, 0, db.DeedRetried, db.HistoryDetail{Text: job.Kind + " " + strconv.FormatInt(id, 10)}, v.now); err != nil {
		return err
	}
	return v.done(Base+"/shop#jobs", "Job %d is tried again.", id)
}

func (v *visit) account() db.Staff {
	return db.Staff{Login: strings.ToLower(clean(v.r.PostFormValue("login"))), Name: clean(v.r.PostFormValue("name")),
		Role: db.Role(v.r.PostFormValue("role")), Email: strings.ToLower(clean(v.r.PostFormValue("email"))), Phone: clean(v.r.PostFormValue("phone")),
		MailAlerts: v.r.PostFormValue("mail_alerts") == "1", TextAlerts: v.r.PostFormValue("text_alerts") == "1"}
}

func (s *Server) addAccount(v *visit) error {
	a := v.account()
	once, err := AddAccount(v.ctx, s.opts.Pool, a)
	if err != nil {
		return v.toShop(err)
	}
	return v.accountDone("added "+a.Login, a.Login+" "+once)
}

// toShop tells on the owner's page what can't be done.
func (v *visit) toShop(err error) error {
	var no *refusal
	if !errors.As(err, &no) {
		return err
	}
	v.s.sessions.Put(v.ctx, keyBad, no.text)
	http.Redirect(v.w, v.r, Base+"/shop", http.StatusSeeOther)
	return nil
}

func (v *visit) accountDone(what, once string) error {
	if _, err := db.Note(v.ctx, v.s.opts.Pool, v.who.ID, 0, db.DeedAccount, db.HistoryDetail{Text: what}, v.now); err != nil {
		return err
	}
	if once != "" {
		v.s.sessions.Put(v.ctx, keyOnce, once)
	}
	return v.done(Base+"/shop", "Account: %s.", what)
}

func (v *visit) ofAccount() (db.Staff, error) {
	id, err := strconv.ParseInt(v.r.PathValue("id"), 10, 64)
	if err != nil {
		return db.Staff{}, db.ErrNotFound
	}
	return db.StaffByID(v.ctx, v.s.opts.Pool, id)
}

func (s *Server) changeAccount(v *visit) error {
	was, err := v.ofAccount()
	if err != nil {
		return err
	}
	a := v.account()
	a.ID, a.Login = was.ID, was.Login
	if err := checkAccount(a); err != nil {
		return v.toShop(err)
	}
	if was.ID == v.who.ID && a.Role != db.RoleOwner {
		return v.toShop(refuse("You can't take the owner's role from yourself."))
	}
	if err := db.SetStaff(v.ctx, s.opts.Pool, a); errors.Is(err, db.ErrTaken) {
		return v.toShop(refuse("Somebody else has that number."))
	} else if err != nil {
		return err
	}
	return v.accountDone("changed "+a.Login, "")
}

func (s *Server) newPassword(v *visit) error {
	a, err := v.ofAccount()
	if err != nil {
		return err
	}
	if a.ID == v.who.ID {
		return v.toShop(refuse("Change your own password under your name."))
	}
	once, err := NewPassword(v.ctx, s.opts.Pool, a.ID)
	if err != nil {
		return err
	}
	return v.accountDone("new password for "+a.Login, a.Login+" "+once)
}

// leave ends an account, or (back) opens it again.
func (s *Server) leave(v *visit) error {
	a, err := v.ofAccount()
	if err != nil {
		return err
	}
	if a.ID == v.who.ID {
		return v.toShop(refuse("You can't end your own account."))
	}
	now := time.Now().UTC().Truncate(time.Microsecond)
	at, what := &now, "ended "+a.Login
	if a.LeftAt != nil {
		at, what = nil, "opened "+a.Login+" again"
	}
	if err := db.SetLeft(v.ctx, s.opts.Pool, a.ID, at, now); err != nil {
		return err
	}
	return v.accountDone(what, "")
}
