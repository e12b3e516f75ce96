package present

import (
	"strings"

	"sley/internal/app"
)

// SamplesText says the samples of a yarn, with what was measured and what it says.
func SamplesText(c app.Card, all []app.Sampled) string {
	if len(all) == 0 {
		return "No samples were woven of " + legible(c.Name) + ".\n"
	}
	var b strings.Builder
	b.WriteString(legible(c.Name) + "\n")
	for _, s := range SamplesJSONOf(c.ID, all).Samples {
		b.WriteString("\n" + legible(strings.Join(slicesOf(s.Name, s.Weave, s.Wash), ", ")) + "\n")
		for _, m := range s.Sizes {
			b.WriteString(Line{Label: m.Says, Value: legible(m.Typed)}.text())
		}
		for _, l := range s.Learnt {
			b.WriteString(learntLine(l))
		}
	}
	return b.String()
}

// slicesOf leaves out what is empty, and what the first says already.
func slicesOf(first string, rest ...string) []string {
	out := []string{first}
	for _, text := range rest {
		if text != "" && !strings.Contains(first, text) {
			out = append(out, text)
		}
	}
	return out
}

// learntLine is an allowance as it is written, with what it loses.
func learntLine(l LearntJSON) string {
	return textIndent + textIndent + l.Key + " = \"" + legible(l.Typed) + "\", " + l.Value + "\n"
}

// AdviceText says the allowances that a warp could take, under those whose they are.
func AdviceText(c app.Card, all []app.Advised) string {
	if len(all) == 0 {
		return "Neither samples nor records say anything of " + legible(c.Name) + ".\n"
	}
	out, whose := "", ""
	for _, a := range AdviceJSONOf(c.ID, all).Advice {
		if a.Says != whose {
			whose = a.Says
			out += legible(strings.ToUpper(whose[:1])+whose[1:]) + "\n"
		}
		out += learntLine(LearntJSON{Key: a.Key, Typed: a.Typed, Value: a.Value})
	}
	return out
}
