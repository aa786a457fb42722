package staff

import (
	"net/http"

	"example.com/intake-bot/internal/db"
)

// anybody marks a route that needs no log-in.
const anybody db.Role = ""

// route is one address of the page and who may use it: an owner may all that staff may.
type route struct {
	pattern string
	role    db.Role
	serve   func(*visit) error
}

// table lists all addresses of the page.
func (s *Server) table() []route {
	return []route{
		{"GET /staff/assets/{name}", anybody, s.asset},
		{"GET /staff/login", anybody, s.loginForm},
		{"POST /staff/login", anybody, s.login},
		{"GET /staff/login/provider", anybody, s.toProvider},
		{"GET /staff/login/return", anybody, s.fromProvider},
		{"POST /staff/logout", db.RoleStaff, s.logout},
		{"POST /staff/logout/everywhere", db.RoleStaff, s.logoutEverywhere},
		{"GET /staff/password", db.RoleStaff, s.passwordForm},
		{"POST /staff/password", db.RoleStaff, s.changePassword},

		{"GET /staff/{$}", db.RoleStaff, s.waiting},
		{"GET /staff/find", db.RoleStaff, s.find},
		{"GET /staff/news", db.RoleStaff, s.news},

		{"GET /staff/check", db.RoleStaff, s.checkForm},
		{"POST /staff/check", db.RoleStaff, s.check},
		{"POST /staff/check/lead", db.RoleStaff, s.openByHand},
		{"GET /staff/figures", db.RoleStaff, s.figures},

		{"GET /staff/lead/{ref}", db.RoleStaff, s.lead},
		{"GET /staff/lead/{ref}/drawing/{unit}", db.RoleStaff, s.drawing},
		{"GET /staff/lead/{ref}/sheet.pdf", db.RoleStaff, s.sheet},
		{"GET /staff/lead/{ref}/photo/{id}", db.RoleStaff, s.photo},
		{"POST /staff/lead/{ref}/take", db.RoleStaff, s.take},
		{"POST /staff/lead/{ref}/put-back", db.RoleStaff, s.putBack},
		{"POST /staff/lead/{ref}/write", db.RoleStaff, s.write},
		{"POST /staff/lead/{ref}/go-on", db.RoleStaff, s.goOn},
		{"POST /staff/lead/{ref}/ask", db.RoleStaff, s.askFor},
		{"POST /staff/lead/{ref}/fact", db.RoleStaff, s.fact},
		{"POST /staff/lead/{ref}/note", db.RoleStaff, s.note},
		{"POST /staff/lead/{ref}/mark", db.RoleStaff, s.mark},
		{"POST /staff/lead/{ref}/merge", db.RoleStaff, s.merge},
		{"POST /staff/lead/{ref}/spam", db.RoleStaff, s.spam},
		{"POST /staff/lead/{ref}/undo", db.RoleStaff, s.undo},

		{"GET /staff/shop", db.RoleOwner, s.shop},
		{"GET /staff/texts", db.RoleOwner, s.texts},
		{"POST /staff/shop/account", db.RoleOwner, s.addAccount},
		{"POST /staff/shop/account/{id}", db.RoleOwner, s.changeAccount},
		{"POST /staff/shop/account/{id}/password", db.RoleOwner, s.newPassword},
		{"POST /staff/shop/account/{id}/leave", db.RoleOwner, s.leave},
		{"POST /staff/shop/job/{id}", db.RoleOwner, s.retryJob},
		{"GET /staff/person", db.RoleOwner, s.person},
		{"GET /staff/person/data.json", db.RoleOwner, s.personData},
		{"POST /staff/person/erase", db.RoleOwner, s.erase},
	}
}

func (s *Server) routes() http.Handler {
	mux := http.NewServeMux()
	for _, r := range s.table() {
		mux.Handle(r.pattern, s.guard(r))
	}
	mux.Handle("/staff/", s.guard(route{"/staff/", db.RoleStaff, func(*visit) error { return db.ErrNotFound }}))
	mux.Handle("GET /staff", http.RedirectHandler(Base+"/", http.StatusSeeOther))
	return s.secured(s.sessions.LoadAndSave(mux))
}
