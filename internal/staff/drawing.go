package staff

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// Drawn makes a picture of a unit's numbers to scale, as SVG.
type Drawn func(u fitcheck.Unit, r fitcheck.UnitResult) ([]byte, error)

// pictures may bring their own style, and nothing else.
const picturePolicy = "default-src 'none'; style-src 'unsafe-inline'; sandbox"

// ErrNoPicture says that there is nothing to draw.
var ErrNoPicture = errors.New("nothing to draw")

func (s *Server) drawing(v *visit) error {
	view, err := db.ViewLead(v.ctx, s.opts.Pool, v.r.PathValue("ref"))
	if err != nil {
		return err
	}
	units := view.Talk.Units()
	n, err := strconv.Atoi(v.r.PathValue("unit"))
	if err != nil || n < 1 || n > len(units) || s.opts.Drawing == nil {
		return db.ErrNotFound
	}
	check := conversation.Look(view.Talk, v.shop())
	svg, err := s.opts.Drawing(units[n-1], check.Units[n-1])
	if errors.Is(err, ErrNoPicture) {
		return db.ErrNotFound
	}
	if err != nil {
		return fmt.Errorf("drawing of %s, unit %d: %w", view.Talk.Ref, n, err)
	}
	return v.file("image/svg+xml", "", svg)
}

// sheet is the lead to be printed or taken along.
func (s *Server) sheet(v *visit) error {
	if s.opts.Sheet == nil {
		return db.ErrNotFound
	}
	view, err := db.ViewLead(v.ctx, s.opts.Pool, v.r.PathValue("ref"))
	if err != nil {
		return err
	}
	pdf, err := s.opts.Sheet(v.ctx, view.Talk.Ref)
	if err != nil {
		return fmt.Errorf("sheet of %s: %w", view.Talk.Ref, err)
	}
	return v.file("application/pdf", "lead-"+view.Talk.Ref+".pdf", pdf)
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
