package book

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"sley/internal/edge/book/memory"
	"sley/internal/trade/record"
)

// The kills: a process that changes a book is killed, again and again, and after each the
// book is held against one in memory to which the same was done. What was answered must
// be there; what was in hand may be; nothing else.

func init() { children["writer"] = keepWriting }

const killsVariable = "SLEY_KILLS"

// fewKills is how many there are where nobody asked for a number.
const fewKills = 24

// lives is how many times one book is written to before a new one takes its place.
const lives = 8

// keepWriting does one numbered change after another, saying so before and after each,
// until it is killed.
func keepWriting(args []string) error {
	path := args[0]
	seed, n := number(args[1]), number(args[2])
	b, err := Open(context.Background(), Asked{Path: path, Now: at(noon), Create: true})
	if err != nil {
		return err
	}
	for ; ; n++ {
		if b, err = beside(b, path, rand.New(rand.NewPCG(seed+1, n))); err != nil {
			return err
		}
		say("try %d", n)
		if err := doChange(b, seed, n); err != nil {
			return err
		}
		say("done %d", n)
	}
}

func number(text string) uint64 {
	n, err := strconv.ParseUint(text, 10, 64)
	if err != nil {
		panic(err)
	}
	return n
}

// beside does now and then what changes nothing: closing and opening, a copy, a
// checkpoint, a reading that holds the journal.
func beside(b *Book, path string, r *rand.Rand) (*Book, error) {
	ctx := context.Background()
	switch r.IntN(60) {
	case 0:
		if err := b.Close(); err != nil {
			return nil, err
		}
		return Open(ctx, Asked{Path: path, Now: at(noon)})
	case 1:
		return b, b.Copy(ctx, filepath.Join(CopyFolder(path), fmt.Sprintf("day-on-2026-01-01-%d.sley", time.Now().UnixNano())))
	case 2:
		_, err := b.writer.ExecContext(ctx, "PRAGMA wal_checkpoint(TRUNCATE)")
		return b, err
	case 3:
		_, err := b.writer.ExecContext(ctx, "PRAGMA wal_checkpoint(PASSIVE)")
		return b, err
	}
	return b, nil
}

// A change of that number is the same whenever and on whatever book it is made.
func change(seed, n uint64) func(record.Writer) error {
	return func(w record.Writer) error {
		r := rand.New(rand.NewPCG(seed, n))
		if n < 3 || r.IntN(12) == 0 {
			return killAdd(w, r, n)
		}
		id := record.ID(1 + r.IntN(3))
		switch r.IntN(8) {
		case 0:
			e := record.Event{ID: fmt.Sprintf("event-%06d", n), Document: id, Topic: record.Log, What: record.Started, At: noon}
			f := record.Frozen{Warp: id, Version: 1, At: noon, Event: e.ID, Body: threads(500, n), Nodes: threads(100, n)}
			return errors.Join(w.Happen(e), w.Freeze(f))
		case 1:
			e := record.Event{ID: fmt.Sprintf("event-%06d", n), Document: id, Topic: record.Log, What: record.Noted, At: noon, Note: fmt.Sprint(n)}
			return w.Happen(e)
		case 2:
			return w.Set(fmt.Sprintf("setting %d", r.IntN(5)), fmt.Sprint(n))
		}
		return killAppend(w, r, id, n)
	}
}

func doChange(b record.Book, seed, n uint64) error {
	return b.Write(context.Background(), change(seed, n))
}

// size is that of a body, in threads: small, usual, and now and then the largest draft's.
func size(r *rand.Rand, n uint64) int {
	if n == 2 || r.IntN(40) == 0 {
		return 40000
	}
	return []int{20, 400}[n%2]
}

func killAdd(w record.Writer, r *rand.Rand, n uint64) error {
	d := record.Document{Kind: record.Draft, Mark: fmt.Sprintf("mark-%06d", n), Card: record.Card{Name: fmt.Sprint("draft ", n), Words: "linen"}}
	_, err := w.Add(d, record.Version{At: noon, Act: record.Add, Body: threads(size(r, n), r.Uint64())})
	return err
}

func killAppend(w record.Writer, r *rand.Rand, id record.ID, n uint64) error {
	d, err := w.Document(id)
	if err != nil {
		return err
	}
	v := record.Version{Document: id, Number: d.Version + 1, State: d.Version + 1, At: noon, Act: record.Edit, Body: d.Body}
	switch {
	case r.IntN(30) == 0:
		v.Body = threads(size(r, n), r.Uint64())
	case r.IntN(5) == 0:
		v.Act, v.State = record.Undo, 1+r.IntN(d.Version)
	default:
		v.Body[r.IntN(len(v.Body))] = byte('a' + r.IntN(26))
	}
	return w.Append(v, record.Card{Name: fmt.Sprint("draft ", n), Words: fmt.Sprint("linen ", n%7)})
}

// kills counts what all the killed did.
type kills struct{ kills, answered, inHand, lost atomic.Int64 }

