import { endsOf, picksOf, type Table, withLifts } from './cloth'
import type { Sets } from './sets'

// again is a draft so often, side by side and one behind the other, that it has so many threads
// each way: what the cloth looks like that comes of it.
export function again(table: Table, least: number): Table {
  const [across, along] = [timesTo(endsOf(table), least), timesTo(picksOf(table), least)]
  const sets = ({ lo, hi }: Sets): Sets => ({ lo: often(lo, along, Uint32Array), hi: often(hi, along, Uint32Array) })
  return withLifts({
    ...table,
    threading: often(table.threading, across, Uint8Array),
    treadling: sets(table.treadling),
    lifts: sets(table.lifts),
    warp: { colours: often(table.warp.colours, across, Uint16Array), thick: null, apart: null },
    weft: { colours: often(table.weft.colours, along, Uint16Array), thick: null, apart: null },
    fill: null,
  })
}

const timesTo = (n: number, least: number): number => Math.max(Math.ceil(least / Math.max(n, 1)), 1)

// often is a list so many times over.
function often<L extends Uint8Array | Uint16Array | Uint32Array>(list: L, times: number, make: new (n: number) => L): L {
  const out = new make(list.length * times)
  for (let i = 0; i < times; i++) out.set(list, i * list.length)
  return out
}
