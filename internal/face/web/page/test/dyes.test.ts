import assert from 'node:assert/strict'
import { test } from 'node:test'
import { dyeNamed, letterOf } from '../words/dyes'

test('colours have names that a weaver would use', () => {
  for (const [hex, name] of [
    ['#000000', 'black'],
    ['#2a2520', 'black'],
    ['#ffffff', 'white'],
    ['#fdfbf6', 'white'],
    ['#808080', 'grey'],
    ['#25407c', 'dark blue'],
    ['#9b2c24', 'dark red'],
    ['#e0241b', 'red'],
    ['#ffc0c8', 'pink'],
    ['#7a5230', 'brown'],
    ['#f3ecd0', 'cream'],
    ['#ffd400', 'yellow'],
    ['#2e8b57', 'green'],
    ['#6a3d9a', 'dark violet'],
  ] as const)
    assert.equal(dyeNamed(hex), name, hex)
})

test('every colour has one', () => {
  for (let n = 0; n < 0x1000000; n += 4099) assert.ok(/^[a-z-]+( [a-z-]+)?$/.test(dyeNamed(`#${n.toString(16).padStart(6, '0')}`)))
})

test('colours without names have letters', () => {
  for (const [i, letter] of [[0, 'A'], [25, 'Z'], [26, 'AA'], [701, 'ZZ'], [702, 'AAA']] as const) assert.equal(letterOf(i), letter)
})
