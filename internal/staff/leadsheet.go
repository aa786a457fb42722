package staff

import (
	"context"
	"fmt"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/drawing"
	"example.com/intake-bot/internal/fitcheck"
)

// mostSheetPhotos bounds the photos that are read for a sheet.
const mostSheetPhotos = 4

// LeadSheet is a lead on paper, as PDF.
func (s *Server) LeadSheet(ctx context.Context, ref string) ([]byte, error) {
	view, err := db.ViewLead(ctx, s.opts.Pool, ref)
	if err != nil {
		return nil, err
	}
	data, err := s.sheetData(ctx, view)
	if err != nil {
		return nil, err
	}
	sheet, err := drawing.Sheet(data)
	if err != nil {
		return nil, fmt.Errorf("sheet of %s: %w", ref, err)
	}
	pdf, err := sheet.PDF()
	if err != nil {
		return nil, fmt.Errorf("sheet of %s: %w", ref, err)
	}
	return pdf, nil
}

func (s *Server) sheetData(ctx context.Context, view *db.LeadView) (drawing.SheetData, error) {
	t := &view.Talk
	d := sheetOf(t, s.opts.Shop(), s.now())
	d.Page, d.TimeZone = s.opts.Address+Base+"/lead/"+t.Ref, view.TimeZone
	for _, p := range view.Photos {
		if p.State != "kept" || len(d.Photos) == mostSheetPhotos {
			continue
		}
		small, err := db.PhotoFile(ctx, s.opts.Pool, t.Ref, p.N, p.K, true)
		if err != nil {
			return d, err
		}
		d.Photos = append(d.Photos, drawing.SheetPhoto{Data: small, Of: fitcheck.Topic(p.Of), Message: p.N})
	}
	return d, nil
}

// sheetOf is what a sheet shows of a talk itself, printed at a time.
func sheetOf(t *conversation.Talk, shop *conversation.Shop, now time.Time) drawing.SheetData {
	zone := shop.Zone
	if zone == nil {
		zone = time.UTC
	}
	r := conversation.NewRecord(*t, nil, nil)
	d := drawing.SheetData{Shop: shop.Name, Ref: t.Ref, Status: string(r.Status),
		WhyStaff: r.WhyStaff, Qualified: r.Qualified, Urgent: r.Urgent, Opened: r.OpenedAt.In(zone), Printed: now.In(zone),
		Name: word(r.Customer.Name), Phone: word(r.Customer.Phone), Email: word(r.Customer.Email), Channel: string(t.Channel),
		Language: t.Language, Place: t.Place(), Use: word(r.Use), Problem: r.Problem}
	if r.ReadyAt != nil {
		d.Ready = r.ReadyAt.In(zone)
	}
	check := conversation.Look(*t, shop)
	d.Cautions = check.Cautions
	for i, u := range t.Units() {
		d.Units = append(d.Units, drawing.SheetUnit{Unit: u, Result: check.Units[i], Facts: sheetFacts(t, i+1)})
	}
	return d
}

func sheetFacts(t *conversation.Talk, unit int) []drawing.SheetFact {
	var facts []drawing.SheetFact
	for _, e := range t.Ledger {
		if e.Unit == unit && !e.Undone {
			facts = append(facts, drawing.SheetFact{Topic: e.Topic, Value: e.Value, Said: e.Said, Message: e.Message})
		}
	}
	return facts
}
