import assert from 'node:assert/strict'
import { test } from 'node:test'
import { scaled } from '../table/axis'
import { asPrinted, meets, type Arrangement, type Extent, type Region } from '../table/bands'
import { areaRect, beside, nearest, placeAt, rectOf, type Place } from '../table/hit'
import { broughtTo, endLabels, pickLabels, shaftLabels, shownIn, treadleLabels } from '../table/rulers'
import { beginning, endNumber, endNumbered, fitting, jumpedTo, larger, leastCell, mostCell, panned, resighted, seen, smaller, viewOf, zoomedAt, type Sight, type View } from '../table/view'
import { below, oneOf, seeded } from './seeded'

const extent: Extent = { ends: 300, picks: 200, shafts: 8, across: 10, lifts: false }
const room = { width: 900, height: 700, ratio: 1 }
const sightOf = (arrangement: Partial<Arrangement> = {}, more: Partial<Sight> = {}): Sight => ({ arrangement: { ...asPrinted, ...arrangement }, extent, room, sized: null, ...more })

// arrangements are all ways to lay out a draft.
const arrangements: Arrangement[] = Array.from({ length: 128 }, (_, i) => {
  const bit = (k: number): boolean => ((i >> k) & 1) === 1
  return { below: bit(0), left: bit(1), upwards: bit(2), fromRight: bit(3), back: bit(4), alone: bit(5), bars: bit(6) }
})

function someView(random: () => number, arrangement: Arrangement): View {
  const [shafts, lifts] = [1 + below(random, 64), random() < 0.3]
  const extent = { ends: 1 + below(random, 400), picks: 1 + below(random, 300), shafts, across: lifts ? shafts : below(random, 65), lifts }
  const room = { width: 300 + below(random, 1500), height: 300 + below(random, 900), ratio: oneOf(random, [1, 1.25, 1.5, 2, 3]) }
  const sizes = (n: number): { thick: Float64Array; apart: null } => ({ thick: Float64Array.from({ length: n }, () => below(random, 4) * 250_000), apart: null })
  const sized = random() < 0.3 ? scaled(sizes(extent.ends), extent.ends, sizes(extent.picks), extent.picks) : null
  return viewOf({ arrangement, extent, room, sized }, leastCell + random() * (mostCell - leastCell), random() * 4000, random() * 4000)
}

test('a point gives a cell, and the cell a rectangle that holds the point', () => {
  const random = seeded(7)
  const found = new Set<Region>()
  for (const arrangement of arrangements) {
    for (let round = 0; round < 4; round++) {
      const view = someView(random, arrangement)
      const { ratio, width, height } = view.sight.room
      for (let k = 0; k < 120; k++) {
        const [x, y] = [(random() * width) / ratio, (random() * height) / ratio]
        const place = placeAt(view, x, y)
        if (!place) continue
        found.add(place.part)
        const rect = rectOf(view, place)!
        const [u, v] = [Math.floor(x * ratio), Math.floor(y * ratio)]
        assert.ok(u >= rect.x && u < rect.x + rect.w && v >= rect.y && v < rect.y + rect.h, JSON.stringify([arrangement, place, rect, u, v]))
        assert.deepEqual(placeAt(view, (Math.max(rect.x, view.bands[place.part]!.x) + 0.5) / ratio, (Math.max(rect.y, view.bands[place.part]!.y) + 0.5) / ratio), place)
        within(view, place)
      }
    }
  }
  assert.equal(found.size, 11)
})

function within({ sight: { extent } }: View, { end = 0, pick = 0, shaft = 1, treadle = 1 }: Place): void {
  assert.ok(end >= 0 && end < extent.ends && pick >= 0 && pick < extent.picks)
  assert.ok(shaft >= 1 && shaft <= extent.shafts && treadle >= 1 && treadle <= Math.max(extent.across, 1))
}

