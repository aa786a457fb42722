package deploy_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/collectors"

	"example.com/intake-bot/internal/intake"
)

// dashboard is what Grafana reads of monitoring/dashboard.json. Its form: from memory of
// Grafana's dashboard JSON model.
type dashboard struct {
	Title      string
	UID        string
	Templating struct {
		List []struct{ Name, Type, Query string }
	}
	Panels []struct {
		ID         int
		Type       string
		Title      string
		GridPos    struct{ X, Y, W, H int }
		Datasource struct{ Type, UID string }
		Targets    []struct{ RefID, Expr, LegendFormat string }
	}
}

func readDashboard(t *testing.T) (d dashboard) {
	t.Helper()
	if err := json.Unmarshal([]byte(text(t, "monitoring/dashboard.json")), &d); err != nil {
		t.Fatal(err)
	}
	return d
}

// metricsThatAre are the names of all that the program serves, histograms by their parts.
func metricsThatAre(t *testing.T) (ours, others []string) {
	t.Helper()
	r := prometheus.NewRegistry()
	intake.NewMetrics(r)
	r.MustRegister(intake.Gauges{}, collectors.NewGoCollector(), collectors.NewProcessCollector(collectors.ProcessCollectorOpts{}))
	all := make(chan *prometheus.Desc, 1000)
	r.Describe(all)
	close(all)
	named := regexp.MustCompile(`fqName: "([a-z_0-9]+)"`)
	for d := range all {
		name := named.FindStringSubmatch(d.String())[1]
		if name == "intake_turn_seconds" {
			name += "_bucket"
		}
		if strings.HasPrefix(name, "intake_") {
			ours = append(ours, name)
		} else {
			others = append(others, name)
		}
	}
	if len(ours) < 15 || len(others) < 10 {
		t.Fatalf("%d metrics of ours, %d others", len(ours), len(others))
	}
	return ours, append(others, "up")
}

var metricName = regexp.MustCompile(`\b(intake_[a-z_0-9]+|go_[a-z_0-9]+|process_[a-z_0-9]+|up)\b`)

// What the dashboard and the alert rules ask for is served, and all that is served of ours
// can be seen.
func TestDashboardShowsTheMetricsThatAre(t *testing.T) {
	ours, others := metricsThatAre(t)
	seen := map[string]bool{}
	ids := map[int]bool{}
	for _, p := range readDashboard(t).Panels {
		if ids[p.ID] || p.Title == "" || len(p.Targets) == 0 || p.Datasource.UID != "${source}" || p.GridPos.X+p.GridPos.W > 24 {
			t.Errorf("panel %d, %q, is not one that can be shown", p.ID, p.Title)
		}
		ids[p.ID] = true
		for _, q := range p.Targets {
			for _, name := range metricName.FindAllString(q.Expr, -1) {
				seen[name] = true
			}
		}
	}
	for name := range seen {
		if !slices.Contains(ours, name) && !slices.Contains(others, name) {
			t.Errorf("the dashboard asks for %s, which is not served", name)
		}
	}
	for _, name := range ours {
		if !seen[name] {
			t.Errorf("%s is served, and on no panel", name)
		}
	}
	for _, name := range metricName.FindAllString(regexp.MustCompile(`(?m)^ *#.*|job="[^"]*"`).ReplaceAllString(text(t, "monitoring/alerts.yaml"), ""), -1) {
		if !slices.Contains(ours, name) && !slices.Contains(others, name) {
			t.Errorf("alerts.yaml asks for %s, which is not served", name)
		}
	}
}

// Each query of the dashboard is one that Prometheus can run.
func TestDashboardsQueriesAreSound(t *testing.T) {
	promtool := tool(t, "promtool", "prometheus")
	var rules strings.Builder
	rules.WriteString("groups:\n  - name: dashboard\n    rules:\n")
	n := 0
	for _, p := range readDashboard(t).Panels {
		for _, q := range p.Targets {
			n++
			fmt.Fprintf(&rules, "      - {record: 'panel:%d', expr: %q}\n", n, q.Expr)
		}
	}
	path := filepath.Join(t.TempDir(), "rules.yaml")
	if err := os.WriteFile(path, []byte(rules.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := run(t, promtool, "check", "rules", path); err != nil || n < 20 {
		t.Errorf("%d queries: %v\n%s", n, err, out)
	}
}
