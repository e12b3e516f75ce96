import { useEffect } from 'preact/hooks'
import { act } from '../deeds'
import { askDoc } from '../ask'
import { heard } from '../heard'
import { Link } from '../link'
import { refresh } from '../refresh'
import { line, said } from '../state'
import { words } from '../words'
import { StepView } from './dressing'
import { evening, turnEvening } from './evening'
import { keyed } from './keys'
import type { Loom } from './kinds'
import { doneOf, hear, loom, lost, view, waiting, wrong } from './state'
import { Steps } from './steps'
import { hasVoice, speaking, speakOut } from './voice'
import { WeaveView } from './weaving'
import './loomside.css'

const w = words.loomside

// LoomsidePage is one warp beside the loom: one thing at a time, large.
export function LoomsidePage({ id, home }: { id: number; home?: preact.ComponentChild }) {
  useEffect(() => {
    hear()
    return keyed()
  }, [])
  const now = loom.value
  if (lost.value) return <h1>{w.lost}</h1>
  if (!now || now.id !== id) return <p class="soft">{words.reading}</p>
  return (
    <div class="loom">
      <Top now={now} home={home} />
      <Standing />
      {!now.started ? <Begin now={now} /> : <Shown now={now} />}
    </div>
  )
}

function Top({ now, home }: { now: Loom; home?: preact.ComponentChild }) {
  return (
    <div class="loom-top">
      <h1>{now.name}</h1>
      <p class="loom-tools">
        {view.value !== '' && now.started && (
          <button type="button" class="plain" onClick={() => (view.value = '')}>
            {w.allSteps}
          </button>
        )}
        {hasVoice.value ? (
          <button type="button" class="plain" aria-pressed={speaking.value} onClick={() => speakOut(!speaking.value)}>
            {speaking.value ? w.silence : w.aloud}
          </button>
        ) : null}
        <button type="button" class="plain" aria-pressed={evening.value} onClick={turnEvening}>
          {w.evening}
        </button>
        {home ?? (
          <Link to={{ page: 'warp', id: now.id, stage: 'weave' }} class="plain">
            {w.toDesk}
          </Link>
        )}
      </p>
    </div>
  )
}

// Standing says what waits to be sent, what others said, and what could not be written.
function Standing() {
  const n = waiting.value
  return (
    <>
      <div role="status" class="loom-standing">
        {line.value === 'gone' && <p class="care">{n > 0 ? w.awayWaiting(n) : w.away}</p>}
        {line.value === 'up' && n > 0 && <p class="soft">{w.sending(n)}</p>}
        {said.value && <p>{said.value}</p>}
      </div>
      {wrong.value && (
        <p class="care" role="alert">
          {w.notWritten} {wrong.value}
        </p>
      )}
    </>
  )
}

// Begin freezes the plan: from here on work is told and kept.
function Begin({ now }: { now: Loom }) {
  const start = async () => {
    const answer = await askDoc(now.id)
    if (heard(answer)) await act(answer.value, 'start')
    await refresh()
  }
  return (
    <div class="loom-body">
      <p class="loom-lead">{w.begins}</p>
      <p class="care">{words.warp.ratchet}</p>
      <button type="button" class="strong loom-go" onClick={() => void start()}>
        {words.warp.beginNow}
      </button>
    </div>
  )
}

function Shown({ now }: { now: Loom }) {
  if (view.value === 'weaving' && now.weaving) return <WeaveView now={now} weaving={now.weaving} />
  const step = now.steps.find((one) => one.id === view.value)
  if (step) return <StepView key={step.id} now={now} step={step} done={doneOf(now, step.id)} />
  return <Steps now={now} />
}
