// Command intake-bot has the first talk with the customers of a shop that makes skylight
// domes, by text message and mail, and hands its staff complete leads. Each file here is
// one of its commands: flags and wiring, nothing else.
package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"syscall"

	"github.com/alecthomas/kong"
)

type commands struct {
	Serve     serveCommand     `cmd:"" help:"Run the bot: take messages, talk, send. Settings come from the environment (see below)."`
	Migrate   migrateCommand   `cmd:"" help:"Bring the database in DATABASE_URL up to what this program needs."`
	Preflight preflightCommand `cmd:"" help:"Look, before customers write, whether database, carrier, mail and public address answer as they must; each line is well or says what to do."`
	Init      initCommand      `cmd:"" help:"Ask what a new shop needs, and write its shop file and environment; nothing is overwritten."`
	Leads     leadsCommand     `cmd:"" help:"Look at the leads in DATABASE_URL."`
	Staff     staffCommand     `cmd:"" help:"Accounts for the staff's page, in DATABASE_URL."`
	Shop      shopCommand      `cmd:"" help:"Look at a shop file, or take stock and prices over into one."`
	Chat      chatCommand      `cmd:"" help:"Be a customer, here in the terminal."`
	Read      readCommand      `cmd:"" help:"What a message says: a message a line in, a line of JSON out."`
	Check     checkCommand     `cmd:"" help:"Whether measurements are right and what to order: a line of JSON in, one out."`
	Rehearse  rehearseCommand  `cmd:"" help:"Let made-up customers talk to the bot, in memory, and report how it went; exit status 1 if anything was noted that nobody said."`
	Demo      demoCommand      `cmd:"" help:"Show it all: five customers write to the demo shop. ONCE=1 checks the leads and ends."`
	Text      textCommand      `cmd:"" help:"Text the running demo."`
	Version   versionCommand   `cmd:"" help:"Say which version this is."`
}

const about = `First talks by text and mail for a maker of skylight domes.

serve reads DATABASE_URL, PUBLIC_URL, CARRIER_ACCOUNT_ID, CARRIER_AUTH_TOKEN, CARRIER_FROM or
CARRIER_MESSAGING_SERVICE, SHOP_FILE and LISTEN; each may be given as NAME_FILE, the path of a
file that holds it. What they and all others mean stands in deploy/environment.example.`

// errSilent ends the program with status 1 after all has been said.
var errSilent = errors.New("")

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:]))
}

// run is the whole program but for its process; it returns the exit status.
func run(ctx context.Context, args []string) int {
	var c commands
	parser, err := kong.New(&c, kong.Name("intake-bot"), kong.Description(about), kong.UsageOnError(),
		kong.BindTo(ctx, (*context.Context)(nil)), kong.Bind(streams{os.Stdin, os.Stdout, os.Stderr}))
	if err != nil {
		fmt.Fprintln(os.Stderr, "intake-bot:", err)
		return 2
	}
	if len(args) > 0 && args[0] == "help" { // as many programs have it
		args = append(args[1:], "--help")
	}
	command, err := parser.Parse(args)
	if err != nil {
		parser.FatalIfErrorf(err)
	}
	switch err := command.Run(); {
	case errors.Is(err, errSilent):
		return 1
	case err != nil:
		fmt.Fprintf(os.Stderr, "intake-bot %s: %v\n", command.Command(), err)
		return 1
	}
	return 0
}
