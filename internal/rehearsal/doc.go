// Package rehearsal lets made-up customers talk to the assistant before real ones do, so
// that an owner who changed the shop file, or somebody who changed the program, sees how
// it goes: how many get to a complete lead and in how many messages, where they get
// stuck, which wrong measurements are caught, and above all whether anything was noted
// down that nobody said.
//
// Each customer has a truth (what is on the roof, who they are), often a mistake in
// measuring it, and a manner of writing. They answer what the talk asks, and for every
// message they know what they meant by it: that is what the ledger is held against. A run
// depends on its seed and the shop alone; the same seed gives the same report.
package rehearsal
