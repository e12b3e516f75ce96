package record

import "time"

// MostWide is how many dots wide and high a photograph may be.
const MostWide = 65535

// Photograph is what something looked like, as it is kept: upright, without where it was
// taken. Its event says when, and of what.
type Photograph struct {
	Event      string
	Kind       string // image/jpeg or image/png
	Wide, High int    // in dots
	Body       []byte // the picture's file
}

// Device is a phone or a tablet that may be used beside the loom.
type Device struct {
	ID      string
	Name    string   // as the weaver calls it
	Sum     [32]byte // the SHA-256 of what it proves itself by
	Made    time.Time
	Seen    time.Time // when it last asked for anything
	Revoked bool      // it may no more
}
