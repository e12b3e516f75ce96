package cli

import (
	"context"
	"slices"

	"github.com/spf13/cobra"

	"sley/internal/app"
	"sley/internal/face/present"
	"sley/internal/trade/record"
)

// deviceTasks look at the phones and tablets that may be used beside the loom, and send
// them away. They are paired on the page alone, where a code can be shown and read.
func deviceTasks(w World) []task {
	return []task{
		{
			use: "devices", short: "List the phones and tablets that were paired to be used beside the loom",
			long:    " They are\npaired on the page of the book, under \"By the loom\" (docs/beside.md).",
			example: "  sley book devices\n  sley book devices --json",
			run: func(ctx context.Context, d desk, _ []string) error {
				return d.reading(ctx, func(o *app.OpenBook) error { return d.saysDevices(ctx, o.Studio) })
			},
		},
		{
			use: "revoke DEVICE", least: 1, most: 1, short: "Let a phone or tablet in no more, as one that was lost",
			long:    " It is named by\nits name or by the mark that sley book devices shows, and is paired anew where it\nshould come in again.",
			example: "  sley book revoke \"kitchen tablet\"", complete: places(w.devices()),
			run: func(ctx context.Context, d desk, args []string) error {
				return d.onDevice(ctx, args[0], func(o *app.OpenBook, of record.Device) error { return o.Revoke(ctx, of.ID) })
			},
		},
		{
			use: "name-device DEVICE NAME", least: 2, most: 2, short: "Call a phone or tablet that was paired otherwise",
			example: "  sley book name-device \"kitchen tablet\" \"loom room\"", complete: places(w.devices()),
			run: func(ctx context.Context, d desk, args []string) error {
				return d.onDevice(ctx, args[0], func(o *app.OpenBook, of record.Device) error {
					list, err := o.NameDevice(ctx, of.ID, args[1])
					if err == nil && list.Failed() {
						return d.problems(list)
					}
					return err
				})
			},
		},
	}
}

// devices completes the names of devices.
func (w World) devices() cobra.CompletionFunc {
	return words(func([]string) []string { return completing(w, deviceNames) })
}

func deviceNames(ctx context.Context, s *app.Studio) []string {
	all, _ := s.Devices(ctx)
	var out []string
	for _, d := range all {
		out = append(out, d.Name)
	}
	return out
}

// onDevice does something with the device of a name, and says how it stands then.
func (d desk) onDevice(ctx context.Context, name string, do func(*app.OpenBook, record.Device) error) error {
	return d.changing(ctx, func(o *app.OpenBook) error {
		of, list, err := o.DeviceNamed(ctx, name)
		if err != nil {
			return err
		}
		if list.Failed() {
			return d.problems(list)
		}
		if err := do(o, of); err != nil {
			return err
		}
		return d.saysDevices(ctx, o.Studio, of.ID)
	})
}

// saysDevices prints devices: all, or those of some ids.
func (d desk) saysDevices(ctx context.Context, s *app.Studio, only ...string) error {
	all, err := s.Devices(ctx)
	if err != nil {
		return err
	}
	var shown []record.Device
	for _, one := range all {
		if len(only) == 0 || slices.Contains(only, one.ID) {
			shown = append(shown, one)
		}
	}
	return d.say(present.DevicesText(shown), struct {
		Format  int                  `json:"format"`
		Devices []present.DeviceJSON `json:"devices"`
	}{1, present.DevicesJSONOf(shown)})
}
