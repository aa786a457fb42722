package preflight

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"strings"
	"time"

	"example.com/intake-bot/internal/channels/sms"
)

func checkCarrier(ctx context.Context, s *Settings) []Line {
	const check = "carrier account"
	if s.Carrier == nil {
		return nil
	}
	cfg := *s.Carrier
	cfg.Timeout = s.Patience
	client, err := sms.NewClient(cfg)
	if err != nil {
		return []Line{wrong(check, err.Error(), "copy CARRIER_ACCOUNT_ID and CARRIER_AUTH_TOKEN from the carrier's console once more")}
	}
	before := s.Now()
	account, err := client.Account(ctx)
	if err != nil {
		return []Line{accountFailed(check, err)}
	}
	after := s.Now()
	lines := []Line{standing(check, account)}
	if !account.Date.IsZero() {
		lines = append(lines, compare("clock and carrier", before, after, account.Date, time.Second))
	}
	sender, err := client.Sender(ctx)
	if err != nil {
		return append(lines, senderFailed(&cfg, err))
	}
	return append(lines, checkSender(&cfg, sender), checkInbound(s.PublicURL, sender), checkRegistered(&cfg, sender))
}

func standing(check string, a sms.Account) Line {
	switch {
	case a.Status != "active":
		return wrong(check, "the carrier has the account as "+a.Status, "nothing is sent from it: look at the carrier's console, or ask its support")
	case a.Trial:
		return unknown(check, "the credentials are right; it is a trial account", "a trial account texts only to numbers that were proven to the carrier: upgrade it before customers write")
	}
	return ok(check, "the credentials are right and the account is active")
}

func accountFailed(check string, err error) Line {
	var said *sms.SendError
	if errors.As(err, &said) && (said.HTTPStatus == http.StatusUnauthorized || said.HTTPStatus == http.StatusNotFound || said.Code == 20003) {
		return wrong(check, "the carrier refuses the credentials", "copy CARRIER_ACCOUNT_ID and CARRIER_AUTH_TOKEN from the carrier's console once more; a token that was changed there must be changed here")
	}
	return wrong(check, err.Error(), "the carrier was not reached: does this machine reach the internet (a firewall, name resolution), and is CARRIER_API_URL left out?")
}

func senderName(cfg *sms.Config) (check, variable, value string) {
	if cfg.MessagingService != "" {
		return "carrier service", "CARRIER_MESSAGING_SERVICE", cfg.MessagingService
	}
	return "carrier number", "CARRIER_FROM", cfg.From
}

func senderFailed(cfg *sms.Config, err error) Line {
	check, variable, value := senderName(cfg)
	if errors.Is(err, sms.ErrNoSender) {
		return wrong(check, "the account does not have "+value, "set "+variable+" to one of this account, in the form that the carrier's console shows (+1 and ten digits; a service's id begins with MG)")
	}
	return wrong(check, err.Error(), "ask again in a while; the carrier's status page may know of a fault")
}

func checkSender(cfg *sms.Config, sender sms.Sender) Line {
	check, _, value := senderName(cfg)
	switch {
	case !sender.Texts:
		return wrong(check, value+" can't send texts", "take a number at the carrier that can do SMS and MMS, and set CARRIER_FROM to it")
	case !sender.Pictures:
		return unknown(check, value+" texts, but without pictures", "customers' photos and the drawings of how to measure need a number that can do MMS")
	}
	return ok(check, "%s belongs to the account and can text", value)
}

// checkInbound compares where the carrier posts with where the bot listens.
func checkInbound(publicURL string, sender sms.Sender) Line {
	const check = "carrier webhook"
	want := strings.TrimRight(publicURL, "/") + "/sms/inbound"
	enter := "at the carrier, enter " + want + " for incoming messages, as POST"
	switch {
	case publicURL == "":
		return unknown(check, "PUBLIC_URL is not set", "set it, then run this again")
	case sender.Application:
		return unknown(check, "an application at the carrier overrules the number's own address", enter+", in that application, or take the number out of it")
	case sender.ByNumber:
		return unknown(check, "the service leaves incoming messages to what each of its numbers says", enter+", for each number of the service, or for the service itself")
	case sender.InboundURL == "":
		return wrong(check, "the carrier has no address for incoming messages", enter)
	case sender.InboundURL != want:
		return wrong(check, fmt.Sprintf("the carrier posts incoming messages to %s", sender.InboundURL), enter+"; letter for letter, since signatures are checked against it")
	case !strings.EqualFold(sender.InboundMethod, http.MethodPost):
		return wrong(check, "the carrier calls it with "+sender.InboundMethod, enter)
	}
	return ok(check, "the carrier posts to %s", want)
}

// checkRegistered says what the carrier tells of the registration that US networks want.
func checkRegistered(cfg *sms.Config, sender sms.Sender) Line {
	const check, without = "carrier registration", "until it is done, US networks may drop texts without a word"
	switch sender.Registration {
	case sms.Registered:
		return ok(check, "the carrier has it as done")
	case sms.NotRegistered:
		found := "the carrier has it as not done"
		if sender.Stage != "" {
			found += " (" + sender.Stage + ")"
		}
		kind := "the campaign (A2P 10DLC) of the messaging service"
		if sms.TollFree(cfg.From) {
			kind = "the verification of the toll-free number"
		}
		return wrong(check, found, "finish "+kind+" in the carrier's console; "+without)
	}
	return unknown(check, "the carrier does not tell it for a single number", "look in its console whether the number stands in a registered campaign (A2P 10DLC); "+without)
}
