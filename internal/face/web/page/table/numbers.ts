import type { Rect } from './bands'
import { turns } from './cloth'
import type { Drawn, Tokens } from './look'
import { endLabels, pickLabels, shaftLabels, treadleLabels, type Label } from './rulers'
import type { Ink } from './surface'
import { seen, type View } from './view'

// The numbers around a drawing.

// Figures are so high, in CSS px; one is about so wide for its height.
const [high, figure, air] = [14, 0.58, 6]

// family is the type of the page; figures of one width stand under one another.
const family = "Andika, 'Segoe UI', sans-serif"

// Ruler is where numbers stand.
export type Ruler = 'ends' | 'picks' | 'shafts' | 'treadles'

export const rulers: readonly Ruler[] = ['ends', 'picks', 'shafts', 'treadles']

// paintNumbers writes the numbers of a ruler, upon what is clear.
export function paintNumbers(ink: Ink, view: View, drawn: Drawn, tokens: Tokens, ruler: Ruler): void {
  const { ratio } = view.sight.room
  ink.font = `${high * ratio}px ${family}`
  ink.fillStyle = tokens.soft
  ink.textBaseline = 'middle'
  const { left } = view.sight.arrangement
  const where = ruler === 'ends' || ruler === 'treadles' ? across : beside((ruler === 'picks') === left, ratio)
  write(ink, view.bands[ruler], labelsOf(view, drawn, ruler), where)
}

function labelsOf(view: View, { table }: Drawn, ruler: Ruler): Label[] {
  const { sight } = view
  const { ratio } = sight.room
  const wide = (most: number): number => (String(Math.max(most, 1)).length * high * figure + air) * ratio
  const tall = (high + 2) * ratio
  const { c0, c1, r0, r1 } = seen(view)
  switch (ruler) {
    case 'ends':
      return endLabels(view, wide(sight.extent.ends), runsIn(table.warp.colours, sight.arrangement.back ? sight.extent.ends - c1 : c0, c1 - c0))
    case 'picks':
      return pickLabels(view, tall, runsIn(table.weft.colours, sight.arrangement.upwards ? sight.extent.picks - r1 : r0, r1 - r0))
    case 'shafts':
      return shaftLabels(view, tall)
    case 'treadles':
      return treadleLabels(view, wide(sight.extent.across))
  }
}

// runsIn are the ends of the runs of colour of so many threads from one on.
const runsIn = (colours: Uint16Array, from: number, n: number): number[] => turns(colours.subarray(from, from + n)).map((i) => from + i)

type Where = (band: Rect, label: Label) => { x: number; y: number; align: CanvasTextAlign }

function write(ink: Ink, band: Rect | undefined, labels: Label[], where: Where): void {
  for (const label of band ? labels : []) {
    const { x, y, align } = where(band as Rect, label)
    ink.textAlign = align
    ink.fillText(String(label.number), x, y)
  }
}

const across: Where = (band, label) => ({ x: label.at, y: band.y + band.h / 2, align: 'center' })

// beside sets numbers against the edge that is nearest the cloth.
const beside = (left: boolean, ratio: number): Where => (band, label) =>
  left ? { x: band.x + band.w - 4 * ratio, y: label.at, align: 'right' } : { x: band.x + 4 * ratio, y: label.at, align: 'left' }
