import { Set } from './figure'
import type { Problem } from './kinds'
import { Link } from './link'
import type { Place } from './place'
import { words } from './words'

// Sentence is what is wrong and what to do about it. What is quoted first stands as it was
// typed: it gets no capital.
export function Sentence({ says, fix, role, class: more }: { says: string; fix?: string | undefined; role?: 'alert'; class?: string }) {
  return (
    <p class={`${more ?? ''} ${/^["“'‘]/.test(says) ? 'quoted' : 'sentence'}`} role={role}>
      <Set text={says} />
      {fix ? ': ' : ''}
      <Set text={fix ?? ''} />
    </p>
  )
}

// Problems are those of a field, beside which they stand.
export function Problems({ of }: { of: readonly Problem[] }) {
  return (
    <>
      {of.map((p) => (
        <Sentence key={p.code + p.path + p.says} class={p.severity === 'note' ? 'aside' : 'care'} says={p.says} fix={p.fix} />
      ))}
    </>
  )
}

type ListProps = { of: readonly Problem[]; to?: (path: string) => Place }

// ProblemList are problems which no field stands for, each with its place, or with the way
// to where it can be mended.
export function ProblemList({ of, to }: ListProps) {
  if (of.length === 0) return null
  return (
    <ul class="problem-list" role="list">
      {of.map((p, i) => (
        <li key={i} class={p.severity === 'note' ? 'slight' : ''}>
          {!to && <Where of={p} />}
          <Sentence says={p.says} fix={p.fix} />
          {to && p.path && (
            <Link to={to(p.path)} label={`${words.warp.goThere}: ${p.path}`}>
              {words.warp.goThere}
            </Link>
          )}
        </li>
      ))}
    </ul>
  )
}

// Where is the line of a file as it stands there, or else the path and what was read.
function Where({ of }: { of: Problem }) {
  const written = of.line ? (of.excerpt ?? '').trim() : ''
  const place = [of.line ? words.line(of.line) : '', written ? '' : of.path].filter(Boolean).join(', ')
  const read = written || (of.read ?? '')
  if (!place && !read) return null
  return (
    <p class="where">
      {place}
      {place && read ? ': ' : ''}
      {read && <code>{read}</code>}
    </p>
  )
}
