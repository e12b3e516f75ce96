import { useSignal } from '@preact/signals'
import { askAct, askDoc } from '../ask'
import { heard } from '../heard'
import { Text } from '../inputs'
import { refresh } from '../refresh'
import { windowId } from '../window'
import { words } from '../words'

const w = words.loomside

const keys = [
  ['ends', 'builtEnds'],
  ['wound', 'builtWound'],
  ['sett', 'builtSett'],
  ['picks', 'builtPicks'],
] as const

// Amending says what really stands on the loom; everything follows it.
export function Amending({ id }: { id: number }) {
  const typed = useSignal<Record<string, string>>({})
  const wrong = useSignal('')
  const send = async () => {
    const set = Object.entries(typed.value).filter(([, value]) => value.trim() !== '')
    const now = await askDoc(id)
    if (set.length === 0 || !heard(now)) return
    const answer = await askAct(id, 'amend', now.value.version, await windowId, { set: set.map(([path, value]) => ({ path, value })) })
    wrong.value = answer.is === 'problems' ? answer.problems.map((one) => one.says).join('. ') : ''
    if (answer.is === 'problems' || !heard(answer)) return
    typed.value = {}
    await refresh()
  }
  return (
    <details class="loom-more">
      <summary>{words.warp.amend}</summary>
      <p class="soft">{w.amendSays}</p>
      <form class="fields" onSubmit={(event) => (event.preventDefault(), void send())}>
        {keys.map(([key, label]) => (
          <Text key={key} id={`loom-${key}`} label={words.warp[label]} number={key === 'ends'} value={typed.value[key] ?? ''} set={(to) => (typed.value = { ...typed.value, [key]: to })} />
        ))}
        <p class="field act">
          <button type="submit" class="plain">
            {w.amendNow}
          </button>
        </p>
      </form>
      {wrong.value && (
        <p class="care" role="alert">
          {wrong.value}
        </p>
      )}
    </details>
  )
}
