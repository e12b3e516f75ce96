import { doc } from '../doc'
import { Field, Group } from '../field'
import { Framed } from '../framed'
import { FigureLines } from '../lines'
import { words } from '../words'
import { DrawnBoard } from './drawn_board'
import { LoomFields, Winding } from './loom_fields'

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
          <DrawnBoard title={words.warp.board} alt={s.boardAlt(doc.value?.name ?? '')} />
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
