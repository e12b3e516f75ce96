package app

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sley/internal/trade/near"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// ChangeDraft makes changes one after another, each by its name or as name=value. The
// error says which could not be made, and why.
func ChangeDraft(d *Drafted, names []string) (*Drafted, error) {
	out := Drafted{Draft: d.Draft, file: d.file}
	for _, text := range names {
		name, value, _ := strings.Cut(text, "=")
		at := slices.IndexFunc(changes, func(c Change) bool { return c.Name == name })
		if at < 0 {
			return nil, &unchanged{name, "", fmt.Errorf("there is no change %q; the changes are %s", name, changeList())}
		}
		c := changes[at]
		if (c.Takes == "") != (value == "") {
			return nil, &unchanged{text, c.usage(), fmt.Errorf("the change %s is written %s", name, c.usage())}
		}
		made, err := c.make(out.Draft, value)
		if err != nil {
			return nil, &unchanged{text, c.usage(), fmt.Errorf("the change %s cannot be made of this draft: %w (it is written %s)", text, err, c.usage())}
		}
		out.Draft = made
	}
	return &out, nil
}

// unchanged is a change that was not made: what was written, and how it is written, which
// is empty where there is no such change.
type unchanged struct {
	read, usage string
	error
}

// Unwrap gives why.
func (u *unchanged) Unwrap() error { return u.error }

func (u *unchanged) code() string {
	switch {
	case u.usage == "":
		return "change.unknown"
	case errors.Is(u.error, errLarge):
		return "change.large"
	case errors.Is(u.error, errTied):
		return "change.tied"
	}
	return "change.value"
}

// usage is how a change is written.
func (c Change) usage() string {
	if c.Takes == "" {
		return c.Name
	}
	return strconv.Quote(c.Name + "=" + c.Takes)
}

func changeNames() []string {
	var out []string
	for _, c := range changes {
		out = append(out, c.Name)
	}
	return out
}

func changeList() string { return strings.Join(changeNames(), ", ") }

// Rework makes changes of a draft on the shelf, one after another, each by its name or as
// name=value, as one new version that can be undone. Trouble: NotFound where e is of no
// draft. Problems, at changes[i]: change.unknown, change.value, change.large, change.tied,
// feet.ring, feet.twice, feet.many, feet.none.
func (s *Studio) Rework(ctx context.Context, e Edit, names []string) (Saved, error) {
	d, err := s.document(ctx, e.ID)
	if err == nil && d.Kind != record.Draft {
		err = &record.Trouble{Code: record.NotFound, Found: string(record.Draft)}
	}
	if err != nil {
		return Saved{}, err
	}
	return s.change(ctx, e, record.Edit, func(b *body, _ record.Kind) *problem.List { return b.rework(names) })
}

// rework makes changes of the draft of a body. What its text has besides is kept.
func (b *body) rework(names []string) *problem.List {
	if b.WIF == nil {
		return unread("wif", ErrNoDraft)
	}
	d, list := ReadDraft(Source{Name: interchangeName(b.WIF.Name), Text: []byte(b.WIF.Text)})
	if d == nil {
		return list
	}
	list = &problem.List{}
	for i, name := range names {
		made, err := ChangeDraft(d, []string{name})
		if err != nil {
			list.Append(notMade(i, err))
			continue // what else is wrong is said as well
		}
		d = made
	}
	if !list.Failed() {
		b.WIF = &text{b.WIF.Name, string(WriteDraft(d))}
	}
	return list
}

func notMade(i int, err error) *problem.List {
	list := &problem.List{}
	var why *unchanged
	if !errors.As(err, &why) {
		return unread("wif", err)
	}
	args := problem.Args{"usage": why.usage, "valid": changeNames(), "near": near.To(why.read, changeNames())}
	code := toldOf(err, args) // of feet, which have more to say
	if code == "" {
		code = why.code()
	}
	list.Fail(code, fmt.Sprintf("changes[%d]", i), why.read, args)
	return list
}
