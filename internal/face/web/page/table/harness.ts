import { dotAt, threadAt, type Axis } from './axis'
import { meets, type Rect, type Region } from './bands'
import { picksOf, tiesOf, type Stretch } from './cloth'
import { rectOf } from './hit'
import { dyeAt, type Drawn } from './look'
import { isFine, lineOf } from './ruled'
import { isStrong } from './rulers'
import { hasBit, setAt, type NumberSet, type Sets } from './sets'
import type { Ink } from './surface'
import { endAt, endNumber, pickAt, seen, type View } from './view'

// What stands around the cloth: threading, tie-up, treadling or lift plan, and the colours
// of the threads. Each is drawn as far as it is in sight, or a piece of it alone, in which every
// dot is as if all were drawn.

export function fill(ink: Ink, css: string, rect: Rect | null): void {
  if (!rect) return
  ink.fillStyle = css
  ink.fillRect(rect.x, rect.y, rect.w, rect.h)
}

// fillIn fills what of a rectangle lies in another.
const fillIn = (ink: Ink, css: string, rect: Rect | null, band: Rect): void => fill(ink, css, rect && meets(rect, band))

// threadsShown are the columns, or the rows, that are drawn: all in sight, but where cells
// are smaller than dots one for each dot.
function threadsShown(axis: Axis, cell: number, [from, to]: Stretch): number[] {
  const out: number[] = []
  for (let i = from; i < to; i++) {
    out.push(i)
    if (cell < 1) i = Math.max(i, threadAt(axis, dotAt(axis, i, cell), cell))
  }
  return out
}

// within are the threads of those in sight that lie on so many dots from one on.
function within(axis: Axis, cell: number, from: number, to: number, dot: number, long: number): Stretch {
  const first = cell >= 1 ? threadAt(axis, dot, cell) : dot > 0 ? threadAt(axis, dot - 1, cell) + 1 : 0
  return [Math.max(from, first), Math.min(to, threadAt(axis, dot + long - 1, cell) + 1)]
}

function columnsIn(view: View, clip: Rect): Stretch {
  const { c0, c1 } = seen(view)
  return within(view.cols, view.dots, c0, c1, view.left + clip.x - view.bands.drawdown.x, clip.w)
}

function rowsIn(view: View, clip: Rect): Stretch {
  const { r0, r1 } = seen(view)
  return within(view.rows, view.dots, r0, r1, view.top + clip.y - view.bands.drawdown.y, clip.h)
}

// shaftsOf are where the shafts of a part lie, the first first; treadlesOf where what stands
// beside the cloth does.
const shaftsOf = (view: View, part: 'threading' | 'ties'): (Rect | null)[] => Array.from({ length: view.sight.extent.shafts }, (_, k) => rectOf(view, { part, shaft: k + 1 }))
const treadlesOf = (view: View, part: 'treadling' | 'lifts' | 'ties'): (Rect | null)[] =>
  Array.from({ length: view.sight.extent.across }, (_, k) => rectOf(view, part === 'lifts' ? { part, shaft: k + 1 } : { part, treadle: k + 1 }))

// paintThreading draws the shaft of each end; within clip alone, where that is given.
export function paintThreading(ink: Ink, view: View, { table, dyes }: Drawn, clip = view.bands.threading): void {
  const band = view.bands.threading
  if (!band || !clip) return
  fill(ink, dyes.paper.css, clip)
  const shafts = shaftsOf(view, 'threading')
  const columns = columnsIn(view, clip)
  for (const column of threadsShown(view.cols, view.dots, columns)) {
    const shaft = shafts[(table.threading[endAt(view.sight, column)] ?? 0) - 1]
    if (!shaft) continue
    const x = dotAt(view.cols, column, view.dots)
    fillIn(ink, dyes.ink.css, { x: band.x - view.left + x, y: shaft.y, w: Math.max(dotAt(view.cols, column + 1, view.dots) - x, 1), h: shaft.h }, clip)
  }
  ruleEnds(ink, view, band, clip, columns, dyes)
  ruleShafts(ink, view, shafts, clip, dyes)
}

