package db_test

import (
	"testing"
	"time"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

func TestClockIsTheDatabases(t *testing.T) {
	pool := dbtest.New(t)
	for _, off := range []time.Duration{0, 300 * time.Millisecond, 7 * time.Hour, -40 * time.Minute} {
		c := db.NewClock(func() time.Time { return time.Now().Add(off) })
		ahead, err := c.Look(t.Context(), pool)
		if err != nil {
			t.Fatal(err)
		}
		if off.Abs() < time.Second && ahead != 0 {
			t.Errorf("a difference of %s counts as %s", off, ahead)
		}
		if wrong := time.Until(c.Now()).Abs(); wrong > time.Minute {
			t.Errorf("off by %s, it shows a time that is wrong by %s", off, wrong)
		}
	}
}
