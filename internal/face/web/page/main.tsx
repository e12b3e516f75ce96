import { render } from 'preact'
import { Page } from './page'
import './look.css'
import { follow } from './place'
import { watch } from './watch'

const place = document.getElementById('page')
if (place) {
  follow()
  render(<Page />, place)
  watch()
}
