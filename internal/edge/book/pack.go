package book

import (
	"fmt"

	"github.com/klauspost/compress/zstd"
)

// mostBody is how large a body may be, in bytes: many times the largest draft.
const mostBody = 64 << 20

// pressed presses a body, against an earlier one where there is one: an edit of a
// large draft is then some ten bytes.
func pressed(body, base []byte) ([]byte, error) {
	// Streams are single and windows as large as the bodies, so that all of base is seen.
	options := []zstd.EOption{
		zstd.WithEncoderConcurrency(1), zstd.WithEncoderLevel(zstd.SpeedDefault),
		zstd.WithWindowSize(windowFor(len(body) + len(base))), zstd.WithEncoderCRC(true),
	}
	if len(base) > 0 {
		options = append(options, zstd.WithEncoderDictRaw(baseID, base))
	}
	w, err := zstd.NewWriter(nil, options...)
	if err != nil {
		return nil, fmt.Errorf("press a body: %w", err)
	}
	defer w.Close()
	return w.EncodeAll(body, nil), nil
}

// baseID names the base inside a pressed body, so that none is opened without it.
const baseID = 1

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
	options := []zstd.DOption{zstd.WithDecoderConcurrency(1), zstd.WithDecoderMaxMemory(mostBody)}
	if len(base) > 0 {
		options = append(options, zstd.WithDecoderDictRaw(baseID, base))
	}
	r, err := zstd.NewReader(nil, options...)
	if err != nil {
		return nil, fmt.Errorf("open a body: %w", err)
	}
	defer r.Close()
	body, err := r.DecodeAll(data, nil)
	if err != nil {
		return nil, fmt.Errorf("open a body: %w", err)
	}
	return body, nil
}
