import assert from 'node:assert/strict'
import { test } from 'node:test'
import { dotAt, even, reversed, scaled, threadAt, threadsOver } from '../table/axis'
import { below, seeded } from './seeded'

test('threads to scale lie as far apart as they are, none too thin to be read', () => {
  const [ends, picks] = scaled({ thick: Float64Array.of(300, 300, 900), apart: null }, 3, { thick: null, apart: null }, 2)
  assert.deepEqual([...ends.edges!].map((e) => Math.round(e * 100)), [0, 60, 120, 300])
  assert.deepEqual([...picks.edges!], [0, 1, 2])
  const [fine] = scaled({ thick: Float64Array.of(1, 999), apart: Float64Array.of(0, 1998) }, 2, { thick: null, apart: null }, 0)
  assert.equal(Math.round(fine.edges![1]! * 10), 3)
  assert.equal(Math.round(fine.thick![1]! * 10), 5)
  assert.equal(scaled({ thick: null, apart: null }, 4, { thick: null, apart: null }, 4)[0].edges, null)
})

test('the thread at a dot is the one that is drawn there', () => {
  const random = seeded(11)
  for (let round = 0; round < 200; round++) {
    const n = 1 + below(random, 50)
    const [sized] = scaled({ thick: Float64Array.from({ length: n }, () => below(random, 5)), apart: null }, n, { thick: null, apart: null }, 0)
    for (const axis of [even(n), sized, reversed(sized)]) {
      const cell = 0.2 + random() * 30
      const whole = dotAt(axis, n, cell)
      for (let dot = 0; dot < whole; dot += 1 + below(random, 5)) {
        const i = threadAt(axis, dot, cell)
        assert.ok(dotAt(axis, i, cell) <= dot && dot < dotAt(axis, i + 1, cell), `${i} at ${dot}`)
      }
      let next = 0
      for (let dot = 0; dot < whole && cell < 0.9; dot++) {
        const [from, to] = threadsOver(axis, dot, dot + 1, cell)
        assert.ok(from <= next && to > from && to <= n)
        next = Math.max(next, to)
      }
    }
  }
})
