import { doc, numbers, valueAt } from '../doc'
import { Field, setNow } from '../field'
import { Link } from '../link'
import { itemsOf, pathOf } from '../tree'
import { words } from '../words'
import { FromShelf, FromShelfChoice } from './from_shelf'
import { shelfDrafts } from './shelf'

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
          <p>
            <Link to={{ page: 'table', of: 'warp', id: now.id }} class="plain">
              {words.table.openWarp}
            </Link>
          </p>
          <FromShelf part="draft" name={w.draft} />
        </>
      ) : (
        <p class="soft">{w.draftNone}</p>
      )}
      <FromShelfChoice id="shelf-draft" label={w.draftFrom} none={w.draftChoose} shelf={shelfDrafts.value} partOf={() => 'draft'} />
      <Written />
    </section>
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
