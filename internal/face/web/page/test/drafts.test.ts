import assert from 'node:assert/strict'
import { test } from 'node:test'
import { fits, type Weave } from '../drafts/weave'
import { drawingOf } from '../drafts/address'

const basket: Weave = {
  id: 'basket', family: 'plain', family_says: 'Plain weave, ribs and baskets', name: 'basket', says: 'Plain weave of groups', use: 'drapes', source: '',
  shafts: 4, treadles: 2, ends: 4, picks: 4, float: 2, params: [],
}

test('a weave is sought by every word, and by the shafts it takes', () => {
  assert.equal(fits(basket, 'RIBS drap', ''), true)
  assert.equal(fits(basket, 'basket twill', ''), false)
  assert.equal(fits(basket, '', '4'), true)
  assert.equal(fits(basket, 'basket', '3'), false)
})

test('the drawing after changes has an address of its own', () => {
  assert.equal(drawingOf(7, 3, ['turned', 'ends-inserted=5: 1 2+3']), '/api/documents/7/picture?of=draft&v=3&change=turned,ends-inserted%3D5%3A%201%202%2B3')
  assert.equal(drawingOf(7, 3, []), '/api/documents/7/picture?of=draft&v=3')
})
