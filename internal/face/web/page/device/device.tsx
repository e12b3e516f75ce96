import { useEffect, useLayoutEffect } from 'preact/hooks'
import { LoomsidePage } from '../loomside/page'
import { readLoom } from '../loomside/state'
import { MishapNotice } from '../notices'
import { readBy, refresh } from '../refresh'
import { line } from '../state'
import { words } from '../words'
import { type At, addressOf, at, goTo } from './at'
import { Film } from './awake'
import { hand } from './hand'
import { HandPage } from './hand_page'
import { PairPage } from './pair'

const w = words.beside

const nothing = (): Promise<boolean> => Promise.resolve(true)
const readsOf = (now: At) => (now.page === 'loom' ? () => readLoom(now.id) : nothing)

// Device is the frame of the page beside the loom: pairing, the warps in hand, one of them.
export function Device() {
  const now = at.value
  const out = line.value === 'refused' || now.page === 'pair'
  useLayoutEffect(() => {
    readBy(out ? nothing : readsOf(now))
    if (!out) void refresh()
  }, [addressOf(now), out])
  useEffect(() => {
    document.title = `${out ? w.pairing : w.title} · ${words.program}`
  }, [out])
  return (
    <>
      <main id="main" class={out || now.page === 'hand' ? 'device' : 'page-loomside'} tabIndex={-1}>
        {out ? (
          <PairPage code={now.page === 'pair' ? now.code : ''} wasIn={line.value === 'refused' && hand.value !== null} />
        ) : (
          <>
            {now.page === 'hand' && <Gone />}
            <MishapNotice />
            {now.page === 'loom' ? <LoomsidePage id={now.id} home={<Home />} /> : <HandPage />}
          </>
        )}
      </main>
      {!out && <Film />}
    </>
  )
}

// Gone says that the computer is away, and that the page does not come anew without it; at
// a warp that page says so.
function Gone() {
  return (
    <div role="status">
      {line.value === 'gone' && (
        <div class="notice">
          <p class="title">{w.goneHead}</p>
          <p>{w.goneSays}</p>
        </div>
      )}
    </div>
  )
}

function Home() {
  return (
    <a
      class="plain"
      href="/"
      onClick={(event) => {
        event.preventDefault()
        goTo({ page: 'hand' })
      }}
    >
      {w.toHand}
    </a>
  )
}
