package present

import "strings"

// fillIn puts values for the names in braces that are given in pairs, each once: what a
// value holds stays as it is, and so do names that none is given for. It is quick where a
// text is filled once; a text with many names is better filled by strings.NewReplacer.
func fillIn(text string, pairs ...string) string {
	var b strings.Builder
	for {
		at := strings.IndexByte(text, '{')
		if at < 0 {
			break
		}
		name, value := pairAt(text[at:], pairs)
		b.WriteString(text[:at])
		b.WriteString(value)
		text = text[at+len(name):]
	}
	if b.Len() == 0 {
		return text
	}
	b.WriteString(text)
	return b.String()
}

// pairAt is the name that a text begins with, and its value; a brace stands for itself.
func pairAt(text string, pairs []string) (name, value string) {
	for i := 0; i < len(pairs); i += 2 {
		if strings.HasPrefix(text, pairs[i]) {
			return pairs[i], pairs[i+1]
		}
	}
	return "{", "{"
}
