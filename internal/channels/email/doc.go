// Package email lets people reach the shop by mail, and the shop answer them. It watches
// a mailbox, takes each mail apart into what its sender newly wrote and the photos that
// came with it, tells mail that no person wrote, and composes and hands over answers that
// land in the same thread.
//
// Nothing that a stranger sends may hold the process or take it down: depth, parts and
// sizes are bounded, and every step takes time in proportion to the mail's size.
package email
