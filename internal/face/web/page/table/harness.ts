import { dotAt, threadAt, type Axis } from './axis'
import { meets, type Rect, type Region } from './bands'
import { picksOf, tiesOf } from './cloth'
import { rectOf } from './hit'
import { dyeAt, type Drawn } from './look'
import { isFine, lineOf } from './ruled'
import { isStrong } from './rulers'
import { hasBit, setAt, type NumberSet, type Sets } from './sets'
import type { Ink } from './surface'
import { endAt, endNumber, pickAt, seen, type View } from './view'

// What stands around the cloth: threading, tie-up, treadling or lift plan, and the colours
// of the threads. It is drawn anew each time, as far as it is in sight.

export function fill(ink: Ink, css: string, rect: Rect | null): void {
  if (!rect) return
  ink.fillStyle = css
  ink.fillRect(rect.x, rect.y, rect.w, rect.h)
}

// fillIn fills what of a rectangle lies in another.
const fillIn = (ink: Ink, css: string, rect: Rect | null, band: Rect): void => fill(ink, css, rect && meets(rect, band))

// threadsShown are the columns, or the rows, that are drawn: all in sight, but where cells
// are smaller than dots one for each dot.
function threadsShown(axis: Axis, cell: number, from: number, to: number): number[] {
  const out: number[] = []
  for (let i = from; i < to; i++) {
    out.push(i)
    if (cell < 1) i = Math.max(i, threadAt(axis, dotAt(axis, i, cell), cell))
  }
  return out
}

export function paintThreading(ink: Ink, view: View, { table, dyes }: Drawn): void {
  const band = view.bands.threading
  if (!band) return
  fill(ink, dyes.paper.css, band)
  const { c0, c1 } = seen(view)
  for (const column of threadsShown(view.cols, view.dots, c0, c1)) {
    const end = endAt(view.sight, column)
    const shaft = table.threading[end] ?? 0
    if (shaft < 1 || shaft > view.sight.extent.shafts) continue
    const rect = rectOf(view, { part: 'threading', end, shaft })
    fillIn(ink, dyes.ink.css, rect && { ...rect, w: Math.max(rect.w, 1) }, band)
  }
  ruleEnds(ink, view, band, dyes)
  ruleShafts(ink, view, 'threading', dyes)
}

