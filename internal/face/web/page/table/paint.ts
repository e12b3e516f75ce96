import { dotAt } from './axis'
import type { Rect } from './bands'
import type { Table } from './cloth'
import { anew, sameFrame, whole, type Anew, type Shown } from './anew'
import { fill, paintBeside, paintEnds, paintPicks, paintThreading, paintTies } from './harness'
import { drawnOf, smallDrawn, type Look } from './look'
import { Mean } from './mean'
import { paintNumbers } from './numbers'
import { isEmpty, paintOverlay, type Pointed } from './overlay'
import { budget, inFrame, type Clock } from './slices'
import { offscreen, type Ink, type MakeSurface } from './surface'
import { Tiles } from './tiles'
import type { View } from './view'

const framed = ['drawdown', 'threading', 'ties', 'treadling', 'lifts', 'warp-colours', 'weft-colours'] as const

// Painter draws a draft on a canvas, and what is pointed out on it on another above it.
//
//   const painter = new Painter(ink, clock, () => painter.paint())
//   painter.show(table, view, look)
//   painter.paint()
//   painter.point(overlay, { cursor: place })
//
// A draft that has changed is shown again; what did not change stays as it is.
export class Painter {
  readonly tiles: Tiles
  private clear: Ink | null = null // the canvas above, where nothing is on it
  private begun = false // shown anew since it was painted
  private now: (Shown & { look: Look }) | null = null
  private onCanvas: Shown | null = null // null: nothing that could stay
  private of: { table: Table; look: Look; cell: number } | null = null

  // ready is called when more of the picture can be painted: it is to call paint, at once or
  // in the next frame.
  constructor(
    private readonly ink: Ink,
    private readonly clock: Clock,
    ready: () => void,
    make: MakeSurface = offscreen,
  ) {
    this.tiles = new Tiles(make, clock, ready)
  }

  // show says what is painted from now on. Moving over a draft costs no more than copying.
  show(table: Table, view: View, look: Look): void {
    const moved = this.now && this.of?.table === table && this.of.look === look && this.now.view.sight === view.sight && this.of.cell === view.cell
    const drawn = moved && this.now ? this.now.drawn : drawnOf(table, view, look)
    if (!moved && !this.tiles.show(drawn)) this.onCanvas = null
    if (this.now?.look !== look) this.onCanvas = null
    this.now = { drawn, view, look }
    this.begun = true
    this.of = { table, look, cell: view.cell }
  }

  // paint reports whether all is painted; where not, ready is called soon, and what was
  // missing is painted then.
  paint(): boolean {
    if (!this.now) return true
    const from = this.clock.now()
    if (!this.begun) return this.tiles.goOn(this.ink, this.now.view, from + budget)
    const { view, look } = this.now
    const before = this.onCanvas && sameFrame(this.onCanvas, this.now) ? this.onCanvas : null
    if (!before) fill(this.ink, look.tokens.ground, { x: 0, y: 0, w: view.sight.room.width, h: view.sight.room.height })
    const parts = before ? anew(before, this.now) : whole(view)
    this.around(parts, this.now, before !== null)
    this.begun = false
    this.onCanvas = this.now
    return parts.cloth ? this.tiles.paint(this.ink, view, from, look.tokens.paper) : this.tiles.goOn(this.ink, view, from + inFrame)
  }

  // around paints what is new of what stands around the cloth.
  private around({ threading, beside, ties, ends, picks, rulers }: Anew, { drawn, view, look }: Shown & { look: Look }, clear: boolean): void {
    const { ink } = this
    if (threading) paintThreading(ink, view, drawn, threading)
    if (ties) paintTies(ink, view, drawn)
    if (beside) paintBeside(ink, view, drawn, beside)
    if (ends) paintEnds(ink, view, drawn)
    if (picks) paintPicks(ink, view, drawn)
    for (const ruler of clear ? rulers : []) fill(ink, look.tokens.ground, view.bands[ruler] ?? null)
    for (const name of framed) this.frame(view.bands[name], look)
    for (const ruler of rulers) paintNumbers(ink, view, drawn, look.tokens, ruler)
  }

  // point paints what is pointed out, on a canvas above; where it points out nothing, and
  // nothing did, that is left alone.
  point(above: Ink, pointed: Pointed): void {
    const empty = isEmpty(pointed)
    if (this.now && !(empty && this.clear === above)) paintOverlay(above, this.now.view, pointed, this.now.look.tokens, this.now.drawn)
    this.clear = empty ? above : null
  }

  // frame draws a line around a part, outside of its cells.
  private frame(band: Rect | undefined, { tokens }: Look): void {
    if (!band || band.w <= 0 || band.h <= 0) return
    const { x, y, w, h } = band
    for (const at of [y - 1, y + h]) fill(this.ink, tokens.ink, { x: x - 1, y: at, w: w + 2, h: 1 })
    for (const at of [x - 1, x + w]) fill(this.ink, tokens.ink, { x: at, y, w: 1, h })
  }
}

// Overview is a picture of all of a cloth.
export type Overview = { readonly w: number; readonly h: number; readonly pixels: Uint32Array }

// overviewOf makes one of no more than so many dots each way, a line at a time: see inSlices.
// A cloth of less threads than dots has a dot for each.
export function* overviewOf(table: Table, view: View, look: Look, wide: number, high: number): Generator<void, Overview> {
  const drawn = drawnOf(table, view, look)
  const { cols, rows } = drawn
  const size = (axis: typeof cols): number => Math.max(axis.edges?.[axis.n] ?? axis.n, 1)
  const small = smallDrawn(drawn, Math.min(wide / size(cols), high / size(rows), 1))
  const [w, h] = [Math.max(dotAt(cols, cols.n, small.cell), 1), Math.max(dotAt(rows, rows.n, small.cell), 1)]
  const lines = new Mean(small, 0, w)
  const pixels = new Uint32Array(w * h)
  for (let y = 0; y < h; y++) {
    pixels.set(lines.line(y), y * w)
    yield
  }
  return { w, h, pixels }
}
