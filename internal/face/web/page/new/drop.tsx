import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import type { Problem } from '../kinds'
import { Link } from '../link'
import { words } from '../words'
import { outcome, take, taking, type Outcome } from './take'

const n = words.new_

// Drop takes in files that are dropped anywhere on the page, and says what came of it.
export function Drop() {
  const over = useSignal(false)
  useEffect(() => listen((is) => (over.value = is)), [])
  return (
    <div role="status">
      {over.value && <p class="drop">{n.drop}</p>}
      {taking.value && <p class="soft">{n.taking}</p>}
      {outcome.value && <Came of={outcome.value} />}
    </div>
  )
}

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false

function listen(say: (over: boolean) => void): () => void {
  const onOver = (event: DragEvent) => {
    if (!hasFiles(event)) return
    event.preventDefault()
    say(true)
  }
  const onLeave = (event: DragEvent) => event.relatedTarget === null && say(false)
  const onDrop = (event: DragEvent) => {
    if (!hasFiles(event)) return
    event.preventDefault()
    say(false)
    void take(event.dataTransfer?.files ?? [])
  }
  document.addEventListener('dragover', onOver)
  document.addEventListener('dragleave', onLeave)
  document.addEventListener('drop', onDrop)
  return () => {
    document.removeEventListener('dragover', onOver)
    document.removeEventListener('dragleave', onLeave)
    document.removeEventListener('drop', onDrop)
  }
}

function Came({ of }: { of: Outcome }) {
  return (
    <section class="came" aria-label={n.came}>
      {of.added.map(({ name, place }) => (
        <p key={name}>
          {n.added} <Link to={place}>{name}</Link>
        </p>
      ))}
      {of.bad.map(({ name, problems }) => (
        <BadFile key={name} name={name} problems={problems} />
      ))}
      {of.large.map((name) => (
        <p key={name} class="care">
          {n.large(name)}
        </p>
      ))}
      <button type="button" class="link" onClick={() => (outcome.value = null)}>
        {words.put}
      </button>
    </section>
  )
}

// BadFile is a file of which nothing was added, with everything that is wrong with it.
function BadFile({ name, problems }: { name: string; problems: Problem[] }) {
  const wrong = problems.filter((p) => p.severity !== 'note')
  return (
    <>
      <h2>{n.bad(name)}</h2>
      <p class="soft">{n.badSays(wrong.length)}</p>
      <ol class="wrong" role="list">
        {wrong.map((p, i) => (
          <li key={i}>
            <p class="soft">{p.line ? n.line(p.line) : p.path}</p>
            <div>
              {p.excerpt && <code>{p.excerpt}</code>}
              <p class="sentence">{p.says}</p>
              {p.fix && <p class="soft sentence">{p.fix}</p>}
            </div>
          </li>
        ))}
      </ol>
    </>
  )
}