// paintBeside draws the treadles that each pick presses, or the shafts that are up at it.
export function paintBeside(ink: Ink, view: View, { table, dyes }: Drawn): void {
  const lifts = view.sight.extent.lifts
  const part = lifts ? 'lifts' : 'treadling'
  const band = view.bands[part]
  if (!band) return
  fill(ink, dyes.paper.css, band)
  const sets = lifts ? table.up : table.treadling
  const { r0, r1 } = seen(view)
  const columns = Array.from({ length: view.sight.extent.across }, (_, k) => rectOf(view, lifts ? { part, shaft: k + 1 } : { part, treadle: k + 1 }))
  for (const row of threadsShown(view.rows, view.dots, r0, r1)) {
    const pick = pickAt(view.sight, row)
    const at = rectOf(view, { part, pick })
    const high = at && meets({ ...at, h: Math.max(at.h, 1) }, band)
    if (high) paintPick(ink, columns, setAt(sets, pick), high, dyes.ink.css)
  }
  rulePicks(ink, view, band, dyes)
  ruleTreadles(ink, view, part, dyes)
}

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
  fill(ink, dyes.paper.css, band)
  ruleShafts(ink, view, 'ties', dyes)
  ruleTreadles(ink, view, 'ties', dyes)
  const { raised, lowered } = tiesOf(table)
  for (let treadle = 1; treadle <= view.sight.extent.across; treadle++) {
    for (let shaft = 1; shaft <= view.sight.extent.shafts; shaft++) {
      const rect = rectOf(view, { part: 'ties', treadle, shaft })
      if (rect && tied(raised, treadle, shaft)) circle(ink, dyes.ink.css, rect)
      if (rect && tied(lowered, treadle, shaft)) cross(ink, dyes.ink.css, rect)
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

// paintBars draws the colours of the ends outside the threading, and of the picks outside
// the treadling, a run at a time.
export function paintBars(ink: Ink, view: View, { table, dyes }: Drawn): void {
  const { c0, c1, r0, r1 } = seen(view)
  if (dyes.palette.length === 0) return
  const at = (part: Region, colours: Uint16Array, thread: (i: number) => number, rect: (i: number) => Rect | null, from: number, to: number): void => {
    const band = view.bands[part]
    for (let i = from; band && i < to; i++) {
      const [first, colour] = [rect(thread(i)), colours[thread(i)] ?? 0]
      while (i + 1 < to && colours[thread(i + 1)] === colour) i++
      const last = rect(thread(i))
      if (first && last) fillIn(ink, dyeAt(dyes, colour).css, { x: first.x, y: first.y, w: last.x + last.w - first.x, h: last.y + last.h - first.y }, band)
    }
  }
  at('warp-colours', table.warp.colours, (c) => endAt(view.sight, c), (end) => rectOf(view, { part: 'warp-colours', end }), c0, c1)
  at('weft-colours', table.weft.colours, (r) => pickAt(view.sight, r), (pick) => rectOf(view, { part: 'weft-colours', pick }), r0, Math.min(r1, picksOf(table)))
}

// The grid: a line before every thread but the first, stronger after every fifth.

function ruleEnds(ink: Ink, view: View, band: Rect, dyes: Dyes): void {
  const { c0, c1 } = seen(view)
  const number = (column: number): number => endNumber(view.sight, endAt(view.sight, column))
  for (let column = Math.max(c0, 1); column < c1 && view.dots >= 3; column++) {
    const x = band.x - view.left + dotAt(view.cols, column, view.dots)
    rule(ink, lineOf(view.dots, isStrong(number(column - 1), number(column))), dyes, (w) => meets({ ...band, x, w }, band))
  }
}

function rulePicks(ink: Ink, view: View, band: Rect, dyes: Dyes): void {
  const { r0, r1 } = seen(view)
  for (let row = Math.max(r0, 1); row < r1 && view.dots >= 3; row++) {
    const y = band.y - view.top + dotAt(view.rows, row, view.dots)
    rule(ink, lineOf(view.dots, isStrong(pickAt(view.sight, row - 1) + 1, pickAt(view.sight, row) + 1)), dyes, (h) => meets({ ...band, y, h }, band))
  }
}

function ruleShafts(ink: Ink, view: View, part: 'threading' | 'ties', dyes: Dyes): void {
  for (let shaft = 1; shaft < view.sight.extent.shafts; shaft++) {
    const rect = rectOf(view, { part, shaft })
    const y = rect && (view.sight.arrangement.below ? rect.y + rect.h : rect.y)
    rule(ink, lineOf(view.bands.shaftStep, isStrong(shaft, shaft + 1)), dyes, (h) => rect && y !== null ? { ...rect, y, h } : null)
  }
}

function ruleTreadles(ink: Ink, view: View, part: 'treadling' | 'lifts' | 'ties', dyes: Dyes): void {
  for (let n = 1; n < view.sight.extent.across; n++) {
    const rect = rectOf(view, part === 'lifts' ? { part, shaft: n } : { part, treadle: n })
    const x = rect && (view.sight.arrangement.left ? rect.x : rect.x + rect.w)
    rule(ink, lineOf(view.bands.treadleStep, isStrong(n, n + 1)), dyes, (w) => rect && x !== null ? { ...rect, x, w } : null)
  }
}

function rule(ink: Ink, line: { wide: number; kind: number }, dyes: Dyes, rect: (wide: number) => Rect | null): void {
  if (line.wide > 0) fill(ink, line.kind === isFine ? dyes.rule.css : dyes.strong.css, rect(line.wide))
}
