package deploy_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// tool is a program of the system that checks a file here. Where it is not installed, the
// test says so, and fails only where everything must run.
func tool(t *testing.T, name, packageName string) string {
	t.Helper()
	for _, name := range []string{name, "/usr/sbin/" + name} { // not in everybody's PATH
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("no %s here: apt-get install %s", name, packageName)
	}
	t.Skipf("left out, no %s here: apt-get install %s", name, packageName)
	return ""
}

func run(t *testing.T, name string, args ...string) (output string, err error) {
	t.Helper()
	out, err := exec.CommandContext(t.Context(), name, args...).CombinedOutput()
	return string(out), err
}

func TestScriptsPassShellcheck(t *testing.T) {
	check := tool(t, "shellcheck", "shellcheck")
	scripts, err := filepath.Glob("*.sh")
	if err != nil || len(scripts) < 3 {
		t.Fatalf("scripts: %v, %v", scripts, err)
	}
	if out, err := run(t, check, scripts...); err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}

// units are the files of systemd/, with programs that are there on any machine in place
// of those that are installed by hand, and the template as one of its two bots.
func units(t *testing.T) map[string]string {
	t.Helper()
	installed := strings.NewReplacer("/usr/local/bin/intake-bot", "/bin/true", "/usr/local/lib/intake-bot/backup.sh", "/bin/true")
	folder := t.TempDir()
	out := map[string]string{}
	for from, to := range map[string]string{
		"intake-bot@.service": "intake-bot@8081.service", "intake-bot-migrate.service": "", "intake-bot-backup.service": "", "intake-bot-backup.timer": "",
	} {
		if to == "" {
			to = from
		}
		out[to] = filepath.Join(folder, to)
		if err := os.WriteFile(out[to], []byte(installed.Replace(text(t, "systemd/"+from))), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

func TestUnitsPassSystemdVerify(t *testing.T) {
	analyze := tool(t, "systemd-analyze", "systemd")
	for name, path := range units(t) {
		out, err := run(t, analyze, "verify", "--man=no", path)
		if err != nil || strings.Contains(out, filepath.Base(path)+":") {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
	}
}

// exposed is how much of the machine a unit may leave open, out of 100, by systemd's own
// count. A unit without any hardening has 96.
const exposed = "14"

func TestUnitsAreHardened(t *testing.T) {
	analyze := tool(t, "systemd-analyze", "systemd")
	for name, path := range units(t) {
		if strings.HasSuffix(name, ".timer") {
			continue
		}
		if out, err := run(t, analyze, "security", "--offline=true", "--no-pager", "--threshold="+exposed, path); err != nil {
			t.Errorf("%s: %v\n%s", name, err, out)
		}
	}
}

func TestAlertRulesAndTheirCases(t *testing.T) {
	promtool := tool(t, "promtool", "prometheus")
	if out, err := run(t, promtool, "check", "rules", "monitoring/alerts.yaml"); err != nil {
		t.Errorf("%v\n%s", err, out)
	}
	if out, err := run(t, promtool, "test", "rules", "monitoring/cases.yaml"); err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}
