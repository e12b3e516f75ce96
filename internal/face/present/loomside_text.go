package present

import (
	"fmt"
	"strings"
)

// stepWeaving is the name of the weaving among the steps.
const stepWeaving = "weaving"

// StepNames lists the steps of a warp at the loom, the weaving last.
func StepNames(l LoomsideJSON) []string {
	var out []string
	for _, s := range l.Steps {
		out = append(out, s.ID)
	}
	return append(out, stepWeaving)
}

// LoomsideText shows a warp beside the loom: all its steps with how far they are, or the
// parts of one. It reports false where there is no such step.
func LoomsideText(l LoomsideJSON, step string) (string, bool) {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, %s\n", l.Name, l.Stage)
	switch step {
	case "":
		l.overview(&b)
		return b.String(), true
	case stepWeaving:
		l.weave(&b)
		return b.String(), true
	}
	for _, s := range l.Steps {
		if s.ID == step {
			s.write(&b)
			return b.String(), true
		}
	}
	return "", false
}

func (l LoomsideJSON) overview(b *strings.Builder) {
	fmt.Fprintf(b, "\nThe way: %s\n\n", l.Way)
	for _, s := range l.Steps {
		fmt.Fprintf(b, "  %-12s %-28s %d of %d %s\n", s.ID, s.Says, s.Done, s.Total, s.Unit)
	}
	if l.Weaving == nil {
		return
	}
	fmt.Fprintf(b, "  %-12s %-28s %d of %d picks\n", stepWeaving, "Weave", l.Woven, l.Weaving.Total)
	if l.Woven > 0 {
		fmt.Fprintf(b, "\n%s\n", l.Weaving.where(l.Woven))
	}
	b.WriteString("\n")
	l.foretell(b)
}

// foretell writes the forecast and what can still be changed.
func (l LoomsideJSON) foretell(b *strings.Builder) {
	for _, f := range l.Forecast {
		line := fmt.Sprintf("  %-34s %s", f.Says, f.Value)
		if f.Note != "" {
			line += "  (" + f.Note + ")"
		}
		b.WriteString(line + "\n")
	}
	if len(l.Remedies) > 0 {
		fmt.Fprintf(b, "\nIt does not come out. You can: %s.\n", strings.Join(l.Remedies, "; or "))
	}
}

func (s LoomStepJSON) write(b *strings.Builder) {
	fmt.Fprintf(b, "\n%s. %s\n", s.Says, s.Lead)
	if s.Care != "" {
		fmt.Fprintf(b, "%s\n", s.Care)
	}
	for _, line := range s.First {
		fmt.Fprintf(b, "  %s\n", line)
	}
	for _, p := range s.Parts {
		box := "[ ]"
		if p.To <= s.Done {
			box = "[x]"
		}
		title := p.Title
		if len(p.Items) == 0 && strings.Trim(p.Big, "0123456789 ") != "" {
			title = p.Big + ". " + title
		}
		fmt.Fprintf(b, "\n%s %s\n", box, title)
		var items []string
		for _, item := range p.Items {
			items = append(items, item.Text)
		}
		between := ", "
		if s.Each {
			between = " "
		}
		for _, line := range append([]string{strings.Join(items, between)}, p.Check...) {
			if line != "" {
				fmt.Fprintf(b, "    %s\n", line)
			}
		}
	}
}

// weave writes where the weaving stands, with the picks that come next.
func (l LoomsideJSON) weave(b *strings.Builder) {
	if l.Weaving == nil {
		return
	}
	fmt.Fprintf(b, "\n%d of %d picks are woven\n", l.Woven, l.Weaving.Total)
	for pick := l.Woven; pick < min(l.Woven+picksShown, l.Weaving.Total); pick++ {
		fmt.Fprintf(b, "  %s\n", l.Weaving.where(pick+1))
	}
	b.WriteString("\n")
	l.foretell(b)
}

// picksShown is how many picks to come are shown.
const picksShown = 12

// where words a pick of the warp: its piece, its part, what is pressed and thrown.
func (w *WeavingJSON) where(pick int) string {
	at := len(w.Pieces) - 1
	for at > 0 && w.Pieces[at].Before >= pick {
		at--
	}
	p := w.Pieces[at]
	k := w.Kinds[p.Kind]
	in := pick - p.Before
	parts := []string{fmt.Sprintf("pick %d: %s, %d of %d", pick, p.Says, in, k.Picks)}
	for _, s := range k.Stretches {
		if s.From < in && in <= s.To {
			parts = append(parts, s.Says)
		}
	}
	if n := in - k.Motif.Before; k.Motif.Picks > 1 && n > 0 && n <= k.Motif.Picks*k.Motif.Times {
		parts = append(parts, fmt.Sprintf("motif %d of %d, pick %d", (n-1)/k.Motif.Picks+1, k.Motif.Times, (n-1)%k.Motif.Picks+1))
	}
	if len(k.Presses) > 0 {
		press := w.Presses[k.Presses[in-1]]
		if w.Treadled {
			parts = append(parts, "treadle "+press.Text)
		}
		parts = append(parts, "on top "+press.UpSays)
	}
	return strings.Join(append(parts, w.Yarns[k.Weft[in-1]].Name), "; ")
}

// ReachedText says where a step stands.
func ReachedText(name, step string, place int) string {
	return fmt.Sprintf("%s: %s stands at %d\n", name, step, place)
}
