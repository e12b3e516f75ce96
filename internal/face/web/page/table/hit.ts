import { dotAt, threadAt } from './axis'
import { around, meets, type Bands, type Rect, type Region } from './bands'
import type { Stretch } from './cloth'
import { columnOf, endAt, pickAt, rowOf, type View } from './view'

// From points to what is there, and back.

// Place is a cell of a part, or a thread at its ruler or colour bar. What lies across and
// down in the part is said, the rest not.
export type Place = { readonly part: Region; readonly end?: number; readonly pick?: number; readonly shaft?: number; readonly treadle?: number }

export type Way = 'end' | 'pick' | 'shaft' | 'treadle'

// ways are what is counted across a part and down it.
export const ways: { readonly [R in Region]: readonly [across: Way | null, down: Way | null] } = {
  drawdown: ['end', 'pick'],
  threading: ['end', 'shaft'],
  ties: ['treadle', 'shaft'],
  treadling: ['treadle', 'pick'],
  lifts: ['shaft', 'pick'],
  'warp-colours': ['end', null],
  'weft-colours': [null, 'pick'],
  ends: ['end', null],
  picks: [null, 'pick'],
  shafts: [null, 'shaft'],
  treadles: ['treadle', null],
}

const regions = Object.keys(ways) as Region[]

// regionAt is the part at a point; null where nothing is.
export function regionAt({ bands, sight }: View, x: number, y: number): Region | null {
  const [u, v] = [Math.floor(x * sight.room.ratio), Math.floor(y * sight.room.ratio)]
  const inside = (r: Rect | undefined): boolean => !!r && u >= r.x && v >= r.y && u < r.x + r.w && v < r.y + r.h
  return regions.find((region) => inside(bands[region])) ?? null
}

// placeAt is what is at a point, in CSS px from the corner of the canvas.
export function placeAt(view: View, x: number, y: number): Place | null {
  const part = regionAt(view, x, y)
  return part && nearest(view, part, x, y)
}

// nearest is the cell of a part that lies nearest to a point: so a stroke that leaves its
// part goes on along its edge. It is null where the part is not drawn or has no cells.
export function nearest(view: View, part: Region, x: number, y: number): Place | null {
  const band = view.bands[part]
  const { ratio } = view.sight.room
  if (!band || band.w <= 0 || band.h <= 0) return null
  const u = clamp(Math.floor(x * ratio) - band.x, band.w)
  const v = clamp(Math.floor(y * ratio) - band.y, band.h)
  const [across, down] = ways[part]
  return { part, ...(across && { [across]: acrossAt(view, across, band, u) }), ...(down && { [down]: downAt(view, down, band, v) }) }
}

const clamp = (v: number, n: number): number => Math.min(Math.max(v, 0), n - 1)

function acrossAt(view: View, way: Way, band: Rect, u: number): number {
  if (way === 'end') return endAt(view.sight, threadAt(view.cols, view.left + u, view.dots))
  const from = view.sight.arrangement.left ? band.w - 1 - u : u
  return Math.floor(from / view.bands.treadleStep) + 1
}

function downAt(view: View, way: Way, band: Rect, v: number): number {
  if (way === 'pick') return pickAt(view.sight, threadAt(view.rows, view.top + v, view.dots))
  const from = view.sight.arrangement.below ? v : band.h - 1 - v
  return Math.floor(from / view.bands.shaftStep) + 1
}

// rectOf is where a place is drawn, in dots, also where that is out of sight; of what a
// place does not say it is all. It is null where the part is not drawn.
export function rectOf(view: View, place: Place): Rect | null {
  const band = view.bands[place.part]
  if (!band) return null
  const [across, down] = ways[place.part]
  const [u, v] = [across && place[across], down && place[down]]
  return {
    ...band,
    ...(typeof u === 'number' && acrossOf(view, across === 'end', band, u)),
    ...(typeof v === 'number' && downOf(view, down === 'pick', band, v)),
  }
}

function acrossOf({ cols, dots, left, bands, sight }: View, isEnd: boolean, band: Rect, n: number): { x: number; w: number } {
  const step = bands.treadleStep
  if (!isEnd) return { x: sight.arrangement.left ? band.x + band.w - n * step : band.x + (n - 1) * step, w: step }
  const column = columnOf(sight, n)
  const from = dotAt(cols, column, dots)
  return { x: band.x - left + from, w: dotAt(cols, column + 1, dots) - from }
}

function downOf({ rows, dots, top, bands, sight }: View, isPick: boolean, band: Rect, n: number): { y: number; h: number } {
  const step = bands.shaftStep
  if (!isPick) return { y: sight.arrangement.below ? band.y + (n - 1) * step : band.y + band.h - n * step, h: step }
  const row = rowOf(sight, n)
  const from = dotAt(rows, row, dots)
  return { y: band.y - top + from, h: dotAt(rows, row + 1, dots) - from }
}

// beside is the cell so many to the right and below of one, as it is drawn: what the arrows of
// a keyboard lead to. It stays in its part.
export function beside(view: View, place: Place, right: number, down: number): Place {
  const [across, along] = ways[place.part]
  return { ...place, ...(across && moved(view, place, across, right, true)), ...(along && moved(view, place, along, down, false)) }
}

function moved({ sight }: View, place: Place, way: Way, by: number, across: boolean): { [W in Way]?: number } {
  const { extent, arrangement: a } = sight
  const at = place[way] ?? 0
  if (way === 'end') return { end: endAt(sight, clamp(columnOf(sight, at) + by, extent.ends)) }
  if (way === 'pick') return { pick: pickAt(sight, clamp(rowOf(sight, at) + by, extent.picks)) }
  const outwards = across ? !a.left : a.below
  return { [way]: clamp(at - 1 + (outwards ? by : -by), across ? extent.across : extent.shafts) + 1 }
}

// Area is cells of a part: stretches of what is counted in it, from the first to before the
// last; of what it does not say it is all.
export type Area = { readonly part: Region; readonly ends?: Stretch; readonly picks?: Stretch; readonly shafts?: Stretch; readonly treadles?: Stretch }

// areaRect is where an area is drawn, as far as it is in sight; null where none of it is.
export function areaRect(view: View, { part, ends, picks, shafts, treadles }: Area): Rect | null {
  const corner = (i: 0 | 1): Place => {
    const at = (stretch: Stretch | undefined): number | undefined => stretch && (i === 0 ? stretch[0] : stretch[1] - 1)
    return placeOf(part, { end: at(ends), pick: at(picks), shaft: at(shafts), treadle: at(treadles) })
  }
  if ([ends, picks, shafts, treadles].some((stretch) => stretch && stretch[1] <= stretch[0])) return null
  const [first, last] = [rectOf(view, corner(0)), rectOf(view, corner(1))]
  return first && last && inSight(view, part, around(first, last))
}

// placeOf leaves out what is not said.
function placeOf(part: Region, numbers: { [W in Way]: number | undefined }): Place {
  const said = Object.entries(numbers).filter(([, n]) => n !== undefined)
  return { part, ...Object.fromEntries(said) }
}

// inSight is what of a rectangle lies in its part.
export const inSight = ({ bands }: View, part: keyof Bands & Region, rect: Rect): Rect | null => {
  const band = bands[part]
  return band ? meets(rect, band) : null
}
