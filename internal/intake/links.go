package intake

import (
	"crypto/hmac"
	"crypto/sha256"
	"encoding/base64"
	"strings"
)

// A link that works by itself, without anybody logging in, must not be guessed: it
// carries a seal over what it is for.

// seal is the seal of some words under a key. Words can't run together: none holds a
// line's end.
func seal(key []byte, words ...string) string {
	h := hmac.New(sha256.New, key)
	h.Write([]byte(strings.Join(words, "\n")))
	return base64.RawURLEncoding.EncodeToString(h.Sum(nil))
}

// sealed says, in the same time for any guess, whether a seal is that of the words.
func sealed(key []byte, given string, words ...string) bool {
	return hmac.Equal([]byte(given), []byte(seal(key, words...)))
}