// paintBeside draws the treadles that each pick presses, or the shafts that are up at it.
export function paintBeside(ink: Ink, view: View, { table, dyes }: Drawn, clip = besideOf(view)): void {
  const lifts = view.sight.extent.lifts
  const part = lifts ? 'lifts' : 'treadling'
  const band = view.bands[part]
  if (!band || !clip) return
  fill(ink, dyes.paper.css, clip)
  const sets = lifts ? table.up : table.treadling
  const treadles = treadlesOf(view, part)
  const rows = rowsIn(view, clip)
  for (const row of threadsShown(view.rows, view.dots, rows)) {
    const y = dotAt(view.rows, row, view.dots)
    const high = meets({ ...band, y: band.y - view.top + y, h: Math.max(dotAt(view.rows, row + 1, view.dots) - y, 1) }, clip)
    if (high) paintPick(ink, treadles, setAt(sets, pickAt(view.sight, row)), high, dyes.ink.css)
  }
  rulePicks(ink, view, band, clip, rows, dyes)
  ruleTreadles(ink, view, treadles, clip, dyes)
}

const besideOf = ({ bands, sight }: View): Rect | undefined => bands[sight.extent.lifts ? 'lifts' : 'treadling']

type Dyes = Drawn['dyes']

function paintPick(ink: Ink, columns: (Rect | null)[], { lo, hi }: NumberSet, { y, h }: Rect, css: string): void {
  for (const [k, column] of columns.entries()) {
    if (column && hasBit(lo, hi, k + 1)) fill(ink, css, { ...column, y, h })
  }
}

// paintTies draws what the treadles are tied to: a circle for a shaft that a treadle raises,
// a cross for one that it lowers; where these are too small to be told apart, a filled cell
// and one that is half filled.
export function paintTies(ink: Ink, view: View, { table, dyes }: Drawn): void {
  const band = view.bands.ties
  if (!band) return
  const [shafts, treadles] = [shaftsOf(view, 'ties'), treadlesOf(view, 'ties')]
  fill(ink, dyes.paper.css, band)
  ruleShafts(ink, view, shafts, band, dyes)
  ruleTreadles(ink, view, treadles, band, dyes)
  const { raised, lowered } = tiesOf(table)
  for (const [k, across] of treadles.entries()) {
    for (const [n, down] of shafts.entries()) {
      const [up, sinks] = [tied(raised, k + 1, n + 1), tied(lowered, k + 1, n + 1)]
      if (!across || !down || (!up && !sinks)) continue
      const rect = { x: across.x, y: down.y, w: across.w, h: down.h }
      if (up) circle(ink, dyes.ink.css, rect)
      if (sinks) cross(ink, dyes.ink.css, rect)
    }
  }
}

const tied = ({ lo, hi }: Sets, treadle: number, shaft: number): boolean => hasBit(lo[treadle - 1] ?? 0, hi[treadle - 1] ?? 0, shaft)

const signFrom = 7 // dots that a circle or a cross needs

function circle(ink: Ink, css: string, rect: Rect): void {
  const across = Math.min(rect.w, rect.h)
  if (across < signFrom) return fill(ink, css, rect)
  stroke(ink, css, across)
  ink.arc(rect.x + rect.w / 2, rect.y + rect.h / 2, 0.32 * across, 0, 2 * Math.PI)
  ink.stroke()
}

function cross(ink: Ink, css: string, rect: Rect): void {
  const across = Math.min(rect.w, rect.h)
  if (across < signFrom) return fill(ink, css, { ...rect, h: Math.max(Math.floor(rect.h / 2), 1) })
  const [x, y, off] = [rect.x + rect.w / 2, rect.y + rect.h / 2, 0.27 * across]
  stroke(ink, css, across)
  ink.moveTo(x - off, y - off)
  ink.lineTo(x + off, y + off)
  ink.moveTo(x - off, y + off)
  ink.lineTo(x + off, y - off)
  ink.stroke()
}

function stroke(ink: Ink, css: string, across: number): void {
  ink.strokeStyle = css
  ink.lineWidth = Math.max(across / 9, 1)
  ink.beginPath()
}

