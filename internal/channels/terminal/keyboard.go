package terminal

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
)

// Keyboard talks with a person. Greeting is shown first; prompt is false where nobody is
// typing. A line that begins with /photo sends the files that it names.
func Keyboard(r io.Reader, w io.Writer, greeting string, prompt bool, partner Partner) error {
	in := bufio.NewReader(r)
	k := keyboard{w: w, prompt: prompt}
	k.line(greeting)
	over := false
	for {
		k.ask()
		line, err := readLine(in)
		switch {
		case errors.Is(err, io.EOF):
			if prompt {
				k.line("")
			}
			return k.err
		case errors.Is(err, errTooLong):
			k.line("(" + err.Error() + "; it was not sent)")
			continue
		case err != nil:
			return fmt.Errorf("read the keyboard: %w", err)
		case strings.TrimSpace(line) == "":
			continue
		}
		m := typed(line)
		if missing := k.missing(m); missing != "" {
			k.line("(there is no file " + missing + "; it was not sent)")
			continue
		}
		answer, err := partner.Answer(m)
		if err != nil {
			return err
		}
		if !prompt {
			k.line("you:  " + line)
		}
		k.answer(answer)
		if answer.Over && !over {
			over = true
			k.line("(The talk is over. Ctrl-D shows the lead that staff would get; you can also go on.)")
		}
		if k.err != nil {
			return k.err
		}
	}
}

type keyboard struct {
	w      io.Writer
	prompt bool
	err    error
}

func (k *keyboard) line(text string) {
	if k.err == nil {
		_, k.err = fmt.Fprintln(k.w, text)
	}
}

func (k *keyboard) ask() {
	if k.prompt && k.err == nil {
		_, k.err = fmt.Fprint(k.w, "you:  ")
	}
}

func (k *keyboard) answer(a Answer) {
	if len(a.Say) == 0 {
		k.line("      (no answer)")
	}
	for _, say := range a.Say {
		k.line(Wrap("shop: ", say))
	}
	k.line("")
}

// typed is a line as a message.
func typed(line string) Message {
	words := strings.Fields(line)
	if words[0] != "/photo" {
		return Message{Text: line}
	}
	return Message{Photos: words[1:]}
}

// missing is the first of a message's photos that is no file, "" where all are.
func (k *keyboard) missing(m Message) string {
	for _, path := range m.Photos {
		if at, err := os.Stat(path); err != nil || at.IsDir() {
			return path
		}
	}
	return ""
}

// width is that of the oldest terminals, so that it fits any.
const width = 80

// Wrap breaks a text into lines that fit a terminal, the first with a label and the others
// below it.
func Wrap(label, text string) string {
	var out strings.Builder
	indent := strings.Repeat(" ", len([]rune(label)))
	for i, paragraph := range strings.Split(text, "\n") {
		lead := indent
		if i == 0 {
			lead = label
		} else {
			out.WriteByte('\n')
		}
		wrapParagraph(&out, lead, indent, paragraph)
	}
	return out.String()
}

func wrapParagraph(out *strings.Builder, lead, indent, text string) {
	out.WriteString(lead)
	at := len([]rune(lead))
	for i, word := range strings.Fields(text) {
		n := len([]rune(word))
		switch {
		case i == 0:
		case at+1+n > width:
			out.WriteString("\n" + indent)
			at = len(indent)
		default:
			out.WriteByte(' ')
			at++
		}
		out.WriteString(word)
		at += n
	}
}
