import { words } from '../words'
import type { Term } from './kinds'
import { plainOf } from './prose'

type Row = readonly [string, Term]

// bare is a word by which it is put in order: “to sley” stands at s.
const bare = (term: string): string => term.replace(/^to /, '')

const fold = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').replace(/’/g, "'").toLowerCase()

const rows: readonly Row[] = Object.entries(words.terms)
  .map(([key, term]): Row => [key, term])
  .sort(([, a], [, b]) => bare(a.term).localeCompare(bare(b.term), 'en', { sensitivity: 'base' }))

// found are the terms that have all words sought in them or in what they mean, those
// that have them in the term first.
export function found(sought: string): readonly Row[] {
  const all = fold(sought).split(/\s+/).filter((word) => word !== '')
  if (all.length === 0) return rows
  const has = (text: string) => all.every((word) => fold(text).includes(word))
  const named = rows.filter(([, { term }]) => has(term))
  return [...named, ...rows.filter((row) => !named.includes(row) && has(`${row[1].term} ${plainOf(row[1].means)}`))]
}
