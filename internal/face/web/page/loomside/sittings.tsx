import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { Text } from '../inputs'
import { FigureLines } from '../lines'
import { words } from '../words'
import { logNow, sits, write } from './logged'

const w = words.loomsideLog

// Sittings begins and ends sittings, and tells the hours.
export function Sittings({ id }: { id: number }) {
  const now = logNow.value
  if (now?.id !== id) return null
  const sitting = now.hours.sitting
  return (
    <div class="sittings">
      {sitting?.forgotten ? <Forgotten id={id} since={sitting.since} /> : <SitOrStand id={id} />}
      <h2>{w.hours}</h2>
      <FigureLines of={now.hours.figures} />
    </div>
  )
}

// tick is how often the running time is looked at, in milliseconds.
const tick = 10_000

function SitOrStand({ id }: { id: number }) {
  const clock = useSignal(Date.now())
  useEffect(() => {
    const timer = window.setInterval(() => (clock.value = Date.now()), tick)
    return () => window.clearInterval(timer)
  }, [])
  const busy = useSignal(false)
  const now = logNow.value
  const sitting = now?.hours.sitting
  const go = async () => {
    if (busy.value) return
    busy.value = true
    await write(id, sitting ? 'stand-up' : 'sit-down', {})
    busy.value = false
  }
  return (
    <>
      <button type="button" class="plain large" onClick={() => void go()}>
        {sitting ? w.standUp : w.sitDown}
      </button>
      <p class="soft">{sitting && now ? w.sitting(sits(sitting, now.read, clock.value)) : w.notSitting}</p>
      {!sitting && <ByHand id={id} />}
    </>
  )
}

// ByHand writes a sitting down that was not begun here.
function ByHand({ id }: { id: number }) {
  const isOpen = useSignal(false)
  return (
    <>
      <button type="button" class="link" aria-expanded={isOpen.value} onClick={() => (isOpen.value = !isOpen.value)}>
        {w.byHand}
      </button>
      {isOpen.value && <Minutes id="hand-minutes" label={w.wasSat} send={async (minutes) => (isOpen.value = !(await write(id, 'log', { what: 'sitting', minutes })))} />}
    </>
  )
}

// Forgotten asks how long a sitting was that nobody ended.
function Forgotten({ id, since }: { id: number; since: string }) {
  return (
    <>
      <p class="aside">{w.forgotten(since)}</p>
      <Minutes id="sat-minutes" label={w.minutes} send={(minutes) => write(id, 'stand-up', { minutes })} />
    </>
  )
}

function Minutes({ id, label, send }: { id: string; label: string; send: (minutes: number) => Promise<unknown> }) {
  const minutes = useSignal('')
  return (
    <form
      class="loom-line"
      onSubmit={(event) => {
        event.preventDefault()
        void send(Math.round(Number(minutes.value)) || 0)
      }}
    >
      <Text id={id} label={label} number value={minutes.value} set={(to) => (minutes.value = to)} />
      <button type="submit" class="plain">
        {w.itWas}
      </button>
    </form>
  )
}
