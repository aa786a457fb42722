package main

import (
	"context"
	"encoding/json"
	"strings"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/preflight"
	"example.com/intake-bot/internal/shop"
)

type preflightCommand struct {
	Environment string `placeholder:"FILE" help:"Take the settings from this file of lines NAME=value, not from the environment."`
	JSON        bool   `name:"json" help:"For programs: one JSON object with all lines."`
}

func (c *preflightCommand) Run(ctx context.Context, s streams) error {
	env := osEnvironment()
	if c.Environment != "" {
		var err error
		if env, err = environmentFile(c.Environment); err != nil {
			return err
		}
	}
	lines := lookAhead(ctx, env)
	if err := c.write(s, lines); err != nil {
		return err
	}
	if !preflight.Passed(lines) {
		return errSilent
	}
	return nil
}

func (c *preflightCommand) write(s streams, lines []preflight.Line) error {
	if c.JSON {
		return json.NewEncoder(s.out).Encode(struct {
			OK     bool             `json:"ok"`
			Checks []preflight.Line `json:"checks"`
		}{preflight.Passed(lines), lines})
	}
	return preflight.Write(s.out, lines, isTerminal(s.out))
}

// lookAhead checks what serve would be started with.
func lookAhead(ctx context.Context, env environment) []preflight.Line {
	set, err := readSettings(env)
	lines := settingsLines(env, err)
	checks := preflight.Settings{DatabaseURL: set.databaseURL, ShopFile: set.shopFile, ReadShop: readShop, PublicURL: set.publicURL}
	if c := set.carrier; c.account != "" && c.token != "" && (c.from == "") != (c.service == "") {
		checks.Carrier = &sms.Config{AccountID: c.account, AuthToken: c.token, From: c.from, MessagingService: c.service, BaseURL: c.apiURL}
	}
	if m := set.mail; m.address != "" {
		checks.Mail = &preflight.Mail{
			Box: email.WatcherConfig{Address: m.imap.server, Security: m.imap.security, Account: m.imap.account, Folder: m.folder, TakenIn: m.takenIn},
			Post: email.SenderConfig{Address: m.smtp.server, Security: m.smtp.security, Account: m.smtp.account,
				Hello: domainOf(m.address)},
		}
	}
	return append(lines, preflight.Run(ctx, checks)...)
}

// settingsLines tells what is wrong in the settings themselves: err is readSettings'.
func settingsLines(env environment, err error) []preflight.Line {
	const check = "settings"
	var lines []preflight.Line
	if err != nil {
		for _, one := range strings.Split(err.Error(), "\n") {
			lines = append(lines, preflight.Line{Check: check, Result: preflight.Wrong, Found: one,
				Do: "set it where the bot's environment is kept (/etc/intake-bot/environment); deploy/environment.example explains each"})
		}
	}
	for _, name := range ownersAlone {
		value, err := env.secret(name)
		if err == nil && value != "" && value == exampleValue(name) {
			lines = append(lines, preflight.Line{Check: check, Result: preflight.Wrong, Found: name + " is still the example's",
				Do: "put your own in its place"})
		}
	}
	if len(lines) == 0 {
		lines = []preflight.Line{{Check: check, Result: preflight.OK, Found: "all that is needed is set"}}
	}
	return lines
}

// ownersAlone are settings for which the example's value can't be anybody's.
var ownersAlone = []string{"PUBLIC_URL", "CARRIER_ACCOUNT_ID", "CARRIER_AUTH_TOKEN", "CARRIER_MESSAGING_SERVICE",
	"IMAP_PASSWORD", "SMTP_PASSWORD", "WEBHOOK_SECRET"}

// exampleValue is what the environment's example has for a variable, switched on or not.
func exampleValue(name string) string {
	for line := range strings.Lines(deploy.ExampleEnvironment) {
		if value, ok := strings.CutPrefix(strings.TrimPrefix(strings.TrimSpace(line), "# "), name+"="); ok {
			return value
		}
	}
	return ""
}

// readShop reads a shop file as serve does, and names what in it is still the invented shop's.
func readShop(path string) (found string, example []string, err error) {
	f, err := shop.Load(path, wording.CheckOverride)
	if err != nil {
		return "", nil, err
	}
	if _, err := talking(f); err != nil {
		return "", nil, err
	}
	invented, err := shop.Parse([]byte(deploy.ExampleShop))
	if err != nil {
		return "", nil, err
	}
	for _, one := range []struct {
		setting string
		as      bool
	}{
		{"name", f.Name == invented.Name}, {"phone", f.Phone == invented.Phone},
		{"email", f.Email == invented.Email}, {"address.street", f.Address.Street == invented.Address.Street},
	} {
		if one.as {
			example = append(example, one.setting)
		}
	}
	return f.Name + ", " + f.Address.String(), example, nil
}
