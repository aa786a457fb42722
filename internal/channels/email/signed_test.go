package email_test

import (
	"bytes"
	"crypto/ed25519"
	"crypto/rand"
	"encoding/base64"
	"strings"
	"testing"

	"github.com/emersion/go-msgauth/dkim"
)

// signed signs a mail for a domain, and gives the record that its name server would.
func signed(t *testing.T, domain, raw string) ([]byte, string) {
	t.Helper()
	public, private, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	options := &dkim.SignOptions{Domain: domain, Selector: "k1", Signer: private}
	if err := dkim.Sign(&b, strings.NewReader(raw), options); err != nil {
		t.Fatal(err)
	}
	return b.Bytes(), "v=DKIM1; k=ed25519; p=" + base64.StdEncoding.EncodeToString(public)
}
