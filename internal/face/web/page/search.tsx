import type { Lots } from './lots'
import { words } from './words'

type Props<T> = { list: Lots<T>; found: (total: number) => string; foundFor: (total: number, words: string) => string; label?: string }

// Search seeks in a list by words, as they are typed.
export function Search<T>({ list, found, foundFor, label }: Props<T>) {
  const sought = list.query.value.words ?? ''
  return (
    <div class="tools">
      <form role="search" onSubmit={(event) => event.preventDefault()}>
        <label for="search">{label ?? words.search}</label>
        <input
          id="search"
          type="search"
          autocomplete="off"
          spellcheck={false}
          value={sought}
          onInput={(event) => list.find({ ...list.query.value, words: event.currentTarget.value })}
        />
      </form>
      <p class="count" role="status">
        {list.items.value && (sought ? foundFor(list.total.value, sought) : found(list.total.value))}
      </p>
    </div>
  )
}

// More shows the next part of a list.
export function More<T>({ list }: { list: Lots<T> }) {
  if (list.next.value === '') return null
  return (
    <p class="more">
      <button type="button" class="plain" onClick={() => void list.more()}>
        {words.more}
      </button>
      <span class="soft">{words.shownOf(list.items.value?.length ?? 0, list.total.value)}</span>
    </p>
  )
}
