import { step } from './deeds'
import { find } from './list'
import { lastDone, lastUndone } from './past'
import { past, said, search, stepping, total, warps } from './state'
import { words } from './words'

// Tools keeps its words read aloud where the book is empty: there is only no search.
export function Tools({ empty }: { empty: boolean }) {
  return (
    <div class="tools">
      {empty || <Search />}
      <div class="steps">
        <p class="said" role="status">
          {said.value}
        </p>
        <StepButton way="undo" can={lastDone(past.value) !== undefined} />
        <StepButton way="redo" can={lastUndone(past.value) !== undefined} />
      </div>
    </div>
  )
}

function Search() {
  return (
    <>
        <form role="search" onSubmit={(event) => event.preventDefault()}>
          <label for="search">{words.search}</label>
          <input
            id="search"
            type="search"
            autocomplete="off"
            spellcheck={false}
            value={search.value}
            onInput={(event) => find(event.currentTarget.value)}
          />
        </form>
        <p class="count" role="status">
          {warps.value && (search.value ? words.foundFor(total.value, search.value) : words.found(total.value))}
        </p>
    </>
  )
}

// StepButton stays in the tab order when there is nothing to do: a button that goes
// away under a weaver's finger takes the keyboard's place with it.
function StepButton({ way, can }: { way: 'undo' | 'redo'; can: boolean }) {
  const idle = !can || stepping.value
  return (
    <button
      type="button"
      class="plain"
      title={way === 'undo' ? words.undoTitle : words.redoTitle}
      aria-disabled={idle}
      onClick={() => idle || void step(way)}
    >
      {words[way]}
    </button>
  )
}
