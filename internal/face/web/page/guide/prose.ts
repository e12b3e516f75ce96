import { type Place, placeOf, type Stage, stages } from '../place'
import type { Part } from './kinds'
import { words } from '../words'

// The texts of the guide and the glossary are plain, but for what leads elsewhere:
// [its words](/yarns) leads to a page, [its words](#sett) to what a word means, and
// [its words](@towels/numbers) to a stage of a warp of the demo.

export type DemoName = keyof typeof words.guide.demo
export type TermName = keyof typeof words.terms

export type Bit =
  | { text: string }
  | { text: string; to: Place }
  | { text: string; term: TermName }
  | { text: string; demo: DemoName; stage: Stage }

const led = /\[([^\]]+)\]\(([/#@])([^)]*)\)/g

export const isTerm = (name: string): name is TermName => name in words.terms
export const isDemo = (name: string): name is DemoName => name in words.guide.demo

// bitsOf is a text in bits. What leads nowhere stays as it is written, where a test
// finds it.
export function bitsOf(text: string): Bit[] {
  const bits: Bit[] = []
  let from = 0
  for (const found of text.matchAll(led)) {
    const [whole, says = '', sign, to = ''] = found
    const bit = bitTo(says, sign, to)
    if (!bit) continue
    if (found.index > from) bits.push({ text: text.slice(from, found.index) })
    bits.push(bit)
    from = found.index + whole.length
  }
  if (from < text.length) bits.push({ text: text.slice(from) })
  return bits
}

function bitTo(text: string, sign: string | undefined, to: string): Bit | undefined {
  if (sign === '#') return isTerm(to) ? { text, term: to } : undefined
  if (sign === '@') return bitToDemo(text, to)
  const place = placeOf(`/${to}`)
  return place.page === 'nowhere' ? undefined : { text, to: place }
}

function bitToDemo(text: string, to: string): Bit | undefined {
  const [demo = '', at] = to.split('/')
  const stage = stages.find((s) => s === at)
  return stage && isDemo(demo) ? { text, demo, stage } : undefined
}

// plainOf is a text without what leads elsewhere, as it is searched.
export const plainOf = (text: string): string => bitsOf(text).map((bit) => bit.text).join('')

// demosOf are the warps of the demo that a part speaks of.
export function demosOf(part: Part | undefined): DemoName[] {
  const text = JSON.stringify(part ?? {})
  const named = [...text.matchAll(/\]\(@(\w+)\/|"of":"(\w+)"/g)].map(([, linked, shown]) => linked ?? shown ?? '')
  return [...new Set(named)].filter(isDemo)
}
