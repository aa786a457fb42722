// Package staff is the page of the shop's own people, who open it between two calls on a
// desk screen or a phone. It says who waits and who first, whether one can order from a
// lead, and what the customer really said; and it lets them take a lead, write, correct,
// and mark what came of it. Everything that is done is kept, with who and when.
//
// Pages are made here and work without JavaScript; a little of it brings news by itself.
// Nothing on them comes from another server, and nothing that a customer wrote is ever
// run. Statements to the database are in package db, what staff do in a talk in package
// conversation.
package staff
