import { render } from 'preact'
import { Device } from './device/device'
import { followAt } from './device/at'
import { readHand } from './device/hand'
import { aboutBy } from './refresh'
import { watch } from './watch'
import './device/look.css'

// The page of a phone or a tablet beside the loom: a page of its own, which asks only for
// what such a device may have.
const place = document.getElementById('page')
if (place) {
  aboutBy(readHand)
  followAt()
  render(<Device />, place)
  watch()
}
