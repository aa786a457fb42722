package main

import (
	"encoding/json"
	"errors"
	"fmt"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/conversation/reading"
)

type readCommand struct {
	Email bool `help:"Read one mail (RFC 5322) instead of lines; it prints one line, with the text that its sender newly wrote."`
}

func (c *readCommand) Run(s streams) error {
	if c.Email {
		return readMail(s)
	}
	bad, err := reading.ReadLines(s.in, s.out)
	if err == nil && bad > 0 {
		return errSilent
	}
	return err
}

// mailReading is what a mail says; its JSON is that of docs/contract.md.
type mailReading struct {
	reading.Reading
	Text   string `json:"text"`
	Photos int    `json:"photos"`
	Auto   bool   `json:"auto"`
}

func readMail(s streams) error {
	out := json.NewEncoder(s.out)
	out.SetEscapeHTML(false)
	mail, err := email.Parse(s.in, email.Limits{})
	if errors.Is(err, email.ErrMalformed) || errors.Is(err, email.ErrTooLarge) {
		if err := out.Encode(map[string]any{"error": err.Error(), "line": 1}); err != nil {
			return fmt.Errorf("write the answer: %w", err)
		}
		return errSilent
	}
	if err != nil {
		return err
	}
	answer := mailReading{Text: mail.Text, Photos: len(mail.Photos), Auto: mail.Auto}
	if mail.Auto { // nobody said anything
		answer.Reading = reading.Reading{Facts: []reading.Fact{}, Unclear: []reading.Unclear{}, Requests: []reading.Request{},
			Language: reading.Read(reading.Input{Text: mail.Text}).Language}
	} else {
		answer.Reading = readBlocks(mail.Blocks, mail.Text)
	}
	if err := out.Encode(answer); err != nil {
		return fmt.Errorf("write the answer: %w", err)
	}
	return nil
}

// readBlocks reads a mail's new text: at once where nothing is quoted between, else piece
// by piece, each as the answer to what stands quoted above it.
func readBlocks(blocks []email.Block, text string) reading.Reading {
	asked := false
	for _, b := range blocks {
		asked = asked || len(reading.Asks(b.Quoted)) > 0
	}
	all := reading.Read(reading.Input{Text: text})
	if !asked {
		return all
	}
	out := reading.Reading{Facts: []reading.Fact{}, Unclear: []reading.Unclear{}, Requests: []reading.Request{}, Language: all.Language}
	for _, b := range blocks {
		r := reading.Read(reading.Input{Text: b.Text, Asked: reading.Asks(b.Quoted), Language: all.Language})
		out.Facts = append(out.Facts, r.Facts...)
		out.Unclear = append(out.Unclear, r.Unclear...)
		out.Requests = append(out.Requests, r.Requests...)
	}
	return out
}
