package sheet

import (
	"errors"

	"sley/internal/app"
	"sley/internal/trade/draft"
)

// ErrTooLarge is that a draft has more crossings than can be drawn.
var ErrTooLarge = errors.New("the draft has more crossings than can be drawn")

// UsualDPI is how many dots to the inch a PNG has when nothing else is said.
const UsualDPI = 150

// DraftFiles draws a draft, with its repeat framed unless one was said: a PDF on paper,
// which is A4 unless said; SVG and PNG as one picture, or where paper was said a file for
// each page. The error is ErrTooLarge, or that a page cannot be made.
func DraftFiles(d *app.Drafted, look DraftLook, form app.Form, dpi int) ([][]byte, error) {
	if look.Paper == "" && form == app.PDF {
		look.Paper = PaperNames()[0]
	}
	if look.RepeatEnds == 0 {
		look.RepeatEnds, look.RepeatPicks = d.Repeat()
	}
	pages, ok := DrawDraft(d.Draft, look)
	if !ok {
		return nil, ErrTooLarge
	}
	return app.SheetFiles(pages, form, dpi)
}

// MadeLook is how a weave of the catalogue is drawn: one repeat is the whole of it, and
// colours show where they make it.
func MadeLook(d *app.Drafted) DraftLook {
	look := DraftLook{RepeatEnds: d.Draft.Ends(), RepeatPicks: d.Draft.Picks()}
	if d.Coloured() {
		look.Cells = "both"
	}
	return look
}

// The least and the most threads that a sample of a weave shows, each way.
const (
	leastSample = 16
	mostSample  = 60
)

// WeaveSample draws a weave of the catalogue to be chosen by, as an SVG: several repeats of
// a small one, the first framed, and of a large one the beginning.
func WeaveSample(d *app.Drafted) ([]byte, error) {
	look := MadeLook(d)
	shown := &app.Drafted{Draft: sample(d.Draft)}
	look.RepeatEnds, look.RepeatPicks = min(look.RepeatEnds, mostSample), min(look.RepeatPicks, mostSample)
	files, err := DraftFiles(shown, look, app.SVG, 0)
	if err != nil {
		return nil, err
	}
	return files[0], nil
}

// sample is a draft over and over until it is large enough, or its beginning.
func sample(d *draft.Draft) *draft.Draft {
	times := func(n int) int { return (leastSample + n - 1) / n }
	if n := d.Ends(); n > mostSample {
		d = d.DeleteEnds(mostSample, n-mostSample)
	} else if n < leastSample {
		d = d.RepeatEnds(times(n))
	}
	if n := d.Picks(); n > mostSample {
		d = d.DeletePicks(mostSample, n-mostSample)
	} else if n < leastSample {
		d = d.RepeatPicks(times(n))
	}
	return d
}
