import assert from 'node:assert/strict'
import { test } from 'node:test'
import * as past from '../past'

test('undo goes back in order, redo forward again', () => {
  let p = past.changed(past.changed(past.changed(past.noPast, 1, 2), 3, 5), 1, 3)
  assert.equal(past.lastDone(p), 1)
  p = past.undone(p, 4)
  assert.deepEqual([past.lastDone(p), past.lastUndone(p), p.at[1]], [3, 1, 4])
  p = past.undone(past.undone(p, 6), 7)
  assert.deepEqual([past.lastDone(p), p.undone], [undefined, [1, 3, 1]])
  p = past.redone(p, 8)
  assert.deepEqual([p.done, p.undone, p.at[1]], [[1], [1, 3], 8])
})

test('a new change ends what could be redone', () => {
  const p = past.changed(past.undone(past.changed(past.noPast, 1, 2), 3), 2, 9)
  assert.equal(past.lastUndone(p), undefined)
})

test('with nothing done there is nothing to step', () => {
  assert.equal(past.undone(past.noPast, 1), past.noPast)
  assert.equal(past.redone(past.noPast, 1), past.noPast)
})

test('a document that is gone is forgotten, and the past has an end', () => {
  let p = past.changed(past.changed(past.noPast, 1, 2), 3, 5)
  p = past.without(p, 1)
  assert.deepEqual([p.done, p.at], [[3], { 3: 5 }])
  for (let i = 0; i < 12_000; i++) p = past.changed(p, i, 1)
  assert.equal(p.done.length, 10_000)
  assert.equal(past.lastDone(p), 11_999)
})
