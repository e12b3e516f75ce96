// Package fonts holds the letters that sley draws with: subsets of Gentium Plus
// and Andika by SIL International, under names of their own because both reserve
// theirs. README.md says how the files are made; the licences stand beside them.
package fonts

import _ "embed"

// The family names inside the files, for back ends that refer to a font by name.
const (
	Serif = "Sley Serif" // made from Gentium Plus
	Sans  = "Sley Sans"  // made from Andika
)

// The files, as TrueType. Treat them as read-only: they are shared.
var (
	//go:embed SleySerif-Regular.ttf
	SerifRegular []byte
	//go:embed SleySerif-Bold.ttf
	SerifBold []byte
	//go:embed SleySerif-Italic.ttf
	SerifItalic []byte
	//go:embed SleySans-Regular.ttf
	SansRegular []byte
	//go:embed SleySans-Bold.ttf
	SansBold []byte
)
