package main

import (
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

type checkCommand struct {
	shopFlag
}

func (c *checkCommand) Run(s streams) error {
	f, err := c.load()
	if err != nil {
		return err
	}
	rules, err := talking(f)
	if err != nil {
		return err
	}
	bad, err := fitcheck.CheckLines(s.in, s.out, rules.Rules, conversation.SiteOf)
	if err == nil && bad > 0 {
		return errSilent
	}
	return err
}
