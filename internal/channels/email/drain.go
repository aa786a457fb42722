package email

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"time"

	"github.com/emersion/go-imap/v2"
	"github.com/emersion/go-imap/v2/imapclient"
)

// batch is how many mails' sizes are asked for at once. Of the mails themselves one at
// a time is in memory, however many wait.
const batch = 100

// drain takes in all mail that waits, oldest first. UIDs are used only within this
// connection's view of the folder, so a change of UIDVALIDITY can't mix mails up.
func (s *session) drain() error {
	for {
		select {
		case <-s.news: // all that is known so far is looked at now
		default:
		}
		uids, err := s.waiting()
		if err != nil || len(uids) == 0 {
			return err
		}
		s.w.note(func(h *Health) { h.Waiting = len(uids) })
		for part := range slices.Chunk(uids, batch) {
			if err := s.takeAll(part); err != nil {
				return err
			}
		}
	}
}

// waiting lists what is to be taken in. Mail that was copied away but could not be
// removed bears the mark \Deleted and waits no more.
func (s *session) waiting() ([]imap.UID, error) {
	var uids []imap.UID
	err := s.do("search", func() error {
		d, err := s.c.UIDSearch(&imap.SearchCriteria{NotFlag: []imap.Flag{imap.FlagDeleted}}, nil).Wait()
		if err == nil {
			uids = d.AllUIDs()
		}
		return err
	})
	uids = slices.DeleteFunc(uids, func(uid imap.UID) bool { return s.unreadable[uid] })
	slices.Sort(uids)
	return uids, err
}

type letter struct {
	uid      imap.UID
	size     int64
	received time.Time
}

func (s *session) takeAll(uids []imap.UID) error {
	letters, err := s.letters(uids)
	if err != nil {
		return err
	}
	for _, l := range letters {
		if err := s.take(l); err != nil {
			return err
		}
	}
	return nil
}

// letters asks for sizes and times. A mail that somebody else moved away meanwhile is
// not among them.
func (s *session) letters(uids []imap.UID) ([]letter, error) {
	var letters []letter
	err := s.do("fetch sizes", func() error {
		messages, err := s.c.Fetch(imap.UIDSetNum(uids...), &imap.FetchOptions{UID: true, RFC822Size: true, InternalDate: true}).Collect()
		for _, m := range messages {
			letters = append(letters, letter{uid: m.UID, size: m.RFC822Size, received: m.InternalDate})
		}
		return err
	})
	slices.SortFunc(letters, func(a, b letter) int { return int(int64(a.uid) - int64(b.uid)) })
	return letters, err
}

// take stores one mail and only then moves it away.
func (s *session) take(l letter) error {
	in := Incoming{
		UID: uint32(l.uid), UIDValidity: s.validity, Received: l.received.UTC(),
		Size: l.size, TooLarge: l.size > s.w.cfg.MaxBytes,
	}
	section := &imap.FetchItemBodySection{Peek: true}
	if in.TooLarge {
		section.Specifier = imap.PartSpecifierHeader
	}
	gone := false
	err := s.doFor(5*s.w.cfg.Command, "fetch a mail", func() error {
		var err error
		in.Raw, gone, err = s.body(l.uid, section)
		return err
	})
	var said *imap.Error
	if errors.As(err, &said) {
		s.skip(l.uid, said)
		return nil
	}
	if err != nil || gone {
		return err
	}
	in.TooLarge = in.TooLarge || int64(len(in.Raw)) > s.w.cfg.MaxBytes
	if err := s.w.cfg.Store(s.ctx, in); err != nil {
		return fmt.Errorf("store the mail with UID %d: %w", l.uid, err)
	}
	return s.moveAway(l.uid)
}

// skip leaves a mail that the server itself can't read where it is, for this connection,
// so that those behind it are not held up.
func (s *session) skip(uid imap.UID, said *imap.Error) {
	s.unreadable[uid] = true
	s.w.note(func(h *Health) { h.Unreadable = len(s.unreadable) })
	s.w.cfg.Log.WarnContext(s.ctx, "mailbox: a mail can't be read", "uid", uid, "answer", said.Type)
}

// body reads one mail, never more than the limit, whatever size the server claimed.
func (s *session) body(uid imap.UID, section *imap.FetchItemBodySection) (raw []byte, gone bool, err error) {
	cmd := s.c.Fetch(imap.UIDSetNum(uid), &imap.FetchOptions{UID: true, BodySection: []*imap.FetchItemBodySection{section}})
	gone = true
	for m := cmd.Next(); m != nil; m = cmd.Next() {
		for item := m.Next(); item != nil; item = m.Next() {
			data, ok := item.(imapclient.FetchItemDataBodySection)
			if !ok || data.Literal == nil {
				continue
			}
			gone = false
			if raw, err = io.ReadAll(io.LimitReader(data.Literal, s.w.cfg.MaxBytes+1)); err != nil {
				return nil, false, errors.Join(err, cmd.Close())
			}
		}
	}
	return raw, gone, cmd.Close()
}

// moveAway uses MOVE, or copies first and, only once that is done, marks and removes.
// (The library's own fallback sends all three at once: a failed copy would lose the mail.)
func (s *session) moveAway(uid imap.UID) error {
	set := imap.UIDSetNum(uid)
	caps := s.c.Caps()
	if caps.Has(imap.CapMove) {
		return s.do("move", func() error {
			_, err := s.c.Move(set, s.w.cfg.TakenIn).Wait()
			return err
		})
	}
	if err := s.do("copy", func() error {
		_, err := s.c.Copy(set, s.w.cfg.TakenIn).Wait()
		return err
	}); err != nil {
		return err
	}
	if err := s.do("mark as deleted", func() error {
		return s.c.Store(set, &imap.StoreFlags{Op: imap.StoreFlagsAdd, Silent: true, Flags: []imap.Flag{imap.FlagDeleted}}, nil).Close()
	}); err != nil {
		return err
	}
	if !caps.Has(imap.CapUIDPlus) {
		return nil // a plain EXPUNGE would remove what others have marked
	}
	return s.do("expunge", func() error { return s.c.UIDExpunge(set).Close() })
}
