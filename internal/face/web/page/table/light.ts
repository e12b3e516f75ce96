// The light of colours, and how they look to eyes that see fewer of them.

// Colour is sRGB (IEC 61966-2-1), each part from 0 to 255.
export type Colour = readonly [r: number, g: number, b: number]

// Light is the same as shares of full light, which may be added and averaged.
export type Light = readonly [r: number, g: number, b: number]

// Seeing is how a picture is looked at: in full colour, as the greys that are as light, or as
// those see who lack the cones for long, middle or short waves. What it gives is a
// simulation, to tell whether colours can be told apart.
export type Seeing = 'full' | 'grey' | 'protan' | 'deutan' | 'tritan'

// colourOf reads #rrggbb; white where a text is no colour.
export function colourOf(text: string): Colour {
  const n = /^#[0-9a-f]{6}$/i.test(text) ? parseInt(text.slice(1), 16) : 0xffffff
  return [n >> 16, (n >> 8) & 0xff, n & 0xff]
}

export const cssOf = ([r, g, b]: Colour): string => `#${((1 << 24) | (r << 16) | (g << 8) | b).toString(16).slice(1)}`

// linear is the light of one part of a colour, coded the other way (IEC 61966-2-1).
const linear = (part: number): number => (part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4)

const coded = (light: number): number => Math.round(255 * (light <= 0.0031308 ? 12.92 * Math.max(light, 0) : 1.055 * Math.min(light, 1) ** (1 / 2.4) - 0.055))

const lights = Float64Array.from({ length: 256 }, (_, part) => linear(part))

// lightOf is the light of a colour, colourOfLight the colour of a light, as near as a screen
// can show it.
export const lightOf = ([r, g, b]: Colour): Light => [lights[r] ?? 0, lights[g] ?? 0, lights[b] ?? 0]
export const colourOfLight = ([r, g, b]: Light): Colour => [coded(r), coded(g), coded(b)]

const codes = Uint8Array.from({ length: 4097 }, (_, i) => coded(i / 4096))

// partOf is one part of a colour for light from 0 to 1, from a table: for many pixels.
export const partOf = (light: number): number => codes[Math.min(Math.max(Math.round(light * 4096), 0), 4096)] ?? 0

// luminance is how light a light is, from 0 to 1 (IEC 61966-2-1, primaries of ITU-R BT.709).
export const luminance = ([r, g, b]: Light): number => 0.2126 * r + 0.7152 * g + 0.0722 * b

// lightness is CIE L* of a colour, from 0 for black to 100 for white: equal steps look
// equally far apart (CIE 15, L* = 116 f(Y) - 16).
export function lightness(colour: Colour): number {
  const y = luminance(lightOf(colour))
  return y > (6 / 29) ** 3 ? 116 * Math.cbrt(y) - 16 : (29 / 3) ** 3 * y
}

// against is black or white, whichever stands out: contrast against both is the same at a
// luminance of 0.179 (WCAG 2.2, contrast ratio).
export const against = (colour: Colour): Colour => (luminance(lightOf(colour)) < 0.179 ? [255, 255, 255] : [0, 0, 0])

type Matrix = readonly [Light, Light, Light]

const times = (m: Matrix, v: Light): Light => [dot(m[0], v), dot(m[1], v), dot(m[2], v)]
const dot = (a: Light, b: Light): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

// Who lacks one kind of cones sees colours of one plane, or of two halves of planes, in the
// place of all that differ in what those cones would tell. The planes for long and middle
// waves are those of F. Viénot, H. Brettel, J. D. Mollon, "Digital video colourmaps for
// checking the legibility of displays by dichromats", Color Research and Application 24
// (1999) 243-252, with the cones of Smith and Pokorny, here multiplied out for linear sRGB
// by the coding of sRGB in the place of a power of 2.2, and without the paper's narrowing of
// the range, so that a few strong colours are cut off at the limits of the screen.
const protan: Matrix = [
  [0.11238, 0.88762, 0],
  [0.11238, 0.88762, 0],
  [0.00401, -0.00401, 1],
]
const deutan: Matrix = [
  [0.29275, 0.70725, 0],
  [0.29275, 0.70725, 0],
  [-0.02234, 0.02234, 1],
]

// For short waves it takes two halves: H. Brettel, F. Viénot, J. D. Mollon, "Computerized
// simulation of color appearance for dichromats", Journal of the Optical Society of America A
// 14 (1997) 2647-2655, with lights of 485 and 660 nm that look the same to all. The figures
// are from memory; the tests hold them against the cones and against those two lights.
const tritanReds: Matrix = [
  [1.01277, 0.13548, -0.14826],
  [-0.01243, 0.86812, 0.14431],
  [0.07589, 0.805, 0.11911],
]
const tritanGreens: Matrix = [
  [0.93678, 0.18979, -0.12657],
  [0.06154, 0.81526, 0.1232],
  [-0.37562, 1.12767, 0.24796],
]
const halves: Light = [0.03901, -0.02788, -0.01113]

// seenLight is a light as it looks; it may lie beyond what a screen can show.
export function seenLight(light: Light, seeing: Seeing): Light {
  switch (seeing) {
    case 'grey': {
      const y = luminance(light)
      return [y, y, y]
    }
    case 'protan':
      return times(protan, light)
    case 'deutan':
      return times(deutan, light)
    case 'tritan':
      return times(dot(halves, light) >= 0 ? tritanReds : tritanGreens, light)
  }
  return light
}

// seenAs is a colour as it looks.
export const seenAs = (colour: Colour, seeing: Seeing): Colour => (seeing === 'full' ? colour : colourOfLight(seenLight(lightOf(colour), seeing)))
