package sms

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write testdata/segments.tsv anew with the npm package")

const (
	referenceTable   = "testdata/segments.tsv"
	referencePackage = "sms-segments-calculator@1.3.0"
	referenceTexts   = 4000
)

// texts are made from a fixed seed, around the lengths at which the number of parts
// changes. Sequences that join to one sign (a family, a flag, a letter with a loose
// accent) are left out: the reference keeps them whole in a part, TS 23.038 does not.
func texts() []string {
	alphabets := [][]rune{
		[]rune("abcdefghijklmnopqrstuvwxyz 0123456789/x.,?"),
		[]rune(gsmBasic),
		[]rune("abc" + gsmExtension),
		[]rune(gsmExtension),
		[]rune("abc ñéü½×”…áíóú"),
		[]rune("abc👍🏠🔨😀"),
		[]rune("日本語テスト"),
		[]rune("👍😀"),
	}
	lengths := []int{1, 20, 35, 67, 70, 76, 80, 134, 153, 160, 201, 306, 459}
	r := rand.New(rand.NewPCG(38, 23))
	all := make([]string, referenceTexts)
	for i := range all {
		from := alphabets[r.IntN(len(alphabets))]
		n := max(1, lengths[r.IntN(len(lengths))]+r.IntN(7)-3)
		var b strings.Builder
		for range n {
			b.WriteRune(from[r.IntN(len(from))])
		}
		all[i] = b.String()
	}
	return all
}

func line(text string, counted string) string {
	h := fnv.New32a()
	h.Write([]byte(text))
	return fmt.Sprintf("%08x\t%s", h.Sum32(), counted)
}

// TestCountAgainstTable compares with the results of the npm package, kept in testdata.
func TestCountAgainstTable(t *testing.T) {
	all := texts()
	if *update {
		writeTable(t, all, runReference(t, all))
	}
	kept, err := os.ReadFile(referenceTable)
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Split(strings.TrimSpace(string(kept)), "\n")
	if len(want) != len(all) {
		t.Fatalf("table has %d lines, want %d", len(want), len(all))
	}
	for i, text := range all {
		s := Count(text)
		if got := line(text, fmt.Sprintf("%s\t%d\t%d", s.Encoding, s.Units, s.Parts)); got != want[i] {
			t.Errorf("text %d (%q): got %s, the reference %s", i, text, got, want[i])
		}
	}
}

// TestTableIsTheReferences runs the npm package itself, where npm is there.
func TestTableIsTheReferences(t *testing.T) {
	if testing.Short() {
		t.Skip("short run")
	}
	all := texts()
	counted := runReference(t, all)
	kept, err := os.ReadFile(referenceTable)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range strings.Split(strings.TrimSpace(string(kept)), "\n") {
		if got := line(all[i], counted[i]); got != want {
			t.Fatalf("line %d: the package says %s, the table %s", i+1, got, want)
		}
	}
}

func runReference(t *testing.T, all []string) []string {
	t.Helper()
	for _, program := range []string{"npm", "node"} {
		if _, err := exec.LookPath(program); err != nil {
			t.Skipf("%s is not there; the kept table was compared", program)
		}
	}
	dir := t.TempDir()
	install := exec.Command("npm", "install", "--ignore-scripts", "--no-audit", "--no-fund", "--prefix", dir, referencePackage)
	if out, err := install.CombinedOutput(); err != nil {
		t.Skipf("%s can't be installed; the kept table was compared: %v\n%s", referencePackage, err, out)
	}
	script, err := filepath.Abs("testdata/segments.mjs")
	if err != nil {
		t.Fatal(err)
	}
	var in bytes.Buffer
	enc := json.NewEncoder(&in)
	for _, text := range all {
		if err := enc.Encode(text); err != nil {
			t.Fatal(err)
		}
	}
	node := exec.Command("node", script, dir)
	node.Stdin, node.Stderr = &in, os.Stderr
	out, err := node.Output()
	if err != nil {
		t.Fatal(err)
	}
	counted := strings.Split(strings.TrimSpace(string(out)), "\n")
	if len(counted) != len(all) {
		t.Fatalf("the package counted %d texts, want %d", len(counted), len(all))
	}
	return counted
}

func writeTable(t *testing.T, all, counted []string) {
	t.Helper()
	var b strings.Builder
	for i, text := range all {
		b.WriteString(line(text, counted[i]) + "\n")
	}
	if err := os.WriteFile(referenceTable, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
