import assert from 'node:assert/strict'
import { test } from 'node:test'
import { tableOf, onTop, type Table } from '../table/cloth'
import { dotAt, threadsOver } from '../table/axis'
import { colourOf, colourOfLight, lightOf, type Light } from '../table/light'
import { pixelOf } from '../table/look'
import { overviewOf, Painter } from '../table/paint'
import { budget, inSlices } from '../table/slices'
import { endAt, fitting, panned, pickAt, viewOf, type View } from '../table/view'
import { Canvas, inkOf, makeCanvas, Ticking } from './canvas'
import { lookOf, sightOf, someArrangement, someTable, tokens } from './drafted'
import { seeded } from './seeded'

test('a picture is drawn in slices that keep to their time, and comes to its end', () => {
  const random = seeded(31)
  const table = someTable(random, 900, 900)
  const view = viewOf(sightOf(table, {}, { width: 1300, height: 1000, ratio: 1 }), 3)
  const clock = new Ticking(1)
  const canvas = new Canvas(1300, 1000)
  const spans: number[] = []
  let whole = false
  const painter: Painter = new Painter(inkOf(canvas), clock, paint, makeCanvas)
  function paint(): void {
    const from = clock.time
    whole = painter.paint()
    spans.push(clock.time - from)
  }
  painter.show(table, view, lookOf('both'))
  paint()
  assert.ok(!whole)
  clock.goOn()
  assert.ok(whole)
  assert.ok(spans.length > 20 && Math.max(...spans) <= budget + 3, `${spans.length} slices, the longest ${Math.max(...spans)}`)
  const quick = new Canvas(1300, 1000)
  const other = new Painter(inkOf(quick), new Ticking(0), () => {}, makeCanvas)
  other.show(table, view, lookOf('both'))
  assert.ok(other.paint())
  assert.deepEqual(canvas.dots, quick.dots)
})

test('what is not needed any more is not drawn', () => {
  const table = someTable(seeded(32), 500, 500)
  const view = viewOf(sightOf(table), 40)
  const clock = new Ticking(1)
  const painter: Painter = new Painter(inkOf(new Canvas(640, 560)), clock, () => painter.paint(), makeCanvas)
  painter.show(table, view, lookOf('marks'))
  painter.paint()
  painter.show(table, panned(view, 9000, 9000), lookOf('marks'))
  clock.goOn()
  assert.ok(painter.tiles.drawnCount <= 12, `${painter.tiles.drawnCount} were drawn`)
})

test('a change in the middle of a slice leaves nothing of what was', () => {
  const random = seeded(36)
  const [first, second] = [someTable(random, 60, 60), someTable(random, 60, 60)]
  const [canvas, other] = [new Canvas(640, 560), new Canvas(640, 560)]
  const clock = new Ticking(1)
  const painter: Painter = new Painter(inkOf(canvas), clock, () => painter.paint(), makeCanvas)
  for (const table of [first, second]) {
    painter.show(table, viewOf(sightOf(table), 8), lookOf('marks'))
    assert.ok(!painter.paint())
  }
  clock.goOn()
  const fresh = new Painter(inkOf(other), new Ticking(0), () => {}, makeCanvas)
  fresh.show(second, viewOf(sightOf(second), 8), lookOf('marks'))
  fresh.paint()
  assert.deepEqual(canvas.dots, other.dots)
})

test('work in slices gives what the work gives, and stops when told', () => {
  function* counted(n: number): Generator<void, number> {
    let sum = 0
    for (let i = 1; i <= n; i++) {
      sum += i
      yield
    }
    return sum
  }
  const clock = new Ticking(1)
  let got = 0
  inSlices(clock, counted(100), (sum) => (got = sum))
  assert.equal(got, 0)
  const slices = clock.goOn()
  assert.equal(got, 5050)
  assert.ok(slices > 50 / budget && slices < 200 / budget, `${slices} slices`)
  got = 0
  const stop = inSlices(clock, counted(100), (sum) => (got = sum))
  stop()
  clock.goOn()
  assert.equal(got, 0)
})

const made = <V>(work: Iterator<unknown, V>): V => {
  for (;;) {
    const step = work.next()
    if (step.done) return step.value
  }
}

