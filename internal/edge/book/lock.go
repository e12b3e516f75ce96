package book

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"sync"
	"time"

	"sley/internal/trade/record"
)

// Owner is what the lock file says of the sley that has the book.
type Owner struct {
	PID     int       `json:"pid"`
	Host    string    `json:"host,omitempty"`    // the machine; Say fills it in
	Address string    `json:"address,omitempty"` // where its page is; empty: it serves none
	Token   string    `json:"token,omitempty"`   // what a request must carry
	Since   time.Time `json:"since"`
}

// Lock is the file beside a book that says whose it is. The system frees the lock when
// its process ends, however it ends; what the file says is left behind then.
type Lock struct {
	path    string
	file    *os.File
	turn    sync.Mutex
	me      said
	text    []byte // what the file held before
	left    said   // what that says, when it is a lock's
	unclean bool   // it held something: the sley before did not close the book
}

// said is what a lock file holds.
type said struct {
	Owner
	Journal bool `json:"journal,omitempty"` // the book has a journal, which must be there
}

// lockPath is the lock file of a book.
func lockPath(book string) string { return book + ".lock" }

// errHeld is what the system's locks say when another process has one.
var errHeld = errors.New("another process has the lock")

// mostLock is how long a lock file may be, in bytes: one of ours is far shorter.
const mostLock = 4096

// tries and between are how often, and how long apart, a lock is asked for: one who only
// looks whose a book is has the lock for a moment.
const (
	tries   = 5
	between = 20 * time.Millisecond
)

// acquire takes the lock of a book, or says who has it.
func acquire(book string, me Owner) (*Lock, error) {
	path := lockPath(book)
	file, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, lockTrouble(path, err)
	}
	err = lockFile(file)
	for i := 1; i < tries && errors.Is(err, errHeld); i++ {
		time.Sleep(between)
		err = lockFile(file)
	}
	text := readLock(file)
	if err != nil {
		file.Close()
		return nil, heldTrouble(book, path, text, err)
	}
	l := &Lock{path: path, file: file, text: text, left: read(text), unclean: len(text) > 0}
	if err := l.Say(me); err != nil {
		l.giveUp()
		return nil, err
	}
	return l, nil
}

// heldTrouble is that of a lock that was not had.
func heldTrouble(book, path string, text []byte, err error) error {
	if !errors.Is(err, errHeld) {
		return lockTrouble(path, err)
	}
	owner := read(text)
	return &record.Trouble{Code: record.InUse, Path: book, Address: owner.Address, PID: owner.PID}
}

func lockTrouble(path string, err error) error {
	code := record.Unreadable
	switch {
	case isReadOnly(err):
		code = record.ReadOnly
	case isFull(err):
		code = record.Full
	}
	return &record.Trouble{Code: code, Path: path, Err: err}
}

// isReadOnly reports whether the system lets nobody, or not us, write there.
func isReadOnly(err error) bool {
	return errors.Is(err, os.ErrPermission) || errors.Is(err, errReadOnlyFS)
}

// readLock reads what a lock file holds.
func readLock(file *os.File) []byte {
	text, err := io.ReadAll(io.NewSectionReader(file, 0, mostLock))
	if err != nil {
		return nil
	}
	return text
}

// read is what a lock file says; one that says nothing we know says nothing.
func read(text []byte) said {
	var s said
	if json.Unmarshal(text, &s) != nil {
		return said{}
	}
	return s
}

// Say writes into the lock file whose the book is.
func (l *Lock) Say(me Owner) error {
	if me.Host == "" {
		me.Host, _ = os.Hostname() // without a name it is left out
	}
	return l.change(func(s *said) { s.Owner = me })
}

// keepsJournal says that the journal is there, and must be when the book is opened next.
func (l *Lock) keepsJournal() error { return l.change(func(s *said) { s.Journal = true }) }

// closing says that the journal may be gone from now on.
func (l *Lock) closing() { l.change(func(s *said) { s.Journal = false }) }

func (l *Lock) change(how func(*said)) error {
	l.turn.Lock()
	defer l.turn.Unlock()
	how(&l.me)
	text, err := json.Marshal(l.me)
	if err != nil {
		return fmt.Errorf("say whose the book is: %w", err)
	}
	return l.write(append(text, '\n'))
}

// write puts a text into the file, which is never shorter meanwhile: who reads it then
// must not find that nobody has the book.
func (l *Lock) write(text []byte) error {
	if _, err := l.file.WriteAt(text, 0); err != nil {
		return lockTrouble(l.path, err)
	}
	if err := l.file.Truncate(int64(len(text))); err != nil {
		return lockTrouble(l.path, err)
	}
	return nil
}

// LeftBehind is what a sley that did not close the book left in its lock; nothing where
// the last one did, or where what is left says nothing.
func (l *Lock) LeftBehind() Owner { return l.left.Owner }

// release empties the lock file and frees the lock. The file stays: were it removed,
// two processes could each hold a lock on a file of that name.
func (l *Lock) release() {
	l.file.Truncate(0)
	freeLock(l.file)
	l.file.Close()
}

// giveUp frees the lock and leaves the file as it was found: a book that could not be
// opened was not closed either.
func (l *Lock) giveUp() {
	l.write(l.text)
	freeLock(l.file)
	l.file.Close()
}

// OwnerOf says who has a book now; none when nobody has.
func OwnerOf(book string) (Owner, bool) {
	file, err := os.OpenFile(lockPath(book), os.O_RDWR, 0)
	if err != nil {
		return Owner{}, false
	}
	defer file.Close()
	if err := lockFile(file); !errors.Is(err, errHeld) {
		freeLock(file)
		return Owner{}, false
	}
	return read(readLock(file)).Owner, true
}
