package book

import (
	"errors"

	"modernc.org/sqlite"
	lib "modernc.org/sqlite/lib"

	"sley/internal/trade/record"
)

// troubleOf says what a failure means to the weaver; what is trouble already, and what
// did not come from the file, it gives back.
func troubleOf(path string, err error) error {
	var t *record.Trouble
	var s *sqlite.Error
	switch {
	case err == nil || errors.As(err, &t):
		return err
	case errors.As(err, &s):
		return &record.Trouble{Code: codeOf(s.Code()), Path: path, Found: s.Error(), Err: err}
	}
	return err
}

// halfWritten reports whether a file waits for something that began to be taken back.
func halfWritten(err error) bool {
	var s *sqlite.Error
	return errors.As(err, &s) && (s.Code() == lib.SQLITE_READONLY_ROLLBACK || s.Code() == lib.SQLITE_READONLY_RECOVERY)
}

// journalTrouble is troubleOf where a file is opened that may be read and written: what
// cannot be opened, or not written, is what SQLite keeps beside it.
func journalTrouble(path string, err error) error {
	var s *sqlite.Error
	if errors.As(err, &s) && ofJournal(s.Code()) && mayUse(path) {
		return &record.Trouble{Code: record.NoJournal, Path: path, Found: s.Error(), Err: err}
	}
	return troubleOf(path, err)
}

// ofJournal reports whether a code may be that of a journal which cannot be had.
func ofJournal(code int) bool {
	switch code & 0xff {
	case lib.SQLITE_CANTOPEN, lib.SQLITE_READONLY, lib.SQLITE_PROTOCOL:
		return true
	}
	return code == lib.SQLITE_IOERR_DELETE || codeOf(code) == record.NoJournal
}

// codeOf is the trouble that a code of SQLite's is. Extended codes hold the plain one in
// their last byte.
func codeOf(code int) string {
	switch code {
	case lib.SQLITE_IOERR_SHORT_READ, lib.SQLITE_CORRUPT_INDEX, lib.SQLITE_IOERR_CORRUPTFS:
		return record.Damaged
	case lib.SQLITE_IOERR_WRITE, lib.SQLITE_IOERR_FSYNC, lib.SQLITE_IOERR_TRUNCATE, lib.SQLITE_IOERR_SHMSIZE:
		return record.Full // or failing: either way nothing more can be written
	case lib.SQLITE_IOERR_SHMOPEN, lib.SQLITE_IOERR_SHMMAP, lib.SQLITE_IOERR_SHMLOCK, lib.SQLITE_IOERR_LOCK:
		return record.NoJournal // it is shared memory and locks that network drives lack
	}
	switch code & 0xff {
	case lib.SQLITE_FULL:
		return record.Full
	case lib.SQLITE_CORRUPT:
		return record.Damaged
	case lib.SQLITE_NOTADB:
		return record.NotABook
	case lib.SQLITE_READONLY, lib.SQLITE_PERM:
		return record.ReadOnly
	case lib.SQLITE_CANTOPEN, lib.SQLITE_AUTH:
		return record.Unreadable
	case lib.SQLITE_BUSY, lib.SQLITE_LOCKED:
		return record.InUse
	}
	return record.Unforeseen
}
