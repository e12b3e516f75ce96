package present

import (
	"errors"
	"fmt"
	"strings"

	"sley/internal/trade/record"
)

// Trouble says why the book, or something in it, could not be had, and what to do; both
// in lower case without a full stop. An error that is no trouble is said as it says
// itself, and nothing is known to do.
func Trouble(err error) (says, do string) {
	var t *record.Trouble
	if !errors.As(err, &t) {
		return legible(err.Error()), ""
	}
	w, ok := troubleWords[t.Code]
	if !ok {
		return legible(t.Error()), ""
	}
	known := partsOf(t)
	says = filled(w.wrong, known)
	if w.why != "" {
		says += ": " + w.why
	}
	return says, filled(w.fix, known)
}

// partsOf gives what a trouble knows, by the names that the words have for it.
func partsOf(t *record.Trouble) map[string]string {
	known := map[string]string{"path": t.Path, "address": t.Address, "found": t.Found, "known": t.Known, "copy": t.Copy}
	if t.PID != 0 {
		known["pid"] = fmt.Sprint(t.PID)
	}
	if t.Err != nil {
		known["err"] = t.Err.Error()
	}
	for name, value := range known {
		known[name] = legible(value)
	}
	return known
}

// filled puts what is known into words. A stretch between « and » is left out where
// something of it is not known.
func filled(text string, known map[string]string) string {
	var b strings.Builder
	for text != "" {
		before, rest, _ := strings.Cut(text, "«")
		inner, after, _ := strings.Cut(rest, "»")
		all, _ := filledAll(before, known)
		b.WriteString(all)
		if said, ok := filledAll(inner, known); ok {
			b.WriteString(said)
		}
		text = after
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// filledAll puts what is known into words, and reports whether all of it was.
func filledAll(text string, known map[string]string) (string, bool) {
	complete := true
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(text, "{")
		b.WriteString(before)
		if !found {
			return b.String(), complete
		}
		name, after, _ := strings.Cut(rest, "}")
		complete = complete && known[name] != ""
		b.WriteString(known[name])
		text = after
	}
}
