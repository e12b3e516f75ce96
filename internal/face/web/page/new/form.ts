import { signal } from '@preact/signals'
import { ask, askLot } from '../ask'
import { heard } from '../heard'
import { keep, kept } from '../keep'
import type { Card, Figure, Problem, Saved } from '../kinds'
import { go } from '../place'
import { windowId } from '../window'

// What a new warp is told by. It is kept through a reload.

export type Kind = {
  id: string
  name: string
  says: string
  pieces: { name: string; count: number; length: string; width: string; both?: string }[]
  usual: Figure[]
}

export type Units = 'metric' | 'imperial'

export type NewForm = { kind: string; count: string; name: string; units: Units; yarn: string; loom: string; draft: string }

// Whoever's browser speaks as in America measures in inches, until she says otherwise.
const usualUnits: Units = /^en-(US|LR)$|-MM$/.test(navigator.language) ? 'imperial' : 'metric'

const emptyNew: NewForm = { kind: '', count: '', name: '', units: usualUnits, yarn: '', loom: '', draft: '' }

export const form = signal<NewForm>(kept('new-warp', emptyNew))
form.subscribe((value) => keep('new-warp', value))

export const kinds = signal<Kind[] | null>(null)
export const shelves = signal<Record<'yarn' | 'loom' | 'draft', Card[]>>({ yarn: [], loom: [], draft: [] })
export const refused = signal<Problem[]>([])

export function say(more: Partial<NewForm>): void {
  form.value = { ...form.value, ...more }
  refused.value = []
  if (more.units) void readKinds()
}

export async function readKinds(): Promise<boolean> {
  const { units } = form.value
  const answer = await ask<Kind[]>(`/api/kinds?units=${units}`)
  if (units !== form.value.units) return true
  if (heard(answer)) kinds.value = answer.value
  return answer.is === 'done'
}

// most is how many of a shelf are offered to choose from at once.
const most = '200'

export async function readNew(): Promise<boolean> {
  const lot = (list: string) => askLot<Card>(list, { most })
  const [fine, yarn, loom, draft] = await Promise.all([readKinds(), lot('yarns'), lot('looms'), lot('drafts')])
  if (!heard(yarn) || !heard(loom) || !heard(draft)) return false
  shelves.value = { yarn: yarn.value.items, loom: loom.value.items, draft: draft.value.items }
  return fine
}

// begin begins the warp, and goes on with it.
export async function begin(): Promise<void> {
  const { kind, count, name, units, yarn, loom, draft } = form.value
  const parts = Object.fromEntries(Object.entries({ yarn, loom, draft, count }).filter(([, id]) => id.trim() !== '').map(([part, id]) => [part, Number(id)]))
  const answer = await ask<Saved>('/api/warps/new', { window: await windowId, kind, name, units, ...parts })
  if (answer.is === 'problems') {
    refused.value = answer.problems
    return
  }
  if (!heard(answer)) return
  form.value = { ...emptyNew, units }
  go({ page: 'warp', id: answer.value.id, stage: 'piece' })
}
