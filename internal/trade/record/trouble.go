package record

import "errors"

// Trouble is why the book, or something in it, could not be had. The words for its
// code are kept in package present.
type Trouble struct {
	Code    string // one of the codes below
	Path    string // the file or folder
	Address string // of the sley that has the book
	PID     int    // and its process
	Found   string // what was found there: a version, a complaint of the file's
	Known   string // what this program knows
	Copy    string // the newest copy that is whole
	Err     error  // what the system said
}

// The codes of trouble.
const (
	InUse        = "book.in-use"
	Newer        = "book.newer"
	Older        = "book.older" // it was not brought to this version yet
	NotABook     = "book.not-a-book"
	Damaged      = "book.damaged"
	Full         = "book.full"
	ReadOnly     = "book.read-only"
	Missing      = "book.missing"
	Exists       = "book.exists"
	NoJournal    = "book.no-journal" // the folder cannot keep the journal: a network drive
	NotFound     = "book.not-found"  // a document, version or event
	Changed      = "book.changed"    // another wrote since
	Unreadable   = "book.unreadable" // the system refuses the file
	Unforeseen   = "book.unforeseen" // the file's own complaint, none of the above
	Closed       = "book.closed"
	FolderFailed = "book.folder" // the folder cannot be made or read
)

// TroubleCodes lists the codes.
func TroubleCodes() []string {
	return []string{
		InUse, Newer, Older, NotABook, Damaged, Full, ReadOnly, Missing, Exists, NoJournal,
		NotFound, Changed, Unreadable, Unforeseen, Closed, FolderFailed,
	}
}

func (t *Trouble) Error() string {
	text := t.Code
	if t.Path != "" {
		text += ": " + t.Path
	}
	if t.Found != "" {
		text += ": " + t.Found
	}
	if t.Err != nil {
		text += ": " + t.Err.Error()
	}
	return text
}

// Unwrap gives what the system said.
func (t *Trouble) Unwrap() error { return t.Err }

// Is reports whether err is trouble of that code.
func Is(err error, code string) bool {
	var t *Trouble
	return errors.As(err, &t) && t.Code == code
}
