import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Table } from '../table/cloth'
import { rectOf } from '../table/hit'
import { colourOf, type Seeing } from '../table/light'
import { pixelOf, type Cells, type Look } from '../table/look'
import { Painter } from '../table/paint'
import { has, setAt } from '../table/sets'
import { spliced } from '../table/splice'
import { panned, viewOf, type View } from '../table/view'
import { Canvas, inkOf, makeCanvas, Ticking } from './canvas'
import { lookOf, sightOf, tokens, someArrangement, someTable, someView } from './drafted'
import { plainDot } from './plain'
import { below, oneOf, seeded } from './seeded'

const painted = (table: Table, view: View, look: Look, clock = new Ticking(0)): { canvas: Canvas; painter: Painter; clock: Ticking } => {
  const canvas = new Canvas(view.sight.room.width, view.sight.room.height)
  const painter: Painter = new Painter(inkOf(canvas), clock, () => painter.paint(), makeCanvas)
  painter.show(table, view, look)
  painter.paint()
  return { canvas, painter, clock }
}

// compare holds the drawdown on a canvas against the plain way, dot by dot.
function compare(canvas: Canvas, table: Table, view: View, look: Look, step = 1): number {
  const { x, y, w, h } = view.bands.drawdown
  let dots = 0
  for (let v = y; v < y + h; v += step) {
    for (let u = x; u < x + w; u += step, dots++) {
      const [got, want] = [canvas.at(u, v), plainDot(table, view, look, u, v)]
      if (got !== want) assert.equal(got.toString(16), want.toString(16), `${u - x}, ${v - y} of ${JSON.stringify([view.sight.arrangement, view.cell, look.cells])}`)
    }
  }
  return dots
}

test('every dot of a drawdown in tiles is as the rule has it, from all sides', () => {
  const random = seeded(21)
  let dots = 0
  for (let round = 0; round < 40; round++) {
    const table = someTable(random, 1 + below(random, 120), 1 + below(random, 120))
    const view = someView(random, table)
    const look = lookOf(oneOf<Cells>(random, ['marks', 'colours', 'both']), oneOf<Seeing>(random, ['full', 'full', 'grey', 'protan', 'tritan']))
    dots += compare(painted(table, view, look).canvas, table, view, look, 2 + below(random, 4))
  }
  assert.ok(dots > 100_000, `${dots} were compared`)
})

test('moving over a draft copies tiles, and shows the same', () => {
  const random = seeded(22)
  const table = someTable(random, 300, 300)
  const look = lookOf('both')
  let view = viewOf(sightOf(table), 9)
  const { canvas, painter } = painted(table, view, look)
  for (const [dx, dy] of [[100, 0], [0, 130], [700, 900], [-650, -1000], [-3, 2]] as const) {
    view = panned(view, dx, dy)
    painter.show(table, view, look)
    painter.paint()
    compare(canvas, table, view, look, 4)
  }
  const drawn = painter.tiles.drawnCount
  painter.show(table, panned(view, 3, -2), look)
  painter.paint()
  assert.equal(painter.tiles.drawnCount, drawn)
})

test('a change draws no tiles but those it touches, and the picture is the new one', () => {
  const random = seeded(23)
  const base = someTable(random, 220, 240)
  for (const cells of ['marks', 'both'] as const) {
    const view = viewOf(sightOf(base, { bars: false }, { width: 1250, height: 1200, ratio: 1 }), 5)
    const { canvas, painter } = painted(base, view, lookOf(cells))
    const all = painter.tiles.drawnCount
    const table = spliced(base, { splices: { threading: { at: 10, remove: 2, put: [(base.threading[10] ?? 0) === 1 ? 0 : 1, 1] } } })
    painter.show(table, view, lookOf(cells))
    painter.paint()
    compare(canvas, table, view, lookOf(cells), 5)
    const column = Math.ceil(view.bands.drawdown.h / 256)
    assert.equal(painter.tiles.drawnCount - all, column, 'a column of tiles')
    assert.ok(all > 3 * column)
    const picks = table.treadling.lo.length > 0 ? 'treadling' : 'lifts'
    const later = spliced(table, { splices: { [picks]: { at: 100, remove: 0, put: ['1', '3'] } } })
    const next = viewOf(sightOf(later, { bars: false }, view.sight.room), 5)
    painter.show(later, next, lookOf(cells))
    painter.paint()
    compare(canvas, later, next, lookOf(cells), 5)
  }
})

