import { computed, signal } from '@preact/signals'
import { ask } from '../ask'
import { heard } from '../heard'
import type { Figure, Problem, Saved } from '../kinds'
import { go } from '../place'
import { windowId } from '../window'
import { fits, type Param, type Weave } from './weave'

// The catalogue of weaves, and the one that is looked at.

type Looked = { facts: Figure[]; problems: Problem[] }

export const weaves = signal<Weave[] | null>(null)
export const family = signal('')
export const sought = signal('')
export const most = signal('') // shafts

export const open = signal('') // the weave that is looked at
export const values = signal<Record<string, string>>({}) // what is typed for it
export const drawn = signal('') // the last values that could be made, as they are asked for
export const facts = signal<Figure[]>([])
export const wrong = signal<Problem[]>([])

export async function readWeaves(): Promise<boolean> {
  if (weaves.value) return true
  const answer = await ask<Weave[]>('/api/weaves')
  if (!heard(answer)) return false
  weaves.value = answer.value
  if (family.value === '') family.value = answer.value[0]?.family ?? ''
  return true
}

// families are in the order of the catalogue, each with its words.
export const families = computed(() => [...new Map(weaves.value?.map((weave) => [weave.family, weave.family_says]))])

// isSeeking tells whether all families are looked through.
export const isSeeking = computed(() => sought.value.trim() !== '' || most.value !== '')

export const shown = computed(() =>
  (weaves.value ?? []).filter((weave) => (isSeeking.value ? fits(weave, sought.value.trim(), most.value) : weave.family === family.value)),
)

// lookAt opens a weave with its usual numbers, or closes it.
export function lookAt(id: string): void {
  open.value = open.value === id ? '' : id
  values.value = {}
  facts.value = []
  wrong.value = []
  drawn.value = ''
  if (open.value) void look()
}

export function setValue(param: Param, value: string): void {
  const { [param.name]: _, ...others } = values.value
  values.value = value === param.default ? others : { ...others, [param.name]: value }
  void look()
}

let round = 0

// look asks what comes of what is typed; the picture follows where something does.
async function look(): Promise<void> {
  const mine = ++round
  const query = String(new URLSearchParams(values.value))
  const answer = await ask<Looked>(`/api/weaves/${open.value}?${query}`)
  if (mine !== round || !heard(answer)) return
  wrong.value = answer.value.problems
  if (answer.value.facts.length === 0) return
  facts.value = answer.value.facts
  drawn.value = query
}

// putOnShelf makes the draft and leads to it.
export async function putOnShelf(name: string): Promise<void> {
  const answer = await ask<Saved>('/api/drafts/made', { window: await windowId, name, weave: open.value, values: values.value })
  if (answer.is === 'problems') wrong.value = answer.problems
  else if (heard(answer)) go({ page: 'draft', id: answer.value.id })
}