test('no two parts overlap, and none is outside the room', () => {
  const random = seeded(8)
  for (const arrangement of arrangements) {
    const { bands, sight } = someView(random, arrangement)
    const all = Object.entries(bands).filter(([, band]) => typeof band === 'object') as [Region, { x: number; y: number; w: number; h: number }][]
    for (const [i, [name, a]] of all.entries()) {
      if (bands.drawdown.w > 0 && bands.drawdown.h > 0) assert.ok(a.x >= 0 && a.y >= 0 && a.x + a.w <= sight.room.width && a.y + a.h <= sight.room.height, name)
      for (const [other, b] of all.slice(i + 1)) assert.equal(meets(a, b), null, `${name} ${other}`)
    }
  }
})

test('the parts stand as handbooks print them', () => {
  const at = (a: Partial<Arrangement>): View['bands'] => viewOf(sightOf(a), 12).bands
  const printed = at({})
  assert.ok(printed.ends!.y < printed['warp-colours']!.y && printed['warp-colours']!.y < printed.threading!.y && printed.threading!.y < printed.drawdown.y)
  assert.ok(printed.shafts!.x < printed.drawdown.x && printed.drawdown.x < printed.treadling!.x && printed.treadling!.x < printed['weft-colours']!.x && printed['weft-colours']!.x < printed.picks!.x)
  assert.deepEqual([printed.ties!.x, printed.ties!.y], [printed.treadling!.x, printed.threading!.y])
  const other = at({ below: true, left: true })
  assert.ok(other.threading!.y > other.drawdown.y && other.ends!.y > other.threading!.y)
  assert.ok(other.treadling!.x < other.drawdown.x && other.picks!.x < other.treadling!.x)
  const alone = at({ alone: true })
  assert.deepEqual([alone.threading, alone.treadling, alone.ties, alone['warp-colours']], [undefined, undefined, undefined, undefined])
  const lifts = viewOf(sightOf({}, { extent: { ...extent, lifts: true, across: 8 } }), 12).bands
  assert.ok(lifts.lifts && !lifts.treadling && !lifts.ties)
  assert.equal(lifts.treadles!.y + lifts.treadles!.h, lifts.threading!.y + lifts.threading!.h)
})

test('shaft 1 and treadle 1 are nearest the cloth, ends and picks as they lie', () => {
  for (const [a, corner] of [
    [{}, ['right', 'top']],
    [{ below: true }, ['right', 'bottom']],
    [{ left: true }, ['left', 'top']],
    [{ below: true, left: true }, ['left', 'bottom']],
  ] as const) {
    const view = viewOf(sightOf(a), 12)
    const tie = rectOf(view, { part: 'ties', treadle: 1, shaft: 1 })!
    const { drawdown } = view.bands
    assert.equal(corner[0] === 'right' ? tie.x - (drawdown.x + drawdown.w) : drawdown.x - (tie.x + tie.w), 8)
    assert.equal(corner[1] === 'top' ? drawdown.y - (tie.y + tie.h) : tie.y - (drawdown.y + drawdown.h), 8)
  }
  const first = (a: Partial<Arrangement>, left = 0, top = 0): Place => {
    const { bands } = viewOf(sightOf(a), 12, left, top)
    return placeAt(viewOf(sightOf(a), 12, left, top), bands.drawdown.x, bands.drawdown.y)!
  }
  assert.deepEqual(first({}), { part: 'drawdown', end: 0, pick: 0 })
  assert.deepEqual(first({ left: true, below: true, fromRight: true }), { part: 'drawdown', end: 0, pick: 0 })
  assert.deepEqual(first({ upwards: true }), { part: 'drawdown', end: 0, pick: 199 })
  assert.deepEqual(first({ back: true }), { part: 'drawdown', end: 299, pick: 0 })
})

test('ends are numbered from either side, and found by their number', () => {
  assert.equal(endNumber(sightOf({}), 0), 1)
  assert.equal(endNumber(sightOf({ fromRight: true }), 0), 300)
  for (const fromRight of [false, true]) for (const end of [0, 17, 299]) assert.equal(endNumbered(sightOf({ fromRight }), endNumber(sightOf({ fromRight }), end)), end)
})

