package book

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"sley/internal/trade/record"
)

// largest is the largest draft: 2,000 ends and 4,000 picks on 40 shafts, as interchange
// text inside JSON.
type largest struct {
	ends  []int
	picks [][]bool // shafts lifted
}

const shafts = 40

func largestDraft(r *rand.Rand) *largest {
	d := &largest{ends: make([]int, 2000), picks: make([][]bool, 4000)}
	for i := range d.ends {
		d.ends[i] = 1 + r.IntN(shafts)
	}
	for i := range d.picks {
		d.picks[i] = make([]bool, shafts)
		for s := range d.picks[i] {
			d.picks[i][s] = r.IntN(2) == 0
		}
	}
	return d
}

func (d *largest) body() []byte {
	var text strings.Builder
	text.WriteString("[THREADING]\n")
	for i, shaft := range d.ends {
		fmt.Fprintf(&text, "%d=%d\n", i+1, shaft)
	}
	text.WriteString("[LIFTPLAN]\n")
	for i, lift := range d.picks {
		fmt.Fprintf(&text, "%d=", i+1)
		for s, up := range lift {
			if up {
				fmt.Fprintf(&text, "%d,", s+1)
			}
		}
		text.WriteString("\n")
	}
	body, err := json.Marshal(map[string]string{"name": "the largest draft", "draft": text.String()})
	if err != nil {
		panic(err)
	}
	return body
}

// edit changes one cell, or one in ten times a stroke of 200.
func (d *largest) edit(r *rand.Rand) {
	cells := 1
	if r.IntN(10) == 0 {
		cells = 200
	}
	shaft := r.IntN(shafts)
	if r.IntN(3) == 0 {
		for i, at := 0, r.IntN(len(d.ends)); i < cells; i++ {
			d.ends[(at+i)%len(d.ends)] = 1 + (shaft+i)%shafts
		}
		return
	}
	for i, at := 0, r.IntN(len(d.picks)); i < cells; i++ {
		lift := d.picks[(at+i)%len(d.picks)]
		lift[shaft] = !lift[shaft]
	}
}

// editsVariable asks for another number of edits.
const editsVariable = "SLEY_EDITS"

// mostOfAnEdit is how much an edit of the largest draft may take, in bytes: 10,000 of them
// then take under 50 MB.
const mostOfAnEdit = 5000

// oneWhole is what a whole version takes at the most, in bytes: the newest may have come
// with the last edit.
const oneWhole = 100_000

func TestEditsOfTheLargestDraftAreSmall(t *testing.T) {
	oneAtATime(t)
	edits := 1000
	if testing.Short() {
		edits = 50
	}
	if text := os.Getenv(editsVariable); text != "" {
		edits = int(number(text))
	}
	path := filepath.Join(t.TempDir(), "book.sley")
	b := open(t, path)
	r := rand.New(rand.NewPCG(1, 2))
	d := largestDraft(r)
	id := add(t, b, record.Draft, "draft", string(d.body()))
	before := fileSize(t, b)
	began := time.Now()
	for n := 0; n < edits; {
		err := b.Write(t.Context(), func(w record.Writer) error {
			for range 50 {
				d.edit(r)
				n++
				v := record.Version{Document: id, Number: n + 1, State: n + 1, At: noon, Window: "window", Act: record.Edit, Body: d.body()}
				if err := w.Append(v, record.Card{Name: "draft", Words: "the largest draft"}); err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	took := time.Since(began)
	grown := fileSize(t, b) - before
	t.Logf("%d edits of a draft of %d bytes take %.1f MB, %d bytes each, in %.1f s", edits, len(d.body()), float64(grown)/1e6, grown/int64(edits), took.Seconds())
	if grown > int64(edits)*mostOfAnEdit+oneWhole {
		t.Errorf("%d edits take %d bytes", edits, grown)
	}
	if err := b.Check(t.Context()); err != nil {
		t.Error(err)
	}
}

// fileSize is the size of the file once the journal is in it, in bytes.
func fileSize(t testing.TB, b *Book) int64 {
	t.Helper()
	run(t, b.writer, "PRAGMA wal_checkpoint(TRUNCATE)")
	info, err := os.Stat(b.path)
	if err != nil {
		t.Fatal(err)
	}
	return info.Size()
}
