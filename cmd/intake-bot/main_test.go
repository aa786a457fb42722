package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/alecthomas/kong"

	"example.com/intake-bot/internal/db/dbtest"
)

// program is the built program: these tests run it as its users do.
var program string

func TestMain(m *testing.M) {
	os.Exit(buildAndRun(m))
}

func buildAndRun(m *testing.M) int {
	dir, err := os.MkdirTemp("", "intake-bot-test")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer os.RemoveAll(dir)
	program = filepath.Join(dir, "intake-bot")
	build := exec.Command("go", "build", "-tags", "nodynamic", "-o", program, ".")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "build: %v\n%s", err, out)
		return 1
	}
	return m.Run()
}

// runProgram runs it to its end.
func runProgram(t *testing.T, env []string, in string, args ...string) (out, errs string, status int) {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), program, args...)
	cmd.Env = append([]string{"PATH=" + os.Getenv("PATH"), "HOME=" + t.TempDir()}, env...)
	cmd.Stdin = strings.NewReader(in)
	var stdout, stderr bytes.Buffer
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	err := cmd.Run()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return stdout.String(), stderr.String(), cmd.ProcessState.ExitCode()
}

// jsonLines are the lines of an output, each of which must be JSON.
func jsonLines(t *testing.T, out string) []map[string]any {
	t.Helper()
	var list []map[string]any
	for _, line := range strings.Split(strings.TrimSuffix(out, "\n"), "\n") {
		var v map[string]any
		if err := json.Unmarshal([]byte(line), &v); err != nil {
			t.Fatalf("%q is not a line of JSON: %v", line, err)
		}
		list = append(list, v)
	}
	return list
}

func TestReadAnswersALineWithALine(t *testing.T) {
	out, errs, status := runProgram(t, nil, "the outside of the curb is 25 1/2 x 49 1/2\n{\"text\":\"25 1/2 x 49 1/2\",\"asked\":\"curb_outside\"}\n", "read")
	if status != 0 || errs != "" {
		t.Fatalf("status %d: %s", status, errs)
	}
	lines := jsonLines(t, out)
	if len(lines) != 2 {
		t.Fatalf("%d lines for 2 messages:\n%s", len(lines), out)
	}
	for _, line := range lines {
		if got, _ := json.Marshal(line["facts"]); !strings.Contains(string(got), `"value":{"length_in":49.5,"width_in":25.5}`) {
			t.Errorf("facts are %s", got)
		}
	}
}

func TestABadLineIsAnsweredAndEndsWithStatus1(t *testing.T) {
	for command, good := range map[string]string{
		"read":  `{"text":"hello"}`,
		"check": `{"units":[{"style":"curb_mount","curb_outside":{"width_in":25.5,"length_in":49.5}}]}`,
	} {
		out, _, status := runProgram(t, nil, good+"\n{\"units\":7\n"+good+"\n", command)
		lines := jsonLines(t, out)
		if status != 1 || len(lines) != 3 {
			t.Fatalf("%s: status %d, %d lines:\n%s", command, status, len(lines), out)
		}
		if lines[1]["error"] == nil || lines[1]["line"] != float64(2) {
			t.Errorf("%s: the bad line is answered %v", command, lines[1])
		}
		if lines[0]["error"] != nil || lines[2]["error"] != nil {
			t.Errorf("%s: good lines are answered %v and %v", command, lines[0], lines[2])
		}
	}
}

func TestCheckTakesTheRulesOfTheShopFile(t *testing.T) {
	example, _, _ := runProgram(t, nil, "", "shop", "show")
	path := filepath.Join(t.TempDir(), "shop.yaml")
	wider := strings.Replace(example, "aim_for: 3/8", "aim_for: 1/2", 1)
	if err := os.WriteFile(path, []byte(wider), 0o600); err != nil {
		t.Fatal(err)
	}
	job := `{"units":[{"style":"fiberglass_frame","curb_outside":{"width_in":30.5,"length_in":30.5}}]}`
	for shop, want := range map[string]string{"": `"frame_inside":{"width_in":30.875,"length_in":30.875}`, path: `"frame_inside":{"width_in":31,"length_in":31}`} {
		out, errs, status := runProgram(t, []string{"SHOP_FILE=" + shop}, job, "check")
		if status != 0 || !strings.Contains(out, want) {
			t.Errorf("shop %q: status %d, %s%s, want %s", shop, status, errs, out, want)
		}
	}
}

