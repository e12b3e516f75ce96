import { evening, turnEvening } from '../loomside/evening'
import { words } from '../words'
import { goTo } from './at'
import { AwakeButton } from './awake'
import { type Held, hand } from './hand'

const w = words.beside

// HandPage lists the warps in hand, large; one press leads to the loom.
export function HandPage() {
  const now = hand.value
  return (
    <>
      <h1>{w.hand}</h1>
      {!now && <p class="soft">{words.reading}</p>}
      {now && now.warps.length === 0 && <p>{w.handNone}</p>}
      <ul class="held" role="list">
        {now?.warps.map((warp) => (
          <One key={warp.id} warp={warp} />
        ))}
      </ul>
      <p class="buttons device-tools">
        <button type="button" class="plain" aria-pressed={evening.value} onClick={turnEvening}>
          {words.loomside.evening}
        </button>
        <AwakeButton />
      </p>
      <p class="soft">{w.awakeSays}</p>
      {now && <p class="soft">{w.called(now.device)}</p>}
    </>
  )
}

function One({ warp }: { warp: Held }) {
  const { id, name, stage, next, progress } = warp
  return (
    <li>
      <a
        class="held-name"
        href={`/loomside/${id}`}
        onClick={(event) => {
          event.preventDefault()
          goTo({ page: 'loom', id })
        }}
      >
        {name}
      </a>
      <p class="soft">{next ?? stage}</p>
      {progress && progress.of > 0 && <progress value={progress.done} max={progress.of} aria-label={words.progressOf(name)} />}
    </li>
  )
}
