package order

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"
)

// shape is what a token looks like.
type shape int

const (
	end     shape = iota
	number        // 12
	word          // blue, x, x3, mirrored
	opening       // (
	closing       // )
	comma         // ,
	dash          // - or –
	cross         // ×
	joint         // +
	junk          // anything else
)

// token is a word, number or mark of an order's text.
type token struct {
	shape shape
	text  string
	value int // of a number, at most 2³¹ - 1
	at    int // characters into the text
	pos   int // bytes into the text
}

var marks = map[rune]shape{'(': opening, ')': closing, ',': comma, '-': dash, '–': dash, '×': cross, '+': joint}

// lexer cuts a text into tokens.
type lexer struct {
	text string
	pos  int // bytes
	at   int // characters
}

// next gives the next token; at the end of the text, end for ever.
func (l *lexer) next() token {
	l.take(unicode.IsSpace)
	t := token{at: l.at, pos: l.pos}
	r, _ := utf8.DecodeRuneInString(l.text[l.pos:])
	switch mark, isMark := marks[r]; {
	case l.pos == len(l.text):
	case isMark:
		t.shape, t.text = mark, l.jump(l.pos+utf8.RuneLen(r))
	case isDigit(r):
		t.shape, t.text = number, l.take(isDigit)
		t.value = value(t.text)
	case unicode.IsLetter(r):
		t.shape, t.text = word, l.take(inName)
	default:
		t.shape, t.text = junk, l.take(isJunk)
	}
	return t
}

// take passes over the characters that are so.
func (l *lexer) take(so func(rune) bool) string {
	n := strings.IndexFunc(l.text[l.pos:], func(r rune) bool { return !so(r) })
	if n < 0 {
		n = len(l.text) - l.pos
	}
	return l.jump(l.pos + n)
}

// jump goes on to pos and gives what lies between.
func (l *lexer) jump(pos int) string {
	passed := l.text[l.pos:pos]
	l.at += utf8.RuneCountInString(passed)
	l.pos = pos
	return passed
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// inName lets combining marks follow their letters.
func inName(r rune) bool {
	return unicode.In(r, unicode.L, unicode.M, unicode.Nd) || r == '-' || r == '_'
}

func isJunk(r rune) bool {
	_, isMark := marks[r]
	return !isMark && !unicode.IsSpace(r) && !isDigit(r) && !unicode.IsLetter(r)
}

// value reads digits, stopping at 2³¹ - 1.
func value(digits string) int {
	n := int64(0)
	for _, d := range digits {
		n = min(n*10+int64(d-'0'), math.MaxInt32)
	}
	return int(n)
}

// is reports whether t is the keyword, in capitals or not.
func (t token) is(keyword string) bool {
	return t.shape == word && strings.EqualFold(t.text, keyword)
}

// isTimes reports whether t begins "x count": x, ×, x3, or the star that stands
// for it elsewhere.
func (t token) isTimes() bool {
	return t.shape == cross || t.text == "*" || t.shape == word && isTimesWord(t.text)
}

func isTimesWord(text string) bool {
	return (text[0] == 'x' || text[0] == 'X') && strings.TrimLeft(text[1:], "0123456789") == ""
}

// reserved reports whether t is a word that cannot be a name.
func (t token) reserved() bool {
	return t.is("at") || t.is("on") || t.is("mirrored") || t.isTimes()
}

// ValidName reports whether an order can call a yarn or a group by that name.
func ValidName(name string) bool {
	l := lexer{text: name}
	t := l.next()
	return t.shape == word && t.text == name && !t.reserved()
}
