import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Problem } from '../kinds'
import type { Place } from '../place'
import { alone, type Fate } from '../taking/fate'
import { sorted } from '../taking/files'
import { textOfFile } from '../taking/text'

const bytes = (...all: number[]): ArrayBuffer => new Uint8Array(all).buffer

test('a file is read as UTF-8, and an old one letter by letter', () => {
  assert.equal(textOfFile(bytes(0x4b, 0xc3, 0xb6)), 'Kö')
  assert.equal(textOfFile(bytes(0x4b, 0xf6)), 'Kö')
})

test('files are sorted by what they hold, and a draft goes with the plan that points to it', () => {
  const wif = '[WIF]\nVersion=1.1\n'
  const plan = 'sley = 1\n[draft]\nwif = "drafts/Point.WIF"\n'
  const { warps, drafts, beside } = sorted([
    { name: 'towels.toml', text: plan },
    { name: 'point.wif', text: wif },
    { name: 'other.wif', text: wif },
    { name: 'renamed.txt', text: `; kept\n${wif}` },
    { name: 'notes.txt', text: 'not a plan' },
  ])
  assert.deepEqual(warps.map((w) => [w.name, w.beside]), [
    ['towels.toml', { 'drafts/Point.WIF': wif }],
    ['notes.txt', {}],
  ])
  assert.deepEqual(drafts.map((d) => d.name), ['other.wif', 'renamed.txt'])
  assert.deepEqual(beside, [{ name: 'point.wif', of: 'towels.toml' }])
})

const warp: Place = { page: 'warp', id: 1, stage: 'piece' }
const draft: Place = { page: 'draft', id: 2 }
const problem = (severity: string): Problem => ({ code: 'x', severity, path: '', says: 'x' })
const added = (place: Place, ...problems: Problem[]): Fate => ({ is: 'added', file: 'a', name: 'A', place, problems })
const beside: Fate = { is: 'beside', file: 'b.wif', of: 'a', problems: [] }

test('one clean file alone is opened, whatever was read with it', () => {
  for (const one of [added(warp), added(draft), added(warp, problem('note'))]) assert.equal(alone([one, beside]), one)
})

test('whatever else is to be told stays', () => {
  assert.equal(alone([]), null)
  assert.equal(alone([added(warp), added(draft)]), null)
  assert.equal(alone([added(warp, problem('warning'))]), null)
  assert.equal(alone([added(draft, problem('note'))]), null)
  assert.equal(alone([{ is: 'refused', file: 'a', problems: [problem('error')] }]), null)
  assert.equal(alone([added(draft), { is: 'large', file: 'b', problems: [] }]), null)
})
