package standin

import (
	"crypto/subtle"
	"net/http"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"time"
	"unicode/utf16"
)

func (c *Carrier) routes() *http.ServeMux {
	const messages = "/2010-04-01/Accounts/{account}/Messages"
	mux := http.NewServeMux()
	mux.HandleFunc("POST "+messages+".json", c.authorized(c.create))
	mux.HandleFunc("GET "+messages+".json", c.authorized(c.list))
	mux.HandleFunc("GET "+messages+"/{file}", c.authorized(c.fetch))
	mux.HandleFunc("GET "+messages+"/{message}/Media.json", c.authorized(c.listMedia))
	mux.HandleFunc("GET "+messages+"/{message}/Media/{media}", c.fetchMedia)
	mux.HandleFunc("DELETE "+messages+"/{message}/Media/{media}", c.authorized(c.deleteMedia))
	c.accountRoutes(mux)
	mux.HandleFunc("POST /person/{number}", c.personTexts)
	mux.HandleFunc("GET /person/{number}", c.personReads)
	return mux
}

func (c *Carrier) authorized(next http.HandlerFunc) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		if !c.knows(r) {
			writeError(w, http.StatusUnauthorized, 20003)
			return
		}
		if r.PathValue("account") != c.cfg.AccountID {
			writeError(w, http.StatusNotFound, 20404)
			return
		}
		next(w, r)
	}
}

func (c *Carrier) knows(r *http.Request) bool {
	user, password, ok := r.BasicAuth()
	return ok && user == c.cfg.AccountID &&
		subtle.ConstantTimeCompare([]byte(password), []byte(c.cfg.AuthToken)) == 1
}

var e164 = regexp.MustCompile(`^\+[1-9]\d{6,14}$`)

// create takes a message, or fails as it was told to.
func (c *Carrier) create(w http.ResponseWriter, r *http.Request) {
	r.Body = http.MaxBytesReader(w, r.Body, 1<<20)
	if err := r.ParseForm(); err != nil {
		writeError(w, http.StatusBadRequest, 20001)
		return
	}
	if code := wrongWith(r.PostForm); code != 0 {
		writeError(w, http.StatusBadRequest, code)
		return
	}
	m := c.asked(r.PostForm)
	fault, faulty := c.faults.of(m)
	if !faulty || fault.Accept {
		m = c.keep(m)
		c.report(m)
	}
	c.pause(r, fault.Delay)
	if faulty && fault.write(w) {
		return
	}
	if faulty && !fault.Accept { // only delayed
		m = c.keep(m)
		c.report(m)
	}
	writeJSON(w, http.StatusCreated, c.resource(m))
}

func (c *Carrier) asked(f url.Values) Message {
	m := Message{
		ID: newID("SM"), From: c.cfg.Number, To: f.Get("To"), Body: f.Get("Body"),
		MediaURLs: f["MediaUrl"], Status: "queued", callback: f.Get("StatusCallback"),
	}
	if len(m.MediaURLs) > 0 {
		m.ID = newID("MM")
	}
	if from := f.Get("From"); from != "" {
		m.From = from
	}
	return m
}

// wrongWith checks as the carrier does. Source of the codes and of the limit of 1,600:
// from memory of the carrier's public error list.
func wrongWith(f url.Values) int {
	switch {
	case f.Get("To") == "":
		return 21604
	case !e164.MatchString(f.Get("To")):
		return 21211
	case f.Get("From") == "" && f.Get("MessagingServiceSid") == "":
		return 21603
	case f.Get("Body") == "" && f.Get("MediaUrl") == "":
		return 21602
	case len(utf16.Encode([]rune(f.Get("Body")))) > 1600:
		return 21617
	}
	return 0
}

func (c *Carrier) pause(r *http.Request, d time.Duration) {
	if d <= 0 {
		return
	}
	select {
	case <-time.After(d):
	case <-r.Context().Done():
	case <-c.ctx.Done():
	}
}

func (c *Carrier) fetch(w http.ResponseWriter, r *http.Request) {
	m, ok := c.message(strings.TrimSuffix(r.PathValue("file"), ".json"))
	if !ok {
		writeError(w, http.StatusNotFound, 20404)
		return
	}
	writeJSON(w, http.StatusOK, c.resource(m))
}

// resource is a message in the carrier's JSON.
func (c *Carrier) resource(m Message) map[string]any {
	date := m.Created.Format(time.RFC1123Z)
	uri := "/2010-04-01/Accounts/" + c.cfg.AccountID + "/Messages/" + m.ID + ".json"
	res := map[string]any{
		"sid": m.ID, "account_sid": c.cfg.AccountID, "from": m.From, "to": m.To, "body": m.Body,
		"status": m.Status, "direction": "outbound-api", "date_created": date, "date_updated": date,
		"date_sent": nil, "num_media": strconv.Itoa(len(m.MediaURLs)), "uri": uri,
		"error_code": nil, "api_version": "2010-04-01", "num_segments": "1",
	}
	if m.Inbound {
		res["direction"] = "inbound"
	}
	if m.Status != "queued" {
		res["date_sent"] = date
	}
	if m.ErrorCode != 0 {
		res["error_code"] = m.ErrorCode
	}
	return res
}
