package planfile

import (
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestBothWritingsAreReadAgain: any tree is the same again from JSON, and equal
// from a plan file, which is written the same again.
func TestBothWritingsAreReadAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDocument(t)
		text := d.JSON()
		fromJSON, err := ReadJSON(text)
		if err != nil || !json.Valid(text) {
			t.Fatalf("%s: %v", text, err)
		}
		if string(fromJSON.JSON()) != string(text) {
			t.Fatalf("JSON is not stable:\n%s\n%s", text, fromJSON.JSON())
		}
		file := d.Text()
		fromText, list := ReadText("plan.toml", file)
		if fromText == nil || list.Len() > 0 {
			t.Fatalf("%v in\n%s", told(list), file)
		}
		if !fromText.Equal(d) || !sameTrees(d.top, fromText.top, "") {
			t.Fatalf("another document: %+v\n%s\n%s\n%s", Differences(d, fromText), text, fromText.JSON(), file)
		}
		if string(fromText.Text()) != string(file) {
			t.Fatalf("the text is not stable:\n%s\n%s", file, fromText.Text())
		}
	})
}

// sameTrees is the slow twin of Equal: it reads both as JSON and compares the
// names of the weaver's own by their order.
func sameTrees(a, b *node, path string) bool {
	var one, two any
	for n, to := range map[*node]*any{a: &one, b: &two} {
		dec := json.NewDecoder(strings.NewReader(string(appendJSON(nil, n))))
		dec.UseNumber()
		if err := dec.Decode(to); err != nil {
			return false
		}
	}
	return reflect.DeepEqual(one, two) && slices.Equal(ownOrders(a), ownOrders(b))
}

// ownOrders lists the names in the tables of the weaver's own.
func ownOrders(top *node) []string {
	var out []string
	for _, path := range ownNames {
		n := top.follow(path)
		if n == nil || n.kind != tableKind {
			continue
		}
		for _, c := range n.items {
			out = append(out, path+" "+c.key)
		}
	}
	return out
}

// TestDocumentsAreDecodedAlike: any tree is the same plan with the same problems
// from JSON and from a plan file.
func TestDocumentsAreDecodedAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDocument(t)
		plan, list := d.Plan("")
		other, _, others := Decode("plan.toml", d.Text())
		if !reflect.DeepEqual(plan, other) || !slices.Equal(told(list), told(others)) {
			t.Fatalf("%+v\n%+v\n%q\n%q\n%s", plan, other, told(list), told(others), d.Text())
		}
	})
}

// TestHalfTyped: what is no value yet is kept as it is and is a problem at its
// path; a key nobody knows too.
func TestHalfTyped(t *testing.T) {
	d, err := ReadJSON([]byte(`{"sley":1,"warp":{"sett":"24 e"},"pieces":[{"length":"30 i","width":"18 in","lenght":1}],"new":{"a":[true]}}`))
	if err != nil {
		t.Fatal(err)
	}
	_, list := d.Plan("")
	want := []string{
		`error density.unknown-unit at warp.sett, read "24 e"`,
		`error key.unknown at new, read "new"`,
		`error key.unknown at pieces[0].lenght, read "lenght"`,
		`error length.unknown-unit at pieces[0].length, read "30 i"`,
	}
	got := told(list)
	if len(got) != len(want) {
		t.Fatalf("%q", got)
	}
	for i := range want {
		if strings.Split(got[i], ",")[0] != strings.Split(want[i], ",")[0] {
			t.Errorf("%s, want %s", got[i], want[i])
		}
	}
	again, _ := ReadText("plan.toml", d.Text())
	if v, ok := again.Get("pieces[0].length"); !ok || v.String() != "30 i" {
		t.Errorf("the half-typed length is %q", v)
	}
	if v, ok := again.Get("new.a[0]"); !ok || v.String() != "true" {
		t.Errorf("the unknown key is %q", v)
	}
}

