package app

import (
	"crypto/sha256"
	"crypto/subtle"
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"io"
	"sync"
	"time"
)

// What a code for pairing is good for. Of a million codes five tries find one in 200,000
// times, and then she sees a device in the list that is not hers.
const (
	codeLasts = 5 * time.Minute
	codeTries = 5 // wrong ones; the last ends the code
	allCodes  = 1_000_000
	tokenSize = 32 // bytes of what a device proves itself by
)

// Offer is a code by which one device may be paired, once.
type Offer struct {
	Code  string // six digits
	Until time.Time
	Left  time.Duration // until then; 0 or less: it is over
}

// pairing is the code that is good now. It is kept nowhere but here: a sley that starts
// anew has none.
type pairing struct {
	mu    sync.Mutex
	offer Offer
	tries int
}

// OfferPairing gives a new code, good for five minutes, for one device and for five wrong
// tries; the code before is good no more.
func (s *Studio) OfferPairing() (Offer, error) {
	code, err := codeFrom(s.random)
	if err != nil {
		return Offer{}, err
	}
	s.pairs.mu.Lock()
	defer s.pairs.mu.Unlock()
	s.pairs.offer, s.pairs.tries = Offer{code, s.now().Add(codeLasts), codeLasts}, 0
	return s.pairs.offer, nil
}

// OfferedPairing gives the code that is good now; false where there is none.
func (s *Studio) OfferedPairing() (Offer, bool) {
	s.pairs.mu.Lock()
	defer s.pairs.mu.Unlock()
	now := s.now()
	o := s.pairs.offer
	o.Left = o.Until.Sub(now)
	return o, s.pairs.good(now)
}

// EndPairing takes the code back.
func (s *Studio) EndPairing() {
	s.pairs.mu.Lock()
	defer s.pairs.mu.Unlock()
	s.pairs.offer = Offer{}
}

// good says whether there is a code, and its time is not over.
func (p *pairing) good(now time.Time) bool { return p.offer.Code != "" && now.Before(p.offer.Until) }

// taken tries a code. A right one is used up by it, a wrong one counts; what is returned is
// the code of the problem, empty where it was right.
func (p *pairing) taken(code string, now time.Time) string {
	p.mu.Lock()
	defer p.mu.Unlock()
	if !p.good(now) {
		p.offer = Offer{}
		return "pairing.none"
	}
	if subtle.ConstantTimeCompare([]byte(code), []byte(p.offer.Code)) == 1 {
		p.offer = Offer{}
		return ""
	}
	if p.tries++; p.tries >= codeTries {
		p.offer = Offer{}
		return "pairing.ended"
	}
	return "pairing.code"
}

// codeFrom draws six digits, each code as likely as any other: what would make the first
// ones likelier is drawn again.
func codeFrom(random io.Reader) (string, error) {
	for {
		var drawn [4]byte
		if _, err := io.ReadFull(random, drawn[:]); err != nil {
			return "", fmt.Errorf("drawing a code: %w", err)
		}
		const fair = 1<<32 - 1<<32%allCodes
		if n := binary.BigEndian.Uint32(drawn[:]); n < fair {
			return fmt.Sprintf("%06d", n%allCodes), nil
		}
	}
}

// tokenFrom draws what a device proves itself by, as text of a cookie.
func tokenFrom(random io.Reader) (string, error) {
	var drawn [tokenSize]byte
	if _, err := io.ReadFull(random, drawn[:]); err != nil {
		return "", fmt.Errorf("drawing a token: %w", err)
	}
	return base64.RawURLEncoding.EncodeToString(drawn[:]), nil
}

// sumOf is what the book keeps of a token: who reads the book cannot use it.
func sumOf(token string) [sha256.Size]byte { return sha256.Sum256([]byte(token)) }
