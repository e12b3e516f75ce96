package app

import (
	"context"
	"crypto/rand"
	"io"
	"sync"
	"time"

	"sley/internal/trade/record"
)

// Studio is a weaver's book with all that she can do in it. Its methods may be called
// from many goroutines. What is wrong with what she wrote is a problem; what could not
// be done is an error, *record.Trouble where the book is at fault.
type Studio struct {
	book    record.Book
	now     func() time.Time
	newID   func() string
	program string
	random  io.Reader // of codes and tokens
	live    watchers
	pairs   pairing
	looms   looms

	darkroom sync.Mutex // one photograph is developed at a time
}

// NewStudio opens a studio on a book. now is the clock, newID gives a random text of 8
// to 64 characters each time, program is the version that plans are frozen with. Codes and
// tokens are drawn from what the system has for secrets.
func NewStudio(book record.Book, now func() time.Time, newID func() string, program string) *Studio {
	return &Studio{book: book, now: now, newID: newID, program: program, random: rand.Reader}
}

// Program is the version of the program that the studio says.
func (s *Studio) Program() string { return s.program }

// read sees the book at one moment.
func (s *Studio) read(ctx context.Context, do func(record.Reader) error) error {
	return s.book.Read(ctx, do)
}

// write changes the book, and tells the open windows once the change is kept. do may
// not be run twice.
func (s *Studio) write(ctx context.Context, do func(record.Writer) ([]Changed, error)) error {
	var changed []Changed
	err := s.book.Write(ctx, func(w record.Writer) (err error) {
		changed, err = do(w)
		return err
	})
	if err != nil {
		return err
	}
	s.live.tell(changed)
	return nil
}

// moment is the time that is written beside what happens: to the millisecond.
func (s *Studio) moment() time.Time { return s.now().UTC().Truncate(time.Millisecond) }
