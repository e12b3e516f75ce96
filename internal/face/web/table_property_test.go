package web_test

import (
	"fmt"
	"math/rand/v2"
	"net/http"
	"reflect"
	"testing"

	"sley/internal/face/present"
)

// Whatever is drawn, what the splices lead to is what the server then has; and undone step by
// step it ends where it began, and redone where it was.
func TestGesturesAndUndoEndWhereTheyBegan(t *testing.T) {
	r := newReal(t)
	rosepath, _ := r.named("drafts", "Rosepath")
	towels, _ := r.warpNamed("Galley towels")
	for seed, id := range []int{rosepath, towels, rosepath} {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			r.t = t
			r.drawnAndUndone(id, rand.New(rand.NewPCG(uint64(seed), 7)))
		})
	}
}

func (r *real) table(id int) present.TableJSON {
	r.t.Helper()
	var now present.TableJSON
	if status := r.ask("GET", tableURL(id, ""), nil, &now); status != http.StatusOK {
		r.t.Fatal(status)
	}
	return now
}

func (r *real) drawnAndUndone(id int, random *rand.Rand) {
	r.t.Helper()
	states := []present.TableJSON{r.table(id)}
	for range 25 {
		was := states[len(states)-1]
		var drew drewIn
		acts := []map[string]any{drawnAct(random, was)}
		status := r.ask("POST", tableURL(id, ""), map[string]any{"base": was.Version, "window": "w-draws", "acts": acts}, &drew)
		now := r.table(id)
		if status == http.StatusUnprocessableEntity {
			if now.Version != was.Version {
				r.t.Fatalf("%v was refused, and version %d became %d", acts, was.Version, now.Version)
			}
			continue
		}
		if status != http.StatusOK || drew.Version != now.Version {
			r.t.Fatalf("%v: %d, version %d, and the table has %d", acts, status, drew.Version, now.Version)
		}
		if led := splicedList(was.Threading, drew, "threading"); !reflect.DeepEqual(led, anyList(now.Threading)) {
			r.t.Fatalf("%v: the splices lead to %v, and the table has %v", acts, led, now.Threading)
		}
		if led := splicedList(was.Treadling, drew, "treadling"); !reflect.DeepEqual(led, anyList(now.Treadling)) {
			r.t.Fatalf("%v: the splices lead to %v, and the table has %v", acts, led, now.Treadling)
		}
		if now.Version != was.Version {
			states = append(states, now)
		}
	}
	if len(states) < 8 {
		r.t.Fatalf("only %d gestures changed anything", len(states)-1)
	}
	for i := len(states) - 1; i > 0; i-- {
		r.step(id, "undo", states[i-1])
	}
	for i := 1; i < len(states); i++ {
		r.step(id, "redo", states[i])
	}
}

// step undoes or redoes, and holds what stands then to what stood.
func (r *real) step(id int, way string, want present.TableJSON) {
	r.t.Helper()
	var done struct{ Version int }
	if status := r.ask("POST", fmt.Sprintf("/api/documents/%d/%s", id, way), map[string]any{"base": r.table(id).Version, "window": "w-draws"}, &done); status != http.StatusOK {
		r.t.Fatal(way, status)
	}
	now := r.table(id)
	now.Version, want.Version = 0, 0
	if !reflect.DeepEqual(now, want) {
		r.t.Fatalf("%s: %+v, want %+v", way, now, want)
	}
}

// drawnAct is any act, sensible or not.
func drawnAct(random *rand.Rand, of present.TableJSON) map[string]any {
	ends, picks := len(of.Threading), max(len(of.Treadling), len(of.Lifts))
	part, n := "threading", ends
	if random.IntN(2) == 0 {
		if part, n = "treadling", picks; len(of.Lifts) > 0 {
			part = "lifts"
		}
	}
	from := random.IntN(n)
	to := from + 1 + random.IntN(n-from)
	value := func() any {
		if part == "threading" {
			return 1 + random.IntN(of.Shafts)
		}
		return fmt.Sprintf("%x", 1<<random.IntN(max(of.Treadles, 1)))
	}
	switch random.IntN(7) {
	case 0:
		return map[string]any{"do": "put", "part": part, "at": from, "remove": 1, "put": []any{value(), value()}}
	case 1:
		return map[string]any{"do": "reverse", "part": part, "from": from, "to": to}
	case 2:
		return map[string]any{"do": "mirror", "part": part, "from": from, "to": min(to, from+4)}
	case 3:
		return map[string]any{"do": "delete", "part": part, "from": from, "to": min(to, from+2)}
	case 4:
		return map[string]any{"do": "shift", "part": part, "from": from, "to": to, "by": 1}
	case 5:
		return map[string]any{"do": "cells", "cells": [][2]int{{random.IntN(picks), random.IntN(ends)}}, "up": random.IntN(2) == 0}
	}
	return map[string]any{"do": "put", "part": part, "at": from, "remove": to - from, "put": []any{value()}}
}

// splicedList is a list with the splice of its part.
func splicedList[T any](list []T, drew drewIn, part string) []any {
	out := anyList(list)
	s, ok := drew.Splices[part]
	if !ok {
		return out
	}
	put := make([]any, len(s.Put))
	for i, v := range s.Put {
		if put[i] = v; part == "threading" {
			put[i] = int(v.(float64))
		}
	}
	return append(append(append([]any{}, out[:s.At]...), put...), out[s.At+s.Remove:]...)
}

func anyList[T any](list []T) []any {
	out := make([]any, len(list))
	for i, v := range list {
		out[i] = v
	}
	return out
}
