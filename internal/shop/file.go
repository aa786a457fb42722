package shop

import "time"

// File is one shop file. Every setting that is not marked as required may be left out.
type File struct {
	// Name is what the shop is called. Required.
	Name string `yaml:"name" required:"what the shop is called, like Pinwheel Dome Supply"`
	// Assistant is how the bot introduces itself; it always says that it is not a person.
	Assistant string `yaml:"assistant"`
	// Phone is the number at which a person answers, told to customers. Required.
	Phone Phone `yaml:"phone" required:"the number at which a person answers, like (218) 555-0142"`
	// Email is the address at which a person answers. Required.
	Email Mail `yaml:"email" required:"the address at which a person answers, like orders@example.com"`
	// Website is the shop's own.
	Website Website `yaml:"website"`
	// Address is where the shop is and ships from. Required.
	Address Address `yaml:"address" required:"where the shop is and ships from: street, city, state, zip"`
	// Zone is the shop's time zone, by its name in the tz database. Required.
	Zone Zone `yaml:"time_zone" required:"the shop's time zone, like America/Chicago"`
	// Hours are when people are there, day by day. Required.
	Hours Week `yaml:"hours" required:"when the shop is open, like monday: 8:00-17:00"`
	// Holidays are the days on which the shop is closed, by name or date.
	Holidays []Holiday `yaml:"holidays"`

	// Sells is what the shop sells at all.
	Sells Sells `yaml:"sells"`
	// ShipsTo is where it ships: all, contiguous (the 48 states and DC), or a list of states.
	ShipsTo States `yaml:"ships_to"`
	// Tolerances are the lines between sound and not.
	Tolerances Tolerances `yaml:"tolerances"`
	// Making bounds what can be made to size.
	Making Making `yaml:"making"`
	// Stock are the sizes that lie ready.
	Stock []StockItem `yaml:"stock"`
	// Prices are the price book; without one there are no estimates.
	Prices *Prices `yaml:"prices"`
	// Shipping are the limits of parcels and freight, and how the shop packs.
	Shipping Shipping `yaml:"shipping"`

	// Replies say how the bot waits before it answers.
	Replies Replies `yaml:"replies"`
	// Reminders say when someone who fell silent is written to once more.
	Reminders Reminders `yaml:"reminders"`
	// Limits keep senders from running up the bill.
	Limits Limits `yaml:"limits"`
	// Keep says how long things are kept.
	Keep Keep `yaml:"keep"`
	// ShowEstimate allows the low and high of an estimate to be told to customers.
	ShowEstimate bool `yaml:"show_estimate"`
	// Wording replaces sentences of the bot: key, language (en, es), text.
	Wording map[string]map[string]string `yaml:"wording"`
	// Answers are the owner's to what customers often ask.
	Answers []Answer `yaml:"answers"`

	at map[string]position
}

// Address is a postal address in the US.
type Address struct {
	// Street is the number and street.
	Street string `yaml:"street" required:"number and street"`
	// City is the town.
	City string `yaml:"city" required:"the town"`
	// State is its two-letter postal code.
	State State `yaml:"state" required:"the state's two letters, like MN"`
	// ZIP is the five-digit code, in quotes where it begins with 0. Parcels start here.
	ZIP ZIP `yaml:"zip" required:"the five-digit ZIP code, in quotes"`
}

// String is the address on one line.
func (a Address) String() string {
	return a.Street + ", " + a.City + ", " + string(a.State) + " " + string(a.ZIP)
}

// Sells is what the shop sells at all; what a customer wants beyond it goes to a person.
type Sells struct {
	// Materials are of acrylic, polycarbonate.
	Materials []string `yaml:"materials" of:"material" some:"yes"`
	// Layers are how many layers of plastic, of 1, 2, 3.
	Layers []int `yaml:"layers" least:"1" most:"3" some:"yes"`
	// Colors are of clear, white, bronze, other.
	Colors []string `yaml:"colors" of:"color" some:"yes"`
	// Finishes of the metal are of mill, bronze_anodized, bronze_powder_coat, other.
	Finishes []string `yaml:"finishes" of:"finish" some:"yes"`
}

// Tolerances are the lines between sound and not. Lengths are in inches.
type Tolerances struct {
	// CapGap is the play of a unit over its curb: inside of its flange less the outside of
	// the curb, in total per direction.
	CapGap CapGap `yaml:"cap_gap"`
	// Grip is how far the plastic lies under the retaining frame, at each edge.
	Grip Grip `yaml:"grip"`
	// Flashing is what it may add to the curb's outside, in total, before anyone asks.
	Flashing Inches `yaml:"flashing"`
	// Hand is the error of a careful hand with a tape, beside how finely it was read.
	Hand Inches `yaml:"hand"`
}

