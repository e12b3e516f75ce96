package app

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"sley/internal/engine/review"
	"sley/internal/engine/strokes"
	"sley/internal/trade/loom"
	"sley/internal/trade/problem"
)

// actJSON is an act as docs/api.md has it.
type actJSON struct {
	Do        string            `json:"do"`
	Part      string            `json:"part"`
	At        int               `json:"at"`
	Remove    int               `json:"remove"`
	Put       []any             `json:"put"`
	From      int               `json:"from"`
	To        int               `json:"to"`
	Times     int               `json:"times"`
	By        int               `json:"by"`
	Rule      string            `json:"rule"`
	Start     int               `json:"start"`
	First     int               `json:"first"`
	Last      int               `json:"last"`
	Run       int               `json:"run"`
	Length    int               `json:"length"`
	Text      string            `json:"text"`
	Cells     [][]int           `json:"cells"`
	Up        bool              `json:"up"`
	Number    int               `json:"number"`
	Shed      string            `json:"shed"`
	Name      string            `json:"name"`
	Value     string            `json:"value"`
	Weave     string            `json:"weave"`
	Values    map[string]string `json:"values"`
	System    string            `json:"system"`
	Threading string            `json:"threading"`
	Treadling string            `json:"treadling"`
	Blocks    []string          `json:"blocks"`
	Feet      string            `json:"feet"`
}

// ReadActs reads acts on a table from JSON, a list of them or one. What of them cannot be
// read is told for each, at acts[i]; then there are none.
func ReadActs(text []byte) ([]TableAct, *problem.List) {
	list := &problem.List{}
	text = bytes.TrimSpace(text)
	if !bytes.HasPrefix(text, []byte("[")) {
		text = []byte("[" + string(text) + "]")
	}
	var raw []json.RawMessage
	if err := json.Unmarshal(text, &raw); err != nil {
		list.Fail("act.json", "acts", short(string(text)), problem.Args{"why": unreadable(err)})
		return nil, list
	}
	out := make([]TableAct, len(raw))
	for i := range raw {
		out[i] = readAct(i, raw[i], list)
	}
	if list.Failed() {
		return nil, list
	}
	return out, list
}

func readAct(i int, text []byte, list *problem.List) TableAct {
	var in actJSON
	at := fmt.Sprintf("acts[%d]", i)
	from := json.NewDecoder(bytes.NewReader(text))
	from.UseNumber()
	from.DisallowUnknownFields()
	if err := from.Decode(&in); err != nil {
		list.Fail("act.json", at, short(string(text)), problem.Args{"why": unreadable(err)})
		return TableAct{}
	}
	shed, ok := loom.ParseShed(in.Shed)
	if in.Shed != "" && !ok {
		list.Fail("act.shed", at+".shed", in.Shed, problem.Args{"valid": loom.ShedNames()})
	}
	a := TableAct{Act: strokes.Act{
		Do: strokes.Deed(in.Do), Part: strokes.Part(in.Part), At: in.At, Remove: in.Remove, From: in.From, To: in.To,
		Times: in.Times, By: in.By, Rule: strokes.Rule(in.Rule), Start: in.Start, First: in.First, Last: in.Last,
		Run: in.Run, Length: in.Length, Text: in.Text, Up: in.Up, Number: in.Number, Shed: shed,
	}, Name: in.Name, Value: in.Value, Weave: in.Weave, Values: in.Values}
	a.Blocks = Blocked{System: in.System, Threading: in.Threading, Treadling: in.Treadling, Ties: in.Blocks, Feet: in.Feet}
	for j, v := range in.Put {
		value, ok := readValue(a.Part, v)
		if !ok {
			list.Fail("act.value", fmt.Sprintf("%s.put[%d]", at, j), fmt.Sprint(v), problem.Args{"part": in.Part})
		}
		a.Put = append(a.Put, value)
	}
	for j, c := range in.Cells {
		if len(c) != 2 {
			list.Fail("act.cell", fmt.Sprintf("%s.cells[%d]", at, j), strings.Trim(fmt.Sprint(c), "[]"), nil)
			continue
		}
		a.Cells = append(a.Cells, strokes.Cell{Pick: c[0], End: c[1]})
	}
	return a
}

