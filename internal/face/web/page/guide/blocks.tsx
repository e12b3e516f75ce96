import { useSignal } from '@preact/signals'
import { Set } from '../figure'
import { Link } from '../link'
import { words } from '../words'
import { Bits } from './bits'
import { demos } from './demo'
import { drawings, isDrawing } from './drawings'
import type { Block } from './kinds'
import { isDemo } from './prose'

const w = words.guide

export const Blocks = ({ of }: { of: readonly Block[] }) => (
  <>
    {of.map((block, i) => (
      <OneBlock key={i} of={block} />
    ))}
  </>
)

function OneBlock({ of }: { of: Block }) {
  if (typeof of === 'string') return <Paragraph text={of} />
  if ('head' in of) return <h2>{of.head}</h2>
  if ('list' in of) return <Items of={of.list} />
  if ('steps' in of) return <Items of={of.steps} steps />
  if ('pairs' in of) return <Pairs of={of.pairs} />
  if ('keys' in of) return <Pairs of={of.keys} keys />
  if ('figures' in of) return <Figures figures={of.figures} of={of.of} />
  if ('picture' in of) return <Picture kind={of.picture} of={of.of} says={of.says} />
  if ('drawing' in of) return <Drawn name={of.drawing} says={of.says} />
  return <p class="care block">{of.care}</p>
}

const Paragraph = ({ text }: { text: string }) => (
  <p>
    <Bits text={text} />
  </p>
)

function Items({ of, steps }: { of: readonly string[]; steps?: boolean }) {
  const List = steps ? 'ol' : 'ul'
  return (
    <List class="items">
      {of.map((text) => (
        <li key={text}>
          <Bits text={text} />
        </li>
      ))}
    </List>
  )
}

function Pairs({ of, keys }: { of: readonly (readonly [string, string])[]; keys?: boolean }) {
  return (
    <dl class={keys ? 'pairs keys' : 'pairs'}>
      {of.map(([name, says]) => (
        <div key={name}>
          <dt>{keys ? <kbd>{name}</kbd> : <Bits text={name} />}</dt>
          <dd>
            <Bits text={says} />
          </dd>
        </div>
      ))}
    </dl>
  )
}

type FiguresProps = { figures: readonly (readonly [string, string, string])[]; of: string }

// Figures are numbers of a warp of the demo. data-figure is where the reckoning has them.
function Figures({ figures, of }: FiguresProps) {
  return (
    <ul class="lines" role="list" aria-label={isDemo(of) ? w.figuresOf(w.demo[of]) : undefined}>
      {figures.map(([id, says, value]) => (
        <li key={id} class="figure">
          <span class="says">{says}</span>
          <span class="leader" aria-hidden="true" />
          <span class="value" data-figure={id}>
            <Set text={value} />
          </span>
        </li>
      ))}
    </ul>
  )
}

// Picture is one of sley's own, of a warp of the demo; without the demo there is none.
function Picture({ kind, of, says }: { kind: string; of: string; says: string }) {
  const missing = useSignal(false)
  const warp = isDemo(of) ? demos.value[of] : undefined
  if (!warp || !isDemo(of) || missing.value) return null
  return (
    <figure class={`picture of-${kind}`}>
      <Link to={{ page: 'warp', id: warp.id, stage: kind === 'board' ? 'dress' : 'cloth' }}>
        <img src={`/api/documents/${warp.id}/picture?of=${kind}&v=${warp.version}`} alt={`${w.demo[of]}: ${w.pictures[kind] ?? ''}`} onError={() => (missing.value = true)} />
      </Link>
      <figcaption>
        <Bits text={says} />
      </figcaption>
    </figure>
  )
}

function Drawn({ name, says }: { name: string; says: string }) {
  const One = isDrawing(name) ? drawings[name] : null
  return (
    <figure>
      {One && <One />}
      <figcaption>
        <Bits text={says} />
      </figcaption>
    </figure>
  )
}
