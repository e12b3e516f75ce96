import { CardName } from '../card'
import type { Card } from '../kinds'
import { More } from '../search'
import { edits } from '../state'
import { words } from '../words'
import { drafts } from './shelf'

const w = words.draft

// DraftList are the drafts that were asked for.
export function DraftList() {
  const all = drafts.items.value
  if (all === null) return <p class="soft">{words.reading}</p>
  if (all.length === 0) return <NoneFound />
  return (
    <>
      <ol class="drafts-list" role="list">
        {all.map((draft) => (
          <DraftItem key={draft.id} draft={draft} />
        ))}
      </ol>
      <More list={drafts} />
    </>
  )
}

function NoneFound() {
  return (
    <p class="none">
      {w.noneFound}{' '}
      <button type="button" class="link" onClick={() => drafts.find({})}>
        {w.showAll}
      </button>
    </p>
  )
}

function DraftItem({ draft }: { draft: Card }) {
  return (
    <li class="draft-card">
      <img src={`/api/documents/${draft.id}/picture?of=cloth&v=${draft.version}`} alt="" width="150" height="150" loading="lazy" />
      <div class="what">
        <CardName of={draft} edit={edits.value[draft.id]} to={{ page: 'draft', id: draft.id }} />
        {draft.shafts ? <Said draft={draft} shafts={draft.shafts} /> : <p class="care sentence">{w.unread}</p>}
        {draft.demo && <p class="soft">{words.fromDemo}</p>}
      </div>
    </li>
  )
}

const Said = ({ draft, shafts }: { draft: Card; shafts: number }) => (
  <>
    <p class="sentence">{w.weaves[draft.weave ?? ''] ?? w.unnamed}</p>
    <p class="soft">{w.threads(shafts, draft.treadles ?? 0)}</p>
    {draft.float ? <p class="soft sentence">{w.float(draft.float)}</p> : null}
  </>
)
