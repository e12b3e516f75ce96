package problem

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Step is one step of a path: by a key into a table or, where Item is set, by
// an index into a list. The first item has the index 0.
type Step struct {
	Key   string
	Index int
	Item  bool
}

// Path is the way from the top of a plan to one of its values, as
// pieces[2].width. Keys are joined by full stops. A key that is empty, begins or
// ends with a space, or holds a full stop, a bracket, a quote, a backslash, =,
// or a character that does not print stands in quotes, written as a text of
// TOML or JSON is: yarns."a.b".count.
type Path []Step

// PathFault is why a text is no path: what was read at character At, counted
// from 0, which cannot stand there.
type PathFault struct {
	Text, Read string
	At         int
}

// Error says so for the log of a program.
func (f *PathFault) Error() string {
	return fmt.Sprintf("%q is no path: %q at character %d", f.Text, f.Read, f.At)
}

// String writes the path, so that ParsePath gives it again.
func (p Path) String() string {
	text := ""
	for _, s := range p {
		if s.Item {
			text += "[" + strconv.Itoa(s.Index) + "]"
			continue
		}
		text = JoinPath(text, s.Key)
	}
	return text
}

// JoinPath writes the path of a key below a path, with quotes where it needs
// them.
func JoinPath(above, key string) string {
	if !plainKey(key) {
		key = Quote(key)
	}
	if above == "" {
		return key
	}
	return above + "." + key
}

// plainKey reports whether a key may stand in a path without quotes.
func plainKey(key string) bool {
	if key == "" || key[0] == ' ' || key[len(key)-1] == ' ' {
		return false
	}
	for _, r := range key {
		if !plainRune(r) {
			return false
		}
	}
	return true
}

func plainRune(r rune) bool {
	return !strings.ContainsRune(`.[]"\=`, r) && unicode.IsPrint(r) && r != utf8.RuneError
}

// ParsePath reads a path; an empty text is the path to the top. The error is a
// *PathFault, and the steps before the fault are given with it.
func ParsePath(text string) (Path, error) {
	r := pathReader{text: text}
	var p Path
	for r.rest() != "" {
		var s Step
		var ok bool
		switch {
		case r.rest()[0] == '[' && len(p) > 0:
			s, ok = r.index()
		case len(p) == 0, r.skip("."):
			s.Key, ok = r.key()
		}
		if !ok {
			return p, r.fault()
		}
		p = append(p, s)
	}
	return p, nil
}

// pathReader reads a path from its byte at on.
type pathReader struct {
	text string
	at   int
}

func (r *pathReader) rest() string { return r.text[r.at:] }

func (r *pathReader) skip(what string) bool {
	ok := strings.HasPrefix(r.rest(), what)
	if ok {
		r.at += len(what)
	}
	return ok
}

// fault gives the character that cannot stand where the reading stopped.
func (r *pathReader) fault() *PathFault {
	_, size := utf8.DecodeRuneInString(r.rest())
	return &PathFault{Text: r.text, Read: r.rest()[:size], At: utf8.RuneCountInString(r.text[:r.at])}
}

// mostDigits keeps an index within what any list holds.
const mostDigits = 7

func (r *pathReader) index() (Step, bool) {
	r.at++
	digits := r.rest()[:len(r.rest())-len(strings.TrimLeft(r.rest(), "0123456789"))]
	if digits == "" || len(digits) > mostDigits || len(digits) > 1 && digits[0] == '0' {
		return Step{}, false
	}
	i, err := strconv.Atoi(digits)
	r.at += len(digits)
	return Step{Index: i, Item: true}, err == nil && r.skip("]")
}

func (r *pathReader) key() (string, bool) {
	if strings.HasPrefix(r.rest(), `"`) {
		return r.quoted()
	}
	key := r.rest()
	if end := strings.IndexAny(key, ".["); end >= 0 {
		key = key[:end]
	}
	if bad := strings.IndexFunc(key, func(c rune) bool { return !plainRune(c) }); bad >= 0 {
		r.at += bad
		return "", false
	}
	if !plainKey(key) {
		return "", false
	}
	r.at += len(key)
	return key, true
}

func (r *pathReader) quoted() (string, bool) {
	raw := r.rest()
	for end := 1; end < len(raw); end++ {
		switch raw[end] {
		case '\\':
			end++
		case '"':
			key, ok := Unquote(raw[:end+1])
			if ok {
				r.at += end + 1
			}
			return key, ok
		}
	}
	return "", false
}
