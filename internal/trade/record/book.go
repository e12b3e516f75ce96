package record

import "context"

// Book is where records are kept. Read sees it as it stands at one moment; Write changes
// it whole or not at all, and when it returns nil the change lasts. Errors of the book
// are *Trouble; those of do are given back as they are.
type Book interface {
	Read(ctx context.Context, do func(Reader) error) error
	Write(ctx context.Context, do func(Writer) error) error
}

// Reader is a book as it stands at one moment. What is not there is Trouble: NotFound.
type Reader interface {
	// Document gives a document whole, Card without its body.
	Document(ID) (Document, error)
	Card(ID) (Document, error)
	Marked(mark string) (Document, error) // without its body
	Body(id ID, version int) ([]byte, error)
	// Versions gives versions without bodies, the newest first, from before a number on
	// (0: from the newest), at most that many.
	Versions(id ID, before, most int) ([]Version, error)
	// List gives cards in the order of names, and how many there are in all.
	List(Query) ([]Document, int, error)
	All() ([]Document, error) // every card, removed ones too, in the order they were added
	Counts() (Counts, error)
	// Stale gives documents whose facts are not of their newest version and that engine.
	Stale(kind Kind, engine, most int) ([]ID, error)
	Event(id string) (Event, error)
	Events(ID, Topic) ([]Event, error) // in the order the book took them
	AllEvents() ([]Event, error)
	Frozen(warp ID) ([]Frozen, error) // the newest first
	AllFrozen() ([]Frozen, error)
	Setting(name string) (string, error) // empty where nothing was set
	Settings() (map[string]string, error)
	Photograph(event string) (Photograph, error)
	Devices() ([]Device, error) // the first first, revoked ones too
}

// Writer changes a book.
type Writer interface {
	Reader
	// Add writes the first version of a new document; its Number and State are 1.
	Add(Document, Version) (ID, error)
	// Append adds the next version. One with a State before its own Number has that
	// one's body. Trouble: Changed where its Number is not the next.
	Append(Version, Card) error
	// PutCard writes what a document is listed and found by, unless its facts are of an
	// older version.
	PutCard(ID, Card) error
	// PutFacts writes what the engine found, unless it is of an older version.
	PutFacts(ID, Facts) error
	// Happen adds an event; one whose ID is there already changes nothing.
	Happen(Event) error
	Freeze(Frozen) error
	// PutPhotograph keeps a photograph beside its event, which must be there.
	PutPhotograph(Photograph) error
	// PutDevice lets a device in, or changes what is known of it but when it came.
	PutDevice(Device) error
	Set(name, value string) error // an empty value unsets
}
