import type { ComponentChildren } from 'preact'
import { useId, useRef } from 'preact/hooks'
import { useSignal } from '@preact/signals'
import { Bits } from './guide/bits'
import type { TermName } from './guide/prose'
import { Link } from './link'
import { words } from './words'

type Opener = { of: TermName; class: string; label?: string; children: ComponentChildren }

// useTerm gives a button that opens what a term means, and closes it again, and what it
// opens; Escape closes that too and leaves the keyboard at the button.
function useTerm({ of, label, children, ...more }: Opener) {
  const open = useSignal(false)
  const button = useRef<HTMLButtonElement>(null)
  const id = useId()
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !open.value) return
    event.stopPropagation()
    open.value = false
    button.current?.focus()
  }
  const opener = (
    <button
      ref={button}
      type="button"
      aria-label={label}
      aria-expanded={open.value}
      aria-controls={open.value ? id : undefined}
      onClick={() => (open.value = !open.value)}
      onKeyDown={onKeyDown}
      {...more}
    >
      {children}
    </button>
  )
  return { opener, meaning: open.value && <Meaning of={of} id={id} onKeyDown={onKeyDown} /> }
}

type Props = { of: TermName; children?: ComponentChildren }

// Term is a word of the trade that opens what it means under itself.
export function Term({ of, children }: Props) {
  const { opener, meaning } = useTerm({ of, class: 'term', children: children ?? words.terms[of].term })
  return (
    <>
      {opener}
      {meaning}
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

// Label is the label of a field and leads into it. Where its word is a term, a mark beside
// it opens what it means: a label may hold no button.
export function Label({ term, ...label }: LabelProps) {
  return term ? <TermLabel term={term} {...label} /> : <Plain {...label} />
}

const Plain = ({ of, children, ...more }: LabelProps) => (
  <label for={of} {...more}>
    {children}
  </label>
)

function TermLabel({ of, term, children, ...more }: LabelProps & { term: TermName }) {
  const { opener, meaning } = useTerm({ of: term, class: 'asks', label: words.guide.whatIs(words.terms[term].term), children: '?' })
  return (
    <span class="label">
      <span class={`labelled ${more.class ?? ''}`}>
        <label for={of}>{children}</label>
        {'\u00a0' /* the mark stays with the last word */}
        {opener}
      </span>
      {meaning}
    </span>
  )
}
