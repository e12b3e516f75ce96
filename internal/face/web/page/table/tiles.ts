import type { Drawn, Lines } from './look'
import { Mean, small } from './mean'
import { budget, type Clock } from './slices'
import { Strip } from './strip'
import { putPixels, type Ink, type MakeSurface, type Surface } from './surface'
import { alike, touchedColumns, touchedRows } from './touched'
import type { View } from './view'

// side is how large a tile is, in dots: small enough for many to be drawn in a slice, large
// enough for a screen to be a hundred of them.
export const side = 256

// spare is how many tiles are kept that are out of sight, as long as the page moves about.
const spare = 160

type Tile = { readonly surface: Surface; fresh: boolean }

export const linesOf = (drawn: Drawn, from: number, wide: number): Lines => (drawn.cell < small ? new Mean(drawn, from, wide) : new Strip(drawn, from, wide))

// Tiles are the picture of a cloth in pieces, which are drawn when they first come in sight
// and copied after that. A change draws only those anew that it touches.
export class Tiles {
  drawnCount = 0 // how many were drawn, for tests of what a change costs
  private drawn: Drawn | null = null
  private readonly tiles = new Map<number, Tile>()
  private readonly strips = new Map<number, Lines>()
  private begun: { readonly key: number; readonly pixels: Uint32Array; lines: number } | null = null
  private waiting = false

  // ready is called when more of a picture can be drawn: it is to paint again.
  constructor(
    private readonly make: MakeSurface,
    private readonly clock: Clock,
    private readonly ready: () => void,
  ) {}

  // show says what is painted from now on.
  show(drawn: Drawn): void {
    const was = this.drawn
    this.drawn = drawn
    this.begun = null
    this.strips.clear()
    if (was && alike(was, drawn)) this.stale(was, drawn)
    else this.tiles.clear()
  }

  private stale(was: Drawn, now: Drawn): void {
    const [columns, rows] = [touchedColumns(was, now, side), touchedRows(was, now, side)]
    for (const [key, tile] of this.tiles) {
      if (columns.has(key % pitch) || rows.has(Math.floor(key / pitch))) tile.fresh = false
    }
  }

  // paint copies what is in sight: what is missing of it is drawn first for as long as a
  // slice goes on, and of the rest the older picture is copied, where there is one. It
  // reports whether all is there; where not, ready is called later, to call goOn. from is
  // when the slice began.
  paint(ink: Ink, view: View, from: number): boolean {
    const keys = inSight(view)
    const { left } = this.fill(keys, from)
    for (const key of keys) this.copy(ink, view, key)
    this.forget(keys.length)
    return this.done(left)
  }

  // goOn draws more of what is missing, and copies only that.
  goOn(ink: Ink, view: View): boolean {
    const { made, left } = this.fill(inSight(view), this.clock.now())
    for (const key of made) this.copy(ink, view, key)
    return this.done(left)
  }

  // fill draws missing tiles until the slice is over, one or a part of one at the least.
  private fill(keys: number[], from: number): { made: number[]; left: number } {
    const missing = keys.filter((key) => !this.tiles.get(key)?.fresh)
    const made: number[] = []
    for (const key of missing) {
      if (!this.drawn || !this.draw(key, this.drawn, from)) break
      made.push(key)
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
  private draw(key: number, drawn: Drawn, from: number): boolean {
    if (this.begun?.key !== key) this.begun = { key, pixels: new Uint32Array(side * side), lines: 0 }
    const strip = this.stripOf(key % pitch, drawn)
    const { pixels } = this.begun
    for (let y = this.begun.lines; y < side; y++) {
      pixels.set(strip.line(Math.floor(key / pitch) * side + y), y * side)
      this.begun.lines = y + 1
      if (y % 8 === 7 && y + 1 < side && this.clock.now() - from >= budget) return false
    }
    const surface = this.tiles.get(key)?.surface ?? this.make(side, side)
    putPixels(surface.ink, pixels, side)
    this.tiles.set(key, { surface, fresh: true })
    this.begun = null
    this.drawnCount++
    return true
  }

  private stripOf(tx: number, drawn: Drawn): Lines {
    const found = this.strips.get(tx)
    if (found) return found
    const made = linesOf(drawn, tx * side, side)
    this.strips.set(tx, made)
    return made
  }

  // copy paints a tile, as far as it is in sight. One that is not drawn yet stays empty, one
  // that is old stays as it was.
  private copy(ink: Ink, { bands: { drawdown }, left, top }: View, key: number): void {
    const tile = this.tiles.get(key)
    if (!tile) return
    this.tiles.delete(key)
    this.tiles.set(key, tile) // the last used is the last forgotten
    const [x, y] = [(key % pitch) * side, Math.floor(key / pitch) * side]
    const [x0, y0] = [Math.max(x, left), Math.max(y, top)]
    const [w, h] = [Math.min(x + side, left + drawdown.w) - x0, Math.min(y + side, top + drawdown.h) - y0]
    ink.drawImage(tile.surface.image, x0 - x, y0 - y, w, h, drawdown.x + x0 - left, drawdown.y + y0 - top, w, h)
  }

  private forget(shown: number): void {
    let over = this.tiles.size - shown - spare
    for (const key of this.tiles.keys()) {
      if (over-- <= 0) break
      this.tiles.delete(key)
    }
  }
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
