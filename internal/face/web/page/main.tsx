import { render } from 'preact'
import { Page } from './page'
import './look.css'
import { watch } from './watch'

const place = document.getElementById('page')
if (place) {
  render(<Page />, place)
  watch()
}
