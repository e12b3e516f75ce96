import type { ComponentChildren } from 'preact'
import type { Figure } from '../kinds'
import { Set } from '../figure'

// FigureLine is one figure with leader dots, and what there is to say of it under it.
export function FigureLine({ says, note, children }: { says: string; note?: string | undefined; children: ComponentChildren }) {
  return (
    <li>
      <p class="figure">
        <span class="says">{says}</span>
        <span class="leader" aria-hidden="true" />
        <span class="value">{children}</span>
      </p>
      {note && (
        <p class="about soft sentence">
          <Set text={note} />
        </p>
      )}
    </li>
  )
}

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
