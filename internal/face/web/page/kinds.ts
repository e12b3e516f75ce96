// What the server says, as it says it. Figures come worded: nothing is computed here.

export type Json = string | number | boolean | null | Json[] | { [key: string]: Json }

export type Book = {
  place: string
  program: string
  demo: boolean
  warps: number
  yarns: number
  looms: number
  drafts: number
}

export type Figure = { id: string; says: string; value: string; note?: string }

// Card is a row of a list.
export type Card = {
  id: number
  name: string
  version: number
  stage?: string
  demo: boolean
  changed: string // RFC 3339
  figures: Figure[]
  problems: number
  weave?: string
  removed?: boolean
  shafts?: number
  treadles?: number
  float?: number
}

export type Warp = Card & {
  next?: { says: string; stage: string }
  progress?: { done: number; of: number }
  cloth?: string
}

// Lot is one part of a list; next is what to ask after, '' at the end.
export type Lot<T> = { items: T[]; total: number; next: string }

export type Setting = { path: string; value?: Json }

export type Saved = { id: number; version: number; problems: Problem[] }

export type Problem = {
  code: string
  severity: string
  path: string
  line?: number // of a file that was sent
  excerpt?: string
  read?: string
  says: string
  fix?: string
}

export type Difference = { path: string; base: string; theirs: string; yours: string }

export type Conflict = { id: number; base: number; head: number; differences: Difference[] }

export type Trouble = { code: string; says: string; fix?: string }

export type Fault = { says: string; report: string }

// Answer is every way a question to the server can end.
export type Answer<T> =
  | { is: 'done'; value: T }
  | { is: 'conflict'; conflict: Conflict }
  | { is: 'problems'; problems: Problem[] }
  | { is: 'trouble'; status: number; trouble: Trouble }
  | { is: 'refused' }
  | { is: 'fault'; fault: Fault }
  | { is: 'gone' }
