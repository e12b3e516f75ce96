import assert from 'node:assert/strict'
import { test } from 'node:test'
import { addressOf, atOf } from '../device/at'

test('a device has three places', () => {
  assert.deepEqual(atOf('/', ''), { page: 'hand' })
  assert.deepEqual(atOf('/loomside/12', ''), { page: 'loom', id: 12 })
  assert.deepEqual(atOf('/pair', '#012345'), { page: 'pair', code: '012345' })
  for (const path of ['/loomside/', '/loomside/0', '/loomside/x', '/loomside/1/2', '/yarns', '/pair/1']) assert.deepEqual(atOf(path, ''), { page: 'hand' })
})

test('what is no code is none', () => {
  for (const hash of ['', '#', '#12345', '#1234567', '#12345x', '#<b>012']) assert.deepEqual(atOf('/pair', hash), { page: 'pair', code: '' })
})

test('the address of pairing has no code in it', () => {
  assert.equal(addressOf({ page: 'pair', code: '012345' }), '/pair')
  assert.equal(addressOf({ page: 'loom', id: 3 }), '/loomside/3')
  assert.equal(addressOf({ page: 'hand' }), '/')
})
