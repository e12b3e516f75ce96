package app

import (
	"context"
	"crypto/subtle"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"sley/internal/trade/problem"
	"sley/internal/trade/record"
)

// actDevices tells who watches that the devices beside the loom are others, or called
// otherwise. It is of no document.
const actDevices = "devices"

// mostDeviceName is how many characters the name of a device may have.
const mostDeviceName = 60

// seenAnew is how long after a device was last seen that is written again: not with each
// thing it asks.
const seenAnew = time.Minute

// Paired is a device that was just let in, and the token it proves itself by, which is told
// this once and not kept.
type Paired struct {
	Device record.Device
	Token  string
}

// Pair lets a device in by the code that is good now, under a name of 1 to 60 characters.
// The code is used up. Problems: pairing.none, pairing.code, pairing.ended, name.*; a name
// that is none costs no try.
func (s *Studio) Pair(ctx context.Context, code, name string) (Paired, *problem.List, error) {
	list := &problem.List{}
	name = deviceName(name, list)
	if list.Failed() {
		return Paired{}, list, nil
	}
	token, err := tokenFrom(s.random)
	if err != nil {
		return Paired{}, list, err
	}
	if wrong := s.pairs.taken(digitsOf(code), s.now()); wrong != "" {
		list.Fail(wrong, "code", code, nil)
		return Paired{}, list, nil
	}
	now := s.moment()
	d := record.Device{ID: s.newID(), Name: name, Sum: sumOf(token), Made: now, Seen: now}
	err = s.putDevice(ctx, func(record.Writer) (record.Device, error) { return d, nil })
	if err != nil {
		return Paired{}, list, err
	}
	return Paired{d, token}, list, nil
}

// digitsOf takes out what people put between digits.
func digitsOf(code string) string {
	return strings.NewReplacer(" ", "", "-", "", "\u00a0", "", "\u202f", "").Replace(code)
}

// deviceName reads the name of a device.
func deviceName(name string, list *problem.List) string {
	name = strings.TrimSpace(name)
	checkName(name, "name", list)
	if n := utf8.RuneCountInString(name); n > mostDeviceName && n <= record.MostName {
		list.Fail("name.long", "name", name, problem.Args{"most": mostDeviceName})
	}
	return name
}

// DeviceOf gives the device that proves itself by a token; false where none does, or one
// that was revoked. It notes that the device was seen, once a minute at most.
func (s *Studio) DeviceOf(ctx context.Context, token string) (record.Device, bool, error) {
	if token == "" {
		return record.Device{}, false, nil
	}
	devices, err := s.Devices(ctx)
	if err != nil {
		return record.Device{}, false, err
	}
	d, known := bySum(devices, sumOf(token))
	if !known || d.Revoked {
		return record.Device{}, false, nil
	}
	if now := s.moment(); now.Sub(d.Seen) >= seenAnew {
		if d, err = s.seen(ctx, d.ID, now); err != nil {
			return record.Device{}, false, err
		}
	}
	return d, !d.Revoked, nil
}

// bySum looks at every device, so that how long it takes tells nothing.
func bySum(devices []record.Device, sum [32]byte) (found record.Device, known bool) {
	for _, d := range devices {
		if subtle.ConstantTimeCompare(d.Sum[:], sum[:]) == 1 {
			found, known = d, true
		}
	}
	return found, known
}

// seen writes when a device was seen, without telling the windows: nothing they show
// hangs on the minute.
func (s *Studio) seen(ctx context.Context, id string, now time.Time) (record.Device, error) {
	var d record.Device
	err := s.write(ctx, func(w record.Writer) (none []Changed, err error) {
		if d, err = deviceBy(w, id); err != nil {
			return nil, err
		}
		d.Seen = now
		return nil, w.PutDevice(d)
	})
	return d, err
}

// Devices lists the devices that were let in, the first first; revoked ones too.
func (s *Studio) Devices(ctx context.Context) ([]record.Device, error) {
	var out []record.Device
	err := s.read(ctx, func(r record.Reader) (err error) {
		out, err = r.Devices()
		return err
	})
	return out, err
}

// Revoke lets a device in no more: what it asks from then on is refused, and its streams
// end. It cannot be taken back; the device is paired anew. Trouble: NotFound.
func (s *Studio) Revoke(ctx context.Context, id string) error {
	return s.putDevice(ctx, func(w record.Writer) (record.Device, error) {
		d, err := deviceBy(w, id)
		d.Revoked = true
		return d, err
	})
}

// NameDevice calls a device otherwise. Trouble: NotFound.
func (s *Studio) NameDevice(ctx context.Context, id, name string) (*problem.List, error) {
	list := &problem.List{}
	name = deviceName(name, list)
	if list.Failed() {
		return list, nil
	}
	return list, s.putDevice(ctx, func(w record.Writer) (record.Device, error) {
		d, err := deviceBy(w, id)
		d.Name = name
		return d, err
	})
}

// putDevice keeps what do makes of a device, and tells the windows.
func (s *Studio) putDevice(ctx context.Context, do func(record.Writer) (record.Device, error)) error {
	return s.write(ctx, func(w record.Writer) ([]Changed, error) {
		d, err := do(w)
		if err != nil {
			return nil, err
		}
		return []Changed{{Act: actDevices}}, w.PutDevice(d)
	})
}

// deviceBy finds a device.
func deviceBy(r record.Reader, id string) (record.Device, error) {
	devices, err := r.Devices()
	if err != nil {
		return record.Device{}, err
	}
	at := slices.IndexFunc(devices, func(d record.Device) bool { return d.ID == id })
	if at < 0 {
		return record.Device{}, &record.Trouble{Code: record.NotFound, Found: "device " + id}
	}
	return devices[at], nil
}

// DeviceNamed gives the device of a name, or of an id. Several may have one name, of which
// those that were revoked count only where no other has it. Problems: device.none,
// device.several.
func (s *Studio) DeviceNamed(ctx context.Context, name string) (record.Device, *problem.List, error) {
	list := &problem.List{}
	all, err := s.Devices(ctx)
	if err != nil {
		return record.Device{}, list, err
	}
	for _, is := range []func(record.Device) bool{
		func(d record.Device) bool { return d.ID == name },
		func(d record.Device) bool { return d.Name == name && !d.Revoked },
		func(d record.Device) bool { return d.Name == name },
	} {
		found := slices.DeleteFunc(slices.Clone(all), func(d record.Device) bool { return !is(d) })
		if len(found) == 1 {
			return found[0], list, nil
		}
		if len(found) > 1 {
			list.Fail("device.several", "", name, problem.Args{"valid": idsOf(found)})
			return record.Device{}, list, nil
		}
	}
	list.Fail("device.none", "", name, nil)
	return record.Device{}, list, nil
}

func idsOf(devices []record.Device) []string {
	var out []string
	for _, d := range devices {
		out = append(out, d.ID)
	}
	return out
}
