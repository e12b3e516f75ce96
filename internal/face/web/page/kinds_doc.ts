import type { Card, Figure, Json, Problem } from './kinds'

// Doc is a document that was opened.
export type Doc = Omit<Card, 'problems'> & {
  kind: 'warp' | 'yarn' | 'loom' | 'draft'
  text: string
  plan?: Json // the tree of what was typed
  started?: boolean
  problems: Problem[]
  stock?: Figure[]
}

export type Line = Figure & { origin: string; path?: string; typed?: string; working?: string[] }

export type Section = { id: string; title: string; lines: Line[] }

// Allowance is one way from a state of the cloth to another, as it is said or taken.
export type Allowance = {
  key: string
  path: string
  says: string
  from: string
  to: string
  across: boolean
  typed: string
  value: string
  origin: 'given' | 'default' | 'reckoned' | 'none'
  usual?: string
  source?: string
  others: { says: string; typed: string }[]
}

// Run is one item of an order: where it stands in the text, and what it says.
export type Run = { at: number; to: number; yarn?: string; count: number; density?: string; beam?: number; depth: number; times?: number }

export type Order = { typed: string; total: number; fills: boolean; runs: Run[]; whole: { yarn: string; count: number }[] }

export type Band = { says: string; low: number; high: number; value: string; typed: string; source: string }

export type Advice = { bands: Band[]; unit: string; wanted?: number; exact?: number }

export type Limit = { path: string; says: string; need?: string; have?: string }

export type Found = { what: string; says: string; value: string; typed: string; binding?: string; limits: Limit[] }

// Reckoning is all numbers of a warp, laid out.
export type Reckoning = {
  version: number
  name: string
  mark: string
  sections: Section[]
  allowances: Allowance[]
  orders: Record<string, Order>
  yarns: { name: string; colour: string }[]
  sett: Advice | null
  found?: Found
  findable: { path: string; says: string }[]
  limits: { path: string; says: string }[]
  stages: { id: string; says: string }[]
  draft?: { shafts: number; treadles: number; ends: number; picks: number; weave: string }
  problems: Problem[]
}

export type Find = { what: string; within?: string[] }

export type Origin = {
  part: string
  kind: string
  mark: string
  version: number
  id?: number
  name?: string
  newest?: number
  newer: boolean
  removed?: boolean
}

export type Sheet = { name: string; says: string; has: boolean; usual: boolean; without?: string; pages: number }

export type Sheets = { papers: string[]; sheets: Sheet[] }

// Learnt is what was lost between two states of a cloth that were measured.
export type Learnt = { key: string; says: string; from: string; to: string; value: string; typed: string; planned?: string }