// A program at the other end sends the next message only when it has the answer.
func TestChatTalksInLockStep(t *testing.T) {
	cmd := exec.CommandContext(t.Context(), program, "chat", "--json", "--at", "2026-03-02T21:15:00-06:00")
	in, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	answers := bufio.NewScanner(out)
	answers.Buffer(nil, 1<<20)
	next := func() map[string]any {
		if !answers.Scan() {
			t.Fatalf("no answer: %v", answers.Err())
		}
		return jsonLines(t, answers.Text())[0]
	}
	for i, message := range []string{"hi, my dome is cracked", `{"text":"this one","photos":["roof.jpg"]}`, "STOP", "hello?"} {
		fmt.Fprintln(in, message)
		got := next()
		say, ok := got["say"].([]any)
		if !ok || got["state"] == nil || got["asking"] == nil {
			t.Fatalf("%q is answered %v", message, got)
		}
		if want := []int{-1, -1, 1, 0}[i]; want >= 0 && (len(say) != want || got["state"] != "silenced") {
			t.Errorf("%q: %d texts in state %v, want %d", message, len(say), got["state"], want)
		}
	}
	in.Close()
	lead, ok := next()["lead"].(map[string]any)
	if !ok || lead["version"] != float64(1) || lead["status"] != "closed" || lead["after_hours"] != true || lead["channel"] != "terminal" {
		t.Errorf("the lead is %v", lead)
	}
	if err := cmd.Wait(); err != nil {
		t.Error(err)
	}
}

func TestChatIsTheSameAtTheSameTime(t *testing.T) {
	in := "my skylight leaks\nAnn, Duluth MN 55802, a house\n26 x 50 plastic\n"
	args := []string{"chat", "--json", "--at", "2026-03-02T10:00:00-06:00"}
	one, _, _ := runProgram(t, nil, in, args...)
	two, _, _ := runProgram(t, nil, in, args...)
	if one != two || one == "" {
		t.Errorf("two runs differ:\n%s\n%s", one, two)
	}
}

func TestChatForPeopleShowsTheTalkAndTheLead(t *testing.T) {
	out, errs, status := runProgram(t, nil, "hi, my dome is cracked\n", "chat")
	if status != 0 || !strings.Contains(out, "you:  hi, my dome is cracked\nshop: ") || !strings.Contains(out, "Lead CHAT: open") {
		t.Errorf("status %d: %s%s", status, errs, out)
	}
}

