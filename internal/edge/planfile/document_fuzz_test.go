package planfile

import (
	"strings"
	"testing"
)

// FuzzReadJSON: whatever the bytes, reading ends without a panic; what
// is read is the same in both writings, and its plan too.
func FuzzReadJSON(f *testing.F) {
	for name, text := range plansOfTheHouse(f) {
		if d, _ := ReadText(name, text); d != nil {
			f.Add(d.JSON())
		}
	}
	for _, text := range []string{
		"", "{", "[]", `{"a":null}`, `{"a":1,"a":2}`, `{"a":"\ud83e\uddf6"}`, `{"a":"\ud800"}`, `{"a":1e999}`, `{"a":-0}`, `{} x`,
		`{"":{"a.b":[true,{"c":"\u0000"}]}}`, strings.Repeat(`{"a":`, 14), "{\"a\":\"\x7f\"}",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		d, err := ReadJSON(text)
		if err != nil {
			if codeOf(err) == "" || d != nil {
				t.Fatalf("%v", err)
			}
			return
		}
		again, err := ReadJSON(d.JSON())
		if err != nil || string(again.JSON()) != string(d.JSON()) {
			t.Fatalf("%v: %s is not stable", err, d.JSON())
		}
		_, list := d.Plan("")
		file := d.Text()
		fromText, problems := ReadText("plan.toml", file)
		if fromText == nil || problems.Len() > 0 || !fromText.Equal(d) {
			t.Fatalf("%v: %s is another document as\n%s", told(problems), d.JSON(), file)
		}
		_, others := fromText.Plan("")
		if got, want := strings.Join(told(others), "\n"), strings.Join(told(list), "\n"); got != want {
			t.Fatalf("%s\nfrom the text\n%s", want, got)
		}
	})
}
