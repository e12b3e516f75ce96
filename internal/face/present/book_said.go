package present

import (
	"fmt"
	"strings"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// SavedText says what became of a document: that it has a new version, or that nothing
// was to change. before is the version it had; 0 for one that is new.
func SavedText(kind record.Kind, name string, before int, s app.Saved) string {
	what := fmt.Sprintf("%s %d, %s", KindName(kind), s.ID, legible(name))
	switch {
	case before == 0:
		return what + ": in the book\n"
	case s.Version == before:
		return what + fmt.Sprintf(": version %d stays, there was nothing to change\n", before)
	}
	return what + fmt.Sprintf(": version %d\n", s.Version)
}

// ConflictText says what two did to a document at once.
func ConflictText(c *app.Conflict) string {
	var b strings.Builder
	fmt.Fprintf(&b, "somebody else changed it since version %d: it has version %d now; nothing was written\n", c.Base, c.Head)
	if c.Removed {
		b.WriteString("it was removed: bring it back first\n")
	}
	for _, a := range c.Differences {
		fmt.Fprintf(&b, "%s%s: was %s, is %s, would be %s\n", textIndent, a.Path, value(a.Base), value(a.Theirs), value(a.Mine))
	}
	return b.String()
}

// value is a value of a document, or that there is none.
func value(text string) string {
	if text == "" {
		return "nothing"
	}
	return short(text)
}

// StartedText says that work on a warp began.
func StartedText(name string, s app.Saved) string {
	return fmt.Sprintf("warp %d, %s: work began, and version %d is kept as its plan\n", s.ID, legible(name), s.Version)
}

// EventText says that something was entered, and by which mark it can be cancelled.
func EventText(e record.Event) string {
	return strings.Join(eventWords(e), ", ") + "; entered as " + e.ID + "\n"
}

// WovenText says how far a warp is woven.
func WovenText(name string, pick int) string {
	return fmt.Sprintf("%s: woven to pick %d\n", legible(name), pick)
}

// CancelledText says that an entry counts no more.
func CancelledText(event string) string { return "entry " + legible(event) + " is cancelled\n" }

// ClearedText says how much of the demo was removed.
func ClearedText(n int) string {
	return counted(n, "document") + " of the demo removed; each can be brought back\n"
}

// MadeText says that there is a new book.
func MadeText(path string) string { return path + ": a new book\n" }

// WholeText says that a book has nothing wrong.
func WholeText(path string) string { return path + ": whole, every version opens\n" }

// CopiedText says where a copy of the book is.
func CopiedText(path string) string { return path + ": a whole copy of the book\n" }

// ExportedText says what was exported.
func ExportedText(folder string, files int) string {
	return fmt.Sprintf("%s: everything of the book, in %s\n", folder, counted(files, "file"))
}

// ImportedText says what an import did.
func ImportedText(i app.Imported) string {
	var b strings.Builder
	fmt.Fprintf(&b, "documents new in the book: %d, with later versions: %d, the same: %d; entries taken: %d\n", i.Added, i.Updated, i.Same, i.Events)
	for _, file := range i.Edited {
		b.WriteString(textIndent + file + ": edited since, and taken as a newer version\n")
	}
	return b.String()
}

// RestoreText says what putting back a copy would do.
func RestoreText(path, from string) string {
	return fmt.Sprintf("This would put the copy %s\nin the place of %s,\nand move what is there aside, in the same folder. With --yes it is done.\n", from, path)
}

// RestoredText says that a copy was put back.
func RestoredText(path, from, aside string) string {
	return fmt.Sprintf("%s: as in the copy %s\nwhat was there: %s\n", path, from, aside)
}

// WhereText says where the book is, who has it, and which copies there are.
func WhereText(path string, there bool, held *app.Holder, copies []string) string {
	out := "book: " + path
	if !there {
		out += "  (there is none yet)"
	}
	out += "\n"
	switch {
	case held == nil:
	case held.Address != "":
		out += fmt.Sprintf("in use: by process %d, whose page is at %s\n", held.PID, held.Address)
	default:
		out += fmt.Sprintf("in use: by process %d\n", held.PID)
	}
	for _, c := range copies {
		out += "copy: " + c + "\n"
	}
	return out
}

// BrokenOff says that a command was ended by the weaver.
func BrokenOff() string { return "broken off; the book is as it was before" }

// NoCopyOfToday says that the copy of the day was not made, and why.
func NoCopyOfToday(err error) string {
	says, do := Trouble(err)
	return strings.TrimSuffix(fmt.Sprintf("warning: today's copy of the book was not made: %s\nfix: %s", says, do), "\nfix: ") + "\n"
}

// NoWholeCopy says that there is nothing to put back.
func NoWholeCopy(path string) string {
	return "there is no whole copy of " + path + ": name one, or import an exported folder into a new book"
}

// ShelvedText says what a part of a warp is on the shelf.
func ShelvedText(kind record.Kind, name string, s app.Saved) string {
	return fmt.Sprintf("%s %d, %s: on the shelf as version %d\n", KindName(kind), s.ID, legible(name), s.Version)
}
