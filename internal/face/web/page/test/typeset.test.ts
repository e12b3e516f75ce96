import assert from 'node:assert/strict'
import { test } from 'node:test'
import { partsOf, raised } from '../typeset'

const flat = (text: string): string => partsOf(text).map((p) => ('text' in p ? p.text : `<${p.over},${p.under}>`)).join('')

test('fractions of a ruler are set, counts and weaves are not', () => {
  assert.equal(flat('33 3/8 in'), '33\u00a0<3,8>\u00a0in')
  assert.equal(flat('1/2 in at each edge'), '<1,2>\u00a0in at each edge')
  assert.equal(flat('7 1/2 yd (270 in)'), '7\u00a0<1,2>\u00a0yd (270\u00a0in)')
  for (const same of ['8/2 Ne', '22/2', '2/2 twill', '1/2 twill', '60/10 cm', '3/1', '2026-03-01']) assert.equal(flat(same).replace(/\u00a0/g, ' '), same)
})

test('long numbers are parted in threes, minus is a minus', () => {
  assert.equal(flat('6266 yd'), '6266\u00a0yd')
  assert.equal(flat('12345 yd'), '12\u2009345\u00a0yd')
  assert.equal(flat('-0.8 %'), '\u22120.8\u00a0%')
  assert.equal(flat('#a03020'), '#a03020')
  assert.equal(flat('0.123456'), '0.123456')
})

test('a fraction is set in the figures that the type has for it', () => {
  assert.equal(raised({ over: '13', under: '16' }), '¹³⁄₁₆')
})
