package book

import (
	"fmt"
	"sync"

	"github.com/klauspost/compress/zstd"

	"sley/internal/trade/record"
)

// mostBody is how large a body may be, in bytes: many times the largest draft.
const mostBody = 64 << 20

// baseID names the base inside a pressed body, so that none is opened without it.
const baseID = 1

// Bodies without a base share one encoder and one decoder, which are slow to make. Whole
// versions of a large draft are few and most of what it takes: they are pressed harder.
var (
	plainEncoder = sync.OnceValues(func() (*zstd.Encoder, error) {
		return zstd.NewWriter(nil, zstd.WithEncoderLevel(zstd.SpeedBetterCompression), zstd.WithEncoderCRC(true))
	})
	plainDecoder = sync.OnceValues(func() (*zstd.Decoder, error) {
		return zstd.NewReader(nil, zstd.WithDecoderMaxMemory(mostBody))
	})
)

// pressed presses a body, against an earlier one where there is one: an edit of a
// large draft is then some ten bytes. A body that is too large is refused here: it would
// not be opened again.
func pressed(body, base []byte) ([]byte, error) {
	if len(body) > mostBody {
		found := fmt.Sprintf("a body of %d bytes; the most is %d", len(body), mostBody)
		return nil, &record.Trouble{Code: record.Unforeseen, Found: found}
	}
	w, err := encoderFor(body, base)
	if err != nil {
		return nil, fmt.Errorf("press a body: %w", err)
	}
	if len(base) > 0 {
		defer w.Close()
	}
	return w.EncodeAll(body, nil), nil
}

// encoderFor is an encoder whose window is as large as body and base together, so that
// all of the base is seen.
func encoderFor(body, base []byte) (*zstd.Encoder, error) {
	if len(base) == 0 {
		return plainEncoder()
	}
	level := zstd.SpeedDefault
	if len(body)+len(base) < quickBelow {
		level = zstd.SpeedFastest
	}
	return zstd.NewWriter(
		nil, zstd.WithEncoderConcurrency(1), zstd.WithEncoderLevel(level),
		zstd.WithWindowSize(windowFor(len(body)+len(base))), zstd.WithEncoderCRC(true),
		zstd.WithEncoderDictRaw(baseID, base),
	)
}

// quickBelow is a size, of body and base in bytes, below which the smaller tables of the
// quick level find as much: the large ones take longer to set up than all the rest.
const quickBelow = 64 << 10

// windowFor is the smallest window that zstd takes for so many bytes.
func windowFor(n int) int {
	size := zstd.MinWindowSize
	for size < n && size < zstd.MaxWindowSize {
		size *= 2
	}
	return size
}

// opened is the body that was pressed, against base where there was one.
func opened(data, base []byte) ([]byte, error) {
	o, err := openerFor(base)
	if err != nil {
		return nil, err
	}
	defer o.done()
	return o.open(data)
}

// opener opens bodies that were pressed against one base.
type opener struct {
	decoder *zstd.Decoder
	own     bool
}

func openerFor(base []byte) (opener, error) {
	if len(base) == 0 {
		d, err := plainDecoder()
		return opener{d, false}, err
	}
	d, err := zstd.NewReader(
		nil, zstd.WithDecoderConcurrency(1), zstd.WithDecoderMaxMemory(mostBody), zstd.WithDecoderDictRaw(baseID, base),
	)
	if err != nil {
		return opener{}, fmt.Errorf("open a body: %w", err)
	}
	return opener{d, true}, nil
}

func (o opener) open(data []byte) ([]byte, error) {
	body, err := o.decoder.DecodeAll(data, nil)
	if err != nil {
		return nil, fmt.Errorf("open a body: %w", err)
	}
	return body, nil
}

// done lets the decoder go, unless it is everyone's.
func (o opener) done() {
	if o.own {
		o.decoder.Close()
	}
}
