package fitcheck

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
)

// Any line in gives one line of JSON out.
func FuzzCheckLines(f *testing.F) {
	f.Add([]byte(fullLine))
	f.Add([]byte(`{"units":[{"curb_outside":{"sides_in":[1,2,3,4]},"outline":"round","curb_inside":{"diameter_in":3}}]}`))
	f.Add([]byte(`{"units":[{"plastic_size":{"width_in":24,"length_in":36},"retainer_outside":{"width_in":1,"length_in":12000}}],"resolution_in":12}`))
	f.Add([]byte(`{"units":[{"curb_diagonals":{"second_in":3}}]}`))
	f.Add([]byte("\xff{\"units\":[[[[[["))
	rules := priced()
	f.Fuzz(func(t *testing.T, line []byte) {
		line = bytes.ReplaceAll(line, []byte("\n"), []byte(" "))
		var out strings.Builder
		if _, err := CheckLines(bytes.NewReader(line), &out, rules, nil); err != nil {
			t.Fatal(err)
		}
		blank := len(bytes.TrimSpace(bytes.TrimPrefix(line, []byte("\xef\xbb\xbf")))) == 0
		if got := out.String(); strings.Count(got, "\n") != 1 && !blank || got != "" && !json.Valid([]byte(got)) {
			t.Fatalf("%q: %q", line, got)
		}
	})
}

// What a topic's value was read from and what it is written as are the same value.
func FuzzDecodeValue(f *testing.F) {
	f.Add("curb_outside", `{"width_in":25.5,"length_in":49.515625}`)
	f.Add("place", `{"city":"Duluth","zip":"55802"}`)
	f.Add("color", `{"outer":"clear","middle":"white"}`)
	f.Fuzz(func(t *testing.T, topic, raw string) {
		v, err := DecodeValue(Topic(topic), []byte(raw))
		if err != nil {
			return
		}
		written, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		again, err := DecodeValue(Topic(topic), written)
		if err != nil {
			t.Fatalf("%s: %s: %v", topic, written, err)
		}
		rewritten, err := json.Marshal(again)
		if err != nil || !bytes.Equal(written, rewritten) {
			t.Fatalf("%s: %s became %s, %v", topic, written, rewritten, err)
		}
	})
}
