package present

import (
	"strings"

	"sley/internal/app"
)

// LabelText sets the label of a cloth as plain text.
func LabelText(l *app.ClothLabel, u Units) string {
	shape := LabelJSONOf(l, u)
	var b strings.Builder
	b.WriteString(fillIn(labelTitle, "{name}", legible(shape.Name)) + "\n")
	for _, form := range shape.Forms {
		b.WriteString("\n" + form.Says + "\n" + textIndent + form.Text + "\n")
		for _, note := range form.Notes {
			b.WriteString(indented(note))
		}
	}
	if len(shape.Forms) == 0 {
		b.WriteString("\n" + labelNothing + "\n")
	}
	b.WriteString(labelCounted(shape))
	b.WriteString("\n" + labelCare + "\n")
	for _, c := range shape.Care {
		b.WriteString(indented(Cared(c)))
	}
	if len(shape.Care) == 0 {
		b.WriteString(indented(labelNoFibre))
	}
	return b.String() + indented(shape.Cites) + "\n" + wrap(shape.Check, textWidest) + "\n"
}

// Cared says one thing of the care, with the fibre that decides where there are several.
func Cared(c CareJSON) string {
	if c.Why == "" {
		return c.Says
	}
	return strings.TrimSuffix(c.Says, ".") + ", " + c.Why + "."
}

// labelCounted says what is in the cloth and how that was counted.
func labelCounted(shape LabelJSON) string {
	if len(shape.Forms) == 0 {
		return ""
	}
	var b strings.Builder
	b.WriteString("\n" + labelInCloth + "\n")
	for _, y := range shape.Yarns {
		b.WriteString(Line{Label: legible(y.Yarn), Value: y.Weight, Note: legible(warpAndWeft(y))}.text())
	}
	b.WriteString("\n" + labelShares + "\n")
	for _, s := range shape.Shares {
		b.WriteString(Line{Label: s.Fibre, Value: s.Label, Note: fillIn(labelDryShare, "{dry}", s.Dry)}.text())
	}
	b.WriteString("\n" + labelBasis + "\n")
	for _, basis := range shape.Basis {
		b.WriteString(indented(basis))
	}
	return b.String()
}

// warpAndWeft says where a yarn is in the cloth.
func warpAndWeft(y LabelYarnJSON) string {
	var parts []string
	if y.Warp != "" {
		parts = append(parts, "warp "+y.Warp)
	}
	if y.Weft != "" {
		parts = append(parts, "weft "+y.Weft)
	}
	return strings.Join(parts, ", ")
}

func indented(text string) string {
	return textIndent + strings.ReplaceAll(wrap(text, textWidest-2), "\n", "\n"+textIndent) + "\n"
}
