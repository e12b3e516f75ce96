import { Link } from '../link'
import { Search } from '../search'
import { TakeButton } from '../taking/button'
import { Drop } from '../taking/drop'
import { words } from '../words'
import { DraftList } from './list'
import { isNarrow, Narrow } from './narrow'
import { drafts } from './shelf'

const w = words.draft

// Drafts is the shelf of drafts. A file may be dropped anywhere on it.
export function Drafts() {
  const empty = drafts.items.value !== null && drafts.total.value === 0 && !drafts.query.value.words && !isNarrow()
  return (
    <>
      <div class="title-row">
        <h1>{w.heading}</h1>
        <div class="buttons">
          <TakeButton into="drafts" label={words.taking.bring} />
          <Link to={{ page: 'catalogue' }} class="strong">
            {w.fromCatalogue}
          </Link>
        </div>
      </div>
      <p class="soft hint">{w.bringSays}</p>
      <Drop into="drafts" />
      {empty ? (
        <Empty />
      ) : (
        <>
          <Search list={drafts} found={w.found} foundFor={w.foundFor} />
          <Narrow />
          <DraftList />
        </>
      )}
    </>
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
