import { useSignal } from '@preact/signals'
import { Set } from '../figure'
import type { Figure } from '../kinds'
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

// FigureLines are figures with leader dots.
export const FigureLines = ({ of }: { of: Figure[] }) => (
  <ul class="lines" role="list">
    {of.map((one) => (
      <li key={one.id}>
        <p class="figure">
          <span class="says">{one.says}</span>
          <span class="leader" aria-hidden="true" />
          <span class="value">
            <Set text={one.value} />
          </span>
        </p>
        {one.note && <p class="about soft sentence">{one.note}</p>}
      </li>
    ))}
  </ul>
)

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
      <button type="button" class="figure" aria-expanded={isOpen.value} onClick={() => (isOpen.value = !isOpen.value)}>
        <span class="says">{one.title}</span>
        <span class="leader" aria-hidden="true" />
        <span class="value">
          <Set text={one.figures ?? ''} />
        </span>
      </button>
      {isOpen.value && one.explanation && (
        <p class="working" role="note" aria-label={w.explain(one.title)}>
          {one.explanation}
        </p>
      )}
    </li>
  )
}
