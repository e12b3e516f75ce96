import type { Answer, Conflict, Fault, Problem, Trouble } from './kinds'
import { words } from './words'

type Body = {
  conflict?: Conflict
  problems?: Problem[]
  error?: Trouble
  fault?: Fault
}

// readAnswer sorts an answer by its status. An answer that is not as agreed is our
// fault, never passed over: the report then holds what came.
export function readAnswer<T>(status: number, text: string): Answer<T> {
  if (status === 401) return { is: 'refused' }
  const body = readJSON(text)
  if (body === undefined) return strange(status, text)
  if (status >= 200 && status < 300) return { is: 'done', value: body as T }
  const said = body as Body
  if (status === 409 && said.conflict) return { is: 'conflict', conflict: said.conflict }
  if (status === 422 && said.problems?.length) return { is: 'problems', problems: said.problems }
  if (said.fault) return { is: 'fault', fault: said.fault }
  if (said.error) return { is: 'trouble', status, trouble: said.error }
  return strange(status, text)
}

// readJSON returns undefined for what is no object.
function readJSON(text: string): object | undefined {
  try {
    const value: unknown = JSON.parse(text)
    return typeof value === 'object' && value !== null ? value : undefined
  } catch {
    return undefined
  }
}

function strange<T>(status: number, text: string): Answer<T> {
  return { is: 'fault', fault: { says: words.strangeAnswer, report: `${status}\n${text.slice(0, 2000)}` } }
}
