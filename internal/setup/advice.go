package setup

import (
	"fmt"
	"strings"

	"example.com/intake-bot/internal/channels/sms"
)

// Advice says what is to be entered elsewhere.
func Advice(a Answers) string {
	host := strings.TrimPrefix(a["public_url"], "https://")
	var b strings.Builder
	fmt.Fprintf(&b, `At your domain's provider
  Let %s lead to this machine (an A record, AAAA for IPv6), ports 80 and 443 open.

At the carrier of texts, for %s
  Incoming messages: %s/sms/inbound   as POST
  If that fails:     the same address again
  Status callbacks need no entry: the bot names %[3]s/sms/status with each text.

`, host, a["carrier_number"], a["public_url"])
	b.WriteString(registration(a))
	if a.withMail() {
		b.WriteString(mailAdvice(a))
	}
	return b.String()
}

// registration is what US networks want of business texts, in short. Source: common
// practice of US carriers, from memory; the owner's own carrier decides.
func registration(a Answers) string {
	kind := "the brand and campaign registration for ordinary numbers (A2P 10DLC)"
	if sms.TollFree(a["carrier_number"]) {
		kind = "the verification of toll-free numbers"
	}
	return fmt.Sprintf(`Register before you tell customers of it
  US networks deliver business texts of registered senders; others may be dropped without
  a word. For this number that is %s.
  It takes days, so begin now. As a rule it asks for:
  - who the business is (name, tax number, address, website);
  - what it is for: answering customers who write first, about an order;
  - two or three texts as they go out: intake-bot chat shows them;
  - how people come to write and agree to it. A sentence to put beside the number, to
    begin with:
      By texting %s you agree to get automated answers from %s about your request.
      Message and data rates may apply. Reply STOP to end, HELP for help.
  - that STOP and HELP work: they do.
  What you must register and which consent you need, your carrier and your counsel say;
  this is neither's word. What the program does by itself is in docs/privacy.md.

`, kind, a["carrier_number"], a["name"])
}

func mailAdvice(a Answers) string {
	_, domain, _ := strings.Cut(a["mail_user"], "@")
	return fmt.Sprintf(`At the mail provider, for %s
  Switch IMAP on, and make a password for the bot alone where the provider has such.
  Give it a mailbox of its own: what it took in is moved to the folder "Taken in".
  Let %s say who may send for it: the entries for SPF, DKIM and DMARC.

`, a["mail_user"], domain)
}

// Left says what still stands as in the example, in the names of the questions.
func Left(a Answers) []string {
	var left []string
	for _, key := range []string{"name", "email", "phone", "street", "carrier_account", "carrier_token", "mail_password"} {
		for _, q := range questions() {
			if q.key == key && a[key] != "" && a[key] == q.initial(Answers{}) {
				left = append(left, strings.ReplaceAll(key, "_", " "))
			}
		}
	}
	return left
}
