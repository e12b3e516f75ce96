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

// The windows are a phone, a tablet, a desk. In the dark only the colours are others: after
// the light, the rules of colours are enough there. By turns every rule is looked at once,
// for axe-core takes most of the time of these tests; at the desk those are that ask how
// things lie.
var (
	inLight = []look{{390, false, axeRules}, {820, false, axeRules}, {1440, false, axeRules}}
	inDark  = []look{{390, true, colourRules}, {820, true, colourRules}, {1440, true, colourRules}}
	byTurns = []look{{390, false, axeRules}, {820, true, colourRules}, {1440, false, placeRules}}
)

// EachLook looks at the page as it is now in every width, light and dark by turns: nothing
// keeps people out, everything fits and can be read. Where pictures are wanted every width
// is looked at in the light and in the dark. Pictures are taken under the name.
func (b *Tab) EachLook(t testing.TB, name string) {
	t.Helper()
	if picturing() {
		b.looks(t, name, slices.Concat(inLight, inDark))
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
