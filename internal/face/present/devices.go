package present

import (
	"fmt"
	"strings"
	"time"

	"sley/internal/trade/record"
)

// DevicesText lists the devices beside the loom, each with the mark it is named by.
func DevicesText(all []record.Device) string {
	if len(all) == 0 {
		return "no phone or tablet was paired yet; that is done on the page, under \"By the loom\"\n"
	}
	var b strings.Builder
	for _, d := range all {
		stands := "last seen " + d.Seen.UTC().Format("2 January 2006 15:04") + " UTC"
		if d.Revoked {
			stands = "let in no more"
		}
		fmt.Fprintf(&b, "%s%s  %s  (%s)\n", textIndent, d.ID, legible(d.Name), stands)
	}
	return b.String()
}

// DeviceJSON is a device beside the loom, without what it proves itself by.
type DeviceJSON struct {
	ID      string    `json:"id"`
	Name    string    `json:"name"`
	Made    time.Time `json:"made"`
	Seen    time.Time `json:"seen"`
	Revoked bool      `json:"revoked"`
}

// DevicesJSONOf gives devices in that shape; never null.
func DevicesJSONOf(all []record.Device) []DeviceJSON {
	out := []DeviceJSON{}
	for _, d := range all {
		out = append(out, DeviceJSON{d.ID, d.Name, d.Made, d.Seen, d.Revoked})
	}
	return out
}
