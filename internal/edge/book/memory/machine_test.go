package memory_test

import (
	"errors"
	"flag"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"sley/internal/edge/book/memory"
	"sley/internal/trade/qty"
	"sley/internal/trade/record"
	"sley/internal/trade/yarn"
)

// machine does the same to a book in a file and to one in memory.
type machine struct {
	t     testing.TB
	books [2]record.Book
}

// TestTheTwoBooksAreOne makes random changes, right ones and wrong ones, to both books:
// their answers are the same, and so is what they hold.
func TestTheTwoBooksAreOne(t *testing.T) {
	if testing.Short() {
		flag.Set("rapid.checks", "15")
	}
	dir := t.TempDir()
	n := 0
	rapid.Check(t, func(r *rapid.T) {
		n++
		file := openAt(t, filepath.Join(dir, fmt.Sprint(n), "book.sley"))
		defer file.Close()
		m := &machine{t: t, books: [2]record.Book{memory.New(), file}}
		r.Repeat(map[string]func(*rapid.T){
			"change": m.change,
			"list":   m.list,
			"":       m.compareCards,
		})
		if diff := same(dump(t, m.books[0]), dump(t, file)); diff != "" {
			r.Fatal(diff)
		}
		if err := file.Check(t.Context()); err != nil {
			r.Fatal(err)
		}
	})
}

// change writes one to four things at once; some writes fail, some are given up, and in
// some an error is not looked at.
func (m *machine) change(r *rapid.T) {
	var does []func(record.Writer) error
	for range rapid.IntRange(1, 4).Draw(r, "how many") {
		does = append(does, m.one(r))
	}
	givenUp := rapid.IntRange(0, 9).Draw(r, "given up") == 0
	careless := rapid.IntRange(0, 4).Draw(r, "careless") == 0
	var said [2]string
	for i, b := range m.books {
		var inside []string
		err := b.Write(m.t.Context(), func(w record.Writer) error {
			var failed []error
			for _, do := range does {
				err := do(w)
				inside = append(inside, codeOf(err))
				failed = append(failed, err)
			}
			if givenUp {
				return errOurs
			}
			if careless {
				return nil
			}
			return errors.Join(failed...)
		})
		said[i] = strings.Join(inside, ", ") + " -> " + codeOf(err)
	}
	if said[0] != said[1] {
		r.Fatalf("memory says %q, the file %q", said[0], said[1])
	}
}

// codeOf is what two errors must have alike.
func codeOf(err error) string {
	var t *record.Trouble
	switch {
	case err == nil:
		return "done"
	case errors.Is(err, errOurs):
		return "ours"
	case errors.As(err, &t) && t.Code == record.Unforeseen:
		return t.Code // the words of the schema are its own
	case errors.As(err, &t):
		return t.Code + " " + t.Found
	}
	return err.Error()
}

func (m *machine) one(r *rapid.T) func(record.Writer) error {
	id := record.ID(rapid.IntRange(1, 5).Draw(r, "document"))
	number := rapid.IntRange(1, 8).Draw(r, "number")
	switch rapid.IntRange(0, 11).Draw(r, "what") {
	case 0, 1:
		d, v := drawDocument(r), drawVersion(r)
		return func(w record.Writer) error { _, err := w.Add(d, v); return err }
	case 2, 3, 4:
		v, c := drawVersion(r), drawCard(r)
		v.Document, v.Number, v.State = id, number, number-rapid.SampledFrom([]int{0, 0, 0, 1, 2, -1}).Draw(r, "back")
		next := rapid.IntRange(0, 9).Draw(r, "next") > 0
		return func(w record.Writer) error {
			if d, err := w.Card(id); next && err == nil {
				v.State += d.Version + 1 - v.Number
				v.Number = d.Version + 1
			}
			return w.Append(v, c)
		}
	case 5:
		f := drawFacts(r)
		return func(w record.Writer) error { return w.PutFacts(id, f) }
	case 6:
		name := rapid.SampledFrom([]string{"", "a", "b", "naïve", strings.Repeat("n", 65)}).Draw(r, "setting")
		value := rapid.SampledFrom([]string{"", "x", "\x00y", "ÿ"}).Draw(r, "value")
		return func(w record.Writer) error { return w.Set(name, value) }
	case 10:
		p := drawPhotograph(r)
		return func(w record.Writer) error { return w.PutPhotograph(p) }
	case 11:
		d := drawDevice(r)
		return func(w record.Writer) error { return w.PutDevice(d) }
	case 7:
		f := record.Frozen{Warp: id, Version: number, At: noon, Event: drawEventID(r), Defaults: fmt.Sprint(number), Body: []byte("b"), Nodes: []byte("n")}
		return func(w record.Writer) error { return w.Freeze(f) }
	}
	e := drawEvent(r)
	return func(w record.Writer) error { return w.Happen(e) }
}

