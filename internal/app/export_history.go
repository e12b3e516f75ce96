package app

import (
	"slices"

	"sley/internal/trade/record"
)

func (x *exporting) history(d record.Document, file string) error {
	var versions []record.Version
	for before := 0; before != 1; {
		page, err := x.r.Versions(d.ID, before, pageOfHistory)
		if err != nil {
			return err
		}
		if len(page) == 0 {
			break
		}
		versions = append(versions, page...)
		before = page[len(page)-1].Number
	}
	slices.Reverse(versions)
	var out []told
	var last string
	for _, v := range versions {
		data, err := x.r.Body(d.ID, v.Number)
		if err != nil {
			return err
		}
		out = append(out, tell(v, last, string(data)))
		last = string(data)
	}
	return x.json(file, out)
}

// tell writes a version against the one before.
func tell(v record.Version, last, now string) told {
	t := told{Number: v.Number, At: v.At, Window: v.Window, Act: v.Act, State: v.State, Removed: v.Removed}
	if v.State < v.Number {
		return t
	}
	for t.Begins < min(len(last), len(now)) && last[t.Begins] == now[t.Begins] {
		t.Begins++
	}
	for t.Ends < min(len(last), len(now))-t.Begins && last[len(last)-1-t.Ends] == now[len(now)-1-t.Ends] {
		t.Ends++
	}
	t.Begins, t.Ends = wholeLetters(now, t.Begins, t.Ends)
	between := now[t.Begins : len(now)-t.Ends]
	if v.Number == 1 || len(between) > len(now)/2 {
		t.Whole, t.Begins, t.Ends = &now, 0, 0
		return t
	}
	t.Between = &between
	return t
}

// wholeLetters moves both cuts so that none goes through a letter.
func wholeLetters(text string, begins, ends int) (int, int) {
	for begins > 0 && begins < len(text) && text[begins]&0xC0 == 0x80 {
		begins--
	}
	for ends > 0 && text[len(text)-ends]&0xC0 == 0x80 {
		ends--
	}
	return begins, ends
}
