package structure

import (
	"math/big"
	"slices"
	"testing"

	"gonum.org/v1/gonum/graph/simple"
	"gonum.org/v1/gonum/graph/topo"
	"pgregory.net/rapid"

	"sley/internal/trade/weave"
)

// slowHangs tries every way to part the threads: those of a part, picks first, lie on
// top of all the others or they do not.
func slowHangs(w *weave.Weave) bool {
	m, n := w.Picks(), w.Ends()
	for upper := 1; upper < 1<<(m+n)-1; upper++ {
		parted := true
		for i := range m {
			for j := range n {
				pick, end := upper>>i&1 == 1, upper>>(m+j)&1 == 1
				if pick != end && end != w.WarpUp(i, j) {
					parted = false
				}
			}
		}
		if parted {
			return false
		}
	}
	return m > 0 && n > 0
}

// reached is which threads, picks first, lie beneath one another by way of others.
func reached(w *weave.Weave) []uint32 {
	m, n := w.Picks(), w.Ends()
	below := make([]uint32, m+n)
	for i := range m {
		for j := range n {
			if w.WarpUp(i, j) {
				below[m+j] |= 1 << i
			} else {
				below[i] |= 1 << (m + j)
			}
		}
	}
	for by := range below {
		for k := range below {
			if below[k]>>by&1 == 1 {
				below[k] |= below[by]
			}
		}
	}
	return below
}

// ring is the second twin: every thread lies beneath every other, going round.
func ring(w *weave.Weave) bool {
	below := reached(w)
	return !slices.ContainsFunc(below, func(set uint32) bool { return set != 1<<len(below)-1 })
}

// TestHangsTogetherExhaustively counts the matrices that hang together. H(m, n) was
// worked out by brute force from the definition and again from strong connectivity:
// own computation. It is less than the matrices without a constant row or column,
// which OEIS A283654 counts, from 4 × 4 on.
func TestHangsTogetherExhaustively(t *testing.T) {
	for _, c := range []struct{ m, n, mixed, hangs int }{
		{1, 1, 0, 0},
		{1, 4, 0, 0},
		{2, 2, 2, 2},
		{2, 3, 6, 6},
		{2, 4, 14, 14},
		{2, 5, 30, 30},
		{3, 3, 102, 102},
		{3, 4, 906, 906},
		{3, 5, 6510, 6510},
		{4, 4, 22874, 22730},
		{4, 5, 417810, 415650},
	} {
		if c.m*c.n > 16 && testing.Short() {
			continue
		}
		mixed, hangs := 0, 0
		for bits := range uint64(1) << (c.m * c.n) {
			w := of(c.m, c.n, bits)
			got := HangsTogether(w)
			if got != ring(w) || c.m*c.n <= 12 && got != slowHangs(w) {
				t.Fatalf("hangs together: %v\n%s", got, w)
			}
			if got {
				hangs++
			}
			if isMixed(w) {
				mixed++
			}
		}
		if hangs != c.hangs || mixed != c.mixed || recurrence(c.m, c.n).Cmp(big.NewInt(int64(c.hangs))) != 0 {
			t.Errorf("%d x %d: %d hang of %d without a constant thread, want %d of %d", c.m, c.n, hangs, mixed, c.hangs, c.mixed)
		}
	}
}

// isMixed reports whether no thread stays on one side.
func isMixed(w *weave.Weave) bool {
	oneSide := func(w *weave.Weave) bool {
		return slices.ContainsFunc(sums(w), func(ups int) bool { return ups == 0 || ups == w.Ends() })
	}
	return !oneSide(w) && !oneSide(w.Transpose())
}

// TestHangsTogetherUpToOrder goes through all matrices whose picks are in order, each
// for all the orders they can come in: H(5, 5), H(4, 6) and H(4, 7), own computation.
func TestHangsTogetherUpToOrder(t *testing.T) {
	if testing.Short() {
		t.Skip("a million matrices")
	}
	for _, c := range []struct{ m, n, hangs int }{{5, 5, 17564070}, {6, 4, 6624554}, {7, 4, 98893746}} {
		sum := 0
		rows := make([]int, c.m)
		for {
			w := weave.New(c.m, c.n)
			for i, bits := range rows {
				w.Row(i)[0] = uint64(bits)
			}
			if HangsTogether(w) {
				sum += orders(rows)
			}
			if !nextSorted(rows, 1<<c.n) {
				break
			}
		}
		if sum != c.hangs {
			t.Errorf("%d x %d: %d hang, want %d", c.m, c.n, sum, c.hangs)
		}
	}
}

// orders gives in how many orders a sorted list can come.
func orders(sorted []int) int {
	ways, same := 1, 0
	for i := range sorted {
		if i > 0 && sorted[i] == sorted[i-1] {
			same++
		} else {
			same = 1
		}
		ways = ways * (i + 1) / same
	}
	return ways
}

