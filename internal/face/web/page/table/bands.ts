// How a draft is laid out, as handbooks print it and as paper has it: from the outer edge
// to the cloth the numbers of the ends, their colours and the threading; the tie-up in the
// corner; and away from the cloth the treadling or lift plan, the colours of the picks and
// their numbers. Lengths are dots of the canvas.

export type Rect = { readonly x: number; readonly y: number; readonly w: number; readonly h: number }

// Arrangement is how a draft is drawn. Ends lie from left to right on the front whatever
// they are numbered from; shaft 1 and treadle 1 are nearest the cloth.
export type Arrangement = {
  readonly below: boolean // the threading stands below the cloth
  readonly left: boolean // tie-up and treadling stand on the left
  readonly upwards: boolean // the first pick is at the bottom, as it lies before the weaver
  readonly fromRight: boolean // ends are numbered from the right
  readonly back: boolean // the cloth is turned over from side to side: the last end is on the left, with all that stands at it
  readonly alone: boolean // the drawdown alone
  readonly bars: boolean // colour bars beside threading and treadling
}

export const asPrinted: Arrangement = { below: false, left: false, upwards: false, fromRight: false, back: false, alone: false, bars: true }

// Extent is how much there is to draw. across is what stands beside the cloth: treadles, or
// the shafts of a lift plan.
export type Extent = { readonly ends: number; readonly picks: number; readonly shafts: number; readonly across: number; readonly lifts: boolean }

// Region is a part of the drawing, with the rulers around it.
export type Region = 'drawdown' | 'threading' | 'ties' | 'treadling' | 'lifts' | 'warp-colours' | 'weft-colours' | 'ends' | 'picks' | 'shafts' | 'treadles'

// Bands are where the parts stand; of what is not drawn there is none.
export type Bands = { readonly [R in Region]?: Rect } & {
  readonly drawdown: Rect
  readonly shaftStep: number // how high a shaft is
  readonly treadleStep: number // how wide a treadle is
}

// Sizes of what stands around the cells, in CSS px: figures are 14 px high at the least.
const [ruler, bar, gap] = [20, 12, 8]
const rulerOf = (most: number): number => 9 * String(Math.max(most, 10)).length + 8

// A shaft or a treadle is as large as a cell, but not so small that it cannot be pointed
// at, and all of them take no more than this share of the room.
const [leastStep, mostShare] = [8, 0.4]

function stepOf(n: number, room: number, cell: number, ratio: number): number {
  return Math.max(Math.floor(Math.min(Math.max(Math.round(cell), leastStep * ratio), (room * mostShare) / Math.max(n, 1))), 1)
}

// Span is a stretch of one direction, with the name of what is there.
type Span = { name: 'cells' | 'side' | 'bar' | 'ruler' | 'outer'; long: number }

// placed lays spans one after the other, from the other end where they are mirrored; the
// gaps between them have no name.
function placed(spans: (Span | number)[], mirrored: boolean): Map<Span['name'], [number, number]> {
  const out = new Map<Span['name'], [number, number]>()
  let at = 0
  for (const span of mirrored ? [...spans].reverse() : spans) {
    const long = typeof span === 'number' ? span : span.long
    if (typeof span !== 'number') out.set(span.name, [at, long])
    at += long
  }
  return out
}

// withCells puts the cells in what room the other spans leave.
function withCells(spans: (Span | number)[], room: number, long: number): (Span | number)[] {
  const taken = spans.reduce<number>((sum, span) => sum + (typeof span === 'number' ? span : span.long), 0)
  const cells: Span = { name: 'cells', long: Math.min(long, Math.max(room - taken, 0)) }
  return spans.map((span) => (typeof span !== 'number' && span.name === 'cells' ? cells : span))
}

export type Room = { readonly width: number; readonly height: number; readonly ratio: number }

