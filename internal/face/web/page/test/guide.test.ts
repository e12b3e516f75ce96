import assert from 'node:assert/strict'
import { test } from 'node:test'
import { isDrawing } from '../guide/drawings'
import { bitsOf, demosOf, isDemo, isTerm, plainOf } from '../guide/prose'
import { found } from '../guide/terms'
import { placeOf } from '../place'
import { termAt, termOfLoss } from '../term_at'
import { words } from '../words'

// texts are all texts of the guide and the glossary, wherever they stand in it.
function texts(of: unknown): string[] {
  if (typeof of === 'string') return [of]
  return of && typeof of === 'object' ? Object.values(of).flatMap(texts) : []
}

const all = [...texts(words.guide.parts), ...texts(words.terms)]

test('everything that the guide leads to is there', () => {
  let led = 0
  for (const text of all) {
    for (const [whole] of text.matchAll(/\[[^\]]*\]\([^)]*\)/g)) {
      led++
      assert.equal(bitsOf(whole).length, 1, whole)
      assert.ok(!('text' in (bitsOf(whole)[0] ?? {})) || bitsOf(whole)[0]?.text !== whole, `${whole} leads nowhere`)
    }
    assert.ok(!plainOf(text).includes(']('), text)
  }
  assert.ok(led > 150, `${led} were looked at`)
})

test('parts of the guide that are linked to are parts', () => {
  const parts = new Set(words.guide.parts.map((part) => part.id))
  assert.equal(parts.size, 11)
  for (const text of all) {
    for (const bit of bitsOf(text)) {
      if (!('to' in bit)) continue
      assert.ok(bit.to.page !== 'nowhere', bit.text)
      if (bit.to.page === 'guide') assert.ok(parts.has(bit.to.part), bit.to.part)
    }
  }
  for (const part of parts) assert.deepEqual(placeOf(`/guide/${part}`), { page: 'guide', part })
})

test('drawings and warps of the demo that are shown are there', () => {
  for (const part of words.guide.parts) {
    for (const block of part.blocks) {
      if (typeof block === 'string') continue
      if ('drawing' in block) assert.ok(isDrawing(block.drawing), block.drawing)
      if ('of' in block) assert.ok(isDemo(block.of), block.of)
    }
  }
  assert.deepEqual(demosOf(words.guide.parts[0]).sort(), ['blanket', 'bookmarks', 'curtain', 'runner', 'towels'])
  assert.deepEqual(demosOf(undefined), [])
})

test('a text is taken apart into what it says and where it leads', () => {
  assert.deepEqual(bitsOf('See [Yarns](/yarns), a [sett](#sett), [towels](@towels/dress).'), [
    { text: 'See ' },
    { text: 'Yarns', to: { page: 'yarns' } },
    { text: ', a ' },
    { text: 'sett', term: 'sett' },
    { text: ', ' },
    { text: 'towels', demo: 'towels', stage: 'dress' },
    { text: '.' },
  ])
  assert.deepEqual(bitsOf('[x](#no-such-word)'), [{ text: '[x](#no-such-word)' }])
  assert.deepEqual(bitsOf('[x](@towels/nowhere)'), [{ text: '[x](@towels/nowhere)' }])
})

test('the words of the trade are found, those called so first', () => {
  assert.equal(found('').length, Object.keys(words.terms).length)
  assert.equal(found('TAKE-UP')[0]?.[0], 'take-up')
  assert.equal(found("monk's")[0]?.[0], 'monks-belt')
  assert.equal(found('felt').length, 1)
  assert.equal(found('no such').length, 0)
  const named = found('').map(([, { term }]) => term.replace(/^to /, ''))
  assert.deepEqual(named, [...named].sort((a, b) => a.localeCompare(b, 'en', { sensitivity: 'base' })))
})

test('fields know their words, whatever the parts of a plan are called', () => {
  assert.equal(termAt('warp.sett'), 'sett')
  assert.equal(termAt('pieces[2].border'), 'border')
  assert.equal(termAt('pieces[2].count'), undefined)
  assert.equal(termAt('yarns.white.count'), 'count')
  assert.equal(termAt('yarns."Nm 16.2".count'), 'count')
  assert.equal(termAt('count'), 'count')
  assert.equal(termAt('loom.heddles'), 'heddle')
  assert.equal(termAt('note'), undefined)
  assert.equal(termOfLoss('draw-in'), 'draw-in')
  assert.ok(isTerm('take-up') && !isTerm('no-such-word'))
})
