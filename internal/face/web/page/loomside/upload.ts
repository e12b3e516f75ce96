import { readAnswer } from '../answer'
import type { Answer } from '../kinds'

// Upload is a picture on its way.
export type Upload = { answer: Promise<Answer<{ id: string }>>; stop: () => void }

// patience is how long a picture may be on its way: as long as the server waits.
const patience = 130_000 // milliseconds

// typeOf is what a file is sent as: the server looks at the bytes, and lets in only what is
// called a picture.
export const typeOf = (file: Blob): string => (/^image\/[\w.+-]+$/.test(file.type) ? file.type : 'image/x-unknown')

// upload sends a picture as it is, and tells what share has gone. fetch cannot tell that.
export function upload(path: string, file: Blob, gone: (share: number) => void): Upload {
  const request = new XMLHttpRequest()
  const answer = new Promise<Answer<{ id: string }>>((done) => {
    const lost = () => done({ is: 'gone' })
    request.open('POST', path)
    request.setRequestHeader('Content-Type', typeOf(file))
    request.timeout = patience
    request.upload.onprogress = (event) => event.lengthComputable && gone(event.loaded / event.total)
    request.onload = () => done(readAnswer(request.status, request.responseText))
    request.onerror = request.ontimeout = request.onabort = lost
    request.send(file)
  })
  return { answer, stop: () => request.abort() }
}

// previewSide is how many dots a preview has on its longer side.
const previewSide = 640

// preview draws a picture small and upright; false where this browser cannot read it.
export async function preview(file: Blob, on: HTMLCanvasElement): Promise<boolean> {
  try {
    const picture = await createImageBitmap(file)
    const scale = Math.min(1, previewSide / Math.max(picture.width, picture.height))
    on.width = Math.max(1, Math.round(picture.width * scale))
    on.height = Math.max(1, Math.round(picture.height * scale))
    on.getContext('2d')?.drawImage(picture, 0, 0, on.width, on.height)
    picture.close()
    return true
  } catch {
    return false
  }
}
