package standin

import (
	"net/http"
	"strings"
)

// File is a picture or another file that a person sends.
type File struct {
	Type string
	Data []byte
}

type storedMedia struct {
	message string
	File
}

// keepMedia stores a message's files and gives their addresses.
func (c *Carrier) keepMedia(message string, files []File) []string {
	c.mu.Lock()
	defer c.mu.Unlock()
	var addresses []string
	for _, f := range files {
		id := newID("ME")
		c.media[id] = storedMedia{message, f}
		addresses = append(addresses,
			c.base+"/2010-04-01/Accounts/"+c.cfg.AccountID+"/Messages/"+message+"/Media/"+id)
	}
	return addresses
}

func (c *Carrier) storedMedia(r *http.Request) (storedMedia, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	m, ok := c.media[r.PathValue("media")]
	return m, ok && m.message == r.PathValue("message")
}

// fetchMedia needs credentials only where the account was set so, as with the carrier.
func (c *Carrier) fetchMedia(w http.ResponseWriter, r *http.Request) {
	if c.cfg.MediaAuth && !c.knows(r) {
		writeError(w, http.StatusUnauthorized, 20003)
		return
	}
	m, ok := c.storedMedia(r)
	if !ok {
		writeError(w, http.StatusNotFound, 20404)
		return
	}
	w.Header().Set("Content-Type", m.Type)
	w.Header().Set("X-Content-Type-Options", "nosniff")
	w.Write(m.Data)
}

func (c *Carrier) deleteMedia(w http.ResponseWriter, r *http.Request) {
	id := strings.TrimSuffix(r.PathValue("media"), ".json")
	c.mu.Lock()
	m, ok := c.media[id]
	if ok = ok && m.message == r.PathValue("message"); ok {
		delete(c.media, id)
	}
	c.mu.Unlock()
	if !ok {
		writeError(w, http.StatusNotFound, 20404)
		return
	}
	w.WriteHeader(http.StatusNoContent)
}

func (c *Carrier) listMedia(w http.ResponseWriter, r *http.Request) {
	message := r.PathValue("message")
	shown := []map[string]any{}
	c.mu.Lock()
	for id, m := range c.media {
		if m.message == message {
			shown = append(shown, map[string]any{"sid": id, "parent_sid": message, "content_type": m.Type,
				"account_sid": c.cfg.AccountID})
		}
	}
	c.mu.Unlock()
	writeJSON(w, http.StatusOK, map[string]any{"media_list": shown, "page": 0, "page_size": 50})
}
