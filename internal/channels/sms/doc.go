// Package sms lets people reach the shop by text message and picture message, and the
// shop answer them. It proves that a webhook is the carrier's before anything in it is
// believed, sends through the carrier's REST interface, says of every failed send
// whether it may be tried again, and counts what a text costs in segments.
//
// It knows nothing of what the texts say.
package sms
