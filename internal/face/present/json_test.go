package present_test

import (
	"math/big"
	"os"
	"reflect"
	"strings"
	"testing"

	"sley/internal/engine/reckon"
	"sley/internal/face/present"
	"sley/internal/trade/problem"
)

// Every field that --json prints is described in docs/json.md.
func TestJSONIsDescribed(t *testing.T) {
	text, err := os.ReadFile("../../../docs/json.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, shape := range []any{
		present.JSON{},
		present.FoundJSON{},
		present.NodeJSON{},
		present.ProblemJSON{},
		present.YarnJSON{},
		present.YarnSystemJSON{},
		problem.Place{},
		present.LabelJSON{},
		present.LabelFormJSON{},
		present.LabelShareJSON{},
		present.LabelYarnJSON{},
		present.CareJSON{},
		present.FinishingJSON{},
		present.StepJSON{},
		present.MeasuresJSON{},
		present.FigureJSON{},
	} {
		fields := reflect.TypeOf(shape)
		for i := range fields.NumField() {
			name, _, _ := strings.Cut(fields.Field(i).Tag.Get("json"), ",")
			if name == "" || !strings.Contains(string(text), "`"+name+"`") {
				t.Errorf("%s: field %q is not described", fields, name)
			}
		}
	}
}

// The exact value, the nearest double and the node agree.
func TestJSONHoldsTheNodes(t *testing.T) {
	for name, r := range plans(t) {
		shape := present.JSONOf(r, &r.Problems, present.Imperial)
		if len(shape.Nodes) != len(r.Nodes) || len(shape.Problems) != r.Problems.Len() {
			t.Fatalf("%s: %d nodes, %d problems, want %d, %d", name, len(shape.Nodes), len(shape.Problems), len(r.Nodes), r.Problems.Len())
		}
		for i, n := range shape.Nodes {
			exact, ok := new(big.Rat).SetString(n.Exact)
			if !ok || exact.Cmp(r.Nodes[i].Is.Big()) != 0 || n.ID != r.Nodes[i].ID {
				t.Errorf("%s: %s is %s, want %s", name, n.ID, n.Exact, r.Nodes[i].Is)
			}
			if r.Nodes[i].Kind == reckon.Length && n.Unit != "in" {
				t.Errorf("%s: %s has unit %q", name, n.ID, n.Unit)
			}
		}
	}
}