// TestSpellings: numbers, dates and line ends that only one writing has are the
// same value in the other.
func TestSpellings(t *testing.T) {
	for toml, want := range map[string]string{
		`a = 1_000`: `1000`, `a = 0x10`: `16`, `a = +5`: `5`, `a = -0`: `0`, `a = 0b11`: `3`, `a = 0o17`: `15`,
		`a = +1_0.5_0`: `10.50`, `a = 1e06`: `1e06`, `a = inf`: `"inf"`, `a = -nan`: `"-nan"`, `a = 1e999`: `"1e999"`,
		`a = 2026-03-01`: `"2026-03-01"`, `a = 07:32:00`: `"07:32:00"`, `a = 1979-05-27T07:32:00Z`: `"1979-05-27T07:32:00Z"`,
		"a = \"\"\"\r\nx\r\ny\"\"\"": `"x\ny"`, `a = "x\r\ny"`: `"x\ny"`, `a = 'x\y'`: `"x\\y"`, `a = "x\u00e5"`: `"xå"`,
		`a = 99999999999999999999`: `"99999999999999999999"`,
	} {
		d, list := ReadText("plan.toml", []byte(toml))
		if d == nil {
			t.Fatalf("%s: %v", toml, told(list))
		}
		v, _ := d.Get("a")
		if got := string(d.JSON()); got != `{"a":`+want+`}` || string(v.JSON()) != want {
			t.Errorf("%s is %s, %s, want %s", toml, got, v.JSON(), want)
		}
		again, _ := ReadJSON(d.JSON())
		if !again.Equal(d) {
			t.Errorf("%s: %+v", toml, Differences(d, again))
		}
	}
}

// TestPlacesUntilChanged: problems stand in the file until the document is no
// longer the file.
func TestPlacesUntilChanged(t *testing.T) {
	d, _ := ReadText("plan.toml", []byte("sley = 1\nwarp.sett = \"24 e\"\n[[pieces]]\nlength = \"28 in\"\nwidth = \"18 in\"\n"))
	_, list := d.Plan("")
	if p := list.All()[0]; p.Place.Line != 2 || p.Place.File != "plan.toml" {
		t.Errorf("%+v", p)
	}
	if place, ok := d.Places().Find("pieces[0].width"); !ok || place.Line != 5 {
		t.Errorf("%+v", place)
	}
	c := d.Clone()
	if err := c.Set("name", TextValue("towels")); err != nil {
		t.Fatal(err)
	}
	if _, list := c.Plan(""); list.All()[0].Place.Line != 0 || list.All()[0].Path != "warp.sett" {
		t.Errorf("%+v", list.All())
	}
	if _, list := d.Plan(""); list.All()[0].Place.Line != 2 {
		t.Error("a change of the copy took the places of the first")
	}
}

// TestWhatIsNotRead: the texts of which no document is made.
func TestWhatIsNotRead(t *testing.T) {
	for text, want := range map[string]string{
		"sley = 2\n":                                         "format.newer",
		"a = \"\xff\"\n":                                     "file.not-utf8",
		"a = 18 in\n":                                        "toml.quotes",
		"a = " + strings.Repeat("[", 13):                     "toml.syntax",
		strings.Repeat("a.", 12) + "b = 1\n":                 "file.deep",
		"#" + strings.Repeat("x", largest):                   "file.large",
		"a = [" + strings.Repeat("1,", largest/2-10) + "]\n": "file.large", // an item on each line
		"a = '" + strings.Repeat(`\`, largest*2/3) + "'\n":   "file.large",
	} {
		d, list := ReadText("plan.toml", []byte(text))
		got := ""
		if all := list.All(); len(all) == 1 {
			got = all[0].Code
		}
		if got != want || (d == nil) != (want != "") {
			t.Errorf("%.30q: %q, document %v, want %q", text, got, d != nil, want)
		}
	}
}
