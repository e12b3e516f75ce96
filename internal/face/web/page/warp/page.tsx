import { useSignal } from '@preact/signals'
import { doc, numbers } from '../doc'
import { Field } from '../field'
import { Framed } from '../framed'
import { Link } from '../link'
import { type Stage, stages } from '../place'
import { words } from '../words'
import { Cloth } from './cloth'
import { Dress } from './dress'
import { Finish } from './finish'
import { Numbers } from './numbers'
import { Piece } from './piece'
import { Weave } from './weave'

const shown: Record<Stage, () => preact.JSX.Element | null> = { piece: Piece, cloth: Cloth, numbers: Numbers, dress: Dress, weave: Weave, finish: Finish }

// WarpPage is one warp at one of its stages.
export function WarpPage({ stage }: { stage: Stage }) {
  const Stage = shown[stage]
  return (
    <Framed kind="warp" under={<Stages stage={stage} />} onward={<Onward stage={stage} />}>
      {doc.value?.started && (
        <p class="aside">
          {words.warp.startedNote} <Link to={{ page: 'loomside', id: doc.value.id }}>{words.loomside.open}</Link>
        </p>
      )}
      <Amend />
      <Stage />
    </Framed>
  )
}

// Stages is the way of the warp, each with where it stands.
function Stages({ stage }: { stage: Stage }) {
  const now = doc.value
  if (!now) return null
  const says = new Map(numbers.value?.stages.map((s) => [s.id, s.says]))
  return (
    <nav class="stages" aria-label={words.warp.stagesOf(now.name)}>
      <ol role="list">
        {stages.map((one) => (
          <li key={one} class={one === stage ? 'now' : ''}>
            <Link to={{ page: 'warp', id: now.id, stage: one }} current={one === stage}>
              <span class="stage-name">{words.warp.stages[one]}</span> <span class="stage-says">{says.get(one) ?? ''}</span>
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  )
}

const builtFields = [
  ['built.ends', 'builtEnds'],
  ['built.wound', 'builtWound'],
  ['built.sett', 'builtSett'],
  ['built.picks', 'builtPicks'],
  ['built.waste', 'builtWaste'],
  ['built.sampling', 'builtSampling'],
  ['built.note', 'builtNote'],
] as const

// Amend says what stands on the loom, from any stage.
function Amend() {
  const isOpen = useSignal(false)
  return (
    <details class="amend" open={isOpen.value} onToggle={(event) => (isOpen.value = event.currentTarget.open)}>
      <summary>{words.warp.amend}</summary>
      <p class="soft">{words.warp.amendSays}</p>
      <div class="fields">
        {builtFields.map(([path, label]) => (
          <Field key={path} path={path} label={words.warp[label]} number={path === 'built.ends'} />
        ))}
      </div>
    </details>
  )
}

// Onward leads to the next stage.
function Onward({ stage }: { stage: Stage }) {
  const now = doc.value
  const next = stages[stages.indexOf(stage) + 1]
  if (!now || !next) return null
  return (
    <Link to={{ page: 'warp', id: now.id, stage: next }} class="plain">
      {words.warp.onward(words.warp.stages[next])}
    </Link>
  )
}
