import { useSignal } from '@preact/signals'
import { act, rename, save } from '../deeds'
import { doc, edit, lost, numbers } from '../doc'
import { FaultText } from '../notices'
import { Field } from '../field'
import { Link } from '../link'
import { Clash, NameField, naming, Said } from '../name'
import { go, type Stage, stages } from '../place'
import { said } from '../state'
import { words } from '../words'
import { askCopy } from './ask'
import { Cloth } from './cloth'
import { Dress } from './dress'
import { Finish } from './finish'
import { Numbers } from './numbers'
import { Piece } from './piece'
import { Weave } from './weave'

const shown: Record<Stage, () => preact.JSX.Element | null> = { piece: Piece, cloth: Cloth, numbers: Numbers, dress: Dress, weave: Weave, finish: Finish }

// WarpPage is one warp at one of its stages.
export function WarpPage({ stage }: { stage: Stage }) {
  const now = doc.value
  if (lost.value || (now && now.kind !== 'warp')) return <Lost />
  if (!now) return <p class="soft">{words.reading}</p>
  const Stage = shown[stage]
  const open = edit.value
  return (
    <>
      <Title />
      <Stages stage={stage} />
      {open?.state === 'conflict' && <Clash edit={open} />}
      {open && open.state !== 'conflict' && !naming(open) && (
        <div role="status">
          <Said edit={open} />
          {open.fault && <FaultText fault={open.fault} id="fault-field" />}
        </div>
      )}
      {now.started && <p class="aside">{words.warp.startedNote}</p>}
      <Amend />
      <Stage />
      <Ways stage={stage} />
    </>
  )
}

function Lost() {
  return (
    <>
      <h1>{words.warp.lost}</h1>
      <p>
        {words.warp.lostSays} <Link to={{ page: 'bench' }}>{words.toBench}</Link>
      </p>
    </>
  )
}

function Title() {
  const now = doc.value
  const open = edit.value
  if (!now) return null
  if (open && open.state !== 'conflict' && naming(open)) return <NameField edit={open} />
  return (
    <div class="title-row">
      <h1>{now.name}</h1>
      <button type="button" class="link" aria-label={words.renameOf(now.name)} onClick={() => rename(now)}>
        {words.rename}
      </button>
    </div>
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

// Ways lead on to the next stage, and away from the warp.
function Ways({ stage }: { stage: Stage }) {
  const now = doc.value
  const next = stages[stages.indexOf(stage) + 1]
  if (!now) return null
  return (
    <div class="ways">
      {next && (
        <Link to={{ page: 'warp', id: now.id, stage: next }} class="plain">
          {words.warp.onward(words.warp.stages[next])}
        </Link>
      )}
      <button type="button" class="link" onClick={() => void copy(now.id)}>
        {words.warp.copy}
      </button>
      <button type="button" class="link" onClick={() => void remove()}>
        {words.warp.removeWarp}
      </button>
    </div>
  )
}

async function copy(id: number): Promise<void> {
  await save(id)
  const made = await askCopy(id)
  if (made) go({ page: 'warp', id: made, stage: 'piece' })
}

async function remove(): Promise<void> {
  const now = doc.value
  if (!now || !(await act(now, 'remove'))) return
  go({ page: 'bench' })
  said.value = words.warp.removed(now.name)
}