// nextSorted goes on to the next list that never falls, of numbers below most.
func nextSorted(list []int, most int) bool {
	for i := len(list) - 1; i >= 0; i-- {
		if list[i]+1 < most {
			for k := i + 1; k < len(list); k++ {
				list[k] = list[i] + 1
			}
			list[i]++
			return true
		}
	}
	return false
}

// recurrence gives H(m, n): a matrix is a row of strong blocks and loose threads from
// top to bottom, whose exponential generating function is -1/T with T = Σ 2^(mn) x^m
// y^n / m! n!. Derived, and equal to every count by brute force: own computation.
func recurrence(m, n int) *big.Int {
	inv := map[[2]int]*big.Int{}
	for i := range m + 1 {
		for j := range n + 1 {
			sum := new(big.Int)
			for a := range i + 1 {
				for b := range j + 1 {
					if a+b == 0 {
						continue
					}
					term := new(big.Int).Lsh(big.NewInt(1), uint(a*b))
					term.Mul(term, new(big.Int).Binomial(int64(i), int64(a)))
					term.Mul(term, new(big.Int).Binomial(int64(j), int64(b)))
					sum.Sub(sum, term.Mul(term, inv[[2]int{i - a, j - b}]))
				}
			}
			if i+j == 0 {
				sum.SetInt64(1)
			}
			inv[[2]int{i, j}] = sum
		}
	}
	return new(big.Int).Neg(inv[[2]int{m, n}])
}

// Own computation, by the criterion on sorted sums and by the recurrence.
func TestRecurrence(t *testing.T) {
	for _, c := range []struct {
		m, n int
		want string
	}{
		{4, 8, "1429528730"},
		{5, 8, "630682072050"},
		{6, 6, "46913648762"},
		{7, 7, "451512045540822"},
		{8, 8, "16271021103280406570"},
		{10, 10, "1219040989417199070433280019002"},
	} {
		if got := recurrence(c.m, c.n).String(); got != c.want {
			t.Errorf("H(%d, %d) = %s, want %s", c.m, c.n, got, c.want)
		}
	}
}

// TestLayersAreStrongComponents holds the layers against gonum's strongly connected
// components of the digraph of which thread lies on which.
func TestLayersAreStrongComponents(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := stacked(t)
		a := Of(w)
		m := w.Picks()
		g := simple.NewDirectedGraph()
		for k := range m + w.Ends() {
			g.AddNode(simple.Node(k))
		}
		for i := range m {
			for j := range w.Ends() {
				pick, end := simple.Node(i), simple.Node(m+j)
				if w.WarpUp(i, j) {
					pick, end = end, pick
				}
				g.SetEdge(g.NewEdge(pick, end))
			}
		}
		var want [][]int
		for _, scc := range topo.TarjanSCC(g) {
			var ids []int
			for _, node := range scc {
				ids = append(ids, int(node.ID()))
			}
			slices.Sort(ids)
			want = append(want, ids)
		}
		if got := components(a.Layers, m); !equalSets(got, want) {
			t.Fatalf("layers %v, strong components %v\n%s", a.Layers, want, w)
		}
		inOrder(t, w, a.Layers)
	})
}

// stacked draws a weave that often falls into layers: blocks one below the other,
// with the threads then shuffled.
func stacked(t *rapid.T) *weave.Weave {
	w := drawn(t)
	if !rapid.Bool().Draw(t, "stacked") {
		return w
	}
	cutPick, cutEnd := rapid.IntRange(0, w.Picks()).Draw(t, "cut pick"), rapid.IntRange(0, w.Ends()).Draw(t, "cut end")
	picks := rapid.Permutation(upTo(w.Picks())).Draw(t, "picks")
	ends := rapid.Permutation(upTo(w.Ends())).Draw(t, "ends")
	for i, pick := range picks {
		for j, end := range ends {
			if (i < cutPick) != (j < cutEnd) {
				w.Set(pick, end, j < cutEnd)
			}
		}
	}
	return w
}

