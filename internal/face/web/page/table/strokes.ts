import type { Region } from './bands'
import { onTop, type Table } from './cloth'
import type { Place } from './hit'
import { has, noNumbers, same, setAt, setOf, setText, without, withNumber, type NumberSet } from './sets'
import type { Part, Splices } from './splice'

// Strokes of a pointer over a part, and the acts that come of them. Between two places that
// a pointer tells of, every cell on the way is touched, however fast it went.

// Act is what is asked of the server: see docs/api.md.
export type Act =
  | { do: 'put'; part: Part; at: number; remove: number; put: (number | string)[] }
  | { do: 'cells'; cells: [pick: number, end: number][]; up: boolean }

// Way is how threading and treadling are drawn: a line gives each thread one shaft or one
// treadle; toggled cells are each set to the opposite of the first, beside what is there.
export type Way = 'line' | 'toggle'

// Stroke is a stroke as far as it came: its places in order, none left out between two.
export type Stroke = { readonly part: Region; readonly way: Way; readonly colour: number; readonly places: readonly Place[] }

// begun starts a stroke at a place. Lifts, ties and crossings are always toggled; colours are
// set to the colour that is held, as its place in the palette.
export const begun = (place: Place, way: Way, colour = 0): Stroke => ({ part: place.part, way: place.part === 'threading' || place.part === 'treadling' ? way : 'toggle', colour, places: [place] })

// drawnTo goes on to a place of the same part; one of another part changes nothing, so a
// pointer that leaves the part is to be brought back by nearest.
export function drawnTo(stroke: Stroke, to: Place): Stroke {
  const from = stroke.places.at(-1)
  if (!from || to.part !== stroke.part) return stroke
  const between = stroke.way === 'line' ? slope(from, to) : cellsBetween(from, to)
  return between.length === 0 ? stroke : { ...stroke, places: [...stroke.places, ...between] }
}

type Key = 'end' | 'pick' | 'shaft' | 'treadle'
type Keys = readonly [thread: Key | null, other: Key | null]

// keysOf are the two ways of a part: along its threads first.
const keysOf = (part: Region): Keys => keys[part] ?? [null, null]

const keys: { readonly [R in Region]?: Keys } = {
  threading: ['end', 'shaft'],
  treadling: ['pick', 'treadle'],
  lifts: ['pick', 'shaft'],
  ties: ['treadle', 'shaft'],
  drawdown: ['pick', 'end'],
  'warp-colours': ['end', null],
  'weft-colours': ['pick', null],
}

const pointOf = (place: Place): [number, number] => {
  const [a, b] = keysOf(place.part)
  return [(a && place[a]) ?? 0, (b && place[b]) ?? 0]
}

const placeOf = (part: Region, a: number, b: number): Place => {
  const [first, second] = keysOf(part)
  return { part, ...(first && { [first]: a }), ...(second && { [second]: b }) }
}

// cellsBetween are the cells from one to another, without the first: J. E. Bresenham,
// "Algorithm for computer control of a digital plotter", IBM Systems Journal 4 (1965) 25-30.
export function cellsBetween(from: Place, to: Place): Place[] {
  let [a, b] = pointOf(from)
  const [a1, b1] = pointOf(to)
  const [da, db] = [Math.abs(a1 - a), -Math.abs(b1 - b)]
  const [sa, sb] = [Math.sign(a1 - a), Math.sign(b1 - b)]
  const out: Place[] = []
  for (let off = da + db; a !== a1 || b !== b1; ) {
    const twice = 2 * off
    if (twice >= db) [off, a] = [off + db, a + sa]
    if (twice <= da) [off, b] = [off + da, b + sb]
    out.push(placeOf(from.part, a, b))
  }
  return out
}

// slope is a line that gives each thread one place: the nearest to it.
export function slope(from: Place, to: Place): Place[] {
  const [[a, b], [a1, b1]] = [pointOf(from), pointOf(to)]
  const steps = Math.abs(a1 - a)
  if (steps === 0) return b === b1 ? [] : [to]
  return Array.from({ length: steps }, (_, k) => placeOf(from.part, a + Math.sign(a1 - a) * (k + 1), Math.round(b + ((b1 - b) * (k + 1)) / steps)))
}

