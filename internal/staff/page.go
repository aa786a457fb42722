package staff

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"html/template"
	"io/fs"
	"mime"
	"net/http"
	"path"
	"time"

	"example.com/intake-bot/internal/db"
)

//go:embed pages/*.html
var pageFiles embed.FS

//go:embed assets/*
var assetFiles embed.FS

// frame is what every page has around its own.
type frame struct {
	Title string
	Shop  string
	Me    *db.Staff
	Path  string
	Said  string // what was done
	Bad   string // what went wrong
	Live  bool   // the page brings news by itself
	Now   time.Time
	clock clock
}

// frame takes what is to be told once.
func (v *visit) frame(title string) frame {
	f := frame{Title: title, Shop: v.shop().Name, Me: v.who, Path: v.r.URL.Path, Now: v.now, clock: v.clock()}
	if v.who != nil {
		f.Said, f.Bad = v.s.sessions.PopString(v.ctx, keySaid), v.s.sessions.PopString(v.ctx, keyBad)
	}
	return f
}

// Owner says whether the owner looks.
func (f frame) Owner() bool { return f.Me != nil && f.Me.Role == db.RoleOwner }

// At is a time on the shop's clock.
func (f frame) At(t time.Time) string { return f.clock.at(t) }

// Clock is the time of the page itself.
func (f frame) Clock() string { return f.clock.at(f.Now) }

// pages are all templates, each with the frame around it; a broken one ends the program
// at its start, and the tests show all of them.
var pages = func() map[string]*template.Template {
	names, err := fs.Glob(pageFiles, "pages/*.html")
	if err != nil {
		panic(err)
	}
	all := map[string]*template.Template{}
	base := template.Must(template.New("frame.html").Funcs(functions).ParseFS(pageFiles, "pages/frame.html", "pages/parts.html"))
	for _, name := range names {
		if name = path.Base(name); name != "frame.html" && name != "parts.html" {
			all[name] = template.Must(template.Must(base.Clone()).ParseFS(pageFiles, "pages/"+name))
		}
	}
	return all
}()

// show answers with a page. It is made whole before any of it is sent.
func (v *visit) show(status int, name string, data any) error {
	var b bytes.Buffer
	if err := pages[name].ExecuteTemplate(&b, "frame.html", data); err != nil {
		return fmt.Errorf("page %s: %w", name, err)
	}
	v.w.Header().Set("Content-Type", "text/html; charset=utf-8")
	v.w.WriteHeader(status)
	_, err := v.w.Write(b.Bytes())
	return err
}

type sorryPage struct {
	frame
	Text string
}

// sorry says in words what can't be done.
func (v *visit) sorry(status int, text string) {
	if err := v.show(status, "sorry.html", sorryPage{v.frame("Sorry"), text}); err != nil {
		v.s.log.ErrorContext(v.ctx, "staff's page", "error", err.Error())
	}
}

// assetNames gives each file a name that changes with what is in it, so that it may be
// kept for good by whoever fetched it.
var assetNames = func() map[string]string {
	names := map[string]string{}
	for _, name := range []string{"page.css", "page.js", "mark.svg"} {
		b, err := assetFiles.ReadFile("assets/" + name)
		if err != nil {
			panic(err)
		}
		sum := sha256.Sum256(b)
		ext := path.Ext(name)
		names[name] = name[:len(name)-len(ext)] + "-" + hex.EncodeToString(sum[:6]) + ext
	}
	return names
}()

func (s *Server) asset(v *visit) error {
	for name, hashed := range assetNames {
		if v.r.PathValue("name") != hashed {
			continue
		}
		b, err := assetFiles.ReadFile("assets/" + name)
		if err != nil {
			return err
		}
		v.w.Header().Set("Content-Type", mime.TypeByExtension(path.Ext(name)))
		v.w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
		_, err = v.w.Write(b)
		return err
	}
	return &refusal{http.StatusNotFound, "There is no such file."}
}
