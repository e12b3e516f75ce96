package cli

import (
	"context"
	"fmt"
	"os/exec"
	"runtime"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// ServeOptions are the flags of sley alone.
type ServeOptions struct {
	Book      string
	NoBrowser bool
}

// runServe opens the book, or makes it with the demo, and serves its page until it is
// interrupted. Where another sley has the book, its page is opened.
func runServe(ctx context.Context, w World, opts ServeOptions) error {
	place, err := w.bookPlace(opts.Book)
	if err != nil {
		return stop{code: exitFailed, err: err}
	}
	book, err := w.OpenBook(ctx, place, true)
	if err != nil {
		return w.openElsewhere(place, err, opts)
	}
	err = w.ServePage(ctx, book, func(address string) {
		fmt.Fprintf(w.Out, "The book is %s\nThe page is %s\n", place, address)
		if book.Fresh() {
			fmt.Fprintln(w.Out, "The book is new and holds a demo; one press on the page clears it.")
		}
		fmt.Fprintln(w.Out, "Ctrl+C stops sley; everything is saved.")
		w.browse(address, opts)
	})
	if closed := book.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return w.bookTrouble(err)
	}
	fmt.Fprintln(w.Out, "sley has stopped.")
	return nil
}

// bookPlace is the file of the book: the one named, else the usual one.
func (w World) bookPlace(named string) (string, error) {
	if named != "" {
		return named, nil
	}
	return w.UsualBook()
}

// bookTrouble ends a command because of the book, with what to do.
func (w World) bookTrouble(err error) error {
	code := exitFailed
	for trouble, exit := range map[string]int{record.Missing: exitNoBook, record.InUse: exitInUse, record.Newer: exitNewer} {
		if record.Is(err, trouble) {
			code = exit
		}
	}
	says, do := present.Trouble(err)
	return stop{code: code, err: fmt.Errorf("%s\nfix: %s", says, do)}
}

// openElsewhere opens the page of the sley that has the book.
func (w World) openElsewhere(place string, err error, opts ServeOptions) error {
	holder, held := app.InUse(err)
	if !held || holder.Address == "" {
		return w.bookTrouble(err)
	}
	fmt.Fprintf(w.Out, "sley has this book open already (process %d).\nThe book is %s\nThe page is %s\n", holder.PID, place, holder.Address)
	w.browse(holder.Address, opts)
	return nil
}

func (w World) browse(address string, opts ServeOptions) {
	if !opts.NoBrowser && w.Browse != nil {
		w.Browse(address)
	}
}

// Browse opens the address in the browser of the person who sits there. Where there is
// none it does nothing: the address was printed.
func Browse(address string) {
	command := map[string][]string{
		"darwin": {"open"}, "windows": {"rundll32", "url.dll,FileProtocolHandler"},
	}[runtime.GOOS]
	if command == nil {
		command = []string{"xdg-open"}
	}
	opening := exec.Command(command[0], append(command[1:], address)...)
	if opening.Start() == nil {
		go func() { _ = opening.Wait() }() // how it ends is nothing to us
	}
}
