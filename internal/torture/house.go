package torture

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	office "example.com/intake-bot/internal/channels/email/standin"
	carrier "example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/db"
)

const (
	account  = "AC00000000000000000000000000000001"
	token    = "token1"
	number   = "+12185550142"
	shopMail = "hello@pinwheel.example"
	password = "not-a-real-one"
)

// House is everything around the bots: a database, a carrier, a post office.
type House struct {
	t        testing.TB
	Database string // its address, as the bots get it
	Carrier  *carrier.Carrier
	Office   *office.Office
	Front    *Front
	ShopFile string
	Env      []string      // what every bot gets
	Pool     *pgxpool.Pool // the test's own eyes
	log      *tailBuffer
	mu       sync.Mutex
	bots     []*Bot
}

// Program is the tortured build of this checkout, made once. TORTURE_PROGRAM names one that
// is there already.
var Program = sync.OnceValues(func() (string, error) {
	if path := os.Getenv("TORTURE_PROGRAM"); path != "" {
		return path, nil
	}
	return build("../..")
})

// Build is that of another checkout.
func Build(checkout string) (string, error) { return build(checkout) }

// built is where the program is for this test process; TestMain removes it.
var built struct {
	sync.Mutex
	dirs []string
}

// build builds the tortured program of a checkout.
func build(checkout string) (string, error) {
	dir, err := os.MkdirTemp("", "torture")
	if err != nil {
		return "", err
	}
	built.Lock()
	built.dirs = append(built.dirs, dir)
	built.Unlock()
	path := filepath.Join(dir, "intake-bot")
	cmd := exec.Command("go", "build", "-tags", "nodynamic torture", "-o", path, "./cmd/intake-bot")
	cmd.Dir = checkout
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := cmd.CombinedOutput(); err != nil {
		return "", fmt.Errorf("build: %w\n%s", err, out)
	}
	return path, nil
}

// NewHouse opens a house whose bots use one address of a migrated database, and whose
// tests look at it by another that nothing stands before; they may be the same.
func NewHouse(t testing.TB, database, eyes string) *House {
	t.Helper()
	h := &House{t: t, Database: database, Front: newFront(t), log: &tailBuffer{}}
	h.Carrier = carrier.New(carrier.Config{AccountID: account, AuthToken: token, Number: number, InboundURL: h.Front.URL + "/sms/inbound", MediaAuth: true})
	base, err := h.Carrier.Start("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { h.Carrier.Close() })
	if h.Office, err = office.New(office.Config{Address: shopMail, Password: password}); err != nil {
		t.Fatal(err)
	}
	if err := h.Office.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { h.Office.Close() })
	h.ShopFile = filepath.Join(t.TempDir(), "shop.yaml")
	if err := os.WriteFile(h.ShopFile, []byte(ShopText()), 0o600); err != nil {
		t.Fatal(err)
	}
	h.Env = []string{"PATH=" + os.Getenv("PATH"), "DATABASE_URL=" + database, "SHOP_FILE=" + h.ShopFile, "LISTEN=127.0.0.1:0", "STOP_WAIT=0s",
		"PUBLIC_URL=" + h.Front.URL, "CARRIER_ACCOUNT_ID=" + account, "CARRIER_AUTH_TOKEN=" + token, "CARRIER_FROM=" + number, "CARRIER_API_URL=" + base,
		"IMAP_ADDRESS=" + h.Office.IMAP(), "IMAP_SECURITY=insecure", "IMAP_USER=" + shopMail, "IMAP_PASSWORD=" + password,
		"SMTP_ADDRESS=" + h.Office.SMTP(), "SMTP_SECURITY=insecure", "SMTP_USER=" + shopMail, "SMTP_PASSWORD=" + password,
		"TORTURE_LEASE=6s", "TORTURE_PHOTO_WAIT=10m"}
	if h.Pool, err = db.Open(t.Context(), eyes); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(h.Pool.Close)
	t.Cleanup(func() {
		h.mu.Lock()
		defer h.mu.Unlock()
		for _, b := range h.bots {
			b.Kill()
		}
		if t.Failed() {
			t.Logf("the end of the bots' log:\n%s", h.log)
		}
	})
	return h
}

// Begin starts a bot, with more in its environment, and does not wait for it.
func (h *House) Begin(more ...string) *Bot {
	h.t.Helper()
	path, err := Program()
	if err != nil {
		h.t.Fatal(err)
	}
	return h.begin(path, more)
}

func (h *House) begin(path string, more []string) *Bot {
	h.t.Helper()
	b := start(h.t, path, h.Front, h.log, append(h.Env[:len(h.Env):len(h.Env)], more...))
	h.mu.Lock()
	h.bots = append(h.bots, b)
	h.mu.Unlock()
	return b
}

// Open starts a bot and waits until it takes messages.
func (h *House) Open(more ...string) *Bot {
	h.t.Helper()
	b := h.Begin(more...)
	if !b.ready() {
		h.t.Fatalf("the bot ended at once:\n%s", h.log)
	}
	return b
}

// OpenProgram starts a bot of another build and waits until it takes messages.
func (h *House) OpenProgram(path string) *Bot {
	h.t.Helper()
	b := h.begin(path, nil)
	if !b.ready() {
		h.t.Fatalf("the bot ended at once:\n%s", h.log)
	}
	return b
}

// Until waits for something that must come. Where it does not, the test fails, and whoever
// plays is told so; it is not ended at once, for this may be any goroutine's.
func Until(t testing.TB, what string, done func() bool) bool {
	t.Helper()
	for end := time.Now().Add(patience); !done(); time.Sleep(20 * time.Millisecond) {
		if time.Now().After(end) {
			t.Errorf("waited in vain until %s", what)
			return false
		}
	}
	return true
}

// Count is the answer to a question of one number.
func (h *House) Count(ctx context.Context, sql string, args ...any) int {
	h.t.Helper()
	var n int
	if err := h.Pool.QueryRow(ctx, sql, args...).Scan(&n); err != nil {
		h.t.Fatalf("%s: %v", sql, err)
	}
	return n
}

// Clear removes the programs that were built.
func Clear() {
	built.Lock()
	defer built.Unlock()
	for _, dir := range built.dirs {
		_ = os.RemoveAll(dir) // in the folder for what may go
	}
}
