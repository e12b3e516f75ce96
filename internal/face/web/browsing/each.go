package browsing

import (
	"fmt"
	"slices"
	"testing"
)

// look is one way of looking at a page: the window is so many CSS pixels wide, light or
// dark, and axe-core has these rules.
type look struct {
	width int64
	dark  bool
	rules string
}

// The windows are a phone, a tablet, a desk. In the dark only the colours are others: one
// width and the rules of colours are enough there, unless pictures are wanted.
var (
	inLight = []look{{390, false, axeRules}, {820, false, axeRules}, {1440, false, axeRules}}
	inDark  = []look{{390, true, colourRules}, {820, true, colourRules}, {1440, true, colourRules}}
	byTurns = []look{{390, false, axeRules}, {820, true, axeRules}, {1440, false, axeRules}}
)

// EachLook looks at the page as it is now in every width, and in the dark: nothing keeps
// people out, everything fits and can be read. Pictures are taken under the name.
func (b *Tab) EachLook(t testing.TB, name string) {
	t.Helper()
	dark := inDark
	if !picturing() {
		dark = inDark[:1]
	}
	b.looks(t, name, slices.Concat(inLight, dark))
}

// OneLook looks at the page once in every width, light and dark by turns; where pictures
// are taken it is EachLook.
func (b *Tab) OneLook(t testing.TB, name string) {
	t.Helper()
	if picturing() {
		b.EachLook(t, name)
		return
	}
	b.looks(t, name, byTurns)
}

func (b *Tab) looks(t testing.TB, name string, all []look) {
	t.Helper()
	for _, l := range all {
		b.Dark(l.dark)
		b.Size(l.width, 900)
		b.Do("await document.fonts.ready; await new Promise(requestAnimationFrame)")
		where := fmt.Sprintf("%s-%d-%s", name, l.width, map[bool]string{true: "dark", false: "light"}[l.dark])
		b.Shot(where)
		for _, fault := range append(b.barriers(l.rules), b.Cramped()...) {
			t.Errorf("%s: %s", where, fault)
		}
	}
	b.Size(1440, 900)
	b.Dark(false)
}
