package catalogue

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"sley/internal/trade/near"
	"sley/internal/trade/problem"
)

// Kind says how a parameter is written.
type Kind int

// The kinds.
const (
	Count   Kind = iota // a whole number from Least to Most
	Choice              // one of Options
	Ratio               // ends over and under in turn, as 2/2 or 3/1/1/3, of a sum from Least to Most
	Units               // an order of blocks, as "A B C B"; package block reads it
	Threads             // an order of threads of the colours in Options, as "(dark 2, light 2) x 3"
)

// String gives the kind's plain name.
func (k Kind) String() string {
	return [...]string{"count", "choice", "ratio", "units", "threads"}[k]
}

// Param is a parameter of an entry.
type Param struct {
	Name        string
	Kind        Kind
	Default     string
	Least, Most int      // of counts, and of the sums of ratios
	Even        bool     // of counts: only even ones
	Options     []string // of choices, and the colours of threads
}

func count(name string, least, most, otherwise int) Param {
	return Param{Name: name, Kind: Count, Least: least, Most: most, Default: strconv.Itoa(otherwise)}
}

func evens(name string, least, most, otherwise int) Param {
	p := count(name, least, most, otherwise)
	p.Even = true
	return p
}

func choice(name string, options ...string) Param {
	return Param{Name: name, Kind: Choice, Options: options, Default: options[0]}
}

func ratio(name, otherwise string, least, most int) Param {
	return Param{Name: name, Kind: Ratio, Default: otherwise, Least: least, Most: most}
}

// making reads the parameters of an entry and collects what is wrong with them.
type making struct {
	entry  *Entry
	values Values
	counts map[string]int
	ratios map[string][]int
	list   problem.List
}

// newMaking reads all parameters but orders, which are read where they are used.
func newMaking(e *Entry, values Values) *making {
	m := &making{entry: e, values: values, counts: map[string]int{}, ratios: map[string][]int{}}
	m.strangers()
	for _, p := range e.Params {
		switch p.Kind {
		case Count:
			m.readCount(p)
		case Choice:
			m.readChoice(p)
		case Ratio:
			m.readRatio(p)
		}
	}
	return m
}

// strangers tells parameters that the entry does not have.
func (m *making) strangers() {
	var names []string
	for _, p := range m.entry.Params {
		names = append(names, p.Name)
	}
	for _, name := range slices.Sorted(maps.Keys(m.values)) {
		if !slices.Contains(names, name) {
			m.list.Fail("catalogue.parameter", name, name, problem.Args{"valid": names, "near": near.To(name, names), "entry": m.entry.ID})
		}
	}
}

// text gives a parameter as written, or its default.
func (m *making) text(name string) string {
	if text, ok := m.values[name]; ok {
		return strings.TrimSpace(text)
	}
	for _, p := range m.entry.Params {
		if p.Name == name {
			return p.Default
		}
	}
	panic("internal error: " + m.entry.ID + " has no parameter " + name)
}

func (m *making) readCount(p Param) {
	read := m.text(p.Name)
	n, err := strconv.Atoi(read)
	switch {
	case err != nil:
		m.list.Fail("catalogue.number", p.Name, read, problem.Args{"least": p.Least, "most": p.Most})
	case n < p.Least || n > p.Most:
		m.list.Fail("catalogue.range", p.Name, read, problem.Args{"least": p.Least, "most": p.Most})
	case p.Even && n%2 != 0:
		m.list.Fail("catalogue.even", p.Name, read, nil)
	default:
		m.counts[p.Name] = n
	}
}

func (m *making) readChoice(p Param) {
	if read := m.text(p.Name); !slices.Contains(p.Options, read) {
		m.list.Fail("catalogue.choice", p.Name, read, problem.Args{"valid": p.Options, "near": near.To(read, p.Options)})
	}
}

// mostParts is how many numbers a ratio has at most.
const mostParts = 16

func (m *making) readRatio(p Param) {
	read := m.text(p.Name)
	var parts []int
	sum := 0
	for _, part := range strings.Split(read, "/") {
		n, err := strconv.Atoi(strings.TrimSpace(part))
		if err != nil || n < 1 || n > p.Most || len(parts) == mostParts {
			m.list.Fail("catalogue.ratio", p.Name, read, nil)
			return
		}
		parts, sum = append(parts, n), sum+n
	}
	switch {
	case len(parts)%2 != 0:
		m.list.Fail("catalogue.ratio", p.Name, read, nil)
	case sum < p.Least || sum > p.Most:
		m.list.Fail("catalogue.sum", p.Name, read, problem.Args{"sum": sum, "least": p.Least, "most": p.Most})
	default:
		m.ratios[p.Name] = parts
	}
}

// count gives a whole number that was read.
func (m *making) count(name string) int { return m.counts[name] }

// is reports whether a choice is that one.
func (m *making) is(name, option string) bool { return m.text(name) == option }

// word gives the bits of a ratio: true where the warp is on top.
func (m *making) word(name string) []bool { return spell(m.ratios[name]) }

func spell(ratio []int) []bool {
	var out []bool
	for i, n := range ratio {
		out = append(out, slices.Repeat([]bool{i%2 == 0}, n)...)
	}
	return out
}

// fail tells what is wrong with a parameter beside the others.
func (m *making) fail(code, name string, args problem.Args) {
	m.list.Fail(code, name, m.text(name), args)
}
