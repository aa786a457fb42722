// Package setup is an owner's first hour: it asks what only the owner knows, with a
// sensible default for everything, makes a shop file with comments and a file of the
// bot's environment out of the answers, and says what is to be entered at the carrier, the
// mail provider and the domain's. It writes only files that are not there yet.
package setup
