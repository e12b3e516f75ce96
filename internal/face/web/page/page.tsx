import type { ComponentChild } from 'preact'
import { useEffect, useLayoutEffect } from 'preact/hooks'
import { step } from './deeds'
import { Head } from './head'
import { here, moved, type Place } from './place'
import { Foot, LineNotice, MishapNotice } from './notices'
import { readBy, refresh } from './refresh'
import { views } from './views'
import { words } from './words'

// Page is the frame of every page: who we are, how things stand, and the page itself.
export function Page() {
  useEffect(() => {
    document.addEventListener('keydown', onKey)
    return () => document.removeEventListener('keydown', onKey)
  }, [])
  const place = here.value
  const view = views[place.page]
  return (
    <>
      <a class="skip" href="#main">
        {words.skip}
      </a>
      {place.page !== 'loomside' && <Head />}
      <main id="main" tabIndex={-1}>
        <LineNotice />
        <MishapNotice />
        <Shown place={place} key={keyOf(place)} show={() => view.show(place)} read={() => view.read(place)} title={view.title(place)} />
      </main>
      {place.page !== 'loomside' && <Foot />}
    </>
  )
}

// keyOf tells places apart that are shown anew: the stages of one warp are one page.
const keyOf = (place: Place): string => ('id' in place ? `${place.page}-${place.id}` : place.page)

type ShownProps = { place: Place; show: () => ComponentChild; read: () => Promise<boolean>; title: string }

// Shown is one page. It reads what it shows when it comes up, and after a move it takes
// the keyboard to its beginning.
function Shown({ place, show, read, title }: ShownProps) {
  const moves = moved.value
  useLayoutEffect(() => {
    readBy(read)
    if (moves > 0) void refresh() // the first reading is watch's
  }, [moves])
  useEffect(() => {
    document.title = `${title} · ${words.program}`
  }, [title])
  useEffect(() => {
    if (moves > 0 || place.page === 'glossary') toBeginning()
  }, [moves])
  return <div class={`page page-${place.page}`}>{show()}</div>
}

// toBeginning takes the window and the keyboard to where a page begins, or to the place on
// it that the address names.
function toBeginning(): void {
  const named = document.getElementById(location.hash.slice(1))
  scrollTo(0, 0)
  named?.scrollIntoView()
  const begin = named ?? document.getElementById('main')
  begin?.focus({ preventScroll: true })
}

// onKey leaves undo to the field while one is typed in.
function onKey(event: KeyboardEvent): void {
  const to = event.target
  const field = (to instanceof HTMLInputElement && to.type !== 'checkbox') || to instanceof HTMLTextAreaElement
  const ctrl = (event.ctrlKey || event.metaKey) && !event.altKey
  if (field || !ctrl || event.key.toLowerCase() !== 'z') return
  event.preventDefault()
  void step(event.shiftKey ? 'redo' : 'undo')
}
