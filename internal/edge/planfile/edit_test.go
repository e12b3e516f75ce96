package planfile

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const twoPieces = `{"sley":1,"name":"towels","pieces":[{"length":"28 in","width":"18 in"},{"length":"12 in"}],` +
	`"yarns":{"white":{"count":"8/2 Ne"},"a.b":{"count":"8"}},"warp":{"sett":"24 epi"}}`

func readJSONOf(t *testing.T, text string) *Document {
	t.Helper()
	d, err := ReadJSON([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func codeOf(err error) string {
	var f *Fault
	if !errors.As(err, &f) {
		return ""
	}
	return f.Code + " " + f.Path + " " + f.Read
}

// TestSet: where a value goes, and what is made on the way.
func TestSet(t *testing.T) {
	for _, c := range []struct{ path, value, want string }{
		{"name", `mats`, `"name":"mats"`},
		{"pieces[0].length", "30 in", `"pieces":[{"length":"30 in","width":"18 in"},`},
		{"pieces[1].width", "9 in", `{"length":"12 in","width":"9 in"}]`},
		{"pieces[1].count", "3", `{"count":3,"length":"12 in"}]`},
		{"pieces[2].length", "9 in", `{"length":"12 in"},{"length":"9 in"}]`},
		{"pieces[0].first.hem", "1 in", `"width":"18 in","first":{"hem":"1 in"}}`},
		{`yarns."a.b".count`, "Nm 8/2", `"a.b":{"count":"Nm 8/2"}}`},
		{`yarns."x\"[1]".fibre`, "wool", `"x\"[1]":{"fibre":"wool"}}`},
		{"yarns.white.fibre", "cotton", `"white":{"count":"8/2 Ne","fibre":"cotton"}`},
		{"weft.picks", "22 ppi", `"warp":{"sett":"24 epi"},"weft":{"picks":"22 ppi"}}`},
		{"weave", "plain", `"name":"towels","weave":"plain","pieces"`},
		{"winding.pegs[0]", "start 0 cm, 0 cm", `"winding":{"pegs":["start 0 cm, 0 cm"]}`},
		{"warp", "true", `"warp":true}`},
		{"warp.sett", `["a", { b = 1 }]`, `"sett":["a",{"b":1}]`},
		{"unknown", "1", `"unknown":1}`},
		{"sley", "1", `{"sley":1,`},
		{"sley", "x", `{"sley":"x",`},
		{"loom.waste", `{ tie-on = "1 in" }`, `"loom":{"waste":{"tie-on":"1 in"}}`},
	} {
		d := readJSONOf(t, twoPieces)
		if err := d.Set(c.path, ParseValue(c.value)); err != nil || !strings.Contains(string(d.JSON()), c.want) {
			t.Errorf("%s = %s: %v\n%s", c.path, c.value, err, d.JSON())
		}
		if again := readJSONOf(t, string(d.JSON())); !again.Equal(d) {
			t.Errorf("%s: %+v", c.path, Differences(d, again))
		}
	}
}

// TestFaultsOfPaths: what cannot be written says why, and nothing is changed.
func TestFaultsOfPaths(t *testing.T) {
	d := readJSONOf(t, twoPieces)
	set := func(path string) error { return d.Set(path, TextValue("x")) }
	for got, want := range map[error]string{
		set("name.x"):                        "path.through name towels",
		set("name[0]"):                       "path.through name towels",
		set("pieces[3]"):                     "path.index pieces[3] pieces[3]",
		set("pieces[3].length"):              "path.index pieces[3] pieces[3]",
		set("winding.pegs[1]"):               "path.index winding.pegs[1] winding.pegs[1]",
		set("pieces.length"):                 "path.list pieces length",
		set("warp[0]"):                       "path.table warp warp[0]",
		set("a..b"):                          "path.syntax  a..b",
		set("pieces[0"):                      "path.syntax  pieces[0",
		set(""):                              "path.empty  ",
		set("a" + strings.Repeat(".a", 12)):  "file.deep a" + strings.Repeat(".a", 12) + " ",
		set("a" + strings.Repeat("[0]", 12)): "file.deep a" + strings.Repeat("[0]", 12) + " ",
		d.Set("a.b", Value{}):                "value.none a.b ",
		d.Set("a.b", TextValue("\xff")):      "text.not-utf8 a.b ",
		d.Set("sley", ParseValue("2")):       "format.newer sley 2",
		d.Set("a.a.a.a.a.a.a.a.a.a", ParseValue("[[[1]]]")): "file.deep a.a.a.a.a.a.a.a.a.a ",
		d.Insert("name", TextValue("x")):                    "path.item name name",
		d.Insert("pieces[3]", TextValue("x")):               "path.index pieces[3] pieces[3]",
		d.Move("pieces[2]", 0):                              "path.nothing pieces[2] pieces[2]",
		d.Move("name", 0):                                   "path.item name name",
		d.Move("", 0):                                       "path.item  ",
		d.Move("pieces[0]", 2):                              "path.index pieces[0] 2",
		d.Move("pieces[", 0):                                "path.syntax  pieces[",
		d.Graft("name.x", NewDocument()):                    "path.through name towels",
	} {
		if codeOf(got) != want {
			t.Errorf("%v, want %s", got, want)
		}
	}
	for _, path := range []string{"", "name.x", "pieces[2]", "pieces[", "yarns.a.b", "warp.reed"} {
		if d.Remove(path) {
			t.Errorf("%q was removed", path)
		}
	}
	if string(d.JSON()) != twoPieces {
		t.Errorf("it was changed: %s", d.JSON())
	}
}

// TestSetAndGet: what was set is got, everything else stays, and the copy from
// which the document came is as it was.
func TestSetAndGet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before := drawDocument(t)
		text := string(before.JSON())
		d := before.Clone()
		path, value := drawPath(t, d), Value{drawNode(t, 2)}
		err := d.Set(path, value)
		if string(before.JSON()) != text {
			t.Fatalf("the first was changed: %s, then %s", text, before.JSON())
		}
		if err != nil {
			if codeOf(err) == "" || string(d.JSON()) != text {
				t.Fatalf("%v: %s is %s", err, text, d.JSON())
			}
			return
		}
		got, ok := d.Get(path)
		if !ok || string(got.JSON()) != string(value.JSON()) {
			t.Fatalf("%s is %s, want %s", path, got.JSON(), value.JSON())
		}
		for _, diff := range Differences(before, d) {
			if !onTheWay(diff.Path, path) && !onTheWay(path, diff.Path) {
				t.Fatalf("%s changed %+v", path, diff)
			}
		}
		readsAgain(t, d)
	})
}

