package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"
)

// Role is what a person of staff may do.
type Role string

const (
	RoleStaff Role = "staff" // sees to leads
	RoleOwner Role = "owner" // and to the shop: accounts, failures, erasing
)

// Staff is a person who works at the shop.
type Staff struct {
	ID           int64
	Login        string // in lower case
	Name         string
	Role         Role
	PasswordHash string // argon2id, in its usual text form
	OneTime      bool   // the password was given by somebody else and must be changed
	Email        string // for alerts; empty for none
	Phone        string // E.164, for alerts; empty for none
	MailAlerts   bool
	TextAlerts   bool
	SessionsFrom time.Time  // sessions that began before are over
	LeftAt       *time.Time // no longer with the shop
	CreatedAt    time.Time
}

// ErrTaken says that somebody else has that login or number.
var ErrTaken = errors.New("taken")

const staffColumns = `id, login, name, role, password_hash, one_time, coalesce(email, ''), coalesce(phone, ''),
	mail_alerts, text_alerts, sessions_from, left_at, created_at`

// AddStaff makes an account and gives its id; ErrTaken where the login or the phone is
// another's.
func AddStaff(ctx context.Context, c Conn, s Staff) (int64, error) {
	const sql = `INSERT INTO staff (login, name, role, password_hash, one_time, email, phone, mail_alerts, text_alerts)
		VALUES ($1, $2, $3, $4, $5, nullif($6, ''), nullif($7, ''), $8, $9) RETURNING id`
	var id int64
	err := c.QueryRow(ctx, sql, s.Login, s.Name, s.Role, s.PasswordHash, s.OneTime, s.Email, s.Phone, s.MailAlerts, s.TextAlerts).Scan(&id)
	if err != nil {
		return 0, fmt.Errorf("add account: %w", taken(err))
	}
	return id, nil
}

// taken turns the server's word for a second one of the same into ErrTaken.
func taken(err error) error {
	var pg *pgconn.PgError
	if errors.As(err, &pg) && pg.Code == "23505" {
		return ErrTaken
	}
	return err
}

// StaffByLogin is the account with a login; ErrNotFound where there is none.
func StaffByLogin(ctx context.Context, c Conn, login string) (Staff, error) {
	return oneStaff(ctx, c, `SELECT `+staffColumns+` FROM staff WHERE login = $1`, login)
}

// StaffByID is the account with an id; ErrNotFound where there is none.
func StaffByID(ctx context.Context, c Conn, id int64) (Staff, error) {
	return oneStaff(ctx, c, `SELECT `+staffColumns+` FROM staff WHERE id = $1`, id)
}

// StaffByPhone is who texts from a number; ErrNotFound where nobody does.
func StaffByPhone(ctx context.Context, c Conn, phone string) (Staff, error) {
	return oneStaff(ctx, c, `SELECT `+staffColumns+` FROM staff WHERE phone = $1 AND left_at IS NULL`, phone)
}

// StaffByMail is who has a mail address, in whatever letters; ErrNotFound where nobody
// does, or several share it: then it tells nobody apart.
func StaffByMail(ctx context.Context, c Conn, email string) (Staff, error) {
	return oneStaff(ctx, c, `SELECT `+staffColumns+` FROM staff s WHERE lower(email) = lower($1) AND left_at IS NULL
		AND NOT EXISTS (SELECT FROM staff o WHERE lower(o.email) = lower($1) AND o.left_at IS NULL AND o.id <> s.id)`, email)
}

func oneStaff(ctx context.Context, c Conn, sql string, key any) (Staff, error) {
	rows, err := c.Query(ctx, sql, key)
	if err != nil {
		return Staff{}, fmt.Errorf("look up account: %w", err)
	}
	s, err := pgx.CollectExactlyOneRow(rows, pgx.RowToStructByPos[Staff])
	if errors.Is(err, pgx.ErrNoRows) {
		err = ErrNotFound
	}
	if err != nil {
		return Staff{}, fmt.Errorf("look up account: %w", err)
	}
	return s, nil
}

// ListStaff lists all accounts, those who left last.
func ListStaff(ctx context.Context, c Conn) ([]Staff, error) {
	rows, err := c.Query(ctx, `SELECT `+staffColumns+` FROM staff ORDER BY left_at IS NOT NULL, name, id`)
	if err != nil {
		return nil, fmt.Errorf("list accounts: %w", err)
	}
	all, err := pgx.CollectRows(rows, pgx.RowToStructByPos[Staff])
	if err != nil {
		return nil, fmt.Errorf("list accounts: %w", err)
	}
	return all, nil
}

// SetPassword gives an account another password; its sessions so far are over.
func SetPassword(ctx context.Context, c Conn, id int64, hash string, oneTime bool, now time.Time) error {
	return changeStaff(ctx, c, `UPDATE staff SET password_hash = $2, one_time = $3, sessions_from = $4 WHERE id = $1`, id, hash, oneTime, now)
}

// SetStaff changes what an account says of a person: name, role, how they are alerted.
func SetStaff(ctx context.Context, c Conn, s Staff) error {
	return changeStaff(ctx, c, `UPDATE staff SET name = $2, role = $3, email = nullif($4, ''), phone = nullif($5, ''),
		mail_alerts = $6, text_alerts = $7 WHERE id = $1`, s.ID, s.Name, s.Role, s.Email, s.Phone, s.MailAlerts, s.TextAlerts)
}

// SetLeft says that a person left the shop, or (nil) is back. Their sessions are over,
// and what was in their hands waits again with whoever looks.
func SetLeft(ctx context.Context, c Conn, id int64, at *time.Time, now time.Time) error {
	return changeStaff(ctx, c, `UPDATE staff SET left_at = $2, sessions_from = $3 WHERE id = $1`, id, at, now)
}

// EndSessions ends all sessions of an account that began before now.
func EndSessions(ctx context.Context, c Conn, id int64, now time.Time) error {
	return changeStaff(ctx, c, `UPDATE staff SET sessions_from = $2 WHERE id = $1`, id, now)
}

func changeStaff(ctx context.Context, c Conn, sql string, id int64, args ...any) error {
	tag, err := c.Exec(ctx, sql, append([]any{id}, args...)...)
	if err == nil && tag.RowsAffected() == 0 {
		err = ErrNotFound
	}
	if err != nil {
		return fmt.Errorf("change account %d: %w", id, taken(err))
	}
	return nil
}
