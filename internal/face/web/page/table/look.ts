import type { Axis } from './axis'
import type { Table } from './cloth'
import { against, colourOf, cssOf, lightOf, seenAs, type Colour, type Light, type Seeing } from './light'
import type { Sight, View } from './view'

// How a draft is drawn. Colours of the page are passed in and never read from its style, so
// that a picture is the same whatever it is drawn for.

// Cells is how crossings are drawn: filled where the warp is on top; in the colour of the
// thread on top; or in that colour with a small mark where the warp is on top.
export type Cells = 'marks' | 'colours' | 'both'

// Tokens are the colours of the page, as #rrggbb.
export type Tokens = {
  readonly ground: string // around the drawing
  readonly paper: string // an empty cell
  readonly ink: string // a filled cell, and frames
  readonly soft: string // numbers
  readonly rule: string // a thin line
  readonly strong: string // every fifth line
  readonly chosen: string // what is selected
  readonly found: string // what a finding or a search points at
}

export type Look = { readonly cells: Cells; readonly seeing: Seeing; readonly tokens: Tokens }

// Dye is a colour in the ways that a picture needs it: as a pixel, as a style, as light, and
// the pixel that stands out against it.
export type Dye = { readonly pixel: number; readonly css: string; readonly light: Light; readonly against: number }

export type Dyes = {
  readonly marks: boolean // colours are not drawn
  readonly dots: boolean // a mark where the warp is on top
  readonly palette: readonly Dye[]
  readonly white: Dye // of a colour beyond the palette, as on paper
  readonly ink: Dye
  readonly paper: Dye
  readonly rule: Dye
  readonly strong: Dye
}

// pixelOf is a colour as four bytes of a picture, red first, read as one number: as all
// machines that run browsers keep numbers.
export const pixelOf = ([r, g, b]: Colour): number => (0xff000000 | (b << 16) | (g << 8) | r) >>> 0

const dyeOf = (colour: Colour): Dye => ({ pixel: pixelOf(colour), css: cssOf(colour), light: lightOf(colour), against: pixelOf(against(colour)) })

// dyesOf are the colours of a table as they are looked at. Those of the page stay as they
// are; a draft without a palette is drawn in marks.
export function dyesOf(palette: readonly string[], { cells, seeing, tokens }: Look): Dyes {
  const seen = (text: string): Dye => dyeOf(seenAs(colourOf(text), seeing))
  const plain = (text: string): Dye => dyeOf(colourOf(text))
  return {
    marks: cells === 'marks' || palette.length === 0,
    dots: cells === 'both' && palette.length > 0,
    palette: palette.map(seen),
    white: seen('#ffffff'),
    ink: plain(tokens.ink),
    paper: plain(tokens.paper),
    rule: plain(tokens.rule),
    strong: plain(tokens.strong),
  }
}

export const dyeAt = (dyes: Dyes, i: number): Dye => dyes.palette[i] ?? dyes.white

// Drawn is a cloth being drawn with cells of one size, in dots.
export type Drawn = {
  readonly table: Table
  readonly dyes: Dyes
  readonly sight: Sight
  readonly cols: Axis
  readonly rows: Axis
  readonly cell: number
}

export const drawnOf = (table: Table, { sight, cols, rows, dots }: View, look: Look): Drawn => ({ table, dyes: dyesOf(table.palette, look), sight, cols, rows, cell: dots })

// smallDrawn is the same cloth with cells of another size: for an overview.
export const smallDrawn = (drawn: Drawn, cell: number): Drawn => ({ ...drawn, cell })

// Lines gives a strip of a picture line by line.
export interface Lines {
  // line is the pixels of the strip at a dot from the top of the cloth; they are to be read
  // at once and not to be changed. 0 is nothing.
  line(y: number): Uint32Array
}