// onTheWay reports whether a path leads over another, or is it.
func onTheWay(over, path string) bool {
	rest, ok := strings.CutPrefix(path, over)
	return ok && (over == "" || rest == "" || rest[0] == '.' || rest[0] == '[')
}

func readsAgain(t *rapid.T, d *Document) {
	again, err := ReadJSON(d.JSON())
	if err != nil || !again.Equal(d) {
		t.Fatalf("%v: %s", err, d.JSON())
	}
	if fromText, list := ReadText("plan.toml", d.Text()); fromText == nil || !fromText.Equal(d) {
		t.Fatalf("%v\n%s", told(list), d.Text())
	}
}

// TestRemove: what was removed is gone, and only that; a new key that is removed
// again leaves the document as it was.
func TestRemove(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDocument(t)
		d.Remove("find") // which speaks of pieces, and is tested with them
		d.Remove("built")
		path := drawPath(t, d)
		was, there := d.Get(path)
		c := d.Clone()
		if c.Remove(path) != (there && path != "") {
			t.Fatalf("%s of %s", path, d.JSON())
		}
		if !there || path == "" {
			if string(c.JSON()) != string(d.JSON()) {
				t.Fatalf("%s changed %s", path, d.JSON())
			}
			return
		}
		if strings.HasSuffix(path, "]") {
			if err := c.Insert(path, was); err != nil || string(c.JSON()) != string(d.JSON()) {
				t.Fatalf("%s of %s put in again: %v, %s", path, d.JSON(), err, c.JSON())
			}
			return
		}
		if _, ok := c.Get(path); ok {
			t.Fatalf("%s is still in %s", path, c.JSON())
		}
		if err := c.Set(path, was); err != nil {
			t.Fatal(err)
		}
		for _, diff := range Differences(c, d) {
			if !diff.Order {
				t.Fatalf("%+v", diff)
			}
		}
	})
}
