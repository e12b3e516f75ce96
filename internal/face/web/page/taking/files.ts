// Files that are taken in: which of them are warps, which drafts, and which stand beside
// a warp that points to them.

export type Taken = { name: string; text: string }
export type WarpFile = Taken & { beside: Record<string, string> }

// Beside is a file that was read together with another.
export type Beside = { name: string; of: string }

// mostBytes is the most that one file may hold, so that it goes into one request with
// what stands beside it.
export const mostBytes = 4_000_000

const isDraft = ({ name, text }: Taken): boolean => /\.wif$/i.test(name) || /^\s*\[wif\]/im.test(text.slice(0, 2_000))

const lastOf = (path: string): string => path.split(/[\\/]/).at(-1) ?? path

// pointedTo are the names, as a plan writes them, that may be files.
const pointedTo = (text: string): string[] => [...text.matchAll(/"([^"\n]+\.wif)"|'([^'\n]+\.wif)'/gi)].map(([, double, single]) => double ?? single ?? '')

// sorted sorts files by what they hold, not by how they came.
export function sorted(files: readonly Taken[]): { warps: WarpFile[]; drafts: Taken[]; beside: Beside[] } {
  const drafts = files.filter(isDraft)
  const used = new Map<Taken, string>()
  const warps = files
    .filter((file) => !isDraft(file))
    .map((file) => {
      const beside: Record<string, string> = {}
      for (const path of pointedTo(file.text)) {
        const draft = drafts.find((one) => one.name.toLowerCase() === lastOf(path).toLowerCase())
        if (!draft) continue
        beside[path] = draft.text
        used.set(draft, file.name)
      }
      return { ...file, beside }
    })
  return { warps, drafts: drafts.filter((draft) => !used.has(draft)), beside: [...used].map(([{ name }, of]) => ({ name, of })) }
}
