import { useSignal } from '@preact/signals'
import { Link } from '../link'
import { Search } from '../search'
import { words } from '../words'
import { Bring, CameIn } from './bring'
import { DraftList } from './list'
import { isNarrow, Narrow } from './narrow'
import { bring, drafts } from './shelf'

const w = words.draft

// Drafts is the shelf of drafts. A file may be dropped anywhere on it.
export function Drafts() {
  const over = useSignal(0) // entered and not left: what lies below is entered first
  const empty = drafts.items.value !== null && drafts.total.value === 0 && !drafts.query.value.words && !isNarrow()
  const drop = (event: DragEvent) => {
    event.preventDefault()
    over.value = 0
    void bring([...(event.dataTransfer?.files ?? [])])
  }
  return (
    <div
      class={over.value > 0 ? 'dropping' : ''}
      onDragEnter={() => over.value++}
      onDragLeave={() => over.value--}
      onDragOver={(event) => event.preventDefault()}
      onDrop={drop}
    >
      <div class="title-row">
        <h1>{w.heading}</h1>
        <div class="buttons">
          <Bring />
          <Link to={{ page: 'catalogue' }} class="strong">
            {w.fromCatalogue}
          </Link>
        </div>
      </div>
      <p class="soft hint">{over.value > 0 ? w.dropHere : w.bringSays}</p>
      <CameIn />
      {empty ? (
        <Empty />
      ) : (
        <>
          <Search list={drafts} found={w.found} foundFor={w.foundFor} />
          <Narrow />
          <DraftList />
        </>
      )}
    </div>
  )
}

function Empty() {
  return (
    <section class="empty">
      <h2>{w.emptyHead}</h2>
      <p>{w.emptySays}</p>
      <dl>
        {w.emptyParts.map(([name, says]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