// bandsOf lays out a drawing in a room of so many dots, whose cells are so large and whose
// cloth is so wide and so long.
export function bandsOf(a: Arrangement, extent: Extent, room: Room, cell: number, cloth: { w: number; h: number }): Bands {
  const { ratio } = room
  const treadleStep = stepOf(extent.across, room.width, cell, ratio)
  const shaftStep = stepOf(extent.shafts, room.height, cell, ratio)
  const dots = (px: number): number => Math.round(px * ratio)
  const bars: (Span | number)[] = a.bars ? [{ name: 'bar', long: dots(bar) }, dots(gap / 2)] : []
  const cells: Span = { name: 'cells', long: 0 }
  const across: (Span | number)[] = a.alone
    ? [cells, dots(gap / 2)]
    : [{ name: 'outer', long: dots(rulerOf(extent.shafts)) }, cells, dots(gap), { name: 'side', long: treadleStep * extent.across }, dots(gap / 2), ...bars]
  const down: (Span | number)[] = [{ name: 'ruler', long: dots(ruler) }, ...(a.alone ? [] : [...bars, { name: 'side' as const, long: shaftStep * extent.shafts }, dots(gap)]), cells]
  const x = placed(withCells([...across, { name: 'ruler', long: dots(rulerOf(extent.picks)) }], room.width, cloth.w), a.left)
  const y = placed(withCells(down, room.height, cloth.h), a.below)
  return { ...regionsOf(x, y, extent.lifts, dots), shaftStep, treadleStep }
}

const nowhere: [number, number] = [0, 0]

type Spans = Map<Span['name'], [number, number]>

// regionsOf crosses what lies across with what lies down.
function regionsOf(x: Spans, y: Spans, lifts: boolean, dots: (px: number) => number): { [R in Region]?: Rect } & { drawdown: Rect } {
  const out: { [R in Region]?: Rect } = {}
  const put = (region: Region, across: Span['name'], down: Span['name']): void => {
    const [u, v] = [x.get(across), y.get(down)]
    if (u && v && (u[1] > 0 || v[1] > 0)) out[region] = { x: u[0], y: v[0], w: u[1], h: v[1] }
  }
  put('threading', 'cells', 'side')
  put(lifts ? 'lifts' : 'treadling', 'side', 'cells')
  if (!lifts) put('ties', 'side', 'side')
  put('warp-colours', 'cells', 'bar')
  put('weft-colours', 'bar', 'cells')
  put('ends', 'cells', 'ruler')
  put('picks', 'ruler', 'cells')
  put('shafts', 'outer', 'side')
  put('treadles', 'side', 'ruler')
  const beside = y.get('side')
  if (lifts && beside && out.treadles) out.treadles = nearCloth(out.treadles, beside, (y.get('cells') ?? nowhere)[0], dots(ruler))
  const [left, w] = x.get('cells') ?? nowhere
  const [top, h] = y.get('cells') ?? nowhere
  return { ...out, drawdown: { x: left, y: top, w, h } }
}

// nearCloth moves the numbers of a lift plan to it: there is no tie-up between.
function nearCloth(numbers: Rect, [from, long]: [number, number], cloth: number, high: number): Rect {
  return { ...numbers, h: high, y: from < cloth ? from + Math.max(long - high, 0) : from }
}

// meets is what two rectangles have in common; null where that is nothing.
export function meets(a: Rect, b: Rect): Rect | null {
  const [x, y] = [Math.max(a.x, b.x), Math.max(a.y, b.y)]
  const [w, h] = [Math.min(a.x + a.w, b.x + b.w) - x, Math.min(a.y + a.h, b.y + b.h) - y]
  return w > 0 && h > 0 ? { x, y, w, h } : null
}

// around is the smallest rectangle that holds both.
export function around(a: Rect, b: Rect): Rect {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)]
  return { x, y, w: Math.max(a.x + a.w, b.x + b.w) - x, h: Math.max(a.y + a.h, b.y + b.h) - y }
}
