package app

import (
	"context"
	"errors"
	"io"
	"time"

	"sley/internal/edge/book"
	"sley/internal/trade/record"
)

// BookAsked is how a book is to be opened.
type BookAsked struct {
	Path    string // the file
	Now     func() time.Time
	NewID   func() string // a random text of 8 to 64 characters each time
	Program string        // the version of the program
	Demo    Demo          // what a new book begins with
	Create  bool          // make the book, with the demo, when there is none
	Random  io.Reader     // codes and tokens are drawn from it; nil: what the system has for secrets
}

// OpenBook is a book that this process holds, with its studio.
type OpenBook struct {
	*Studio
	file *book.Book
}

// Open opens a book, or makes it and fills it with the demo. Nobody else can open it to
// change it before Close. Trouble: see record.TroubleCodes.
func Open(ctx context.Context, asked BookAsked) (*OpenBook, error) {
	file, err := book.Open(ctx, book.Asked{Path: asked.Path, Now: asked.Now, Create: asked.Create})
	if err != nil {
		return nil, err
	}
	o := &OpenBook{NewStudio(file, asked.Now, asked.NewID, asked.Program), file}
	if asked.Random != nil {
		o.random = asked.Random
	}
	if file.Fresh() && len(asked.Demo.Warps) > 0 {
		if err := o.FillDemo(ctx, asked.Demo); err != nil {
			return nil, errors.Join(err, o.Close())
		}
	}
	return o, nil
}

// Peek opens a book that another process may hold, only to read it: to copy it, and to
// export it. Its studio cannot change anything.
func Peek(ctx context.Context, asked BookAsked) (*OpenBook, error) {
	file, err := book.Peek(ctx, asked.Path)
	if err != nil {
		return nil, err
	}
	return &OpenBook{NewStudio(file, asked.Now, asked.NewID, asked.Program), file}, nil
}

// Path is the file of the book.
func (o *OpenBook) Path() string { return o.file.Path() }

// Fresh reports whether the book was made when it was opened.
func (o *OpenBook) Fresh() bool { return o.file.Fresh() }

// Copy writes a whole copy of the book as it stands to a file that is not there yet.
func (o *OpenBook) Copy(ctx context.Context, path string) error { return o.file.Copy(ctx, path) }

// Check reads all of the book and says what is wrong with its file: Trouble Damaged.
func (o *OpenBook) Check(ctx context.Context) error { return o.file.Check(ctx) }

// KeepToday makes the copy of the day, where it is not there, and gives its place; the
// oldest copies of days are let go.
func (o *OpenBook) KeepToday(ctx context.Context) (string, error) { return o.file.KeepToday(ctx) }

// Serving writes beside the book where its page is and what a request must carry, so
// that a second sley finds it.
func (o *OpenBook) Serving(address, token string) error {
	return o.file.Serving(address, token)
}

// LeftToken is the token of a page whose sley was killed: open windows still carry it.
func (o *OpenBook) LeftToken() string {
	if o.file.Lock() == nil {
		return ""
	}
	return o.file.Lock().LeftBehind().Token
}

// Close lets go of the book.
func (o *OpenBook) Close() error { return o.file.Close() }

// UsualPlace is where the book of a weaver is, by the name of the system and what it says
// of its folders.
func UsualPlace(system string, env func(string) string) (string, error) {
	return book.UsualPlace(system, env)
}

// Holder is who holds a book now.
type Holder struct {
	PID            int
	Address, Token string
}

// HolderOf says who holds a book; false when nobody does.
func HolderOf(path string) (Holder, bool) {
	o, held := book.OwnerOf(path)
	return Holder{o.PID, o.Address, o.Token}, held
}

// CheckFile reads all of a book, or of a copy, that nobody is changing.
func CheckFile(ctx context.Context, path string) error { return book.Check(ctx, path) }

// Copies lists the copies that were kept of a book, the newest first.
func Copies(path string, now time.Time) []string { return book.Copies(path, now) }

// Restore puts a copy in the place of a book that nobody holds; what stood there is put
// aside, and its place is given. Without a copy named it is the newest that is whole.
func Restore(ctx context.Context, path, from string, now time.Time) (aside, used string, err error) {
	if from == "" {
		from, err = book.NewestWhole(ctx, path, now)
		if err != nil {
			return "", "", err
		}
	}
	aside, err = book.Restore(ctx, path, from, now)
	return aside, from, err
}

// InUse gives the holder of a book that could not be opened because of it.
func InUse(err error) (Holder, bool) {
	var t *record.Trouble
	if !errors.As(err, &t) || t.Code != record.InUse {
		return Holder{}, false
	}
	return Holder{PID: t.PID, Address: t.Address}, true
}
