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
	// NewFromDomainAnHour is how many new mail addresses of one domain are answered within an
	// hour.
	NewFromDomainAnHour int `yaml:"new_from_domain_an_hour" least:"0"`
	// Photos is how many photos of one talk are kept.
	Photos int `yaml:"photos" least:"0"`
	// PhotosADay is how many photos are kept a day, in all.
	PhotosADay int `yaml:"photos_a_day" least:"0"`
	// SegmentsOfOne is how many segments of texts one talk gets within a day.
	SegmentsOfOne int `yaml:"segments_of_one" least:"0"`
	// SegmentsADay is how many segments of texts go out a day, in all.
	SegmentsADay int `yaml:"segments_a_day" least:"0"`
	// MailsADay is how many mails go out a day, in all.
	MailsADay int `yaml:"mails_a_day" least:"0"`
}

// defaultLimits are far above what customers need.
func defaultLimits() Limits {
	return Limits{TextsAnHour: 200, MailsAnHour: 40, NewNumbersAnHour: 1000, NewFromDomainAnHour: 300, Photos: 100, PhotosADay: 5000,
		SegmentsOfOne: 400, SegmentsADay: 20000, MailsADay: 5000}
}
