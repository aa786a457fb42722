package shop

// Limits keep one sender, or many that act as one, from running up the bill. What is over
// a limit is kept and goes to staff; 0 is no limit.
type Limits struct {
	// TextsAnHour is how many texts of one number are answered within an hour.
	TextsAnHour int `yaml:"texts_an_hour" least:"0"`
	// MailsAnHour is how many mails of one address are.
	MailsAnHour int `yaml:"mails_an_hour" least:"0"`
	// NewNumbersAnHour is how many new numbers are answered within an hour that are alike in
	// all but the last four digits.
	NewNumbersAnHour int `yaml:"new_numbers_an_hour" least:"0"`
	// Photos is how many photos of one talk are kept.
	Photos int `yaml:"photos" least:"0"`
	// SegmentsADay is how many segments of texts go out a day, in all.
	SegmentsADay int `yaml:"segments_a_day" least:"0"`
}

// defaultLimits are far above what customers need.
func defaultLimits() Limits {
	return Limits{TextsAnHour: 200, MailsAnHour: 40, NewNumbersAnHour: 1000, Photos: 100, SegmentsADay: 20000}
}
