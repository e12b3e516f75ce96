// printSeen prints a picture with a heading, and nothing else of the page.
export function printSeen(picture: HTMLCanvasElement | null, name: string, says: string): void {
  if (!picture) return
  const sheet = document.createElement('div')
  sheet.className = 'seen-sheet'
  const heading = document.createElement('h1')
  heading.textContent = name
  const line = document.createElement('p')
  line.textContent = says
  sheet.append(heading, line, picture)
  document.body.append(sheet)
  addEventListener('afterprint', () => sheet.remove(), { once: true })
  window.print()
}
