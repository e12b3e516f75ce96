import type { Answer } from './kinds'
import { line, mishap } from './state'

// stand notes how we stand with the server.
export function stand(answer: Answer<unknown>): void {
  line.value = answer.is === 'gone' ? 'gone' : answer.is === 'refused' ? 'refused' : 'up'
}

// heard says whether the server gave what was asked; what went wrong instead is shown
// at the top of the page.
export function heard<T>(answer: Answer<T>): answer is { is: 'done'; value: T } {
  stand(answer)
  if (answer.is === 'fault') mishap.value = { fault: answer.fault }
  if (answer.is === 'trouble') mishap.value = { trouble: answer.trouble }
  if (answer.is === 'problems' && answer.problems[0]) mishap.value = { trouble: answer.problems[0] }
  return answer.is === 'done'
}
