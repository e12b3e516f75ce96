import { asPrinted, type Arrangement } from '../table/bands'
import { scaled } from '../table/axis'
import { tableOf, type Table, type TableSaid } from '../table/cloth'
import type { Cells, Look, Tokens } from '../table/look'
import { extentOf, viewOf, type Sight, type View } from '../table/view'
import { below, oneOf } from './seeded'

// Drafts and views for tests.

export const tokens: Tokens = { ground: '#f5f0e6', paper: '#fdfbf6', ink: '#2a2520', soft: '#655b4e', rule: '#d8cdb9', strong: '#a39780', chosen: '#25407c', found: '#9b2c24' }

export const lookOf = (cells: Cells, seeing: Look['seeing'] = 'full'): Look => ({ cells, seeing, tokens })

const hex = (random: () => number, n: number): string => {
  const bits = Array.from({ length: n }, () => below(random, 2))
  return BigInt(`0b${bits.join('')}`).toString(16)
}

// someTable is a draft by chance: treadled or a lift plan, with or without sizes.
export function someTable(random: () => number, ends: number, picks: number): Table {
  const [shafts, treadles] = [1 + below(random, oneOf(random, [4, 8, 64])), 1 + below(random, 12)]
  const treadled = random() < 0.6
  const list = (n: number, most: number): number[] => Array.from({ length: n }, () => below(random, most))
  const sizes = (n: number): number[] => list(n, 4).map((k) => k * 200_000)
  const said: TableSaid = {
    ...{ version: 1, kind: 'draft', name: 'By chance', frozen: false, shafts, treadles: treadled ? treadles : 0 },
    shed: oneOf(random, ['rising', 'sinking', 'counterbalance', 'countermarch', '']),
    threading: list(ends, shafts + 1),
    ties: treadled ? Array.from({ length: treadles }, () => hex(random, shafts)) : [],
    lowered: treadled ? Array.from({ length: treadles }, () => hex(random, shafts)) : [],
    treadling: treadled ? Array.from({ length: picks }, () => (1 << below(random, treadles)).toString(16)) : [],
    lifts: treadled ? [] : Array.from({ length: picks }, () => hex(random, shafts)),
    palette: ['#ffffff', '#25407c', '#9b2c24', '#8a6508'],
    warpColours: list(ends, 5),
    weftColours: list(picks, 5),
    ...(random() < 0.5 && { warpThick: sizes(ends), weftThick: sizes(picks), warpApart: sizes(ends), weftApart: sizes(picks) }),
  }
  return tableOf(said) as Table
}

export function sightOf(table: Table, arrangement: Partial<Arrangement> = {}, room = { width: 640, height: 560, ratio: 1 }, toScale = false, liftPlan = false): Sight {
  const extent = extentOf(table, liftPlan)
  return { arrangement: { ...asPrinted, ...arrangement }, extent, room, sized: toScale ? scaled(table.warp, extent.ends, table.weft, extent.picks) : null }
}

export function someArrangement(random: () => number): Arrangement {
  const yes = (): boolean => random() < 0.5
  return { below: yes(), left: yes(), upwards: yes(), fromRight: yes(), back: yes(), alone: random() < 0.2, bars: yes() }
}

export function someView(random: () => number, table: Table): View {
  const sight = sightOf(table, someArrangement(random), { width: 400 + below(random, 300), height: 350 + below(random, 300), ratio: oneOf(random, [1, 1.5, 2]) }, random() < 0.4)
  return viewOf(sight, oneOf(random, [2, 2.5, 3, 5, 7, 8.3, 16, 33]), below(random, 900), below(random, 900))
}
