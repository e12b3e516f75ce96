import { ask } from '../ask'
import { heard } from '../heard'
import { freshId, windowId } from '../window'

// tell writes something that happened to a document; sent twice it counts once.
export async function tell(id: number, route: string, what: object): Promise<boolean> {
  const answer = await ask<{ id: string }>(`/api/documents/${id}/${route}`, { id: freshId(), window: await windowId, ...what })
  return heard(answer)
}
