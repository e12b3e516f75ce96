import { dotAt, even, reversed, threadAt, threadsOver, type Axis } from './axis'
import { bandsOf, type Arrangement, type Bands, type Extent, type Room } from './bands'
import type { Table } from './cloth'
import { picksOf } from './cloth'
import { isTreadled } from './lifts'

// What of a drawing is in sight. Points and distances come in CSS px, as pointers have them;
// all else is dots of the canvas, of which a CSS px has Room.ratio.

// Sight is what a view is of, and the room for it.
export type Sight = {
  readonly arrangement: Arrangement
  readonly extent: Extent
  readonly room: Room // in dots
  readonly sized: readonly [ends: Axis, picks: Axis] | null // thread thickness to scale; null: all alike
}

export type View = {
  readonly sight: Sight
  readonly cell: number // CSS px
  readonly dots: number // the same in dots
  readonly left: number // how far the cloth is moved, in dots
  readonly top: number
  readonly cols: Axis // as drawn, from the left and from the top
  readonly rows: Axis
  readonly bands: Bands
}

// Cells are so small and so large that they can be worked in, in CSS px.
export const [leastCell, mostCell] = [2, 40]

// extentOf is what there is to draw of a table; a treadled one may be drawn with its lift
// plan.
export function extentOf(table: Table, liftPlan = false): Extent {
  const lifts = liftPlan || !isTreadled(table)
  const across = lifts ? table.shafts : Math.max(table.treadles, table.ties.lo.length)
  return { ends: table.threading.length, picks: picksOf(table), shafts: table.shafts, across, lifts }
}

const within = (v: number, least: number, most: number): number => Math.min(Math.max(v, least), Math.max(most, least))

// viewOf is a view with cells of that size, moved so far, kept over the cloth.
export function viewOf(sight: Sight, cell: number, left = 0, top = 0): View {
  const { arrangement, extent, room, sized } = sight
  const dots = cell * room.ratio
  const [ends, picks] = sized ?? [even(extent.ends), even(extent.picks)]
  const [cols, rows] = [arrangement.back ? reversed(ends) : ends, arrangement.upwards ? reversed(picks) : picks]
  const cloth = { w: dotAt(cols, cols.n, dots), h: dotAt(rows, rows.n, dots) }
  const bands = bandsOf(arrangement, extent, room, dots, cloth)
  const at = (v: number, long: number, seen: number): number => within(Math.round(v), 0, Math.max(long - seen, 0))
  return { sight, cell, dots, cols, rows, bands, left: at(left, cloth.w, bands.drawdown.w), top: at(top, cloth.h, bands.drawdown.h) }
}

// beginning is the view in which a draft is opened: the first end and the first pick, as they
// are numbered, are in sight.
export function beginning(sight: Sight, cell: number): View {
  const { back, fromRight, upwards } = sight.arrangement
  return viewOf(sight, cell, back !== fromRight ? Infinity : 0, upwards ? Infinity : 0)
}

export const movedTo = (view: View, left: number, top: number): View => viewOf(view.sight, view.cell, left, top)

// panned moves the sight over the cloth by CSS px.
export const panned = (view: View, dx: number, dy: number): View => movedTo(view, view.left + dx * view.sight.room.ratio, view.top + dy * view.sight.room.ratio)

// zoomedAt makes the cells so large, or as near to it as they may be; what lies at the point
// stays there. Beside the cloth, what lies nearest to the point stays.
export function zoomedAt(view: View, cell: number, x: number, y: number): View {
  const { ratio } = view.sight.room
  const { drawdown } = view.bands
  const next = viewOf(view.sight, within(cell, leastCell, mostCell))
  const scale = next.dots / view.dots
  const moved = (point: number, at: number, long: number, off: number, now: number): number => {
    const under = within(point * ratio, at, at + long)
    return (off + under - at) * scale - (under - now)
  }
  const left = moved(x, drawdown.x, drawdown.w, view.left, next.bands.drawdown.x)
  return movedTo(next, left, moved(y, drawdown.y, drawdown.h, view.top, next.bands.drawdown.y))
}

// larger and smaller are the next sizes of cells.
export const larger = (cell: number): number => within(Math.max(Math.round(cell * 1.25), Math.floor(cell) + 1), leastCell, mostCell)
export const smaller = (cell: number): number => within(Math.min(Math.round(cell / 1.25), Math.ceil(cell) - 1), leastCell, mostCell)

