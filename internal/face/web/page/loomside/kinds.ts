import type { Figure, Problem } from '../kinds'

// What the server says of a warp beside the loom (docs/json.md).

export type Said = { id: string; says: string }
export type Item = { text: string; aloud?: string; kind?: string }
export type Stop = { at: number; says: string }
export type Part = { from: number; to: number; title: string; big?: string; items?: Item[]; check?: string[]; stops?: Stop[] }

export type Step = {
  id: string
  says: string
  lead: string
  first?: string[]
  care?: string
  unit: string
  item?: string
  total: number
  done: number
  each: boolean
  per: number
  board?: boolean
  side?: string
  sides?: Said[]
  parts: Part[]
}

export type Press = { text: string; aloud: string; treadles: number[]; up: number[]; up_says: string }
export type Yarn = { name: string; colour?: string }
export type Stretch = { from: number; to: number; says: string }

export type Kind = {
  picks: number
  presses: number[]
  weft: number[]
  from_right: boolean[]
  stretches: Stretch[]
  motif: { before: number; picks: number; times: number }
  tape: { picks: number; says: string }[]
}

export type Piece = { kind: number; says: string; before: number; first: string[]; last: string[]; ended?: string }

export type Weaving = {
  treadled: boolean
  treadles: number
  shafts: number
  total: number
  reads: string
  presses: Press[]
  yarns: Yarn[]
  kinds: Kind[]
  pieces: Piece[]
}

export type LoomSaid = { id: string; says: string; pick: number; typed: string; of?: string }

export type Loom = {
  id: number
  name: string
  mark: string
  stage: string
  started: boolean
  way: string
  ways: Said[]
  steps: Step[]
  weaving?: Weaving
  woven: number
  forecast: Figure[]
  remedies: string[]
  said: LoomSaid[]
  problems: Problem[]
}

// Move is that work on a step went from a place to another, or was set there.
export type Move = { step: string; place: number; from: number; set?: boolean }