test('what is under the pointer stays there when cells grow and shrink', () => {
  const random = seeded(9)
  for (let round = 0; round < 400; round++) {
    const view = viewOf(sightOf(oneOf(random, arrangements)), 4 + below(random, 20), random() * 3000, random() * 3000)
    const { drawdown } = view.bands
    const [x, y] = [drawdown.x + random() * drawdown.w, drawdown.y + random() * drawdown.h]
    const next = zoomedAt(view, oneOf(random, [larger, smaller])(view.cell), x, y)
    const free = (off: number, long: number, n: number): boolean => off > 0 && off < n * next.cell - long
    const [was, now] = [placeAt(view, x, y)!, placeAt(next, x, y)]
    if (!now || now.part !== 'drawdown') continue
    if (free(next.left, next.bands.drawdown.w, 300)) assert.ok(Math.abs(now.end! - was.end!) <= 1, JSON.stringify([view.cell, next.cell, was, now]))
    if (free(next.top, next.bands.drawdown.h, 200)) assert.ok(Math.abs(now.pick! - was.pick!) <= 1, JSON.stringify([view.cell, next.cell, was, now]))
  }
})

test('cells keep within their limits, the sight over the cloth', () => {
  const view = viewOf(sightOf(), 20)
  assert.equal(zoomedAt(view, 1000, 0, 0).cell, mostCell)
  assert.equal(zoomedAt(view, 0.1, 0, 0).cell, leastCell)
  assert.deepEqual([panned(view, -50, -50).left, panned(view, -50, -50).top], [0, 0])
  const far = panned(view, 1e6, 1e6)
  assert.deepEqual(seen(far).c1, 300)
  assert.deepEqual(seen(far).r1, 200)
  assert.equal(far.left + far.bands.drawdown.w, 300 * 20)
  let cell: number = leastCell
  for (let i = 0; i < 40; i++) cell = larger(cell)
  assert.equal(cell, mostCell)
  for (let i = 0; i < 40; i++) cell = smaller(cell)
  assert.equal(cell, leastCell)
})

test('a number that is asked for is brought in sight, and what is in sight does not move', () => {
  const view = viewOf(sightOf(), 12)
  const there = jumpedTo(view, { end: 250, pick: 150 })
  const rect = rectOf(there, { part: 'drawdown', end: 250, pick: 150 })!
  assert.deepEqual(meets(rect, there.bands.drawdown), rect)
  assert.equal(jumpedTo(there, { end: 251 }).left, there.left)
  assert.equal(jumpedTo(there, { end: 0 }).top, there.top)
  assert.equal(jumpedTo(there, { end: 0 }).left, 0)
})

test('all of a cloth can be brought in sight', () => {
  for (const more of [{}, { extent: { ...extent, ends: 4000, picks: 2000 } }, { extent: { ...extent, ends: 3, picks: 2 } }]) {
    const view = fitting(sightOf({}, more))
    const { c0, c1, r0, r1 } = seen(view)
    assert.deepEqual([c0, c1, r0, r1], [0, view.sight.extent.ends, 0, view.sight.extent.picks])
  }
  assert.equal(fitting(sightOf({}, { extent: { ...extent, ends: 3, picks: 2 } })).cell, mostCell)
})

test('what was in sight stays when the draft grows or is turned', () => {
  const up = viewOf(sightOf({ upwards: true }), 12, 600, 900)
  const first = placeAt(up, 300, 400)
  assert.deepEqual(placeAt(resighted(up, sightOf({ upwards: true }, { extent: { ...extent, picks: 230 } })), 300, 400), first)
  const { r0, r1 } = seen(up)
  const turned = seen(resighted(up, sightOf({})))
  assert.ok(Math.abs((turned.r0 + turned.r1) / 2 - (199 - (r0 + r1) / 2)) <= 2)
})

