import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Order, Run } from '../kinds_doc'
import { moved, removed, replaced, runText, withAfter } from '../warp/runs'

// order finds the items of a plain order, as the server does.
function order(typed: string): Order {
  const runs: Run[] = [...typed.matchAll(/([a-z]+) (\d+)( at \d+ epi)?/g)].map((m) => {
    const density = m[3]?.replace(' at ', '')
    return { at: m.index, to: m.index + m[0].length, yarn: m[1] ?? '', count: Number(m[2]), depth: 0, ...(density ? { density } : {}) }
  })
  return { typed, total: 0, fills: false, runs, whole: [] }
}

const stripes = order('white 36, blue 12, (white 6, red 2 at 36 epi) x fill, blue 12')

test('an item is changed where it stands, the rest stays as typed', () => {
  assert.equal(replaced(stripes, 1, { ...stripes.runs[1]!, count: 8 }), 'white 36, blue 8, (white 6, red 2 at 36 epi) x fill, blue 12')
  assert.equal(replaced(stripes, 3, { ...stripes.runs[3]!, yarn: 'blue' }), 'white 36, blue 12, (white 6, blue 2 at 36 epi) x fill, blue 12')
  assert.equal(withAfter(stripes, 1, 'red 4'), 'white 36, blue 12, red 4, (white 6, red 2 at 36 epi) x fill, blue 12')
  assert.equal(moved(stripes, 1), 'blue 12, white 36, (white 6, red 2 at 36 epi) x fill, blue 12')
  assert.equal(runText({ yarn: 'blue', count: 3, density: '30 epi', beam: 2 }), 'blue 3 at 30 epi on beam 2')
})

test('an item that is removed takes its comma with it, and brackets that would be empty', () => {
  assert.equal(removed(stripes, 0), 'blue 12, (white 6, red 2 at 36 epi) x fill, blue 12')
  assert.equal(removed(stripes, 4), 'white 36, blue 12, (white 6, red 2 at 36 epi) x fill')
  assert.equal(removed(stripes, 3), 'white 36, blue 12, (white 6) x fill, blue 12')
  assert.equal(removed(order('white 4, ((red 2) mirrored open) x 3, blue 2'), 1), 'white 4, blue 2')
  assert.equal(removed(order('white 4'), 0), '')
})
