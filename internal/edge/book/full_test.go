package book

import (
	"testing"

	"sley/internal/edge/book/memory"
	"sley/internal/trade/record"
)

// fillUp changes a book until there is no room for more, sees that all that was answered
// is there, makes room and goes on.
func fillUp(t *testing.T, b *Book, room func()) {
	t.Helper()
	twin, n := memory.New(), uint64(0)
	write := func() error {
		err := doChange(b, 3, n)
		if err != nil {
			return err
		}
		n++
		return doChange(twin, 3, n-1)
	}
	var err error
	for err == nil && n < 3000 {
		err = write()
	}
	if !record.Is(err, record.Full) {
		t.Fatalf("after %d changes: %v", n, err)
	}
	for range 3 { // again and again
		if err := write(); err != nil && !record.Is(err, record.Full) {
			t.Errorf("after %d changes: %v", n, err)
		}
	}
	if diff := differs(t, b, twin, map[string]bool{}); diff != nil {
		t.Errorf("full after %d changes: %v", n, diff)
	}
	t.Logf("full after %d changes", n)
	room()
	for range 20 {
		if err := write(); err != nil {
			t.Fatalf("with room again: %v", err)
		}
	}
	if diff := differs(t, b, twin, map[string]bool{}); diff != nil {
		t.Errorf("after %d changes: %v", n, diff)
	}
	if err := b.Check(t.Context()); err != nil {
		t.Error(err)
	}
}
