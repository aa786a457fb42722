package staff

import (
	"bytes"
	"encoding/json"
	"net/http"
	"strings"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// personPage shows the owner what is kept of a person, who may ask for it or for its end.
type personPage struct {
	frame
	Address string
	Asked   bool
	Records []recordPart
}

type recordPart struct {
	Ref  string
	JSON string
}

// addressOf reads a number or a mail address as it is kept.
func addressOf(text string) (string, error) {
	if text = clean(text); strings.Contains(text, "@") {
		return strings.ToLower(text), nil
	}
	v, err := readPhone(text)
	if err != nil {
		return "", err
	}
	number, _ := v.(fitcheck.Text)
	return string(number), nil
}

func (s *Server) person(v *visit) error {
	p := personPage{frame: v.frame("A person's data"), Address: clean(v.r.URL.Query().Get("of"))}
	if p.Address == "" {
		return v.show(http.StatusOK, "person.html", p)
	}
	address, err := addressOf(p.Address)
	if err != nil {
		p.Bad = err.Error()
		return v.show(http.StatusUnprocessableEntity, "person.html", p)
	}
	records, err := db.PersonRecords(v.ctx, s.opts.Pool, address)
	if err != nil {
		return err
	}
	p.Asked, p.Address = true, address
	if len(records) > 0 {
		if _, err := db.Note(v.ctx, s.opts.Pool, v.who.ID, 0, db.DeedShown, db.HistoryDetail{}, v.now); err != nil {
			return err
		}
	}
	for _, r := range records {
		var ref struct {
			Ref string `json:"ref"`
		}
		var b bytes.Buffer
		if err := json.Unmarshal(r, &ref); err != nil {
			return err
		}
		if err := json.Indent(&b, r, "", " "); err != nil {
			return err
		}
		p.Records = append(p.Records, recordPart{ref.Ref, b.String()})
	}
	return v.show(http.StatusOK, "person.html", p)
}

// personData gives all that is kept of a person as one file.
func (s *Server) personData(v *visit) error {
	address, err := addressOf(v.r.URL.Query().Get("of"))
	if err != nil {
		return err
	}
	records, err := db.PersonRecords(v.ctx, s.opts.Pool, address)
	if err != nil {
		return err
	}
	if len(records) == 0 {
		return db.ErrNotFound
	}
	all, err := json.MarshalIndent(records, "", " ")
	if err != nil {
		return err
	}
	if _, err := db.Note(v.ctx, s.opts.Pool, v.who.ID, 0, db.DeedExported, db.HistoryDetail{}, v.now); err != nil {
		return err
	}
	return v.file("application/json", "person.json", all)
}

// erase removes all that is kept of a person, once the owner has typed the address again.
func (s *Server) erase(v *visit) error {
	address, err := addressOf(v.r.PostFormValue("of"))
	if err != nil {
		return err
	}
	if again, err := addressOf(v.r.PostFormValue("again")); err != nil || again != address {
		return refuse("The address was not typed twice alike, so nothing was erased.")
	}
	gone := 0
	err = pgx.BeginFunc(v.ctx, s.opts.Pool, func(tx pgx.Tx) (err error) {
		gone, err = db.ErasePerson(v.ctx, tx, v.who.ID, address, v.clock().zone.String(), v.now)
		return err
	})
	if err != nil {
		return err
	}
	if gone == 0 {
		return v.done(Base+"/person", "No talk is kept of that address.")
	}
	return v.done(Base+"/person", "Erased: %d with all that was in them.", gone)
}
