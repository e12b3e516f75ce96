package book

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"sley/internal/trade/record"
)

func init() { children["holder"] = hold }

// hold opens a book, says so, and keeps it, changing it all the time.
func hold(args []string) error {
	b, err := Open(context.Background(), Asked{Path: args[0], Now: at(noon), Create: true})
	if err != nil {
		return err
	}
	if err := b.Lock().Say(Owner{PID: os.Getpid(), Address: "127.0.0.1:1234", Token: "t", Since: noon}); err != nil {
		return err
	}
	for n := uint64(0); ; n++ {
		if err := doChange(b, 1, n); err != nil {
			return err
		}
		if n == 3 { // from here on some of the book is in its file
			if _, err := b.writer.Exec("PRAGMA wal_checkpoint(PASSIVE)"); err != nil {
				return err
			}
		}
		say("done %d", n)
		time.Sleep(time.Millisecond)
	}
}

// held is a book that another process has.
func held(t *testing.T) (string, running) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "book.sley")
	other := start(t, child(t, "holder", path))
	t.Cleanup(func() { other.Process.Kill() })
	other.until(t, "done 5")
	go func() { // so that it is never kept from writing
		for other.lines.Scan() {
		}
	}()
	return path, other
}

func troubleIn(t *testing.T, err error, code string) *record.Trouble {
	t.Helper()
	var trouble *record.Trouble
	if !errors.As(err, &trouble) || trouble.Code != code {
		t.Fatalf("%v, not %s", err, code)
	}
	return trouble
}

func TestABookIsOneProcessesAtATime(t *testing.T) {
	path, other := held(t)
	_, err := Open(t.Context(), Asked{Path: path, Now: at(noon), Create: true})
	trouble := troubleIn(t, err, record.InUse)
	if trouble.Address != "127.0.0.1:1234" || trouble.PID != other.Process.Pid || trouble.Path != path {
		t.Errorf("%+v", trouble)
	}
	owner, ok := OwnerOf(path)
	if host, _ := os.Hostname(); !ok || owner.PID != other.Process.Pid || owner.Token != "t" || owner.Host != host {
		t.Errorf("%v, %+v", ok, owner)
	}
	if _, err := Restore(t.Context(), path, path, noon); !record.Is(err, record.InUse) {
		t.Errorf("restored while it is used: %v", err)
	}
	beside, err := Peek(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer beside.Close()
	for i := range 5 {
		copied := filepath.Join(t.TempDir(), fmt.Sprint(i))
		if err := beside.Copy(t.Context(), copied); err != nil {
			t.Fatal(err)
		}
		if err := Check(t.Context(), copied); err != nil {
			t.Error(err)
		}
	}
	if err := beside.Write(t.Context(), func(record.Writer) error { return nil }); !record.Is(err, record.ReadOnly) {
		t.Errorf("wrote to another's book: %v", err)
	}
	if err := beside.Check(t.Context()); err != nil {
		t.Error(err)
	}
	other.Process.Kill()
	other.Wait()
	if _, ok := OwnerOf(path); ok {
		t.Error("a process that was killed still has the book")
	}
	b := open(t, path)
	if b.Lock().LeftBehind().PID != other.Process.Pid {
		t.Errorf("left behind: %+v", b.Lock().LeftBehind())
	}
}

// One process cannot have a book twice either, by whatever name.
func TestABookHasOneLockWhateverItIsCalled(t *testing.T) {
	b := scratch(t)
	other := filepath.Join(t.TempDir(), "other.sley")
	if err := os.Symlink(b.Path(), other); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{b.Path(), other} {
		_, err := Open(t.Context(), Asked{Path: path, Now: at(noon), Create: true})
		if troubleIn(t, err, record.InUse).PID != os.Getpid() {
			t.Error(err)
		}
	}
}

// A lock file that nobody holds is no hindrance, whatever it says; but a book that was not
// closed is read when it is opened.
func TestStaleLocksAreNoHindrance(t *testing.T) {
	for name, test := range map[string]struct {
		text    string
		owner   Owner
		unclean bool
	}{
		"none":      {"", Owner{}, false},
		"killed":    {`{"pid":12345,"host":"here","since":"2026-03-01T12:00:00Z"}`, Owner{PID: 12345, Host: "here", Since: noon.AddDate(0, 0, -1)}, true},
		"another's": {`{"pid":1,"host":"another machine","address":"a","since":"0001-01-01T00:00:00Z"}`, Owner{PID: 1, Host: "another machine", Address: "a"}, true},
		"cut":       {`{"pid":12`, Owner{}, true},
		"garbage":   {"\x00\xff garbage", Owner{}, true},
		"large":     {strings.Repeat("x", 100_000), Owner{}, true},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "book.sley")
			filled(t, path).Close()
			if err := os.WriteFile(lockPath(path), []byte(test.text), 0o600); err != nil {
				t.Fatal(err)
			}
			b, err := Open(t.Context(), Asked{Path: path, Now: at(noon), NoCheck: true})
			if err != nil {
				t.Fatal(err)
			}
			if b.Lock().LeftBehind() != test.owner || b.toCheck(Asked{NoCheck: true}) != test.unclean {
				t.Errorf("%+v, unclean %v", b.Lock().LeftBehind(), b.lock.unclean)
			}
			if owner, ok := OwnerOf(path); !ok || owner.PID != os.Getpid() {
				t.Errorf("%v, %+v", ok, owner)
			}
			b.Close()
			b.Close()
			if text, err := os.ReadFile(lockPath(path)); len(text) > 0 || err != nil {
				t.Errorf("after closing the lock says %q, %v", text, err)
			}
		})
	}
}

// What a book that was not closed was left with stays said while it cannot be opened.
func TestALockIsLeftAsItWasFound(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	filled(t, path).Close()
	spoil(t, path, 1, []byte(strings.Repeat("spoilt! ", 512)))
	const left = `{"pid":12345,"since":"2026-03-01T12:00:00Z"}`
	if err := os.WriteFile(lockPath(path), []byte(left), 0o600); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		if _, err := Open(t.Context(), Asked{Path: path, Now: at(noon), NoCheck: true}); !record.Is(err, record.Damaged) {
			t.Error(err)
		}
		if text, err := os.ReadFile(lockPath(path)); string(text) != left {
			t.Errorf("the lock says %q, %v", text, err)
		}
	}
}

// While somebody looks whose a book is, another can open it.
func TestLookingDoesNotHinderOpening(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.sley")
	open(t, path).Close()
	ctx, stop := context.WithCancel(t.Context())
	looked := make(chan int)
	go func() {
		n := 0
		for ; ctx.Err() == nil; n++ {
			OwnerOf(path)
			time.Sleep(time.Millisecond)
		}
		looked <- n
	}()
	for range 20 {
		b, err := Open(t.Context(), Asked{Path: path, Now: at(noon), NoCheck: true})
		if err != nil {
			t.Fatal(err)
		}
		b.Close()
	}
	stop()
	if <-looked == 0 {
		t.Error("nobody looked")
	}
}

func TestAClosedBookIsClosed(t *testing.T) {
	b := scratch(t)
	b.Close()
	read := b.Read(t.Context(), func(record.Reader) error { return nil })
	write := b.Write(t.Context(), func(record.Writer) error { return nil })
	for i, err := range []error{read, write, b.Copy(t.Context(), b.Path()+"2"), b.Check(t.Context())} {
		if !record.Is(err, record.Closed) {
			t.Errorf("%d: %v", i, err)
		}
	}
}
