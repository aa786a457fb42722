package shop

import (
	"fmt"
	"sort"
	"strings"
)

// Mistake is one thing that is wrong in a shop file.
type Mistake struct {
	Line, Column int    // from 1
	Setting      string // which setting, as "hours.monday" or "stock[2].size"; may be empty
	Text         string // what is wrong and what would be right
}

// String is the mistake as "LINE:COLUMN: SETTING: TEXT".
func (m Mistake) String() string {
	if m.Setting == "" {
		return fmt.Sprintf("%d:%d: %s", m.Line, m.Column, m.Text)
	}
	return fmt.Sprintf("%d:%d: %s: %s", m.Line, m.Column, m.Setting, m.Text)
}

// Mistakes are all mistakes of one file, in the order of its lines.
type Mistakes struct {
	Path string // the file, empty where it was not read from one
	List []Mistake
}

// Error has one line for each mistake.
func (m *Mistakes) Error() string {
	lines := make([]string, len(m.List))
	for i, one := range m.List {
		lines[i] = one.String()
		if m.Path != "" {
			lines[i] = m.Path + ":" + lines[i]
		}
	}
	return strings.Join(lines, "\n")
}

func (m *Mistakes) sort() {
	sort.SliceStable(m.List, func(i, j int) bool {
		a, b := m.List[i], m.List[j]
		return a.Line < b.Line || a.Line == b.Line && a.Column < b.Column
	})
}
