import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Reckoning } from '../kinds_doc'
import { inPlace } from '../reckoned'

const section = (id: string, value: string) => ({ id, title: id, lines: [{ id: `${id}.x`, says: id, value, origin: 'reckoned' }] })

const whole: Reckoning = {
  version: 3,
  name: 'Towels',
  mark: 'a',
  sections: [section('glance', '1'), section('pieces[0]', '2'), section('pieces[1]', '3'), section('warp', '4')],
  allowances: [],
  orders: { 'warp.stripes': { typed: '4 white', total: 4, fills: false, runs: [], whole: [] } },
  yarns: [{ name: 'white', colour: '#ffffff' }],
  sett: null,
  findable: [{ path: 'warp.length', says: 'length' }],
  limits: [],
  stages: [{ id: 'piece', says: '2 towels' }],
  draft: { shafts: 4, treadles: 6, ends: 4, picks: 4, weave: 'twill' },
  problems: [],
}

const part = (): Reckoning => ({ ...whole, mark: 'b', sections: [section('glance', '9'), section('pieces[0]', '8')], orders: {}, yarns: [], findable: [], stages: [{ id: 'piece', says: '1 towel' }] })

test('what was asked for is as it came, the rest as it was', () => {
  const got = inPlace(whole, part(), ['glance', 'pieces'])
  assert.deepEqual(
    got.sections.map((s) => [s.id, s.lines[0]?.value]),
    [['glance', '9'], ['pieces[0]', '8'], ['warp', '4']],
  )
  assert.equal(got.mark, 'b')
  assert.equal(got.stages[0]?.says, '1 towel')
  assert.deepEqual(got.orders, whole.orders)
  assert.deepEqual(got.yarns, whole.yarns)
  assert.deepEqual(got.draft, whole.draft)
})

test('an answer with everything takes the place of all', () => {
  const answer = part()
  assert.equal(inPlace(whole, answer, []), answer)
  assert.equal(inPlace(null, answer, ['glance']), answer)
})

test('a plan that cannot be reckoned has no numbers at all', () => {
  assert.deepEqual(inPlace(whole, { ...part(), sections: [] }, ['glance']).sections, [])
})
