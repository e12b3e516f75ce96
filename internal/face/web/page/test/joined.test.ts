import assert from 'node:assert/strict'
import { test } from 'node:test'
import { joined } from '../joined'
import type { Warp } from '../kinds'

const warp = (id: number, name = ''): Warp => ({
  id, name, version: 1, demo: false, changed: '', figures: [], problems: 0,
})

test('a warp that moved between two lots is shown once', () => {
  const got = joined([warp(1), warp(2)], [warp(2, 'again'), warp(3)])
  assert.deepEqual(got.map((w) => [w.id, w.name]), [[1, ''], [2, ''], [3, '']])
})
