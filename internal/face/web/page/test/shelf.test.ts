import assert from 'node:assert/strict'
import { test } from 'node:test'
import { emptyLoom, loomSets } from '../shelf/loom_form'
import { firstBoard, nextPeg, pegOf, pegText } from '../shelf/pegs'
import { emptyForm, nameOf, saysSomething, setsOf } from '../shelf/yarn_form'

test('a peg is taken apart and written as it was, also when half typed', () => {
  for (const text of [...firstBoard, 'end 1 m, 0 cm', 'x 1,5 m, 2 m', 'x , ']) assert.equal(pegText(pegOf(text)), text)
  assert.deepEqual(pegOf('cross-1 30 cm, 0 cm'), { name: 'cross-1', right: '30 cm', down: '0 cm' })
  assert.deepEqual(pegOf('left'), { name: 'left', right: '', down: '' })
  assert.equal(pegText({ name: 'far right', right: '1 m', down: '0 cm' }), 'far-right 1 m, 0 cm')
  assert.equal(nextPeg(['a 0 cm, 0 cm', 'peg-3 0 cm, 0 cm']), 'peg-4 0 cm, 30 cm')
})

test('a form of a yarn says only what was typed', () => {
  assert.deepEqual(setsOf(emptyForm), [])
  assert.equal(saysSomething(emptyForm), false)
  const skein = { ...emptyForm, way: 'skein' as const, length: ' 10 yd', weight: '5 g', skeins: '3', relaxed: true }
  assert.deepEqual(setsOf(skein), [
    { path: 'skein.length', value: '10 yd' },
    { path: 'skein.weight', value: '5 g' },
    { path: 'skein.skeins', value: 3 },
    { path: 'skein.relaxed', value: true },
  ])
  const wraps = { ...emptyForm, way: 'wraps' as const, wraps: '40', over: '2 in', kind: 'packed', fibre: 'wool' }
  assert.deepEqual(setsOf(wraps), [
    { path: 'fibre', value: 'wool' },
    { path: 'wraps', value: '40/2 in packed' },
  ])
  assert.equal(nameOf({ ...emptyForm, text: '8/2 cotton' }, '8/2 cotton'), '8/2 cotton')
  assert.equal(nameOf(skein, 'not hers'), '')
})

test('a form of a loom says whole numbers bare, and the rest as typed', () => {
  assert.deepEqual(loomSets({ ...emptyLoom, shafts: '8', treadles: 'ten', width: '120 cm' }), [
    { path: 'shafts', value: 8 },
    { path: 'treadles', value: 'ten' },
    { path: 'width', value: '120 cm' },
  ])
})
