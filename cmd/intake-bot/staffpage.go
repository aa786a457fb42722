package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/demo"
	"example.com/intake-bot/internal/intake"
	"example.com/intake-bot/internal/staff"
)

// openStaffPage starts the page of the shop's people beside the webhooks.
func (b *bot) openStaffPage(o botOptions) (err error) {
	b.shopText.Store(&o.shopText)
	b.page, err = staff.New(staff.Options{Pool: o.pool, Shop: b.service.Shop, Send: b.service.SendSoon, Clock: o.clock, Log: o.log,
		Address: o.publicURL, Secure: strings.HasPrefix(o.publicURL, "https://"), Provider: o.alerts.provider, SegmentCents: o.alerts.segmentCents, ShopFile: func() string { return *b.shopText.Load() }})
	return err
}

// addAlerts says how the shop's people and its other systems hear of leads.
func (b *bot) addAlerts(options *intake.Options, o botOptions) {
	options.Alerts = intake.Alerts{Page: o.publicURL + staff.Base, LateAfter: o.alerts.lateAfter,
		Sheet: func(ctx context.Context, ref string) ([]byte, error) { return b.page.LeadSheet(ctx, ref) }}
	if sender, ok := options.Senders[conversation.Email].(intake.EmailSender); ok {
		options.Alerts.Mail = intake.StaffMailer{Carrier: sender.Carrier, Address: sender.Address, Name: sender.Name}.Mail
	}
	if o.alerts.webhookURL != "" {
		options.Alerts.Webhook = &intake.Webhook{URL: o.alerts.webhookURL, Secret: []byte(o.alerts.webhookSecret)}
	}
}

// alertSettings are what serve takes from the environment for alerts and the staff's page.
type alertSettings struct {
	lateAfter     time.Duration // 0: the usual
	webhookURL    string        // empty: nobody is told
	webhookSecret string
	segmentCents  float64         // what a segment of a text costs; 0: not known
	provider      *staff.Provider // nil: staff log in by our own passwords alone
}

// leastSecret is the shortest secret that steps are signed with, in characters.
const leastSecret = 24

func readAlertSettings(env environment) (alertSettings, error) {
	var s alertSettings
	var wrong []error
	get := func(name string) string {
		value, err := env.secret(name)
		wrong = append(wrong, err)
		return value
	}
	s.webhookURL, s.webhookSecret = get("WEBHOOK_URL"), get("WEBHOOK_SECRET")
	if s.webhookURL != "" {
		if !safeURL(s.webhookURL) {
			wrong = append(wrong, errors.New("WEBHOOK_URL is not an https address"))
		}
		if len(s.webhookSecret) < leastSecret {
			wrong = append(wrong, fmt.Errorf("WEBHOOK_SECRET is too short: at least %d characters that nobody can guess", leastSecret))
		}
	}
	if text := get("LATE_AFTER"); text != "" {
		var err error
		if s.lateAfter, err = time.ParseDuration(text); err != nil || s.lateAfter <= 0 {
			wrong = append(wrong, errors.New("LATE_AFTER is not a time like 90m or 2h"))
		}
	}
	if text := get("SEGMENT_CENTS"); text != "" {
		var err error
		if s.segmentCents, err = strconv.ParseFloat(text, 64); err != nil || s.segmentCents <= 0 || s.segmentCents > 1000 {
			wrong = append(wrong, errors.New("SEGMENT_CENTS is not what a segment of a text costs, in cents, like 0.79"))
		}
	}
	var err error
	s.provider, err = readLoginProvider(env)
	return s, errors.Join(append(wrong, err)...)
}

// invented is how many leads the demo's page has beside those of the customers that play.
const invented = 40

// openHouseToStaff makes the demo's account and fills the page; it says where to look.
func (h *house) openHouseToStaff(ctx context.Context, out io.Writer) error {
	once, err := inventLeads(ctx, h.pool, h.bot.service.Shop())
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(out, "\nThe staff's page, with %d invented leads: http://%s%s/\n  name %s, password %s (it serves only to choose another)\n",
		invented, h.bot.address, staff.Base, demoLogin, once)
	return err
}

// demoLogin is the demo's owner.
const demoLogin = "robin"

// inventLeads makes the demo's account, gives its password, and fills the page.
func inventLeads(ctx context.Context, pool *pgxpool.Pool, s *conversation.Shop) (once string, err error) {
	once, err = staff.AddAccount(ctx, pool, db.Staff{Login: demoLogin, Name: "Robin", Role: db.RoleOwner})
	if err != nil {
		return "", err
	}
	who, err := db.StaffByLogin(ctx, pool, demoLogin)
	if err != nil {
		return "", err
	}
	fill := demo.Filling{Pool: pool, Shop: s, Now: time.Now().UTC(), Staff: who.ID}
	_, err = fill.Fill(ctx, invented)
	return once, err
}
