package demo

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
)

// Differences are where a lead record is not what it must be; none is right. Of an
// object all that is wanted must be there; of a list of objects each wanted one must be
// among them; any other value must be the same.
func Differences(want any, record json.RawMessage) ([]string, error) {
	var got, wanted any
	if err := json.Unmarshal(record, &got); err != nil {
		return nil, fmt.Errorf("lead record: %w", err)
	}
	// By way of JSON, so that both have the same types.
	b, err := json.Marshal(want)
	if err != nil {
		return nil, fmt.Errorf("wanted lead: %w", err)
	}
	if err := json.Unmarshal(b, &wanted); err != nil {
		return nil, fmt.Errorf("wanted lead: %w", err)
	}
	return differ("", wanted, got), nil
}

func differ(path string, want, got any) []string {
	switch want := want.(type) {
	case map[string]any:
		object, ok := got.(map[string]any)
		if !ok {
			return []string{fmt.Sprintf("%s is %s, not an object", path, show(got))}
		}
		var out []string
		for key, value := range want {
			out = append(out, differ(strings.TrimPrefix(path+"."+key, "."), value, object[key])...)
		}
		slices.Sort(out)
		return out
	case []any:
		if list, ok := got.([]any); ok && objects(want) {
			return among(path, want, list)
		}
	}
	if !reflect.DeepEqual(want, got) {
		return []string{fmt.Sprintf("%s is %s, not %s", path, show(got), show(want))}
	}
	return nil
}

func objects(list []any) bool {
	return len(list) > 0 && !slices.ContainsFunc(list, func(v any) bool { _, ok := v.(map[string]any); return !ok })
}

func among(path string, want, got []any) []string {
	var out []string
	for i, w := range want {
		if slices.ContainsFunc(got, func(g any) bool { return len(differ("", w, g)) == 0 }) {
			continue
		}
		if len(want) == len(got) { // then it is likely the one in its place
			out = append(out, differ(fmt.Sprintf("%s[%d]", path, i), w, got[i])...)
			continue
		}
		out = append(out, fmt.Sprintf("%s has no %s among its %d", path, show(w), len(got)))
	}
	return out
}

func show(v any) string {
	b, err := json.Marshal(v)
	if err != nil {
		return fmt.Sprint(v)
	}
	return string(b)
}
