package book

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"time"

	"sley/internal/trade/record"
)

// Owner is what the lock file says of the sley that has the book.
type Owner struct {
	PID     int       `json:"pid"`
	Address string    `json:"address,omitempty"` // where its page is; empty: it serves none
	Token   string    `json:"token,omitempty"`   // what a request must carry
	Since   time.Time `json:"since"`
}

// Lock is the file beside a book that says whose it is. The system frees the lock when
// its process ends, however it ends; what the file says is left behind then.
type Lock struct {
	path string
	file *os.File
	left Owner // what an owner that was killed left behind
}

// lockPath is the lock file of a book.
func lockPath(book string) string { return book + ".lock" }

// errHeld is what the system's locks say when another process has one.
var errHeld = errors.New("another process has the lock")

// mostLock is how long a lock file may be, in bytes: one of ours is far shorter.
const mostLock = 4096

// acquire takes the lock of a book, or says who has it.
func acquire(book string, me Owner) (*Lock, error) {
	path := lockPath(book)
	file, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, lockTrouble(path, err)
	}
	if err := lockFile(file); err != nil {
		owner := readOwner(file)
		file.Close()
		if errors.Is(err, errHeld) {
			return nil, &record.Trouble{Code: record.InUse, Path: book, Address: owner.Address, PID: owner.PID}
		}
		return nil, lockTrouble(path, err)
	}
	l := &Lock{path: path, file: file, left: readOwner(file)}
	if err := l.Say(me); err != nil {
		l.release()
		return nil, err
	}
	return l, nil
}

func lockTrouble(path string, err error) error {
	code := record.Unreadable
	if errors.Is(err, os.ErrPermission) || errors.Is(err, errReadOnlyFS) {
		code = record.ReadOnly
	}
	return &record.Trouble{Code: code, Path: path, Err: err}
}

// readOwner reads what a lock file says; one that says nothing we know gives none.
func readOwner(file *os.File) Owner {
	var o Owner
	data, err := io.ReadAll(io.NewSectionReader(file, 0, mostLock))
	if err != nil || json.Unmarshal(data, &o) != nil {
		return Owner{}
	}
	return o
}

// Say writes into the lock file whose the book is.
func (l *Lock) Say(me Owner) error {
	text, err := json.Marshal(me)
	if err != nil {
		return fmt.Errorf("say whose the book is: %w", err)
	}
	if err := l.file.Truncate(0); err != nil {
		return lockTrouble(l.path, err)
	}
	if _, err := l.file.WriteAt(append(text, '\n'), 0); err != nil {
		return lockTrouble(l.path, err)
	}
	return nil
}

// release empties the lock file and frees the lock. The file stays: were it removed,
// two processes could each hold a lock on a file of that name.
func (l *Lock) release() {
	l.file.Truncate(0)
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
		return Owner{}, false
	}
	return readOwner(file), true
}
