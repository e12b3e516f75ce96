import assert from 'node:assert/strict'
import { test } from 'node:test'
import { words } from '../words'

test('one is not many', () => {
  assert.equal(words.found(1), '1 warp')
  assert.equal(words.found(0), '0 warps')
  assert.equal(words.problems(1), '1 thing needs care')
  assert.equal(words.problems(2), '2 things need care')
})

test('the words keep our voice', () => {
  const all = JSON.stringify(words)
  assert.ok(!all.includes('!'), 'no exclamation marks')
  for (const phrase of ['oops', 'sorry', 'invalid', 'please']) assert.ok(!new RegExp(`\\b${phrase}\\b`, 'i').test(all), phrase)
})
