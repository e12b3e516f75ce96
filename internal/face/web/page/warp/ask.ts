import { ask } from '../ask'
import { heard } from '../heard'
import type { Saved } from '../kinds'
import { freshId, windowId } from '../window'

// askCopy makes a copy of a document and gives its id, 0 where that failed.
export async function askCopy(id: number): Promise<number> {
  const answer = await ask<Saved>(`/api/documents/${id}/copy`, { window: await windowId })
  return heard(answer) ? answer.value.id : 0
}

// tell writes something that happened to a document; sent twice it counts once.
export async function tell(id: number, route: string, what: object): Promise<boolean> {
  const answer = await ask<{ id: string }>(`/api/documents/${id}/${route}`, { id: freshId(), window: await windowId, ...what })
  return heard(answer)
}
