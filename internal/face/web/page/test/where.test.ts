import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Kind, Move, Step, Weaving } from '../loomside/kinds'
import { backward, endedAt, ledTo, motifAt, onward, partAt, stretchAt, tapeAt, whereIs } from '../loomside/where'

const step = (from: number, place: number): Move => ({ step: 'weaving', from, place })
const set = (place: number): Move => ({ step: 'weaving', from: 0, place, set: true })

// The same cases as the book's own rule has (internal/trade/record).
test('where work comes to by what is said of it', () => {
  const cases: [string, Move[], number][] = [
    ['nothing said', [], 0],
    ['one after another', [step(0, 1), step(1, 2)], 2],
    ['two devices press for one pick', [step(0, 1), step(0, 1)], 1],
    ['said late, others are further', [step(0, 1), set(10), step(1, 2)], 10],
    ['unwoven', [set(10), step(10, 9), step(9, 8)], 8],
    ['unwoven late', [set(10), step(10, 11), step(10, 9)], 11],
    ['onward from what was unwoven', [set(10), step(10, 8), step(10, 11)], 8],
    ['jumped back', [set(10), set(3)], 3],
  ]
  for (const [name, moves, want] of cases) assert.equal(moves.reduce(ledTo, 0), want, name)
})

const winding: Step = {
  id: 'winding', says: '', lead: '', unit: '', total: 24, done: 0, each: false, per: 2,
  parts: [
    { from: 0, to: 14, title: 'bout 1', stops: [{ at: 5, says: 'change' }, { at: 10, says: 'tie' }] },
    { from: 14, to: 24, title: 'bout 2' },
  ],
}

const things: Step = { ...winding, id: 'beaming', total: 3, per: 0, parts: [0, 1, 2].map((n) => ({ from: n, to: n + 1, title: String(n) })) }

test('a stroke goes no further than what is to be done on the way', () => {
  const places = [0]
  for (let at = 0; at < 24; ) places.push((at = onward(winding, at)))
  assert.equal(places.join(' '), '0 2 4 5 7 9 10 12 14 16 18 20 22 24')
  assert.equal(onward(winding, 24), 24)
  assert.equal(onward(things, 1), 2)
})

test('a stroke back undoes one onward at most', () => {
  assert.equal(backward(winding, 14), 12)
  assert.equal(backward(winding, 15), 14)
  assert.equal(backward(winding, 0), 0)
  assert.equal(backward(things, 2), 1)
})

test('the part under the hands, and the one just ended', () => {
  assert.equal(partAt(winding, 13)?.title, 'bout 1')
  assert.equal(partAt(winding, 14)?.title, 'bout 2')
  assert.equal(partAt(winding, 24)?.title, 'bout 2')
  assert.equal(endedAt(winding, 14)?.title, 'bout 1')
  assert.equal(endedAt(winding, 13), undefined)
  assert.equal(endedAt(winding, 0), undefined)
})

const kind: Kind = {
  picks: 10, presses: [], weft: Array<number>(10).fill(0), from_right: [],
  stretches: [{ from: 0, to: 3, says: 'hem' }, { from: 3, to: 10, says: 'body' }],
  motif: { before: 1, picks: 4, times: 2 },
  tape: [{ picks: 0, says: '0 in' }, { picks: 4, says: '1/4 in' }, { picks: 9, says: '1/2 in' }],
}

const weaving: Weaving = {
  treadled: true, treadles: 4, shafts: 4, total: 20, reads: '', presses: [], yarns: [], kinds: [kind],
  pieces: [0, 10].map((before, i) => ({ kind: 0, says: `towel ${i + 1}`, before, first: [], last: [] })),
}

test('each piece begins anew', () => {
  for (const [woven, number, inside] of [[0, 0, 0], [9, 0, 9], [10, 1, 0], [19, 1, 9], [20, 1, 10]] as const) {
    const at = whereIs(weaving, woven)
    assert.equal(at?.number, number, `after ${woven}`)
    assert.equal(at?.in, inside, `after ${woven}`)
  }
})

test('the stretch, the motif and the tape of a pick', () => {
  assert.equal(stretchAt(kind, 2), 'hem')
  assert.equal(stretchAt(kind, 3), 'body')
  assert.equal(motifAt(kind, 0), undefined)
  assert.equal(motifAt(kind, 1)?.motif, 1)
  assert.equal(motifAt(kind, 8)?.motif, 2)
  assert.equal(motifAt(kind, 8)?.pick, 4)
  assert.equal(motifAt(kind, 9), undefined)
  assert.equal(tapeAt(kind, 3), '0 in')
  assert.equal(tapeAt(kind, 4), '1/4 in')
  assert.equal(tapeAt(kind, 10), '1/2 in')
})
