package sms

import (
	"fmt"
	"net/http"
	"time"
)

// Kind says what a failed send means for the next one.
type Kind string

const (
	Temporary    Kind = "temporary"    // not taken: try again later
	Unknown      Kind = "unknown"      // may have been taken: ask with Find before trying again
	Unsubscribed Kind = "unsubscribed" // the person told the carrier to stop
	Landline     Kind = "landline"     // the number takes no texts
	Unreachable  Kind = "unreachable"  // the phone or its carrier doesn't take this
	Invalid      Kind = "invalid"      // no such number
	Filtered     Kind = "filtered"     // held to be spam on the way
	Refused      Kind = "refused"      // our settings or our request are wrong: a person must look
)

// Permanent reports whether the same send can never succeed by itself.
func (k Kind) Permanent() bool { return k != Temporary && k != Unknown }

// SendError says why a message was not, or may not have been, taken by the carrier. It
// holds no words and no numbers of customers.
type SendError struct {
	Code       int // the carrier's, 0 where it gave none
	HTTPStatus int // 0 where there was no answer
	Kind       Kind
	RetryAfter time.Duration // what the carrier asked for; 0 where it asked for nothing
	cause      error
}

func (e *SendError) Error() string {
	s := fmt.Sprintf("send: %s (code %d, status %d)", e.Kind, e.Code, e.HTTPStatus)
	if e.cause != nil {
		s += ": " + e.cause.Error()
	}
	return s
}

func (e *SendError) Unwrap() error { return e.cause }

// kinds: source for every line: from memory of the carrier's public error list.
var kinds = map[int]Kind{
	20003: Refused,      // authentication failed
	20404: Refused,      // no such account
	20429: Temporary,    // too many requests
	20500: Temporary,    // the carrier's own fault
	20503: Temporary,    // service not available
	21211: Invalid,      // To is no valid number
	21212: Refused,      // From is no valid number
	21214: Unreachable,  // To can't be reached
	21217: Invalid,      // number doesn't appear to be valid
	21222: Refused,      // account id has illegal characters
	21224: Refused,      // token has illegal characters
	21401: Invalid,      // no valid number
	21408: Refused,      // account may not send to that region
	21421: Invalid,      // no valid number
	21602: Refused,      // body missing
	21603: Refused,      // From missing
	21604: Invalid,      // To missing
	21605: Refused,      // body too long
	21606: Refused,      // From can't send texts
	21608: Refused,      // trial account and unverified number
	21609: Refused,      // status callback address
	21610: Unsubscribed, // the person has replied STOP
	21611: Temporary,    // the sender's queue is full
	21612: Unreachable,  // no route from this From to this To
	21614: Landline,     // To is not a mobile number
	21617: Refused,      // body over 1,600 characters
	21620: Refused,      // media address
	21623: Refused,      // too many media
	21659: Refused,      // From is not the account's
	21660: Refused,      // From is another account's
	21703: Refused,      // messaging service has no senders
	21704: Refused,      // messaging service has no senders
	30001: Temporary,    // queue overflow
	30002: Refused,      // account suspended
	30003: Unreachable,  // handset off or out of reach for long
	30004: Unreachable,  // message blocked
	30005: Invalid,      // handset unknown, number not in service
	30006: Landline,     // landline or a carrier that can't be reached
	30007: Filtered,     // filtered by a carrier
	30008: Temporary,    // carrier gave no reason
	30022: Temporary,    // sender's rate exceeded
	30023: Temporary,    // sender's daily cap reached
	30024: Refused,      // sender not provisioned
	30032: Refused,      // toll-free sender not verified
	30034: Refused,      // sender not registered
}

// KindOf says what one of the carrier's error codes means, from the answer to a send
// or from a status post. An unknown code is Refused: a person must look.
func KindOf(code int) Kind {
	if k, ok := kinds[code]; ok {
		return k
	}
	return Refused
}

// classify decides from what came back. An answer with the carrier's own code says that
// the message was not taken. A 5xx without one comes from something between, which
// can't know whether the carrier took it; nor can anyone when an answer is missing.
func classify(a answer, code int) Kind {
	switch {
	case a.status == 0 && !a.written:
		return Temporary
	case a.status < 400, a.status == http.StatusRequestTimeout:
		return Unknown
	case a.status == http.StatusTooManyRequests:
		return Temporary
	case a.status >= 500 && code == 0:
		return Unknown
	case a.status >= 500:
		return Temporary
	}
	return KindOf(code)
}
