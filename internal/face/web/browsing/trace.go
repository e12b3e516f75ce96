package browsing

import (
	"context"
	"encoding/json"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/tracing"
	"github.com/chromedp/chromedp"
)

// Span is one stretch of work in the trace of a browser: of which process and thread, under
// which name, from when on and how long. Works is how much of that the thread itself was at
// work, by its own clock: the rest it waited for a processor that others had.
type Span struct {
	Name    string
	Process int
	Thread  string
	Start   time.Duration
	Lasts   time.Duration
	Works   time.Duration
	From    string // of a task, the function of the browser that asked for it
}

// MainThread is where a page's own work is done.
const MainThread = "CrRendererMain"

// traced is an event as the trace has it, in microseconds.
type traced struct {
	Name  string
	Phase string `json:"ph"`
	PID   int    `json:"pid"`
	TID   int    `json:"tid"`
	TS    int64  `json:"ts"`
	Dur   int64  `json:"dur"`
	TDur  int64  `json:"tdur"`
	Args  struct {
		Name string
		From string `json:"src_func"`
	}
}

// kept are the events that a trace keeps.
var kept = tracing.TraceConfig{IncludedCategories: []string{"toplevel", "devtools.timeline", "blink.user_timing", "cc", "viz", "v8"}}

// Trace does something and gives what all of the browser's threads did meanwhile.
func (b *Tab) Trace(do func()) []Span {
	b.t.Helper()
	b.mu.Lock()
	b.trace = trace{ended: make(chan struct{})}
	ended := b.trace.ended
	b.mu.Unlock()
	b.call("trace", func(ctx context.Context) error {
		_, err := chromedp.Call(ctx, tracing.Start, tracing.StartParams{TraceConfig: &kept})
		return err
	})
	do()
	b.call("end of the trace", func(ctx context.Context) error {
		if _, err := chromedp.Call(ctx, tracing.End, cdp.Empty{}); err != nil {
			return err
		}
		select {
		case <-ended:
			return nil
		case <-ctx.Done():
			return ctx.Err()
		}
	})
	b.mu.Lock()
	defer b.mu.Unlock()
	return spans(b.trace.events)
}

// trace is what came of one so far.
type trace struct {
	events []traced
	ended  chan struct{}
}

// hear takes an event of a trace.
func (t *trace) hear(event any) {
	switch e := event.(type) {
	case *tracing.EventDataCollected:
		for _, v := range e.Value {
			var one traced
			if json.Unmarshal(v, &one) == nil {
				t.events = append(t.events, one)
			}
		}
	case *tracing.EventTracingComplete:
		close(t.ended)
	}
}

// spans names the threads of the events that have a length.
func spans(events []traced) []Span {
	threads := map[[2]int]string{}
	for _, e := range events {
		if e.Name == "thread_name" {
			threads[[2]int{e.PID, e.TID}] = e.Args.Name
		}
	}
	var all []Span
	for _, e := range events {
		if e.Phase == "X" {
			all = append(all, Span{e.Name, e.PID, threads[[2]int{e.PID, e.TID}], micro(e.TS), micro(e.Dur), micro(e.TDur), e.Args.From})
		}
	}
	return all
}

func micro(n int64) time.Duration { return time.Duration(n) * time.Microsecond }
