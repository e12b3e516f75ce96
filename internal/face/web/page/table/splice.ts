import { picksOf, withLifts, type Laid, type Table } from './cloth'
import { isTreadled, type Shed, type Worked } from './lifts'
import { noNumbers, parseSet, putSet, type Sets } from './sets'

// Part is a part of the table that can be changed.
export type Part = 'threading' | 'ties' | 'lowered' | 'treadling' | 'lifts' | 'warp-colours' | 'weft-colours' | 'palette'

// Splice puts values in the place of so many from one on.
export type Splice<V> = { at: number; remove: number; put: V[] }

type Value = { threading: number; ties: string; lowered: string; treadling: string; lifts: string; 'warp-colours': number; 'weft-colours': number; palette: string }

export type Splices = { [P in Part]?: Splice<Value[P]> }

// Changed is what a change made of a table, as the server answers; what it does not say stays.
export type Changed = { version?: number; splices: Splices; shafts?: number; treadles?: number; shed?: Shed }

// spliced gives the table after a change. Colours and sizes of threads go with their
// threads: a splice of colours is of what stood before, and where none is said the colours
// follow the splice of the ends, or of the picks.
export function spliced(table: Table, { splices, version, shafts, treadles, shed }: Changed): Table {
  const threading = splices.threading ? changedBytes(table.threading, splices.threading) : table.threading
  const ties = changedSets(table.ties, splices.ties)
  const worked = {
    shafts: shafts ?? table.shafts,
    shed: shed ?? table.shed,
    ties,
    lowered: asMany(changedSets(table.lowered, splices.lowered), ties.lo.length),
    treadling: changedSets(table.treadling, splices.treadling),
    lifts: changedSets(table.lifts, splices.lifts),
  }
  const picks = isTreadled(worked) ? splices.treadling : splices.lifts
  const now = {
    ...table,
    ...worked,
    version: version ?? table.version,
    treadles: treadles ?? table.treadles,
    threading,
    palette: splices.palette ? changedList(table.palette, splices.palette) : table.palette,
    warp: followed(table.warp, threading.length, splices.threading, splices['warp-colours']),
    weft: followed(table.weft, picksOf(worked), picks, splices['weft-colours']),
  }
  return liftsAlike(table, worked) ? now : withLifts(now)
}

// liftsAlike reports whether nothing has changed that says which shafts are up at a pick.
function liftsAlike(a: Worked, b: Worked): boolean {
  return a.shafts === b.shafts && a.shed === b.shed && (['ties', 'lowered', 'treadling', 'lifts'] as const).every((part) => a[part].lo === b[part].lo && a[part].hi === b[part].hi)
}

// changedList is a list with a splice made in it.
function changedList<V>(list: readonly V[], { at, remove, put }: Splice<V>): V[] {
  const out = list.slice()
  out.splice(at, remove, ...put)
  return out
}

// moved is a row of numbers with a splice's old places gone and its new ones still empty.
function moved<A extends Uint8Array | Uint16Array | Uint32Array | Float64Array>(list: A, at: number, remove: number, put: number): A {
  const from = Math.min(at, list.length)
  const to = Math.min(from + remove, list.length)
  const out = new (list.constructor as new (n: number) => A)(list.length - (to - from) + put)
  out.set(list.subarray(0, from))
  out.set(list.subarray(to), from + put)
  return out
}

function changedBytes<A extends Uint8Array | Uint16Array>(list: A, { at, remove, put }: Splice<number>): A {
  const out = moved(list, at, remove, put.length)
  out.set(put, Math.min(at, list.length))
  return out
}

function changedSets(sets: Sets, splice: Splice<string> | undefined): Sets {
  if (!splice) return sets
  const { at, remove, put } = splice
  const out = { lo: moved(sets.lo, at, remove, put.length), hi: moved(sets.hi, at, remove, put.length) }
  for (const [i, text] of put.entries()) putSet(out, Math.min(at, sets.lo.length) + i, parseSet(text) ?? noNumbers)
  return out
}

// asMany are sets for as many treadles as there are: one that is new lowers nothing.
function asMany(sets: Sets, n: number): Sets {
  return sets.lo.length === n ? sets : { lo: fitted(sets.lo, n), hi: fitted(sets.hi, n) }
}

type Threads = Splice<number> | Splice<string> | undefined

// followed are the colours and sizes of n threads after a splice of the threads. Threads
// that stay in place keep theirs; a thread that is new has the colour of the one before it
// and no size of its own.
function followed(laid: Laid, n: number, threads: Threads, own: Splice<number> | undefined): Laid {
  const size = (list: Float64Array | null): Float64Array | null => (list && list.length !== n ? fitted(replaced(list, threads, 0), n) : list)
  return { colours: coloured(laid.colours, n, threads, own), thick: size(laid.thick), apart: size(laid.apart) }
}

function coloured(list: Uint16Array, n: number, threads: Threads, own: Splice<number> | undefined): Uint16Array {
  const direct = own ? changedBytes(list, own) : list
  if (direct.length === n) return direct
  const before = list[Math.max((threads?.at ?? 0) + Math.min(threads?.remove ?? 0, threads?.put.length ?? 0) - 1, 0)] ?? 0
  const after = replaced(list, threads, before)
  return fitted(own ? changedBytes(after, own) : after, n)
}

// replaced makes or takes away as many places as the splice does, behind those that stay.
function replaced<A extends Uint16Array | Float64Array>(list: A, threads: Threads, value: number): A {
  if (!threads) return list
  const stay = Math.min(threads.remove, threads.put.length)
  const more = threads.put.length - stay
  const out = moved(list, threads.at + stay, threads.remove - stay, more)
  out.fill(value, threads.at + stay, threads.at + stay + more)
  return out
}

function fitted<A extends Uint16Array | Uint32Array | Float64Array>(list: A, n: number): A {
  return list.length === n ? list : moved(list, Math.min(n, list.length), Math.max(list.length - n, 0), Math.max(n - list.length, 0))
}
