import { words } from '../words'

// BoardPicture is the way of the warp over her board, drawn to scale.
export function BoardPicture({ id }: { id: number }) {
  return <img class="loom-board" src={`/api/documents/${id}/picture?of=board`} alt={words.warp.path} loading="lazy" />
}
