import assert from 'node:assert/strict'
import { test } from 'node:test'
import { shared } from '../same'

test('what is as it was is the very same', () => {
  const old = { lines: [{ id: 'a', value: '1' }, { id: 'b', value: '2' }], none: null, deep: { list: [1, 2, 3] } }
  const copy = structuredClone(old)
  assert.equal(shared(old, copy), old)
})

test('only the ways to what differs are new', () => {
  const old = { lines: [{ id: 'a', value: '1' }, { id: 'b', value: '2' }], deep: { list: [1, 2, 3] } }
  const now = structuredClone(old)
  now.lines[1] = { id: 'b', value: '3' }
  const wanted = structuredClone(now)
  const got = shared(old, now)
  assert.deepEqual(got, wanted)
  assert.ok(got !== old)
  assert.ok(got.lines !== old.lines)
  assert.equal(got.lines[0], old.lines[0])
  assert.equal(got.deep, old.deep)
})

test('longer, shorter, other keys and other kinds are new', () => {
  for (const [old, now] of [
    [[1, 2], [1]],
    [[1], [1, 2]],
    [[], {}],
    [{ a: 1 }, { b: 1 }],
    [{ a: undefined }, { b: undefined }],
    [{ a: 1, b: 2 }, { a: 1 }],
    [null, {}],
    ['1', 1],
  ]) {
    const wanted = structuredClone(now)
    const got = shared(old, now)
    assert.ok(got !== old)
    assert.deepEqual(got, wanted)
  }
})
