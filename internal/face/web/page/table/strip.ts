import { dyeAt, type Drawn, type Lines } from './look'
import { isFine, isHeavy, isMark, isThread, ruledOf, type Ruled } from './ruled'
import { hasBit } from './sets'
import { endAt, endNumber, pickAt } from './view'

// mostKept is how many lines a strip keeps: a cloth whose lifts all differ would fill the
// memory with lines that are used once.
const mostKept = 512

// Strip is columns of dots of a cloth. Picks of one lift and one colour look alike, so that a
// strip is few lines, worked out once and copied.
export class Strip implements Lines {
  private readonly across: Ruled
  private readonly kept = new Map<number, Uint32Array>()
  private down: Ruled | null = null
  private top = 0

  constructor(
    private readonly drawn: Drawn,
    from: number,
    private readonly wide: number,
  ) {
    const { cols, cell, sight } = drawn
    this.across = ruledOf(cols, cell, from, wide, (column) => endNumber(sight, endAt(sight, column)), hasGrid(drawn))
  }

  line(y: number): Uint32Array {
    const down = this.downAt(y)
    const row = down.thread[y - this.top] ?? -1
    const kind = down.kind[y - this.top] ?? 0
    const key = row < 0 ? -1 : this.keyOf(row, kind)
    const found = this.kept.get(key)
    if (found) return found
    if (this.kept.size >= mostKept) this.kept.clear()
    const made = row < 0 ? new Uint32Array(this.wide) : kind & (isFine | isHeavy) ? this.ruling(kind) : this.crossings(row, kind)
    this.kept.set(key, made)
    return made
  }

  // downAt rules the lines of a stretch at a time.
  private downAt(y: number): Ruled {
    if (this.down && y >= this.top && y < this.top + this.down.thread.length) return this.down
    const { rows, cell, sight } = this.drawn
    this.top = y
    return (this.down = ruledOf(rows, cell, y, 256, (row) => pickAt(sight, row) + 1, hasGrid(this.drawn)))
  }

  // keyOf tells apart the lines that differ.
  private keyOf(row: number, kind: number): number {
    if (kind & (isFine | isHeavy)) return kind & isHeavy ? -3 : -2
    const { table, dyes, sight } = this.drawn
    const pick = pickAt(sight, row)
    const lift = table.lift[pick] ?? 0
    if (dyes.marks) return lift
    return ((lift << 2) | (kind & (isThread | isMark))) * 0x10000 + (table.weft.colours[pick] ?? 0)
  }

  // ruling is a line of the grid.
  private ruling(kind: number): Uint32Array {
    const { rule, strong } = this.drawn.dyes
    return Uint32Array.from(this.across.thread, (column, x) => (column < 0 ? 0 : ((this.across.kind[x] ?? 0) | kind) & isHeavy ? strong.pixel : rule.pixel))
  }

  private crossings(row: number, kind: number): Uint32Array {
    const { table, dyes, sight } = this.drawn
    const pick = pickAt(sight, row)
    const [lo, hi] = [table.up.lo[pick] ?? 0, table.up.hi[pick] ?? 0]
    const paint = dyes.marks ? this.marked() : this.coloured(dyeAt(dyes, table.weft.colours[pick] ?? 0).pixel, kind)
    const out = new Uint32Array(this.wide)
    let [last, up, end] = [-1, false, 0]
    for (let x = 0; x < this.wide; x++) {
      const column = this.across.thread[x] ?? -1
      if (column < 0) continue
      const at = this.across.kind[x] ?? 0
      if (column !== last) {
        ;[last, end] = [column, endAt(sight, column)]
        up = hasBit(lo, hi, table.threading[end] ?? 0) !== sight.arrangement.back
      }
      out[x] = at & isHeavy ? dyes.strong.pixel : at & isFine ? dyes.rule.pixel : paint(up, end, at)
    }
    return out
  }

  private marked(): (up: boolean) => number {
    const { ink, paper } = this.drawn.dyes
    return (up) => (up ? ink.pixel : paper.pixel)
  }

  // coloured paints threads with their thickness: the ends, over them the pick, and over it
  // the ends again where they are on top, and over all the marks.
  private coloured(weft: number, kind: number): (up: boolean, end: number, at: number) => number {
    const { table, dyes } = this.drawn
    const below = kind & isThread ? weft : dyes.paper.pixel
    const marks = dyes.dots && (kind & isMark) !== 0
    return (up, end, at) => {
      const marked = up && marks && (at & isMark) !== 0
      if (!marked && !(at & isThread)) return below
      if (!up && kind & isThread) return weft
      const warp = dyeAt(dyes, table.warp.colours[end] ?? 0)
      return marked ? warp.against : warp.pixel
    }
  }
}

// hasGrid says whether lines are drawn over the cloth: not where its colours are shown alone.
const hasGrid = ({ dyes }: Drawn): boolean => dyes.marks || dyes.dots
