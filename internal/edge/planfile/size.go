package planfile

import (
	"slices"
	"strings"

	"sley/internal/trade/near"
	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
	"sley/internal/trade/warp"
)

// The states a value may be given in. The first is meant when none is said.
var (
	lengthStates = []warp.State{warp.Finished, warp.Relaxed, warp.OnLoom, warp.Straight}
	widthStates  = []warp.State{warp.Finished, warp.Relaxed, warp.AtFell, warp.InReed}
	settStates   = []warp.State{warp.InReed, warp.Relaxed, warp.Finished, warp.AtFell}
	pickStates   = []warp.State{warp.OnLoom, warp.Finished, warp.Relaxed}
	sampleStates = []warp.State{warp.Straight, warp.Finished, warp.Relaxed, warp.OnLoom}
)

// size gives a length with the state it is in: "28 in on the loom".
func (t table) size(key string, states []warp.State, b bound) warp.Size {
	n, text, ok := t.words(key, wantLength)
	if !ok {
		return warp.Size{}
	}
	is, rest, err := qty.ScanLength(text)
	if err != nil {
		t.d.fault(n, err)
		return warp.Size{}
	}
	state, ok := t.d.state(n, text, rest, states)
	if !ok || !t.d.fits(n, is, b) {
		return warp.Size{}
	}
	return warp.Size{Is: is, State: state, Typed: text}
}

// sett gives a density with the state it is in: "24 epi finished".
func (t table) sett(key string, states []warp.State) warp.Sett {
	want := wantDensity
	if key == "picks" {
		want = wantPicks
	}
	n, text, ok := t.words(key, want)
	if !ok {
		return warp.Sett{}
	}
	is, rest, err := qty.ScanDensity(text)
	if err != nil {
		t.d.fault(n, err)
		return warp.Sett{}
	}
	state, ok := t.d.state(n, text, rest, states)
	if !ok || !t.d.fitsDensity(n, is) {
		return warp.Sett{}
	}
	return warp.Sett{Is: is, State: state, Typed: text}
}

// state reads the words of a state that end a text.
func (d *decoder) state(n *node, text, rest string, states []warp.State) (warp.State, bool) {
	words := strings.Join(strings.Fields(strings.ToLower(rest)), " ")
	if words == "" {
		return states[0], true
	}
	for _, s := range states {
		if slices.Contains(warp.StateWords(s), words) {
			return s, true
		}
	}
	d.badState(n, text, rest, states)
	return warp.Unsaid, false
}

func (d *decoder) badState(n *node, text, rest string, states []warp.State) {
	written := strings.TrimSpace(rest)
	args := problem.Args{"valid": stateNames(states), "near": nearState(written, states)}
	d.part("state.unknown", n, len(text)-len(rest), written, args)
}

// alike are the states of lengths and of widths that the tape reads at the same
// time.
var alike = map[warp.State]warp.State{
	warp.OnLoom: warp.AtFell, warp.AtFell: warp.OnLoom,
	warp.Straight: warp.InReed, warp.InReed: warp.Straight,
}

// nearState gives the state that was likely meant: for a state of lengths that
// of widths and the other way round, else one of nearly the same letters.
func nearState(written string, states []warp.State) string {
	words := strings.Join(strings.Fields(strings.ToLower(written)), " ")
	for state, other := range alike {
		if slices.Contains(warp.StateWords(state), words) {
			if slices.Contains(states, other) {
				return other.String()
			}
			return ""
		}
	}
	return near.To(words, allWords(states))
}

func stateNames(states []warp.State) []string {
	var names []string
	for _, s := range states {
		names = append(names, s.String())
	}
	return names
}

func allWords(states []warp.State) []string {
	var words []string
	for _, s := range states {
		words = append(words, warp.StateWords(s)...)
	}
	return words
}
