package app_test

import (
	"strings"
	"testing"

	"sley/internal/trade/record"
)

// A copy of a warp whose work began is the plan as it was then, planned anew, and says
// where its parts came from.
func TestCopyOfAWarpThatWasWoven(t *testing.T) {
	s := openStudio(t)
	white := addYarn(t, s, "white", "count=8/2 Ne")
	id := addWarp(t, s, towels).ID
	saved, err := s.Use(t.Context(), edit(t, s, id, left), "yarns.white", white.ID)
	mustSaved(t, saved, err)
	before := textOf(t, s, id)
	start(t, s, id)
	saved, err = s.Amend(t.Context(), edit(t, s, id, left, "ends=199", "note=one short"))
	mustSaved(t, saved, err)

	copied, err := s.CopyOf(t.Context(), right, id, "")
	now := shown(t, s, mustSaved(t, copied, err).ID)
	if want := strings.Replace(before, `"Towels"`, `"Towels 2"`, 1); string(now.Text) != want {
		t.Errorf("the copy is\n%s, want\n%s", now.Text, want)
	}
	if now.Started || now.Facts.Stage != record.Planned || now.Version != 1 || len(now.Origins) != 1 {
		t.Errorf("started %v, stage %s, version %d, origins %v", now.Started, now.Facts.Stage, now.Version, now.Origins)
	}
	save(t, s, now.ID, left, "warp.sett=18 epi")
	if !strings.Contains(textOf(t, s, id), "ends = 199") {
		t.Error("the warp that was copied lost its amendment")
	}
}

// What stood in a plan under built before work began belongs to that warp too.
func TestCopyLeavesOutWhatWasBuilt(t *testing.T) {
	s := inMemory()
	id := addWarp(t, s, towels+"\n[built]\nends = 199\n").ID
	copied, err := s.CopyOf(t.Context(), left, id, "Hand towels")
	if text := textOf(t, s, mustSaved(t, copied, err).ID); strings.Contains(text, "built") || !strings.Contains(text, `name = "Hand towels"`) {
		t.Errorf("the copy is\n%s", text)
	}
}

// Yarns, looms and drafts are copied as they stand, without what happened to them.
func TestCopiesOfTheShelf(t *testing.T) {
	s := withDemo(t)
	for _, of := range []struct {
		kind         record.Kind
		name, called string
	}{
		{record.Yarn, "cottolin, white", "cottolin, white 2"},
		{record.Loom, "table loom, 60 cm", "table loom, 60 cm 2"},
		{record.Draft, "Rosepath", "Rosepath 2"},
	} {
		was, _, err := s.Named(t.Context(), of.kind, of.name)
		if err != nil || was == nil {
			t.Fatal(of.name, err)
		}
		copied, err := s.CopyOf(t.Context(), left, was.ID, "")
		now := shown(t, s, mustSaved(t, copied, err).ID)
		same := strings.Replace(textOf(t, s, was.ID), of.name, of.called, 1)
		if now.Kind != of.kind || now.Name != of.called || now.Demo || of.kind != record.Draft && string(now.Text) != same {
			t.Errorf("%s: %s %q, demo %v:\n%s", of.name, now.Kind, now.Name, now.Demo, now.Text)
		}
		if now.Stock != nil && len(now.Stock.Events) > 0 {
			t.Errorf("%s came with its stock", of.name)
		}
	}
}

func TestCopyRefuses(t *testing.T) {
	s := inMemory()
	id := addWarp(t, s, towels).ID
	copied, err := s.CopyOf(t.Context(), left, id, "a\x00b")
	if err != nil || !copied.Refused {
		t.Fatal(copied, err)
	}
	wantCodes(t, "a name that is none", copied.Problems, "name name.control")
	if _, err := s.CopyOf(t.Context(), left, 99, ""); !record.Is(err, record.NotFound) {
		t.Errorf("no such document: %v", err)
	}
}

// A long name is cut so that its number still stands behind it.
func TestCopyOfALongName(t *testing.T) {
	s := inMemory()
	long := strings.Repeat("ø", record.MostName)
	id := addYarn(t, s, long, "count=8/2 Ne").ID
	for _, end := range []string{" 2", " 3"} {
		copied, err := s.CopyOf(t.Context(), left, id, "")
		name := card(t, s, mustSaved(t, copied, err).ID).Name
		if want := strings.Repeat("ø", record.MostName-2) + end; name != want {
			t.Errorf("it is called %q, want %q", name, want)
		}
	}
}
