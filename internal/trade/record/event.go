package record

import (
	"slices"
	"time"

	"sley/internal/trade/yarn"
)

// Topic is what an event is about.
type Topic string

// The topics. Stock is about a yarn, the others about a warp.
const (
	Stock       Topic = "stock"
	Log         Topic = "log"
	Progress    Topic = "progress"
	Measurement Topic = "measurement"
)

// What happened, by topic.
const (
	Bought   = "bought"     // stock: came to the shelf
	Used     = "used"       // stock: went into a warp
	Measured = "measured"   // stock: this is what is there, whatever was reckoned
	Lost     = "lost"       // stock: given away, eaten, spoilt
	Started  = "started"    // log: work began, and the plan was frozen
	Noted    = "note"       // log: a note
	Sat      = "sitting"    // log: a time at the loom
	Broken   = "broken"     // log: an end broke
	Finished = "finished"   // log: the warp is off the loom and done
	SatDown  = "sat-down"   // log: a time at the loom began
	Pictured = "photograph" // log: what it looked like
	Advanced = "advanced"   // log: the warp was wound on
	Woven    = "woven"      // progress: so many picks are woven
	Dressed  = "dressed"    // progress: so much of a step of dressing or finishing is done
	Chosen   = "chosen"     // progress: how a step is done
	Taped    = "tape"       // progress: what the tape reads at a pick
	Weighed  = "weighed"    // progress: what is left of a weft yarn
	Size     = "size"       // measurement: a size that was measured
)

// Whats lists what can happen in a topic.
func (t Topic) Whats() []string {
	return map[Topic][]string{
		Stock:       {Bought, Used, Measured, Lost},
		Log:         {Started, Noted, Sat, Broken, Finished, SatDown, Pictured, Advanced},
		Progress:    {Woven, Dressed, Chosen, Taped, Weighed},
		Measurement: {Size},
	}[t]
}

// Topics lists the topics.
func Topics() []Topic { return []Topic{Stock, Log, Progress, Measurement} }

// Event is something that happened. Events are only ever added: one that was wrong is
// cancelled by another.
type Event struct {
	Seq      int64       `json:"-"` // the order in which the book took them, whatever the clock said
	ID       string      `json:"id"`
	Document ID          `json:"document"`
	Topic    Topic       `json:"topic"`
	What     string      `json:"what"`
	At       time.Time   `json:"at"`
	Place    int         `json:"place,omitempty"`   // pick, from the start of the warp; of Started the version; of Dressed how much is done
	From     int         `json:"from,omitempty"`    // the place before, as who said this knew it
	Path     string      `json:"path,omitempty"`    // what was measured, as pieces[0].length; what was done or chosen
	State    string      `json:"state,omitempty"`   // the state it was measured in
	Typed    string      `json:"typed,omitempty"`   // the amount or size, as typed
	Amount   yarn.Amount `json:"amount,omitzero"`   // what was typed, read
	Minutes  int         `json:"minutes,omitempty"` // of a sitting
	Warp     ID          `json:"warp,omitempty"`    // stock: the warp that used it; 0: none
	Note     string      `json:"note,omitempty"`
	Cancels  string      `json:"cancels,omitempty"` // the ID of the event that this one cancels; then nothing else counts
}

// Standing gives the events that were not cancelled and cancel nothing, in order.
func Standing(events []Event) []Event {
	gone := map[string]bool{}
	for _, e := range events {
		gone[e.Cancels] = true
	}
	return slices.DeleteFunc(slices.Clone(events), func(e Event) bool { return e.Cancels != "" || gone[e.ID] })
}

// Frozen is a plan as it was when work began. It is never written again.
type Frozen struct {
	Warp     ID
	Version  int // of the warp
	At       time.Time
	Event    string // the ID of the event that says so; cancelled, the start is
	Program  string // the version of the program
	Defaults string // the version of the starting values
	Body     []byte // the document, with the draft
	Nodes    []byte // JSON, the reckoning
}

// Counts are how many documents of each kind a book holds, removed ones left out.
type Counts struct {
	Of   map[Kind]int
	Demo int // of them, those that came with the demo
}
