import { useEffect } from 'preact/hooks'
import { step } from './deeds'
import { Demo, Empty, LineNotice, MishapNotice, Shelves } from './notices'
import { book, search, standing, strays, total, warps } from './state'
import { Tools } from './tools'
import { StrayItem, WarpList } from './warps'
import { words } from './words'

export function Page() {
  useEffect(() => {
    document.addEventListener('keydown', onKey)
    return () => document.removeEventListener('keydown', onKey)
  }, [])
  const empty = warps.value !== null && total.value === 0 && search.value === ''
  return (
    <>
      <a class="skip" href="#warps">
        {words.skip}
      </a>
      <Head />
      <main>
        <LineNotice />
        <MishapNotice />
        <h1>{words.heading}</h1>
        <Tools empty={empty} />
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
      </main>
      <Shelves />
    </>
  )
}

function Head() {
  return (
    <header class="head">
      <span class="mark">{words.program}</span>
      {book.value && (
        <p class="path">
          <span class="hidden">{words.book} </span>
          {book.value.place}
        </p>
      )}
      <p class={`standing ${standing.value}`} role="status">
        {words[standing.value]}
      </p>
    </header>
  )
}

// onKey leaves undo to the field while one is typed in.
function onKey(event: KeyboardEvent): void {
  const field = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement
  const ctrl = (event.ctrlKey || event.metaKey) && !event.altKey
  if (field || !ctrl || event.key.toLowerCase() !== 'z') return
  event.preventDefault()
  void step(event.shiftKey ? 'redo' : 'undo')
}
