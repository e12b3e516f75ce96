package app

import (
	"strings"

	"sley/internal/trade/problem"
	"sley/internal/trade/qty"
)

// sizeTyped reads a size that was measured; the list says what is wrong with it.
func sizeTyped(typed string, list *problem.List) qty.Length {
	size, err := qty.ParseLength(strings.TrimSpace(typed))
	var fault *qty.Fault
	if asFault(err, &fault) {
		list.Fail(fault.Code, "size", typed, fault.Args)
	} else if size <= 0 {
		list.Fail("measurement.nothing", "size", typed, nil)
	}
	return size
}
