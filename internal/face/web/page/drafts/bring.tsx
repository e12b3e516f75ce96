import { useRef } from 'preact/hooks'
import type { Problem } from '../kinds'
import { Link } from '../link'
import { words } from '../words'
import { bring, bringing, came, type Came } from './shelf'

const w = words.draft

// Bring is the button by which files are brought in.
export function Bring() {
  const field = useRef<HTMLInputElement>(null)
  const take = () => {
    const files = [...(field.current?.files ?? [])]
    if (field.current) field.current.value = '' // the same file may be brought again once mended
    void bring(files)
  }
  return (
    <>
      <input ref={field} hidden type="file" id="draft-file" multiple aria-label={w.bring} accept=".wif,.toml,.txt,text/plain" onChange={take} />
      <button type="button" class="plain" aria-disabled={bringing.value} onClick={() => bringing.value || field.current?.click()}>
        {w.bring}
      </button>
    </>
  )
}

// CameIn says what became of each file, and everything that is wrong with it.
export function CameIn() {
  return (
    <div role="status">
      {bringing.value && <p class="soft">{w.bringing}</p>}
      {came.value.length > 0 && (
        <section class="came">
          <h2>{w.cameIn}</h2>
          {came.value.map((one) => (
            <CameFile key={one.file} one={one} />
          ))}
          <button type="button" class="plain" onClick={() => (came.value = [])}>
            {words.put}
          </button>
        </section>
      )}
    </div>
  )
}

const CameFile = ({ one }: { one: Came }) => (
  <div class="came-file">
    {one.id > 0 ? (
      <p>
        {w.cameInAs(one.file, one.name)} <Link to={{ page: 'draft', id: one.id }}>{w.goTo(one.name)}</Link>
      </p>
    ) : (
      <p>{w.notIn(one.file)}</p>
    )}
    <ProblemList of={one.problems} />
  </div>
)

// ProblemList are problems with their places, which no field stands for.
export function ProblemList({ of }: { of: Problem[] }) {
  if (of.length === 0) return null
  return (
    <ul class="problem-list" role="list">
      {of.map((p) => (
        <li key={p.path + p.code + p.says} class={p.severity === 'note' ? 'slight' : ''}>
          <p class="soft path">{[p.path, p.read].filter(Boolean).join(': ')}</p>
          <p class={/^["“]/.test(p.says) ? '' : 'sentence'}>
            {p.says}
            {p.fix ? `: ${p.fix}` : ''}
          </p>
        </li>
      ))}
    </ul>
  )
}