// actsOf are the acts of a stroke: one for each part that it changes, none where it changes
// nothing.
export function actsOf(table: Table, stroke: Stroke, awaited: Crossings = []): Act[] {
  switch (stroke.part) {
    case 'threading':
      return threaded(table, stroke)
    case 'treadling':
    case 'lifts':
      return putSets(stroke.part, changedSets(table, stroke, stroke.part))
    case 'ties':
      return tied(table, stroke)
    case 'drawdown':
      return crossed(table, stroke, awaited)
    case 'warp-colours':
    case 'weft-colours':
      return coloured(table, stroke, stroke.part)
  }
  return []
}

// alone says whether a stroke is one cell: it then takes away what is there. A line from a
// cell that is set goes on from it.
function alone({ part, places }: Stroke): boolean {
  const [a, b] = keysOf(part)
  const first = places[0]
  return places.every((place) => (!a || place[a] === first?.[a]) && (!b || place[b] === first?.[b]))
}

// threaded: an end is on one shaft, so that the last place of each counts. Where the first
// cell is set, toggling takes ends out of their heddles.
function threaded(table: Table, stroke: Stroke): Act[] {
  const first = stroke.places[0]
  const off = !!first && table.threading[first.end ?? -1] === first.shaft && (stroke.way === 'toggle' || alone(stroke))
  const now = new Map<number, number>()
  for (const { end = -1, shaft = 0 } of stroke.places) {
    const was = now.get(end) ?? table.threading[end]
    if (was !== undefined) now.set(end, off ? (was === shaft ? 0 : was) : shaft)
  }
  return putOne('threading', now, (end) => table.threading[end] ?? 0)
}

// changedSets are the sets of the threads that a stroke touches.
function changedSets(table: Table, stroke: Stroke, part: 'treadling' | 'lifts'): SetsNow {
  const other = part === 'lifts' ? 'shaft' : 'treadle'
  const first = stroke.places[0]
  const set = !!first && has(setAt(table[part], first.pick ?? -1), first[other] ?? 0)
  const toggle = stroke.way === 'toggle'
  const off = set && (toggle || alone(stroke))
  const now = new Map<number, NumberSet>()
  for (const place of stroke.places) {
    const [pick, n] = [place.pick ?? -1, place[other] ?? 0]
    if (pick < 0 || pick >= table[part].lo.length) continue
    const was = now.get(pick) ?? setAt(table[part], pick)
    now.set(pick, off ? without(was, n) : toggle ? withNumber(was, n) : setOf(n))
  }
  return { now, was: (pick) => setAt(table[part], pick) }
}

type SetsNow = { now: Map<number, NumberSet>; was: (i: number) => NumberSet }

// Tying is how a shaft is tied to a treadle.
type Tying = 'raised' | 'lowered' | 'free'

// tied sets the shafts of a stroke as the first becomes: tied or not; on a countermarch from
// free to raised, to lowered, to free.
function tied(table: Table, stroke: Stroke): Act[] {
  const both = table.shed === 'countermarch'
  const first = stroke.places[0]
  const to = first ? after(tyingOf(table, first, both), both) : 'free'
  const [ties, lowered] = [new Map<number, NumberSet>(), new Map<number, NumberSet>()]
  for (const { treadle = 0, shaft = 0 } of stroke.places) {
    const i = treadle - 1
    if (i < 0 || i >= table.ties.lo.length) continue
    const put = (now: Map<number, NumberSet>, was: NumberSet, yes: boolean): unknown => now.set(i, (yes ? withNumber : without)(now.get(i) ?? was, shaft))
    put(ties, setAt(table.ties, i), to === 'raised')
    if (both) put(lowered, setAt(table.lowered, i), to === 'lowered')
  }
  const was = { ties: (i: number) => setAt(table.ties, i), lowered: (i: number) => setAt(table.lowered, i) }
  return [...putSets('ties', { now: ties, was: was.ties }), ...putSets('lowered', { now: lowered, was: was.lowered })]
}