func TestShopCheck(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shop.yaml")
	if err := os.WriteFile(path, []byte("name: A\nphone: 12\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	_, errs, status := runProgram(t, nil, "", "shop", "check", path)
	if status != 1 || !strings.Contains(errs, path+":2:8: phone: \"12\" is not a US phone number") {
		t.Errorf("status %d: %s", status, errs)
	}
	out, errs, status := runProgram(t, nil, "", "shop", "check", "../../deploy/shop.example.yaml")
	if status != 0 || !strings.Contains(out, "sound") {
		t.Errorf("status %d: %s%s", status, out, errs)
	}
}

func TestMigrateAndLeads(t *testing.T) {
	env := []string{"DATABASE_URL=" + dbtest.EmptyURL(t)}
	for i, want := range []string{"The database is current now.\n", "The database was current.\n"} {
		if out, errs, status := runProgram(t, env, "", "migrate"); status != 0 || out != want {
			t.Fatalf("migrate %d: status %d, %s%s", i+1, status, out, errs)
		}
	}
	if out, errs, status := runProgram(t, env, "", "leads", "list"); status != 0 || !strings.HasPrefix(out, "REF") {
		t.Errorf("list: status %d, %s%s", status, out, errs)
	}
	if out, errs, status := runProgram(t, env, "", "leads", "export", "--json"); status != 0 || out != "" {
		t.Errorf("export: status %d, %s%s", status, out, errs)
	}
	if _, errs, status := runProgram(t, env, "", "leads", "show", "NOSUCH", "--json"); status != 1 || !strings.Contains(errs, `there is no lead "NOSUCH"`) {
		t.Errorf("show: status %d, %s", status, errs)
	}
}

func TestServeSaysAllThatIsMissing(t *testing.T) {
	_, errs, status := runProgram(t, nil, "", "serve")
	if status != 1 {
		t.Errorf("status %d", status)
	}
	for _, name := range []string{"DATABASE_URL", "SHOP_FILE", "PUBLIC_URL", "CARRIER_ACCOUNT_ID", "CARRIER_AUTH_TOKEN", "CARRIER_FROM"} {
		if !strings.Contains(errs, name) {
			t.Errorf("%s is not named in:\n%s", name, errs)
		}
	}
}

func TestReadTakesAMail(t *testing.T) {
	mail := strings.ReplaceAll(`From: Ann <ann@example.com>
To: orders@example.test
Subject: Re: your skylight

> What does the raised box measure over the outside?
25 1/2 x 49 1/2
> How many layers of plastic should it have: 1, 2 or 3?
2

-- 
Ann Berg, Duluth MN 55802
`, "\n", "\r\n")
	out, errs, status := runProgram(t, nil, mail, "read", "--email")
	if status != 0 {
		t.Fatalf("status %d: %s", status, errs)
	}
	got := jsonLines(t, out)[0]
	facts, _ := json.Marshal(got["facts"])
	const want = `[{"said":"25 1/2 x 49 1/2","topic":"curb_outside","value":{"length_in":49.5,"width_in":25.5}},{"said":"2","topic":"layers","value":2}]`
	if string(facts) != want || got["auto"] != false || got["photos"] != float64(0) || got["text"] != "25 1/2 x 49 1/2\n\n2" {
		t.Errorf("read %s\nwant facts %s", out, want)
	}
	auto := strings.Replace(mail, "Subject:", "Auto-Submitted: auto-replied\r\nSubject:", 1)
	out, _, _ = runProgram(t, nil, auto, "read", "--email")
	if got := jsonLines(t, out)[0]; got["auto"] != true || len(got["facts"].([]any)) != 0 {
		t.Errorf("a mail that no person wrote is read %s", out)
	}
	if out, _, status := runProgram(t, nil, "", "read", "--email"); status != 1 || jsonLines(t, out)[0]["error"] == nil {
		t.Errorf("nothing is read as %s, status %d", out, status)
	}
}

// What the pages tell people to type is there to be typed.
func TestPagesNameCommandsThatExist(t *testing.T) {
	parser, err := kong.New(&commands{}, kong.Name("intake-bot"))
	if err != nil {
		t.Fatal(err)
	}
	pages, err := filepath.Glob("../../docs/*.md")
	if err != nil || len(pages) < 5 {
		t.Fatal(pages, err)
	}
	// The program at the start of a line or of a quoted bit, or after the folder it is in; not
	// the user, group or service of the same name.
	named := regexp.MustCompile(`(?m)(?:^\s*|` + "`" + `|bin/|\()intake-bot ((?:[a-z]+ )*[a-z]+)`)
	seen := 0
	for _, page := range append(pages, "../../README.md", "../../DEVELOPERS.md", "../../deploy/README.md", "../../deploy/environment.example", "../../deploy/shop.example.yaml") {
		text, err := os.ReadFile(page)
		if err != nil {
			t.Fatal(err)
		}
		for _, code := range regexp.MustCompile("(?s)```.*?```|`[^`\n]+`").FindAllString(string(text), -1) {
			for _, m := range named.FindAllStringSubmatch(code, -1) {
				seen++
				node := parser.Model.Node
				for _, word := range strings.Fields(m[1]) {
					child := slices.IndexFunc(node.Children, func(n *kong.Node) bool { return n.Name == word })
					if child < 0 {
						break // an argument
					}
					node = node.Children[child]
				}
				if node == parser.Model.Node {
					t.Errorf("%s: no such command: intake-bot %s", page, m[1])
				}
			}
		}
	}
	if seen < 20 {
		t.Errorf("only %d commands were looked at", seen)
	}
}
