import { useSignal } from '@preact/signals'
import { act } from '../deeds'
import { doc, numbers, valueAt } from '../doc'
import { Field, setNow } from '../field'
import { itemsOf, pathOf } from '../tree'
import { words } from '../words'
import { shelfDrafts } from './shelf'
import { FromShelf } from './yarns'

const w = words.warp

// Drafting is the draft of this warp: its picture, where it is from, and as it is written.
export function Drafting() {
  const now = doc.value
  if (!now) return null
  const draft = numbers.value?.draft
  return (
    <section class="drafting">
      <h2>{w.draft}</h2>
      {draft ? (
        <>
          <p>{draft.weave}</p>
          <img class="draft" src={`/api/documents/${now.id}/picture?of=draft&v=${now.version}`} alt={w.draftAlt(now.name)} />
          <FromShelf part="draft" name={w.draft} />
        </>
      ) : (
        <p class="soft">{w.draftNone}</p>
      )}
      <TakeDraft />
      <Written />
    </section>
  )
}

function TakeDraft() {
  const now = doc.value
  const chosen = useSignal('')
  if (!now) return null
  return (
    <div class="fields add">
      <div class="field">
        <label for="shelf-draft">{w.draftFrom}</label>
        <select id="shelf-draft" value={chosen.value} onChange={(event) => (chosen.value = event.currentTarget.value)}>
          <option value="">{w.draftChoose}</option>
          {shelfDrafts.value.map((draft) => (
            <option key={draft.id} value={String(draft.id)}>
              {draft.name}
            </option>
          ))}
        </select>
      </div>
      {chosen.value !== '' && (
        <p class="field act">
          <button type="button" class="plain" onClick={() => void act(now, 'use', { part: 'draft', shelf: Number(chosen.value) })}>
            {w.takeYarn}
          </button>
        </p>
      )}
    </div>
  )
}

// Written is the draft as orders and ties, for who would rather write.
function Written() {
  const many = itemsOf({ t: valueAt('draft.tie-up') ?? [] }, 't')
  return (
    <details>
      <summary>{w.draftWritten}</summary>
      <div class="fields">
        <Field path="warp.threading" label={w.threading} hint={w.threadingHint} wide />
        <Field path="draft.treadling" label={w.treadling} hint={w.treadlingHint} wide />
        {Array.from({ length: many }, (_, i) => (
          <Field key={i} path={pathOf('draft', 'tie-up', i)} label={w.treadle(i + 1)} {...(i === 0 ? { hint: w.tieUpHint } : {})} />
        ))}
        <p class="field act">
          <button type="button" class="link" onClick={() => setNow(pathOf('draft', 'tie-up', many), '1')}>
            {w.addTreadle}
          </button>
        </p>
        <Field path="draft.lift-plan" label={w.liftPlan} wide />
      </div>
    </details>
  )
}
