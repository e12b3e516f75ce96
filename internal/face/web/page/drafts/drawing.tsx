import { signal } from '@preact/signals'
import { doc } from '../doc'
import { Link } from '../link'
import { ProblemList } from '../problems'
import { words } from '../words'
import { drawingOf } from './address'
import { cannot, chosen, judged, notDrawn } from './open'

const w = words.draft

// steps are how large the drawing is: classes of the style.
const steps = ['fit', 'size-1', 'size-2', 'size-3', 'size-4'] as const

const at = signal(0)

// Drawing is the draft as handbooks print it, as it is or as it would be.
export function Drawing() {
  const now = doc.value
  if (!now) return null
  const list = judged.value?.problems ?? []
  return (
    <section class="drawing">
      <div class="title-row">
        <h2>{w.picture}</h2>
        <div class="buttons">
          <Step by={-1} says={w.smaller} />
          <Step by={1} says={w.larger} />
          <Link to={{ page: 'table', of: 'draft', id: now.id }} class="plain">
            {words.table.open}
          </Link>
        </div>
      </div>
      {judged.value?.figures.length === 0 ? <p class="title">{w.noDraft}</p> : <Sheet id={now.id} version={now.version} name={now.name} />}
      {chosen.value.length > 0 && !cannot.value && <p class="aside">{w.asItWould}</p>}
      <ProblemList of={list} />
    </section>
  )
}

function Sheet({ id, version, name }: { id: number; version: number; name: string }) {
  const address = drawingOf(id, version, cannot.value ? [] : chosen.value)
  const alt = chosen.value.length > 0 ? w.changedAlt(name) : w.pictureAlt(name)
  return (
    <div class="sheet" tabIndex={0} role="group" aria-label={w.pictureOf(name)}>
      <img class={steps[at.value]} src={address} alt={alt} onError={() => void notDrawn(address)} />
    </div>
  )
}

function Step({ by, says }: { by: number; says: string }) {
  const can = at.value + by >= 0 && at.value + by < steps.length
  return (
    <button type="button" class="small" aria-disabled={!can} onClick={() => can && (at.value += by)}>
      {says}
    </button>
  )
}

// ClothOf is the cloth that the draft makes.
export function ClothOf() {
  const now = doc.value
  if (!now || judged.value?.figures.length === 0) return null
  return (
    <section>
      <h2>{w.cloth}</h2>
      <img class="cloth-large" src={`/api/documents/${now.id}/picture?of=cloth&v=${now.version}`} alt={w.clothAlt(now.name)} width="480" height="480" />
      <p class="soft">{w.clothSays}</p>
    </section>
  )
}