// paintEnds draws the colours of the ends outside the threading, paintPicks those of the picks
// outside the treadling, a run at a time.
export function paintEnds(ink: Ink, view: View, { table, dyes }: Drawn): void {
  const { c0, c1 } = seen(view)
  paintBar(ink, view, 'warp-colours', dyes, { colours: table.warp.colours, thread: (c) => endAt(view.sight, c), rect: (end) => rectOf(view, { part: 'warp-colours', end }) }, [c0, c1])
}

export function paintPicks(ink: Ink, view: View, { table, dyes }: Drawn): void {
  const { r0, r1 } = seen(view)
  paintBar(ink, view, 'weft-colours', dyes, { colours: table.weft.colours, thread: (r) => pickAt(view.sight, r), rect: (pick) => rectOf(view, { part: 'weft-colours', pick }) }, [r0, Math.min(r1, picksOf(table))])
}

type Bar = { colours: Uint16Array; thread: (i: number) => number; rect: (thread: number) => Rect | null }

function paintBar(ink: Ink, view: View, part: Region, dyes: Dyes, { colours, thread, rect }: Bar, [from, to]: Stretch): void {
  const band = view.bands[part]
  if (dyes.palette.length === 0) return
  for (let i = from; band && i < to; i++) {
    const [first, colour] = [rect(thread(i)), colours[thread(i)] ?? 0]
    while (i + 1 < to && colours[thread(i + 1)] === colour) i++
    const last = rect(thread(i))
    if (first && last) fillIn(ink, dyeAt(dyes, colour).css, { x: first.x, y: first.y, w: last.x + last.w - first.x, h: last.y + last.h - first.y }, band)
  }
}

// The grid: a line before every thread but the first, stronger after every fifth.

function ruleEnds(ink: Ink, view: View, band: Rect, clip: Rect, [from, to]: Stretch, dyes: Dyes): void {
  const number = (column: number): number => endNumber(view.sight, endAt(view.sight, column))
  for (let column = Math.max(from, 1); column < to && view.dots >= 3; column++) {
    const x = band.x - view.left + dotAt(view.cols, column, view.dots)
    rule(ink, lineOf(view.dots, isStrong(number(column - 1), number(column))), dyes, (w) => meets({ ...band, x, w }, clip))
  }
}

function rulePicks(ink: Ink, view: View, band: Rect, clip: Rect, [from, to]: Stretch, dyes: Dyes): void {
  for (let row = Math.max(from, 1); row < to && view.dots >= 3; row++) {
    const y = band.y - view.top + dotAt(view.rows, row, view.dots)
    rule(ink, lineOf(view.dots, isStrong(pickAt(view.sight, row - 1) + 1, pickAt(view.sight, row) + 1)), dyes, (h) => meets({ ...band, y, h }, clip))
  }
}

function ruleShafts(ink: Ink, view: View, shafts: (Rect | null)[], clip: Rect, dyes: Dyes): void {
  for (const [k, rect] of shafts.slice(0, -1).entries()) {
    const y = rect && (view.sight.arrangement.below ? rect.y + rect.h : rect.y)
    rule(ink, lineOf(view.bands.shaftStep, isStrong(k + 1, k + 2)), dyes, (h) => (rect && y !== null ? meets({ ...rect, y, h }, clip) : null))
  }
}

function ruleTreadles(ink: Ink, view: View, treadles: (Rect | null)[], clip: Rect, dyes: Dyes): void {
  for (const [k, rect] of treadles.slice(0, -1).entries()) {
    const x = rect && (view.sight.arrangement.left ? rect.x : rect.x + rect.w)
    rule(ink, lineOf(view.bands.treadleStep, isStrong(k + 1, k + 2)), dyes, (w) => (rect && x !== null ? meets({ ...rect, x, w }, clip) : null))
  }
}

function rule(ink: Ink, line: { wide: number; kind: number }, dyes: Dyes, rect: (wide: number) => Rect | null): void {
  if (line.wide > 0) fill(ink, line.kind === isFine ? dyes.rule.css : dyes.strong.css, rect(line.wide))
}
