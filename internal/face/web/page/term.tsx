import type { ComponentChildren } from 'preact'
import { useId, useRef } from 'preact/hooks'
import { useSignal } from '@preact/signals'
import { Bits } from './guide/bits'
import type { TermName } from './guide/prose'
import { Link } from './link'
import { words } from './words'

type Props = { of: TermName; children?: ComponentChildren }

// Term is a word of the trade that opens what it means under itself, and closes it again;
// Escape closes it too and leaves the keyboard at the word.
export function Term({ of, children }: Props) {
  const open = useSignal(false)
  const button = useRef<HTMLButtonElement>(null)
  const id = useId()
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !open.value) return
    event.stopPropagation()
    open.value = false
    button.current?.focus()
  }
  return (
    <>
      <button
        ref={button}
        type="button"
        class="term"
        aria-expanded={open.value}
        aria-controls={open.value ? id : undefined}
        onClick={() => (open.value = !open.value)}
        onKeyDown={onKeyDown}
      >
        {children ?? words.terms[of].term}
      </button>
      {open.value && <Meaning of={of} id={id} onKeyDown={onKeyDown} />}
    </>
  )
}

type MeaningProps = { of: TermName; id: string; onKeyDown: (event: KeyboardEvent) => void }

// Meaning is a note with what a term means. It is made of spans, for it stands in
// headings and paragraphs as well.
export function Meaning({ of, id, onKeyDown }: MeaningProps) {
  return (
    <span class="meaning" id={id} role="note" aria-label={words.terms[of].term} onKeyDown={onKeyDown}>
      <Bits text={words.terms[of].means} plain />{' '}
      <Link to={{ page: 'glossary', term: of }} label={words.guide.inGlossary(words.terms[of].term)}>
        {words.glossary}
      </Link>
    </span>
  )
}

type LabelProps = { of: string; term?: TermName | undefined; children: ComponentChildren; class?: string }

// Label is the label of a field. Where its word is a term, the word that is seen opens
// what it means and stands beside the label, for a label may hold no button.
export function Label({ of, term, children, ...more }: LabelProps) {
  if (!term) {
    return (
      <label for={of} {...more}>
        {children}
      </label>
    )
  }
  return (
    <>
      <label for={of} class="hidden">
        {children}
      </label>
      <span class={`label ${more.class ?? ''}`}>
        <Term of={term}>{children}</Term>
      </span>
    </>
  )
}
