package db

import (
	"context"
	"encoding/json"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// Deed is what a person of staff did; history keeps each.
type Deed string

const (
	DeedTook       Deed = "took"         // the lead into their hands
	DeedPutBack    Deed = "put_back"     // out of their hands again
	DeedWrote      Deed = "wrote"        // to the customer
	DeedReleased   Deed = "released"     // let the assistant go on
	DeedAsked      Deed = "asked"        // had the assistant ask for something
	DeedCorrected  Deed = "corrected"    // a fact
	DeedTookBack   Deed = "took_back"    // a fact of staff's
	DeedNoted      Deed = "noted"        // wrote a note
	DeedMarked     Deed = "marked"       // quoted, ordered, declined
	DeedShut       Deed = "shut"         // marked as spam
	DeedReopened   Deed = "reopened"     // undid that
	DeedMerged     Deed = "merged"       // joined another lead into this one
	DeedTookApart  Deed = "took_apart"   // two leads that were joined
	DeedOpened     Deed = "opened"       // made a lead by hand
	DeedSaw        Deed = "saw"          // opened the lead's page
	DeedShown      Deed = "shown"        // a person's data
	DeedExported   Deed = "exported"     // a person's data
	DeedErased     Deed = "erased"       // a person's data; the lead is gone
	DeedAccount    Deed = "account"      // added or changed an account
	DeedRetried    Deed = "retried"      // a job that was given up
	DeedLoggedIn   Deed = "logged_in"    // here
	DeedTookByText Deed = "took_by_text" // took a lead by answering an alert
)

// HistoryEntry is one line of the history.
type HistoryEntry struct {
	ID       int64
	At       time.Time
	StaffID  int64  // 0: the program itself
	Who      string // the person's name; empty for the program
	Ref      string // empty where it is about no lead
	Deed     Deed
	Detail   HistoryDetail
	UndoneBy int64 // 0: it stands
}

// HistoryDetail says more of a deed; what is not of it is left out.
type HistoryDetail struct {
	Text    string `json:"text,omitempty"`    // a note, a reason, what was asked for
	Topic   string `json:"topic,omitempty"`   // of a fact, with @unit
	Seq     int    `json:"seq,omitempty"`     // its place in the ledger
	Before  string `json:"before,omitempty"`  // what it was, for people
	After   string `json:"after,omitempty"`   // what it became
	Verdict string `json:"verdict,omitempty"` // how the verdict changed: "fits -> confirm"
	Status  string `json:"status,omitempty"`  // the status that was set
	From    string `json:"from,omitempty"`    // the status before
	Ref     string `json:"ref,omitempty"`     // another lead's
	Holder  string `json:"holder,omitempty"`  // from whose hands it was taken
	Undoes  int64  `json:"undoes,omitempty"`  // the entry that this one undoes
}

// Note writes a line of history; ids of 0 are left out. It gives the line's id.
func Note(ctx context.Context, c Conn, staffID, conversationID int64, deed Deed, detail HistoryDetail, at time.Time) (int64, error) {
	js, err := json.Marshal(detail)
	if err != nil {
		return 0, fmt.Errorf("history: %w", err)
	}
	const sql = `WITH line AS (
			INSERT INTO staff_history (at, staff_id, conversation_id, deed, detail)
			VALUES ($1, nullif($2, 0), nullif($3, 0), $4, $5) RETURNING id
		), undone AS (
			UPDATE staff_history SET undone_by = line.id FROM line WHERE staff_history.id = $6 AND $6 > 0
		) SELECT id FROM line`
	var id int64
	if err := c.QueryRow(ctx, sql, at, staffID, conversationID, deed, storable(string(js)), detail.Undoes).Scan(&id); err != nil {
		return 0, fmt.Errorf("history of talk %d: %w", conversationID, err)
	}
	return id, nil
}

// NoteSeen notes that a person looked at a lead, once in a while only.
func NoteSeen(ctx context.Context, c Conn, staffID, conversationID int64, at time.Time) error {
	const sql = `INSERT INTO staff_history (at, staff_id, conversation_id, deed)
		SELECT $1::timestamptz, $2::bigint, $3::bigint, 'saw' WHERE NOT EXISTS (SELECT FROM staff_history
			WHERE conversation_id = $3 AND staff_id = $2 AND deed = 'saw' AND at > $1::timestamptz - interval '15 minutes')`
	if _, err := c.Exec(ctx, sql, at, staffID, conversationID); err != nil {
		return fmt.Errorf("history of talk %d: %w", conversationID, err)
	}
	return nil
}

const historyColumns = `SELECT h.id, h.at, coalesce(h.staff_id, 0), coalesce(s.name, ''), coalesce(c.ref, ''), h.deed, h.detail, coalesce(h.undone_by, 0)
	FROM staff_history h LEFT JOIN staff s ON s.id = h.staff_id LEFT JOIN conversations c ON c.id = h.conversation_id `

// HistoryOf is all that was done with a lead, the newest first.
func HistoryOf(ctx context.Context, c Conn, conversationID int64) ([]HistoryEntry, error) {
	return history(ctx, c, historyColumns+`WHERE h.conversation_id = $1 ORDER BY h.id DESC LIMIT 500`, conversationID)
}

// HistoryEntryOf is one line of a lead's history; ErrNotFound where it has no such line.
func HistoryEntryOf(ctx context.Context, c Conn, conversationID, id int64) (HistoryEntry, error) {
	lines, err := history(ctx, c, historyColumns+`WHERE h.conversation_id = $1 AND h.id = $2`, conversationID, id)
	if err == nil && len(lines) == 0 {
		err = fmt.Errorf("line %d of the history: %w", id, ErrNotFound)
	}
	if err != nil {
		return HistoryEntry{}, err
	}
	return lines[0], nil
}

// RecentHistory is what was done last in the whole shop, but for looking.
func RecentHistory(ctx context.Context, c Conn, limit int) ([]HistoryEntry, error) {
	return history(ctx, c, historyColumns+`WHERE h.deed <> 'saw' ORDER BY h.id DESC LIMIT $1`, limit)
}

func history(ctx context.Context, c Conn, sql string, args ...any) ([]HistoryEntry, error) {
	rows, err := c.Query(ctx, sql, args...)
	if err != nil {
		return nil, fmt.Errorf("history: %w", err)
	}
	lines, err := pgx.CollectRows(rows, func(row pgx.CollectableRow) (h HistoryEntry, err error) {
		err = row.Scan(&h.ID, &h.At, &h.StaffID, &h.Who, &h.Ref, &h.Deed, &h.Detail, &h.UndoneBy)
		return h, err
	})
	if err != nil {
		return nil, fmt.Errorf("history: %w", err)
	}
	return lines, nil
}