// CapGap bounds the play of a unit over its curb.
type CapGap struct {
	// SoundFrom and SoundTo bound a sound gap, both included; below is tight.
	SoundFrom Inches `yaml:"sound_from"`
	SoundTo   Inches `yaml:"sound_to"`
	// LooseOver is where loose begins; between sound and loose it is noted for staff.
	LooseOver Inches `yaml:"loose_over"`
	// AimFor is the gap that a unit made to size is given.
	AimFor Inches `yaml:"aim_for"`
}

// Grip bounds how far the plastic lies under the frame.
type Grip struct {
	// ShortUnder is where short begins.
	ShortUnder Inches `yaml:"short_under"`
	// SoundFrom and SoundTo bound a sound grip, both included.
	SoundFrom Inches `yaml:"sound_from"`
	SoundTo   Inches `yaml:"sound_to"`
	// LongOver is where long begins.
	LongOver Inches `yaml:"long_over"`
}

// Making bounds what can be made to size.
type Making struct {
	// Step is what order sizes are rounded up to.
	Step Inches `yaml:"step"`
	// Dome bounds the sides of the plastic sheet, Unit those inside a unit's flange.
	Dome Sides `yaml:"dome"`
	Unit Sides `yaml:"unit"`
}

// Sides bound each side of a part.
type Sides struct {
	// Smallest and Largest side, both included.
	Smallest Inches `yaml:"smallest"`
	Largest  Inches `yaml:"largest"`
}

// StockItem is a part that lies ready.
type StockItem struct {
	// Code is the shop's own for it.
	Code string `yaml:"code" required:"the shop's own code for it"`
	// Part is dome or unit.
	Part string `yaml:"part" of:"part" required:"dome or unit"`
	// Size is the plastic's size of a dome, inside of the flange of a unit: 26 x 52, or 30
	// round.
	Size Outline `yaml:"size" required:"like 26 x 52, or 30 round"`
	// Profile is dome, pyramid, barrel or flat; dome if left out.
	Profile string `yaml:"profile" of:"profile"`
	// Layers of plastic.
	Layers int `yaml:"layers" least:"1" most:"3" required:"how many layers of plastic"`
	// Material is acrylic or polycarbonate.
	Material string `yaml:"material" of:"material" required:"acrylic or polycarbonate"`
	// Colors are those of the layers, from outside to inside.
	Colors []string `yaml:"colors" of:"color" required:"of each layer, from outside to inside, like [clear, white]"`
	// Finish is that of the metal, of a unit.
	Finish string `yaml:"finish" of:"finish"`
}

// Replies say how the bot waits: people send one thought in three texts.
type Replies struct {
	// Quiet is how long nothing more must have come before the bot answers.
	Quiet Span `yaml:"quiet"`
	// AtMost is how long it waits for that, from the first text.
	AtMost Span `yaml:"at_most"`
}

// Reminders go only to people who may be texted, by day where they are.
type Reminders struct {
	// After is how long after the last message each one goes out; an empty list is none.
	After []Span `yaml:"after"`
	// GiveUp is how long after the last message the talk counts as lapsed.
	GiveUp Span `yaml:"give_up"`
}

// Answer is the owner's answer to what customers often ask.
type Answer struct {
	// Question as a customer would put it.
	Question string `yaml:"question" required:"as a customer would put it"`
	// Also are other ways to ask it.
	Also []string `yaml:"also"`
	// AlsoInSpanish are ways to ask it in Spanish; needed for a Spanish answer to be found.
	AlsoInSpanish []string `yaml:"also_in_spanish"`
	// Answer by language: en, and es where there is one.
	Answer map[string]string `yaml:"answer" required:"by language, like en: We do not install."`
}

// defaults are the settings of a file that says nothing.
func defaults() *File {
	return &File{
		Assistant:  "the shop's automated assistant",
		Sells:      defaultSells(),
		Tolerances: defaultTolerances(),
		Making:     defaultMaking(),
		Shipping:   defaultShipping(),
		Replies:    Replies{Quiet: Span(4 * time.Second), AtMost: Span(15 * time.Second)},
		Reminders:  defaultReminders(),
		Limits:     defaultLimits(),
		Keep:       defaultKeep(),
	}
}
