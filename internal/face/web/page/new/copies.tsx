import { copy } from '../document'
import type { Warp } from '../kinds'
import { lotsOf } from '../lots'
import { More, Search } from '../search'
import { words } from '../words'

const n = words.new_

// copied are the warps that can be woven again, few at a time.
export const copied = lotsOf<Warp>('warps', { most: '6' })

// Copies begins a warp as one that is in the book already.
export function Copies() {
  const all = copied.items.value
  return (
    <section class="group">
      <h2>{n.copy}</h2>
      <p class="soft">{n.copySays}</p>
      <Search list={copied} found={words.found} foundFor={words.foundFor} label={n.copySearch} />
      {all && all.length === 0 && <p class="soft">{copied.query.value.words ? words.noneFound(copied.query.value.words) : n.copyNone}</p>}
      <ul class="copies" role="list">
        {(all ?? []).map((warp) => (
          <li key={warp.id}>
            <span>
              {warp.name} {warp.cloth && <span class="soft">{warp.cloth}</span>}
            </span>
            <button type="button" class="link" aria-label={n.copyOf(warp.name)} onClick={() => void copy('warp', warp.id)}>
              {n.copyThis}
            </button>
          </li>
        ))}
      </ul>
      <More list={copied} />
    </section>
  )
}
