package main

import "example.com/intake-bot/internal/conversation/reading"

type readCommand struct{}

func (c *readCommand) Run(s streams) error {
	bad, err := reading.ReadLines(s.in, s.out)
	if err == nil && bad > 0 {
		return errSilent
	}
	return err
}