function tyingOf(table: Table, { treadle = 0, shaft = 0 }: Place, both: boolean): Tying {
  if (has(setAt(table.ties, treadle - 1), shaft)) return 'raised'
  return both && has(setAt(table.lowered, treadle - 1), shaft) ? 'lowered' : 'free'
}

const after = (tying: Tying, both: boolean): Tying => (tying === 'free' ? 'raised' : both && tying === 'raised' ? 'lowered' : 'free')

// Crossings are crossings that become what they are not: with the end on top, or below.
export type Crossings = readonly { readonly cells: readonly (readonly [pick: number, end: number])[]; readonly up: boolean }[]

// crossingsOf are those of acts, in their order: of one that is in several the last counts.
export const crossingsOf = (acts: readonly { do: string; [key: string]: unknown }[]): Crossings => (acts as readonly Act[]).flatMap((act) => (act.do === 'cells' ? [{ cells: act.cells, up: act.up }] : []))

// crossed asks for every crossing of a stroke what the first becomes; which threading and
// lifts give it, the server finds. Of a crossing that is awaited what it becomes counts.
function crossed(table: Table, { places }: Stroke, awaited: Crossings): Act[] {
  const coming = new Map<number, boolean>()
  const keyOf = (pick: number, end: number): number => pick * table.threading.length + end
  for (const { cells, up } of awaited) for (const [pick, end] of cells) coming.set(keyOf(pick, end), up)
  const isUp = (pick: number, end: number): boolean => coming.get(keyOf(pick, end)) ?? onTop(table, pick, end)
  const { pick: row = 0, end: column = 0 } = places[0] ?? {}
  const up = !isUp(row, column)
  const cells = new Map<number, [number, number]>()
  for (const { pick = 0, end = 0 } of places) if (isUp(pick, end) !== up) cells.set(keyOf(pick, end), [pick, end])
  return cells.size === 0 ? [] : [{ do: 'cells', cells: [...cells.values()], up }]
}

function coloured(table: Table, { places, colour }: Stroke, part: 'warp-colours' | 'weft-colours'): Act[] {
  const list = part === 'warp-colours' ? table.warp.colours : table.weft.colours
  const now = new Map<number, number>()
  for (const place of places) {
    const i = (part === 'warp-colours' ? place.end : place.pick) ?? -1
    if (i >= 0 && i < list.length) now.set(i, colour)
  }
  return putOne(part, now, (i) => list[i] ?? 0)
}

// putOne is one splice from the first to the last that differ; those between stay as they are.
function putOne(part: Part, now: Map<number, number>, was: (i: number) => number): Act[] {
  return putRange(part, [...now.keys()].filter((i) => now.get(i) !== was(i)), (i) => now.get(i) ?? was(i))
}

function putSets(part: Part, { now, was }: SetsNow): Act[] {
  const differ = [...now].filter(([i, set]) => !same(set, was(i))).map(([i]) => i)
  return putRange(part, differ, (i) => setText(now.get(i) ?? was(i) ?? noNumbers))
}

function putRange(part: Part, differ: number[], value: (i: number) => number | string): Act[] {
  if (differ.length === 0) return []
  const at = differ.reduce((a, b) => Math.min(a, b))
  const remove = differ.reduce((a, b) => Math.max(a, b)) - at + 1
  return [{ do: 'put', part, at, remove, put: Array.from({ length: remove }, (_, k) => value(at + k)) }]
}

// splicesOf are the changes of acts that the page can make by itself, to show them before the
// server has answered; those of crossings only the server knows.
export function splicesOf(acts: readonly Act[]): Splices {
  const out: { [part: string]: unknown } = {}
  for (const act of acts) if (act.do === 'put') out[act.part] = { at: act.at, remove: act.remove, put: act.put }
  return out as Splices
}
