package setup

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"github.com/goccy/go-yaml"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/shop"
)

const shopHead = `# The shop file: everything that the owner decides. Secrets are not in it; they come from
# the environment.
#
# Written by intake-bot init. What is not in it has its default; docs/shop-file.md tells of
# every setting, intake-bot shop show prints an example of each, and intake-bot shop check
# says what is wrong with this file, and where.

`

const noPrices = `# ---- what it costs ----

# No prices yet, so the bot makes no estimates. intake-bot shop import prices FILE.csv puts
# them here; intake-bot shop export prices prints an invented table to begin with.

`

const noStock = `stock: []
# None yet: intake-bot shop import stock FILE.csv puts them here; intake-bot shop export
# stock prints an invented table to begin with.
`

// starter is the example without what is an invented shop's alone: its stock, prices,
// answers and days off.
func starter() (string, error) {
	text := deploy.ExampleShop
	_, text, found := strings.Cut(text, "# ---- who and where")
	text = shopHead + "# ---- who and where" + text
	for _, one := range []struct{ path, setting string }{
		{"stock", noStock}, {"prices", ""}, {"show_estimate", "show_estimate: false\n"}, {"answers", "answers: []\n"},
	} {
		var err error
		if text, err = shop.Replace(text, one.path, one.setting); err != nil {
			return "", fmt.Errorf("starting shop file: %w", err)
		}
	}
	priced := regexp.MustCompile(`(?s)# ---- what it costs.*?\n\n.*?\n\n?(# May the bot tell)`)
	dated := regexp.MustCompile(`(?m)^  (- \{name: .*\})$`)
	if !found || !priced.MatchString(text) || !dated.MatchString(text) {
		return "", errors.New("starting shop file: the example is written in another way than it was")
	}
	text = priced.ReplaceAllString(text, strings.ReplaceAll(noPrices, "$", "$$")+"$1")
	return dated.ReplaceAllString(text, "  # $1"), nil
}

// ShopFile is a shop file, with comments, out of the answers.
func ShopFile(a Answers) (string, error) {
	text, err := starter()
	if err != nil {
		return "", err
	}
	for _, q := range questions() {
		if q.setting == "" {
			continue
		}
		if text, err = put(text, q.setting, a[q.key]); err != nil {
			return "", err
		}
	}
	for _, day := range []string{"tuesday", "wednesday", "thursday", "friday"} {
		if text, err = put(text, "hours."+day, a["hours"]); err != nil {
			return "", err
		}
	}
	if _, err := shop.Parse([]byte(text)); err != nil {
		return "", fmt.Errorf("the answers make no sound shop file: %w", err)
	}
	return text, nil
}

// put sets one setting that is a single value; "none" takes it out.
func put(text, path, value string) (string, error) {
	name := path[strings.LastIndex(path, ".")+1:]
	if value == "none" && path == "website" {
		return shop.Replace(text, path, "")
	}
	if strings.HasPrefix(value, "[") && path == "ships_to" {
		return shop.Replace(text, path, name+": "+value)
	}
	quoted, err := yaml.Marshal(value)
	if err != nil {
		return "", fmt.Errorf("%s: %w", name, err)
	}
	return shop.Replace(text, path, name+": "+strings.TrimSpace(string(quoted)))
}

// Environment is the example of the environment with the answers in it. shopFile is the
// path of the shop file.
func Environment(a Answers, shopFile string) string {
	text := set(deploy.ExampleEnvironment, "SHOP_FILE", shopFile)
	for _, q := range questions() {
		if q.env != "" && (q.when == nil || q.when(a)) {
			text = set(text, q.env, a[q.key])
		}
	}
	if a.withMail() {
		text = set(text, "SMTP_USER", a["mail_user"])
		text = set(text, "SMTP_PASSWORD", a["mail_password"])
	}
	return text
}

var plainValue = regexp.MustCompile(`^[A-Za-z0-9@%+=:,./?&_ -]*$`)

// set writes a variable, switched on, in its place.
func set(text, name, value string) string {
	if !plainValue.MatchString(value) {
		value = "'" + value + "'" // systemd and containers both take it so
	}
	line := regexp.MustCompile(`(?m)^(?:# )?` + name + `=.*$`)
	done := false
	return line.ReplaceAllStringFunc(text, func(was string) string {
		if done {
			return was // another example of the same variable
		}
		done = true
		return name + "=" + value
	})
}

// File is one file to be written.
type File struct {
	Path, Text string
	Mode       os.FileMode
}

// Missing is nil where none of the files is there yet.
func Missing(files ...File) error {
	for _, f := range files {
		if _, err := os.Lstat(f.Path); err == nil {
			return fmt.Errorf("%s is there already, and nothing is overwritten: name another folder, or move it away", f.Path)
		} else if !errors.Is(err, os.ErrNotExist) {
			return fmt.Errorf("look for %s: %w", f.Path, err)
		}
	}
	return nil
}

// Write writes new files, all of them or none.
func Write(files ...File) (err error) {
	if err := Missing(files...); err != nil {
		return err
	}
	var made []string
	defer func() {
		if err != nil {
			for _, path := range made {
				err = errors.Join(err, os.Remove(path))
			}
		}
	}()
	for _, f := range files {
		if err := os.MkdirAll(filepath.Dir(f.Path), 0o755); err != nil { //nolint:gosec // the shop file is for all
			return fmt.Errorf("make the folder: %w", err)
		}
		w, err := os.OpenFile(f.Path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, f.Mode)
		if err != nil {
			return fmt.Errorf("write %s: %w", f.Path, err)
		}
		made = append(made, f.Path)
		_, err = w.WriteString(f.Text)
		// Some umasks would take more away than is meant.
		if err = errors.Join(err, w.Chmod(f.Mode), w.Sync(), w.Close()); err != nil {
			return fmt.Errorf("write %s: %w", f.Path, err)
		}
	}
	return nil
}
