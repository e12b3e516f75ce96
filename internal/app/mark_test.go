package app

import "testing"

// The digest of "abc" is that of the standard's own example (FIPS 180-4, as NIST
// prints it in its examples of SHA-256).
func TestMark(t *testing.T) {
	if got := Mark([]byte("abc")); got != "ba7816bf" {
		t.Errorf("got %s", got)
	}
	if Mark([]byte("a\r\nb\r\n")) != Mark([]byte("a\nb\n")) {
		t.Error("the same plan has two marks by its line ends")
	}
	if Mark([]byte("sett = 24")) == Mark([]byte("sett = 25")) {
		t.Error("two plans have one mark")
	}
}