func upTo(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// components gives the layers as sets of threads, picks first, each loose thread by
// itself.
func components(layers []Layer, picks int) (out [][]int) {
	for _, l := range layers {
		ids := slices.Clone(l.Picks)
		for _, end := range l.Ends {
			ids = append(ids, picks+end)
		}
		if !l.Loose() {
			out = append(out, ids)
			continue
		}
		for _, id := range ids {
			out = append(out, []int{id})
		}
	}
	return out
}

func equalSets(a, b [][]int) bool {
	slices.SortFunc(a, slices.Compare)
	slices.SortFunc(b, slices.Compare)
	return slices.EqualFunc(a, b, slices.Equal)
}

// inOrder checks that every layer lies on top of the next, and that no two
// neighbours could be one.
func inOrder(t *rapid.T, w *weave.Weave, layers []Layer) {
	for k := range layers {
		for _, lower := range layers[k+1:] {
			for _, pick := range layers[k].Picks {
				for _, end := range lower.Ends {
					if w.WarpUp(pick, end) {
						t.Fatalf("pick %d of layer %d lies beneath end %d\n%s", pick, k, end, w)
					}
				}
			}
			for _, end := range layers[k].Ends {
				for _, pick := range lower.Picks {
					if !w.WarpUp(pick, end) {
						t.Fatalf("end %d of layer %d lies beneath pick %d\n%s", end, k, pick, w)
					}
				}
			}
		}
		if k > 0 && (len(layers[k].Picks)+len(layers[k-1].Picks) == 0 || len(layers[k].Ends)+len(layers[k-1].Ends) == 0) {
			t.Fatalf("two layers of loose threads are one: %v", layers)
		}
	}
}

// Worked examples: own computation. Threads are counted from 1 in them.
func TestWorkedLayers(t *testing.T) {
	for _, c := range []struct {
		weave string
		want  []Layer
	}{
		{"#./.#", []Layer{{[]int{1, 2}, []int{1, 2}}}},
		{"##../##../..##/..##", []Layer{{[]int{1, 2, 3, 4}, []int{1, 2, 3, 4}}}},
		{"##../.##./..##/#..#", []Layer{{[]int{1, 2, 3, 4}, []int{1, 2, 3, 4}}}},
		{"##./#.#/#..", []Layer{{[]int{1}, nil}, {nil, []int{3}}, {[]int{2, 3}, []int{1, 2}}}},
		{"##/##", []Layer{{[]int{1, 2}, nil}, {nil, []int{1, 2}}}},
		{"#.../###./..#./#.##", []Layer{{[]int{1, 3}, []int{1, 3}}, {[]int{2, 4}, []int{2, 4}}}},
		{"#.../###./.#../##.#", []Layer{{[]int{1, 2}, []int{1, 3}}, {[]int{3, 4}, []int{2, 4}}}},
		{"#.../###./.##./#.##", []Layer{{[]int{1, 2, 3, 4}, []int{1, 2, 3, 4}}}},
		{"#..../###../.#.../##.##", []Layer{{[]int{1, 2}, []int{1, 3}}, {[]int{3, 4, 5}, []int{2, 4}}}},
		{"#...../##.#../#####./...#../#..##./##.###", []Layer{{[]int{1, 4}, []int{1, 4}}, {[]int{2, 5}, []int{2, 5}}, {[]int{3, 6}, []int{3, 6}}}},
	} {
		got := Of(weave.Must(c.weave)).Layers
		same := len(got) == len(c.want)
		for k := range got {
			same = same && slices.Equal(fromOne(got[k].Ends), c.want[k].Ends) && slices.Equal(fromOne(got[k].Picks), c.want[k].Picks)
		}
		if !same {
			t.Errorf("%s: layers %v, want %v counted from 1", c.weave, got, c.want)
		}
	}
}

func fromOne(list []int) []int {
	out := slices.Clone(list)
	for i := range out {
		out[i]++
	}
	return out
}

// TestStitches: of the 16 crossings of a double cloth, these 8 join its layers when
// they are changed; own computation.
func TestStitches(t *testing.T) {
	var got [][2]int
	for i := range 4 {
		for j := range 4 {
			w := weave.Must("#.../###./..#./#.##")
			w.Set(i, j, !w.WarpUp(i, j))
			if HangsTogether(w) {
				got = append(got, [2]int{i + 1, j + 1})
			}
		}
	}
	if want := [][2]int{{1, 2}, {1, 4}, {2, 1}, {2, 3}, {3, 2}, {3, 4}, {4, 1}, {4, 3}}; !slices.Equal(got, want) {
		t.Errorf("stitched at %v, want %v", got, want)
	}
}

// TestDuplicatesNeverMatter: nor does the order of threads, nor tiling, so that a
// repeat and a cloth of it hang together alike.
func TestDuplicatesNeverMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := stacked(t)
		want := HangsTogether(w)
		picks := rapid.SliceOfN(rapid.IntRange(0, w.Picks()-1), 0, 9).Draw(t, "again")
		picks = rapid.Permutation(append(upTo(w.Picks()), picks...)).Draw(t, "picks")
		if got := HangsTogether(rowsAt(w, picks)); got != want {
			t.Fatalf("%v, want %v with picks %v of\n%s", got, want, picks, w)
		}
		if got := HangsTogether(w.Cloth(2*w.Picks(), 3*w.Ends())); got != want {
			t.Fatalf("a cloth of six repeats: %v, want %v\n%s", got, want, w)
		}
	})
}

// TestEqualSumsHang: where all rows have one sum and all columns have one sum, and not
// one thread is on top everywhere, a weave hangs together. There are 138 such of
// 4 × 4; own computation.
func TestEqualSumsHang(t *testing.T) {
	found := 0
	for bits := range uint64(1) << 16 {
		w := of(4, 4, bits)
		rows, columns := sums(w), sums(w.Transpose())
		slices.Sort(rows)
		slices.Sort(columns)
		if rows[0] != rows[3] || columns[0] != columns[3] || rows[0]%4 == 0 {
			continue
		}
		if found++; !HangsTogether(w) {
			t.Errorf("does not hang together:\n%s", w)
		}
	}
	if found != 138 {
		t.Errorf("%d such weaves, want 138", found)
	}
}
