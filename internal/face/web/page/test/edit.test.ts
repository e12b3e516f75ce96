import assert from 'node:assert/strict'
import { test } from 'node:test'
import * as edit from '../edit'
import type { Answer, Saved } from '../kinds'

const rename = (of: edit.Edit, to: string) => edit.typed(of, 'name', 'Galley towels', to)
const open = rename(edit.begin(1, 3, 'Galley towels'), 'Galley towels II')
const sent = edit.sending(open)
const saved: Answer<Saved> = { is: 'done', value: { id: 1, version: 4, problems: [] } }
const problem = { code: 'name.missing', severity: 'error', path: 'name', read: '', says: 'a warp needs a name', fix: 'give it one' }
const trouble = { code: 'book.full', says: 'the disk is full', fix: 'make room' }
const fault = { says: 'our fault', report: 'here' }

const clash = (theirs: string, yours: string): Answer<Saved> => ({
  is: 'conflict',
  conflict: { id: 1, base: 3, head: 7, differences: [{ path: 'name', base: 'Galley towels', theirs, yours }] },
})

const every: Answer<Saved>[] = [
  saved,
  clash('Deck towels', 'Galley towels II'),
  { is: 'problems', problems: [problem] },
  { is: 'trouble', status: 507, trouble },
  { is: 'fault', fault },
  { is: 'refused' },
  { is: 'gone' },
]

test('whatever goes wrong, what was typed stays with the version it was typed upon', () => {
  for (const answer of every.slice(1)) {
    const after = edit.answered(sent, answer)
    assert.ok(after, answer.is)
    assert.equal(after?.value.name, 'Galley towels II', answer.is)
    assert.equal(after?.base, 3, answer.is)
  }
  assert.equal(edit.answered(sent, saved), null)
})

test('what was typed while the answer was under way stays, whatever the answer', () => {
  const now = rename(sent, 'Galley towels III')
  for (const answer of every) assert.equal(edit.arrived(sent, now, answer)?.value.name, 'Galley towels III', answer.is)
  const after = edit.arrived(sent, now, saved)
  assert.equal(after?.base, 4, 'it builds on what was saved')
  assert.equal(after?.was.name, 'Galley towels II')
  assert.equal(edit.unchanged(after!), false)
})

test('what was dropped while the answer was under way stays dropped', () => {
  for (const answer of every) assert.equal(edit.arrived(sent, undefined, answer), null, answer.is)
})

test('an answer replaces what the book said before', () => {
  const wrong = edit.answered(sent, { is: 'problems', problems: [problem] })!
  assert.deepEqual(wrong.problems, [problem])
  const later = edit.answered(edit.sending(wrong), { is: 'fault', fault })!
  assert.deepEqual([later.problems, later.trouble, later.fault], [[], null, fault])
  assert.deepEqual(rename(wrong, 'x').problems, [problem], 'it stands until the next try')
})

test('a save whose answer was lost is no conflict with itself', () => {
  assert.equal(edit.answered(sent, clash('Galley towels II', 'Galley towels II')), null)
  const now = rename(sent, 'Galley towels III')
  assert.equal(edit.arrived(sent, now, clash('Galley towels II', 'Galley towels II'))?.base, 7)
})

test('keeping mine builds on theirs, knowingly', () => {
  const met = edit.answered(sent, clash('Deck towels', 'Galley towels II'))!
  assert.equal(met.state, 'conflict')
  const chosen = edit.mine(met)
  assert.equal(chosen.base, 7)
  assert.equal(chosen.was.name, 'Deck towels')
  assert.deepEqual(edit.settings(chosen), [{ path: 'name', value: 'Galley towels II' }])
})

test('a step that meets a change keeps every value of it', () => {
  const differences = [
    { path: 'name', base: 'b', theirs: 'c', yours: 'a' },
    { path: 'sett', base: '20 epi', theirs: '24 epi', yours: '18 epi' },
  ]
  const met = edit.clash(1, 'c', 4, 5, differences)
  assert.equal(met.state, 'conflict')
  assert.deepEqual(edit.settings(edit.mine(met)), [
    { path: 'name', value: 'a' },
    { path: 'sett', value: '18 epi' },
  ])
  const others = edit.clash(1, 'c', 4, 5, differences.slice(1))
  assert.deepEqual(edit.settings(edit.mine(others)), [{ path: 'sett', value: '18 epi' }], 'the name is not touched')
})

test('a name that was not changed is not sent', () => {
  assert.ok(edit.unchanged(edit.begin(1, 3, 'a')))
  assert.ok(!edit.unchanged(open))
})

test('several values are one edit, and only those that differ are sent', () => {
  let e = edit.begin(1, 3, 'Galley towels')
  e = edit.typed(e, 'warp.sett', '24 epi', '2')
  e = edit.typed(e, 'warp.sett', '24 epi', '20 epi')
  e = edit.typed(e, 'pieces[0].count', 6, 7)
  e = edit.typed(e, 'gap', null, '1 in')
  e = edit.typed(e, 'gap', null, null)
  assert.deepEqual(edit.settings(e), [
    { path: 'warp.sett', value: '20 epi' },
    { path: 'pieces[0].count', value: 7 },
  ])
  assert.deepEqual(edit.settings(edit.typed(edit.begin(1, 3, 'x'), 'gap', '1 in', null)), [{ path: 'gap' }], 'nothing takes away')
})

test('a field that was typed in while another was saved stays, and what was saved is settled', () => {
  const first = edit.sending(edit.typed(edit.begin(1, 3, 'x'), 'gap', null, '1 in'))
  const now = edit.typed(edit.typed(first, 'gap', null, '1 in'), 'header', null, '2')
  const after = edit.arrived(first, now, saved)
  assert.deepEqual([after?.base, after?.value, after?.was], [4, { header: '2' }, { header: null }])
})

test('values are laid over a tree, and nothing takes away', () => {
  const tree = { pieces: [{ count: 6 }, { count: 1 }], gap: '1 in' }
  const got = edit.laidOver(tree, { 'pieces[0].count': 7, 'pieces[1]': null, gap: null, 'warp.sett': '20 epi', 'yarns."a.b".count': '8/2 Ne' })
  assert.deepEqual(got, { pieces: [{ count: 7 }], warp: { sett: '20 epi' }, yarns: { 'a.b': { count: '8/2 Ne' } } })
  assert.deepEqual(tree.pieces.length, 2, 'the tree itself stays')
})
