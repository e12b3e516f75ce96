import { useEffect } from 'preact/hooks'
import type { Kind } from '../document'
import { Link } from '../link'
import type { Place } from '../place'
import { ProblemList } from '../problems'
import { strokes } from '../state'
import { words } from '../words'
import { Canvas } from './canvas'
import { docName, gone, hasTable, summary } from './facts'
import { Findings } from './findings'
import { TakeAlong } from './keep_picture'
import { Looks } from './looks'
import { AddDye, Go, Whole } from './more'
import { Overview } from './overview'
import { fixed, leave, problems, setWhole, stale, whole } from './session'
import { forget } from './sight'
import { Dyes, More, Stretch, Tools } from './tools'

const w = words.table

// TablePage is a draft that is drawn on: of the shelf, or of a warp.
export function TablePage({ of, id }: { of: Kind; id: number }) {
  useEffect(() => {
    forget()
    return () => {
      leave()
      forget()
    }
  }, [id])
  if (gone.value) return <p>{words.document_.lostSays}</p>
  const back: Place = of === 'warp' ? { page: 'warp', id, stage: 'cloth' } : { page: 'draft', id }
  return (
    <>
      <p class="back">
        <Link to={back}>{w.back[of === 'warp' ? 'warp' : 'draft']}</Link>
      </p>
      <div class="title-row">
        <h1>{docName.value ?? w.title}</h1>
        <Summary />
      </div>
      <Standing warp={of === 'warp'} />
      {hasTable.value && <Drawing />}
    </>
  )
}

const Summary = () => <span class="soft">{summary.value}</span>

// Standing is what there is to say before anything is drawn, and of what was drawn last.
function Standing({ warp }: { warp: boolean }) {
  return (
    <>
      {warp && (
        <p class="buttons">
          <button type="button" class="plain" aria-pressed={!whole.value} onClick={() => setWhole(false)}>
            {w.written}
          </button>
          <button type="button" class="plain" aria-pressed={whole.value} onClick={() => setWhole(true)}>
            {w.whole}
          </button>
          <span class="soft">{whole.value ? w.wholeSays : w.writtenSays}</span>
        </p>
      )}
      {fixed.value && <p class="aside">{w.fixed[fixed.value] ?? fixed.value}</p>}
      {stale.value && (
        <p class="care" role="alert">
          {w.stale}
        </p>
      )}
      <div role="status">
        {strokes.value > 1 && <p class="soft">{w.waiting(strokes.value)}</p>}
        <ProblemList of={problems.value} />
      </div>
    </>
  )
}

function Drawing() {
  return (
    <div class="table-page">
      <div class="table-main">
        <Tools />
        <Canvas />
        <p id="table-keys" class="soft">
          {w.keys}
        </p>
        <Go />
        <Dyes />
        <AddDye />
        <More />
        <Stretch />
        <Whole />
      </div>
      <div class="table-side">
        <Overview />
        <Findings />
        <Looks />
        <TakeAlong />
      </div>
    </div>
  )
}
