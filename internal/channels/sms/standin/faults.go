package standin

import (
	"encoding/json"
	"net/http"
	"strconv"
	"sync"
	"time"
)

// Fault is one way in which taking a message can go wrong.
type Fault struct {
	Status     int           // answer with this; 0: the answer is as it would have been
	Code       int           // the carrier's error code in a JSON answer
	NotJSON    bool          // answer with a page of HTML, as a proxy between does
	RetryAfter time.Duration // header, in whole seconds
	Accept     bool          // the message is taken all the same
	Reset      bool          // cut the connection in place of an answer
	Delay      time.Duration // before the answer
}

// Faults that happen to real carriers.
var (
	TooMany     = Fault{Status: 429, Code: 20429, RetryAfter: time.Second}
	ServerError = Fault{Status: 500, Code: 20500}
	BadGateway  = Fault{Status: 502, NotJSON: true}
	ResetBefore = Fault{Reset: true}
	ResetAfter  = Fault{Reset: true, Accept: true} // the send that can't be known
	LostAnswer  = Fault{Status: 504, NotJSON: true, Accept: true}
)

// Slow takes the message but answers only after a while.
func Slow(d time.Duration) Fault { return Fault{Delay: d, Accept: true} }

type faults struct {
	mu       sync.Mutex
	next     []Fault
	decide   func(Message) (Fault, bool)
	refused  map[string]int
	lost     map[string]int
	listDown bool
}

func (f *faults) init() { f.refused, f.lost = map[string]int{}, map[string]int{} }

// Fail makes the next sends fail, one after the other.
func (c *Carrier) Fail(next ...Fault) {
	c.faults.mu.Lock()
	defer c.faults.mu.Unlock()
	c.faults.next = append(c.faults.next, next...)
}

// FailBy asks for each send that Fail leaves alone whether it fails, for seeded runs;
// nil ends it.
func (c *Carrier) FailBy(decide func(Message) (Fault, bool)) {
	c.faults.mu.Lock()
	defer c.faults.mu.Unlock()
	c.faults.decide = decide
}

// Refuse makes sends to a number fail at once with the carrier's code, such as 21610;
// code 0 ends it.
func (c *Carrier) Refuse(number string, code int) { c.faults.set(c.faults.refused, number, code) }

// Lose makes sends to a number be taken and later reported undelivered with a code,
// such as 30003; code 0 ends it.
func (c *Carrier) Lose(number string, code int) { c.faults.set(c.faults.lost, number, code) }

// ListDown makes the message list answer 503 while it is true.
func (c *Carrier) ListDown(down bool) {
	c.faults.mu.Lock()
	defer c.faults.mu.Unlock()
	c.faults.listDown = down
}

func (f *faults) set(m map[string]int, number string, code int) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if code == 0 {
		delete(m, number)
		return
	}
	m[number] = code
}

// of is the fault that a message to be taken meets.
func (f *faults) of(m Message) (Fault, bool) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if code := f.refused[m.To]; code != 0 {
		return Fault{Status: 400, Code: code}, true
	}
	if len(f.next) > 0 {
		first := f.next[0]
		f.next = f.next[1:]
		return first, true
	}
	if f.decide != nil {
		return f.decide(m)
	}
	return Fault{}, false
}

func (f *faults) lostCode(number string) int {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.lost[number]
}

func (f *faults) listIsDown() bool {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.listDown
}

// write gives the fault's own answer; false where there is none but the usual.
func (f Fault) write(w http.ResponseWriter) bool {
	if f.Reset {
		panic(http.ErrAbortHandler) // net/http's way to cut a connection
	}
	if f.Status == 0 {
		return false
	}
	if f.RetryAfter > 0 {
		w.Header().Set("Retry-After", strconv.Itoa(int(f.RetryAfter.Seconds())))
	}
	if f.NotJSON {
		w.Header().Set("Content-Type", "text/html")
		w.WriteHeader(f.Status)
		w.Write([]byte("<html><title>" + http.StatusText(f.Status) + "</title></html>"))
		return true
	}
	writeError(w, f.Status, f.Code)
	return true
}

// writeError answers as the carrier does when it refuses.
func writeError(w http.ResponseWriter, status, code int) {
	writeJSON(w, status, map[string]any{
		"code": code, "status": status, "message": http.StatusText(status),
		"more_info": "https://carrier.example/errors/" + strconv.Itoa(code),
	})
}

func writeJSON(w http.ResponseWriter, status int, v any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	json.NewEncoder(w).Encode(v)
}
