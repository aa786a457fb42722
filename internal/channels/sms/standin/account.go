package standin

import "net/http"

// OnFile is what the carrier has on file of the account and of what sends.
type OnFile struct {
	Status     string // active, suspended, closed; empty is active
	Trial      bool
	InboundURL string // where the number, or the service, posts incoming messages
	Method     string // empty is POST
	TextsOnly  bool   // the number can't send pictures
	Dumb       bool   // the number can't text at all
	Missing    bool   // the account has no such number or service
	// Service is the id of the one messaging service; empty: there is none.
	Service string
	// ByNumber: the service leaves incoming messages to its numbers.
	ByNumber bool
	// Registered: the service's campaign is.
	Registered bool
	// Verification is how far a toll-free number is; empty: none was asked for.
	Verification string
}

// SetOnFile changes what the carrier has on file. Where it was never set, the number is
// an ordinary one that posts to the InboundURL of the Config.
func (c *Carrier) SetOnFile(f OnFile) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.onFile = &f
}

func (c *Carrier) file() OnFile {
	c.mu.Lock()
	defer c.mu.Unlock()
	f := OnFile{InboundURL: c.cfg.InboundURL}
	if c.onFile != nil {
		f = *c.onFile
	}
	if f.Status == "" {
		f.Status = "active"
	}
	if f.Method == "" {
		f.Method = http.MethodPost
	}
	return f
}

func (c *Carrier) accountRoutes(mux *http.ServeMux) {
	mux.HandleFunc("GET /2010-04-01/Accounts/{account}", c.account)
	mux.HandleFunc("GET /2010-04-01/Accounts/{account}/IncomingPhoneNumbers.json", c.authorized(c.numbers))
	mux.HandleFunc("GET /v1/Services/{service}", c.service)
	mux.HandleFunc("GET /v1/Tollfree/Verifications", c.verifications)
}

func (c *Carrier) account(w http.ResponseWriter, r *http.Request) {
	if !c.knows(r) || r.PathValue("account") != c.cfg.AccountID+".json" {
		writeError(w, http.StatusUnauthorized, 20003)
		return
	}
	f, kind := c.file(), "Full"
	if f.Trial {
		kind = "Trial"
	}
	writeJSON(w, http.StatusOK, map[string]any{"sid": c.cfg.AccountID, "status": f.Status, "type": kind, "friendly_name": "the shop"})
}

// numberID is that of the account's one number.
const numberID = "PN00000000000000000000000000000001"

func (c *Carrier) numbers(w http.ResponseWriter, r *http.Request) {
	f := c.file()
	list := []map[string]any{}
	if asked := r.URL.Query().Get("PhoneNumber"); !f.Missing && (asked == "" || asked == c.cfg.Number) {
		list = append(list, map[string]any{"sid": numberID, "phone_number": c.cfg.Number, "sms_url": f.InboundURL, "sms_method": f.Method,
			"sms_application_sid": "", "capabilities": map[string]bool{"sms": !f.Dumb, "mms": !f.Dumb && !f.TextsOnly, "voice": true}})
	}
	writeJSON(w, http.StatusOK, map[string]any{"incoming_phone_numbers": list, "page": 0, "page_size": 50})
}

func (c *Carrier) service(w http.ResponseWriter, r *http.Request) {
	f := c.file()
	switch {
	case !c.knows(r):
		writeError(w, http.StatusUnauthorized, 20003)
	case f.Missing || r.PathValue("service") != f.Service:
		writeError(w, http.StatusNotFound, 20404)
	default:
		writeJSON(w, http.StatusOK, map[string]any{"sid": f.Service, "account_sid": c.cfg.AccountID, "inbound_request_url": f.InboundURL,
			"inbound_method": f.Method, "use_inbound_webhook_on_number": f.ByNumber, "us_app_to_person_registered": f.Registered})
	}
}

func (c *Carrier) verifications(w http.ResponseWriter, r *http.Request) {
	if !c.knows(r) {
		writeError(w, http.StatusUnauthorized, 20003)
		return
	}
	list := []map[string]any{}
	if f := c.file(); f.Verification != "" && r.URL.Query().Get("TollfreePhoneNumberSid") == numberID {
		list = append(list, map[string]any{"sid": "HH1", "tollfree_phone_number_sid": numberID, "status": f.Verification})
	}
	writeJSON(w, http.StatusOK, map[string]any{"verifications": list, "meta": map[string]any{"page": 0, "page_size": 50}})
}
