package main

import (
	"context"
	"fmt"
	"io"
	"strings"
	"time"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/demo"
	"example.com/intake-bot/internal/staff"
)

// openStaffPage starts the page of the shop's people beside the webhooks.
func (b *bot) openStaffPage(o botOptions) (err error) {
	b.page, err = staff.New(staff.Options{Pool: o.pool, Shop: b.service.Shop, Send: b.service.SendSoon, Clock: o.clock, Log: o.log, Address: o.publicURL,
		Secure: strings.HasPrefix(o.publicURL, "https://"), ShopFile: o.shopText})
	return err
}

// invented is how many leads the demo's page has beside those of the customers that play.
const invented = 40

// openHouseToStaff makes the demo's account and fills the page; it says where to look.
func (h *house) openHouseToStaff(ctx context.Context, out io.Writer) error {
	once, err := staff.AddAccount(ctx, h.pool, db.Staff{Login: "robin", Name: "Robin", Role: db.RoleOwner})
	if err != nil {
		return err
	}
	who, err := db.StaffByLogin(ctx, h.pool, "robin")
	if err != nil {
		return err
	}
	fill := demo.Filling{Pool: h.pool, Shop: h.bot.service.Shop(), Now: time.Now().UTC(), Staff: who.ID}
	if _, err := fill.Fill(ctx, invented); err != nil {
		return err
	}
	_, err = fmt.Fprintf(out, "\nThe staff's page, with %d invented leads: http://%s%s/\n  name robin, password %s (it works once, to choose another)\n",
		invented, h.bot.address, staff.Base, once)
	return err
}