func TestKills(t *testing.T) {
	n := fewKills
	if text := os.Getenv(killsVariable); text != "" {
		n = int(number(text))
	} else if testing.Short() {
		t.Skip("short")
	}
	var all kills
	var workers sync.WaitGroup
	for worker := range 2 {
		workers.Go(func() {
			for round := worker; round*lives < n && !t.Failed(); round += 2 {
				all.round(t, uint64(round), min(lives, n-round*lives))
			}
		})
	}
	workers.Wait()
	t.Logf("kills: %d, changes answered: %d, found though not answered: %d, lost: %d",
		all.kills.Load(), all.answered.Load(), all.inHand.Load(), all.lost.Load())
	if all.answered.Load() < all.kills.Load() {
		t.Error("too little was done between the kills for them to mean anything")
	}
}

// round kills the writers of one book.
func (k *kills) round(t *testing.T, round uint64, lives int) {
	dir, err := os.MkdirTemp("", "sley-kills-")
	if err != nil {
		t.Error(err)
		return
	}
	defer os.RemoveAll(dir)
	seed := uint64(time.Now().UnixNano()) // another each time; a failure says which
	path := filepath.Join(dir, "book.sley")
	twin, next := memory.New(), uint64(0)
	seen := map[string]bool{}
	r := rand.New(rand.NewPCG(seed, round))
	for range lives {
		answered, inHand, err := k.life(t, path, seed, next, r)
		if err == nil {
			if next, err = k.hold(t, path, twin, seed, next, answered, inHand, seen); err != nil {
				k.lost.Add(1)
			}
		}
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
			return
		}
	}
}

// life lets a writer live until it has answered some changes, and a moment longer; one in
// five dies young, while it opens the book. It gives how many changes were answered, and
// whether one was in hand.
func (k *kills) life(t *testing.T, path string, seed, next uint64, r *rand.Rand) (answered uint64, inHand bool, err error) {
	most, moment := uint64(r.IntN(12)), time.Duration(r.IntN(12_000))*time.Microsecond
	cmd := child(t, "writer", path, fmt.Sprint(seed), fmt.Sprint(next))
	out, err := cmd.StdoutPipe()
	if err != nil {
		return 0, false, err
	}
	if err := cmd.Start(); err != nil {
		return 0, false, err
	}
	kill := sync.OnceFunc(func() { time.AfterFunc(moment, func() { cmd.Process.Kill() }) })
	if r.IntN(5) == 0 {
		moment *= 10
		kill()
	}
	for lines := bufio.NewScanner(out); lines.Scan(); {
		word, _, _ := strings.Cut(lines.Text(), " ")
		if inHand = word == "try"; !inHand {
			answered++
		}
		if answered == most {
			kill()
		}
	}
	if cmd.Wait(); cmd.ProcessState.Exited() {
		return 0, false, fmt.Errorf("the writer ended by itself: %v", cmd.ProcessState)
	}
	k.kills.Add(1)
	k.answered.Add(int64(answered))
	return answered, inHand, nil
}

// hold does to the twin what was answered and compares; where they differ, what was in
// hand is there as well, or something is wrong.
func (k *kills) hold(t *testing.T, path string, twin *memory.Book, seed, next, answered uint64, inHand bool, seen map[string]bool) (uint64, error) {
	for range answered {
		if err := doChange(twin, seed, next); err != nil {
			return next, err
		}
		next++
	}
	b, err := Open(t.Context(), Asked{Path: path, Now: at(noon), Create: true})
	if err != nil {
		return next, fmt.Errorf("the book does not open: %w", err)
	}
	defer b.Close()
	if err := b.Check(t.Context()); err != nil {
		return next, err
	}
	if err := copiesWhole(t, path, seen); err != nil {
		return next, err
	}
	diff := differs(t, b, twin, seen)
	if diff == nil || !inHand {
		return next, diff
	}
	k.inHand.Add(1)
	if err := doChange(twin, seed, next); err != nil {
		return next, err
	}
	return next + 1, differs(t, b, twin, seen)
}

func copiesWhole(t *testing.T, path string, seen map[string]bool) error {
	for _, copied := range Copies(path, noon) {
		if seen[copied] {
			continue
		}
		if err := Check(t.Context(), copied); err != nil {
			return err
		}
		seen[copied] = true
	}
	return nil
}

// What the kills look for is found: a change that is missing, one too many, another body.
func TestTheKillsFindALoss(t *testing.T) {
	for name, spoil := range map[string]struct{ file, twin uint64 }{"one lost": {9, 10}, "one too many": {10, 9}, "another": {9, 0}} {
		b, twin := scratch(t), memory.New()
		for n := range spoil.file {
			if err := doChange(b, 1, n); err != nil {
				t.Fatal(err)
			}
		}
		for n := range max(spoil.twin, 9) {
			seed := uint64(1)
			if spoil.twin == 0 && n == 1 {
				seed = 2
			}
			if err := doChange(twin, seed, n); err != nil {
				t.Fatal(err)
			}
		}
		if differs(t, b, twin, map[string]bool{}) == nil {
			t.Errorf("%s: nothing was found", name)
		}
	}
}
