package app_test

import (
	"strings"
	"testing"
	"time"

	"sley/internal/app"
	"sley/internal/edge/book/memory"
	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// benchTime is a warp on the loom, with a clock that a test sets.
type benchTime struct {
	t   *testing.T
	s   *app.Studio
	id  record.ID
	now time.Time
}

// weaving is a plan that says how fast it is woven.
const weaving = towels + "\n[work]\nweaving = \"120 per hour\"\n"

func newBenchTime(t *testing.T, plan string) *benchTime {
	t.Helper()
	a := &benchTime{t: t, now: noon}
	a.s = app.NewStudio(memory.New(), func() time.Time { return a.now }, numbered(), "test")
	a.id = addWarp(t, a.s, plan).ID
	start(t, a.s, a.id)
	return a
}

func (a *benchTime) after(d time.Duration) *benchTime {
	a.now = a.now.Add(d)
	return a
}

func (a *benchTime) h() app.Happened { return app.Happened{Document: a.id, Window: left} }

func (a *benchTime) sitDown() record.Event {
	a.t.Helper()
	return a.right(a.s.SitDown(a.t.Context(), a.h()))
}

func (a *benchTime) standUp(minutes int) record.Event {
	a.t.Helper()
	return a.right(a.s.StandUp(a.t.Context(), a.h(), minutes))
}

func (a *benchTime) right(e record.Event, list *problem.List, err error) record.Event {
	a.t.Helper()
	if err != nil || list.Failed() {
		a.t.Fatal(err, codesOf(list))
	}
	return e
}

func (a *benchTime) wove(pick int) {
	a.t.Helper()
	if list, err := a.s.Wove(a.t.Context(), a.h(), pick); err != nil || list.Failed() {
		a.t.Fatal(err, codesOf(list))
	}
}

func (a *benchTime) hours() *app.Hours {
	a.t.Helper()
	h, err := a.s.Hours(a.t.Context(), a.id)
	if err != nil {
		a.t.Fatal(err)
	}
	return h
}

// A sitting has the minutes between, rounded, and the picks woven meanwhile.
func TestSitting(t *testing.T) {
	a := newBenchTime(t, towels)
	a.wove(20)
	down := a.sitDown()
	if again := a.after(10 * time.Minute).sitDown(); again.ID != down.ID {
		t.Errorf("sitting down twice is %s and %s", down.ID, again.ID)
	}
	if h := a.hours(); h.Sitting == nil || h.Sitting.ID != down.ID || h.Since != 10 || h.Minutes != 10 || h.Forgotten {
		t.Errorf("while she sits: %+v", h)
	}
	a.wove(80)
	up := a.after(34*time.Minute + 31*time.Second).standUp(0)
	if up.Minutes != 45 || up.From != 20 || up.Place != 80 || up.Path != down.ID || up.What != record.Sat {
		t.Errorf("the sitting is %+v", up)
	}
	h := a.hours()
	if h.Sitting != nil || h.Minutes != 45 || h.Picks != 60 || !h.Own || h.Pace.String() != "80" {
		t.Errorf("after it: %+v, %s picks an hour", h, h.Pace)
	}
	_, list, err := a.s.StandUp(t.Context(), a.h(), 0)
	if err != nil {
		t.Fatal(err)
	}
	wantCodes(t, "standing up twice", list, " sitting.none")
}

// Said twice, as when an answer was lost, a sitting begins and ends once.
func TestSittingSaidTwice(t *testing.T) {
	a := newBenchTime(t, towels)
	down, up := a.h(), a.h()
	down.ID, up.ID = "down-0000001", "up-000000001"
	for range 2 {
		a.right(a.s.SitDown(t.Context(), down))
	}
	a.after(5 * time.Minute)
	for range 2 {
		if e := a.right(a.s.StandUp(t.Context(), up, 0)); e.Minutes != 5 {
			t.Errorf("it was %d minutes", e.Minutes)
		}
		a.after(time.Hour)
	}
	a.right(a.s.SitDown(t.Context(), down)) // said late, it begins nothing anew
	if h := a.hours(); h.Minutes != 5 || h.Sitting != nil {
		t.Errorf("%d minutes, sitting %+v", h.Minutes, h.Sitting)
	}
}

// A sitting that was forgotten, or that begins later than it ends, asks how long it was.
func TestForgottenSitting(t *testing.T) {
	for what, later := range map[string]time.Duration{"forgotten": 24*time.Hour + time.Minute, "a clock set back": -time.Hour} {
		a := newBenchTime(t, towels)
		a.sitDown()
		a.after(later)
		_, list, err := a.s.StandUp(t.Context(), a.h(), 0)
		if err != nil {
			t.Fatal(err)
		}
		wantCodes(t, what, list, "minutes sitting.long")
		if h := a.hours(); !h.Forgotten || h.Minutes != 0 || h.Sitting == nil {
			t.Errorf("%s: %+v", what, h)
		}
		for _, minutes := range []int{-1, 24*60 + 1} {
			_, list, err := a.s.StandUp(t.Context(), a.h(), minutes)
			if err != nil {
				t.Fatal(err)
			}
			wantCodes(t, what, list, "minutes sitting.minutes")
		}
		if a.standUp(50); a.hours().Minutes != 50 {
			t.Errorf("%s: %d minutes", what, a.hours().Minutes)
		}
	}
	a := newBenchTime(t, towels)
	a.sitDown()
	if up := a.after(24 * time.Hour).standUp(0); up.Minutes != 24*60 {
		t.Errorf("a day is %d minutes", up.Minutes)
	}
	a.sitDown()
	if up := a.after(2 * time.Second).standUp(0); up.Minutes != 1 {
		t.Errorf("two seconds are %d minutes", up.Minutes)
	}
}

// Taking back that she stood up is sitting still; a sitting that is typed ends none.
func TestSittingsTakenBack(t *testing.T) {
	a := newBenchTime(t, towels)
	down := a.sitDown()
	a.right(a.s.Logged(t.Context(), app.Happened{Document: a.id, What: record.Sat}, 30))
	if a.hours().Sitting == nil {
		t.Fatal("a sitting that was typed ended the one that is on")
	}
	up := a.after(20 * time.Minute).standUp(0)
	cancel(t, a.s, up.ID)
	if h := a.after(5 * time.Minute).hours(); h.Sitting == nil || h.Since != 25 || h.Minutes != 55 {
		t.Errorf("taken back: %+v", h)
	}
	cancel(t, a.s, down.ID)
	if h := a.hours(); h.Sitting != nil || h.Minutes != 30 {
		t.Errorf("both taken back: %+v", h)
	}
}

// To go is at her own pace once there is one, else at the plan's, else unknown.
func TestHoursToGo(t *testing.T) {
	a := newBenchTime(t, towels)
	if h := a.hours(); h.ToGo != 0 || h.Pace.Sign() != 0 || h.Of == 0 {
		t.Errorf("without any pace: %+v", h)
	}
	a = newBenchTime(t, weaving)
	of := a.hours().Of
	if h := a.hours(); h.ToGo != (of+1)/2 || h.Own || h.Pace.String() != "120" {
		t.Errorf("at the plan's pace: %d of %d, %+v", h.ToGo, of, h)
	}
	a.sitDown()
	a.after(3 * time.Hour).standUp(0) // dressing: nothing is woven before or after
	a.sitDown()
	a.wove(14)
	a.after(14 * time.Minute)
	if h := a.hours(); h.Own || h.Picks != 14 {
		t.Errorf("a quarter of an hour makes a pace, 14 minutes do not: %+v", h)
	}
	a.after(time.Minute)
	a.wove(15)
	if h := a.hours(); !h.Own || h.ToGo != of-15 || h.Minutes != 3*60+15 {
		t.Errorf("at her own pace: %+v", h)
	}
	a.wove(of)
	if h := a.hours(); h.ToGo != 0 {
		t.Errorf("all is woven, and %d minutes are to go", h.ToGo)
	}
}

// Days are those of the clock of this machine, in their order; what is broken is counted.
func TestDaysAtTheLoom(t *testing.T) {
	a := newBenchTime(t, towels)
	for _, minutes := range []int{30, 15} {
		a.right(a.s.Logged(t.Context(), app.Happened{Document: a.id, What: record.Sat}, minutes))
		a.after(9 * time.Hour)
	}
	a.right(a.s.Logged(t.Context(), app.Happened{Document: a.id, What: record.Sat}, 60)) // 6 in the morning after
	a.now = a.now.In(time.FixedZone("west", -7*3600))                                    // where that is 23 the day before
	a.wove(30)
	broken := a.right(a.s.Logged(t.Context(), app.Happened{Document: a.id, What: record.Broken, Note: "end 212"}, 0))
	a.right(a.s.Logged(t.Context(), app.Happened{Document: a.id, What: record.Advanced, Place: 26}, 0))
	var days []string
	h := a.hours()
	for _, d := range h.Days {
		days = append(days, d.Day.Format("01-02")+" "+time.Duration(d.Minutes*int(time.Minute)).String())
	}
	if got := strings.Join(days, ", "); got != "03-02 1h45m0s" || h.Days[0].Sittings != 3 {
		t.Errorf("the days in the west are %s", got)
	}
	if h.Broken != 1 || h.Advanced != 1 || broken.Place != 30 {
		t.Errorf("%d broken, %d wound on, broken at %d", h.Broken, h.Advanced, broken.Place)
	}
	a.now = a.now.UTC()
	if h := a.hours(); len(h.Days) != 2 || h.Days[0].Minutes != 45 || h.Days[1].Minutes != 60 {
		t.Errorf("the days are %+v", h.Days)
	}
}

// What is entered by its own action is not logged as it stands.
func TestLoggedOtherwise(t *testing.T) {
	a := newBenchTime(t, towels)
	for _, what := range []string{record.SatDown, record.Pictured, record.Started} {
		_, list, err := a.s.Logged(t.Context(), app.Happened{Document: a.id, What: what, Place: 10_000_001}, 0)
		if err != nil {
			t.Fatal(err)
		}
		wantCodes(t, what, list, "place log.place", "what event.what")
	}
	yarn := addYarn(t, a.s, "white")
	for what, do := range map[string]func() error{
		"sit down": func() error {
			_, _, err := a.s.SitDown(t.Context(), app.Happened{Document: yarn.ID})
			return err
		},
		"stand up": func() error {
			_, _, err := a.s.StandUp(t.Context(), app.Happened{Document: yarn.ID}, 0)
			return err
		},
		"hours":       func() error { _, err := a.s.Hours(t.Context(), yarn.ID); return err },
		"photographs": func() error { _, err := a.s.Photographs(t.Context(), yarn.ID); return err },
	} {
		if err := do(); !record.Is(err, record.NotFound) {
			t.Errorf("%s of a yarn: %v", what, err)
		}
	}
}