test('what is numbered anew is ruled anew, and what is dyed anew is drawn', () => {
  const random = seeded(28)
  for (const arrangement of [{ fromRight: true }, { upwards: true }, { back: true }, { back: true, fromRight: true }]) {
    const base = someTable(random, 90, 90)
    const picks = base.treadling.lo.length > 0 ? 'treadling' : 'lifts'
    const sight = (of: Table): View => viewOf(sightOf(of, arrangement), 5)
    const { canvas, painter } = painted(base, sight(base), lookOf('both'))
    let table = base
    for (const splices of [
      { threading: { at: 90, remove: 0, put: [1, 1] } },
      { [picks]: { at: 90, remove: 0, put: ['1', '1', '1'] } },
      { 'warp-colours': { at: 5, remove: 2, put: [3, 1] } },
      { 'weft-colours': { at: 5, remove: 2, put: [1, 3] } },
      { palette: { at: 0, remove: 1, put: ['#4d6637'] } },
    ]) {
      table = spliced(table, { splices })
      painter.show(table, sight(table), lookOf('both'))
      painter.paint()
      compare(canvas, table, sight(table), lookOf('both'))
    }
  }
})

test('the grid around the cloth is stronger after every fifth', () => {
  const table = someTable(seeded(30), 40, 40)
  for (const below of [false, true]) {
    for (const left of [false, true]) {
      const extent = { ends: 40, picks: 40, shafts: 16, across: 12, lifts: false }
      const view = viewOf({ ...sightOf(table, { below, left }, { width: 1200, height: 1200, ratio: 1 }), extent }, 9)
      const { canvas } = painted({ ...table, threading: new Uint8Array(40), shafts: 16 }, view, lookOf('marks'))
      const { threading, ties } = view.bands
      for (let n = 1; n < 12; n++) {
        const line = pixelOf(colourOf(n % 5 === 0 ? tokens.strong : tokens.rule))
        const shaft = rectOf(view, { part: 'threading', end: 0, shaft: n })!
        const treadle = rectOf(view, { part: 'ties', treadle: n, shaft: 16 })!
        const end = rectOf(view, { part: 'threading', end: n, shaft: 16 })!
        assert.equal(canvas.at(threading!.x + 4, below ? shaft.y + shaft.h : shaft.y), line, `shaft ${n}`)
        assert.equal(canvas.at(left ? treadle.x : treadle.x + treadle.w, ties!.y + (below ? ties!.h - 2 : 1)), line, `treadle ${n}`)
        assert.equal(canvas.at(end.x, threading!.y + (below ? threading!.h - 2 : 1)), line, `end ${n}`)
      }
    }
  }
})

test('draft after draft in one painter is as if each were the first', () => {
  const random = seeded(24)
  const first = someTable(random, 60, 60)
  const { canvas, painter } = painted(first, viewOf(sightOf(first), 6), lookOf('marks'))
  for (let round = 0; round < 40; round++) {
    const table = someTable(random, 30 + below(random, 60), 30 + below(random, 60))
    const arrangement = { back: random() < 0.5, upwards: random() < 0.5, fromRight: random() < 0.5, left: random() < 0.5 }
    const view = viewOf(sightOf(table, arrangement, { width: 640, height: 560, ratio: 1 }, random() < 0.3), oneOf(random, [6, 9]))
    const look = lookOf(oneOf<Cells>(random, ['marks', 'colours', 'both']))
    painter.show(table, view, look)
    painter.paint()
    compare(canvas, table, view, look, 7)
  }
})

