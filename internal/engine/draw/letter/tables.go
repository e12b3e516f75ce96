package letter

import (
	"encoding/binary"
	"maps"
	"math/bits"
	"slices"
)

// tables are the parts of a font file by their tags (ISO/IEC 14496-22, section
// 4.5.1). Numbers in them are big-endian.
type tables map[string][]byte

// tablesOf takes a font file of the house apart; the parts are shared with it.
func tablesOf(file []byte) tables {
	out := tables{}
	for i := range int(word(file, 4)) {
		entry := file[12+16*i:]
		from, size := long(entry, 8), long(entry, 12)
		out[string(entry[:4])] = file[from : from+size]
	}
	return out
}

func word(b []byte, at int) uint16 { return binary.BigEndian.Uint16(b[at:]) }
func long(b []byte, at int) uint32 { return binary.BigEndian.Uint32(b[at:]) }

// words are numbers of two bytes, one after another.
func words(numbers ...int) []byte {
	var out []byte
	for _, n := range numbers {
		out = binary.BigEndian.AppendUint16(out, uint16(n))
	}
	return out
}

// changed is a part with some of its words replaced, by their places.
func changed(part []byte, with map[int]int) []byte {
	out := slices.Clone(part)
	for at, n := range with {
		binary.BigEndian.PutUint16(out[at:], uint16(n))
	}
	return out
}

// file puts the parts together again, each on a boundary of four bytes, with the
// sum over all that head holds (ISO/IEC 14496-22, sections 4.5.1 and 5.2.2).
func (t tables) file() []byte {
	tags := slices.Sorted(maps.Keys(t))
	out := append([]byte{0, 1, 0, 0}, words(searching(len(tags), 16)...)...)
	at, head := len(out)+16*len(tags), 0
	var body []byte
	for _, tag := range tags {
		if tag == "head" {
			head = at + len(body)
		}
		out = append(out, tag...)
		for _, n := range []uint32{sum(t[tag]), uint32(at + len(body)), uint32(len(t[tag]))} {
			out = binary.BigEndian.AppendUint32(out, n)
		}
		body = padded(append(body, t[tag]...))
	}
	out = append(out, body...)
	binary.BigEndian.PutUint32(out[head+8:], 0xB1B0AFBA-sum(out))
	return out
}

// searching is a count with the three numbers that help to search through so many
// entries of so many bytes.
func searching(count, size int) []int {
	power := bits.Len(uint(count)) - 1
	reach := size << power
	return []int{count, reach, power, count*size - reach}
}

func padded(b []byte) []byte {
	for len(b)%4 != 0 {
		b = append(b, 0)
	}
	return b
}

// sum is that of the numbers of four bytes, as they overflow.
func sum(b []byte) uint32 {
	total := uint32(0)
	b = padded(slices.Clone(b))
	for i := 0; i < len(b); i += 4 {
		total += long(b, i)
	}
	return total
}
