import { step } from './deeds'
import { Link } from './link'
import { lastDone, lastUndone } from './past'
import { here, type Place } from './place'
import { book, past, said, standing, stepping } from './state'
import { words } from './words'

const tabs: readonly (readonly [Place, keyof typeof words.tabs, readonly Place['page'][]])[] = [
  [{ page: 'bench' }, 'bench', ['bench', 'new', 'warp']],
  [{ page: 'yarns' }, 'yarns', ['yarns', 'yarn']],
  [{ page: 'looms' }, 'looms', ['looms', 'loom']],
  [{ page: 'drafts' }, 'drafts', ['drafts', 'draft', 'catalogue', 'table']],
  [{ page: 'records' }, 'records', ['records']],
  [{ page: 'guide', part: '' }, 'guide', ['guide', 'glossary']],
]

const pageOf = (place: Place): Place['page'] => (place.page === 'table' && place.of === 'warp' ? 'warp' : place.page)

// Head says where one is and whether all is safe.
export function Head() {
  return (
    <header class="head">
      <Link to={{ page: 'bench' }} class="mark">
        {words.program}
      </Link>
      <nav class="tabs" aria-label={words.pages}>
        {tabs.map(([place, name, pages]) => (
          <Link key={name} to={place} current={pages.includes(pageOf(here.value))}>
            {words.tabs[name]}
          </Link>
        ))}
      </nav>
      <div class="state">
        {book.value && (
          <p class="file" title={book.value.place}>
            <span class="hidden">{words.book} </span>
            {shortOf(book.value.place)}
          </p>
        )}
        <p class={`standing ${standing.value}`} role="status">
          {words[standing.value]}
        </p>
        <div class="steps">
          <StepButton way="undo" can={lastDone(past.value) !== undefined} />
          <StepButton way="redo" can={lastUndone(past.value) !== undefined} />
        </div>
      </div>
      <p class="said" role="status">
        {said.value}
      </p>
    </header>
  )
}

// shortOf is the name of the book's file without its folders.
const shortOf = (place: string): string => place.split(/[\\/]/).at(-1) ?? place

// StepButton stays in the tab order when there is nothing to do: a button that goes
// away under a weaver's finger takes the keyboard's place with it.
function StepButton({ way, can }: { way: 'undo' | 'redo'; can: boolean }) {
  const idle = !can || stepping.value
  return (
    <button
      type="button"
      class="link"
      title={way === 'undo' ? words.undoTitle : words.redoTitle}
      aria-disabled={idle}
      onClick={() => idle || void step(way)}
    >
      {words[way]}
    </button>
  )
}
