import { Link } from '../link'
import { ProblemList } from '../problems'
import { words } from '../words'
import type { Fate } from './fate'
import { fates } from './take'

const t = words.taking

// Came says what became of each file, and everything that is to be said of it.
export function Came() {
  if (fates.value.length === 0) return null
  return (
    <section class="came" aria-label={t.came}>
      {fates.value.map((one, i) => (
        <CameFile key={i} one={one} />
      ))}
      <button type="button" class="plain" onClick={() => (fates.value = [])}>
        {words.put}
      </button>
    </section>
  )
}

function CameFile({ one }: { one: Fate }) {
  return (
    <div class="came-file">
      <Says one={one} />
      <ProblemList of={one.problems} />
    </div>
  )
}

function Says({ one }: { one: Fate }) {
  switch (one.is) {
    case 'added':
      return (
        <p>
          {t.added(one.file)} <Link to={one.place}>{one.name}</Link>
        </p>
      )
    case 'beside':
      return <p>{t.beside(one.file, one.of)}</p>
    case 'refused':
      return <Refused one={one} />
    default:
      return <p class="care">{t[one.is](one.file)}</p>
  }
}

// Refused is a file of which nothing was added.
function Refused({ one }: { one: Fate }) {
  return (
    <>
      <h2>{t.refused(one.file)}</h2>
      <p class="soft">{t.refusedSays(one.problems.filter((p) => p.severity === 'error').length)}</p>
    </>
  )
}
