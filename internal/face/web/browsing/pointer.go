package browsing

import (
	"context"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// Spot is a point of the window, in CSS pixels.
type Spot struct{ X, Y float64 }

// Drag presses the mouse at the first spot, moves it through the others and lets it go.
func (b *Tab) Drag(spots ...Spot) {
	b.t.Helper()
	b.mouse(input.DispatchMouseEventTypeMousePressed, spots[0])
	for _, s := range spots[1:] {
		b.mouse(input.DispatchMouseEventTypeMouseMoved, s)
	}
	b.mouse(input.DispatchMouseEventTypeMouseReleased, spots[len(spots)-1])
}

// MouseDown presses the mouse at a spot and keeps it down; MouseUp lets it go.
func (b *Tab) MouseDown(at Spot) {
	b.t.Helper()
	b.mouse(input.DispatchMouseEventTypeMousePressed, at)
}

// MouseUp lets the mouse go at a spot.
func (b *Tab) MouseUp(at Spot) {
	b.t.Helper()
	b.mouse(input.DispatchMouseEventTypeMouseReleased, at)
}

func (b *Tab) mouse(kind input.DispatchMouseEventType, at Spot) {
	b.t.Helper()
	b.call("mouse", func(ctx context.Context) error {
		_, err := chromedp.Call(ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{
			Type: kind, X: at.X, Y: at.Y, Button: input.MouseButtonLeft, Buttons: 1, ClickCount: 1,
		})
		return err
	})
}

// Wheel turns the wheel of the mouse at a spot, with the control key held or not.
func (b *Tab) Wheel(at Spot, across, down float64, control bool) {
	b.t.Helper()
	held := int64(0)
	if control {
		held = int64(chromedp.ModifierCtrl)
	}
	b.call("wheel", func(ctx context.Context) error {
		_, err := chromedp.Call(ctx, input.DispatchMouseEvent, input.DispatchMouseEventParams{
			Type: input.DispatchMouseEventTypeMouseWheel, X: at.X, Y: at.Y, DeltaX: across, DeltaY: down, Modifiers: held,
		})
		return err
	})
}

// Fingers puts fingers down at the first spots, moves them through the others and lifts them;
// each move has a spot for each finger.
func (b *Tab) Fingers(moves ...[]Spot) {
	b.t.Helper()
	b.touch(input.DispatchTouchEventTypeTouchStart, moves[0])
	for _, m := range moves[1:] {
		b.touch(input.DispatchTouchEventTypeTouchMove, m)
	}
	b.touch(input.DispatchTouchEventTypeTouchEnd, nil)
}

// Finger puts one finger down and keeps it there; Fingers lifts it.
func (b *Tab) Finger(at Spot) {
	b.t.Helper()
	b.touch(input.DispatchTouchEventTypeTouchStart, []Spot{at})
}

// LiftFingers lifts all fingers.
func (b *Tab) LiftFingers() {
	b.t.Helper()
	b.touch(input.DispatchTouchEventTypeTouchEnd, nil)
}

func (b *Tab) touch(kind input.DispatchTouchEventType, spots []Spot) {
	b.t.Helper()
	points := []*input.TouchPoint{}
	for i, s := range spots {
		id := float64(i + 1)
		points = append(points, &input.TouchPoint{X: s.X, Y: s.Y, ID: &id})
	}
	b.call("touch", func(ctx context.Context) error {
		_, err := chromedp.Call(ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
		return err
	})
}
