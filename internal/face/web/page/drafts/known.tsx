import { useSignal } from '@preact/signals'
import { FigureLines, PressedFigure } from '../lines'
import { words } from '../words'
import { judged, type Told as ToldOf } from './open'

const w = words.draft

// Figures are the numbers of the open draft.
export function Figures() {
  const all = judged.value?.figures
  if (!all || all.length === 0) return null
  return (
    <section>
      <h2>{w.figures}</h2>
      <FigureLines of={all} />
    </section>
  )
}

// Told is what is known of the draft, each with what it means.
export function Told() {
  const all = judged.value?.told
  if (!all || all.length === 0) return null
  return (
    <section class="told">
      <h2>{w.told}</h2>
      <p class="soft">{w.toldSays}</p>
      <ul class="lines" role="list">
        {all.map((one) => (
          <ToldLine key={one.topic + one.title} one={one} />
        ))}
      </ul>
    </section>
  )
}

function ToldLine({ one }: { one: ToldOf }) {
  const isOpen = useSignal(false)
  return (
    <li>
      <PressedFigure says={one.title} value={one.figures ?? ''} isOpen={isOpen.value} press={() => (isOpen.value = !isOpen.value)} />
      {isOpen.value && one.explanation && (
        <p class="working" role="note" aria-label={w.explain(one.title)}>
          {one.explanation}
        </p>
      )}
    </li>
  )
}