// fitting gives the view in which all of the cloth is in sight, with cells no larger than
// those that can be worked in; they may be smaller.
export function fitting(sight: Sight): View {
  const shown = ({ cols, rows, dots, bands }: View): boolean => dotAt(cols, cols.n, dots) <= bands.drawdown.w && dotAt(rows, rows.n, dots) <= bands.drawdown.h
  let [low, high] = [1 / 256, mostCell]
  if (shown(viewOf(sight, high))) return viewOf(sight, high)
  for (let i = 0; i < 20; i++) {
    const middle = Math.sqrt(low * high)
    if (shown(viewOf(sight, middle))) low = middle
    else high = middle
  }
  return viewOf(sight, low)
}

// resighted is the view after the draft, its arrangement or the room has changed: what was
// in sight stays where it was, and where the cloth was turned the middle of it does.
export function resighted(view: View, sight: Sight): View {
  const next = viewOf(sight, view.cell)
  const { back, upwards } = sight.arrangement
  if (view.sight.arrangement.back !== back || view.sight.arrangement.upwards !== upwards) {
    const { c0, c1, r0, r1 } = seen(view)
    return centred(next, endAt(view.sight, (c0 + c1) >> 1), pickAt(view.sight, (r0 + r1) >> 1))
  }
  const more = (now: Axis, was: Axis): number => dotAt(now, now.n, next.dots) - dotAt(was, was.n, view.dots)
  return movedTo(next, view.left + (back ? more(next.cols, view.cols) : 0), view.top + (upwards ? more(next.rows, view.rows) : 0))
}

const turnedIf = (turned: boolean, i: number, n: number): number => (turned ? n - 1 - i : i)

// endAt is the end of a column, columnOf the column of an end; so for picks and rows.
export const endAt = ({ arrangement, extent }: Sight, column: number): number => turnedIf(arrangement.back, column, extent.ends)
export const columnOf = endAt
export const pickAt = ({ arrangement, extent }: Sight, row: number): number => turnedIf(arrangement.upwards, row, extent.picks)
export const rowOf = pickAt

// endNumber is what an end is called, endNumbered the end that is called so. Picks are
// numbered from the first.
export const endNumber = ({ arrangement, extent }: Sight, end: number): number => (arrangement.fromRight ? extent.ends - end : end + 1)
export const endNumbered = ({ arrangement, extent }: Sight, number: number): number => (arrangement.fromRight ? extent.ends - number : number - 1)

// Seen is the columns and rows in sight, also those of which only a part is.
export type Seen = { readonly c0: number; readonly c1: number; readonly r0: number; readonly r1: number }

export function seen({ cols, rows, dots, left, top, bands: { drawdown } }: View): Seen {
  const [c0, c1] = threadsIn(cols, left, drawdown.w, dots)
  const [r0, r1] = threadsIn(rows, top, drawdown.h, dots)
  return { c0, c1, r0, r1 }
}

// threadsIn are the threads of so many dots from one on. Where cells are smaller than dots
// several begin at one.
function threadsIn(axis: Axis, from: number, long: number, cell: number): [number, number] {
  if (axis.n === 0 || long <= 0) return [0, 0]
  const first = cell < 1 ? threadsOver(axis, from, from + 1, cell)[0] : threadAt(axis, from, cell)
  const last = from + long >= dotAt(axis, axis.n, cell) ? axis.n : threadAt(axis, from + long - 1, cell) + 1
  return [first, last]
}

// centred puts an end and a pick in the middle, as far as the cloth goes.
function centred(view: View, end: number, pick: number): View {
  const { cols, rows, dots, bands, sight } = view
  const middle = (axis: Axis, i: number, long: number): number => (dotAt(axis, i, dots) + dotAt(axis, i + 1, dots) - long) / 2
  return movedTo(view, middle(cols, columnOf(sight, end), bands.drawdown.w), middle(rows, rowOf(sight, pick), bands.drawdown.h))
}

// jumpedTo brings an end, a pick or both in sight: in the middle where they are not wholly
// in sight already.
export function jumpedTo(view: View, { end, pick }: { end?: number; pick?: number }): View {
  const { cols, rows, dots, bands, sight } = view
  const shown = (axis: Axis, i: number, off: number, long: number): boolean => dotAt(axis, i, dots) >= off && dotAt(axis, i + 1, dots) <= off + long
  const there = centred(view, end ?? 0, pick ?? 0)
  const left = end === undefined || shown(cols, columnOf(sight, end), view.left, bands.drawdown.w) ? view.left : there.left
  const top = pick === undefined || shown(rows, rowOf(sight, pick), view.top, bands.drawdown.h) ? view.top : there.top
  return movedTo(view, left, top)
}
