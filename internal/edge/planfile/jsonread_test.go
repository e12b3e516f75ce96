package planfile

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"
)

// TestFaultsOfJSON: what is no document says where and what.
func TestFaultsOfJSON(t *testing.T) {
	for text, want := range map[string]string{
		``:                                  `json.syntax "" ""`,
		`[]`:                                `json.object "" "[]"`,
		`"a"`:                               `json.object "" "\"a\""`,
		`{`:                                 `json.syntax "" ""`,
		`{"a":null}`:                        `json.null "a" "null"`,
		`null`:                              `json.null "" "null"`,
		`{"a":1,"b":2,"\u0061":2}`:          `json.twice "a" "a"`,
		`{"a.b":[{},{"c":1,"c":2}]}`:        `json.twice "\"a.b\"[1].c" "c"`,
		`{"a":[1,{"b":1e999}]}`:             `json.number "a[1].b" "1e999"`,
		`{"a":9223372036854775808}`:         `json.number "a" "9223372036854775808"`,
		`{"a":"\ud800"}`:                    `json.half "" "\\ud800"`,
		`{"a":"\ud800\u0041"}`:              `json.half "" "\\ud800"`,
		`{"a":"\\\udc00"}`:                  `json.half "" "\\udc00"`,
		"{\"a\":\"\xff\"}":                  `text.not-utf8 "" ""`,
		`{} {}`:                             `json.syntax "" "{}"`,
		`{"a":1,}`:                          `json.syntax "" "}"`,
		`{"a":{"b":[1 2]}}`:                 `json.syntax "a.b[1]" "2]}}"`,
		`{"a":01}`:                          `json.syntax "" "1}"`,
		`{'a':1}`:                           `json.syntax "" "'a':1}"`,
		`{"a":NaN}`:                         `json.syntax "a" "NaN}"`,
		"{\"a\":\"x\ny\"}":                  `json.syntax "a" "\ny\"}"`,
		`[ "more than twenty characters" ]`: `json.object "" "[ \"more than twenty "`,
		`{"sley":2}`:                        `format.newer "sley" "2"`,
		`{"a":` + strings.Repeat("[", 13):   `file.deep "a[0][0][0][0][0][0][0][0][0][0][0][0]" ""`,
		strings.Repeat("[", 100_000):        `file.deep "` + strings.Repeat("[0]", 13) + `" ""`,
	} {
		_, err := ReadJSON([]byte(text))
		var f *Fault
		if !errors.As(err, &f) {
			t.Errorf("%.60s: %v", text, err)
			continue
		}
		if got := f.Code + " " + quotedGo(f.Path) + " " + quotedGo(f.Read); got != want || f.Error() == "" {
			t.Errorf("%.60s: %s, want %s", text, got, want)
		}
	}
	for _, text := range []string{`{"a":"\ud83e\uddf6"}`, `{"a":"\\ud800"}`, ` { } `, `{"a":1e5,"b":-0.0}`} {
		if _, err := ReadJSON([]byte(text)); err != nil {
			t.Errorf("%s: %v", text, err)
		}
	}
}

func quotedGo(text string) string {
	quoted, _ := json.Marshal(text)
	return string(quoted)
}

// TestLargeDocuments: a document stays within a megabyte in both writings.
func TestLargeDocuments(t *testing.T) {
	code := func(err error) string {
		var f *Fault
		errors.As(err, &f)
		return f.Code
	}
	if _, err := ReadJSON([]byte(strings.Repeat(" ", largest+1))); code(err) != "document.large" {
		t.Error(err)
	}
	pieces := `{"pieces":[` + strings.Repeat("{},", largest/4) + `{}]}`
	if _, err := ReadJSON([]byte(pieces)); code(err) != "document.large" { // as [[pieces]] it is longer
		t.Error(err)
	}
	d := NewDocument()
	for i := range 3 {
		before := string(d.JSON())
		err := d.Set(itemPath("a", i), TextValue(strings.Repeat("x", largest*2/5)))
		switch {
		case i < 2 && err != nil:
			t.Fatal(err)
		case i == 2 && (code(err) != "document.large" || string(d.JSON()) != before):
			t.Errorf("%v, %d bytes", err, len(d.JSON()))
		}
	}
	if again, err := ReadJSON(d.JSON()); err != nil || !again.Equal(d) {
		t.Error(err)
	}
}

// TestHostileDocuments: documents made to be slow are read, written and compared
// before the tests as a whole run out of time.
func TestHostileDocuments(t *testing.T) {
	const n = 50_000
	for what, text := range map[string]string{
		"keys":     `{"a":0` + numbered(`,"k%d":1`, n) + `}`,
		"yarns":    `{"yarns":{"a":{}` + numbered(`,"k%d":{}`, n) + `}}`,
		"list":     `{"a":[0` + strings.Repeat(",1", n) + `]}`,
		"escapes":  `{"a":"` + strings.Repeat(`\ud83e\uddf6`, n) + `"}`,
		"brackets": strings.Repeat("[", n),
		"objects":  strings.Repeat(`{"a":`, n),
		"spaces":   strings.Repeat(" ", n) + "{}",
	} {
		if d, err := ReadJSON([]byte(text)); err == nil {
			d.Plan("")
			again, _ := ReadText("plan.toml", d.Text())
			if again == nil || !again.Equal(d) {
				t.Errorf("%s: another document", what)
			}
		} else if codeOf(err) == "" {
			t.Error(err)
		}
	}
}
