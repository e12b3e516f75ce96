import type { Json } from './kinds'

// A document's tree and the paths into it, as docs/planfile.md has them.

type Step = string | number

const plain = /^[^\s."[\]\\=]([^."[\]\\=]*[^\s."[\]\\=])?$/

// keyOf writes one key as part of a path.
const keyOf = (key: string): string => (plain.test(key) ? key : JSON.stringify(key))

// pathOf joins keys and numbers of items.
export function pathOf(...steps: Step[]): string {
  return steps.reduce<string>((path, step) => {
    if (typeof step === 'number') return `${path}[${step}]`
    return path === '' ? keyOf(step) : `${path}.${keyOf(step)}`
  }, '')
}

// under puts a path behind one that is written already.
export const under = (path: string, ...steps: Step[]): string =>
  steps.reduce<string>((at, step) => (typeof step === 'number' ? `${at}[${step}]` : `${at}.${keyOf(step)}`), path)

const token = /"((?:[^"\\]|\\.)*)"|\[(\d+)\]|([^.[\]"]+)/g

// stepsOf takes a path apart.
export function stepsOf(path: string): Step[] {
  return [...path.matchAll(token)].map(([, quoted, number, bare]) =>
    quoted !== undefined ? (JSON.parse(`"${quoted}"`) as string) : number !== undefined ? Number(number) : (bare ?? ''),
  )
}

// at gives what stands at a path; undefined where nothing does.
export function at(tree: Json | undefined, path: string): Json | undefined {
  let value: Json | undefined = tree
  for (const step of stepsOf(path)) {
    if (typeof value !== 'object' || value === null) return undefined
    value = Array.isArray(value) ? (typeof step === 'number' ? value[step] : undefined) : Object.hasOwn(value, step) ? value[String(step)] : undefined
  }
  return value
}

// isTable tells a table from a text, a number or a list.
export const isTable = (value: Json | undefined): value is { [key: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

// textOf is a value as it stands in a field.
export function textOf(value: Json | undefined): string {
  if (value === undefined || value === null) return ''
  if (Array.isArray(value)) return value.map(textOf).join(', ')
  return isTable(value) ? JSON.stringify(value) : String(value)
}

// keysOf are the keys of the table at a path, in its order.
export const keysOf = (tree: Json | undefined, path: string): string[] => {
  const value = at(tree, path)
  return isTable(value) ? Object.keys(value) : []
}

// itemsOf is how many items the list at a path has.
export const itemsOf = (tree: Json | undefined, path: string): number => {
  const value = at(tree, path)
  return Array.isArray(value) ? value.length : 0
}
