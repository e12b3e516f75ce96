import { counted } from './counted'

const at = new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' })

// time is minutes as hours are read.
const time = (minutes: number): string => {
  const parts = [minutes >= 60 ? `${Math.floor(minutes / 60)} h` : '', minutes % 60 > 0 || minutes === 0 ? `${minutes % 60} min` : '']
  return parts.filter(Boolean).join(' ')
}

// The words of the log beside the loom.
export const loomsideLog = {
  title: 'Log',
  sitDown: 'Sit down',
  standUp: 'Stand up',
  sitting: (minutes: number) => `You have sat for ${time(minutes)}`,
  notSitting: 'You are not sitting at the loom.',
  forgotten: (since: string) => `You sat down on ${at.format(new Date(since))}, and never stood up. How many minutes was it?`,
  minutes: 'Minutes',
  itWas: 'It was so long',
  byHand: 'Write minutes by hand',
  wasSat: 'Minutes of a sitting',
  hours: 'Hours',

  note: 'Note',
  noteHint: 'tension uneven on the left',
  send: 'Write the note down',
  broken: 'Broken end',
  which: 'Which end broke',
  whichHint: '212, or third from the left edge',
  wroteBroken: 'It broke',
  advance: 'Warp wound on',
  advancedAt: (pick: number, since: number) => (since > 0 ? `Wound on last at pick ${pick}, ${counted(since, 'pick', 'picks')} ago` : `Wound on last at pick ${pick}`),
  putAway: 'Leave it',

  photograph: 'Photograph',
  choose: 'Take a photograph, or choose one',
  chosen: 'The photograph that was taken',
  noPreview: 'It cannot be shown here; sley will say whether it can be read.',
  caption: 'What it shows',
  captionHint: 'the first border',
  keepIt: 'Keep it',
  sendAgain: 'Send it again',
  sending: 'Sending the photograph',
  stopSending: 'Stop',
  notSent: 'It did not get through. It is still here.',

  none: 'Nothing has been written yet.',
  at: (when: string) => at.format(new Date(when)),
  pick: (n: number) => `at pick ${n}`,
  lasted: (minutes: number) => time(minutes),
  undo: (says: string) => `Undo: ${says}`,
  open: (says: string) => `${says}: see it large`,
  all: (n: number) => `Show all ${n}`,
}
