import { signal } from '@preact/signals'
import { ask } from '../ask'
import { doc } from '../doc'
import type { Figure, Problem } from '../kinds'

// What there is to do and to say once a warp is woven, as the server words it.

export type ToMeasure = { path: string; state: string; says: string; planned?: string }

export type Step = { step: string; says: string; how: string; notes: string[]; cautions: string[]; figures: Figure[]; measures: ToMeasure[] }

export type Finishing = { steps: Step[]; cites: string; problems: Problem[] }

export type LabelForm = { form: string; says: string; rules: string; text: string; lines: string[]; notes: string[] }

export type Label = {
  forms: LabelForm[]
  shares: { fibre: string; dry: string; allowance?: string; label: string }[]
  yarns: { yarn: string; fibre: string; warp?: string; weft?: string; weight: string; basis: string }[]
  basis: string[]
  care: { about: string; says: string; why?: string }[]
  cites: string
  check: string
  problems: Problem[]
}

export const finishing = signal<Finishing | null>(null)
export const label = signal<Label | null>(null)

let of = 0

// readAfter reads both anew. What is of another warp is not shown meanwhile.
export async function readAfter(): Promise<void> {
  const now = doc.value
  if (!now) return
  if (of !== now.id) finishing.value = label.value = null
  of = now.id
  const [steps, text] = await Promise.all([ask<Finishing>(`/api/documents/${now.id}/finishing`), ask<Label>(`/api/documents/${now.id}/label`)])
  if (doc.value?.id !== now.id) return
  if (steps.is === 'done') finishing.value = steps.value
  if (text.is === 'done') label.value = text.value
}
