package app

import (
	"context"
	"strconv"
	"strings"
	"unicode/utf8"

	"sley/internal/trade/record"
)

// keepNamed adds a document in a change of its own. Where free is said, its name is one
// that no other document of its kind has.
func (s *Studio) keepNamed(ctx context.Context, f fresh, free bool) (Saved, error) {
	var id record.ID
	err := s.write(ctx, func(w record.Writer) (changed []Changed, err error) {
		if free {
			name, err := freeName(w, f.kind, f.body.name(f.kind))
			if err != nil {
				return nil, err
			}
			f.body.renameTo(f.kind, name)
		}
		id, changed, err = s.add(w, f)
		return changed, err
	})
	return Saved{ID: id, Version: 1, Problems: f.body.problems(f.kind)}, err
}

// renameTo calls a document of any kind something else.
func (b *body) renameTo(kind record.Kind, name string) {
	if kind == record.Warp {
		b.say("name", name)
		return
	}
	b.rename(kind, name)
}

// freeName is a name that no document of the kind has, in the book or removed from it:
// the one given, or that with the next number behind it.
func freeName(r record.Reader, kind record.Kind, name string) (string, error) {
	stem, n := numbered(name)
	for ; ; n++ {
		found, err := named(r, kind, name)
		if err != nil || len(found) == 0 {
			return name, err
		}
		number := " " + strconv.Itoa(n+1)
		for utf8.RuneCountInString(stem+number) > record.MostName {
			_, size := utf8.DecodeLastRuneInString(stem)
			stem = stem[:len(stem)-size]
		}
		name = stem + number
	}
}

// mostNumber is the largest number behind a name that is counted on; larger ones are
// years and the like.
const mostNumber = 999

// numbered parts a name from the number behind it; one without has the number 1.
func numbered(name string) (string, int) {
	at := strings.LastIndexByte(name, ' ')
	if at > 0 {
		if n, err := strconv.Atoi(name[at+1:]); err == nil && n >= 1 && n <= mostNumber {
			return strings.TrimSpace(name[:at]), n
		}
	}
	return name, 1
}
