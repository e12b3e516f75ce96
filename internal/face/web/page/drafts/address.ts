// drawingOf is the address of the drawing, as it is or as it would be.
export function drawingOf(id: number, version: number, after: string[]): string {
  const change = after.length > 0 ? `&change=${after.map(encodeURIComponent).join(',')}` : ''
  return `/api/documents/${id}/picture?of=draft&v=${version}${change}`
}
