package sley_test

import (
	"bufio"
	"encoding/json"
	"io"
	"net/http"
	"net/http/cookiejar"
	"os/exec"
	"strings"
	"testing"
	"time"

	"sley/internal/face/web/browsing"
)

// firstCommand is what the README has a weaver type first.
const firstCommand = "go run ./cmd/sley"

// TestFirstCommand does what a weaver does: types the README's first command, reads a
// number of the demo from the page, and presses Ctrl+C.
func TestFirstCommand(t *testing.T) {
	d := newDesk(t)
	cmd, lines := d.begin(t, firstCommand+" --no-browser")
	address := await(t, lines, "The page is ")
	readsTowels(t, address)
	t.Run("in the browser", func(t *testing.T) {
		tab := browsing.Start(t).Open(t, address)
		tab.Says("Galley towels")
		tab.Says("483")
		tab.Quiet(t, false)
	})
	interrupt(t, cmd)
	await(t, lines, "sley has stopped.")
	for range lines { // to its end
	}
	_ = cmd.Wait() // go run itself calls an interrupt a failure
}

// TestInterrupted is of sley itself: what was interrupted has done its work, and the book
// is free for the next.
func TestInterrupted(t *testing.T) {
	d := newDesk(t)
	for range 2 {
		cmd, lines := d.begin(t, "exec sley --no-browser")
		readsTowels(t, await(t, lines, "The page is "))
		interrupt(t, cmd)
		await(t, lines, "sley has stopped.")
		for range lines { // to its end
		}
		if err := cmd.Wait(); err != nil {
			t.Error("after Ctrl+C it ended with", err)
		}
	}
}

// begin starts a command and gives what it prints, line by line.
func (d desk) begin(t *testing.T, line string) (*exec.Cmd, <-chan string) {
	t.Helper()
	cmd := exec.Command("sh", "-c", "exec "+strings.TrimPrefix(line, "exec "))
	cmd.Dir, cmd.Env = d.dir, d.env
	ownGroup(cmd)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	cmd.Stderr = cmd.Stdout
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if cmd.ProcessState == nil {
			endGroup(cmd)
		}
	})
	lines := make(chan string, 100)
	go func() {
		defer close(lines)
		for in := bufio.NewScanner(out); in.Scan(); {
			lines <- in.Text()
		}
	}()
	return cmd, lines
}

// await gives the rest of the line that begins so.
func await(t *testing.T, lines <-chan string, begins string) string {
	t.Helper()
	var said []string
	late := time.After(patience)
	for {
		select {
		case line, more := <-lines:
			if rest, ok := strings.CutPrefix(line, begins); ok {
				return rest
			}
			if !more {
				t.Fatalf("it ended without %q, and said %q", begins, said)
			}
			said = append(said, line)
		case <-late:
			t.Fatalf("it never said %q, only %q", begins, said)
		}
	}
}

// readsTowels opens the page and asks for the warps, as the page does.
func readsTowels(t *testing.T, address string) {
	t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	client := http.Client{Jar: jar, Timeout: 30 * time.Second}
	page, err := client.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	page.Body.Close()
	home, _, _ := strings.Cut(address, "/open/")
	answer, err := client.Get(home + "/api/warps?words=galley+towels")
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	var list struct {
		Items []struct {
			Figures []struct{ Says, Value string }
		}
	}
	if err != nil || json.Unmarshal(data, &list) != nil || len(list.Items) != 1 {
		t.Fatalf("the towels: %v, %s", err, data)
	}
	for _, f := range list.Items[0].Figures {
		if f.Says == "ends to wind" && f.Value == "483" {
			return
		}
	}
	t.Errorf("the towels have no 483 ends: %s", data)
}
