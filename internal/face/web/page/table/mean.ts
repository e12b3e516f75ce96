import { dotAt, threadsOver } from './axis'
import { partOf } from './light'
import { dyeAt, pixelOf, type Drawn, type Lines } from './look'
import { hasBit } from './sets'
import { endAt, pickAt } from './view'

// small is the size of cells, in dots, under which a dot shows the mean of its crossings.
export const small = 2

// mostKept is how many lines are kept: see Strip.
const mostKept = 512

// Mean is columns of dots of a cloth whose cells are about as large as dots, or smaller: a
// dot is the mean of the light of all crossings whose middle lies in it, as the eye takes
// them together. Lines of the grid and thicknesses are too fine to be seen.
export class Mean implements Lines {
  private readonly spans: [number, number][]
  private readonly kept = new Map<number, Float32Array>()

  constructor(
    private readonly drawn: Drawn,
    from: number,
    private readonly wide: number,
  ) {
    const { cols, cell } = drawn
    const long = dotAt(cols, cols.n, cell)
    this.spans = Array.from({ length: wide }, (_, x) => (from + x < long ? threadsOver(cols, from + x, from + x + 1, cell) : [0, 0]))
  }

  line(y: number): Uint32Array {
    const { rows, cell } = this.drawn
    const out = new Uint32Array(this.wide)
    if (y >= dotAt(rows, rows.n, cell)) return out
    const [first, last] = threadsOver(rows, y, y + 1, cell)
    const sum = new Float64Array(3 * this.wide)
    for (let row = first; row < last; row++) {
      for (const [k, light] of this.row(row).entries()) sum[k] = (sum[k] ?? 0) + light / (last - first)
    }
    for (const [x, [from, to]] of this.spans.entries()) {
      if (to > from) out[x] = pixelOf([partOf(sum[3 * x] ?? 0), partOf(sum[3 * x + 1] ?? 0), partOf(sum[3 * x + 2] ?? 0)])
    }
    return out
  }

  // row is the light of a pick, a mean for each dot.
  private row(row: number): Float32Array {
    const { table, dyes, sight } = this.drawn
    const pick = pickAt(sight, row)
    const key = (table.lift[pick] ?? 0) * 0x10000 + (dyes.marks ? 0 : (table.weft.colours[pick] ?? 0))
    const found = this.kept.get(key)
    if (found) return found
    if (this.kept.size >= mostKept) this.kept.clear()
    const made = this.lightOf(pick)
    this.kept.set(key, made)
    return made
  }

  private lightOf(pick: number): Float32Array {
    const { table, dyes, sight } = this.drawn
    const [lo, hi] = [table.up.lo[pick] ?? 0, table.up.hi[pick] ?? 0]
    const weft = dyes.marks ? dyes.paper.light : dyeAt(dyes, table.weft.colours[pick] ?? 0).light
    const out = new Float32Array(3 * this.wide)
    for (const [x, [from, to]] of this.spans.entries()) {
      for (let column = from; column < to; column++) {
        const end = endAt(sight, column)
        const up = hasBit(lo, hi, table.threading[end] ?? 0) !== sight.arrangement.back
        const light = !up ? weft : dyes.marks ? dyes.ink.light : dyeAt(dyes, table.warp.colours[end] ?? 0).light
        for (let k = 0; k < 3; k++) out[3 * x + k] = (out[3 * x + k] ?? 0) + (light[k] ?? 0) / (to - from)
      }
    }
    return out
  }
}
