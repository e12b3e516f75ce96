import type { ComponentChildren } from 'preact'
import { Set } from './figure'
import type { Figure } from './kinds'
import type { Learnt } from './kinds_doc'
import { words } from './words'

// Parts are a figure with leader dots: what it says, and its value.
export function Parts({ says, children }: { says: string; children: ComponentChildren }) {
  return (
    <>
      <span class="says">{says}</span>
      <span class="leader" aria-hidden="true" />
      <span class="value">{children}</span>
    </>
  )
}

// FigureLine is one figure, and what there is to say of it under it.
export function FigureLine({ says, note, children }: { says: string; note?: string | undefined; children: ComponentChildren }) {
  return (
    <li>
      <p class="figure">
        <Parts says={says}>{children}</Parts>
      </p>
      {note && <NoteLine text={note} />}
    </li>
  )
}

export const NoteLine = ({ text }: { text: string }) => (
  <p class="about soft sentence">
    <Set text={text} />
  </p>
)

// FigureLines are figures as the server words them.
export function FigureLines({ of }: { of: readonly Figure[] }) {
  return (
    <ul class="lines" role="list">
      {of.map((figure) => (
        <FigureLine key={figure.id} says={figure.says} note={figure.note}>
          <Set text={figure.value} />
        </FigureLine>
      ))}
    </ul>
  )
}

type PressedProps = { says: string; value: string; isOpen: boolean; press: () => void; id?: string }

// PressedFigure is a figure which, pressed, opens more under it.
export function PressedFigure({ says, value, isOpen, press, id }: PressedProps) {
  return (
    <button type="button" class="figure" aria-expanded={isOpen} data-id={id} onClick={press}>
      <Parts says={says}>
        <Set text={value} />
      </Parts>
    </button>
  )
}

const aboutOf = ({ from, to, typed, planned }: Learnt): string => [words.warp.between(from, to), typed, planned ? `${words.warp.planned} ${planned}` : ''].filter(Boolean).join('; ')

// LearntLines are what a sample or a finished warp taught.
export function LearntLines({ of }: { of: readonly Learnt[] }) {
  return (
    <ul class="lines" role="list">
      {of.map((one) => (
        <FigureLine key={one.key + one.typed} says={one.says} note={aboutOf(one)}>
          <Set text={one.value} />
        </FigureLine>
      ))}
    </ul>
  )
}
