import { dotAt, type Axis } from './axis'
import type { Dye, Drawn, Dyes } from './look'
import { endAt, pickAt } from './view'

// What of a picture is as it was when a draft has changed.

// alike reports whether two drawings differ in nothing but their threads: in the size of
// their cells, their colours and how they lie.
export function alike(a: Drawn, b: Drawn): boolean {
  const [x, y] = [a.sight.arrangement, b.sight.arrangement]
  if (a.cell !== b.cell || x.back !== y.back || x.upwards !== y.upwards || x.fromRight !== y.fromRight) return false
  return !renumbered(a, b) && sameAxis(a.cols, b.cols) && sameAxis(a.rows, b.rows) && sameDyes(a.dyes, b.dyes)
}

// renumbered: where numbers are counted from the side that a draft grows at, all change with
// it, and the stronger lines with them.
function renumbered({ sight: a }: Drawn, { sight: b }: Drawn): boolean {
  const { back, fromRight, upwards } = b.arrangement
  return (back !== fromRight && a.extent.ends !== b.extent.ends) || (upwards && a.extent.picks !== b.extent.picks)
}

// sameAxis: threads that are all as far apart lie where they lay, however many come to them.
function sameAxis(a: Axis, b: Axis): boolean {
  if (!a.edges && !b.edges) return true
  return sameList(a.edges, b.edges) && sameList(a.thick, b.thick)
}

function sameList(a: ArrayLike<number> | null, b: ArrayLike<number> | null): boolean {
  if (!a || !b) return a === b
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false
  return true
}

function sameDyes(a: Dyes, b: Dyes): boolean {
  const same = (x: Dye, y: Dye): boolean => x.pixel === y.pixel
  if (a.marks !== b.marks || a.dots !== b.dots || a.palette.length !== b.palette.length) return false
  return a.palette.every((dye, i) => same(dye, b.palette[i] ?? b.white)) && (['white', 'ink', 'paper', 'rule', 'strong'] as const).every((name) => same(a[name], b[name]))
}

// touchedColumns are the pieces of so many dots, from the left, in which a column is not as
// it was; touchedRows those from the top. A crossing changes only with its end or its pick.
export function touchedColumns(was: Drawn, now: Drawn, piece: number): Set<number> {
  const at = ({ table, sight, dyes }: Drawn) => (column: number): number => {
    const end = endAt(sight, column)
    return column >= sight.extent.ends ? -1 : (table.threading[end] ?? 0) * 0x10000 + (dyes.marks ? 0 : (table.warp.colours[end] ?? 0))
  }
  return touched(was.cols, now.cols, now.cell, piece, at(was), at(now))
}

export function touchedRows(was: Drawn, now: Drawn, piece: number): Set<number> {
  const at = (drawn: Drawn, halves: 'lo' | 'hi') => (row: number): number => rowKey(drawn, row, halves)
  const low = touched(was.rows, now.rows, now.cell, piece, at(was, 'lo'), at(now, 'lo'))
  return new Set([...low, ...touched(was.rows, now.rows, now.cell, piece, at(was, 'hi'), at(now, 'hi'))])
}

function rowKey({ table, sight, dyes }: Drawn, row: number, halves: 'lo' | 'hi'): number {
  if (row >= sight.extent.picks) return -1
  const pick = pickAt(sight, row)
  return (table.up[halves][pick] ?? 0) * 0x10000 + (dyes.marks ? 0 : (table.weft.colours[pick] ?? 0))
}

// touched are the pieces that hold a thread which differs. Where cells are smaller than dots
// a thread may count to the dot beside its own.
function touched(was: Axis, now: Axis, cell: number, piece: number, old: (i: number) => number, key: (i: number) => number): Set<number> {
  const out = new Set<number>()
  const axis = was.n > now.n ? was : now
  for (let i = 0; i < axis.n; i++) {
    if (old(i) === key(i)) continue
    const [first, last] = [dotAt(axis, i, cell) - 1, dotAt(axis, i + 1, cell)]
    for (let at = Math.floor(Math.max(first, 0) / piece); at <= Math.floor(last / piece); at++) out.add(at)
  }
  return out
}

