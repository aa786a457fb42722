package staff

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// screen is a tab of a real browser, of a certain size.
type screen struct {
	*house
	ctx  context.Context
	name string
}

// chromium starts a browser that ends with the test; its contexts are tabs.
func chromium(t *testing.T) context.Context {
	t.Helper()
	if testing.Short() {
		t.Skip("a real browser takes its time: left out with -short")
	}
	program, err := exec.LookPath("chromium")
	if err != nil {
		t.Fatal("a real browser is needed: install chromium")
	}
	alloc, cancel := chromedp.NewExecAllocator(context.Background(), chromedp.ExecPath(program), chromedp.NoSandbox, chromedp.Headless,
		chromedp.DisableGPU, chromedp.NoFirstRun, chromedp.UserDataDir(t.TempDir()), chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true))
	t.Cleanup(cancel)
	ctx, end := chromedp.NewContext(alloc)
	t.Cleanup(end)
	if err := chromedp.Do(ctx, chromedp.Navigate("about:blank")); err != nil {
		t.Fatalf("browser: %v", err)
	}
	return ctx
}

func (h *house) screen(browser context.Context, name string, width, height int64, script bool) *screen {
	h.t.Helper()
	ctx, cancel := chromedp.NewContext(browser, chromedp.WithNewBrowserContext())
	h.t.Cleanup(cancel)
	s := &screen{h, ctx, name}
	s.do(chromedp.EmulateViewport(width, height), chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: !script})
		return err
	}))
	return s
}

// patience is what a step may take: a page that never comes is a failure, a machine that
// has much to do is none.
const patience = 3 * time.Minute

// do runs steps, each bounded.
func (s *screen) do(steps ...chromedp.Action[chromedp.Void]) {
	s.t.Helper()
	for i, step := range steps {
		ctx, cancel := s.ctx, context.CancelFunc(func() {})
		if i+len(s.name) > 0 && s.started() {
			ctx, cancel = context.WithTimeout(s.ctx, patience)
		}
		err := chromedp.Do(ctx, step)
		cancel()
		if err != nil {
			s.t.Fatalf("%s, step %d: %v\n%.1500s", s.name, i+1, err, s.text())
		}
	}
}

// started says whether the tab is there: its first step must not be bounded.
func (s *screen) started() bool {
	c := chromedp.FromContext(s.ctx)
	return c != nil && c.Target != nil
}

func (s *screen) open(path string) {
	s.t.Helper()
	s.do(chromedp.Navigate(s.url+path), chromedp.WaitVisible("footer"))
}

// fill types into a field after it was emptied.
func (s *screen) fill(selector, text string) {
	s.t.Helper()
	if _, err := chromedp.Run(s.ctx, chromedp.Evaluate[string](fmt.Sprintf("document.querySelector(%q).value = ''", selector))); err != nil {
		s.t.Fatal(err)
	}
	s.do(chromedp.SendKeys(selector, text))
}

// told waits until the page tells what was done.
func (s *screen) told(words string) {
	s.t.Helper()
	s.until(words, func(text string) bool { return strings.Contains(text, words) })
}

func (s *screen) until(what string, ok func(text string) bool) {
	s.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(100 * time.Millisecond) {
		if ok(s.text()) {
			return
		}
	}
	s.t.Fatalf("%s: never came to %s:\n%.2000s", s.name, what, s.text())
}

