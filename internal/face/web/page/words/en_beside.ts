// Words of the devices beside the loom: on the page at the desk, and on theirs.

const moment = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', hour: '2-digit', minute: '2-digit' })

const minutes = (seconds: number): string => {
  const m = Math.floor(seconds / 60)
  const s = seconds % 60
  return [m > 0 ? `${m} min` : '', s > 0 || m === 0 ? `${s} s` : ''].filter(Boolean).join(' ')
}

export const beside = {
  title: 'By the loom',
  lead: 'A phone or a tablet can stand at the loom and tell the next step: what to thread, which treadle, how far the tape should read. What is said there is in the book at once. This computer stays on meanwhile, and both are in the same network.',

  off: 'It is off. Nobody but this computer reaches sley.',
  on: 'It is on. Paired phones and tablets in this network reach the warps in hand.',
  turnOn: 'Turn it on',
  turnOff: 'Turn it off',
  always: 'Turn it on by itself whenever sley starts',
  alwaysSays: 'Without the tick it is off again with the next start.',
  none: 'This computer is in no network just now. Join it to the one that the phone is in, then turn this on.',
  public_: 'This computer has no address of a home network, only one that others on the internet may reach as well. Turn this on only if you know who can.',
  moved: 'This computer has come into another network since. Turn it off and on, and pair by the new address; those that are paired stay so, and open it.',

  pair: 'Pair a phone or a tablet',
  newCode: 'Another code',
  codeHead: 'Pair a phone or a tablet',
  scan: 'Hold its camera over the square and open what it offers.',
  orType: 'Or type this address there, and then the code:',
  codeIs: 'The code',
  square: 'The way to the page on the phone, to be read by its camera',
  goodFor: (seconds: number) => `Good for ${minutes(seconds)}, for one device.`,
  orElse: 'If that leads nowhere:',
  opens: 'What is paired opens',

  devices: 'Paired',
  noDevices: 'No phone or tablet is paired yet.',
  seen: (when: string) => `last seen ${moment.format(new Date(when))}`,
  revoked: 'let in no more',
  revoke: 'Let in no more',
  revokeOf: (name: string) => `Let in no more: ${name}`,
  rename: 'Rename',
  renameOf: (name: string) => `Rename ${name}`,
  save: 'Save',

  meansHead: 'What this means in a shared network',
  means: [
    'What goes between sley and the phone is not sealed: whoever is in the same network, and means to, can read it, and could use what the phone proves itself by. No password and nothing of money goes there, only the weaving.',
    'A paired device sees the warps in hand and can say what was done on them. It begins the work on a warp and says what really stands on the loom. It sees no other warp, no yarns, drafts or records, and changes nothing else.',
    'Use it at home or in a studio whose network is yours. In a café, a hotel or a school leave it off, and turn it off when you are away.',
    'A device that was lost is let in no more by one press here.',
  ] as readonly string[],

  // on the device
  pairing: 'Pair this device',
  pairingSays: 'At the computer, open By the loom and press Pair a phone or a tablet. It shows six digits.',
  code: 'The six digits',
  codeCame: 'The code came with the square. Give this device a name and pair it.',
  deviceName: 'What this device is called',
  phone: 'phone',
  tablet: 'tablet',
  pairNow: 'Pair',
  outHead: 'This device is let in no more',
  outSays: 'It was taken out at the computer, or what it was let in by is gone. What you did here and is not sent yet stays here; pair it anew to go on.',
  hand: 'Warps in hand',
  handNone: 'No warp is in hand. Begin one at the computer.',
  toHand: 'Warps in hand',
  awake: 'Kept awake',
  asleep: 'May go dark',
  awakeSays: 'A silent film of nothing plays behind the page, so that the screen stays on; some devices turn it off all the same, and then their own setting helps.',
  goneHead: 'The computer is not answering',
  goneSays: 'Go on: what you do is kept on this device and sent when it is back. Do not load this page anew until then, for it comes from the computer.',
  called: (name: string) => `This device is called ${name}.`,
}