test('plain weave from afar is half as light as its two threads together', () => {
  const plain = tableOf({
    ...{ version: 1, kind: 'draft', name: 'Plain', frozen: false, shafts: 2, treadles: 0, shed: '', ties: [], treadling: [] },
    threading: Array.from({ length: 400 }, (_, i) => 1 + (i % 2)),
    lifts: Array.from({ length: 400 }, (_, i) => (i % 2 === 0 ? '1' : '2')),
    palette: ['#000000', '#ffffff'],
    warpColours: new Array<number>(400).fill(0),
    weftColours: new Array<number>(400).fill(1),
  }) as Table
  const { w, h, pixels } = made(overviewOf(plain, viewOf(sightOf(plain), 12), lookOf('colours'), 100, 100))
  assert.deepEqual([w, h, pixels.length], [100, 100, 10_000])
  // Half the light is 188 of 255 by the coding of IEC 61966-2-1.
  assert.ok(pixels.every((dot) => dot === pixelOf([188, 188, 188])))
})

// meanDot is the mean of the crossings under a dot, one by one.
function meanDot(table: Table, view: View, x: number, y: number): number {
  const [c0, c1] = threadsOver(view.cols, x, x + 1, view.dots)
  const [r0, r1] = threadsOver(view.rows, y, y + 1, view.dots)
  const sum = [0, 0, 0]
  for (let row = r0; row < r1; row++) {
    for (let column = c0; column < c1; column++) {
      const [pick, end] = [pickAt(view.sight, row), endAt(view.sight, column)]
      const up = onTop(table, pick, end) !== view.sight.arrangement.back
      const light: Light = lightOf(colourOf(table.palette[(up ? table.warp.colours[end] : table.weft.colours[pick]) ?? 0] ?? '#ffffff'))
      for (const k of [0, 1, 2] as const) sum[k] = sum[k]! + light[k] / ((r1 - r0) * (c1 - c0))
    }
  }
  return pixelOf(colourOfLight(sum as unknown as Light))
}

const apart = (a: number, b: number): number => Math.max(...[0, 8, 16, 24].map((by) => Math.abs(((a >>> by) & 0xff) - ((b >>> by) & 0xff))))

test('cells smaller than dots show the mean of their light', () => {
  const random = seeded(33)
  for (let round = 0; round < 12; round++) {
    const table = someTable(random, 1500, 1200)
    const view = fitting(sightOf(table, someArrangement(random), { width: 480, height: 420, ratio: 1 }, round % 2 === 0))
    assert.ok(view.dots < 1)
    const canvas = new Canvas(480, 420)
    const painter = new Painter(inkOf(canvas), new Ticking(0), () => {}, makeCanvas)
    painter.show(table, view, lookOf('colours'))
    painter.paint()
    const { drawdown } = view.bands
    for (let y = 0; y < drawdown.h; y += 9) {
      for (let x = 0; x < drawdown.w; x += 9) {
        const [got, want] = [canvas.at(drawdown.x + x, drawdown.y + y), meanDot(table, view, view.left + x, view.top + y)]
        assert.ok(apart(got, want) <= 1, `${x}, ${y}: ${got.toString(16)}, not ${want.toString(16)}`)
      }
    }
  }
})

test('an overview is no larger than asked for, and has every thread of a small cloth', () => {
  const random = seeded(34)
  for (const [ends, picks] of [[30, 20], [700, 20], [2000, 900]] as const) {
    const table = someTable(random, ends, picks)
    const view = viewOf(sightOf(table), 12)
    const { w, h, pixels } = made(overviewOf(table, view, lookOf('marks'), 200, 150))
    assert.ok(w <= 200 && h <= 150 && pixels.length === w * h)
    assert.equal(w, dotAt(view.cols, ends, Math.min(200 / ends, 150 / picks, 1)))
    if (ends > 30) continue
    for (let y = 0; y < 20; y++) {
      for (let x = 0; x < 30; x++) assert.equal(pixels[y * w + x], pixelOf(colourOf(onTop(table, y, x) ? tokens.ink : tokens.paper)))
    }
  }
})

test('of a large cloth no more is drawn than is in sight', () => {
  const table = someTable(seeded(35), 2000, 4000)
  const view = viewOf(sightOf(table, {}, { width: 1600, height: 1100, ratio: 1 }), 2)
  const painter = new Painter(inkOf(new Canvas(1600, 1100)), new Ticking(0), () => {}, makeCanvas)
  painter.show(table, view, lookOf('colours'))
  assert.ok(painter.paint())
  const tiles = Math.ceil(view.bands.drawdown.w / 256) * Math.ceil(view.bands.drawdown.h / 256)
  assert.equal(painter.tiles.drawnCount, tiles)
})
