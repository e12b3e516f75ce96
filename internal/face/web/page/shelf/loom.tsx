import { useSignal } from '@preact/signals'
import { doc } from '../doc'
import { Field, Group } from '../field'
import { words } from '../words'
import { Framed } from '../framed'
import { LoomFields, Winding } from './loom_fields'
import { FigureLines } from '../lines'

const s = words.shelf

// LoomPage is one loom, with the board its warps are wound on.
export function LoomPage() {
  return (
    <Framed kind="loom">
      <div class="columns">
        <div>
          <Group title={s.theLoom} says={s.theLoomSays}>
            <LoomFields before="" />
          </Group>
          <Winding />
        </div>
        <div class="answers">
          <Known />
          <Board />
          <Group title={words.warp.note}>
            <Field path="note" label={words.warp.note} />
          </Group>
        </div>
      </div>
    </Framed>
  )
}

function Known() {
  const now = doc.value
  if (!now || now.figures.length === 0) return null
  return (
    <section>
      <h2>{s.atAGlance}</h2>
      <FigureLines of={now.figures} />
    </section>
  )
}

// Board is the warping board to scale, where there is one to draw.
function Board() {
  const now = doc.value
  const missing = useSignal(0)
  if (!now || missing.value === now.version) return null
  return (
    <section>
      <h2>{words.warp.board}</h2>
      <img class="board" src={`/api/documents/${now.id}/picture?of=board&v=${now.version}`} alt={s.boardAlt(now.name)} onError={() => (missing.value = now.version)} />
    </section>
  )
}
