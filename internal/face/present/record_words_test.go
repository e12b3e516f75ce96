package present

import (
	"errors"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"sley/internal/app"
	"sley/internal/trade/record"
)

// whole is a trouble that knows everything.
func whole(code string) *record.Trouble {
	return &record.Trouble{
		Code: code, Path: "/books/saltmarsh.sley", Address: "http://localhost:7070", PID: 4711,
		Found: "found-word", Known: "known-word", Copy: "/books/copies/day.sley", Err: fs.ErrPermission,
	}
}

// TestEveryTroubleHasWords: each code of trouble is said, with what it knows and without.
func TestEveryTroubleHasWords(t *testing.T) {
	if got, want := slices.Sorted(maps.Keys(troubleWords)), slices.Sorted(slices.Values(record.TroubleCodes())); !slices.Equal(got, want) {
		t.Errorf("there are words for %v, and the codes are %v", got, want)
	}
	marks := regexp.MustCompile(`[«»{}]|  `)
	for _, code := range record.TroubleCodes() {
		for _, trouble := range []*record.Trouble{whole(code), {Code: code, Path: "/books/saltmarsh.sley", Found: "3"}} {
			says, do := Trouble(trouble)
			for _, text := range []string{says, do} {
				if text == "" || strings.Contains(text, code) || marks.MatchString(text) || strings.HasSuffix(text, ".") || strings.Contains(text, "!") {
					t.Errorf("%s: %q", code, text)
				}
			}
		}
	}
}

// TestWordsOfTroubleNameOnlyWhatItKnows finds a name in braces that nothing fills.
func TestWordsOfTroubleNameOnlyWhatItKnows(t *testing.T) {
	known := partsOf(whole(record.InUse))
	for code, w := range troubleWords {
		for _, m := range regexp.MustCompile(`\{([a-z]+)\}`).FindAllStringSubmatch(w.wrong+w.fix, -1) {
			if known[m[1]] == "" {
				t.Errorf("%s names {%s}", code, m[1])
			}
		}
	}
}

func TestTrouble(t *testing.T) {
	says, do := Trouble(whole(record.InUse))
	if says != "the book /books/saltmarsh.sley is in use by another sley, process 4711, whose page is at http://localhost:7070" || !strings.Contains(do, "close that sley") {
		t.Errorf("got %q, %q", says, do)
	}
	if says, _ := Trouble(&record.Trouble{Code: record.InUse, Path: "b.sley"}); says != "the book b.sley is in use" {
		t.Errorf("without a holder: %q", says)
	}
	if says, do := Trouble(errors.New("something\x1b else")); says != "something· else" || do != "" {
		t.Errorf("an error that is no trouble: %q, %q", says, do)
	}
	wrapped := errors.Join(errors.New("closing"), &record.Trouble{Code: record.Full, Path: "b.sley"})
	if says, _ := Trouble(wrapped); !strings.Contains(says, "nothing more can be written to b.sley") {
		t.Errorf("trouble inside another error: %q", says)
	}
}

// TestEveryWordOfARecordIsSaid: no kind, stage, act, topic, event or weave is bare.
func TestEveryWordOfARecordIsSaid(t *testing.T) {
	said := map[string]string{}
	for _, k := range record.Kinds() {
		said["kind "+string(k)], said["kinds "+string(k)] = KindName(k), KindNames(k)
	}
	for _, stage := range []string{record.Planned, record.Begun, record.OnTheWay, record.Done} {
		said["stage "+stage] = StageOf(stage)
	}
	for _, a := range record.Acts() {
		said["act "+string(a)] = Act(a)
	}
	for _, topic := range record.Topics() {
		said["topic "+string(topic)] = Topic(topic)
		for _, what := range topic.Whats() {
			said["what "+what] = What(what)
		}
	}
	for _, slug := range app.DraftWeaves() {
		said["weave "+slug] = weaveNames[slug]
	}
	for what, text := range said {
		if text == "" {
			t.Errorf("%s has no words", what)
		}
	}
	if n := len(weaveNames); n != len(app.DraftWeaves()) {
		t.Errorf("%d weaves have names, and drafts are found by %d", n, len(app.DraftWeaves()))
	}
}
