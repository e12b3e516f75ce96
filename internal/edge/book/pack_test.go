package book

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/klauspost/compress/zstd"
)

func threads(n int, seed uint64) []byte {
	r := rand.New(rand.NewPCG(seed, 1))
	var b bytes.Buffer
	for i := range n {
		fmt.Fprintf(&b, "%d=%d\n", i+1, r.IntN(40)+1)
	}
	return b.Bytes()
}

func TestPressedBodiesOpen(t *testing.T) {
	base := threads(6000, 1)
	edited := bytes.Clone(base)
	edited[3000] = '9'
	for _, test := range []struct{ body, base []byte }{
		{nil, nil},
		{[]byte("{}"), nil},
		{base, nil},
		{edited, base},
		{base, edited},
		{nil, base},
		{threads(40000, 2), base},
	} {
		data, err := pressed(test.body, test.base)
		if err != nil {
			t.Fatal(err)
		}
		back, err := opened(data, test.base)
		if err != nil || !bytes.Equal(back, test.body) {
			t.Errorf("%d bytes against %d: %d bytes back, %v", len(test.body), len(test.base), len(back), err)
		}
		t.Log(len(test.body), len(test.base), "->", len(data))
	}
}

func TestAnEditIsSmall(t *testing.T) {
	base := threads(40000, 1)
	edited := bytes.Clone(base)
	edited[100], edited[200000] = '9', '9'
	data, err := pressed(edited, base)
	if err != nil || len(data) > 200 {
		t.Errorf("two threads of %d bytes take %d bytes, %v", len(base), len(data), err)
	}
}

// A body is not opened without the base it was pressed against, nor when a byte of it
// is wrong.
func TestWrongBodiesDoNotOpen(t *testing.T) {
	base := threads(6000, 1)
	data, _ := pressed(append(bytes.Clone(base), "1"...), base)
	if _, err := opened(data, nil); err == nil {
		t.Error("opened without its base")
	}
	for i := range data {
		wrong := bytes.Clone(data)
		wrong[i] ^= 0x10
		if back, err := opened(wrong, base); err == nil && !bytes.Equal(back, append(bytes.Clone(base), "1"...)) {
			t.Errorf("byte %d wrong, and another body came out", i)
		}
	}
}

func BenchmarkPress(b *testing.B) {
	base := threads(40000, 1)
	edited := bytes.Clone(base)
	edited[200000] = '9'
	for b.Loop() {
		if _, err := pressed(edited, base); err != nil {
			b.Fatal(err)
		}
	}
}

// A small body that opens into a huge one, which no document is, is damage and not opened.
func TestABombIsNotOpened(t *testing.T) {
	oneAtATime(t)
	w, err := zstd.NewWriter(nil)
	if err != nil {
		t.Fatal(err)
	}
	data := w.EncodeAll(make([]byte, 4*mostBody), nil)
	if body, err := opened(data, nil); err == nil {
		t.Errorf("%d bytes came out of %d", len(body), len(data))
	}
}