var someNames = []string{"towel", "Tücher", "tea towel", "scarf", "Ærø", "🧶", "x"}

func drawCard(r *rapid.T) record.Card {
	return record.Card{
		Name:  rapid.SampledFrom(append(someNames, "", strings.Repeat("ñ", 201))).Draw(r, "name"),
		Sort:  rapid.SliceOfN(rapid.ByteRange(0, 2), 0, 2).Draw(r, "sort"),
		Words: rapid.StringMatching(`[a-cäß *"\-]{0,9}`).Draw(r, "words"),
		Facts: drawFacts(r),
	}
}

func drawFacts(r *rapid.T) record.Facts {
	few := func(name string) int { return rapid.SampledFrom([]int{0, 1, 2, 3, 4, 5, 6, 7, -1}).Draw(r, name) }
	return record.Facts{
		Of: rapid.IntRange(0, 4).Draw(r, "of"), Engine: rapid.IntRange(1, 2).Draw(r, "engine"),
		Shafts: few("shafts"), Treadles: few("treadles"), LongestFloat: few("float"),
		Stage: rapid.SampledFrom([]string{"", record.Planned, record.Done}).Draw(r, "stage"),
		Weave: rapid.SampledFrom([]string{"", "plain", "twill"}).Draw(r, "weave"), Figures: []byte(rapid.SampledFrom([]string{"", "{}"}).Draw(r, "figures")),
	}
}

func drawDocument(r *rapid.T) record.Document {
	return record.Document{
		Kind: rapid.SampledFrom(append(record.Kinds(), record.Draft, record.Draft, "cat")).Draw(r, "kind"),
		Mark: "mark-" + rapid.StringMatching(`[a-z]{2,5}`).Draw(r, "mark"), Demo: rapid.Bool().Draw(r, "demo"), Card: drawCard(r),
	}
}

func drawVersion(r *rapid.T) record.Version {
	body := strings.Repeat(rapid.StringMatching(`[a-e]{0,6}`).Draw(r, "body"), rapid.SampledFrom([]int{1, 1, 3000}).Draw(r, "times"))
	return record.Version{
		At: noon.AddDate(0, 0, rapid.IntRange(-3, 3).Draw(r, "day")), Window: rapid.StringMatching(`w{0,3}`).Draw(r, "window"),
		Act: rapid.SampledFrom(append(record.Acts(), "burn")).Draw(r, "act"), Removed: rapid.IntRange(0, 3).Draw(r, "removed") == 0,
		Body: []byte(body),
	}
}

func drawEventID(r *rapid.T) string {
	return fmt.Sprintf("event-%02d", rapid.IntRange(0, 12).Draw(r, "event"))
}

