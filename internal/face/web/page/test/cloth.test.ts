import assert from 'node:assert/strict'
import { test } from 'node:test'
import { endsOf, onTop, picksOf, tableOf, turns, type TableSaid } from '../table/cloth'
import { opened } from '../table/lifts'
import { complement, has, intersection, isEmpty, less, noNumbers, numbersOf, parseSet, same, setAt, setOf, setText, union, upTo, without, withNumber } from '../table/sets'
import { seeded } from './seeded'
import vectors from './vectors/drafts.json'

type Vector = { name: string; table: TableSaid; up: string[]; rows: string[] }

// The drafts and what is on top in them were written by the program itself.
const drafts = vectors as unknown as Vector[]

test('every crossing is as the program has it', () => {
  let crossings = 0
  for (const { name, table: said, up, rows } of drafts) {
    const table = tableOf(said)
    assert.ok(table, name)
    if (!table) continue
    assert.deepEqual(up.map((_, i) => setText(setAt(table.up, i))), up, name)
    assert.equal(picksOf(table), rows.length, name)
    for (const [pick, row] of rows.entries()) {
      for (let end = 0; end < endsOf(table); end++, crossings++) assert.equal(onTop(table, pick, end), row[end] === '1', `${name}: pick ${pick}, end ${end}`)
    }
  }
  assert.ok(drafts.length >= 40 && crossings > 10_000, `${crossings} were compared`)
})

test('lifts that are the same have the same number, and no others', () => {
  for (const { name, table: said, up } of drafts) {
    const table = tableOf(said)!
    const seen = new Map<string, number>()
    for (const [pick, text] of up.entries()) {
      if (!seen.has(text)) seen.set(text, seen.size)
      assert.equal(table.lift[pick], seen.get(text), name)
    }
    assert.equal(table.differ, seen.size, name)
  }
})

test('beyond the draft nothing is on top', () => {
  const table = tableOf(drafts[1]!.table)!
  assert.equal(onTop(table, picksOf(table), 0), false)
  assert.equal(onTop(table, 0, endsOf(table)), false)
  assert.equal(onTop(table, -1, -1), false)
})

test('an answer that is not as agreed makes no table', () => {
  const fine = drafts[1]!.table
  assert.ok(tableOf(fine))
  for (const wrong of [{ ties: ['x'] }, { treadling: [''] }, { lowered: ['-1'] }, { threading: [1.5] }, { threading: [-1] }, { warpColours: [0] }, { weftThick: [1] }]) {
    assert.equal(tableOf({ ...fine, ...wrong }), null, JSON.stringify(wrong))
  }
})

test('a set is read and written as the server does it', () => {
  for (const text of ['0', '5', '80000000', '100000000', 'ffffffffffffffff', '8000000000000001', 'abc000000000def']) {
    const set = parseSet(text)
    assert.ok(set, text)
    assert.equal(setText(set ?? noNumbers), text)
  }
  for (const wrong of ['', 'g', '0x1', '-1', 'FF', '10000000000000000', ' 1']) assert.equal(parseSet(wrong), null, wrong)
  assert.deepEqual(numbersOf(parseSet('8000000180000001')!), [1, 32, 33, 64])
})

test('sets of 64 hold against sets of the language', () => {
  const random = seeded(64)
  for (let round = 0; round < 300; round++) {
    const some = (): number[] => [...new Set(Array.from({ length: Math.floor(random() * 20) }, () => 1 + Math.floor(random() * 64)))].sort((a, b) => a - b)
    const [a, b, n] = [some(), some(), Math.floor(random() * 66)]
    const [sa, sb] = [setOf(...a), setOf(...b)]
    assert.deepEqual(numbersOf(sa), a)
    assert.deepEqual(numbersOf(union(sa, sb)), [...new Set([...a, ...b])].sort((x, y) => x - y))
    assert.deepEqual(numbersOf(intersection(sa, sb)), a.filter((x) => b.includes(x)))
    assert.deepEqual(numbersOf(less(sa, sb)), a.filter((x) => !b.includes(x)))
    assert.deepEqual(numbersOf(complement(sa, n)), numbersOf(upTo(n)).filter((x) => !a.includes(x)))
    assert.equal(numbersOf(upTo(n)).length, Math.min(n, 64))
    assert.equal(has(sa, n), a.includes(n))
    assert.ok(n < 1 || n > 64 ? same(withNumber(sa, n), sa) : has(withNumber(sa, n), n))
    assert.ok(!has(without(withNumber(sa, n), n), n))
    assert.equal(isEmpty(sa), a.length === 0)
  }
})

test('a countermarch lifts what is raised and not lowered, a sinking shed what is not lowered', () => {
  const [ties, lowered] = [setOf(1, 2), setOf(2, 3)]
  const of = { shafts: 4, ties: { lo: Uint32Array.of(ties.lo), hi: Uint32Array.of(0) }, lowered: { lo: Uint32Array.of(lowered.lo), hi: Uint32Array.of(0) }, treadling: { lo: Uint32Array.of(1), hi: Uint32Array.of(0) }, lifts: { lo: new Uint32Array(0), hi: new Uint32Array(0) } }
  assert.deepEqual(numbersOf(opened({ ...of, shed: 'countermarch' }, 1, 0)), [1])
  assert.deepEqual(numbersOf(opened({ ...of, shed: 'sinking' }, 1, 0)), [3, 4])
  assert.deepEqual(numbersOf(opened({ ...of, shed: 'table' }, 1, 0)), [1, 2])
  assert.deepEqual(numbersOf(opened({ ...of, shed: 'sinking' }, 0, 0)), [1, 2, 3, 4])
})

test('runs show where they begin and end', () => {
  assert.deepEqual(turns([1, 1, 1, 2, 2, 3, 1]), [2, 3, 4, 5, 6])
  assert.deepEqual(turns([7, 7]), [])
})