// unreadable says why JSON is no act.
func unreadable(err error) string {
	var other *json.UnmarshalTypeError
	if errors.As(err, &other) {
		return strings.TrimSpace(fmt.Sprintf("%s is to be %s, and is a %s", other.Field, kindsOf[other.Type.Kind()], other.Value))
	}
	if name, ok := strings.CutPrefix(err.Error(), "json: unknown field "); ok {
		return "there is no " + name + " in one"
	}
	return "it is no JSON"
}

// kindsOf are the kinds of values in an act.
var kindsOf = map[reflect.Kind]string{
	reflect.Int: "a whole number", reflect.String: "a text", reflect.Bool: "true or false", reflect.Slice: "a list", reflect.Map: "names and values", reflect.Struct: "an act",
}

// readValue reads an entry of a part: a whole number, a set in hexadecimal, a colour.
func readValue(part strokes.Part, v any) (strokes.Value, bool) {
	switch part {
	case strokes.Ties, strokes.Lowered, strokes.Treadling, strokes.Lifts:
		text, ok := v.(string)
		n, err := strconv.ParseUint(text, 16, 64)
		return strokes.Value(n), ok && err == nil
	case strokes.Palette:
		text, ok := v.(string)
		hex, marked := strings.CutPrefix(text, "#")
		n, err := strconv.ParseUint(hex, 16, 32)
		return strokes.Value(n), ok && marked && len(hex) == 6 && err == nil
	}
	number, ok := v.(json.Number)
	n, err := number.Int64()
	return strokes.Value(n), ok && err == nil && n >= math.MinInt32 && n <= math.MaxInt32
}

// RemedyActs are the acts of a remedy as docs/api.md has them: what can be made of the draft
// itself.
func RemedyActs(m review.Remedy) []any {
	out := []any{}
	for i := range m.Acts {
		out = append(out, actOut(&m.Acts[i]))
	}
	for _, name := range m.Changes {
		out = append(out, map[string]any{"do": DeedChange, "name": name})
	}
	return out
}

// actOut is an act as readAct reads it, what is nothing left out.
func actOut(a *strokes.Act) map[string]any {
	out := map[string]any{"do": a.Do}
	for key, n := range map[string]int{
		"at": a.At, "remove": a.Remove, "from": a.From, "to": a.To, "times": a.Times, "by": a.By, "start": a.Start,
		"first": a.First, "last": a.Last, "run": a.Run, "length": a.Length, "number": a.Number,
	} {
		if n != 0 {
			out[key] = n
		}
	}
	for key, text := range map[string]string{"part": string(a.Part), "rule": string(a.Rule), "text": a.Text, "shed": a.Shed.String()} {
		if text != "" {
			out[key] = text
		}
	}
	if a.Put != nil {
		put := make([]any, len(a.Put))
		for i, v := range a.Put {
			put[i] = valueOf(a.Part, v)
		}
		out["put"] = put
	}
	if a.Do == strokes.Cells {
		cells := make([][2]int, len(a.Cells))
		for i, c := range a.Cells {
			cells[i] = [2]int{c.Pick, c.End}
		}
		out["cells"], out["up"] = cells, a.Up
	}
	return out
}

// PartSplice is a change of one part of a table, as docs/api.md has it.
type PartSplice struct {
	At     int   `json:"at"`
	Remove int   `json:"remove"`
	Put    []any `json:"put"`
}

// Parts gives the splices by the names of their parts.
func (d *Drew) Parts() map[string]PartSplice {
	out := map[string]PartSplice{}
	for part, s := range d.Splices {
		put := make([]any, len(s.Put))
		for i, v := range s.Put {
			put[i] = valueOf(part, v)
		}
		out[string(part)] = PartSplice{s.At, s.Remove, put}
	}
	return out
}

// valueOf is an entry of a part as readValue reads it.
func valueOf(part strokes.Part, v strokes.Value) any {
	switch part {
	case strokes.Ties, strokes.Lowered, strokes.Treadling, strokes.Lifts:
		return strconv.FormatUint(uint64(v), 16)
	case strokes.Palette:
		return fmt.Sprintf("#%06x", uint64(v))
	}
	return int64(v)
}

// short is the beginning of a text.
func short(text string) string {
	const most = 80
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}
