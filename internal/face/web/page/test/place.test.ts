import assert from 'node:assert/strict'
import { test } from 'node:test'
import { addressOf, placeOf } from '../place'

test('every place has an address that leads back to it', () => {
  const all = ['/', '/new', '/warps/5/piece', '/warps/5/finish', '/yarns', '/yarns/12', '/looms/3', '/drafts', '/drafts/9', '/drafts/catalogue', '/records', '/units', '/beside', '/guide', '/guide/numbers', '/glossary']
  for (const path of all) assert.equal(addressOf(placeOf(path)), path)
  assert.deepEqual(placeOf('/warps/5'), { page: 'warp', id: 5, stage: 'piece' })
  assert.deepEqual(placeOf('/yarns/'), { page: 'yarns' })
})

test('an address that leads nowhere says so', () => {
  for (const path of ['/warps', '/warps/x/piece', '/warps/5/paint', '/yarns/0', '/yarns/1/2', '/warps/1/piece/2', '/looms/-1', '/other', '/records/2']) {
    assert.deepEqual(placeOf(path), { page: 'nowhere' }, path)
  }
})

test('a word of the glossary has its own address', () => {
  assert.deepEqual(placeOf('/glossary#take-up'), { page: 'glossary', term: 'take-up' })
  assert.equal(addressOf({ page: 'glossary', term: 'take-up' }), '/glossary#take-up')
  assert.deepEqual(placeOf('/yarns#take-up'), { page: 'yarns' })
})
