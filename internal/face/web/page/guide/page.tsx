import { Link } from '../link'
import { words } from '../words'
import { Blocks } from './blocks'
import { Bits } from './bits'
import { readDemos } from './demo'
import type { Part } from './kinds'
import { demosOf } from './prose'

const w = words.guide

export const partOf = (id: string): Part | undefined => w.parts.find((part) => part.id === id)

// readGuide looks for the warps of the demo that a part speaks of.
export const readGuide = (id: string): Promise<boolean> => readDemos(demosOf(partOf(id)))

export const guideTitle = (id: string): string => partOf(id)?.title ?? w.title

// Guide is one part of the guide, or the list of all.
export function Guide({ part }: { part: string }) {
  const now = partOf(part)
  if (part === '') return <Contents />
  if (!now) return <NoPart />
  return (
    <div class="guided">
      <Parts now={part} />
      <article>
        <h1>{now.title}</h1>
        <Blocks of={now.blocks} />
        <Ways now={now} />
      </article>
    </div>
  )
}

function Contents() {
  return (
    <div class="contents">
      <h1>{w.title}</h1>
      <p class="lead">{w.intro}</p>
      <ol role="list">
        {w.parts.map((part) => (
          <li key={part.id}>
            <Link to={{ page: 'guide', part: part.id }}>{part.title}</Link> <span class="soft">{part.says}</span>
          </li>
        ))}
        <li>
          <Link to={{ page: 'glossary' }}>{w.words}</Link> <span class="soft">{w.wordsSay}</span>
        </li>
      </ol>
    </div>
  )
}

function NoPart() {
  return (
    <>
      <h1>{w.noPart}</h1>
      <p>
        <Bits text={w.noPartSays} /> <Link to={{ page: 'guide', part: '' }}>{w.toGuide}</Link>
      </p>
    </>
  )
}

// Parts are all parts, with the one that is shown marked.
export function Parts({ now }: { now: string }) {
  return (
    <nav class="parts" aria-label={w.partsOf}>
      <ol role="list">
        {w.parts.map((part) => (
          <li key={part.id}>
            <Link to={{ page: 'guide', part: part.id }} current={part.id === now}>
              {part.title}
            </Link>
          </li>
        ))}
        <li>
          <Link to={{ page: 'glossary' }} current={now === 'glossary'}>
            {w.words}
          </Link>
        </li>
      </ol>
    </nav>
  )
}

// Ways lead to the part before and the one after.
function Ways({ now }: { now: Part }) {
  const at = w.parts.indexOf(now)
  const [before, after] = [w.parts[at - 1], w.parts[at + 1]]
  return (
    <p class="ways">
      {before && <Link to={{ page: 'guide', part: before.id }}>{w.before(before.title)}</Link>}
      {after ? (
        <Link to={{ page: 'guide', part: after.id }} class="plain">
          {w.after(after.title)}
        </Link>
      ) : (
        <Link to={{ page: 'bench' }} class="plain">
          {words.toBench}
        </Link>
      )}
    </p>
  )
}
