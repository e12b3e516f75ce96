package record_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"sley/internal/trade/record"
)

func step(id string, from, to int) record.Event {
	return record.Event{ID: id, Topic: record.Progress, What: record.Woven, State: record.Step, From: from, Place: to}
}

func set(id string, to int) record.Event {
	return record.Event{ID: id, Topic: record.Progress, What: record.Woven, Place: to}
}

func TestReached(t *testing.T) {
	for name, c := range map[string]struct {
		events []record.Event
		want   int
	}{
		"nothing said":                   {nil, 0},
		"one after another":              {[]record.Event{step("a", 0, 1), step("b", 1, 2)}, 2},
		"two devices press for one pick": {[]record.Event{step("a", 0, 1), step("b", 0, 1)}, 1},
		"said late, others are further":  {[]record.Event{step("a", 0, 1), set("b", 10), step("c", 1, 2)}, 10},
		"unwoven":                        {[]record.Event{set("a", 10), step("b", 10, 9), step("c", 9, 8)}, 8},
		"unwoven late":                   {[]record.Event{set("a", 10), step("b", 10, 11), step("c", 10, 9)}, 11},
		"onward from what was unwoven":   {[]record.Event{set("a", 10), step("b", 10, 8), step("c", 10, 11)}, 8},
		"jumped back":                    {[]record.Event{set("a", 10), set("b", 3)}, 3},
		"cancelled":                      {[]record.Event{set("a", 10), set("b", 3), {ID: "c", Cancels: "b"}}, 10},
		"another path":                   {[]record.Event{{What: record.Woven, Path: "x", Place: 7}}, 0},
		"another kind":                   {[]record.Event{{What: record.Dressed, Place: 7}}, 0},
	} {
		if got := record.Reached(c.events, record.Woven, ""); got != c.want {
			t.Errorf("%s: %d, want %d", name, got, c.want)
		}
	}
}

// Two devices weave on, each from where it last knew the work to be, in whatever order the
// book takes what they say, some of it twice: the work is where the further one is, and no
// pick is counted twice.
func TestTwoDevicesWeaveOn(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		var each [2][]record.Event
		furthest := 0
		for device := range each {
			last := rapid.IntRange(0, 30).Draw(r, "picks")
			for pick := range last {
				each[device] = append(each[device], step(fmt.Sprint(device, pick), pick, pick+1))
			}
			furthest = max(furthest, last)
		}
		// Each device's own are in order; the book takes them mixed.
		var mixed []record.Event
		for len(each[0])+len(each[1]) > 0 {
			next := rapid.IntRange(0, 1).Draw(r, "next")
			if len(each[next]) == 0 {
				next = 1 - next
			}
			mixed, each[next] = append(mixed, each[next][0]), each[next][1:]
		}
		if got := record.Reached(mixed, record.Woven, ""); got != furthest {
			r.Fatalf("%d picks, want %d", got, furthest)
		}
		if again := record.Reached(append(mixed, mixed...), record.Woven, ""); again != furthest {
			r.Fatalf("said again: %d picks, want %d", again, furthest)
		}
	})
}
