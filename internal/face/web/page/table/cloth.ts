import { picksOf, upOf, type Shed, type Up, type Worked } from './lifts'
import { emptySets, hasBit, readSets, type Sets } from './sets'

// The table of a draft: everything that is drawn of it and can be changed in it. Ends are
// counted from the left and picks from the first woven, both from 0; shafts and treadles
// from 1. A table is never changed: a change gives a new one.

// Stretch is threads from the first to before the last.
export type Stretch = readonly [from: number, to: number]

// TableSaid is the table as the server says it.
export type TableSaid = {
  version: number
  kind: 'draft' | 'warp'
  name: string
  frozen: boolean
  shafts: number
  treadles: number
  shed: Shed
  threading: number[]
  ties: string[]
  lowered?: string[]
  treadling: string[]
  lifts: string[]
  palette: string[]
  names?: string[]
  warpColours: number[]
  weftColours: number[]
  warpThick?: number[]
  weftThick?: number[]
  warpApart?: number[]
  weftApart?: number[]
  fill?: { threading: Stretch; picks: Stretch }
  loom?: { shafts: number; treadles: number }
}

// Laid is how the threads of one kind lie: a colour each, as its place in the palette, and
// where they are said how thick each is and how far apart it stands, in nanometres.
export type Laid = { readonly colours: Uint16Array; readonly thick: Float64Array | null; readonly apart: Float64Array | null }

export type Table = Worked &
  Up & {
    readonly version: number
    readonly kind: 'draft' | 'warp'
    readonly name: string
    readonly frozen: boolean
    readonly treadles: number
    readonly threading: Uint8Array // the shaft of each end; 0: in no heddle
    readonly palette: readonly string[]
    readonly names: readonly string[]
    readonly warp: Laid
    readonly weft: Laid
    readonly fill: { readonly threading: Stretch; readonly picks: Stretch } | null
    readonly loom: { readonly shafts: number; readonly treadles: number } | null
  }

// tableOf makes a table of what the server said; null where that is not as agreed.
export function tableOf(said: TableSaid): Table | null {
  const [ties, treadling, lifts] = [readSets(said.ties), readSets(said.treadling), readSets(said.lifts)]
  const lowered = readSets(said.ties.map((_, i) => said.lowered?.[i] ?? '0'))
  const warp = laidOf(said.threading.length, said.warpColours, said.warpThick, said.warpApart)
  const weft = laidOf(said.treadling.length || said.lifts.length, said.weftColours, said.weftThick, said.weftApart)
  if (!ties || !treadling || !lifts || !lowered || !warp || !weft || !said.threading.every(isShaft)) return null
  const { version, kind, name, frozen, shafts, treadles, shed } = said
  return withLifts({
    ...{ version, kind, name, frozen, shafts, treadles, shed, ties, lowered, treadling, lifts, warp, weft },
    threading: Uint8Array.from(said.threading),
    palette: said.palette,
    names: said.names ?? [],
    fill: said.fill ?? null,
    loom: said.loom ?? null,
  })
}

const isShaft = (n: number): boolean => Number.isInteger(n) && n >= 0 && n <= 0xff

// laidOf is null where a list is of another length than the threads.
function laidOf(n: number, colours: number[], thick: number[] | undefined, apart: number[] | undefined): Laid | null {
  if (colours.length !== n || (thick ?? colours).length !== n || (apart ?? colours).length !== n) return null
  return { colours: Uint16Array.from(colours), thick: thick ? Float64Array.from(thick) : null, apart: apart ? Float64Array.from(apart) : null }
}

// withLifts works out which shafts are up: it is done anew whenever a part changes.
export const withLifts = (parts: Omit<Table, keyof Up>): Table => ({ ...parts, ...upOf(parts) })

export const endsOf = (table: Table): number => table.threading.length

export { picksOf }

// onTop reports whether the end is on top at the pick: whether its shaft is up. An end in no
// heddle is never on top, and neither is one beyond the draft.
export const onTop = (table: Table, pick: number, end: number): boolean => hasBit(table.up.lo[pick] ?? 0, table.up.hi[pick] ?? 0, table.threading[end] ?? 0)

// ties of a table: what a treadle raises and what it lowers, as its shed has it.
export function tiesOf(table: Table): { raised: Sets; lowered: Sets } {
  const none = emptySets(table.ties.lo.length)
  switch (table.shed) {
    case 'sinking':
    case 'counterbalance':
      return { raised: none, lowered: table.ties }
    case 'countermarch':
      return { raised: table.ties, lowered: table.lowered }
  }
  return { raised: table.ties, lowered: none }
}

// turns are the places where a list changes: both threads at each, so that a run shows where
// it begins and ends.
export function turns(list: ArrayLike<number>): number[] {
  const out: number[] = []
  for (let i = 1; i < list.length; i++) {
    if (list[i] === list[i - 1]) continue
    if (out.at(-1) !== i - 1) out.push(i - 1)
    out.push(i)
  }
  return out
}
