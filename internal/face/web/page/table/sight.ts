import { computed, effect, signal } from '@preact/signals'
import { type Axis, scaled } from './axis'
import { asPrinted, type Arrangement, type Room } from './bands'
import { endsOf, picksOf, type Table } from './cloth'
import type { Area, Place } from './hit'
import type { Seeing } from './light'
import type { Cells, Tokens } from './look'
import { table } from './session'
import type { Crossings } from './strokes'
import { extentOf, fitting, larger, leastCell, resighted, type Sight, type View, viewOf } from './view'

// How a weaver looks at the draft: what is in sight, how large, drawn how. It belongs to the
// person and not to the draft, and is the same for all of them.

type Kept = { arrangement: Arrangement; cells: Cells; seeing: Seeing; toScale: boolean }

const usual: Kept = { arrangement: asPrinted, cells: 'marks', seeing: 'full', toScale: false }
const place = 'sley-draft-look'

function remembered(): Kept {
  try {
    return { ...usual, ...(JSON.parse(localStorage.getItem(place) ?? '{}') as Partial<Kept>) }
  } catch {
    return usual
  }
}

const kept = remembered()
export const arrangement = signal(kept.arrangement)
export const cells = signal(kept.cells)
export const seeing = signal(kept.seeing)
export const toScale = signal(kept.toScale)

effect(() => {
  const now: Kept = { arrangement: arrangement.value, cells: cells.value, seeing: seeing.value, toScale: toScale.value }
  try {
    localStorage.setItem(place, JSON.stringify(now))
  } catch {
    // full or forbidden: it is forgotten
  }
})

export const room = signal<Room>({ width: 0, height: 0, ratio: 1 }) // of the canvas, in dots
export const view = signal<View | null>(null)
export const cursor = signal<Place | null>(null)
export const chosen = signal<Area | null>(null)
export const found = signal<Area[]>([])
export const underway = signal<Table | null>(null) // with the stroke that is being drawn
export const touched = signal<Crossings>([]) // those that it touches in the drawdown

const sightOf = (of: Table): Sight => ({
  arrangement: arrangement.value,
  extent: extentOf(of),
  room: room.value,
  sized: toScale.value ? scaledOnce(of) : null,
})

// scaledOnce is the very same as before where no size has changed.
let before: { sizes: unknown[]; axes: [Axis, Axis] } | null = null

function scaledOnce(of: Table): [Axis, Axis] {
  const sizes = [of.warp.thick, of.warp.apart, endsOf(of), of.weft.thick, of.weft.apart, picksOf(of)]
  if (!before || sizes.some((size, i) => size !== before?.sizes[i])) before = { sizes, axes: scaled(of.warp, endsOf(of), of.weft, picksOf(of)) }
  return before.axes
}

// comfortable is how large cells are at first where there is room for it, in CSS px.
const comfortable = 32

// begun is the view of a draft that is opened: all of it, or as much as can be worked in.
function begun(sight: Sight): View {
  const all = fitting(sight)
  if (all.cell > comfortable) return viewOf(sight, comfortable)
  return all.cell < leastCell * 3 ? viewOf(sight, larger(leastCell * 4)) : all
}

// same says whether a draft has as many threads, so that its view can stay as it is.
const same = (a: Sight, b: Sight): boolean => JSON.stringify([a.extent, a.arrangement, a.room]) === JSON.stringify([b.extent, b.arrangement, b.room]) && a.sized === b.sized

// keepSight keeps the view in step with the draft, the room and the arrangement.
export const keepSight = (): (() => void) =>
  effect(() => {
    const of = table.value
    if (!of || room.value.width < 2) return
    const sight = sightOf(of)
    const was = view.peek()
    if (!was) view.value = begun(sight)
    else if (!same(was.sight, sight)) view.value = resighted(was, sight)
  })

// forget is for another draft.
export function forget(): void {
  view.value = null
  cursor.value = null
  chosen.value = null
  found.value = []
  underway.value = null
  touched.value = []
}

export const shownTable = computed(() => underway.value ?? table.value)

// tokensOf reads the colours of the page as they are now. Cells are dark on light at night as
// well: a filled cell is the warp on top, as in print.
export function tokensOf(of: Element): Tokens {
  const style = getComputedStyle(of)
  const colour = (name: string): string => style.getPropertyValue(`--${name}`).trim()
  return {
    ground: colour('cloth'),
    paper: colour('cell'),
    ink: colour('cell-ink'),
    soft: colour('soft'),
    rule: colour('cell-rule'),
    strong: colour('cell-strong'),
    chosen: colour('cell-chosen'),
    found: colour('cell-found'),
  }
}
