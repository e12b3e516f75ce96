import { signal } from '@preact/signals'
import { ask } from '../ask'
import { act } from '../deeds'
import { doc, readDoc } from '../doc'
import { heard } from '../heard'
import type { Figure, Problem, Trouble } from '../kinds'

// The draft that is open: what is known of it, and what may be made of it.

export type Told = { topic: string; title: string; figures?: string; explanation?: string }

export type Judged = { figures: Figure[]; told: Told[]; problems: Problem[] }

export type Change = { name: string; says: string; takes?: string }

export type Kind = { id: string; name: string }

export const judged = signal<Judged | null>(null)
export const changes = signal<Change[]>([])
export const kinds = signal<Kind[]>([])

// chosen are the changes that are looked at, in their order: NAME or NAME=HOW.
export const chosen = signal<string[]>([])

// cannot is why they cannot be made.
export const cannot = signal<Trouble | null>(null)

let of = 0

// readDraft reads a draft with what is known of it.
export async function readDraft(id: number): Promise<boolean> {
  if (id !== of) {
    of = id
    judged.value = null
    chosen.value = []
    cannot.value = null
  }
  const [fine] = await Promise.all([readDoc(id), readJudged(id), readChoices()])
  return fine
}

async function readJudged(id: number): Promise<void> {
  const answer = await ask<Judged>(`/api/documents/${id}/draft`)
  if (answer.is === 'done' && id === of) judged.value = answer.value
}

// readChoices reads what holds for all drafts, once.
async function readChoices(): Promise<void> {
  if (changes.value.length > 0 && kinds.value.length > 0) return
  const [can, as] = await Promise.all([ask<Change[]>('/api/changes'), ask<Kind[]>('/api/kinds')])
  if (heard(can)) changes.value = can.value
  if (heard(as)) kinds.value = as.value
}

export function choose(all: string[]): void {
  chosen.value = all
  cannot.value = null
}

// notDrawn asks why a drawing did not come: a picture itself cannot say.
export async function notDrawn(address: string): Promise<void> {
  if (chosen.value.length === 0) return
  const answer = await ask<unknown>(address)
  if (answer.is === 'trouble') cannot.value = answer.trouble
}

// keepChanges makes the chosen changes of the draft.
export async function keepChanges(): Promise<void> {
  const now = doc.value
  if (now && (await act(now, 'change', { changes: chosen.value }))) choose([])
}
