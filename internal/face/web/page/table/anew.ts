import { dotAt, type Axis } from './axis'
import { meets, type Rect } from './bands'
import type { Stretch } from './cloth'
import type { Drawn } from './look'
import { rulers, type Ruler } from './numbers'
import { differing, joined } from './touched'
import type { View } from './view'

// What of a picture is to be painted anew when the draft has changed or been moved: the rest of
// the canvas stays as it is.

// Shown is a drawing as it is seen.
export type Shown = { readonly drawn: Drawn; readonly view: View }

export type Anew = {
  readonly threading: Rect | null // what of a part; null: nothing
  readonly beside: Rect | null // treadling or lift plan
  readonly ties: boolean
  readonly ends: boolean // the colours of the ends
  readonly picks: boolean
  readonly rulers: readonly Ruler[]
  readonly cloth: boolean // all of the cloth; what of it has changed is known to its tiles
}

// whole is a picture that nothing is known of.
export const whole = ({ bands, sight }: View): Anew => ({
  threading: bands.threading ?? null,
  beside: bands[sight.extent.lifts ? 'lifts' : 'treadling'] ?? null,
  ...{ ties: true, ends: true, picks: true, rulers, cloth: true },
})

// sameFrame reports whether two drawings have their parts in the same places.
export const sameFrame = (a: Shown, b: Shown): boolean => a.view.sight === b.view.sight && a.view.cell === b.view.cell

// anew is what differs between two of the same frame and the same colours.
export function anew(was: Shown, now: Shown): Anew {
  const { view } = now
  const [a, b] = [was.drawn.table, now.drawn.table]
  const [across, down] = [was.view.left !== view.left, was.view.top !== view.top]
  const { threading, beside } = whole(view)
  const ends = across || a.warp.colours !== b.warp.colours
  const picks = down || a.weft.colours !== b.weft.colours
  return {
    threading: across ? threading : threading && columnsOf(view, threading, differing(a.threading, b.threading)),
    beside: down ? beside : beside && rowsOf(view, beside, pressed(was, now)),
    ties: a.ties !== b.ties || a.lowered !== b.lowered || a.shed !== b.shed,
    ...{ ends, picks, rulers: rulers.filter((ruler) => (ruler === 'ends' && ends) || (ruler === 'picks' && picks)) },
    cloth: across || down,
  }
}

// pressed are the picks that differ in what stands beside the cloth.
function pressed({ drawn: was }: Shown, { drawn: now, view }: Shown): Stretch | null {
  const [a, b] = view.sight.extent.lifts ? [was.table.up, now.table.up] : [was.table.treadling, now.table.treadling]
  if (a === b) return null
  const [low, high] = [differing(a.lo, b.lo), differing(a.hi, b.hi)]
  return low && high ? joined(low, high) : (low ?? high)
}

// columnsOf is what of a part lies over a stretch of ends, rowsOf what lies beside one of picks.
function columnsOf(view: View, part: Rect, ends: Stretch | null): Rect | null {
  if (!ends) return null
  const [from, to] = dotsOf(view.cols, turned(ends, view.sight.arrangement.back, view.cols.n), view.dots)
  return meets({ ...part, x: part.x - view.left + from, w: to - from }, part)
}

function rowsOf(view: View, part: Rect, picks: Stretch | null): Rect | null {
  if (!picks) return null
  const [from, to] = dotsOf(view.rows, turned(picks, view.sight.arrangement.upwards, view.rows.n), view.dots)
  return meets({ ...part, y: part.y - view.top + from, h: to - from }, part)
}

const turned = ([from, to]: Stretch, back: boolean, n: number): Stretch => (back ? [n - to, n - from] : [from, to])

// dotsOf are the dots of threads, of which each has one at the least.
const dotsOf = (axis: Axis, [from, to]: Stretch, cell: number): Stretch => [dotAt(axis, from, cell), Math.max(dotAt(axis, to, cell), dotAt(axis, to - 1, cell) + 1)]
