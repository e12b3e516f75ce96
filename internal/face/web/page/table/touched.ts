import { dotAt, type Axis } from './axis'
import type { Stretch } from './cloth'
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

// Pieces are pieces of a cloth of so many dots, by their number from the left or the top, with
// the dots of each, from the first to before the last, in which something is not as it was.
export type Pieces = Map<number, Stretch>

// touchedColumns are those in which a column has changed, touchedRows those with a row. A
// crossing changes only with its end or its pick.
export function touchedColumns(was: Drawn, now: Drawn, piece: number): Pieces {
  if (was.table.threading === now.table.threading && was.table.warp.colours === now.table.warp.colours && was.cols.n === now.cols.n) return new Map()
  const at = ({ table, sight, dyes }: Drawn) => (column: number): number => {
    const end = endAt(sight, column)
    return column >= sight.extent.ends ? -1 : (table.threading[end] ?? 0) * 0x10000 + (dyes.marks ? 0 : (table.warp.colours[end] ?? 0))
  }
  const [old, key] = [at(was), at(now)]
  return touched(was.cols, now.cols, now.cell, piece, (i) => old(i) !== key(i))
}

export function touchedRows(was: Drawn, now: Drawn, piece: number): Pieces {
  if (was.table.up === now.table.up && was.table.weft.colours === now.table.weft.colours && was.rows.n === now.rows.n) return new Map()
  const differs = (row: number): boolean => rowKey(was, row, 'lo') !== rowKey(now, row, 'lo') || rowKey(was, row, 'hi') !== rowKey(now, row, 'hi')
  return touched(was.rows, now.rows, now.cell, piece, differs)
}

function rowKey({ table, sight, dyes }: Drawn, row: number, halves: 'lo' | 'hi'): number {
  if (row >= sight.extent.picks) return -1
  const pick = pickAt(sight, row)
  return (table.up[halves][pick] ?? 0) * 0x10000 + (dyes.marks ? 0 : (table.weft.colours[pick] ?? 0))
}

// touched are the pieces that hold a thread which differs. Where cells are smaller than dots
// a thread may count to the dot beside its own.
function touched(was: Axis, now: Axis, cell: number, piece: number, differs: (i: number) => boolean): Pieces {
  const out: Pieces = new Map()
  const axis = was.n > now.n ? was : now
  for (let i = 0; i < axis.n; i++) {
    if (!differs(i)) continue
    const [first, last] = [Math.max(dotAt(axis, i, cell) - 1, 0), dotAt(axis, i + 1, cell) + 1]
    for (let at = Math.floor(first / piece); at * piece < last; at++) {
      const own: Stretch = [Math.max(first - at * piece, 0), Math.min(last - at * piece, piece)]
      out.set(at, joined(out.get(at) ?? null, own))
    }
  }
  return out
}

// joined is the smallest stretch that holds both.
export const joined = (a: Stretch | null, b: Stretch): Stretch => (a ? [Math.min(a[0], b[0]), Math.max(a[1], b[1])] : b)

// differing is from the first place to behind the last at which two lists differ; null where
// they do not.
export function differing(a: ArrayLike<number>, b: ArrayLike<number>): Stretch | null {
  if (a === b) return null
  let [from, to] = [0, Math.max(a.length, b.length)]
  while (from < to && a[from] === b[from]) from++
  while (to > from && a[to - 1] === b[to - 1]) to--
  return from < to ? [from, to] : null
}