test('numbers stand at both ends and at every fifth, as far as they have room', () => {
  const view = viewOf(sightOf(), 20)
  assert.deepEqual(endLabels(view, 30).slice(0, 4).map((l) => l.number), [1, 5, 10, 15])
  assert.deepEqual(endLabels(viewOf(sightOf(), 4), 30).slice(0, 3).map((l) => l.number), [1, 20, 30])
  assert.deepEqual(endLabels(view, 30, [7, 8]).map((l) => l.number).filter((n) => n < 12), [1, 5, 8, 10])
  assert.deepEqual(pickLabels(viewOf(sightOf({ upwards: true }), 20), 20).slice(0, 2).map((l) => l.number), [200, 195])
  assert.deepEqual(shaftLabels(view, 14).map((l) => l.number).sort((a, b) => a - b), [1, 2, 3, 4, 5, 6, 7, 8])
  assert.deepEqual(treadleLabels(view, 30).map((l) => l.number), [1, 5, 10])
  const random = seeded(10)
  for (const arrangement of arrangements) {
    const labels = endLabels(someView(random, arrangement), 40, [3, 4, 11])
    for (const [i, label] of labels.slice(1).entries()) assert.ok(label.at - labels[i]!.at >= 40)
  }
})

test('an overview shows what is in sight, and leads there', () => {
  const view = viewOf(sightOf(), 12, 1200, 600)
  const shown = shownIn(view)
  assert.equal(shown.x, 1200 / 3600)
  assert.equal(shown.h, view.bands.drawdown.h / 2400)
  const there = broughtTo(viewOf(sightOf(), 12), shown.x + shown.w / 2, shown.y + shown.h / 2)
  assert.deepEqual([there.left, there.top], [1200, 600])
})

test('an area is drawn as far as it is in sight', () => {
  const view = viewOf(sightOf(), 10)
  const { threading, drawdown } = view.bands
  assert.deepEqual(areaRect(view, { part: 'threading', ends: [2, 5] }), { ...threading!, x: threading!.x + 20, w: 30 })
  assert.deepEqual(areaRect(view, { part: 'drawdown', ends: [0, 300], picks: [1, 3] }), { ...drawdown, y: drawdown.y + 10, h: 20 })
  assert.equal(areaRect(view, { part: 'drawdown', ends: [290, 295] }), null)
  assert.equal(areaRect(view, { part: 'drawdown', ends: [3, 3] }), null)
})

test('a stroke that leaves its part goes on along its edge', () => {
  const view = viewOf(sightOf(), 10)
  assert.deepEqual(nearest(view, 'drawdown', -100, 1e5), { part: 'drawdown', end: 0, pick: seen(view).r1 - 1 })
  assert.deepEqual(nearest(view, 'threading', view.bands.drawdown.x, 690), { part: 'threading', end: 0, shaft: 1 })
  assert.equal(nearest(view, 'lifts', 0, 0), null)
})

test('a draft opens at its first end and its first pick', () => {
  for (const arrangement of arrangements) {
    const view = beginning(sightOf(arrangement), 20)
    const place = { part: 'drawdown', end: endNumbered(view.sight, 1), pick: 0 } as const
    const rect = rectOf(view, place)!
    assert.deepEqual(meets(rect, view.bands.drawdown), rect)
  }
})

test('arrows lead to the next cell as it is drawn, and no further than the part', () => {
  const random = seeded(12)
  for (const arrangement of arrangements) {
    const view = viewOf(sightOf(arrangement), 9, random() * 2000, random() * 900)
    for (let k = 0; k < 60; k++) {
      const place = placeAt(view, random() * 900, random() * 700)
      if (!place) continue
      const at = rectOf(view, place)!
      for (const [right, down] of [[1, 0], [-1, 0], [0, 1], [0, -1]] as const) {
        const next = beside(view, place, right, down)
        const there = rectOf(view, next)!
        within(view, next)
        const [dx, dy] = [there.x - at.x, there.y - at.y]
        assert.ok((dx === 0 && dy === 0) || (Math.sign(dx) === right && Math.sign(dy) === down && Math.abs(dx) <= at.w && Math.abs(dy) <= at.h))
        const [u, v] = [at.x + at.w / 2 + right * at.w, at.y + at.h / 2 + down * at.h]
        if (placeAt(view, u, v)?.part === place.part) assert.deepEqual(next, placeAt(view, u, v))
      }
    }
  }
})
