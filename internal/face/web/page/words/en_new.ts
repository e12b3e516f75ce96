// The words of the page where a warp is begun.
export const new_ = {
  title: 'A new warp',
  kind: 'From a kind of piece',
  units: { metric: 'in centimetres', imperial: 'in inches' },
  size: (length: string, width: string) => `${length} × ${width}`,
  usualSays: (source: string) => `Usual sizes: ${source}. Yours count more; they can be changed at once.`,
  name: 'Called',
  count: 'How many',
  part: { yarn: 'Yarn', loom: 'Loom', draft: 'Draft' },
  later: 'say it later',
  begin: 'Begin this warp',

  copy: 'From a warp you have',
  copySays: 'Its plan is copied as it stood before work began; what was measured and written down stays with the old one.',
  copySearch: 'Which',
  copyNone: 'There is no warp to copy yet.',
  copyThis: 'Copy',
  copyOf: (name: string) => `Copy ${name}`,

  file: 'From a file',
  fileSays: 'A plan file, or a draft as a WIF file. They can also be dropped anywhere on this page or on the bench; a WIF that a plan points to is dropped together with it.',
}
