import { signal } from '@preact/signals'
import { ask } from '../ask'
import { heard } from '../heard'
import { Select } from '../inputs'
import { words } from '../words'
import type { UnitKind, UnitsSaid } from './kinds'

const s = words.shelf

export const units = signal<UnitsSaid | null>(null)

export async function readUnits(): Promise<boolean> {
  const answer = await ask<UnitsSaid>('/api/units')
  if (heard(answer)) units.value = answer.value
  return answer.is === 'done'
}

type Some = Partial<Record<UnitKind, string>>

async function say(some: Some): Promise<void> {
  const answer = await ask<UnitsSaid>('/api/units', some)
  if (heard(answer)) units.value = answer.value
}

const kinds: UnitKind[] = ['length', 'yarn', 'weight', 'density', 'count']

const sets: readonly (readonly [string, Some])[] = [
  [s.metric, { length: 'cm', yarn: 'm', weight: 'g', density: 'cm', count: 'Nm' }],
  [s.imperial, { length: 'in', yarn: 'yd', weight: 'oz', density: 'in', count: 'Ne' }],
  [s.asTyped, { length: '', yarn: '', weight: '', density: '', count: '' }],
]

// UnitsPage says in which units figures are shown.
export function UnitsPage() {
  const now = units.value
  return (
    <>
      <h1>{words.units}</h1>
      <p class="lead">{s.unitsSays}</p>
      {now ? <Choices now={now} /> : <p class="soft">{words.reading}</p>}
    </>
  )
}

function Choices({ now }: { now: UnitsSaid }) {
  return (
    <div class="units-said">
      <p class="buttons">
        {sets.map(([says, some]) => (
          <button key={says} type="button" class="plain" onClick={() => void say(some)}>
            {says}
          </button>
        ))}
      </p>
      <div class="fields">
        {kinds.map((kind) => (
          <Select
            key={kind}
            id={`unit-${kind}`}
            label={s.unitOf[kind]}
            none={s.asTypedEach}
            value={now[kind]}
            choices={(now.choices[kind] ?? []).map((unit) => [unit, s.unitSays[kind === 'density' ? `/${unit}` : unit] ?? unit])}
            set={(to) => void say({ [kind]: to })}
          />
        ))}
      </div>
    </div>
  )
}
