import type { Stretch } from './cloth'
import { fill } from './harness'
import type { Drawn, Lines } from './look'
import { Mean, small } from './mean'
import { inFrame, type Clock } from './slices'
import { Strip } from './strip'
import { sheetOf, type Ink, type MakeSurface, type Sheet, type Surface } from './surface'
import { alike, joined, touchedColumns, touchedRows } from './touched'
import type { View } from './view'

// side is how large a tile is, in dots: small enough for many to be drawn in a slice, large
// enough for a screen to be a hundred of them.
export const side = 256

// spare is how many tiles are kept that are out of sight, as long as the page moves about.
const spare = 160

// Tile is one of them, with what of it is not as the cloth is now: columns and rows of its dots.
type Tile = { readonly surface: Surface; columns: Stretch | null; rows: Stretch | null }

const all: Stretch = [0, side]

export const linesOf = (drawn: Drawn, from: number, wide: number): Lines => (drawn.cell < small ? new Mean(drawn, from, wide) : new Strip(drawn, from, wide))

// Tiles are the picture of a cloth in pieces, which are drawn when they first come in sight
// and copied after that. A change draws only those anew that it touches, and of them only the
// columns and rows that it touches.
export class Tiles {
  drawnCount = 0 // how many were drawn, and how many dots of them, for tests of what a change costs
  dotCount = 0
  private drawn: Drawn | null = null
  private readonly tiles = new Map<number, Tile>()
  private readonly strips = new Map<number, Lines>()
  private readonly free: Surface[] = [] // of tiles that were forgotten: a new one costs more
  private begun: { readonly key: number; readonly part: Part; line: number } | null = null
  private sheet: Sheet | null = null // of the part that is begun
  private waiting = false

  // ready is called when more of a picture can be drawn: it is to paint again.
  constructor(
    private readonly make: MakeSurface,
    private readonly clock: Clock,
    private readonly ready: () => void,
  ) {}

  // show says what is painted from now on. It reports whether what was copied before is still
  // the picture, but for what a change has touched.
  show(drawn: Drawn): boolean {
    const was = this.drawn
    this.drawn = drawn
    this.begun = null
    this.strips.clear()
    const kept = was !== null && alike(was, drawn)
    if (kept) this.stale(was, drawn)
    else this.forget(this.tiles.size)
    return kept
  }

  private stale(was: Drawn, now: Drawn): void {
    const [columns, rows] = [touchedColumns(was, now, side), touchedRows(was, now, side)]
    if (columns.size === 0 && rows.size === 0) return
    for (const [key, tile] of this.tiles) {
      const [across, down] = [columns.get(key % pitch), rows.get(Math.floor(key / pitch))]
      if (across) tile.columns = joined(tile.columns, across)
      if (down) tile.rows = joined(tile.rows, down)
    }
  }

  // paint copies what is in sight: what is missing of it is drawn first for as long as a
  // slice in a frame goes on, and of the rest the older picture is copied, where there is one,
  // and else what is given. It reports whether all is there; where not, ready is called later,
  // to call goOn. from is when the slice began.
  paint(ink: Ink, view: View, from: number, empty: string): boolean {
    const keys = inSight(view)
    const { left } = this.fill(ink, keys, from + inFrame)
    for (const key of keys) this.copy(ink, view, key, empty)
    this.forget(this.tiles.size - keys.length - spare)
    return this.done(left)
  }

  // goOn draws more of what is missing until a time, and copies only that.
  goOn(ink: Ink, view: View, until: number): boolean {
    const { made, left } = this.fill(ink, inSight(view), until)
    for (const key of made) this.copy(ink, view, key)
    return this.done(left)
  }

  // fill draws missing tiles until the slice is over, one or a part of one at the least.
  private fill(ink: Ink, keys: number[], until: number): { made: number[]; left: number } {
    const missing = keys.filter((key) => partOf(this.tiles.get(key)) !== null)
    const made: number[] = []
    this.sheet ??= sheetOf(ink, side, side)
    for (const key of missing) {
      if (!this.drawn || !this.draw(key, this.drawn, this.sheet, until)) break
      made.push(key)
      if (this.clock.now() >= until) break
    }
    return { made, left: missing.length - made.length }
  }

  private done(left: number): boolean {
    if (left > 0) this.wait()
    return left === 0
  }

