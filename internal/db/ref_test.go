package db_test

import (
	"bytes"
	"errors"
	"io"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/intake-bot/internal/db"
)

func TestRefsAreSayable(t *testing.T) {
	random := rand.NewChaCha8([32]byte{1})
	count := map[rune]int{}
	for range 2000 {
		ref, err := db.NewRef(random)
		if err != nil {
			t.Fatal(err)
		}
		if len(ref) != 5 || strings.ContainsAny(ref, "0O1IL2Z5S8BUVAE") {
			t.Fatalf("ref %q: want five letters, none that is taken for another", ref)
		}
		if ref[0] <= '9' || ref[0] == 'X' {
			t.Fatalf("ref %q: want a letter other than X first, so that it is no ZIP code and no size", ref)
		}
		for _, letter := range ref[1:] {
			count[letter]++
		}
	}
	// 8,000 letters of 21: 381 each, give or take five standard deviations.
	for letter, n := range count {
		if n < 286 || n > 476 {
			t.Errorf("letter %c came %d times of 8000", letter, n)
		}
	}
}

func TestRefsFollowTheirSource(t *testing.T) {
	if ref, err := db.NewRef(bytes.NewReader([]byte{0, 20, 252, 255, 21, 1, 251})); err != nil || ref != "C9CD9" {
		t.Errorf("ref %q, %v, want C9CD9: bytes over 251 are drawn again", ref, err)
	}
	if _, err := db.NewRef(bytes.NewReader(nil)); !errors.Is(err, io.EOF) {
		t.Errorf("error %v without randomness, want that of its source", err)
	}
}
