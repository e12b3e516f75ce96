import assert from 'node:assert/strict'
import { test } from 'node:test'
import { onTop, tableOf, type Table, type TableSaid } from '../table/cloth'
import { nearest, placeAt, rectOf, type Place } from '../table/hit'
import { numbersOf, setAt } from '../table/sets'
import { spliced } from '../table/splice'
import { actsOf, begun, cellsBetween, crossingsOf, drawnTo, slope, splicesOf, type Act, type Stroke, type Way } from '../table/strokes'
import { viewOf } from '../table/view'
import { sightOf, someTable } from './drafted'
import { below, oneOf, seeded } from './seeded'

const said: TableSaid = {
  ...{ version: 1, kind: 'draft', name: 'Twill', frozen: false, shafts: 4, treadles: 4, shed: 'rising' },
  threading: [1, 2, 3, 4, 1, 2, 3, 4],
  ties: ['3', '6', 'c', '9'],
  treadling: ['1', '2', '4', '8', '3'],
  lifts: [],
  palette: ['#ffffff', '#25407c'],
  warpColours: [0, 0, 0, 0, 0, 0, 0, 0],
  weftColours: [0, 0, 0, 0, 0],
}

const twill = tableOf(said) as Table

const strokeOver = (places: Place[], way: Way = 'line', colour = 0): Stroke => places.slice(1).reduce((stroke, place) => drawnTo(stroke, place), begun(places[0] as Place, way, colour))
const acts = (places: Place[], way: Way = 'line', table = twill, colour = 0): Act[] => actsOf(table, strokeOver(places, way, colour))

const threadingAt = (end: number, shaft: number): Place => ({ part: 'threading', end, shaft })
const treadlingAt = (pick: number, treadle: number): Place => ({ part: 'treadling', pick, treadle })
const tieAt = (treadle: number, shaft: number): Place => ({ part: 'ties', treadle, shaft })
const crossingAt = (pick: number, end: number): Place => ({ part: 'drawdown', pick, end })

test('a line over the threading gives each end one shaft, in one splice', () => {
  assert.deepEqual(acts([threadingAt(0, 4), threadingAt(3, 1), threadingAt(6, 4)]), [{ do: 'put', part: 'threading', at: 0, remove: 7, put: [4, 3, 2, 1, 2, 3, 4] }])
  assert.deepEqual(acts([threadingAt(6, 1), threadingAt(4, 1)]), [{ do: 'put', part: 'threading', at: 5, remove: 2, put: [1, 1] }])
  assert.deepEqual(acts([threadingAt(2, 4), threadingAt(2, 1), threadingAt(2, 2)]), [{ do: 'put', part: 'threading', at: 2, remove: 1, put: [2] }])
})

test('a cell that is set and touched alone is taken away; a line goes on from it', () => {
  assert.deepEqual(acts([threadingAt(3, 4)]), [{ do: 'put', part: 'threading', at: 3, remove: 1, put: [0] }])
  assert.deepEqual(acts([threadingAt(3, 4), threadingAt(5, 2)]), [{ do: 'put', part: 'threading', at: 4, remove: 1, put: [3] }])
  assert.deepEqual(acts([threadingAt(3, 2)]), [{ do: 'put', part: 'threading', at: 3, remove: 1, put: [2] }])
  assert.deepEqual(acts([treadlingAt(1, 2)]), [{ do: 'put', part: 'treadling', at: 1, remove: 1, put: ['0'] }])
  assert.deepEqual(acts([threadingAt(0, 1), threadingAt(3, 4)]), [])
})

test('a line over the treadling presses one treadle at each pick, toggling adds and takes away', () => {
  assert.deepEqual(acts([treadlingAt(0, 4), treadlingAt(3, 1)]), [{ do: 'put', part: 'treadling', at: 0, remove: 4, put: ['8', '4', '2', '1'] }])
  assert.deepEqual(acts([treadlingAt(0, 4), treadlingAt(2, 4)], 'toggle'), [{ do: 'put', part: 'treadling', at: 0, remove: 3, put: ['9', 'a', 'c'] }])
  assert.deepEqual(acts([treadlingAt(4, 1), treadlingAt(4, 2)], 'toggle'), [{ do: 'put', part: 'treadling', at: 4, remove: 1, put: ['0'] }])
})

test('ties become the opposite of the first', () => {
  assert.deepEqual(acts([tieAt(1, 3), tieAt(3, 3)]), [{ do: 'put', part: 'ties', at: 0, remove: 1, put: ['7'] }])
  assert.deepEqual(acts([tieAt(1, 1), tieAt(1, 4)]), [{ do: 'put', part: 'ties', at: 0, remove: 1, put: ['0'] }])
})

test('on a countermarch a tie goes from free to raised, to lowered, to free', () => {
  let table = tableOf({ ...said, shed: 'countermarch', ties: ['0', '0', '0', '0'] }) as Table
  const seen: string[] = []
  for (let i = 0; i < 3; i++) {
    table = spliced(table, { splices: splicesOf(acts([tieAt(2, 3)], 'line', table)) })
    seen.push(`${numbersOf(setAt(table.ties, 1)).join()}/${numbersOf(setAt(table.lowered, 1)).join()}`)
  }
  assert.deepEqual(seen, ['3/', '/3', '/'])
  const both = tableOf({ ...said, shed: 'countermarch', ties: ['1', '0', '0', '0'], lowered: ['6', '7', '0', '0'] }) as Table
  assert.deepEqual(acts([tieAt(1, 1), tieAt(2, 1)], 'line', both), [
    { do: 'put', part: 'ties', at: 0, remove: 1, put: ['0'] },
    { do: 'put', part: 'lowered', at: 0, remove: 1, put: ['7'] },
  ])
})

