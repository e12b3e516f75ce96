// textOfFile is what a file says. Old programs wrote in one byte a letter; such a file is
// no UTF-8, and read as western letters.
export function textOfFile(data: ArrayBuffer): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(data)
  } catch {
    return new TextDecoder('windows-1252').decode(data)
  }
}
