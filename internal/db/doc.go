// Package db keeps everything that the shop must not lose: each talk, what was said
// in it, the facts and the lead that came of it, who must not be texted, and what
// became of every text sent. It is the only package that knows SQL.
//
// One file per table holds that table's statements; migrations/ holds the schema,
// whose constraints refuse states that must not exist. Times are UTC. Statements take
// a Conn, so that the caller decides which of them share a transaction.
//
// It also starts a private server (StartLocal) for the demo and the tests, where no
// DATABASE_URL names one.
package db
