package staff

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/drawing"
)

// pictures may bring their own style, and nothing else.
const picturePolicy = "default-src 'none'; style-src 'unsafe-inline'; sandbox"

func (s *Server) drawing(v *visit) error {
	view, err := db.ViewLead(v.ctx, s.opts.Pool, v.r.PathValue("ref"))
	if err != nil {
		return err
	}
	units := view.Talk.Units()
	n, err := strconv.Atoi(v.r.PathValue("unit"))
	if err != nil || n < 1 || n > len(units) {
		return db.ErrNotFound
	}
	check := conversation.Look(view.Talk, v.shop())
	picture, err := drawing.Measured(units[n-1], check.Units[n-1], "en")
	if errors.Is(err, drawing.ErrNoNumbers) {
		return db.ErrNotFound
	}
	var svg []byte
	if err == nil {
		svg, err = picture.SVG()
	}
	if err != nil {
		return fmt.Errorf("drawing of %s, unit %d: %w", view.Talk.Ref, n, err)
	}
	return v.file("image/svg+xml", "", svg)
}

// sheet is the lead to be printed or taken along.
func (s *Server) sheet(v *visit) error {
	ref := strings.ToUpper(v.r.PathValue("ref"))
	id, err := db.TalkOf(v.ctx, s.opts.Pool, ref)
	if err != nil {
		return err
	}
	if err := db.NoteSeen(v.ctx, s.opts.Pool, v.who.ID, id, v.now); err != nil {
		return err
	}
	pdf, err := s.LeadSheet(v.ctx, ref)
	if err != nil {
		return err
	}
	return v.file("application/pdf", "lead-"+ref+".pdf", pdf)
}

// photo shows a photo of this lead's, whole or small. All are kept as JPEG, made here.
func (s *Server) photo(v *visit) error {
	view, err := db.ViewLead(v.ctx, s.opts.Pool, v.r.PathValue("ref"))
	if err != nil {
		return err
	}
	for _, p := range view.Photos {
		if strconv.FormatInt(p.ID, 10) != v.r.PathValue("id") || p.State != "kept" {
			continue
		}
		if err := db.NoteSeen(v.ctx, s.opts.Pool, v.who.ID, view.ID, v.now); err != nil {
			return err
		}
		jpeg, err := db.PhotoFile(v.ctx, s.opts.Pool, view.Talk.Ref, p.N, p.K, v.r.URL.Query().Get("size") == "small")
		if err != nil {
			return err
		}
		return v.file("image/jpeg", "", jpeg)
	}
	return db.ErrNotFound
}

// file answers with bytes of a fixed type; with a name it is to be saved.
func (v *visit) file(kind, name string, b []byte) error {
	h := v.w.Header()
	h.Set("Content-Type", kind)
	h.Set("Content-Security-Policy", picturePolicy)
	h.Set("Content-Length", strconv.Itoa(len(b)))
	if name != "" {
		h.Set("Content-Disposition", `attachment; filename="`+name+`"`)
	}
	v.w.WriteHeader(http.StatusOK)
	_, err := v.w.Write(b)
	return err
}
