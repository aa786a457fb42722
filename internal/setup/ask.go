package setup

import (
	"errors"
	"fmt"
	"io"
	"strings"
)

// Terminal is where the owner sits.
type Terminal struct {
	In     io.Reader
	Out    io.Writer
	Secret func() (string, error) // reads without showing; nil: reads as anything else
}

// ErrInputEnded says that the owner went away in the middle.
var ErrInputEnded = errors.New("the input ended before all was answered; nothing was written")

// Ask asks what is not given yet. Of what is given, what is wrong is an error. With quiet
// nothing is asked: what is not given is as it would be by default.
func Ask(t Terminal, given Answers, quiet bool) (Answers, error) {
	a := Answers{}
	list := questions()
	var wrong []error
	for i, q := range list {
		if q.when != nil && !q.when(a) {
			continue
		}
		text, there := given[q.key]
		if there || quiet {
			if !there || text == "" {
				text = q.initial(a)
			}
			checked, err := q.check(a, text)
			if err != nil {
				wrong = append(wrong, fmt.Errorf("%s: %w", strings.ReplaceAll(q.key, "_", "-"), err))
			}
			a[q.key] = checked
			continue
		}
		if len(wrong) > 0 {
			break
		}
		if err := t.question(a, &q, i+1, len(list)); err != nil {
			return nil, err
		}
	}
	return a, errors.Join(wrong...)
}

// question asks until the answer is sound.
func (t Terminal) question(a Answers, q *question, n, of int) error {
	initial := q.initial(a)
	shown := initial
	if q.secret {
		shown = "the example's"
	}
	for {
		fmt.Fprintf(t.Out, "%2d/%d  %s\n       [%s] ", n, of, q.ask, shown)
		text, err := t.line(q.secret)
		if err != nil {
			return err
		}
		if text == "" {
			text = initial
		}
		checked, err := q.check(a, text)
		if err == nil {
			a[q.key] = checked
			return nil
		}
		fmt.Fprintf(t.Out, "       %v\n", err)
	}
}

// line reads one line and not a letter more: what follows may be a secret, which is read
// in another way.
func (t Terminal) line(secret bool) (string, error) {
	if secret && t.Secret != nil {
		text, err := t.Secret()
		fmt.Fprintln(t.Out)
		if errors.Is(err, io.EOF) {
			return "", ErrInputEnded
		}
		return strings.TrimSpace(text), err
	}
	var b strings.Builder
	one := make([]byte, 1)
	for b.Len() < 4096 {
		n, err := t.In.Read(one)
		if n == 1 && one[0] == '\n' {
			break
		}
		if n == 1 {
			b.WriteByte(one[0])
			continue
		}
		if errors.Is(err, io.EOF) {
			return "", ErrInputEnded
		}
		if err != nil {
			return "", fmt.Errorf("read the answer: %w", err)
		}
	}
	return strings.TrimSpace(b.String()), nil
}
