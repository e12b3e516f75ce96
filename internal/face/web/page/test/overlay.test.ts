import assert from 'node:assert/strict'
import { test } from 'node:test'
import { areaRect, rectOf } from '../table/hit'
import { colourOf } from '../table/light'
import { pixelOf } from '../table/look'
import { Painter } from '../table/paint'
import { panned, viewOf } from '../table/view'
import { Canvas, inkOf, makeCanvas, Ticking } from './canvas'
import { lookOf, sightOf, someTable, tokens } from './drafted'
import { seeded } from './seeded'

const table = someTable(seeded(41), 200, 200)
const view = viewOf(sightOf(table), 10)

function shown(of = view): { above: Canvas; below: Canvas; painter: Painter } {
  const [above, below] = [new Canvas(640, 560), new Canvas(640, 560)]
  const painter = new Painter(inkOf(below), new Ticking(0), () => {}, makeCanvas)
  painter.show(table, of, lookOf('marks'))
  painter.paint()
  return { above, below, painter }
}

const dotOf = (css: string): number => pixelOf(colourOf(css))

test('what is pointed out is drawn above, and the drawing stays', () => {
  const { above, below, painter } = shown()
  const before = below.dots.slice()
  const area = { part: 'drawdown', ends: [3, 8], picks: [2, 5] } as const
  painter.point(inkOf(above), { chosen: [area], cursor: { part: 'threading', end: 4, shaft: 1 } })
  assert.deepEqual(below.dots, before)
  const rect = areaRect(view, area)!
  assert.deepEqual(above.tints, [{ ...rect, css: tokens.chosen }])
  assert.equal(above.globalAlpha, 1)
  for (const [x, y] of [[rect.x, rect.y], [rect.x + rect.w - 1, rect.y + rect.h - 1]] as const) assert.equal(above.at(x, y), dotOf(tokens.chosen))
  assert.equal(above.at(rect.x + 20, rect.y + 15), 0)
  const cursor = rectOf(view, { part: 'threading', end: 4, shaft: 1 })!
  assert.equal(above.at(cursor.x - 1, cursor.y), dotOf(tokens.ink))
  assert.equal(above.at(cursor.x, cursor.y), dotOf(tokens.paper))
})

test('crossings are drawn as they will be, in a dark line and a light one, and gone when they have come', () => {
  for (const back of [false, true]) {
    const look = lookOf('marks')
    const turned = viewOf(sightOf(table, { back }), 10)
    const [above, below] = [new Canvas(640, 560), new Canvas(640, 560)]
    const painter = new Painter(inkOf(below), new Ticking(0), () => {}, makeCanvas)
    painter.show(table, turned, look)
    const end = back ? 197 : 2
    painter.point(inkOf(above), { coming: [{ cells: [[3, end]], up: true }, { cells: [[8, end], [3, 9999]], up: false }] })
    for (const [pick, up] of [[3, true], [8, false]] as const) {
      const rect = rectOf(turned, { part: 'drawdown', end, pick })!
      const top = dotOf(up !== back ? tokens.ink : tokens.paper)
      for (const [x, y] of [[0, 0], [rect.w - 1, rect.h - 1], [4, 5]] as const) assert.equal(above.at(rect.x + x, rect.y + y), top)
      assert.equal(above.at(rect.x - 1, rect.y + 4), dotOf(tokens.paper))
      assert.equal(above.at(rect.x - 2, rect.y + 4), dotOf(tokens.ink))
      assert.equal(above.at(rect.x - 3, rect.y + 4), 0)
    }
    painter.point(inkOf(above), {})
    assert.ok(above.dots.every((dot) => dot === 0))
  }
})

test('of a crossing that is asked for twice the last counts, in the colour of its thread', () => {
  const coloured = { ...table, palette: ['#112233', '#445566'], warp: { ...table.warp, colours: new Uint16Array(200) }, weft: { ...table.weft, colours: new Uint16Array(200).fill(1) } }
  const above = new Canvas(640, 560)
  const painter = new Painter(inkOf(new Canvas(640, 560)), new Ticking(0), () => {}, makeCanvas)
  painter.show(coloured, view, lookOf('colours'))
  const rect = rectOf(view, { part: 'drawdown', end: 4, pick: 4 })!
  for (const up of [true, false]) {
    painter.point(inkOf(above), { coming: [{ cells: [[4, 4]], up: !up }, { cells: [[4, 4]], up }] })
    assert.equal(above.at(rect.x + 4, rect.y + 4), dotOf(up ? '#112233' : '#445566'))
  }
})

test('each time anew, and nothing of what is out of sight', () => {
  const { above, painter } = shown()
  const area = { part: 'drawdown', ends: [150, 160] } as const
  painter.point(inkOf(above), { chosen: [{ part: 'drawdown', ends: [0, 2] }] })
  painter.point(inkOf(above), { chosen: [area], found: [area], fill: [area], cursor: { part: 'drawdown', end: 150, pick: 0 } })
  assert.ok(above.dots.every((dot) => dot === 0))
  const there = panned(view, 1200, 0)
  painter.show(table, there, lookOf('marks'))
  painter.point(inkOf(above), { found: [area] })
  const rect = areaRect(there, area)!
  assert.equal(above.at(rect.x - 4, rect.y), dotOf(tokens.found))
  assert.equal(above.at(rect.x - 2, rect.y), 0)
  assert.equal(above.at(rect.x - 1, rect.y), dotOf(tokens.found))
})

test('numbers stand in the rulers, one beside the other', () => {
  const { below } = shown()
  const { ends, picks } = view.bands
  const said = (band: { x: number; y: number; w: number; h: number } | undefined): string[] =>
    below.texts.filter(({ x, y }) => band && x >= band.x && x <= band.x + band.w && y >= band.y && y <= band.y + band.h).map(({ text }) => text)
  assert.ok(said(ends).length > 5 && said(ends).includes('1'))
  assert.ok(said(picks).length > 5 && said(picks).includes('1'))
})
