// What is drawn upon: what of a canvas drawing uses, so that tests can stand in for it.

export type Ink = Pick<
  CanvasRenderingContext2D,
  'fillStyle' | 'strokeStyle' | 'lineWidth' | 'globalAlpha' | 'font' | 'textAlign' | 'textBaseline' | 'fillRect' | 'clearRect' | 'beginPath' | 'moveTo' | 'lineTo' | 'arc' | 'stroke' | 'fillText' | 'createImageData' | 'putImageData'
> & { drawImage(image: CanvasImageSource, sx: number, sy: number, sw: number, sh: number, dx: number, dy: number, dw: number, dh: number): void }

// Surface is a picture that is kept, to be copied from.
export type Surface = { readonly image: CanvasImageSource; readonly ink: Ink }

export type MakeSurface = (w: number, h: number) => Surface

// offscreen makes one in the browser.
export const offscreen: MakeSurface = (w, h) => {
  const image = new OffscreenCanvas(w, h)
  const ink = image.getContext('2d')
  if (!ink) throw new Error('no canvas to draw on')
  return { image, ink: ink as unknown as Ink }
}

// Sheet is a picture that is worked on dot by dot, line after line, and put down in parts.
export type Sheet = { readonly pixels: Uint32Array; put(ink: Ink, x: number, y: number, w: number, h: number): void }

// sheetOf makes one for surfaces of that size: what is put lies where it lies on the sheet.
export function sheetOf(ink: Ink, w: number, h: number): Sheet {
  const data = ink.createImageData(w, h)
  return {
    pixels: new Uint32Array(data.data.buffer),
    put: (to, x, y, wide, high) => to.putImageData(data, 0, 0, x, y, wide, high),
  }
}

// putPixels writes a picture of that width from its upper left corner on.
export function putPixels(ink: Ink, pixels: Uint32Array, w: number): void {
  const h = pixels.length / w
  const data = ink.createImageData(w, h)
  data.data.set(new Uint8ClampedArray(pixels.buffer, pixels.byteOffset, pixels.byteLength))
  ink.putImageData(data, 0, 0)
}
