package weave

import (
	"testing"

	"pgregory.net/rapid"
)

// slowSame tries every shift of every likeness, crossing by crossing.
func slowSame(a, b *Weave, how Likeness) bool {
	a, b = a.Repeat(), b.Repeat()
	for _, c := range b.likes(how) {
		for i := range c.picks {
			for j := range c.ends {
				if c.Shift(i, j).Equal(a) {
					return true
				}
			}
		}
	}
	return false
}

func TestSameIsItsSlowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.IntRange(1, 4)
		a := filled(t, size.Draw(t, "ap"), size.Draw(t, "ae"))
		b := filled(t, a.picks, a.ends)
		if rapid.Bool().Draw(t, "related") {
			b = a.Reverse().Exchange().Shift(1, 2)
		}
		a.Bounded, b.Bounded = false, false
		for how := Shifted; how <= EitherWay; how++ {
			got, want := a.Same(b, how), slowSame(a, b, how)
			if got != want {
				t.Fatalf("alike %d: %v, want %v\n%s\n%s", how, got, want, a, b)
			}
			if canon := a.Canon(how).Equal(b.Canon(how)); canon != want {
				t.Fatalf("canons alike %d: %v, want %v\n%s\n%s", how, canon, want, a, b)
			}
		}
	})
}

// Arrays of bits on a torus up to shifts: 7 of 2 x 2, 64 of 3 x 3, 4156 of 4 x 4
// (OEIS A184271).
func TestTorusArrays(t *testing.T) {
	for n, want := range map[int]int{2: 7, 3: 64, 4: 4156} {
		if n == 4 && testing.Short() {
			continue
		}
		seen := map[uint64]bool{}
		for bits := range 1 << (n * n) {
			w := New(n, n)
			for k := range n * n {
				w.Set(k/n, k%n, bits>>k&1 == 1)
			}
			seen[w.firstShift().Hash()] = true
		}
		if len(seen) != want {
			t.Errorf("%d x %d: %d up to shifts, want %d", n, n, len(seen), want)
		}
	}
}

func TestHandsAndFaces(t *testing.T) {
	right := Must("##../.##./..##/#..#") // 2/2 twill
	for _, c := range []struct {
		name string
		v    *Weave
		how  Likeness
	}{
		{"begun elsewhere", right.Shift(1, 3), Shifted},
		{"left hand", right.Reverse(), Moved},
		{"its back, whose line leans the other way", right.Back(), Moved},
		{"two repeats", right.Tile(8, 8), Shifted},
	} {
		if !right.Same(c.v, c.how) || c.how > Shifted && right.Same(c.v, c.how-1) {
			t.Errorf("%s is not alike just so:\n%s", c.name, c.v)
		}
	}
	if one, three := Must("#.../.#../..#./...#"), Must("###./.###/#.##/##.#"); one.Same(three, Moved) || !one.Same(three, EitherFace) {
		t.Error("1/3 and 3/1 twill are two faces of one cloth, and not the same")
	}
}
