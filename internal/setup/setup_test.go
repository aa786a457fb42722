package setup_test

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.com/intake-bot/internal/setup"
	"example.com/intake-bot/internal/shop"
)

func TestAllDefaultsMakeASoundShopFile(t *testing.T) {
	a, err := setup.Ask(setup.Terminal{Out: io.Discard}, nil, true)
	if err != nil {
		t.Fatal(err)
	}
	text, err := setup.ShopFile(a)
	if err != nil {
		t.Fatal(err)
	}
	f, err := shop.Parse([]byte(text))
	if err != nil || f.Name == "" || f.Website != "" || len(f.Stock) != 0 || f.Prices != nil || f.ShowEstimate || len(f.Answers) != 0 || len(f.Holidays) != 8 {
		t.Errorf("%v, %+v", err, f)
	}
	if comments := strings.Count(text, "\n#") + strings.Count(text, "\n  #"); comments < 30 {
		t.Errorf("only %d lines of comments", comments)
	}
	if left := setup.Left(a); len(left) < 5 {
		t.Errorf("of the example there is left %q", left)
	}
}

// What an invented shop sells, charges and promises must not become a real one's.
func TestNothingInventedIsInForce(t *testing.T) {
	a, err := setup.Ask(setup.Terminal{Out: io.Discard}, setup.Answers{"name": "Larkspur Domes", "email": "ann@larkspur.test", "phone": "612 555 0142",
		"street": "1 Elm Street", "zip": "80202", "website": "https://larkspur.test", "ships_to": "[CO, UT]", "hours": "9 am - 5 pm", "saturday": "9:00-12:00"}, true)
	if err != nil {
		t.Fatal(err)
	}
	text, err := setup.ShopFile(a)
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(text) {
		if strings.HasPrefix(strings.TrimSpace(line), "#") {
			continue
		}
		for _, invented := range []string{"Pinwheel", "pinwheel", "Breakwater", "Duluth", "55802", "D2626", "$46", "within 30 days", "Stocktaking"} {
			if strings.Contains(line, invented) {
				t.Errorf("%q is still in: %s", invented, line)
			}
		}
	}
	f, err := shop.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if f.Address.City != "Denver" || f.Address.State != "CO" || f.Zone.Location.String() != "America/Denver" || len(f.ShipsTo) != 2 ||
		f.Hours.Friday[0].To != 17*60 || len(f.Hours.Saturday) != 1 || f.Website != "https://larkspur.test" {
		t.Errorf("%+v", f)
	}
	if a["public_url"] != "https://bot.larkspur.test" || a["carrier_number"] != "+16125550142" {
		t.Errorf("%q", a)
	}
}

func TestGivenAnswersAreChecked(t *testing.T) {
	for key, c := range map[string][2]string{
		"phone": {"12", "is not a US phone number"}, "email": {"ann", "is not a mail address"}, "zip": {"558", "is not a ZIP code"},
		"hours": {"always", "is not opening hours"}, "time_zone": {"EST", "is not a time zone"}, "ships_to": {"the moon", "is not where a shop ships to"},
		"public_url": {"bot.example.com", "is not the bot's address"}, "carrier_account": {"me", "is not an account's id"},
		"carrier_number": {"7", "is not a number"}, "mail": {"perhaps", "is neither yes nor no"}, "database_url": {"intake", "not a database's address"},
		"carrier_token": {"it's", "holds a quote"}, "website": {"larkspur", "is not a web address"}, "state": {"Colorado", "is not a state's postal code"},
	} {
		_, err := setup.Ask(setup.Terminal{Out: io.Discard}, setup.Answers{key: c[0]}, true)
		if err == nil || !strings.Contains(err.Error(), strings.ReplaceAll(key, "_", "-")+": ") || !strings.Contains(err.Error(), c[1]) {
			t.Errorf("%s: %v, want %q", key, err, c[1])
		}
	}
}

func TestAskAsksAgainAndTakesDefaults(t *testing.T) {
	var said strings.Builder
	// Name, a wrong mail address, a right one, then all else by default, but mail.
	in := "Larkspur Domes\nann\nann@larkspur.test\n" + strings.Repeat("\n", 15) + "yes\n\n\n\n\n"
	a, err := setup.Ask(setup.Terminal{In: strings.NewReader(in), Out: &said}, nil, false)
	if err != nil {
		t.Fatal(err)
	}
	if a["name"] != "Larkspur Domes" || a["email"] != "ann@larkspur.test" || a["imap"] != "imap.larkspur.test" || a["mail_user"] != "hello@larkspur.test" {
		t.Errorf("%q", a)
	}
	if !strings.Contains(said.String(), `"ann" is not a mail address`) || !strings.Contains(said.String(), "[https://bot.larkspur.test]") {
		t.Errorf("said:\n%s", said.String())
	}
	if _, err := setup.Ask(setup.Terminal{In: strings.NewReader("Larkspur"), Out: io.Discard}, nil, false); !errors.Is(err, setup.ErrInputEnded) {
		t.Errorf("an input that ends: %v", err)
	}
}

