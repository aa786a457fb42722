package photo

// CarrierHosts names where the carrier keeps the pictures of messages: its interface,
// which wants the account's credentials, and the store to which that sends on, which
// must not see them. From memory of the carrier's media pages; a shop file may add to it.
func CarrierHosts() (credentials, store []string) {
	return []string{"api.twilio.com", ".twilio.com"}, []string{".twiliocdn.com"}
}
