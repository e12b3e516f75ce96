import { readAnswer } from './answer'
import type { Answer, Book, Lot, Saved, Setting } from './kinds'

// patience is how long an answer may take, in milliseconds: past it the server counts
// as gone, and what was typed stays.
const patience = 20_000

// lotSize is how many warps one question asks for.
const lotSize = 50

async function ask<T>(path: string, body?: object): Promise<Answer<T>> {
  const request: RequestInit = { credentials: 'same-origin', signal: AbortSignal.timeout(patience) }
  if (body) {
    request.method = 'POST'
    request.headers = { 'Content-Type': 'application/json' }
    request.body = JSON.stringify(body)
  }
  try {
    const response = await fetch(path, request)
    return readAnswer<T>(response.status, await response.text())
  } catch {
    return { is: 'gone' } // refused, cut off or too slow: all the same to the weaver
  }
}

export const askBook = () => ask<Book>('/api/book')

export const askWarps = (search: string, after: string) =>
  ask<Lot>(`/api/warps?${new URLSearchParams({ words: search, after, most: String(lotSize) })}`)

export const askChange = (id: number, base: number, window: string, set: Setting[]) =>
  ask<Saved>(`/api/documents/${id}/changes`, { base, window, set })

export const askStep = (id: number, base: number, window: string, way: 'undo' | 'redo') =>
  ask<Saved>(`/api/documents/${id}/${way}`, { base, window })

export const askClearDemo = () => ask<{ removed: number }>('/api/demo/clear', {})