func TestSecretsAreReadApart(t *testing.T) {
	var said strings.Builder
	secrets := []string{"postgres://u:geheim@h/d", "token1"}
	secret := func() (string, error) {
		one := secrets[0]
		secrets = secrets[1:]
		return one, nil
	}
	a, err := setup.Ask(setup.Terminal{In: strings.NewReader(strings.Repeat("\n", 20)), Out: &said, Secret: secret}, nil, false)
	if err != nil || a["carrier_token"] != "token1" || a["database_url"] != "postgres://u:geheim@h/d" {
		t.Errorf("%v, %q", err, a)
	}
	if strings.Contains(said.String(), "geheim") || strings.Contains(said.String(), "token1") {
		t.Errorf("secrets are shown:\n%s", said.String())
	}
}

func TestEnvironment(t *testing.T) {
	given := setup.Answers{"carrier_token": "abc def$1", "mail": "yes", "mail_password": "p w", "email": "ann@larkspur.test"}
	a, err := setup.Ask(setup.Terminal{Out: io.Discard}, given, true)
	if err != nil {
		t.Fatal(err)
	}
	text := setup.Environment(a, "/srv/shop.yaml")
	got := map[string]string{}
	for _, m := range regexp.MustCompile(`(?m)^([A-Z_]+)=(.*)$`).FindAllStringSubmatch(text, -1) {
		if _, twice := got[m[1]]; twice {
			t.Errorf("%s is set twice", m[1])
		}
		got[m[1]] = m[2]
	}
	for name, want := range map[string]string{"SHOP_FILE": "/srv/shop.yaml", "PUBLIC_URL": "https://bot.larkspur.test", "CARRIER_AUTH_TOKEN": "'abc def$1'",
		"CARRIER_FROM": "+12185550142", "IMAP_ADDRESS": "imap.larkspur.test", "IMAP_USER": "hello@larkspur.test", "IMAP_PASSWORD": "p w", "SMTP_PASSWORD": "p w",
		"SMTP_USER": "hello@larkspur.test", "DATABASE_URL": "postgres://intake-bot@/intake?host=/run/postgresql"} {
		if got[name] != want {
			t.Errorf("%s is %q, want %q", name, got[name], want)
		}
	}
	if strings.Count(text, "\n# ") < 40 {
		t.Error("the explanations are gone")
	}
	a["mail"] = "no"
	if strings.Contains(setup.Environment(a, "x"), "\nIMAP_") {
		t.Error("a shop without mail has a mailbox")
	}
}

func TestWriteOverwritesNothing(t *testing.T) {
	dir := t.TempDir()
	one, two := setup.File{Path: filepath.Join(dir, "new", "shop.yaml"), Text: "a", Mode: 0o644}, setup.File{Path: filepath.Join(dir, "environment"), Text: "b", Mode: 0o600}
	if err := os.WriteFile(two.Path, []byte("precious"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := setup.Write(one, two); err == nil || !strings.Contains(err.Error(), "nothing is overwritten") {
		t.Errorf("%v", err)
	}
	if b, err := os.ReadFile(two.Path); err != nil || string(b) != "precious" {
		t.Errorf("%q, %v", b, err)
	}
	if _, err := os.Stat(one.Path); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("half of it was written: %v", err)
	}
	if err := os.Remove(two.Path); err != nil {
		t.Fatal(err)
	}
	if err := setup.Write(one, two); err != nil {
		t.Fatal(err)
	}
	for _, f := range []setup.File{one, two} {
		info, err := os.Stat(f.Path)
		if err != nil || info.Mode().Perm() != f.Mode {
			t.Errorf("%s: %v, %v", f.Path, info, err)
		}
	}
}

func TestAdvice(t *testing.T) {
	a, err := setup.Ask(setup.Terminal{Out: io.Discard}, setup.Answers{"mail": "yes"}, true)
	if err != nil {
		t.Fatal(err)
	}
	for _, said := range []string{"https://bot.pinwheel-domes.example/sms/inbound   as POST", "A2P 10DLC", "Reply STOP to end", "your counsel", "SPF, DKIM and DMARC", "A record"} {
		if !strings.Contains(setup.Advice(a), said) {
			t.Errorf("%q is not said in:\n%s", said, setup.Advice(a))
		}
	}
	a["carrier_number"], a["mail"] = "+18445550142", "no"
	if said := setup.Advice(a); !strings.Contains(said, "toll-free") || strings.Contains(said, "DMARC") {
		t.Errorf("for a toll-free number without mail:\n%s", said)
	}
}
