package wif

import (
	"strings"
	"testing"
)

// Single lines that are added to the example, and what becomes of the text.
func TestLines(t *testing.T) {
	twill := string(read(t, "tidy/twill.wif"))
	for _, c := range []struct{ what, old, text, want, codes string }{
		{"a remark behind a faulty value", "8=4", "8=four ; from the left", "; from the left\n;8=four\n8=0", "wif.comment-after wif.value"},
		{"a private line in brackets", "Source Program=sley", "Source Program=sley\n[PRIVATE QUAY]\n[1\n2]=x", "[1\n2]=x", "wif.contents-missing wif.order"},
		{"a colour far behind its number", "Threads=8", "Threads=8\nColor=5,1,2,3", "Color=5,1,2,3", "wif.no-colours"},
		{"a misspelt section with its lines", "[TREADLING]\n", "[TREADLING]\n[TREADLINGS]\n 9 = 1 ;x\n[TREADLING]\n", " 9 = 1 ;x", "wif.contents-missing wif.section-unknown wif.section-twice"},
		{"a truth in another word", "Rising Shed=true", "Rising Shed=YES", "Rising Shed=YES", ""},
		{"a leading nought", "8=4", "08=04", "8=04", ""},
	} {
		f, list := Decode("draft.wif", []byte(strings.Replace(twill, c.old, c.text, 1)))
		if got := codes(list); got != c.codes {
			t.Errorf("%s: %s, want %s", c.what, got, c.codes)
		}
		if got := string(Encode(f)); !strings.Contains(got, c.want) {
			t.Errorf("%s: no %q in\n%s", c.what, c.want, got)
		}
	}
}

// Numbers that run ahead are counted against those that are accepted, so that the
// same ones are left out when the text is read again.
func TestNumbersFarOff(t *testing.T) {
	d := Encode(FromDraft(large()))
	text := strings.Replace(string(d), "[THREADING]\r\n", "[THREADING]\r\n9004=1\r\n9009=1\r\n", 1)
	f, list := Decode("draft.wif", []byte(text))
	if codes(list) != "wif.threads-more wif.gap wif.far" || f.Draft.Ends() != 9004 {
		t.Errorf("%d ends: %s", f.Draft.Ends(), codes(list))
	}
	back, list := Decode("draft.wif", Encode(f))
	if !back.Draft.Equal(f.Draft) {
		t.Errorf("%d ends, were %d: %s", back.Draft.Ends(), f.Draft.Ends(), codes(list))
	}
}
