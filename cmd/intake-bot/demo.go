package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/channels/email"
	office "example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/demo"
	"example.com/intake-bot/internal/shop"
)

type demoCommand struct {
	Once bool          `env:"ONCE" help:"Check the leads and end, with status 0 where all are as they must be."`
	Dir  string        `env:"DEMO_DIR" placeholder:"DIR" help:"Where the demo keeps its database; .demo here if left out, /var/tmp where the database's user can't reach that."`
	Pace time.Duration `env:"DEMO_PACE" default:"700ms" help:"How long each text is left to be read; not with ONCE."`
}

// The demo's own account at the stand-in carrier: no secret, since nothing real is behind it.
const (
	demoAccount = "AC00000000000000000000000000000000"
	demoToken   = "demo0token0of0the0standin0carrier"
	demoNumber  = "+12185550142"
	demoMail    = "hello@pinwheel-domes.example"
)

// The ports that are tried first, so that the printed commands stay the same.
const (
	demoListen        = "127.0.0.1:8124"
	demoCarrierListen = "127.0.0.1:8125"
)

func (c *demoCommand) Run(ctx context.Context, s streams) error {
	// Where nobody reads on (a pager that was left), the database is still to be stopped.
	signal.Ignore(syscall.SIGPIPE)
	house, err := openHouse(ctx, c, s.out)
	if err != nil {
		return err
	}
	err = house.show(ctx, c, s.out)
	return errors.Join(err, house.close())
}

// house is all that the demo runs: database, carrier, bot.
type house struct {
	dir     string
	unlock  func() error
	local   *db.Local
	pool    *pgxpool.Pool
	logFile *os.File
	carrier *standin.Carrier
	office  *office.Office
	bot     *bot
	clock   *demo.Clock
	file    *shop.File
}

func openHouse(ctx context.Context, c *demoCommand, out io.Writer) (h *house, err error) {
	h = &house{clock: &demo.Clock{}}
	defer func() {
		if err != nil {
			err = errors.Join(err, h.close())
		}
	}()
	if h.dir, err = demoFolder(c.Dir); err != nil {
		return h, err
	}
	if h.unlock, err = lockDemo(h.dir); err != nil {
		return h, err
	}
	if h.file, err = (shopFlag{}).load(); err != nil {
		return h, fmt.Errorf("the demo shop: %w", err)
	}
	fmt.Fprintf(out, "Starting a Postgres of the demo's own in %s\n", h.dir)
	if err := h.openDatabase(ctx); err != nil {
		return h, err
	}
	fmt.Fprintln(out, "Starting the stand-in carrier, a post office in miniature, and the bot")
	return h, h.startBot(ctx, c)
}

func (h *house) openDatabase(ctx context.Context) (err error) {
	if h.local, err = db.StartLocal(ctx, filepath.Join(h.dir, "postgres"), db.LocalOptions{Database: demoDatabase}); err != nil {
		return err
	}
	// Each demo begins anew: the same customers, the same leads.
	if err := emptyDatabase(ctx, h.local.URL); err != nil {
		return err
	}
	if h.pool, err = db.Open(ctx, h.local.URL); err != nil {
		return err
	}
	return db.Migrate(ctx, h.pool)
}

func (h *house) startBot(ctx context.Context, c *demoCommand) (err error) {
	if h.logFile, err = os.Create(filepath.Join(h.dir, "bot.log")); err != nil {
		return fmt.Errorf("the bot's log: %w", err)
	}
	listener, err := listenOr(demoListen)
	if err != nil {
		return err
	}
	publicURL := "http://" + listener.Addr().String()
	h.carrier = standin.New(standin.Config{AccountID: demoAccount, AuthToken: demoToken, Number: demoNumber,
		InboundURL: publicURL + "/sms/inbound", Now: h.clock.Now, MediaAuth: true})
	base, err := h.carrier.Start(demoCarrierListen)
	if err != nil {
		if base, err = h.carrier.Start("127.0.0.1:0"); err != nil {
			return errors.Join(err, listener.Close())
		}
	}
	if err := rememberCarrier(h.dir, base); err != nil {
		return errors.Join(err, listener.Close())
	}
	if err := h.openOffice(); err != nil {
		return errors.Join(err, listener.Close())
	}
	quick := *h.file
	quick.Replies = shop.Replies{} // answers at once, for nobody sends in pieces
	if !c.Once {
		quick.Replies = shop.Replies{Quiet: shop.Span(time.Second), AtMost: shop.Span(5 * time.Second)}
	}
	h.bot, err = startBot(context.WithoutCancel(ctx), botOptions{pool: h.pool, file: &quick, listener: listener, publicURL: publicURL,
		carrier: carrierSettings{account: demoAccount, token: demoToken, from: demoNumber, apiURL: base},
		mail:    h.mailSettings(), shopText: deploy.ExampleShop,
		clock: h.clock.Now, log: slog.New(slog.NewJSONHandler(h.logFile, &slog.HandlerOptions{Level: demoLevel(c)}))})
	if err != nil {
		return errors.Join(err, listener.Close())
	}
	return nil
}

