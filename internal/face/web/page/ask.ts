import { readAnswer } from './answer'
import type { Answer, Book, Lot, Saved, Setting, Warp } from './kinds'
import type { Doc, Find, Origin, Reckoning, Sheets } from './kinds_doc'

// patience is how long an answer may take, in milliseconds: past it the server counts
// as gone, and what was typed stays.
const patience = 20_000

// lotSize is how many rows one question asks for.
const lotSize = 50

// ask asks the server; with a body it is a change, or a question too long for an address.
export async function ask<T>(path: string, body?: object): Promise<Answer<T>> {
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

// Query is what a list is asked for; what is empty is left out.
export type Query = Record<string, string>

// askLot asks for one part of a list.
export function askLot<T>(list: string, query: Query): Promise<Answer<Lot<T>>> {
  const said = Object.entries({ most: String(lotSize), ...query }).filter(([, value]) => value !== '')
  return ask<Lot<T>>(`/api/${list}?${new URLSearchParams(said)}`)
}

export const askWarps = (query: Query) => askLot<Warp>('warps', query)

export const askDoc = (id: number) => ask<Doc>(`/api/documents/${id}`)

export const askChange = (id: number, base: number, window: string, set: Setting[]) =>
  ask<Saved>(`/api/documents/${id}/changes`, { base, window, set })

// askAct asks for an act of its own on a document: undo, use, start, amend and so on.
export const askAct = (id: number, act: string, base: number, window: string, more: object = {}) =>
  ask<Saved>(`/api/documents/${id}/${act}`, { base, window, ...more })

export const askReckoning = (id: number, set: Setting[], open: string[], only: readonly string[], find?: Find) =>
  ask<Reckoning>(`/api/documents/${id}/reckoning`, { set, open, only, ...(find ? { find } : {}) })

export const askOrigins = (id: number) => ask<Origin[]>(`/api/documents/${id}/origins`)

export const askSheets = (id: number) => ask<Sheets>(`/api/documents/${id}/sheets`)

export const askClearDemo = () => ask<{ removed: number }>('/api/demo/clear', {})
