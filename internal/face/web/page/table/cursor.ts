import { endsOf, onTop, picksOf, type Table } from './cloth'
import { type Area, type Place, type Way, ways } from './hit'
import { isTreadled } from './lifts'
import { has, numbersOf, setAt } from './sets'
import type { Part } from './splice'

// The place where keys write, and the stretch that is chosen.

export type Drawable = 'threading' | 'ties' | 'treadling' | 'lifts' | 'drawdown' | 'warp-colours' | 'weft-colours'

// partsOf are the parts of a draft that a cursor can be in, in the order that it goes through.
export const partsOf = (table: Table): Drawable[] => ['threading', ...(isTreadled(table) ? (['ties', 'treadling'] as const) : (['lifts'] as const)), 'drawdown', 'warp-colours', 'weft-colours']

const drawables: readonly string[] = ['threading', 'ties', 'treadling', 'lifts', 'drawdown', 'warp-colours', 'weft-colours'] satisfies Drawable[]

export const isDrawable = (part: string): part is Drawable => drawables.includes(part)

// limits are the first and the last of a way.
export function limits(table: Table, way: Way): [number, number] {
  switch (way) {
    case 'end':
      return [0, endsOf(table) - 1]
    case 'pick':
      return [0, picksOf(table) - 1]
    case 'shaft':
      return [1, table.shafts]
    case 'treadle':
      return [1, Math.max(table.treadles, table.ties.lo.length)]
  }
}

const within = (v: number, [least, most]: [number, number]): number => Math.max(least, Math.min(v, most))

// first is where a cursor begins in a part.
export function first(table: Table, part: Drawable, from: Place | null = null): Place {
  const out: Place & { [W in Way]?: number } = { part }
  const made: { part: Drawable } & { [W in Way]?: number } = { ...out, part }
  for (const way of ways[part]) if (way) made[way] = within(from?.[way] ?? 0, limits(table, way))
  return made
}

// moved is a cursor after a step.
export function moved(table: Table, place: Place, across: number, down: number): Place {
  if (!isDrawable(place.part)) return place
  const [x, y] = ways[place.part]
  const made: { part: Drawable } & { [W in Way]?: number } = { ...place, part: place.part }
  if (x) made[x] = within((place[x] ?? 0) + across, limits(table, x))
  if (y) made[y] = within((place[y] ?? 0) + down, limits(table, y))
  return made
}

// threadWay is what a stretch of a part is counted in.
export const threadWay = (part: Drawable): 'end' | 'pick' | 'treadle' => (part === 'threading' || part === 'warp-colours' || part === 'drawdown' ? 'end' : part === 'ties' ? 'treadle' : 'pick')

// listPart is the list that a stretch in a part is of.
export const listPart = (part: Drawable): Part => (part === 'drawdown' ? 'threading' : part)

// stretchOf is the chosen stretch of a list, counted from 0; null where none is.
export function stretchOf(area: Area | null): { part: Part; drawable: Drawable; from: number; to: number } | null {
  if (!area || !isDrawable(area.part)) return null
  const drawable = area.part
  const way = threadWay(drawable)
  const span = way === 'end' ? area.ends : way === 'pick' ? area.picks : area.treadles && ([area.treadles[0] - 1, area.treadles[1] - 1] as const)
  return span && span[1] > span[0] ? { part: listPart(drawable), drawable, from: span[0], to: span[1] } : null
}

// between is the area from one place to another.
export function between(a: Place, b: Place): Area | null {
  if (a.part !== b.part || !isDrawable(a.part)) return null
  const span = (way: Way): readonly [number, number] | undefined => {
    const [u, v] = [a[way], b[way]]
    return u === undefined || v === undefined ? undefined : [Math.min(u, v), Math.max(u, v) + 1]
  }
  const way = threadWay(a.part)
  const at = span(way)
  if (!at) return null
  return way === 'end' ? { part: a.part, ends: at } : way === 'pick' ? { part: a.part, picks: at } : { part: a.part, treadles: at }
}

// Cell is what there is to say of a place.
export type Cell = { place: Place; shaft?: number; pressed?: number[]; lifted?: number[]; set?: boolean; top?: boolean; colour?: string }

export function cellOf(table: Table, place: Place): Cell {
  const { end = -1, pick = -1, shaft = 0, treadle = 0 } = place
  const name = (i: number | undefined): string => table.names[i ?? -1] ?? table.palette[i ?? -1] ?? ''
  switch (place.part) {
    case 'threading':
      return { place, shaft: table.threading[end] ?? 0, set: table.threading[end] === shaft, colour: name(table.warp.colours[end]) }
    case 'ties':
      return { place, set: has(setAt(table.ties, treadle - 1), shaft) }
    case 'treadling':
      return { place, pressed: numbersOf(setAt(table.treadling, pick)), set: has(setAt(table.treadling, pick), treadle), colour: name(table.weft.colours[pick]) }
    case 'lifts':
      return { place, lifted: numbersOf(setAt(table.lifts, pick)), set: has(setAt(table.lifts, pick), shaft), colour: name(table.weft.colours[pick]) }
    case 'drawdown':
      return { place, shaft: table.threading[end] ?? 0, top: onTop(table, pick, end), colour: name(onTop(table, pick, end) ? table.warp.colours[end] : table.weft.colours[pick]) }
    case 'warp-colours':
      return { place, colour: name(table.warp.colours[end]) }
    case 'weft-colours':
      return { place, colour: name(table.weft.colours[pick]) }
  }
  return { place }
}
