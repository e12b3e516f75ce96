package qty

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// reader walks through a person's text and remembers how far it has come.
type reader struct {
	text string
	pos  int // bytes read so far
}

// scan reads a leading quantity and gives what follows it, without leading
// space. After a fault the whole text is what follows.
func scan[T any](s string, read func(*reader) (T, *Fault)) (T, string, error) {
	r := &reader{text: s}
	v, f := read(r)
	if f != nil {
		var none T
		return none, s, f
	}
	r.space()
	return v, r.rest(), nil
}

// parse reads a text that is one quantity and nothing else.
func parse[T any](s, kind string, read func(*reader) (T, *Fault)) (T, error) {
	r := &reader{text: s}
	v, f := read(r)
	if f == nil {
		f = trailing(r, kind, read)
	}
	if f != nil {
		var none T
		return none, f
	}
	return v, nil
}

// trailing faults what stands after a quantity. When it begins like another
// one, such as the 6 of "5 ft 6", that one's own fault says more.
func trailing[T any](r *reader, kind string, read func(*reader) (T, *Fault)) *Fault {
	r.space()
	if r.pos == len(r.text) {
		return nil
	}
	from := r.pos
	if _, f := read(r); f != nil && f.Code != "number.missing" {
		return f
	}
	r.pos = len(r.text)
	return r.fault(kind+".trailing", from, nil)
}

// fault says that what was read since byte from is wrong.
func (r *reader) fault(code string, from int, args map[string]any) *Fault {
	return &Fault{
		Code: code,
		Read: strings.TrimRightFunc(r.text[from:r.pos], unicode.IsSpace),
		At:   utf8.RuneCountInString(r.text[:from]),
		Args: args,
	}
}

func (r *reader) rest() string { return r.text[r.pos:] }

// space passes over white space of any width, breaking or not.
func (r *reader) space() {
	r.pos = len(r.text) - len(strings.TrimLeftFunc(r.rest(), unicode.IsSpace))
}

// take passes over mark when it comes next.
func (r *reader) take(mark string) bool {
	if !strings.HasPrefix(r.rest(), mark) {
		return false
	}
	r.pos += len(mark)
	return true
}

// while passes over the characters that belong and gives them.
func (r *reader) while(belongs func(rune) bool) string {
	rest := r.rest()
	end := strings.IndexFunc(rest, func(c rune) bool { return !belongs(c) })
	if end < 0 {
		end = len(rest)
	}
	r.pos += end
	return rest[:end]
}

// word reads a run of letters, or one of the signs that stand for a word: the
// marks of feet and inches, per cent, a currency.
func (r *reader) word() string {
	if w := r.while(unicode.IsLetter); w != "" {
		return w
	}
	c, size := utf8.DecodeRuneInString(r.rest())
	if !strings.ContainsRune(`"″”'′’%`, c) && !unicode.Is(unicode.Sc, c) {
		return ""
	}
	r.pos += size
	return r.text[r.pos-size : r.pos]
}

// takeWord passes over space and the word when it comes next, in any case.
func (r *reader) takeWord(word string) bool {
	mark := r.pos
	r.space()
	if strings.EqualFold(r.word(), word) {
		return true
	}
	r.pos = mark
	return false
}

// per passes over a slash or the word per, with the space around it.
func (r *reader) per() bool {
	mark := r.pos
	r.space()
	if r.take("/") || r.takeWord("per") {
		r.space()
		return true
	}
	r.pos = mark
	return false
}
