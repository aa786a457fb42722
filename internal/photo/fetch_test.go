package photo

import (
	"bytes"
	"context"
	"errors"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strconv"
	"strings"
	"testing"
	"time"
)

// carrier is a picture store on loopback: the interface wants credentials and sends
// on to a file store, which must not see them.
type carrier struct {
	*httptest.Server
	sawAuthorization map[string]string
	deleted          []string
}

func newCarrier(t *testing.T, redirectTo func(c *carrier, r *http.Request) string) *carrier {
	c := &carrier{sawAuthorization: map[string]string{}}
	picture := bytes.Repeat([]byte("picture "), 100)
	mux := http.NewServeMux()
	mux.HandleFunc("GET /media/{id}", func(w http.ResponseWriter, r *http.Request) {
		c.sawAuthorization["media"] = r.Header.Get("Authorization")
		if user, password, _ := r.BasicAuth(); user != "AC1" || password != "secret" {
			w.WriteHeader(http.StatusUnauthorized)
			return
		}
		if status, err := strconv.Atoi(r.PathValue("id")); err == nil {
			w.WriteHeader(status)
			return
		}
		http.Redirect(w, r, redirectTo(c, r), http.StatusTemporaryRedirect)
	})
	mux.HandleFunc("DELETE /media/{id}", func(w http.ResponseWriter, r *http.Request) {
		if r.PathValue("id") == "gone" {
			w.WriteHeader(http.StatusNotFound)
			return
		}
		c.deleted = append(c.deleted, r.PathValue("id"))
		w.WriteHeader(http.StatusNoContent)
	})
	mux.HandleFunc("GET /file", func(w http.ResponseWriter, r *http.Request) {
		c.sawAuthorization["file"] = r.Header.Get("Authorization")
		c.sawAuthorization["referer"] = r.Header.Get("Referer")
		w.Write(picture)
	})
	mux.HandleFunc("GET /slow", func(w http.ResponseWriter, r *http.Request) {
		w.Write([]byte("a"))
		w.(http.Flusher).Flush()
		<-r.Context().Done()
	})
	mux.HandleFunc("GET /endless", func(w http.ResponseWriter, r *http.Request) {
		for r.Context().Err() == nil {
			if _, err := w.Write(picture); err != nil {
				return
			}
		}
	})
	c.Server = httptest.NewServer(mux)
	t.Cleanup(c.Close)
	return c
}

// store is the carrier under its other name, as the file store.
func (c *carrier) store(path string) string {
	return strings.Replace(c.URL, "127.0.0.1", "localhost", 1) + path
}

func fetcherFor() *Fetcher {
	return NewFetcher(FetchSettings{User: "AC1", Password: "secret", CredentialHosts: []string{"127.0.0.1"},
		Hosts: []string{"localhost"}, Bytes: 100_000, Time: 500 * time.Millisecond, Loopback: true})
}

func to(path string) func(c *carrier, _ *http.Request) string {
	return func(c *carrier, _ *http.Request) string { return c.store(path) }
}

func TestFetchFollowsToTheStoreWithoutCredentials(t *testing.T) {
	c := newCarrier(t, to("/file"))
	file, err := fetcherFor().Fetch(context.Background(), c.URL+"/media/one")
	if err != nil || len(file) != 800 {
		t.Fatalf("%d bytes, %v", len(file), err)
	}
	if c.sawAuthorization["media"] == "" || c.sawAuthorization["file"] != "" || c.sawAuthorization["referer"] != "" {
		t.Errorf("credentials: %v", c.sawAuthorization)
	}
}

