import { meets, type Rect } from './bands'
import { fill } from './harness'
import { areaRect, inSight, rectOf, type Area, type Place } from './hit'
import { dyeAt, type Drawn, type Tokens } from './look'
import type { Crossings } from './strokes'
import type { Ink } from './surface'
import type { View } from './view'

// What is pointed out on a drawing, on a canvas of its own above it: so that a cursor moves
// without anything being drawn anew. Each is told apart by its outline as well as its colour.

export type Pointed = {
  readonly coming?: Crossings // crossings as they will be: their cells, in a light line and a dark
  readonly chosen?: readonly Area[] // selected: tinted, with a whole line around it
  readonly found?: readonly Area[] // what a finding or a search points at: a double line
  readonly fill?: readonly Area[] // what is repeated to fill a warp: a broken line
  readonly cursor?: Place | null // where keys write: a thick line, with a light one within
}

// isEmpty reports whether there is nothing to point out.
export const isEmpty = ({ coming, chosen, found, fill, cursor }: Pointed): boolean => !coming?.length && !chosen?.length && !found?.length && !fill?.length && !cursor

export function paintOverlay(ink: Ink, view: View, pointed: Pointed, tokens: Tokens, drawn: Drawn): void {
  const { width, height, ratio } = view.sight.room
  const line = Math.max(Math.round(ratio), 1)
  ink.clearRect(0, 0, width, height)
  crossings(ink, view, pointed.coming ?? [], drawn, line)
  for (const rect of rects(view, pointed.fill)) broken(ink, tokens.soft, rect, 2 * line)
  for (const rect of rects(view, pointed.chosen)) {
    ink.globalAlpha = 0.22
    fill(ink, tokens.chosen, rect)
    ink.globalAlpha = 1
    outline(ink, tokens.chosen, rect, 2 * line)
  }
  for (const rect of rects(view, pointed.found)) {
    outline(ink, tokens.found, grown(rect, 4 * line), 2 * line)
    outline(ink, tokens.found, grown(rect, line), line)
  }
  cursor(ink, view, pointed.cursor ?? null, tokens, line)
}

// crossings draws cells in the colour of what is on top in them when they have become what
// they will be: around all of them a dark line, and within it a light one.
function crossings(ink: Ink, view: View, coming: Crossings, drawn: Drawn, line: number): void {
  const cells = new Map<string, Coming>()
  for (const { cells: some, up } of coming) {
    for (const [pick, end] of some) {
      const rect = rectOf(view, { part: 'drawdown', pick, end })
      const shown = rect && inSight(view, 'drawdown', { ...rect, w: Math.max(rect.w, line), h: Math.max(rect.h, line) })
      if (shown) cells.set(`${pick} ${end}`, { rect: shown, css: topOf(drawn, pick, end, up) })
    }
  }
  const { dyes } = drawn
  for (const { rect } of cells.values()) fill(ink, dyes.ink.css, meets(grown(rect, 2 * line), view.bands.drawdown))
  for (const { rect } of cells.values()) fill(ink, dyes.paper.css, meets(grown(rect, line), view.bands.drawdown))
  for (const { rect, css } of cells.values()) fill(ink, css, rect)
}

type Coming = { rect: Rect; css: string }

// topOf is the colour of a crossing in which the end is up.
function topOf({ table, dyes, sight }: Drawn, pick: number, end: number, up: boolean): string {
  const warp = up !== sight.arrangement.back
  if (dyes.marks) return (warp ? dyes.ink : dyes.paper).css
  return dyeAt(dyes, (warp ? table.warp.colours[end] : table.weft.colours[pick]) ?? 0).css
}

const rects = (view: View, areas: readonly Area[] = []): Rect[] => areas.map((area) => areaRect(view, area)).filter((rect) => rect !== null)

function cursor(ink: Ink, view: View, place: Place | null, tokens: Tokens, line: number): void {
  const rect = place && rectOf(view, place)
  const shown = rect && place && inSight(view, place.part, rect)
  if (!shown) return
  outline(ink, tokens.ink, grown(shown, 2 * line), 2 * line)
  outline(ink, tokens.paper, shown, line)
}

const grown = ({ x, y, w, h }: Rect, by: number): Rect => ({ x: x - by, y: y - by, w: w + 2 * by, h: h + 2 * by })

// outline draws lines along the inside of a rectangle.
function outline(ink: Ink, css: string, { x, y, w, h }: Rect, wide: number): void {
  const [across, down] = [Math.min(wide, h), Math.min(wide, w)]
  fill(ink, css, { x, y, w, h: across })
  fill(ink, css, { x, y: y + h - across, w, h: across })
  fill(ink, css, { x, y: y + across, w: down, h: h - 2 * across })
  fill(ink, css, { x: x + w - down, y: y + across, w: down, h: h - 2 * across })
}

// broken draws the same with gaps.
function broken(ink: Ink, css: string, { x, y, w, h }: Rect, wide: number): void {
  const dash = 4 * wide
  for (let at = 0; at < w; at += 2 * dash) {
    fill(ink, css, { x: x + at, y, w: Math.min(dash, w - at), h: wide })
    fill(ink, css, { x: x + at, y: y + h - wide, w: Math.min(dash, w - at), h: wide })
  }
  for (let at = 0; at < h; at += 2 * dash) {
    fill(ink, css, { x, y: y + at, w: wide, h: Math.min(dash, h - at) })
    fill(ink, css, { x: x + w - wide, y: y + at, w: wide, h: Math.min(dash, h - at) })
  }
}
