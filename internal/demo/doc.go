// Package demo plays customers for somebody who wants to see the bot at work: each has
// a need, texts as people do, and answers what is asked. They text through the stand-in
// carrier's signed webhooks, and what comes of each talk is held against what it must
// be, so that the demo is a check of the whole as well.
package demo