// demoLevel has a demo that is a check log all that there is.
func demoLevel(c *demoCommand) slog.Level {
	if c.Once {
		return slog.LevelDebug
	}
	return slog.LevelInfo
}

// openOffice opens a post office in miniature: the shop's mailbox and mail server.
func (h *house) openOffice() (err error) {
	if h.office, err = office.New(office.Config{Address: demoMail, Password: demoToken, Now: h.clock.Now}); err != nil {
		return err
	}
	return h.office.Start()
}

func (h *house) mailSettings() mailSettings {
	account := email.Account{User: demoMail, Password: demoToken}
	return mailSettings{address: demoMail, poll: 250 * time.Millisecond,
		imap: mailServer{server: h.office.IMAP(), security: email.Insecure, account: account},
		smtp: mailServer{server: h.office.SMTP(), security: email.Insecure, account: account}}
}

// listenOr listens on an address, or on any port where that one is taken.
func listenOr(address string) (net.Listener, error) {
	l, err := net.Listen("tcp", address)
	if err == nil {
		return l, nil
	}
	if l, err = net.Listen("tcp", "127.0.0.1:0"); err != nil {
		return nil, fmt.Errorf("listen: %w", err)
	}
	return l, nil
}

// show plays the customers, and then stays up or ends.
func (h *house) show(ctx context.Context, c *demoCommand, out io.Writer) error {
	customers, err := demo.Customers()
	if err != nil {
		return err
	}
	stage := &demo.Stage{Carrier: h.carrier, Office: h.office, Pool: h.pool, Clock: h.clock, Out: out, Sheet: writeSheet, Patience: 2 * time.Minute,
		First: demo.FirstDay(time.Now().In(h.file.Zone.Location), h.file.Calendar().Open)}
	if !c.Once {
		stage.Pace = c.Pace
	}
	wrong := 0
	for i := range customers {
		differences, err := stage.Play(ctx, &customers[i])
		if err != nil {
			return err
		}
		if len(differences) > 0 {
			wrong++
			fmt.Fprintln(out, "\nNOT AS IT MUST BE:")
		}
		for _, d := range differences {
			fmt.Fprintln(out, " ", d)
		}
	}
	fmt.Fprintf(out, "\n%d of %d customers came out as they must.\n", len(customers)-wrong, len(customers))
	if c.Once && wrong > 0 {
		return errSilent
	}
	if c.Once {
		return h.bot.watched.write(filepath.Join(h.dir, "metrics.prom"))
	}
	h.clock.Set(time.Time{})
	return h.stayUp(ctx, out)
}

// stayUp says where to look, until Ctrl-C.
func (h *house) stayUp(ctx context.Context, out io.Writer) error {
	if err := h.openHouseToStaff(ctx, out); err != nil {
		return err
	}
	_, err := fmt.Fprintf(out, `
The bot stays up, by the clock on the wall. Be a customer:
  make text SAY="Hi, my skylight dome cracked"
  curl -d "Hi, my skylight dome cracked" %[1]s/person/2185550160
  curl -F text="Here it is" -F photo=@roof.jpg %[1]s/person/2185550160
See what came of it:
  DATABASE_URL='%[2]s' bin/intake-bot leads list
  psql '%[2]s' -c 'SELECT record FROM lead_record'
The bot's log: %[3]s
Ctrl-C ends it all.
`, h.carrier.BaseURL(), h.local.URL, h.logFile.Name())
	if err != nil {
		return fmt.Errorf("nobody reads on: %w", err)
	}
	select {
	case <-ctx.Done():
		fmt.Fprintln(out, "\nEnding.")
		return nil
	case err := <-h.bot.failed:
		return fmt.Errorf("web server: %w", err)
	}
}

func (h *house) close() error {
	var errs []error
	if h.bot != nil {
		errs = append(errs, h.bot.stop())
	}
	if h.carrier != nil {
		errs = append(errs, h.carrier.Close())
	}
	if h.office != nil {
		errs = append(errs, h.office.Close())
	}
	if h.pool != nil {
		h.pool.Close()
	}
	if h.local != nil {
		errs = append(errs, stopDatabase(h.local))
	}
	if h.logFile != nil {
		errs = append(errs, h.logFile.Close())
	}
	if h.unlock != nil {
		errs = append(errs, h.unlock())
	}
	return errors.Join(errs...)
}
