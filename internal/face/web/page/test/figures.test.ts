import assert from 'node:assert/strict'
import { test } from 'node:test'
import { figured } from '../table/figures'

// typed are the numbers that come of figures and spaces, a space at the end left out.
function typed(text: string, most: number): number[] {
  let held = 0
  const out: number[] = []
  for (const key of text) {
    if (key === ' ') {
      if (held > 0) out.push(held)
      held = 0
      continue
    }
    const now = figured(held, Number(key), most)
    out.push(...now.put)
    held = now.held
  }
  return out
}

test('of nine shafts and fewer each figure is a number', () => {
  assert.deepEqual(typed('1234', 4), [1, 2, 3, 4])
  assert.deepEqual(typed('1 2 3 4', 4), [1, 2, 3, 4])
  assert.deepEqual(typed('1569', 8), [1, 5, 6])
  assert.deepEqual(typed('0', 8), [])
})

test('of more a figure waits as long as another can go on with it', () => {
  assert.deepEqual(typed('12', 16), [12])
  assert.deepEqual(typed('1 2', 16), [1, 2])
  assert.deepEqual(typed('19', 16), [1, 9])
  assert.deepEqual(typed('3', 16), [3])
  assert.deepEqual(typed('40 41 ', 40), [40, 4, 1])
  assert.deepEqual(typed('10 0', 10), [10, 10])
  assert.deepEqual(typed('1', 16), [])
})

test('every number can be typed, and any row of them with spaces between', () => {
  for (const most of [2, 4, 8, 9, 10, 11, 16, 32, 40]) {
    const all = Array.from({ length: most }, (_, i) => i + 1)
    assert.deepEqual(typed(all.map((n) => `${n} `).join(''), most), all, `up to ${most}`)
  }
})