test('threading, treadling and lift plan have a filled cell for each thread, and no other', () => {
  const random = seeded(25)
  const look = lookOf('marks')
  const ink = pixelOf(colourOf(look.tokens.ink))
  let [cells, filled] = [0, 0]
  for (let round = 0; round < 30; round++) {
    const table = someTable(random, 40, 40)
    const sight = sightOf(table, { ...someArrangement(random), alone: false }, { width: 1100, height: 1000, ratio: 1 }, random() < 0.4, random() < 0.5)
    const view = viewOf(sight, oneOf(random, [8, 12, 17]))
    const { canvas } = painted(table, view, look)
    const check = (place: Parameters<typeof rectOf>[1], want: boolean): void => {
      const rect = rectOf(view, place)
      const band = view.bands[place.part]
      if (!rect || !band || rect.w < 3 || rect.h < 3 || rect.x < band.x || rect.y < band.y || rect.x + rect.w > band.x + band.w || rect.y + rect.h > band.y + band.h) return
      assert.equal(canvas.at(rect.x + rect.w - 1, rect.y + rect.h - 1) === ink || canvas.at(rect.x + (rect.w >> 1), rect.y + (rect.h >> 1)) === ink, want, JSON.stringify(place))
      cells++
      if (want) filled++
    }
    for (let end = 0; end < 40; end++) for (let shaft = 1; shaft <= table.shafts; shaft++) check({ part: 'threading', end, shaft }, table.threading[end] === shaft)
    const { lifts, across } = view.sight.extent
    const sets = lifts ? table.up : table.treadling
    for (let pick = 0; pick < 40; pick++) {
      for (let n = 1; n <= across; n++) check(lifts ? { part: 'lifts', pick, shaft: n } : { part: 'treadling', pick, treadle: n }, has(setAt(sets as Table['lifts'], pick), n))
    }
  }
  assert.ok(cells > 5000 && filled > 500, `${filled} of ${cells}`)
})

test('a tie-up has a circle for what is raised and a cross for what is lowered', () => {
  const random = seeded(26)
  for (let round = 0; round < 20; round++) {
    const table = someTable(random, 12, 12)
    if (table.treadling.lo.length === 0) continue
    const view = viewOf(sightOf(table, { below: random() < 0.5, left: random() < 0.5 }, { width: 2000, height: 2000, ratio: 1 }), 12)
    const { canvas } = painted(table, view, lookOf('marks'))
    const middle = (treadle: number, shaft: number): string => {
      const r = rectOf(view, { part: 'ties', treadle, shaft })!
      return `${r.x + r.w / 2} ${r.y + r.h / 2}`
    }
    const [up, down]: [string[], string[]] = [[], []]
    for (let treadle = 1; treadle <= table.ties.lo.length; treadle++) {
      for (let shaft = 1; shaft <= table.shafts; shaft++) {
        const sinks = table.shed === 'sinking' || table.shed === 'counterbalance'
        if (has(setAt(table.ties, treadle - 1), shaft)) (sinks ? down : up).push(middle(treadle, shaft))
        if (table.shed === 'countermarch' && has(setAt(table.lowered, treadle - 1), shaft)) down.push(middle(treadle, shaft))
      }
    }
    assert.deepEqual(canvas.circles.map(({ x, y }) => `${x} ${y}`).sort(), up.sort())
    assert.equal(canvas.strokes.length, 2 * down.length)
  }
})

test('colours of the threads stand beside them', () => {
  const random = seeded(27)
  const table = someTable(random, 30, 30)
  const view = viewOf(sightOf(table, { back: true }), 10)
  const { canvas } = painted(table, view, lookOf('marks'))
  for (let i = 0; i < 30; i++) {
    const [end, pick] = [rectOf(view, { part: 'warp-colours', end: i })!, rectOf(view, { part: 'weft-colours', pick: i })!]
    const want = (n: number | undefined): number => pixelOf(colourOf(table.palette[n ?? 0] ?? '#ffffff'))
    assert.equal(canvas.at(end.x + 5, end.y + 5), want(table.warp.colours[i]))
    if (pick.y + 10 < view.bands.drawdown.y + view.bands.drawdown.h) assert.equal(canvas.at(pick.x + 5, pick.y + 5), want(table.weft.colours[i]))
  }
})
