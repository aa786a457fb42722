// Package intake is the moving part of the shop's answering: what customers send is
// kept before it is acknowledged, answered once however often a process dies, and what
// is answered goes out once, in order, and never to somebody who opted out.
//
// It ties the pure talk (package conversation) to what it needs from the world: the
// database, the clock, the job queue and the channels. Each step is one transaction,
// and each job can be run again at any point without harm: it looks at what is to be
// done, and finds nothing where another was faster.
package intake
