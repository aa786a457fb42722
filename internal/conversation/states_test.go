package conversation

import (
	"os"
	"strings"
	"testing"
)

// TestMoves: the law lets a talk go where facts may lead it, and nowhere else.
func TestMoves(t *testing.T) {
	for _, c := range []struct {
		from, to State
		ok       bool
	}{
		{Opening, Introducing, true}, {Opening, Confirming, true}, {Measuring, Rechecking, true},
		{Rechecking, Rechecking, true}, {Confirming, HandedOver, true}, {Introducing, WithStaff, true},
		{Lapsed, Measuring, true}, {Measuring, Lapsed, true}, {HandedOver, Silenced, true},
		{WithStaff, Silenced, true},
		{HandedOver, WithStaff, true},
		{WithStaff, Measuring, false}, {WithStaff, Introducing, false}, {Silenced, Introducing, false}, {Silenced, Measuring, false}, {Silenced, HandedOver, false},
		{HandedOver, Introducing, false}, {HandedOver, Lapsed, false}, {Lapsed, Lapsed, false},
	} {
		got, err := move(c.from, c.to)
		if ok := err == nil; ok != c.ok {
			t.Errorf("%s to %s: %v", c.from, c.to, err)
		}
		if want := map[bool]State{true: c.to, false: c.from}[c.ok]; got != want {
			t.Errorf("%s to %s ends in %s", c.from, c.to, got)
		}
	}
}

// TestRelease: only staff, or START, bring a talk back that the assistant had left.
func TestRelease(t *testing.T) {
	for from, ok := range map[State]bool{WithStaff: true, Silenced: true, Measuring: false, HandedOver: false} {
		if got, err := happen(from, eventRelease); (err == nil) != ok || ok && got != Introducing {
			t.Errorf("%s released is %s, %v", from, got, err)
		}
	}
}

// TestDiagramCurrent keeps the picture in the docs as the law is.
func TestDiagramCurrent(t *testing.T) {
	diagram, err := Diagram()
	if err != nil {
		t.Fatal(err)
	}
	want := "# The states of a talk\n\nMade from the law in `internal/conversation/states.go`; a test keeps it current.\n\n```mermaid\n" +
		strings.TrimSpace(diagram) + "\n```\n"
	const file = "../../docs/states.md"
	if *update {
		if err := os.WriteFile(file, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	got, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != want {
		t.Errorf("%s is not what the law gives; go test ./internal/conversation -run Diagram -update", file)
	}
}
