package db

import (
	"context"
	"errors"
	"net"
	"strings"

	"github.com/jackc/pgx/v5/pgconn"
)

// Unwell says in a few words what ails the database that gave an error; empty where the
// error is about what was asked of it. The words name no host, user or row.
func Unwell(err error) string {
	var said *pgconn.PgError
	var connect *pgconn.ConnectError
	var network net.Error
	switch {
	case err == nil, errors.Is(err, context.Canceled):
		return ""
	case errors.As(err, &said):
		return unwellCode(said.Code)
	case errors.Is(err, context.DeadlineExceeded), errors.As(err, &network) && network.Timeout():
		return "it does not answer in time"
	case errors.As(err, &connect), errors.As(err, &network), pgconn.SafeToRetry(err), strings.Contains(err.Error(), "conn closed"),
		strings.Contains(err.Error(), "unexpected EOF"):
		return "it can't be reached"
	}
	return ""
}

// unwellCode tells by SQLSTATE (Postgres manual, appendix A).
func unwellCode(code string) string {
	switch {
	case code == "53100":
		return "its disk is full"
	case code == "53200":
		return "it has no memory left"
	case code == "53300":
		return "it takes no more connections"
	case code == "25006":
		return "it takes no writes"
	case code == "57014":
		return "it does not answer in time"
	case strings.HasPrefix(code, "57P"):
		return "it is stopping or starting"
	case strings.HasPrefix(code, "08"):
		return "it can't be reached"
	case strings.HasPrefix(code, "53"), strings.HasPrefix(code, "58"), strings.HasPrefix(code, "XX"):
		return "it fails (" + code + ")"
	case strings.HasPrefix(code, "28"), strings.HasPrefix(code, "3D"), strings.HasPrefix(code, "42"):
		return "it is not as this program needs it (" + code + ")"
	}
	return ""
}
