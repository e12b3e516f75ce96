import assert from 'node:assert/strict'
import { test } from 'node:test'
import { tableOf, type Table, type TableSaid } from '../table/cloth'
import { setAt, setText } from '../table/sets'
import { spliced } from '../table/splice'
import { below, seeded } from './seeded'

const said: TableSaid = {
  ...{ version: 3, kind: 'draft', name: 'Twill', frozen: false, shafts: 4, treadles: 4, shed: 'rising' },
  threading: [1, 2, 3, 4, 1, 2],
  ties: ['3', '6', 'c', '9'],
  treadling: ['1', '2', '4', '8'],
  lifts: [],
  palette: ['#ffffff', '#25407c', '#9b2c24'],
  warpColours: [0, 0, 1, 1, 2, 2],
  weftColours: [0, 1, 2, 0],
  warpThick: [10, 20, 30, 40, 50, 60],
}

const twill = tableOf(said) as Table
const texts = (sets: Table['up']): string[] => Array.from(sets.lo, (_, i) => setText(setAt(sets, i)))

test('a splice of the same length leaves colours and sizes', () => {
  const now = spliced(twill, { version: 4, splices: { threading: { at: 1, remove: 2, put: [4, 0] } } })
  assert.deepEqual([...now.threading], [1, 4, 0, 4, 1, 2])
  assert.deepEqual([...now.warp.colours], said.warpColours)
  assert.equal(now.warp.thick, twill.warp.thick)
  assert.equal(now.version, 4)
  assert.deepEqual([...twill.threading], said.threading)
})

test('colours and sizes go with their ends', () => {
  const gone = spliced(twill, { splices: { threading: { at: 1, remove: 3, put: [] } } })
  assert.deepEqual([...gone.warp.colours], [0, 2, 2])
  assert.deepEqual([...gone.warp.thick!], [10, 50, 60])
  const come = spliced(twill, { splices: { threading: { at: 3, remove: 1, put: [4, 3, 2] } } })
  assert.deepEqual([...come.threading], [1, 2, 3, 4, 3, 2, 1, 2])
  assert.deepEqual([...come.warp.colours], [0, 0, 1, 1, 1, 1, 2, 2])
  assert.deepEqual([...come.warp.thick!], [10, 20, 30, 40, 0, 0, 50, 60])
  assert.deepEqual([...spliced(twill, { splices: { threading: { at: 0, remove: 0, put: [1] } } }).warp.colours], [0, 0, 0, 1, 1, 2, 2])
})

test('colours that the answer says itself are those, and not moved twice', () => {
  const now = spliced(twill, { splices: { threading: { at: 6, remove: 0, put: [3, 4] }, 'warp-colours': { at: 6, remove: 0, put: [1, 2] } } })
  assert.deepEqual([...now.warp.colours], [0, 0, 1, 1, 2, 2, 1, 2])
  const recoloured = spliced(twill, { splices: { threading: { at: 0, remove: 2, put: [] }, 'warp-colours': { at: 0, remove: 1, put: [2] } } })
  assert.deepEqual([...recoloured.warp.colours], [2, 1, 2, 2])
})

test('picks, ties, sheds and palettes change, and the lifts with them', () => {
  const now = spliced(twill, { splices: { treadling: { at: 4, remove: 0, put: ['5'] }, ties: { at: 0, remove: 1, put: ['1'] }, palette: { at: 1, remove: 1, put: ['#000000'] } } })
  assert.deepEqual(texts(now.up), ['1', '6', 'c', '9', 'd'])
  assert.deepEqual([...now.weft.colours], [0, 1, 2, 0, 0])
  assert.deepEqual(now.palette, ['#ffffff', '#000000', '#9b2c24'])
  assert.deepEqual(texts(spliced(twill, { splices: {}, shed: 'sinking' }).up), ['c', '9', '3', '6'])
})

test('a lift plan in the place of treadles leaves the colours of the picks', () => {
  const now = spliced(twill, { splices: { treadling: { at: 0, remove: 4, put: [] }, ties: { at: 0, remove: 4, put: [] }, lifts: { at: 0, remove: 0, put: ['3', '6', 'c', '9'] } }, treadles: 0 })
  assert.deepEqual(texts(now.up), texts(twill.up))
  assert.deepEqual([...now.weft.colours], said.weftColours)
  assert.equal(now.treadles, 0)
})

test('splices are those of the language', () => {
  const random = seeded(3)
  let table = twill
  for (let round = 0; round < 200; round++) {
    const n = table.threading.length
    const at = below(random, n + 1)
    const splice = { at, remove: below(random, n - at + 1), put: Array.from({ length: below(random, 9) }, () => below(random, 5)) }
    const want = [...table.threading]
    want.splice(splice.at, splice.remove, ...splice.put)
    table = spliced(table, { splices: { threading: splice } })
    assert.deepEqual([...table.threading], want)
    assert.equal(table.warp.colours.length, want.length)
    assert.equal(table.warp.thick?.length, want.length)
  }
})
