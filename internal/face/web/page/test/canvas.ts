import assert from 'node:assert/strict'
import { pixelOf } from '../table/look'
import { colourOf } from '../table/light'
import type { Ink, MakeSurface } from '../table/surface'

// Canvas stands in for one of the browser: it keeps its dots, notes what is written and
// stroked, and refuses what would be blurred.
export class Canvas {
  fillStyle = '#000000'
  strokeStyle = '#000000'
  lineWidth = 1
  globalAlpha = 1
  font = ''
  textAlign = 'start'
  textBaseline = 'alphabetic'
  copies = 0
  filled = 0 // dots
  texts: { text: string; x: number; y: number }[] = []
  circles: { x: number; y: number }[] = []
  strokes: { x: number; y: number }[] = [] // where each line begins
  tints: { x: number; y: number; w: number; h: number; css: string }[] = []
  readonly dots: Uint32Array

  constructor(
    readonly w: number,
    readonly h: number,
  ) {
    this.dots = new Uint32Array(w * h)
  }

  at(x: number, y: number): number {
    return this.dots[y * this.w + x] ?? 0
  }

  fillRect(x: number, y: number, w: number, h: number): void {
    if ((x | 0) !== x || (y | 0) !== y || (w | 0) !== w || (h | 0) !== h) assert.ok(false, `blurred: ${x}, ${y}, ${w}, ${h}`)
    if (this.globalAlpha < 1) {
      this.tints.push({ x, y, w, h, css: this.fillStyle })
      return
    }
    const dot = pixelOf(colourOf(this.fillStyle))
    this.filled += w * h
    this.each(x, y, w, h, () => dot)
  }

  clearRect(x: number, y: number, w: number, h: number): void {
    this.each(x, y, w, h, () => 0)
  }

  drawImage(from: unknown, sx: number, sy: number, sw: number, sh: number, x: number, y: number, w: number, h: number): void {
    assert.ok([sx, sy, sw, sh, x, y].every(Number.isInteger) && sw === w && sh === h && w > 0 && h > 0, 'stretched, or nothing')
    this.copies++
    this.each(x, y, w, h, (u, v) => (from as Canvas).at(sx + u - x, sy + v - y))
  }

  createImageData(w: number, h: number): { data: Uint8ClampedArray; width: number; height: number } {
    return { data: new Uint8ClampedArray(4 * w * h), width: w, height: h }
  }

  // putImageData puts a part of a picture where it lies in it, or all.
  putImageData({ data, width, height }: { data: Uint8ClampedArray; width: number; height: number }, x: number, y: number, px = 0, py = 0, pw = width, ph = height): void {
    const dots = new Uint32Array(data.buffer)
    this.each(x + px, y + py, pw, ph, (u, v) => dots[(v - y) * width + u - x] ?? 0)
  }

  beginPath(): void {}
  stroke(): void {}
  lineTo(): void {}

  moveTo(x: number, y: number): void {
    this.strokes.push({ x, y })
  }

  arc(x: number, y: number): void {
    this.circles.push({ x, y })
  }

  fillText(text: string, x: number, y: number): void {
    this.texts.push({ text, x, y })
  }

  private each(x: number, y: number, w: number, h: number, dot: (u: number, v: number) => number): void {
    for (let v = Math.max(y, 0); v < Math.min(y + h, this.h); v++) {
      for (let u = Math.max(x, 0); u < Math.min(x + w, this.w); u++) this.dots[v * this.w + u] = dot(u, v)
    }
  }
}

export const inkOf = (canvas: Canvas): Ink => canvas as unknown as Ink

export const makeCanvas: MakeSurface = (w, h) => {
  const canvas = new Canvas(w, h)
  return { image: canvas as unknown as CanvasImageSource, ink: inkOf(canvas) }
}

// Ticking is a clock that goes on by so many ms whenever it is looked at, and keeps what is
// put off until it is asked for.
export class Ticking {
  time = 0
  put: (() => void)[] = []

  constructor(private readonly tick: number) {}

  now(): number {
    return (this.time += this.tick)
  }

  later(work: () => void): void {
    this.put.push(work)
  }

  // goOn does what was put off, until nothing more is.
  goOn(): number {
    let slices = 0
    for (let work = this.put.shift(); work; work = this.put.shift()) {
      work()
      if (++slices > 100_000) throw new Error('it never ends')
    }
    return slices
  }
}
