import { doc, find, numbers, seek, valueAt } from '../doc'
import { Choice, Field, Group, read, setNow } from '../field'
import { Set } from '../figure'
import { Select } from '../inputs'
import { Link } from '../link'
import { type Place, type Stage } from '../place'
import { ProblemList } from '../problems'
import { words } from '../words'
import { Allowances } from './allowances'
import { Lines } from './lines'
import { Strip } from './strip'

const w = words.warp

// Numbers is the whole reckoning: the left decides, the right answers.
export function Numbers() {
  return (
    <>
      <Strip />
      <div class="columns">
        <div>
          <Allowances />
          <Fixed />
          <Seek />
        </div>
        <div class="answers">
          <Care />
          <Lines title={w.reckoning} />
        </div>
      </div>
    </>
  )
}

// stageOf is where what a path names is typed.
export function stageOf(path: string): Stage {
  if (/^(pieces|gap|header|sampling|name|note|date|wash|weave)/.test(path)) return 'piece'
  if (/^(yarns|warp\.(stripes|sett|threading|yarn|floating|doubled)|weft|draft|groups)/.test(path)) return 'cloth'
  return /^(loom|winding|warp\.(reed|sleying))/.test(path) ? 'dress' : 'numbers'
}

// Care is what is wrong or worth knowing of the whole plan, each with the way there.
export function Care() {
  const all = numbers.value?.problems
  if (!all) return null
  const care = all.filter((p) => p.severity !== 'note')
  const notes = all.filter((p) => p.severity === 'note')
  const to = (path: string): Place => ({ page: 'warp', id: doc.value?.id ?? 0, stage: stageOf(path) })
  return (
    <section class="cares" aria-label={w.care}>
      <p class="buttons print">
        {doc.value && (
          <Link to={{ page: 'warp', id: doc.value.id, stage: 'dress' }} class="strong">
            {w.print}
          </Link>
        )}
      </p>
      {care.length === 0 ? <p class="well">{w.allWell}</p> : <ProblemList of={care} to={to} />}
      {notes.length > 0 && (
        <details>
          <summary>{w.notes}</summary>
          <ProblemList of={notes} to={to} />
        </details>
      )}
    </section>
  )
}

// Fixed are numbers that may be locked.
function Fixed() {
  return (
    <Group title={w.locked}>
      <div class="fields">
        <Field path="warp.wound" label={w.lock} hint={w.lockHint} />
        <Field path="warp.ends" label={w.ends_} number />
        <Choice path="warp.choose" label={w.choose} choices={w.chooses as never} none={w.chooses[0]?.[1]} />
      </div>
    </Group>
  )
}

// Seek reckons backwards: what is to be found, and within what.
function Seek() {
  const now = numbers.value
  const planned = valueAt('find.what')
  const what = find.value?.what ?? (typeof planned === 'string' ? planned : '')
  if (!now) return null
  return (
    <Group title={w.seek} says={w.seekSays}>
      <div class="fields">
        <Select id="seek" class="wide" label={w.seekWhat} none={w.seekNone} value={what} choices={now.findable.map((one) => [one.path, one.says])} set={(to) => seek(to ? { what: to } : null)} />
      </div>
      {what !== '' && now.limits.length > 0 && <Within />}
      {now.found && <FoundIt />}
    </Group>
  )
}

function Within() {
  const now = find.value
  const toggle = (path: string, on: boolean) => {
    if (!now) return
    const within = (now.within ?? numbers.value?.limits.map((l) => l.path) ?? []).filter((p) => p !== path)
    seek({ what: now.what, within: on ? [...within, path] : within })
  }
  return (
    <fieldset class="ticks">
      <legend>{w.seekWithin}</legend>
      {numbers.value?.limits.map((limit) => (
        <label key={limit.path} class="tick">
          <input type="checkbox" checked={now?.within?.includes(limit.path) ?? true} onChange={(event) => toggle(limit.path, event.currentTarget.checked)} />
          {limit.says}
        </label>
      ))}
    </fieldset>
  )
}

function FoundIt() {
  const found = numbers.value?.found
  if (!found) return null
  const take = () => {
    setNow(found.what, read(found.typed, true))
    seek(null)
  }
  return (
    <div class="found" role="status">
      <p>
        {w.found(found.says)}{' '}
        <strong>
          <Set text={found.value} />
        </strong>
      </p>
      <ul role="list">
        {found.limits.map((limit) => (
          <li key={limit.path} class="soft">
            {limit.says}: {w.needs} <Set text={limit.need ?? ''} />, {w.has} <Set text={limit.have ?? ''} />
            {limit.path === found.binding ? `; ${w.decides}` : ''}
          </li>
        ))}
      </ul>
      <p class="buttons">
        {found.typed && (
          <button type="button" class="plain" onClick={take}>
            {w.take}
          </button>
        )}
        <button type="button" class="link" onClick={() => seek(null)}>
          {w.stopSeeking}
        </button>
      </p>
    </div>
  )
}
