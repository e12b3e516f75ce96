// What the server says, as it says it. Figures come worded: nothing is computed here.

export type Book = {
  place: string
  program: string
  demo: boolean
  warps: number
  yarns: number
  looms: number
  drafts: number
}

export type Figure = { id: string; says: string; value: string }

export type Warp = {
  id: number
  name: string
  version: number
  stage: string
  demo: boolean
  changed: string // RFC 3339
  figures: Figure[]
  problems: number
}

// Lot is one part of a list; next is what to ask after, '' at the end.
export type Lot = { items: Warp[]; total: number; next: string }

export type Setting = { path: string; value: string }

export type Saved = { id: number; version: number; problems: Problem[] }

export type Problem = {
  code: string
  severity: string
  path: string
  read: string
  says: string
  fix: string
}

export type Difference = { path: string; base: string; theirs: string; yours: string }

export type Conflict = { id: number; base: number; head: number; differences: Difference[] }

export type Trouble = { code: string; says: string; fix: string }

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
