import { Link } from '../link'
import { Demo, Empty } from '../notices'
import { Search } from '../search'
import { Drop } from '../taking/drop'
import { words } from '../words'
import { hand, strays } from './hand'
import { StrayItem, WarpList } from './warps'

// Bench are the warps in hand.
export function Bench() {
  const { items, total, query } = hand
  const empty = items.value !== null && total.value === 0 && !query.value.words
  return (
    <>
      <div class="title-row">
        <h1>{words.heading}</h1>
        <Link to={{ page: 'new' }} class="strong">
          {words.newWarp}
        </Link>
      </div>
      <Drop into="book" />
      {empty || <Search list={hand} found={words.found} foundFor={words.foundFor} />}
      <Demo />
      {strays.value.length > 0 && (
        <section class="strays" aria-label={words.stillOpen}>
          <h2>{words.stillOpen}</h2>
          {strays.value.map((edit) => (
            <StrayItem key={edit.id} edit={edit} />
          ))}
        </section>
      )}
      {empty ? <Empty /> : <WarpList />}
    </>
  )
}
