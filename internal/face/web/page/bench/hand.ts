import { computed } from '@preact/signals'
import type { Warp } from '../kinds'
import { lotsOf } from '../lots'
import { edits } from '../state'

// hand are the warps in hand: planned, on the loom, woven.
export const hand = lotsOf<Warp>('warps', { stage: 'hand' })

// strays are edits of warps that the list does not show, by a search or because they
// are gone.
export const strays = computed(() => {
  const shown = new Set(hand.items.value?.map((w) => w.id))
  return Object.values(edits.value).filter((edit) => !shown.has(edit.id))
})
