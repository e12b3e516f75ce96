package app_test

import (
	"testing"

	"sley/internal/app"
)

// Acts as a command says them are the JSON of docs/api.md.
func TestSaidActs(t *testing.T) {
	for said, want := range map[string]string{
		"do=mirror part=threading from=0 to=4":               `[{"do":"mirror","from":0,"part":"threading","to":4}]`,
		" do=type  part=threading from=0 to=6 text=1-4 3 2 ": `[{"do":"type","from":0,"part":"threading","text":"1-4 3 2","to":6}]`,
		"do=put part=threading at=2 remove=1 put=4,3":        `[{"at":2,"do":"put","part":"threading","put":[4,3],"remove":1}]`,
		"do=put part=ties at=0 remove=1 put=f":               `[{"at":0,"do":"put","part":"ties","put":["f"],"remove":1}]`,
		"do=cells cells=0:1,2:3 up=true":                     `[{"cells":[[0,1],[2,3]],"do":"cells","up":true}]`,
		"do=change name=ends-times value=2":                  `[{"do":"change","name":"ends-times","value":"2"}]`,
		`{"do": "reverse", "part": "threading", "to": 3}`:    `[{"do": "reverse", "part": "threading", "to": 3}]`,
		"": `[{}]`,
	} {
		if got := string(app.SaidActs([]string{said})); got != want {
			t.Errorf("%q: %s, want %s", said, got, want)
		}
	}
}

// What cannot be read of acts is told for each of them, and there are none then.
func TestReadActsTellsAll(t *testing.T) {
	for text, want := range map[string][]string{
		"nonsense": {"acts act.json"},
		`[{"do": "cells", "cells": [[1], [1, 2], [1, 2, 3]]}]`:                               {"acts[0].cells[0] act.cell", "acts[0].cells[2] act.cell"},
		`[{"do": "put", "colour": 3}, {"do": 3}]`:                                            {"acts[0] act.json", "acts[1] act.json"},
		`[{"do": "put", "part": "ties", "put": [3, "g", "f"]}, {"do": "shed", "shed": "x"}]`: {"acts[0].put[0] act.value", "acts[0].put[1] act.value", "acts[1].shed act.shed"},
		`[{"do": "put", "part": "palette", "put": ["#12345", "123456", "#25407c"]}]`:         {"acts[0].put[0] act.value", "acts[0].put[1] act.value"},
		`{"do": "put", "part": "threading", "put": [1.5, 99999999999]}`:                      {"acts[0].put[0] act.value", "acts[0].put[1] act.value"},
	} {
		acts, list := app.ReadActs([]byte(text))
		wantCodes(t, text, list, want...)
		if acts != nil {
			t.Errorf("%s: %v", text, acts)
		}
	}
	if acts, list := app.ReadActs([]byte(`{"do": "put", "part": "ties", "at": 1, "put": ["f"]}`)); list.Failed() || len(acts) != 1 || acts[0].Put[0] != 15 || acts[0].At != 1 {
		t.Errorf("%+v, %v", acts, codesOf(list))
	}
}

// FuzzReadActs: whatever is read, nothing breaks, and what is refused says so.
func FuzzReadActs(f *testing.F) {
	f.Add(`[{"do": "put", "part": "ties", "put": ["f"]}]`)
	f.Add(`{"do": "cells", "cells": [[0, 1]]}`)
	f.Fuzz(func(t *testing.T, text string) {
		if acts, list := app.ReadActs([]byte(text)); list.Failed() == (acts != nil) {
			t.Errorf("%q: %v, %v", text, acts, codesOf(list))
		}
	})
}

// Why an act cannot be read is said in words of its own.
func TestUnreadableActsSayWhy(t *testing.T) {
	for text, want := range map[string]string{
		"nonsense":                      "it is no JSON",
		`{"do": "put", "colour": 3}`:    `there is no "colour" in one`,
		`{"do": 3}`:                     "do is to be a text, and is a number",
		`{"do": "cells", "cells": "x"}`: "cells is to be a list, and is a string",
		`[3]`:                           "is to be an act, and is a number",
	} {
		if _, list := app.ReadActs([]byte(text)); list.Len() != 1 || list.All()[0].Args["why"] != want {
			t.Errorf("%s: %+v, want %s", text, list.All(), want)
		}
	}
}