func drawEvent(r *rapid.T) record.Event {
	topic := rapid.SampledFrom(append(record.Topics(), "cat")).Draw(r, "topic")
	e := record.Event{
		ID: drawEventID(r), Document: record.ID(rapid.IntRange(0, 4).Draw(r, "document")), Topic: topic,
		What: rapid.SampledFrom(append(topic.Whats(), "slept")).Draw(r, "what"), At: noon, Place: rapid.IntRange(-1, 3).Draw(r, "place"),
		From:   rapid.SampledFrom([]int{0, 0, 0, 1, 2, -1}).Draw(r, "from"),
		Amount: yarn.Amount{Mass: qty.Gram * qty.Mass(rapid.IntRange(-1, 2).Draw(r, "mass"))}, Note: rapid.String().Draw(r, "note"),
	}
	if rapid.IntRange(0, 3).Draw(r, "cancels") == 0 {
		e.Cancels = drawEventID(r)
	}
	if rapid.IntRange(0, 3).Draw(r, "of a warp") == 0 {
		e.Warp = record.ID(rapid.IntRange(1, 5).Draw(r, "warp"))
	}
	return e
}

func drawPhotograph(r *rapid.T) record.Photograph {
	size := func(name string) int { return rapid.SampledFrom([]int{1, 640, 65535, 0, 65536}).Draw(r, name) }
	return record.Photograph{
		Event: drawEventID(r), Kind: rapid.SampledFrom([]string{"image/jpeg", "image/png", "image/gif"}).Draw(r, "kind"),
		Wide: size("wide"), High: size("high"), Body: rapid.SliceOfN(rapid.Byte(), 0, 3).Draw(r, "body"),
	}
}

func drawDevice(r *rapid.T) record.Device {
	return record.Device{
		ID: drawEventID(r), Name: rapid.SampledFrom([]string{"tablet", "phone", ""}).Draw(r, "device"),
		Sum:  [32]byte{rapid.ByteRange(0, 3).Draw(r, "sum")},
		Made: noon.Add(time.Duration(rapid.IntRange(0, 2).Draw(r, "made")) * time.Hour), Seen: noon, Revoked: rapid.Bool().Draw(r, "revoked"),
	}
}

// list asks both books for the same.
func (m *machine) list(r *rapid.T) {
	few := func(name string) int { return rapid.IntRange(0, 6).Draw(r, name) }
	q := record.Query{
		Kind: rapid.SampledFrom(record.Kinds()).Draw(r, "kind"), Removed: rapid.Bool().Draw(r, "removed"),
		Words:      rapid.OneOf(rapid.SampledFrom(append(someNames, "tu", "tow")), rapid.String()).Draw(r, "words"),
		MostShafts: few("shafts"), MostTreadles: few("treadles"), MostFloat: few("float"),
		Weave: rapid.SampledFrom([]string{"", "", "plain"}).Draw(r, "weave"), Most: few("most"), AfterID: record.ID(few("after")),
		Stage: rapid.SampledFrom([]string{"", record.Done, record.InHand}).Draw(r, "stage"),
	}
	q.After = rapid.SampledFrom([][]byte{nil, {}, {1}, {2, 0}}).Draw(r, "after key")
	var docs [2][]record.Document
	var totals [2]int
	var stale [2][]record.ID
	for i, b := range m.books {
		read(m.t, b, func(in record.Reader) error {
			var err, failed error
			docs[i], totals[i], err = in.List(q)
			stale[i], failed = in.Stale(q.Kind, 1, 100)
			slices.Sort(stale[i])
			return errors.Join(err, failed)
		})
	}
	if diff := same(docs[0], docs[1]) + same(totals[0], totals[1]) + same(stale[0], stale[1]); diff != "" {
		r.Fatalf("%+v: %s", q, diff)
	}
}

func (m *machine) compareCards(r *rapid.T) {
	var cards [2][]record.Document
	var counts [2]record.Counts
	for i, b := range m.books {
		read(m.t, b, func(in record.Reader) error {
			var err, failed error
			cards[i], err = in.All()
			counts[i], failed = in.Counts()
			return errors.Join(err, failed)
		})
	}
	if diff := same(cards[0], cards[1]) + same(counts[0], counts[1]); diff != "" {
		r.Fatal(diff)
	}
}
