package main

import (
	"errors"
	"fmt"
	"net/mail"
	"strings"
	"time"

	"example.com/intake-bot/internal/channels/email"
)

// mailSettings are the shop's mailbox and the server that takes its mail; with an empty
// address there is neither, and the bot only texts.
type mailSettings struct {
	address    string // from which mail goes and to which it comes
	imap, smtp mailServer
	folder     string // that is watched
	takenIn    string // where mail goes that was taken in
	authServer string // whose word on senders counts
	checkDKIM  bool
	poll       time.Duration // between looks at the mailbox; 0: the watcher's own
}

// mailServer is one server and the account there.
type mailServer struct {
	server   string // host:port
	security email.Security
	account  email.Account
}

// readMailSettings says all that is wrong at once.
func readMailSettings(env environment) (mailSettings, error) {
	r := mailReader{env: env}
	s := mailSettings{
		address: r.get("MAIL_ADDRESS"), imap: r.server("IMAP", "993"), smtp: r.server("SMTP", "465"),
		folder: r.get("IMAP_FOLDER"), takenIn: r.get("IMAP_TAKEN_IN"), authServer: r.get("MAIL_AUTH_SERVER"),
		checkDKIM: r.yes("MAIL_CHECK_DKIM"),
	}
	if s.imap.server == "" && s.smtp.server == "" && s.address == "" {
		return mailSettings{}, errors.Join(r.wrong...)
	}
	if s.imap.server == "" {
		r.wrong = append(r.wrong, errors.New("IMAP_ADDRESS is not set: the server of the shop's mailbox, like imap.example.com:993"))
	}
	if s.smtp.server == "" {
		r.wrong = append(r.wrong, errors.New("SMTP_ADDRESS is not set: the server that takes the shop's mail, like smtp.example.com:465"))
	}
	s.address = strings.ToLower(orElse(s.address, s.imap.account.User))
	if a, err := mail.ParseAddress(s.address); err != nil || a.Address != s.address {
		r.wrong = append(r.wrong, errors.New("MAIL_ADDRESS is not a plain mail address, like hello@example.com"))
	}
	return s, errors.Join(r.wrong...)
}

// mailReader collects what is wrong.
type mailReader struct {
	env   environment
	wrong []error
}

func (r *mailReader) get(name string) string {
	value, err := r.env.secret(name)
	if err != nil {
		r.wrong = append(r.wrong, err)
	}
	return value
}

func (r *mailReader) yes(name string) bool {
	switch value := strings.ToLower(r.get(name)); value {
	case "", "no":
		return false
	case "yes":
		return true
	}
	r.wrong = append(r.wrong, fmt.Errorf("%s is neither yes nor no", name))
	return false
}

// server reads the settings of one server, whose names begin alike.
func (r *mailReader) server(prefix, port string) mailServer {
	s := mailServer{server: r.get(prefix + "_ADDRESS"), security: email.Security(orElse(r.get(prefix+"_SECURITY"), string(email.ImplicitTLS)))}
	s.account = email.Account{User: r.get(prefix + "_USER"), Password: r.get(prefix + "_PASSWORD")}
	command := r.get(prefix + "_TOKEN_COMMAND")
	if s.server == "" {
		return mailServer{}
	}
	if !strings.Contains(s.server, ":") {
		s.server += ":" + port
	}
	if words := strings.Fields(command); len(words) > 0 {
		s.account.Token = email.TokenCommand(words[0], words[1:]...)
	}
	if s.account.User == "" {
		r.wrong = append(r.wrong, fmt.Errorf("%s_USER is not set: the name to log in with", prefix))
	}
	if (s.account.Password == "") == (command == "") {
		r.wrong = append(r.wrong, fmt.Errorf("set one of %s_PASSWORD and %s_TOKEN_COMMAND, a program that prints an access token", prefix, prefix))
	}
	return s
}
