package shop

import (
	"fmt"
	"strconv"
	"strings"
)

// Percent is a share in whole percent, written like 25% or 25.
type Percent int

func (p *Percent) set(text string) error {
	digits := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "%"))
	n, err := strconv.Atoi(digits)
	if err != nil || n < 0 || n > 1000 {
		return fmt.Errorf("%q is not a percentage: write a whole one from 0%% to 1000%%, like 25%%", text)
	}
	*p = Percent(n)
	return nil
}
