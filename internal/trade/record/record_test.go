package record

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"testing"
)

func TestCancelledEventsDoNotStand(t *testing.T) {
	all := []Event{{ID: "a"}, {ID: "b"}, {ID: "c", Cancels: "a"}, {ID: "d"}, {ID: "e", Cancels: "d"}}
	got := Standing(all)
	if len(got) != 1 || got[0].ID != "b" || len(all) != 5 || all[0].ID != "a" {
		t.Errorf("%v of %v", got, all)
	}
}

func TestEveryTopicHasWhats(t *testing.T) {
	seen := map[string]bool{}
	for _, topic := range Topics() {
		if len(topic.Whats()) == 0 {
			t.Errorf("nothing happens in %s", topic)
		}
		for _, what := range topic.Whats() {
			if seen[what] {
				t.Errorf("%s happens in two topics", what)
			}
			seen[what] = true
		}
	}
	if Topic("cat").Whats() != nil {
		t.Error("something happens in no topic")
	}
}

func TestTroubleIsToldByItsCode(t *testing.T) {
	codes := TroubleCodes()
	slices.Sort(codes)
	if len(slices.Compact(codes)) != len(TroubleCodes()) {
		t.Error("a code stands for two troubles")
	}
	err := fmt.Errorf("open: %w", &Trouble{Code: Damaged, Path: "p", Found: "f", Err: fs.ErrInvalid})
	if !Is(err, Damaged) || Is(err, Full) || Is(nil, Damaged) || !errors.Is(err, fs.ErrInvalid) || err.Error() != "open: book.damaged: p: f: invalid argument" {
		t.Error(err)
	}
}
