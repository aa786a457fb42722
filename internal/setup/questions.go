package setup

import (
	"regexp"
	"strings"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/place"
)

// questions are all that is asked, in order: what helps to guess the next ones comes first.
func questions() []question {
	of := func(path string) func(Answers, string) (string, error) { return inShopFile(path) }
	list := []question{
		{key: "name", ask: "What is the shop called?", initial: fixed("Pinwheel Dome Supply"), setting: "name"},
		{key: "email", ask: "At which mail address does a person answer?", initial: fixed("orders@pinwheel-domes.example"), setting: "email"},
		{key: "phone", ask: "At which phone number does a person answer?", initial: fixed("(218) 555-0142"), setting: "phone"},
		{key: "website", ask: "The shop's website? (none for none)", initial: fixed("none"), setting: "website"},
		{key: "street", ask: "Number and street from which parcels start?", initial: fixed("410 Breakwater Road"), setting: "address.street"},
		{key: "zip", ask: "Its ZIP code?", initial: fixed("55802"), setting: "address.zip"},
		{key: "city", ask: "Town?", initial: byZIP(func(e place.Entry) string { return e.City }, "Duluth"), setting: "address.city"},
		{key: "state", ask: "State?", initial: byZIP(func(e place.Entry) string { return e.State }, "MN"), setting: "address.state"},
		{key: "time_zone", ask: "Time zone?", initial: byZIP(func(e place.Entry) string { return e.Zone }, "America/Chicago"), setting: "time_zone"},
		{key: "hours", ask: "When are people there, Monday to Friday?", initial: fixed("8:00-17:00"), setting: "hours.monday"},
		{key: "saturday", ask: "And on Saturday?", initial: fixed("closed"), setting: "hours.saturday"},
		{key: "ships_to", ask: "Where to does the shop ship? (all, contiguous, or a list like [MN, WI])", initial: fixed("all"), setting: "ships_to"},
		{key: "public_url", ask: "The bot's address, a name of yours that leads to this machine?", initial: func(a Answers) string { return "https://bot." + a.domain() }, check: publicAddress, env: "PUBLIC_URL"},
		{key: "database_url", ask: "The database? (the default is Postgres on this machine)", initial: exampleOf("DATABASE_URL"), check: database, secret: true, env: "DATABASE_URL"},
		{key: "carrier_account", ask: "The account's id at the carrier of texts?", initial: exampleOf("CARRIER_ACCOUNT_ID"), check: accountID, env: "CARRIER_ACCOUNT_ID"},
		{key: "carrier_token", ask: "The account's token? (it is not shown)", initial: exampleOf("CARRIER_AUTH_TOKEN"), check: secretText, secret: true, env: "CARRIER_AUTH_TOKEN"},
		{key: "carrier_number", ask: "The number that texts?", initial: func(a Answers) string { return a["phone"] }, check: sender, env: "CARRIER_FROM"},
		{key: "mail", ask: "Does the bot have a mailbox of its own, to talk by mail too?", initial: fixed("no"), check: yesOrNo},
		{key: "mail_user", ask: "The mailbox's address, with which it logs in?", initial: func(a Answers) string { return "hello@" + a.domain() }, check: inShopFile("email"), when: Answers.withMail, env: "IMAP_USER"},
		{key: "imap", ask: "Its mail server?", initial: below("imap"), check: mailServer, when: Answers.withMail, env: "IMAP_ADDRESS"},
		{key: "smtp", ask: "The server that takes its mail?", initial: below("smtp"), check: mailServer, when: Answers.withMail, env: "SMTP_ADDRESS"},
		{key: "mail_password", ask: "The mailbox's password, best one made for the bot alone? (it is not shown)", initial: exampleOf("IMAP_PASSWORD"), check: secretText, secret: true, when: Answers.withMail, env: "IMAP_PASSWORD"},
	}
	for i := range list {
		if list[i].check == nil {
			list[i].check = of(list[i].setting)
		}
	}
	return list
}

// exampleOf is what the environment's example has for a variable.
func exampleOf(name string) func(Answers) string {
	m := regexp.MustCompile(`(?m)^(?:# )?` + name + `=(.*)$`).FindStringSubmatch(deploy.ExampleEnvironment)
	if m == nil {
		return fixed("")
	}
	return fixed(strings.TrimSpace(m[1]))
}
