package deploy_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
)

// composeFile has the keys that compose.yaml uses; a key that is not here is an error, so
// that a slip of the pen is one too.
type composeFile struct {
	Name     string             `yaml:"name"`
	Program  service            `yaml:"x-program"`
	Bot      service            `yaml:"x-bot"`
	Services map[string]service `yaml:"services"`
	Networks map[string]struct {
		Internal bool `yaml:"internal"`
		IPAM     struct {
			Config []struct {
				Subnet string `yaml:"subnet"`
			} `yaml:"config"`
		} `yaml:"ipam"`
	} `yaml:"networks"`
	Volumes map[string]struct{} `yaml:"volumes"`
	Secrets map[string]struct {
		File string `yaml:"file"`
	} `yaml:"secrets"`
}

type service struct {
	Image string `yaml:"image"`
	Build struct {
		Context    string `yaml:"context"`
		Dockerfile string `yaml:"dockerfile"`
	} `yaml:"build"`
	Command     []string          `yaml:"command"`
	Entrypoint  []string          `yaml:"entrypoint"`
	EnvFile     []string          `yaml:"env_file"`
	Environment map[string]string `yaml:"environment"`
	Secrets     []string          `yaml:"secrets"`
	Volumes     []string          `yaml:"volumes"`
	Networks    map[string]struct {
		Address string `yaml:"ipv4_address"`
	} `yaml:"networks"`
	NetworkMode string   `yaml:"network_mode"`
	Tmpfs       []string `yaml:"tmpfs"`
	Ports       []string `yaml:"ports"`
	Profiles    []string `yaml:"profiles"`
	ReadOnly    bool     `yaml:"read_only"`
	CapDrop     []string `yaml:"cap_drop"`
	CapAdd      []string `yaml:"cap_add"`
	SecurityOpt []string `yaml:"security_opt"`
	MemLimit    string   `yaml:"mem_limit"`
	ShmSize     string   `yaml:"shm_size"`
	Restart     string   `yaml:"restart"`
	StopGrace   string   `yaml:"stop_grace_period"`
	DependsOn   map[string]struct {
		Condition string `yaml:"condition"`
	} `yaml:"depends_on"`
	Healthcheck struct {
		Test     []string `yaml:"test"`
		Interval string   `yaml:"interval"`
		Timeout  string   `yaml:"timeout"`
		Retries  int      `yaml:"retries"`
	} `yaml:"healthcheck"`
}

func readCompose(t *testing.T) composeFile {
	t.Helper()
	var c composeFile
	if err := yaml.UnmarshalWithOptions([]byte(text(t, "compose.yaml")), &c, yaml.Strict()); err != nil {
		t.Fatal(err)
	}
	return c
}

func TestComposeFileHoldsTogether(t *testing.T) {
	c := readCompose(t)
	var got []string
	for name, s := range c.Services {
		got = append(got, name)
		checkReferences(t, c, name, s)
		if s.Image == "" || !slices.Contains(s.SecurityOpt, "no-new-privileges:true") {
			t.Errorf("%s: no image, or it may gain rights", name)
		}
		if len(s.Ports) > 0 && name != "proxy" {
			t.Errorf("%s is open to the world: %v", name, s.Ports)
		}
	}
	slices.Sort(got)
	if want := []string{"backup", "bot-a", "bot-b", "migrate", "postgres", "proxy", "sharing"}; !slices.Equal(got, want) {
		t.Errorf("services %v, want %v", got, want)
	}
	if !c.Networks["inside"].Internal || hasKey(c.Services["postgres"].Networks, "outward") {
		t.Error("Postgres can be reached from, or reach, the world")
	}
}

func TestComposeRunsTwoLockedDownBots(t *testing.T) {
	c := readCompose(t)
	for _, name := range []string{"bot-a", "bot-b", "migrate"} {
		s := c.Services[name]
		if !s.ReadOnly || !slices.Equal(s.CapDrop, []string{"ALL"}) || len(s.CapAdd) > 0 {
			t.Errorf("%s: its root can be written to, or it has rights", name)
		}
		if _, err := os.Stat("../" + s.Build.Dockerfile); err != nil || s.Build.Context != ".." {
			t.Errorf("%s is built from %+v: %v", name, s.Build, err)
		}
		if s.Environment["DATABASE_URL"] != "" || s.Environment["DATABASE_URL_FILE"] != "/run/secrets/database_url" {
			t.Errorf("%s: the database's address is not the secret's: %v", name, s.Environment)
		}
	}
	for _, name := range []string{"bot-a", "bot-b"} {
		s := c.Services[name]
		if s.DependsOn["migrate"].Condition != "service_completed_successfully" || s.Restart != "unless-stopped" || len(s.Command) > 0 {
			t.Errorf("%s: %+v", name, s)
		}
		address := s.Networks["inside"].Address
		if address == "" || !strings.Contains(text(t, "proxy/bots.compose.conf"), address+":8080") {
			t.Errorf("the proxy does not know %s", name)
		}
	}
	m := c.Services["migrate"]
	if !slices.Equal(m.Command, []string{"migrate"}) || m.Restart != "no" || m.DependsOn["postgres"].Condition != "service_healthy" {
		t.Errorf("migrate: %+v", m)
	}
}

// Everything set for a bot is a variable that the program reads.
func TestComposeSetsKnownVariables(t *testing.T) {
	read := variablesRead(t)
	for name := range readCompose(t).Services["bot-a"].Environment {
		if !slices.Contains(read, strings.TrimSuffix(name, "_FILE")) && !slices.Contains(read, name) {
			t.Errorf("%s is not read by the program", name)
		}
	}
}

// checkReferences looks for what a service names and the file does not have.
func checkReferences(t *testing.T, c composeFile, name string, s service) {
	t.Helper()
	for n := range s.Networks {
		if _, ok := c.Networks[n]; !ok {
			t.Errorf("%s: no network %s", name, n)
		}
	}
	for _, n := range s.Secrets {
		if c.Secrets[n].File == "" {
			t.Errorf("%s: no secret %s", name, n)
		}
	}
	for n := range s.DependsOn {
		if _, ok := c.Services[n]; !ok {
			t.Errorf("%s waits for %s, which is not there", name, n)
		}
	}
	for _, v := range s.Volumes {
		from, _, _ := strings.Cut(v, ":")
		_, volume := c.Volumes[from]
		made := slices.Contains([]string{"./shop.yaml", "./backups"}, from) // by the owner
		_, err := os.Stat(from)
		if !volume && !made && (err != nil || !strings.HasPrefix(from, "./")) {
			t.Errorf("%s: nothing to mount at %s", name, v)
		}
	}
}

func hasKey[V any](m map[string]V, key string) bool {
	_, ok := m[key]
	return ok
}
