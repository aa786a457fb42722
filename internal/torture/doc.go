// Package torture hurts the real program and looks at what is left. It runs the bot as a
// process against a real Postgres and against stand-ins for the carrier and the mail
// servers, lets made-up customers talk to it, kills it, cuts it off, fills the database's
// disk and breaks what it talks to, and at the end holds leads, messages and facts against
// those of a run that nobody disturbed.
//
// The program is built with the tag torture, without which it has no hooks to be hurt by.
package torture
