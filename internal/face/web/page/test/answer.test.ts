import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readAnswer } from '../answer'

const problem = { code: 'name.missing', severity: 'error', path: 'name', read: '', says: 'a warp needs a name', fix: 'give it one' }
const conflict = { id: 1, base: 3, head: 5, differences: [{ path: 'name', base: 'a', theirs: 'b', yours: 'c' }] }
const trouble = { code: 'book.full', says: 'the disk is full; nothing was written', fix: 'make room, then try again' }
const fault = { says: 'this is our fault, not yours', report: 'where and what' }

test('every answer that was agreed is read', () => {
  const cases: [number, object, object][] = [
    [200, { id: 1, version: 4, problems: [] }, { is: 'done', value: { id: 1, version: 4, problems: [] } }],
    [409, { conflict }, { is: 'conflict', conflict }],
    [422, { problems: [problem] }, { is: 'problems', problems: [problem] }],
    [404, { error: trouble }, { is: 'trouble', status: 404, trouble }],
    [507, { error: trouble }, { is: 'trouble', status: 507, trouble }],
    [401, { error: trouble }, { is: 'refused' }],
    [500, { fault }, { is: 'fault', fault }],
  ]
  for (const [status, body, want] of cases) assert.deepEqual(readAnswer(status, JSON.stringify(body)), want, String(status))
})

test('an answer that was not agreed is a fault, and the report holds it', () => {
  const cases: [number, string][] = [
    [200, '<html>something in between</html>'],
    [200, '"text"'],
    [200, ''],
    [409, '{}'],
    [422, '{"problems":[]}'],
    [502, 'bad gateway'],
  ]
  for (const [status, text] of cases) {
    const got = readAnswer(status, text)
    assert.equal(got.is, 'fault', `${status} ${text}`)
    if (got.is === 'fault') assert.equal(got.fault.report, `${status}\n${text}`)
  }
})