func TestFetchErrors(t *testing.T) {
	c := newCarrier(t, func(c *carrier, r *http.Request) string {
		switch r.PathValue("id") {
		case "elsewhere":
			return "http://store.example.com/file"
		case "inside":
			return "http://169.254.169.254/latest/meta-data"
		case "file":
			return "file:///etc/passwd"
		case "circle":
			return c.URL + "/media/circle"
		case "named":
			return strings.Replace(c.store("/file"), "http://", "http://user:word@", 1)
		}
		return c.store("/" + r.PathValue("id"))
	})
	for _, e := range []struct {
		address string
		want    error
	}{
		{c.URL + "/media/elsewhere", ErrHost}, {c.URL + "/media/inside", ErrHost}, {c.URL + "/media/file", ErrHost},
		{c.URL + "/media/named", ErrHost}, {c.URL + "/media/circle", &StatusError{307}},
		{c.URL + "/media/404", ErrGone}, {c.URL + "/media/410", ErrGone},
		{c.URL + "/media/401", &StatusError{401}}, {c.URL + "/media/503", &StatusError{503}},
		{c.URL + "/media/endless", ErrTooLarge}, {c.URL + "/media/slow", context.DeadlineExceeded},
		{"http://store.example.com/x", ErrHost}, {"https://127.0.0.1.example.com/x", ErrHost}, {"ftp://127.0.0.1/x", ErrHost},
		{"://", ErrHost}, {"", ErrHost}, {"http://[::1]/x", ErrHost}, {"/media/one", ErrHost},
	} {
		_, err := fetcherFor().Fetch(context.Background(), e.address)
		var status, wanted *StatusError
		if errors.As(e.want, &wanted) {
			if !errors.As(err, &status) || *status != *wanted {
				t.Errorf("%s: %v, want %v", e.address, err, e.want)
			}
		} else if !errors.Is(err, e.want) {
			t.Errorf("%s: %v, want %v", e.address, err, e.want)
		}
		if err != nil && strings.Contains(err.Error(), "/media/") {
			t.Errorf("the error shows the picture's address: %v", err)
		}
	}
}

// Without Loopback nothing on this machine is reached, whatever the lists say: by plain
// HTTP for its scheme, by TLS for its address.
func TestFetchRefusesPrivateAddresses(t *testing.T) {
	touched := false
	s := httptest.NewTLSServer(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { touched = true }))
	defer s.Close()
	f := NewFetcher(FetchSettings{Hosts: []string{"localhost", "127.0.0.1"}, Time: time.Second})
	if _, err := f.Fetch(context.Background(), "http://localhost/x"); !errors.Is(err, ErrHost) {
		t.Errorf("plain HTTP: %v", err)
	}
	if _, err := f.Fetch(context.Background(), s.URL); !errors.Is(err, ErrHost) {
		t.Errorf("another port: %v", err)
	}
	for _, host := range []string{"localhost", "127.0.0.1"} {
		if _, err := f.Fetch(context.Background(), "https://"+host+"/x"); !errors.Is(err, ErrAddress) {
			t.Errorf("%s by TLS: %v", host, err)
		}
	}
	if touched {
		t.Error("the server was reached")
	}
}

func TestDelete(t *testing.T) {
	c := newCarrier(t, to("/file"))
	for _, id := range []string{"one", "gone"} {
		if err := fetcherFor().Delete(context.Background(), c.URL+"/media/"+id); err != nil {
			t.Errorf("%s: %v", id, err)
		}
	}
	if len(c.deleted) != 1 || c.deleted[0] != "one" {
		t.Errorf("deleted %v", c.deleted)
	}
}

func TestListed(t *testing.T) {
	hosts := []string{"api.example.com", ".files.example.com"}
	for host, want := range map[string]bool{
		"api.example.com": true, "API.Example.com": true, "api.example.com.": true, "a.files.example.com": true,
		"files.example.com": false, "evilfiles.example.com": false, "api.example.com.evil.test": false, "xapi.example.com": false, "": false,
	} {
		u := &url.URL{Scheme: "https", Host: host}
		if got := listed(hosts, u); got != want {
			t.Errorf("%q: %v", host, got)
		}
	}
}

func TestCarrierHosts(t *testing.T) {
	credentials, store := CarrierHosts()
	for address, want := range map[string][2]bool{
		"https://api.twilio.com/x": {true, false}, "https://api.dublin.ie1.twilio.com/x": {true, false},
		"https://mms.twiliocdn.com/x": {false, true}, "https://twilio.com.example.com/x": {false, false},
	} {
		u, err := url.Parse(address)
		if err != nil {
			t.Fatal(err)
		}
		if got := [2]bool{listed(credentials, u), listed(store, u)}; got != want {
			t.Errorf("%s: %v", address, got)
		}
	}
}