func (s *screen) text() string {
	ctx, cancel := context.WithTimeout(s.ctx, patience)
	defer cancel()
	text, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.readyState === "complete" ? document.body.innerText : ""`))
	if err != nil {
		return ""
	}
	return text
}

// picture keeps a picture of the page where INTAKE_PICTURES names a folder.
func (s *screen) picture(name string) {
	s.t.Helper()
	dir := os.Getenv("INTAKE_PICTURES")
	if dir == "" {
		return
	}
	b, err := chromedp.Run(s.ctx, chromedp.FullScreenshot(70))
	if err != nil {
		s.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, name+"-"+s.name+".jpg"), b, 0o644); err != nil {
		s.t.Fatal(err)
	}
}

// upright fails where a page is wider than the screen.
func (s *screen) upright(path string) {
	s.t.Helper()
	wide, err := chromedp.Run(s.ctx, chromedp.Evaluate[int](`document.documentElement.scrollWidth - document.documentElement.clientWidth`))
	if err != nil || wide > 0 {
		s.t.Errorf("%s, %s: %d pixels too wide, %v", s.name, path, wide, err)
	}
}

func (s *screen) logIn(login string) {
	s.t.Helper()
	s.open("/staff/")
	s.fill("#login", login)
	s.fill("#password", password)
	s.do(chromedp.Click(".main"), chromedp.WaitVisible(".views"))
}

// TestADayAtThePage: the whole way of a lead in a real browser, large and small, with
// scripts and without.
func TestADayAtThePage(t *testing.T) {
	browser := chromium(t)
	for _, c := range []struct {
		name          string
		width, height int64
		script        bool
	}{{"1440", 1440, 900, true}, {"360", 360, 740, true}, {"1440-noscript", 1440, 900, false}, {"360-noscript", 360, 740, false}} {
		t.Run(c.name, func(t *testing.T) {
			h := newHouse(t)
			h.account("dana", "Dana", db.RoleOwner)
			h.account("lee", "Lee", db.RoleStaff)
			s := h.screen(browser, c.name, c.width, c.height, c.script)
			s.logIn("dana")
			s.told("Nobody.")
			h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
			h.exec(`UPDATE messages SET photos = 1 WHERE direction = 'in'`)
			if !c.script {
				s.do(chromedp.Click(".again"))
			}
			s.told("R7KQ4") // with scripts it comes by itself
			s.upright("/staff/")
			s.picture("waiting")
			s.theWay(h.as("lee"))
		})
	}
}

func (s *screen) theWay(other *browser) {
	s.t.Helper()
	s.do(chromedp.Click(".lead h3 a"), chromedp.WaitVisible(".title"))
	s.upright("/staff/lead")
	s.do(chromedp.Click(".act button"))
	s.told("The lead is in your hands.")
	if told := other.does("/staff/lead/R7KQ4/take"); !strings.Contains(told, "Dana was faster") {
		s.t.Errorf("another who tried was told %q", told)
	}
	s.fill("#text", "Hello Ana, Dana here. A look at your numbers.")
	s.do(chromedp.Click(`form[action$="/write"] button`))
	s.told("Sent. The assistant is silent")
	s.do(chromedp.Navigate(s.url+"/staff/lead/R7KQ4?fix=curb_inside%401"), chromedp.WaitVisible("#value"))
	s.fill("#value", "25 x 49")
	s.do(chromedp.Click(`form[action$="/fact"] button`))
	s.told("numbers agree →")
	s.picture("lead")
	s.prints(other)
	s.do(chromedp.SetValue("#status", "ordered"))
	s.fill("#reason", "order 1207")
	s.do(chromedp.Click(`form[action$="/mark"] button`))
	s.told("Marked: ordered.")
	s.do(chromedp.Click(".act button"))
	s.told("waits again")
	if status, holder := s.status("R7KQ4"); status != "ordered" || holder != "" {
		s.t.Errorf("the lead is %s with %q", status, holder)
	}
}

// prints prints the page and fetches the sheet, each a PDF.
func (s *screen) prints(b *browser) {
	s.t.Helper()
	printed, err := chromedp.Run(s.ctx, chromedp.Action[page.PrintToPDFResult](func(ctx context.Context, t *chromedp.Target) (page.PrintToPDFResult, error) {
		return cdp.Call(ctx, t, page.PrintToPDF, page.PrintToPDFParams{})
	}))
	if err != nil || !strings.HasPrefix(string(printed.Data), "%PDF-") {
		s.t.Errorf("%s: the page can't be printed: %v", s.name, err)
	}
	if status, pdf := b.get("/staff/lead/R7KQ4/sheet.pdf"); status != 200 || !strings.HasPrefix(pdf, "%PDF-") {
		s.t.Errorf("%s: the sheet: %d %.20q", s.name, status, pdf)
	}
}

// TestTheOwnersDay: what only the owner may, in a real browser, without scripts.
func TestTheOwnersDay(t *testing.T) {
	h := newHouse(t)
	h.account("kim", "Kim", db.RoleOwner)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	job, err := h.page.queue.Insert(t.Context(), failing{}, &river.InsertOpts{MaxAttempts: 1})
	if err != nil {
		t.Fatal(err)
	}
	h.exec(`UPDATE river_job SET state = 'discarded', finalized_at = now(), attempt = 1, errors = ARRAY['{"at":"2026-03-02T18:00:00Z","attempt":1,"error":"no such host","trace":""}'::jsonb] WHERE id = $1`, job.Job.ID)
	s := h.screen(chromium(t), "owner", 360, 740, false)
	s.logIn("kim")
	s.open("/staff/shop")
	s.told("no such host")
	s.do(chromedp.Click(`form[action^="/staff/shop/job/"] button`))
	s.told("is tried again")
	s.do(chromedp.Click(`details:last-of-type summary`))
	s.fill("#login", "lee")
	s.fill("#name", "Lee")
	s.do(chromedp.Click(`form[action="/staff/shop/account"] button`))
	s.told("lee logs in with")
	s.do(chromedp.Click(`section:nth-of-type(3) summary`))
	s.told("name: Pinwheel Dome Supply")
	s.do(chromedp.Click(`a[href="/staff/texts"]`))
	s.told("Hi, you've reached Pinwheel Dome Supply.")
	s.told("25 1/2 x 49 1/2")
	s.open("/staff/person")
	s.fill("#of", "(218) 555-0123")
	s.do(chromedp.Click(`form[action="/staff/person"] button`), chromedp.Click("details summary"))
	s.told(`"ref": "R7KQ4"`)
	s.fill("#again", "218 555 0123")
	s.do(chromedp.Click(`form[action="/staff/person/erase"] button`))
	s.told("Erased: 1 ")
}

// photo is one that came with the first message of a lead, drawn here: a dome seen from
// afar will do.
func (h *house) photo(ref string, k int, look string) {
	h.t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, 640, 480))
	for i := range picture.Pix {
		picture.Pix[i] = uint8(120 + (i/4%640)/8 + (i/2560)/8)
	}
	draw.Draw(picture, image.Rect(170, 120, 470, 360), image.NewUniform(color.RGBA{235, 240, 245, 255}), image.Point{}, draw.Src)
	var b bytes.Buffer
	if err := jpeg.Encode(&b, picture, nil); err != nil {
		h.t.Fatal(err)
	}
	h.exec(`WITH p AS (INSERT INTO photos (message_id, k, source, of, state, width, height, sha256, opened_at, look)
			SELECT m.id, $2, 'x', 'style', 'kept', 640, 480, sha256($4), now(), nullif($3, '') FROM messages m JOIN conversations c ON c.id = m.conversation_id
			WHERE c.ref = $1 AND m.direction = 'in' RETURNING id)
		INSERT INTO photo_files (photo_id, jpeg, thumb) SELECT id, $4, $4 FROM p`, ref, k, look, b.Bytes())
}

// TestPagesForEverybody: every page, light and dark, large and small, is as wide as the
// screen at the most, and axe-core has nothing serious to say of it: it looks once at
// each size and once at each scheme.
func TestPagesForEverybody(t *testing.T) {
	axe := axeSource(t)
	h := newHouse(t)
	h.account("kim", "Kim", db.RoleOwner)
	h.account("lee", "Lee", db.RoleStaff)
	for i, ref := range []string{"R7KQ4", "CDFGH", "JKMNP", "QRTWX"} {
		h.lead(ref, fmt.Sprintf("+1218555012%d", i), []conversation.State{"with_staff", "measuring", "handed_over", "lapsed"}[i], func(talk *conversation.Talk) {
			talk.Memory.Urgent, talk.Memory.Confirmed = i == 3, true
			if i == 2 {
				talk.Ledger[1].Value = fitcheck.Place{City: "Denver", State: "CO", ZIP: "80202"}
			}
			if i == 1 {
				talk.Ledger[8].Value = fitcheck.Size{Width: 25 * fitcheck.Inch, Length: 49 * fitcheck.Inch}
			}
		})
	}
	h.photo("JKMNP", 1, "")
	h.photo("JKMNP", 2, "blurred")
	other := h.as("lee")
	other.does("/staff/lead/JKMNP/take")
	other.does("/staff/lead/R7KQ4/note", "text", "call after 5")
	other.does("/staff/lead/R7KQ4/fact", "topic", "layers@1", "value", "2")
	browser := chromium(t)
	for _, c := range []struct {
		name   string
		width  int64
		scheme string
		axe    string
	}{{"1440-light", 1440, "light", axe}, {"1440-dark", 1440, "dark", ""}, {"360-light", 360, "light", ""}, {"360-dark", 360, "dark", axe}} {
		if c.axe == "" && os.Getenv("INTAKE_PICTURES") == "" {
			continue // only to be looked at by people
		}
		t.Run(c.name, func(t *testing.T) {
			s := h.screen(browser, c.name, c.width, 800, true)
			s.t = t
			s.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
				_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
					Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: c.scheme}}})
				return err
			}))
			s.open("/staff/login")
			s.look("login", c.axe)
			s.logIn("kim")
			for _, p := range []struct{ name, path string }{{"list", "/staff/"}, {"hand", "/staff/?list=hand"}, {"lead-page", "/staff/lead/R7KQ4"},
				{"lead-photos", "/staff/lead/JKMNP"}, {"lead-doubt", "/staff/lead/CDFGH?fix=curb_inside%401"}, {"find", "/staff/find?q=ana"}, {"check", "/staff/check"}, {"figures", "/staff/figures?cents=0.79"},
				{"shop", "/staff/shop"}, {"texts", "/staff/texts"}, {"person", "/staff/person?of=%2B12185550120"}, {"password", "/staff/password"}, {"sorry", "/staff/nothing"}} {
				s.open(p.path)
				s.upright(p.path)
				s.look(p.name, c.axe)
			}
		})
	}
}

// look has axe-core look at the page, and keeps a picture.
func (s *screen) look(name, axe string) {
	s.t.Helper()
	s.picture(name)
	if axe == "" {
		return
	}
	s.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := chromedp.Evaluate[bool](axe+";true")(ctx, t)
		return err
	}))
	found, err := chromedp.Run(s.ctx, chromedp.Evaluate[string](`axe.run({runOnly:["wcag2a","wcag2aa","wcag21a","wcag21aa","wcag22aa","best-practice"]}).then(function (r) {
		return r.violations.filter(function (v) { return v.impact === "serious" || v.impact === "critical" }).map(function (v) {
			return v.id + ": " + v.nodes.map(function (n) { return n.html.slice(0, 160) + " " + n.failureSummary.slice(0, 300) }).join(" | ") }).join("\n") })`, chromedp.EvalAwaitPromise))
	if err != nil || found != "" {
		s.t.Errorf("%s, %s: %v\n%s", s.name, name, err, found)
	}
}

// axeSource is axe-core, which scripts/need.sh fetches and INTAKE_AXE names.
func axeSource(t *testing.T) string {
	t.Helper()
	path := os.Getenv("INTAKE_AXE")
	if path == "" && os.Getenv("CI") != "true" {
		t.Log("axe-core is not here (run: scripts/need.sh axe -- go test ./internal/staff), so only the width of the pages is checked")
		return ""
	}
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("axe-core: %v; make test fetches it", err)
	}
	return string(b)
}
