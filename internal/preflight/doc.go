// Package preflight looks, before customers write, whether a shop's configuration holds:
// it asks the real servers (database, carrier of texts, mail, the shop's own address from
// outside) what they say to it, changes nothing there, sends nothing, and has for each
// thing either that it is well or what to do about it.
package preflight
