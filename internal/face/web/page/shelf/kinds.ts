import type { Card, Figure, Problem, Setting } from '../kinds'
import type { Learnt } from '../kinds_doc'

// What the server says of shelves, as it says it.

export type Shelved = Card & {
  colour?: string
  colour_name?: string
  grist?: string
  stock: { length?: string; weight?: string; says: string } | null
  promised: { id: number; name: string; says: string }[]
  left: { says: string; short: boolean } | null
  known?: Figure[] // of one yarn
}

// Reading is a yarn as its label, or what was measured of it, was understood.
export type Reading = { name: string; set: Setting[]; figures: Figure[]; problems: Problem[] }

export type StockEvent = {
  id: string
  what: string
  says: string
  at: string
  typed?: string
  note?: string
  warp?: number
  cancels?: string
}

export type Sample = { name: string; sizes: { key: string; says: string; typed: string }[]; learnt: Learnt[] }

export type UnitKind = 'length' | 'yarn' | 'weight' | 'density' | 'count'

export type UnitsSaid = Record<UnitKind, string> & { choices: Record<UnitKind, string[]> }
