import { useSignal } from '@preact/signals'
import { ask } from '../ask'
import { doc } from '../doc'
import { Group } from '../field'
import { heard } from '../heard'
import { Text } from '../inputs'
import type { Problem } from '../kinds'
import type { Origin } from '../kinds_doc'
import { Link } from '../link'
import { ProblemList } from '../problems'
import { refresh } from '../refresh'
import { freshId, windowId } from '../window'
import { words } from '../words'
import { origins } from './shelf'

const w = words.warp

// Weighed puts the shelf right: what is left of each yarn that came from there is weighed.
export function Weighed() {
  const yarns = origins.value.filter((o) => o.kind === 'yarn' && o.id && !o.removed)
  if (yarns.length === 0) return null
  return (
    <Group title={w.weighTitle} says={w.weighSays}>
      {yarns.map((one) => (
        <Left key={one.part} of={one} />
      ))}
    </Group>
  )
}

function Left({ of }: { of: Origin }) {
  const typed = useSignal('')
  const written = useSignal('')
  const wrong = useSignal<Problem[]>([])
  const send = async () => {
    const body = { id: freshId(), window: await windowId, what: 'measured', typed: typed.value, note: w.weighNote(doc.value?.name ?? '') }
    const answer = await ask(`/api/documents/${of.id}/stock`, body)
    wrong.value = answer.is === 'problems' ? answer.problems : []
    if (answer.is === 'problems' || !heard(answer)) return
    written.value = typed.value
    typed.value = ''
    await refresh()
  }
  return (
    <form
      class="fields weigh"
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      <Text id={`left-${of.part.replace(/\W/g, '-')}`} label={w.leftOf(of.name ?? '')} placeholder="120 g" value={typed.value} set={(to) => (typed.value = to)} />
      <p class="field act">
        <button type="submit" class="plain" aria-label={w.weighNow(of.name ?? '')}>
          {w.enterHere}
        </button>
      </p>
      <div class="field wide" role="status">
        <ProblemList of={wrong.value} />
        {written.value && of.id && (
          <p class="soft">
            {w.weighed(written.value)} <Link to={{ page: 'yarn', id: of.id }}>{of.name}</Link>
          </p>
        )}
      </div>
    </form>
  )
}
