//go:build linux

package book

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"sley/internal/trade/record"
)

func init() { children["trace"] = traced }

// traced makes changes and answers after each. Its second argument is how long the writer
// waits for the disk.
func traced(args []string) error {
	path, synchronous := args[0], args[1]
	b, err := Open(context.Background(), Asked{
		Path: path, Now: at(noon), Create: true,
		set: func(_ mode, all []pragma) []pragma {
			for i := range all {
				if all[i].name == "synchronous" && synchronous == "OFF" {
					all[i] = pragma{"synchronous", "OFF", "0"}
				}
			}
			return all
		},
	})
	if err != nil {
		return err
	}
	for i := range answers {
		if err := b.Write(context.Background(), func(w record.Writer) error {
			d := record.Document{Kind: record.Draft, Mark: fmt.Sprintf("mark-%04d", i), Card: record.Card{Name: "a"}}
			_, err := w.Add(d, record.Version{Act: record.Add, Body: threads(100*i, 1)})
			return err
		}); err != nil {
			return err
		}
		say("answer %d", i)
	}
	return b.Close()
}

const answers = 20

// A change that was answered is on the disk: between the last write of the journal and
// the answer the system was asked to put the journal on the disk, and did.
func TestAnswersWaitForTheDisk(t *testing.T) {
	oneAtATime(t)
	if _, err := exec.LookPath("strace"); err != nil {
		t.Skip("strace is not there: apt-get install -y strace")
	}
	for synchronous, want := range map[string]bool{"FULL": true, "OFF": false} {
		dir := t.TempDir()
		log := filepath.Join(dir, "trace")
		cmd := child(t, "trace", filepath.Join(dir, "book.sley"), synchronous)
		cmd.Args = append([]string{
			"strace", "-f", "-y", "-qq", "-s", "16", "-o", log,
			"-e", "trace=write,pwrite64,pwritev,writev,pwritev2,fsync,fdatasync", "--",
		}, append([]string{cmd.Path}, cmd.Args[1:]...)...)
		cmd.Path, _ = exec.LookPath("strace")
		if out, err := cmd.Output(); err != nil || strings.Count(string(out), "answer") != answers {
			t.Fatalf("%v, %s", err, out)
		}
		text, err := os.ReadFile(log)
		if err != nil {
			t.Fatal(err)
		}
		n, faults := unsynced(string(text))
		if n != answers {
			t.Fatalf("%d answers are in the trace, not %d", n, answers)
		}
		if (len(faults) == 0) != want {
			t.Errorf("synchronous=%s: %q", synchronous, faults)
		}
	}
}

var (
	call    = regexp.MustCompile(`^(\d+) +(\w+)\((\d+)<([^>]*)>(.*)`)
	resumed = regexp.MustCompile(`^(\d+) +<\.\.\. (\w+) resumed>.*= (-?\d+)`)
)

// unsynced reads a trace: how many answers it has, and which of them came before their
// journal was on the disk, or without any.
func unsynced(trace string) (n int, faults []string) {
	var written, synced bool
	waiting := map[string]bool{} // processes that wait for the journal to be on the disk
	for line := range strings.Lines(trace) {
		if m := resumed.FindStringSubmatch(line); m != nil {
			synced = synced || waiting[m[1]] && m[3] == "0"
			delete(waiting, m[1])
			continue
		}
		m := call.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		journal := strings.HasSuffix(m[4], "-wal")
		switch {
		case m[3] == "1" && strings.Contains(m[5], "answer"):
			if n++; !written || !synced {
				faults = append(faults, fmt.Sprintf("answer %d: written %v, on the disk %v", n, written, synced))
			}
			written, synced = false, false
		case journal && strings.Contains(m[2], "write"):
			written, synced = true, false
		case journal && strings.HasSuffix(strings.TrimSpace(line), "<unfinished ...>"):
			waiting[m[1]] = true
		case journal && strings.HasSuffix(strings.TrimSpace(line), "= 0"):
			synced = true
		}
	}
	return n, faults
}

// The reading of traces is tried on some that are wrong.
func TestTracesAreRead(t *testing.T) {
	const (
		written = "7 pwrite64(5</x/b.sley-wal>, \"ab\"..., 2, 0) = 2\n"
		synced  = "7 fdatasync(5</x/b.sley-wal>) = 0\n"
		answer  = "7 write(1<pipe:[3]>, \"answer 1\\n\", 9) = 9\n"
	)
	for trace, wrong := range map[string]int{
		written + synced + answer:           0,
		written + answer:                    1,
		synced + answer:                     1,
		written + synced + answer + answer:  1,
		written + synced + written + answer: 1,
		written + answer + synced:           1,
		written + "7 fdatasync(5</x/b.sley-wal>) = -1 EIO (Input/output error)\n" + answer:                   1,
		written + "7 fdatasync(5</x/b.sley>) = 0\n" + answer:                                                 1,
		written + "7 fdatasync(5</x/b.sley-wal> <unfinished ...>\n" + answer:                                 1,
		written + "7 fdatasync(5</x/b.sley-wal> <unfinished ...>\n8 <... fdatasync resumed>) = 0\n" + answer: 1,
		written + "7 fdatasync(5</x/b.sley-wal> <unfinished ...>\n7 <... fdatasync resumed>) = 0\n" + answer: 0,
	} {
		if _, faults := unsynced(trace); len(faults) != wrong {
			t.Errorf("%d faults, not %d:\n%s", len(faults), wrong, trace)
		}
	}
}