test('crossings become the opposite of the first, each once, and only those that are not so already', () => {
  assert.ok(onTop(twill, 0, 0) && onTop(twill, 0, 1) && !onTop(twill, 0, 2))
  assert.deepEqual(acts([crossingAt(0, 0), crossingAt(0, 3), crossingAt(0, 0)]), [{ do: 'cells', cells: [[0, 0], [0, 1]], up: false }])
  assert.deepEqual(acts([crossingAt(0, 2), crossingAt(0, 2)]), [{ do: 'cells', cells: [[0, 2]], up: true }])
})

test('colours are set to the one that is held', () => {
  assert.deepEqual(acts([{ part: 'warp-colours', end: 6 }, { part: 'warp-colours', end: 4 }], 'line', twill, 1), [{ do: 'put', part: 'warp-colours', at: 4, remove: 3, put: [1, 1, 1] }])
  assert.deepEqual(acts([{ part: 'weft-colours', pick: 2 }], 'line', twill, 1), [{ do: 'put', part: 'weft-colours', at: 2, remove: 1, put: [1] }])
  assert.deepEqual(acts([{ part: 'weft-colours', pick: 2 }], 'line', twill, 0), [])
})

test('lifts are toggled', () => {
  const plan = tableOf({ ...said, treadles: 0, ties: [], treadling: [], lifts: ['3', '6', 'c', '9', '1'] }) as Table
  assert.deepEqual(acts([{ part: 'lifts', pick: 0, shaft: 3 }, { part: 'lifts', pick: 2, shaft: 3 }], 'line', plan), [{ do: 'put', part: 'lifts', at: 0, remove: 1, put: ['7'] }])
})

test('rulers and other parts give no acts, and no stroke leaves its part', () => {
  assert.deepEqual(acts([{ part: 'ends', end: 2 }, { part: 'ends', end: 4 }]), [])
  const stroke = begun(threadingAt(1, 1), 'line')
  assert.equal(drawnTo(stroke, treadlingAt(1, 1)), stroke)
  assert.equal(drawnTo(stroke, threadingAt(1, 1)), stroke)
})

test('no cell between two is skipped, and a line passes each thread once', () => {
  const random = seeded(51)
  for (let round = 0; round < 300; round++) {
    const [from, to] = [crossingAt(below(random, 60), below(random, 60)), crossingAt(below(random, 60), below(random, 60))]
    let last = from
    for (const place of cellsBetween(from, to)) {
      const [dp, de] = [Math.abs(place.pick! - last.pick!), Math.abs(place.end! - last.end!)]
      assert.ok(dp <= 1 && de <= 1 && dp + de > 0)
      const across = (place.pick! - from.pick!) * (to.end! - from.end!) - (place.end! - from.end!) * (to.pick! - from.pick!)
      assert.ok(Math.abs(across) <= Math.max(Math.abs(to.end! - from.end!), Math.abs(to.pick! - from.pick!)) / 2 + 1e-9, 'off the line')
      last = place
    }
    assert.deepEqual(last, from.pick === to.pick && from.end === to.end ? from : to)
    const [a, b] = [threadingAt(below(random, 60), 1 + below(random, 8)), threadingAt(below(random, 60), 1 + below(random, 8))]
    const line = slope(a, b)
    if (a.end !== b.end) assert.deepEqual(line.map((p) => Math.abs(p.end! - a.end!)), Array.from({ length: Math.abs(b.end! - a.end!) }, (_, k) => k + 1))
    if (line.length > 0) assert.deepEqual(line.at(-1), b)
  }
})

// thread by thread, as one would draw by hand.
function byHand(table: Table, stroke: Stroke): number[] {
  const out = [...table.threading]
  const [first] = stroke.places
  const off = out[first!.end!] === first!.shaft && stroke.way === 'toggle'
  for (const { end, shaft } of stroke.places) {
    if (!off) out[end!] = shaft!
    else if (out[end!] === shaft) out[end!] = 0
  }
  return out
}

test('what a stroke of the pointer makes is what was drawn, from all sides', () => {
  const random = seeded(52)
  for (let round = 0; round < 200; round++) {
    const table = someTable(random, 40, 30)
    const view = viewOf(sightOf(table, { below: random() < 0.5, left: random() < 0.5, back: random() < 0.5 }), oneOf(random, [8, 13]))
    const at = rectOf(view, threadingAt(view.sight.arrangement.back ? 39 : 0, 1))!
    let stroke = begun(placeAt(view, at.x + 1, at.y + 1)!, oneOf(random, ['line', 'toggle']))
    for (let k = 0; k < 2 + below(random, 5); k++) stroke = drawnTo(stroke, nearest(view, 'threading', random() * 640, random() * 560)!)
    if (stroke.places.length < 2) continue
    const now = spliced(table, { splices: splicesOf(actsOf(table, stroke)) })
    assert.deepEqual([...now.threading], byHand(table, stroke), JSON.stringify(stroke))
    assert.deepEqual([...now.warp.colours], [...table.warp.colours])
  }
})

test('a crossing that is awaited counts as what it becomes', () => {
  const [pick, end] = [1, 2]
  const up = !onTop(twill, pick, end)
  const first = actsOf(twill, strokeOver([crossingAt(pick, end)]))
  assert.deepEqual(first, [{ do: 'cells', cells: [[pick, end]], up }])
  const again = strokeOver([crossingAt(pick, end)])
  assert.deepEqual(actsOf(twill, again, crossingsOf(first)), [{ do: 'cells', cells: [[pick, end]], up: !up }])
  assert.deepEqual(crossingsOf([{ do: 'put' }, ...first]), [{ cells: [[pick, end]], up }])
})
