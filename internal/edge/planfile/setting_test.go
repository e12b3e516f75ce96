package planfile

import (
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestParseValue: what people mean by key=value.
func TestParseValue(t *testing.T) {
	for text, want := range map[string]string{
		"6": "6", " 6 ": "6", "+5": "5", "1_000": "1000", "0x10": "16", "0.92": "0.92", "true": "true", "false": "false",
		`"six"`: `"six"`, `"6"`: `"6"`, `'x\y'`: `"x\\y"`, `["12 dpi", 3]`: `["12 dpi",3]`, "[1,\n2]": "[1,2]",
		`{ hem = "1 in", a = { b = true } }`: `{"hem":"1 in","a":{"b":true}}`, "{}": "{}", "[]": "[]",
		"30 in": `"30 in"`, " 30 in ": `" 30 in "`, "8/2 Ne": `"8/2 Ne"`, "": `""`, " ": `" "`, "towels": `"towels"`,
		"2026-03-01": `"2026-03-01"`, "07:32:00": `"07:32:00"`, "inf": `"inf"`, "99999999999999999999": `"99999999999999999999"`,
		"#a03020": `"#a03020"`, "6 # ends": `"6 # ends"`, `"a" # b`: `"\"a\" # b"`, "1\ny = 2": `"1\ny = 2"`,
		"1,5": `"1,5"`, `{ a = 1, a = 2 }`: `"{ a = 1, a = 2 }"`, "[x]": `"[x]"`, `"open`: `"\"open"`, "x = 1": `"x = 1"`,
		"(blue 12) x fill": `"(blue 12) x fill"`, "5'6\"": `"5'6\""`, "null": `"null"`,
		strings.Repeat("[", 20) + strings.Repeat("]", 20): `"` + strings.Repeat("[", 20) + strings.Repeat("]", 20) + `"`,
	} {
		if got := string(ParseValue(text).JSON()); got != want {
			t.Errorf("%q is %s, want %s", text, got, want)
		}
	}
}

// TestValues: a value is read from JSON and written as it was, and says whether
// it is a text.
func TestValues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Value{drawNode(t, 3)}
		again, err := ValueOf(v.JSON())
		var other Value
		if err != nil || string(again.JSON()) != string(v.JSON()) || json.Unmarshal(v.JSON(), &other) != nil {
			t.Fatalf("%s is %s: %v", v.JSON(), again.JSON(), err)
		}
		inside, err := json.Marshal(map[string]Value{"v": other})
		if err != nil || !json.Valid(inside) || other.String() != v.String() {
			t.Fatalf("%s, %v, %s", inside, err, other)
		}
		if text, ok := v.Text(); ok != (v.JSON()[0] == '"') || ok && (text != v.String() || string(TextValue(text).JSON()) != string(v.JSON())) {
			t.Fatalf("%s is the text %q", v.JSON(), text)
		}
		if said := ParseValue(v.n.spelled()); string(said.JSON()) != string(v.JSON()) {
			t.Fatalf("%s is spelled %s, which is %s", v.JSON(), v.n.spelled(), said.JSON())
		}
	})
	var none Value
	if text, ok := none.Text(); !none.IsZero() || none.JSON() != nil || none.String() != "" || text != "" || ok {
		t.Errorf("none is %q", none)
	}
	if raw, err := json.Marshal(none); string(raw) != "null" || err != nil {
		t.Errorf("none is %s, %v", raw, err)
	}
	if _, err := ValueOf([]byte("{]")); codeOf(err) != "json.syntax  ]" {
		t.Error(err)
	}
}

// TestCutSetting: the first = outside quotes parts path and value.
func TestCutSetting(t *testing.T) {
	for text, want := range map[string]string{
		"warp.sett=24 epi": "warp.sett|24 epi", "name = a = b": "name|a = b", `extras."a = b"=1 in`: `extras."a = b"|1 in`,
		`yarns."a\"=".count= 8/2 Ne `: `yarns."a\"=".count|8/2 Ne`, "name=": "name|", "=x": "|x", `name="="`: `name|"="`,
		"warp.sett": "none", `"a=b`: "none", "": "none", `"a\`: "none",
	} {
		path, value, ok := CutSetting(text)
		if got := path + "|" + value; ok != (want != "none") || ok && got != want {
			t.Errorf("%q is %s, %v, want %s", text, got, ok, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		path := join(join("", drawnKeys.Draw(t, "table")), drawnKeys.Draw(t, "key"))
		value := strings.TrimSpace(drawnTexts.Draw(t, "value"))
		if p, v, ok := CutSetting(path + "=" + value); !ok || p != path || v != value {
			t.Fatalf("%q and %q are cut into %q and %q", path, value, p, v)
		}
	})
}
