package web_test

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"reflect"
	"strconv"
	"testing"
	"time"

	"sley/internal/app"
	"sley/internal/engine/strokes"
	"sley/internal/face/present"
	"sley/internal/face/web/browsing"
	"sley/internal/trade/draft"
	"sley/internal/trade/record"
)

// Whatever is drawn in the page by mouse, keys and buttons, what it shows is what the server
// has, and what the engine makes of the same acts; undone it is what it was, and redone what
// it became. SLEY_GESTURES says how many gestures, SLEY_SEED which.
func TestTableEqualsTheEngine(t *testing.T) {
	t.Parallel()
	r := newReal(t)
	id := r.made("wind", "point-twill", nil)
	d := &drawer{Tab: openTable(t, r, fmt.Sprintf("/drafts/%d/table", id)), r: r, id: id}
	d.Size(1440, 2000)
	d.Do(tableSettled)
	d.Do(recorded)
	seed := numberOr(os.Getenv("SLEY_SEED"), 3)
	random := rand.New(rand.NewPCG(uint64(seed), 11))
	began := d.shown()
	d.engine = r.draftOf(id)
	for i := range numberOr(os.Getenv("SLEY_GESTURES"), 16) {
		what := d.gesture(random)
		d.Wait(saved)
		if made := d.made(); !reflect.DeepEqual(d.shown(), made) || !reflect.DeepEqual(d.listed(), made) {
			t.Fatalf("seed %d, gesture %d, %s: the page shows\n%v, the server has\n%v, and the engine makes\n%v", seed, i, what, d.shown(), d.listed(), made)
		}
	}
	ended, steps := d.shown(), r.table(id).Version-1
	if len(began.Threading) == 0 || steps < 3 || d.done < 3 || reflect.DeepEqual(began, ended) {
		t.Fatalf("seed %d: %d versions of %d acts came of all, from\n%v to\n%v", seed, steps, d.done, began, ended)
	}
	d.steps("Undo", steps, began)
	d.steps("Redo", steps, ended)
	d.Quiet(t, true) // what cannot be is refused, and the browser says so
}

const saved = "document.querySelector('.standing').innerText === 'saved'"

// recorded keeps the acts that the page asks for.
const recorded = `window.asked = []; const real = window.fetch; window.fetch = async (path, request) => {
	const answer = await real(path, request);
	if (String(path).includes("/table?") && request?.body && answer.ok) window.asked.push(JSON.stringify(JSON.parse(request.body).acts));
	return answer;
}`

func numberOr(text string, usual int) int {
	if n, err := strconv.Atoi(text); err == nil {
		return n
	}
	return usual
}

// draftOf is a draft of the book, as its table has it.
func (r *real) draftOf(id int) *draft.Draft {
	r.t.Helper()
	t, _, err := r.book.Table(r.t.Context(), record.ID(id), false)
	if err != nil {
		r.t.Fatal(err)
	}
	return t.Draft
}

// drawer draws on a table, and keeps what the engine makes of the same.
type drawer struct {
	*browsing.Tab
	r      *real
	id     int
	engine *draft.Draft
	done   int // acts that the engine has made
}

// lists are a draft as its table says it.
type lists struct {
	Threading             []int
	Ties, Treadling       []string
	WarpColours, WeftOnes []int
}

func (d *drawer) shown() (out lists) {
	of := "document.querySelector('.draft-table').shownOf"
	d.Read(&out, fmt.Sprintf("({Threading: %[1]s('threading'), Ties: %[1]s('ties'), Treadling: %[1]s('treadling'), WarpColours: %[1]s('warp-colours'), WeftOnes: %[1]s('weft-colours')})", of))
	return out
}

func listsOf(t present.TableJSON) lists {
	return lists{t.Threading, t.Ties, t.Treadling, t.WarpColours, t.WeftColours}
}

func (d *drawer) listed() lists { return listsOf(d.r.table(d.id)) }

// made is what the engine makes of what was asked since.
func (d *drawer) made() lists {
	d.r.t.Helper()
	var asked []string
	d.Read(&asked, "window.asked")
	for _, text := range asked[d.done:] {
		acts, list := app.ReadActs(json.RawMessage(text))
		if list.Failed() {
			d.r.t.Fatal(text, list.All())
		}
		for _, act := range acts {
			is, list := strokes.Do(d.engine, []strokes.Act{act.Act})
			if list.Failed() {
				d.r.t.Fatal(text, list.All())
			}
			d.engine = is
		}
	}
	d.done = len(asked)
	return listsOf(present.TableOf(&app.Table{Draft: d.engine}))
}

// gesture is any, and says which.
func (d *drawer) gesture(random *rand.Rand) string {
	now := d.r.table(d.id)
	end, pick := func() int { return random.IntN(min(len(now.Threading), 14)) }, func() int { return random.IntN(min(len(now.Treadling), 14)) }
	shaft, treadle := func() int { return 1 + random.IntN(now.Shafts) }, func() int { return 1 + random.IntN(max(now.Treadles, len(now.Ties))) }
	place := map[string]func() string{
		"threading":    func() string { return fmt.Sprintf("{part: 'threading', end: %d, shaft: %d}", end(), shaft()) },
		"ties":         func() string { return fmt.Sprintf("{part: 'ties', treadle: %d, shaft: %d}", treadle(), shaft()) },
		"treadling":    func() string { return fmt.Sprintf("{part: 'treadling', pick: %d, treadle: %d}", pick(), treadle()) },
		"drawdown":     func() string { return fmt.Sprintf("{part: 'drawdown', pick: %d, end: %d}", pick(), end()) },
		"warp-colours": func() string { return fmt.Sprintf("{part: 'warp-colours', end: %d}", end()) },
	}
	part := []string{"threading", "treadling", "ties", "drawdown", "warp-colours"}[random.IntN(5)]
	from, to := place[part](), place[part]()
	switch random.IntN(4) {
	case 0:
		d.Drag(spot(d.Tab, from))
		d.Press(strconv.Itoa(shaft()))
		return "a figure at " + from
	case 1:
		if part == "drawdown" {
			part, from, to = "threading", place["threading"](), place["threading"]()
		}
		deeds := []string{"Reverse", "Mirror", "One further up", "Move round", "One more before", "Take away"}
		if part == "warp-colours" {
			deeds = deeds[:4] // threads are put and taken where they are
		}
		does := deeds[random.IntN(len(deeds))]
		d.Click("Choose")
		d.Drag(spot(d.Tab, from), spot(d.Tab, to))
		d.Click(does)
		d.Click("Draw")
		return does + " from " + from + " to " + to
	}
	d.Drag(spot(d.Tab, from), spot(d.Tab, to))
	return "a stroke from " + from + " to " + to
}

// steps goes back, or on again, so often, to what is wanted then.
func (d *drawer) steps(way string, n int, want lists) {
	d.r.t.Helper()
	for range n {
		was := d.r.table(d.id).Version
		d.Click(way)
		for i := 0; i < 500 && d.r.table(d.id).Version == was; i++ {
			time.Sleep(10 * time.Millisecond)
		}
		d.Wait(saved)
	}
	if got := d.shown(); !reflect.DeepEqual(got, want) {
		d.r.t.Fatalf("%s %d times: %v, want %v", way, n, got, want)
	}
}
