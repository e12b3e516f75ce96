import type { Table } from './cloth'
import type { Look } from './look'
import { Painter } from './paint'
import type { Clock } from './slices'
import type { Ink } from './surface'
import { movedTo, type View, viewOf } from './view'

// atOnce is a clock by which all is drawn in one slice.
const atOnce: Clock = { now: () => 0, later: (work) => work() }

// seenPicture draws what is in sight once more, with so many dots for each of the screen's,
// on white: to be kept, or printed.
export function seenPicture(table: Table, { sight, cell, left, top }: View, look: Look, times: number): HTMLCanvasElement {
  const { width, height, ratio } = sight.room
  const room = { width: width * times, height: height * times, ratio: ratio * times }
  const canvas = document.createElement('canvas')
  canvas.width = room.width
  canvas.height = room.height
  const painter = new Painter(canvas.getContext('2d') as unknown as Ink, atOnce, () => painter.paint())
  painter.show(table, movedTo(viewOf({ ...sight, room }, cell), left * times, top * times), { ...look, tokens: { ...look.tokens, ground: '#ffffff', soft: '#444444' } })
  painter.paint()
  return canvas
}
