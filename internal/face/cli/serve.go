package cli

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"runtime"

	"sley/internal/app"
)

// ServeOptions are the flags of sley alone.
type ServeOptions struct{ NoBrowser, Beside bool }

// runServe opens the book, or makes it with the demo, and serves its page until it is
// interrupted. Where another sley has the book, its page is opened.
func runServe(w World, opts ServeOptions) error {
	ctx, free := w.Books.Interrupt()
	defer free()
	return desk{World: w}.troubled(w.serve(ctx, opts))
}

func (w World) serve(ctx context.Context, opts ServeOptions) error {
	place, err := w.bookPath()
	if err != nil {
		return err
	}
	asked := w.asked(place, true)
	asked.Demo = w.Books.Demo
	book, err := app.Open(ctx, asked)
	if err != nil {
		return w.openElsewhere(place, err, opts)
	}
	err = w.ServePage(ctx, book, Serving{
		Beside: opts.Beside, AnnounceBeside: w.announceBeside,
		Announce: func(address string) { w.announce(book, address, opts) },
	})
	if err = errors.Join(err, book.Close()); err != nil {
		return err
	}
	fmt.Fprintln(w.Out, "sley has stopped.")
	return nil
}

func (w World) announce(book *app.OpenBook, address string, opts ServeOptions) {
	fmt.Fprintf(w.Out, "The book is %s\nThe page is %s\n", book.Path(), address)
	if book.Fresh() {
		fmt.Fprintln(w.Out, "The book is new and holds a demo; one press on the page clears it.")
	}
	fmt.Fprintln(w.Out, "Ctrl+C stops sley; everything is saved.")
	w.browse(address, opts)
}

// announceBeside tells what to open on a phone or a tablet.
func (w World) announceBeside(addresses []string, public bool) {
	for _, address := range addresses {
		fmt.Fprintf(w.Out, "Beside the loom, paired phones and tablets open %s\n", address)
	}
	if public {
		fmt.Fprintln(w.Out, "This computer has no address of a home network: others on the internet may reach these as well.")
	}
	fmt.Fprintln(w.Out, "Whoever is on the same network can read what they show and send (docs/beside.md).")
}

// openElsewhere opens the page of the sley that has the book.
func (w World) openElsewhere(place string, err error, opts ServeOptions) error {
	holder, held := app.InUse(err)
	if !held || holder.Address == "" {
		return err
	}
	fmt.Fprintf(w.Out, "sley has this book open already (process %d).\nThe book is %s\nThe page is %s\n", holder.PID, place, holder.Address)
	if opts.Beside {
		fmt.Fprintln(w.Out, "What listens for phones and tablets is turned on there, under \"By the loom\".")
	}
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
