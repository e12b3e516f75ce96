import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Table } from '../table/cloth'
import type { Cells } from '../table/look'
import { Painter } from '../table/paint'
import { spliced, type Splices } from '../table/splice'
import { panned, viewOf, type View } from '../table/view'
import { Canvas, inkOf, makeCanvas, Ticking } from './canvas'
import { lookOf, sightOf, someArrangement, someTable } from './drafted'
import { below, oneOf, seeded } from './seeded'

// someChange is a change of a few threads next to one another that leaves as many as there are.
function someChange(random: () => number, table: Table): Splices {
  const treadled = table.treadling.lo.length > 0
  const part = oneOf(random, ['threading', treadled ? 'treadling' : 'lifts', treadled ? 'ties' : 'lifts', 'warp-colours', 'weft-colours'] as const)
  const n = { threading: table.threading.length, ties: table.ties.lo.length, treadling: table.treadling.lo.length, lifts: table.lifts.lo.length, 'warp-colours': table.warp.colours.length, 'weft-colours': table.weft.colours.length }[part]
  const at = below(random, n)
  const long = Math.min(1 + below(random, 6), n - at)
  const value = (): number => (part === 'threading' ? below(random, table.shafts + 1) : below(random, 4))
  const put = Array.from({ length: long }, () => (part === 'treadling' || part === 'lifts' || part === 'ties' ? (1 << value()).toString(16) : value()))
  return { [part]: { at, remove: long, put } }
}

const room = { width: 640, height: 560, ratio: 1 }

function fresh(table: Table, view: View, look: ReturnType<typeof lookOf>): Canvas {
  const canvas = new Canvas(room.width, room.height)
  const painter = new Painter(inkOf(canvas), new Ticking(0), () => {}, makeCanvas)
  painter.show(table, view, look)
  assert.ok(painter.paint())
  return canvas
}

test('what is painted anew after a change or a move leaves every dot as if all were painted', () => {
  const random = seeded(61)
  for (let round = 0; round < 14; round++) {
    let table = someTable(random, 30 + below(random, 300), 30 + below(random, 300))
    const look = lookOf(oneOf<Cells>(random, ['marks', 'colours', 'both']))
    let view = viewOf(sightOf(table, someArrangement(random), room, random() < 0.3, random() < 0.3), oneOf(random, [0.4, 1, 1.7, 4, 9, 17]))
    const canvas = new Canvas(room.width, room.height)
    const painter = new Painter(inkOf(canvas), new Ticking(0), () => {}, makeCanvas)
    for (let step = 0; step < 8; step++) {
      painter.show(table, view, look)
      assert.ok(painter.paint())
      const want = fresh(table, view, look).dots
      const differs = canvas.dots.findIndex((dot, i) => dot !== want[i])
      assert.equal(differs, -1, `round ${round}, step ${step}: ${differs % room.width}, ${Math.floor(differs / room.width)} of ${JSON.stringify([view.bands, view.dots])}`)
      if (random() < 0.3) view = panned(view, below(random, 200) - 100, below(random, 200) - 100)
      else table = spliced(table, { splices: someChange(random, table) })
    }
  }
})

test('a change that waits for its slices is drawn with the next', () => {
  const random = seeded(62)
  let table = someTable(random, 400, 400)
  const look = lookOf('both')
  const view = viewOf(sightOf(table, {}, room), 3)
  const clock = new Ticking(1)
  const canvas = new Canvas(room.width, room.height)
  const painter: Painter = new Painter(inkOf(canvas), clock, () => painter.paint(), makeCanvas)
  for (let step = 0; step < 20; step++) {
    table = spliced(table, { splices: someChange(random, table) })
    painter.show(table, view, look)
    painter.paint()
    if (step % 3 === 2) clock.put.shift()?.()
  }
  clock.goOn()
  assert.deepEqual(canvas.dots, fresh(table, view, look).dots)
})

test('one end costs a few dots of the cloth and little around it', () => {
  const table = someTable(seeded(63), 600, 600)
  const look = lookOf('marks')
  const view = viewOf(sightOf(table, {}, room), 8)
  const canvas = new Canvas(room.width, room.height)
  const painter = new Painter(inkOf(canvas), new Ticking(0), () => {}, makeCanvas)
  painter.show(table, view, look)
  painter.paint()
  const [dots, filled] = [painter.tiles.dotCount, canvas.filled]
  const other = spliced(table, { splices: { threading: { at: 20, remove: 1, put: [((table.threading[20] ?? 0) % table.shafts) + 1] } } })
  painter.show(other, view, look)
  painter.paint()
  const drawn = painter.tiles.dotCount - dots
  assert.ok(drawn > 0 && drawn <= 2 * 12 * view.bands.drawdown.h, `${drawn} dots`)
  assert.ok(canvas.filled - filled < filled / 8, `${canvas.filled - filled} of ${filled} dots around it`)
})
