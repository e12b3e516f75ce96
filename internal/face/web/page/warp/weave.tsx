import { useSignal } from '@preact/signals'
import { doc, numbers } from '../doc'
import { Group } from '../field'
import { Text } from '../inputs'
import { Link } from '../link'
import { logNow } from '../loomside/logged'
import { LoomsideLog } from '../loomside/log'
import { refresh } from '../refresh'
import { words } from '../words'
import { tell } from './ask'

const w = words.warp

// Weave keeps the place and the log of a warp on the loom.
export function Weave() {
  const now = doc.value
  if (!now) return null
  if (!now.started) {
    return (
      <Group title={w.weaveTitle}>
        <p>
          {w.notBegun} <Link to={{ page: 'warp', id: now.id, stage: 'dress' }}>{w.stages.dress}</Link>
        </p>
      </Group>
    )
  }
  return (
    <div class="columns">
      <div>
        <Woven id={now.id} />
      </div>
      <div class="answers">
        <LoomsideLog id={now.id} place={wovenOf(now.id)} />
      </div>
    </div>
  )
}

const picksPlanned = (): string =>
  numbers.value?.sections.flatMap((s) => s.lines).find((line) => line.id === 'weft.picks')?.value ?? ''

// wovenOf is the pick that is woven, by the hours of the log.
const wovenOf = (id: number): number => (logNow.value?.id === id ? logNow.value.hours.woven : 0)

function Woven({ id }: { id: number }) {
  const typed = useSignal('')
  const send = async () => {
    if (await tell(id, 'woven', { pick: Number(typed.value) })) typed.value = ''
    await refresh()
  }
  return (
    <Group title={w.weaveTitle} says={words.loomside.openSays}>
      <p>
        <Link to={{ page: 'loomside', id }} class="strong">
          {words.loomside.open}
        </Link>
      </p>
      <p class="total">{w.wovenOf(wovenOf(id), picksPlanned())}</p>
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault()
          void send()
        }}
      >
        <Text id="woven" label={w.woven} number value={typed.value} set={(to) => (typed.value = to)} />
        <p class="field act">
          <button type="submit" class="strong">
            {w.sayWoven}
          </button>
        </p>
      </form>
    </Group>
  )
}
