package sheet

import (
	"slices"
	"strings"

	"sley/internal/app"
	"sley/internal/face/present"
)

// Lines to write on where nothing was written down: in the log, and for what follows it.
const logLines = 6

// record is what came of a warp: sizes planned beside those measured, what follows from
// them, the yarn and the log. What is not known is a line to write on.
func (d *desk) record() {
	planned := present.RecordJSONIn(app.RecordForm(d.r), d.u)
	came := planned
	came.Learnt = nil
	if d.came != nil {
		came = present.RecordJSONIn(d.came, d.u)
	}
	var blocks []block
	for _, size := range came.Sizes {
		blocks = append(blocks, d.recordSize(size)...)
	}
	blocks = append(blocks, d.follows(planned.Learnt, came.Learnt)...)
	blocks = append(blocks, d.usedYarn(came.Yarn)...)
	d.flow(titleRecord, append(blocks, d.logged(came.Log)...))
}

func (d *desk) recordSize(size present.RecordSizeJSON) []block {
	var rows [][]cell
	for _, at := range size.States {
		measured := blank
		if at.Measured != "" {
			measured = said(at.Measured)
		}
		remark := blank
		if at.Counted {
			remark = words(wordByDents)
		}
		rows = append(rows, []cell{words(at.Says), say(at.Planned), measured, remark})
	}
	columns := []column{{wordState, 4, false}, {wordPlanned, 3, true}, {wordMeasure, 4, false}, {wordRemark, 5, false}}
	return append([]block{d.heading(capital(size.Says))}, together(d.table(columns, rows))...)
}

// usualLosses are those that have a line where they were not measured: from one state to
// the next. Others follow from them.
var usualLosses = []string{"shrinkage", "relaxation", "take-up", "width-shrinkage", "width-relaxation", "draw-in", "reed-to-relaxed"}

// follows is what the sizes teach, each between its two states: as planned, and as
// measured where it was.
func (d *desk) follows(planned, measured []present.LearntJSON) []block {
	var rows [][]cell
	seen := map[string]bool{}
	row := func(l present.LearntJSON, was string, value, typed cell) {
		if key := l.Path + l.Key; !seen[key] {
			seen[key] = true
			rows = append(rows, []cell{words(d.ofPiece(l)), say(was), value, typed})
		}
	}
	for _, l := range measured {
		row(l, l.Planned, said(l.Value), say(strings.ReplaceAll(l.Typed, " -> ", wordTo)))
	}
	for _, l := range planned {
		if slices.Contains(usualLosses, l.Key) {
			row(l, l.Value, blank, blank)
		}
	}
	if len(rows) == 0 {
		return nil
	}
	columns := []column{{wordFollows, 8.6, false}, {wordPlanned, 2.8, true}, {wordAsMeasured, 3, false}, {wordFromTo, 4.2, false}}
	return append([]block{d.heading(wordTeaches)}, d.table(columns, rows)...)
}

// ofPiece says an allowance, with the piece where there are several kinds.
func (d *desk) ofPiece(l present.LearntJSON) string {
	says := l.Says
	if l.Note != "" {
		says += ", " + l.Note
	}
	if len(d.r.Plan.Pieces) < 2 {
		return says
	}
	for i := range d.r.Plan.Pieces {
		if strings.HasPrefix(l.Path, pieceID(i)) {
			return d.pieceName(i) + ", " + says
		}
	}
	return says
}

// usedYarn is what each yarn was needed for beside what it took.
func (d *desk) usedYarn(all []present.FigureJSON) []block {
	var rows [][]cell
	for _, name := range d.yarnNames() {
		is := func(what string) string {
			for _, f := range all {
				if f.ID == "yarns["+name+"]."+what {
					return f.Value
				}
			}
			return ""
		}
		used := blank
		if text := between(is("used"), is("used-weight")); text != "" {
			used = said(text)
		}
		rows = append(rows, []cell{words(yarnName(name)), say(is("need")), say(is("weight")), used, blank})
	}
	if len(rows) == 0 {
		return nil
	}
	columns := []column{{wordTheYarn, 4, false}, {wordNeeded, 2.6, true}, {wordWeight, 2.6, true}, {wordUsed, 4, false}, {wordLeftWeighed, 4, false}}
	return append([]block{d.heading(wordYarnUsed)}, d.table(columns, rows)...)
}

// logged is what was written down at the loom, with lines for more.
func (d *desk) logged(log []present.LoggedJSON) []block {
	if len(log) == 0 {
		return d.room(wordLog, logLines)
	}
	var rows [][]cell
	for _, e := range log {
		what := e.Says
		if e.Minutes > 0 {
			what += ", " + count(e.Minutes) + " min"
		}
		rows = append(rows, []cell{words(e.At.Format("2006-01-02")), words(what), words(e.Note)})
	}
	columns := []column{{wordDay, 2.4, false}, {wordHappened, 4, false}, {wordNote, 9, false}}
	out := append([]block{d.heading(wordLog)}, d.table(columns, rows)...)
	return append(out, d.room(wordMoreLog, leastRoom)...)
}

// capital begins a text with a capital.
func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }
