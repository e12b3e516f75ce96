import assert from 'node:assert/strict'
import { test } from 'node:test'
import { at, itemsOf, keysOf, pathOf, stepsOf, textOf, under } from '../tree'

const tree = { pieces: [{ length: '28 in' }], yarns: { white: { count: '8/2 Ne' }, 'a.b': {} }, extras: { 'a = b': '1 in' } }

test('paths are written as the plan file has them, and read back', () => {
  const cases: [string, (string | number)[]][] = [
    ['warp.sett', ['warp', 'sett']],
    ['pieces[0].length', ['pieces', 0, 'length']],
    ['yarns."a.b".count', ['yarns', 'a.b', 'count']],
    ['extras."a = b"', ['extras', 'a = b']],
    ['extras.take-up in all', ['extras', 'take-up in all']],
    ['yarns."q\\"q"', ['yarns', 'q"q']],
  ]
  for (const [path, steps] of cases) {
    assert.equal(pathOf(...steps), path)
    assert.deepEqual(stepsOf(path), steps)
  }
  assert.equal(under('yarns.white', 'count'), 'yarns.white.count')
})

test('what stands at a path is found, and nothing where nothing is', () => {
  assert.equal(at(tree, 'pieces[0].length'), '28 in')
  assert.equal(at(tree, 'extras."a = b"'), '1 in')
  for (const path of ['pieces[1].length', 'pieces.length', 'yarns.white.count.x', 'toString', 'yarns.constructor']) assert.equal(at(tree, path), undefined, path)
  assert.deepEqual(keysOf(tree, 'yarns'), ['white', 'a.b'])
  assert.equal(itemsOf(tree, 'pieces'), 1)
  assert.equal(textOf(['8 dpi', 12]), '8 dpi, 12')
})
