package demo

import (
	_ "embed"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"time"

	"github.com/goccy/go-yaml"
)

// Customer is somebody with a need, played by data.
type Customer struct {
	// Who says in a line who this is, for people who watch.
	Who string `yaml:"who"`
	// Number is the customer's phone, E.164, of one who texts.
	Number string `yaml:"number"`
	// Mail is the address of one who writes mail, Name what the envelope says, Subject what
	// it is about.
	Mail    string `yaml:"mail"`
	Name    string `yaml:"name"`
	Subject string `yaml:"subject"`
	// Encloses is how many photos come with the first message.
	Encloses int `yaml:"encloses"`
	// Day counts days after the demo's first; Clock is the time of day in the shop's zone.
	Day   int    `yaml:"day"`
	Clock string `yaml:"clock"`
	// Opens are the first texts, sent in one go.
	Opens []string `yaml:"opens"`
	// Answers to what is asked, by topic; where there are several, each is given once, the
	// last as often as needed.
	Answers map[string][]string `yaml:"answers"`
	// Photos are topics at whose question a photo is sent instead of words.
	Photos []string `yaml:"photos"`
	// Otherwise is said to what has no answer.
	Otherwise string `yaml:"otherwise"`
	// Closes are texts that follow when the talk has come to its end, each for itself.
	Closes []string `yaml:"closes"`
	// Hears are patterns that must be in the bot's texts, Once those that must be in
	// exactly one of them, Never those that must not.
	Hears []string `yaml:"hears"`
	Once  []string `yaml:"once"`
	Never []string `yaml:"never"`
	// Lead is what must be in the lead record; see Differences.
	Lead any `yaml:"lead"`
}

//go:embed customers.yaml
var customersFile []byte

// Customers are the demo's.
func Customers() ([]Customer, error) {
	var list []Customer
	if err := yaml.UnmarshalWithOptions(customersFile, &list, yaml.Strict()); err != nil {
		return nil, fmt.Errorf("the demo's customers: %w", err)
	}
	for _, c := range list {
		if err := c.check(); err != nil {
			return nil, fmt.Errorf("customer %s: %w", c.Address(), err)
		}
	}
	return list, nil
}

func (c *Customer) check() error {
	if len(c.Opens) == 0 || (c.Number == "") == (c.Mail == "") || c.Lead == nil {
		return errors.New("lacks a number or a mail address, a first text or a lead")
	}
	if _, err := time.Parse("15:04", c.Clock); err != nil {
		return fmt.Errorf("clock: %w", err)
	}
	for _, pattern := range slices.Concat(c.Hears, c.Once, c.Never) {
		if _, err := regexp.Compile(pattern); err != nil {
			return err
		}
	}
	return nil
}

// Address is where the customer writes from: a number or a mail address.
func (c *Customer) Address() string {
	if c.Mail != "" {
		return c.Mail
	}
	return c.Number
}

// At is the moment at which the customer begins, on a demo whose first day is given.
func (c *Customer) At(first time.Time) time.Time {
	clock, err := time.Parse("15:04", c.Clock)
	if err != nil {
		return first // refused by check
	}
	y, m, d := first.Date()
	return time.Date(y, m, d+c.Day, clock.Hour(), clock.Minute(), 0, 0, first.Location())
}

// FirstDay is the demo's first day: the last Tuesday at least a week before now that is
// open, as is the day after it, at noon each. So the talks lie in the past whenever the
// demo runs, and fall into hours that mean the same.
func FirstDay(now time.Time, open func(time.Time) bool) time.Time {
	y, m, d := now.Date()
	for back := 7; back < 70; back++ {
		noon := time.Date(y, m, d-back, 12, 0, 0, 0, now.Location())
		if noon.Weekday() == time.Tuesday && open(noon) && open(noon.AddDate(0, 0, 1)) {
			return time.Date(y, m, d-back, 0, 0, 0, 0, now.Location())
		}
	}
	return time.Date(y, m, d-7, 0, 0, 0, 0, now.Location())
}
