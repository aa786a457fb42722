package main

import (
	"net/http"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/intake"
)

// hooks are where a program that was built with the tag torture lets itself be hurt. In
// any other build there are none, whatever the environment says.
type hooks struct {
	step      func(intake.Point)                        // is told of each point of intake
	pool      func(*pgxpool.Config)                     // sees each statement
	transport func(http.RoundTripper) http.RoundTripper // sees each call to the carrier
	clock     func() time.Time                          // the machine's
	lease     time.Duration                             // of a send; 0: the usual
	drain     time.Duration                             // that stopping may take; 0: the usual
	photoWait time.Duration                             // of a turn for its photos; 0: the usual
}
