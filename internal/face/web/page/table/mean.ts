import { dotAt, threadsOver } from './axis'
import { partOf } from './light'
import { dyeAt, type Drawn, type Lines } from './look'
import { hasBit } from './sets'
import { pickAt } from './view'

// small is the size of cells, in dots, under which a dot shows the mean of its crossings.
export const small = 2

// mostKept is how many lines are kept: see Strip.
const mostKept = 512

// Mean is columns of dots of a cloth whose cells are about as large as dots, or smaller: a
// dot is the mean of the light of all crossings whose middle lies in it, as the eye takes
// them together. Lines of the grid and thicknesses are too fine to be seen.
export class Mean implements Lines {
  private readonly from: Int32Array // the columns under each dot
  private readonly to: Int32Array
  private readonly kept = new Map<number, Float32Array>()
  private readonly sum: Float32Array // of a line, and the line: one at a time is read
  private readonly out: Uint32Array

  constructor(
    private readonly drawn: Drawn,
    from: number,
    private readonly wide: number,
  ) {
    this.from = new Int32Array(wide)
    this.to = new Int32Array(wide)
    this.sum = new Float32Array(3 * wide)
    this.out = new Uint32Array(wide)
    const { cols, cell } = drawn
    const long = dotAt(cols, cols.n, cell)
    for (let x = 0; x < wide && from + x < long; x++) [this.from[x], this.to[x]] = threadsOver(cols, from + x, from + x + 1, cell)
  }

  line(y: number): Uint32Array {
    const { rows, cell } = this.drawn
    const out = this.out.fill(0)
    if (y >= dotAt(rows, rows.n, cell)) return out
    const [first, last] = threadsOver(rows, y, y + 1, cell)
    const sum = first + 1 === last ? this.row(first) : this.sumOf(first, last)
    const share = 1 / (last - first)
    for (let x = 0; x < this.wide; x++) {
      if ((this.to[x] ?? 0) <= (this.from[x] ?? 0)) continue
      const [r, g, b] = [partOf((sum[3 * x] ?? 0) * share), partOf((sum[3 * x + 1] ?? 0) * share), partOf((sum[3 * x + 2] ?? 0) * share)]
      out[x] = 0xff000000 | (b << 16) | (g << 8) | r
    }
    return out
  }

  // sumOf is the light of several picks.
  private sumOf(first: number, last: number): Float32Array {
    const sum = this.sum.fill(0)
    for (let row = first; row < last; row++) add(sum, this.row(row))
    return sum
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

  // lightOf goes over every crossing of a pick: nothing is made for one.
  private lightOf(pick: number): Float32Array {
    const { table, dyes, sight } = this.drawn
    const [lo, hi] = [table.up.lo[pick] ?? 0, table.up.hi[pick] ?? 0]
    const { back } = sight.arrangement
    const last = sight.extent.ends - 1
    const weft = dyes.marks ? dyes.paper.light : dyeAt(dyes, table.weft.colours[pick] ?? 0).light
    const out = new Float32Array(3 * this.wide)
    for (let x = 0; x < this.wide; x++) {
      const [from, to] = [this.from[x] ?? 0, this.to[x] ?? 0]
      let [r, g, b] = [0, 0, 0]
      for (let column = from; column < to; column++) {
        const end = back ? last - column : column
        const up = hasBit(lo, hi, table.threading[end] ?? 0) !== back
        const light = !up ? weft : dyes.marks ? dyes.ink.light : dyeAt(dyes, table.warp.colours[end] ?? 0).light
        r += light[0]
        g += light[1]
        b += light[2]
      }
      out.set([r / (to - from || 1), g / (to - from || 1), b / (to - from || 1)], 3 * x)
    }
    return out
  }
}

function add(sum: Float32Array, one: Float32Array): void {
  for (let k = 0; k < sum.length; k++) sum[k] = (sum[k] ?? 0) + (one[k] ?? 0)
}
