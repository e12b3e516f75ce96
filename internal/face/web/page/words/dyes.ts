import { colourOf, lightness } from '../table/light'

// hues are what colours are called by their hue in degrees, each up to where the next begins;
// the groups are sley's own. What is dark or pale of some has a name of its own.
const hues: readonly [upTo: number, name: string, dark?: string, pale?: string][] = [
  [14, 'red', 'dark red', 'pink'],
  [42, 'orange', 'brown', 'sand'],
  [68, 'yellow', 'olive', 'cream'],
  [160, 'green'],
  [195, 'blue-green'],
  [255, 'blue'],
  [290, 'violet'],
  [340, 'purple', 'plum', 'pink'],
  [360, 'red', 'dark red', 'pink'],
]

const greys: readonly [upTo: number, name: string][] = [
  [18, 'black'],
  [40, 'dark grey'],
  [70, 'grey'],
  [90, 'pale grey'],
  [101, 'white'],
]

// dyeNamed calls a colour of the palette something, to be read aloud.
export function dyeNamed(hex: string): string {
  const [r, g, b] = colourOf(hex)
  const light = lightness([r, g, b])
  const [most, least] = [Math.max(r, g, b), Math.min(r, g, b)]
  if (most - least < 22) return greys.find(([upTo]) => light < upTo)?.[1] ?? 'white'
  const [, name, dark, pale] = hues.find(([upTo]) => hueOf(r, g, b) <= upTo) ?? (hues[0] as (typeof hues)[0])
  if (light < 40) return dark ?? `dark ${name}`
  return light > 78 && most - least < 110 ? (pale ?? `pale ${name}`) : name
}

// hueOf is the hue in degrees, red at 0 (the hexagon of HSL).
function hueOf(r: number, g: number, b: number): number {
  const most = Math.max(r, g, b)
  const off = most - Math.min(r, g, b)
  const turn = most === r ? ((g - b) / off + 6) % 6 : most === g ? (b - r) / off + 2 : (r - g) / off + 4
  return 60 * turn
}

// letterOf calls a colour of a palette without names, as the shorthand does: A, B to Z, AA.
export function letterOf(i: number): string {
  const last = String.fromCharCode(65 + (i % 26))
  return i < 26 ? last : letterOf(Math.floor(i / 26) - 1) + last
}
