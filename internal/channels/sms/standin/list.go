package standin

import (
	"net/http"
	"net/url"
	"slices"
	"strconv"
)

// list answers with messages, newest first, a page at a time.
func (c *Carrier) list(w http.ResponseWriter, r *http.Request) {
	if c.faults.listIsDown() {
		writeError(w, http.StatusServiceUnavailable, 20503)
		return
	}
	q := r.URL.Query()
	found := slices.DeleteFunc(c.Messages(), func(m Message) bool {
		return (q.Get("To") != "" && m.To != q.Get("To")) || (q.Get("From") != "" && m.From != q.Get("From"))
	})
	slices.Reverse(found)
	size := number(q.Get("PageSize"), 50, 1000)
	page := number(q.Get("Page"), 0, 1<<20)
	start := min(page*size, len(found))
	end := min(start+size, len(found))
	shown := make([]map[string]any, 0, end-start)
	for _, m := range found[start:end] {
		shown = append(shown, c.resource(m))
	}
	answer := map[string]any{
		"messages": shown, "page": page, "page_size": size, "start": start, "end": end,
		"uri": r.URL.RequestURI(), "next_page_uri": nil,
	}
	if end < len(found) {
		answer["next_page_uri"] = nextPage(r.URL, page+1)
	}
	writeJSON(w, http.StatusOK, answer)
}

func nextPage(u *url.URL, page int) string {
	next, q := *u, u.Query()
	q.Set("Page", strconv.Itoa(page))
	q.Set("PageToken", "PA"+strconv.Itoa(page))
	next.RawQuery = q.Encode()
	return next.RequestURI()
}

func number(s string, otherwise, most int) int {
	n, err := strconv.Atoi(s)
	if err != nil || n < 0 {
		return otherwise
	}
	return min(n, most)
}