  private wait(): void {
    if (this.waiting) return
    this.waiting = true
    this.clock.later(() => {
      this.waiting = false
      this.ready()
    })
  }

  // draw goes on with a tile until it is whole, which it reports, or the slice is over.
  private draw(key: number, drawn: Drawn, sheet: Sheet, until: number): boolean {
    for (let part = partOf(this.tiles.get(key)); part; part = partOf(this.tiles.get(key))) {
      if (this.begun?.key !== key || !samePart(this.begun.part, part)) this.begun = { key, part, line: part.rows[0] }
      if (!this.drawPart(this.begun, drawn, sheet, until)) return false
    }
    this.drawnCount++
    return true
  }

  private drawPart(begun: NonNullable<Tiles['begun']>, drawn: Drawn, sheet: Sheet, until: number): boolean {
    const { key, part } = begun
    const [[x, x1], [y, y1]] = [part.columns, part.rows]
    const lines = this.linesAt((key % pitch) * side + x, x1 - x, drawn)
    for (; begun.line < y1; begun.line++) {
      if (begun.line % 8 === 0 && begun.line > y && this.clock.now() >= until) return false
      sheet.pixels.set(lines.line(Math.floor(key / pitch) * side + begun.line), begun.line * side + x)
    }
    const tile = this.tiles.get(key) ?? { surface: this.free.pop() ?? this.make(side, side), columns: all, rows: null }
    sheet.put(tile.surface.ink, x, y, x1 - x, y1 - y)
    this.dotCount += (x1 - x) * (y1 - y)
    this.tiles.set(key, part.rows === all ? { ...tile, columns: null } : { ...tile, rows: null })
    this.begun = null
    return true
  }

  private linesAt(x: number, wide: number, drawn: Drawn): Lines {
    const key = x * (side + 1) + wide
    const found = this.strips.get(key)
    if (found) return found
    const made = linesOf(drawn, x, wide)
    this.strips.set(key, made)
    return made
  }

  // copy paints a tile, as far as it is in sight. One that is not drawn yet is left empty, one
  // that is old stays as it was.
  private copy(ink: Ink, { bands: { drawdown }, left, top }: View, key: number, empty?: string): void {
    const tile = this.tiles.get(key)
    const [x, y] = [(key % pitch) * side, Math.floor(key / pitch) * side]
    const [x0, y0] = [Math.max(x, left), Math.max(y, top)]
    const [w, h] = [Math.min(x + side, left + drawdown.w) - x0, Math.min(y + side, top + drawdown.h) - y0]
    const [u, v] = [drawdown.x + x0 - left, drawdown.y + y0 - top]
    if (!tile) {
      if (empty) fill(ink, empty, { x: u, y: v, w, h })
      return
    }
    this.tiles.delete(key)
    this.tiles.set(key, tile) // the last used is the last forgotten
    ink.drawImage(tile.surface.image, x0 - x, y0 - y, w, h, u, v, w, h)
  }

  // forget lets go of so many tiles, of those that were used last the last.
  private forget(n: number): void {
    for (const [key, { surface }] of this.tiles) {
      if (n-- <= 0) break
      this.tiles.delete(key)
      if (this.free.length < spare) this.free.push(surface)
    }
  }
}

// Part is a rectangle of a tile, in its dots.
type Part = { readonly columns: Stretch; readonly rows: Stretch }

const samePart = (a: Part, b: Part): boolean => [0, 1].every((i) => a.columns[i] === b.columns[i] && a.rows[i] === b.rows[i])

// partOf is what is to be drawn next of a tile: all of one that is new, or else of what a change
// has touched first the columns and then the rows. It is null where the tile is as the cloth is.
function partOf(tile: Tile | undefined): Part | null {
  if (!tile) return { columns: all, rows: all }
  if (tile.columns) return { columns: tile.columns, rows: all }
  return tile.rows && { columns: all, rows: tile.rows }
}

// pitch parts the two numbers of a tile in its key.
const pitch = 0x10000

// inSight are the tiles that are, from the top.
function inSight({ bands: { drawdown }, left, top }: View): number[] {
  const out: number[] = []
  for (let y = Math.floor(top / side); y * side < top + drawdown.h; y++) {
    for (let x = Math.floor(left / side); x * side < left + drawdown.w; x++) out.push(y * pitch + x)
  }
  return drawdown.w > 0 && drawdown.h > 0 ? out : []
}
