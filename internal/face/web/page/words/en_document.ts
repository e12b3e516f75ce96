// The words around a document that is open, by its kind.
export const document_ = {
  back: { warp: 'To the bench', yarn: 'All yarns', loom: 'All looms', draft: 'All drafts' },
  copy: { warp: 'Copy as a new warp', yarn: 'Copy as a new yarn', loom: 'Copy as a new loom', draft: 'Copy as a new draft' },
  remove: { warp: 'Remove this warp', yarn: 'Remove this yarn', loom: 'Remove this loom', draft: 'Remove this draft' },
  removed: (name: string) => `Removed: ${name}. Undo brings it back.`,
  lost: { warp: 'This warp is not in the book', yarn: 'This yarn is not on the shelf', loom: 'This loom is not in the book', draft: 'This draft is not in the book' },
  lostSays: 'It was removed, or its address was mistyped. What was removed can be brought back with undo.',
}
