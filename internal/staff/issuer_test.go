package staff

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"sync"
	"testing"
	"time"

	"github.com/go-jose/go-jose/v4"
	"github.com/go-jose/go-jose/v4/jwt"
)

// issuer is a small OpenID Connect provider: it describes itself, has a page with a
// button, gives codes, and takes a code once, from the client that it knows, with the
// verifier of its challenge. What it says of a person is up to the test.
type issuer struct {
	*httptest.Server
	t      *testing.T
	key    *ecdsa.PrivateKey
	claims map[string]any // beside those that it makes itself, or in their place
	info   map[string]any // what it tells when asked; nil: it is not asked
	forger *ecdsa.PrivateKey

	mu    sync.Mutex
	codes map[string]url.Values // what a code was asked with
}

const (
	clientID     = "skylight-shop"
	clientSecret = "not a real secret: 1/2 & more"
)

func newIssuer(t *testing.T) *issuer {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	i := &issuer{t: t, key: key, codes: map[string]url.Values{}, claims: map[string]any{}}
	mux := http.NewServeMux()
	mux.HandleFunc("GET /.well-known/openid-configuration", i.describe)
	mux.HandleFunc("GET /keys", func(w http.ResponseWriter, _ *http.Request) {
		answer(w, jose.JSONWebKeySet{Keys: []jose.JSONWebKey{{Key: &key.PublicKey, KeyID: "one", Algorithm: "ES256", Use: "sig"}}})
	})
	mux.HandleFunc("GET /authorize", i.page)
	mux.HandleFunc("POST /authorize", i.letIn)
	mux.HandleFunc("POST /token", i.token)
	mux.HandleFunc("GET /person", func(w http.ResponseWriter, _ *http.Request) { answer(w, i.info) })
	i.Server = httptest.NewServer(mux)
	t.Cleanup(i.Close)
	return i
}

func answer(w http.ResponseWriter, v any) {
	w.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(w).Encode(v)
}

func (i *issuer) describe(w http.ResponseWriter, _ *http.Request) {
	answer(w, map[string]any{"issuer": i.URL, "authorization_endpoint": i.URL + "/authorize", "token_endpoint": i.URL + "/token",
		"jwks_uri": i.URL + "/keys", "userinfo_endpoint": i.URL + "/person", "id_token_signing_alg_values_supported": []string{"ES256"},
		"response_types_supported": []string{"code"}, "subject_types_supported": []string{"public"}})
}

// page asks whoever comes to let the shop know who they are.
func (i *issuer) page(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/html")
	fmt.Fprintf(w, `<!DOCTYPE html><title>Log-in of the owner's</title><form method="post" action="/authorize?%s"><button id="yes">It is me</button></form>`,
		url.Values(r.URL.Query()).Encode())
}

func (i *issuer) letIn(w http.ResponseWriter, r *http.Request) {
	q := r.URL.Query()
	if q.Get("client_id") != clientID || q.Get("response_type") != "code" || q.Get("code_challenge_method") != "S256" || len(q.Get("code_challenge")) != 43 ||
		len(q.Get("nonce")) < 40 || len(q.Get("state")) < 40 {
		i.t.Errorf("asked with %v", q)
	}
	code := rand.Text()
	i.mu.Lock()
	i.codes[code] = q
	i.mu.Unlock()
	back := url.Values{"code": {code}, "state": {q.Get("state")}}
	http.Redirect(w, r, q.Get("redirect_uri")+"?"+back.Encode(), http.StatusSeeOther)
}

func (i *issuer) token(w http.ResponseWriter, r *http.Request) {
	i.mu.Lock()
	asked := i.codes[r.PostFormValue("code")]
	delete(i.codes, r.PostFormValue("code"))
	i.mu.Unlock()
	id, secret, _ := r.BasicAuth()
	id, _ = url.QueryUnescape(id) // RFC 6749, 2.3.1
	secret, _ = url.QueryUnescape(secret)
	sum := sha256.Sum256([]byte(r.PostFormValue("code_verifier")))
	if asked == nil || id != clientID || secret != clientSecret || r.PostFormValue("redirect_uri") != asked.Get("redirect_uri") ||
		base64.RawURLEncoding.EncodeToString(sum[:]) != asked.Get("code_challenge") {
		w.WriteHeader(http.StatusBadRequest)
		answer(w, map[string]string{"error": "invalid_grant"})
		return
	}
	claims := map[string]any{"iss": i.URL, "aud": clientID, "sub": "person-1", "nonce": asked.Get("nonce"),
		"iat": time.Now().Unix(), "exp": time.Now().Add(5 * time.Minute).Unix()}
	for k, v := range i.claims {
		claims[k] = v
	}
	answer(w, map[string]any{"access_token": "for /person", "token_type": "Bearer", "expires_in": 300, "id_token": i.sign(claims)})
}

func (i *issuer) sign(claims map[string]any) string {
	key := i.key
	if i.forger != nil {
		key = i.forger
	}
	signer, err := jose.NewSigner(jose.SigningKey{Algorithm: jose.ES256, Key: key}, (&jose.SignerOptions{}).WithHeader("kid", "one"))
	if err != nil {
		i.t.Error(err)
		return ""
	}
	raw, err := jwt.Signed(signer).Claims(claims).Serialize()
	if err != nil {
		i.t.Error(err)
	}
	return raw
}
