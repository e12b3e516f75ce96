package record

import "time"

// Kind is what a document describes.
type Kind string

// The kinds of document.
const (
	Yarn  Kind = "yarn"
	Loom  Kind = "loom"
	Draft Kind = "draft"
	Warp  Kind = "warp"
)

// Kinds lists the kinds of document, in the order they are listed to a person.
func Kinds() []Kind { return []Kind{Warp, Yarn, Loom, Draft} }

// ID names a document within one book; the least is 1.
type ID int64

// Act is what made a version.
type Act string

// The acts. Undo, Redo and Return take the state of an earlier version; Remove and
// BringBack leave the body as it was; Take takes the newer of something copied from a
// shelf; Amend says what stands on the loom after work began.
const (
	Add       Act = "add"
	Edit      Act = "edit"
	Undo      Act = "undo"
	Redo      Act = "redo"
	Return    Act = "return"
	Remove    Act = "remove"
	BringBack Act = "bring-back"
	Take      Act = "take"
	Amend     Act = "amend"
)

// Acts lists every act.
func Acts() []Act {
	return []Act{Add, Edit, Undo, Redo, Return, Remove, BringBack, Take, Amend}
}

// MostName is how many characters a name may have.
const MostName = 200

// Document is a document as it stands. Its truth is Body; name and card are taken from
// that, to list and to find it by.
type Document struct {
	ID      ID
	Kind    Kind
	Mark    string // random, the same in every copy of the book and in exports
	Version int    // the number of the newest version, from 1
	Demo    bool   // came with the demo
	Removed bool
	Made    time.Time
	Changed time.Time
	Body    []byte // JSON; empty where only the card was asked for
	Card
}

// Card is what a list shows and finds a document by: taken from its body, never typed.
type Card struct {
	Name  string
	Sort  []byte // names in the order of these bytes are in the order people expect
	Words string // what a search looks in, beside the name
	Facts Facts
}

// Facts are what the engine finds of a document. They say which version they are of
// and which engine found them, so that old ones can be found anew.
type Facts struct {
	Of     int // version; 0: not found yet
	Engine int // the number of the engine that found them
	Stage  string
	Weave  string // what handbooks call it, as a word of the catalogue
	// Of drafts and warps; 0: there is none.
	Shafts, Treadles, Ends, Picks, LongestFloat int
	Figures                                     []byte // JSON, what a list shows
	Errors, Warnings                            int    // problems found
}

// Version is one version of a document. Versions are only ever added.
type Version struct {
	Document ID
	Number   int // from 1
	At       time.Time
	Window   string // who made it: a window of the browser, or the command line
	Act      Act
	// State is the version whose state this one has: its own number, or an earlier one
	// that Undo, Redo or Return went to.
	State   int
	Removed bool
	Body    []byte // empty where only the history was asked for
}

// Query asks for documents of one kind, by name.
type Query struct {
	Kind    Kind
	Words   string // every word, or its beginning, is in the name or the words
	Removed bool   // those that were removed, instead of those that were not
	// Of drafts; 0: any.
	MostShafts, MostTreadles, MostFloat int
	Weave                               string
	Stage                               string // of warps: Done, or InHand for all others; empty: any
	After                               []byte // the Sort of the last one before
	AfterID                             ID     // and its ID
	Most                                int    // how many at most, at least 1
}

// The stages of a warp, as lists show them.
const (
	Planned  = "planned"
	Begun    = "started" // work began
	OnTheWay = "woven"   // picks were woven
	Done     = "finished"
)

// InHand is the stages before Done, where a list is asked for.
const InHand = "hand"

// StagePlanned is the stage that a new document has: warps are planned, others have none.
func StagePlanned(k Kind) string {
	if k == Warp {
		return Planned
	}
	return ""
}
