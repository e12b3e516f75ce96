import { Select, TickBox } from '../inputs'
import { words } from '../words'
import type { Arrangement } from './bands'
import type { Seeing } from './light'
import type { Cells } from './look'
import { arrangement, cells, seeing, toScale } from './sight'

const w = words.table

// Looks is how the draft is drawn: it changes nothing of it.
export function Looks() {
  const now = arrangement.value
  const set = (some: Partial<Arrangement>): void => {
    arrangement.value = { ...now, ...some }
  }
  return (
    <details class="looks">
      <summary>{w.looks}</summary>
      <div class="fields">
        <Select id="look-cells" label={w.cells} value={cells.value} choices={w.cellChoices} set={(to) => (cells.value = to as Cells)} />
        <Select id="look-seeing" label={w.seeing} value={seeing.value} choices={w.seeingChoices} hint={w.seeingSays} set={(to) => (seeing.value = to as Seeing)} />
        <Select id="look-ends" label={w.endsFrom} value={now.fromRight ? 'right' : 'left'} choices={w.sides} set={(to) => set({ fromRight: to === 'right' })} />
        <Select id="look-picks" label={w.picksRun} value={now.upwards ? 'up' : 'down'} choices={w.ways2} set={(to) => set({ upwards: to === 'up' })} />
        <Select id="look-threading" label={w.threadingAt} value={now.below ? 'below' : 'above'} choices={w.heights} set={(to) => set({ below: to === 'below' })} />
        <Select id="look-treadling" label={w.treadlingAt} value={now.left ? 'left' : 'right'} choices={w.sides2} set={(to) => set({ left: to === 'left' })} />
      </div>
      <TickBox id="look-back" label={w.fromBack} value={now.back} set={(to) => set({ back: to })} />
      <TickBox id="look-alone" label={w.alone} value={now.alone} set={(to) => set({ alone: to })} />
      <TickBox id="look-scale" label={w.toScale} value={toScale.value} set={(to) => (toScale.value = to)} />
    </details>
  )
}
