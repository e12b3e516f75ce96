import { complement, emptySets, hasBit, less, noNumbers, putSet, setAt, union, type NumberSet, type Sets } from './sets'

// Shed is how the loom opens the shed; unsaid reads as rising.
export type Shed = 'rising' | 'sinking' | 'counterbalance' | 'countermarch' | 'table' | ''

// Worked is what says which shafts are up at each pick: by treadles, or by lifts alone.
export type Worked = {
  readonly shafts: number
  readonly shed: Shed
  readonly ties: Sets // of each treadle, the first first
  readonly lowered: Sets // what each lowers; on a countermarch alone
  readonly treadling: Sets // the treadles of each pick; empty in a lift plan
  readonly lifts: Sets // the shafts up at each pick; empty where it is treadled
}

export const isTreadled = (of: Worked): boolean => of.treadling.lo.length > 0

export const picksOf = (of: Worked): number => (isTreadled(of) ? of.treadling.lo.length : of.lifts.lo.length)

// opened gives the shafts that are up when those treadles are pressed. On a rising shed the
// raised shafts unite; on a sinking shed and a counterbalance loom the lowered ones do, and
// all others are up; on a countermarch a shaft that is drawn both ways, or neither, is not up.
export function opened(of: Worked, lo: number, hi: number): NumberSet {
  let [tied, lowered] = [noNumbers, noNumbers]
  for (let i = 0; i < of.ties.lo.length; i++) {
    if (!hasBit(lo, hi, i + 1)) continue
    tied = union(tied, setAt(of.ties, i))
    lowered = union(lowered, setAt(of.lowered, i))
  }
  switch (of.shed) {
    case 'sinking':
    case 'counterbalance':
      return complement(tied, of.shafts)
    case 'countermarch':
      return less(tied, lowered)
  }
  return tied
}

// Up is which shafts are up at each pick, and which of the lifts that differ each pick has,
// numbered from 0 as they first come: picks of one lift look alike but for their colours.
export type Up = { readonly up: Sets; readonly lift: Int32Array; readonly differ: number }

export function upOf(of: Worked): Up {
  const given = isTreadled(of) ? of.treadling : of.lifts
  const picks = given.lo.length
  const up = emptySets(picks)
  const lift = new Int32Array(picks)
  const known = new Known()
  const pressed = new Known()
  const openings: NumberSet[] = []
  for (let i = 0; i < picks; i++) {
    const [lo, hi] = [given.lo[i] ?? 0, given.hi[i] ?? 0]
    putSet(up, i, isTreadled(of) ? (openings[pressed.numberOf(lo, hi)] ??= opened(of, lo, hi)) : { lo, hi })
    lift[i] = known.numberOf(up.lo[i] ?? 0, up.hi[i] ?? 0)
  }
  return { up, lift, differ: known.count }
}

// Known numbers sets as they first come.
class Known {
  count = 0
  private readonly by = new Map<number, Map<number, number>>()

  numberOf(lo: number, hi: number): number {
    let half = this.by.get(hi)
    if (!half) this.by.set(hi, (half = new Map()))
    let number = half.get(lo)
    if (number === undefined) half.set(lo, (number = this.count++))
    return number
  }
}
