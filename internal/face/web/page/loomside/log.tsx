import { useSignal } from '@preact/signals'
import { Text } from '../inputs'
import { keep, kept } from '../keep'
import { words } from '../words'
import { lastAdvance, logNow, write } from './logged'
import { LogList } from './log_list'
import { Photograph } from './photograph'
import { Sittings } from './sittings'

const w = words.loomsideLog

type Props = { id: number; place: number }

// LoomsideLog is the log of a warp beside the loom: sittings, hours, notes, broken ends, marks
// of winding on, photographs. Place is the pick that is woven.
export function LoomsideLog({ id, place }: Props) {
  return (
    <section class="loomside-log" aria-label={w.title}>
      <Sittings id={id} />
      <Note id={id} place={place} />
      <div class="loom-acts">
        <Broken id={id} place={place} />
        <Advance id={id} place={place} />
        <Photograph id={id} place={place} />
      </div>
      <h2>{w.title}</h2>
      <LogList id={id} />
    </section>
  )
}

// Note is one line and a button. What is typed stays through a reload.
function Note({ id, place }: Props) {
  const name = `log-note-${id}`
  const note = useSignal(kept(name, ''))
  const set = (to: string) => {
    note.value = to
    keep(name, to)
  }
  const send = async () => {
    const said = note.value
    if (said.trim() && (await write(id, 'log', { what: 'note', note: said, place })) && note.value === said) set('')
  }
  return (
    <form
      class="loom-line"
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      <Text id="log-note" label={w.note} placeholder={w.noteHint} value={note.value} set={set} />
      <button type="submit" class="plain">
        {w.send}
      </button>
    </form>
  )
}

// Broken says which end broke.
function Broken({ id, place }: Props) {
  const isOpen = useSignal(false)
  const which = useSignal('')
  const send = async () => {
    if (!(await write(id, 'log', { what: 'broken', note: which.value, place }))) return
    which.value = ''
    isOpen.value = false
  }
  return (
    <>
      <button type="button" class="plain" aria-expanded={isOpen.value} onClick={() => (isOpen.value = !isOpen.value)}>
        {w.broken}
      </button>
      {isOpen.value && (
        <form
          class="loom-line"
          onSubmit={(event) => {
            event.preventDefault()
            void send()
          }}
        >
          <Text id="broken-end" label={w.which} placeholder={w.whichHint} value={which.value} set={(to) => (which.value = to)} />
          <button type="submit" class="plain">
            {w.wroteBroken}
          </button>
        </form>
      )}
    </>
  )
}

// Advance marks that the warp was wound on.
function Advance({ id, place }: Props) {
  const last = logNow.value?.id === id ? lastAdvance(logNow.value.events) : 0
  return (
    <>
      <button type="button" class="plain" onClick={() => void write(id, 'log', { what: 'advanced', place })}>
        {w.advance}
      </button>
      {last > 0 && <p class="soft last">{w.advancedAt(last, place - last)}</p>}
    </>
  )
}
