import { doc } from '../doc'
import { Group } from '../field'
import { Set } from '../figure'
import { FigureLines } from '../lines'
import { ProblemList } from '../problems'
import { refresh } from '../refresh'
import { words } from '../words'
import { finishing, type Step } from './after'
import { tell } from './ask'
import { MeasureHere } from './measure'

const w = words.warp

// FinishSteps are what is done after the last pick, in order, each with its cautions and
// with fields for what is measured then.
export function FinishSteps({ id }: { id: number }) {
  const now = finishing.value
  if (!now) return <p class="soft">{words.reading}</p>
  return (
    <Group title={w.stepsTitle} says={w.stepsSays}>
      <ProblemList of={now.problems} />
      <ol class="finish-steps">
        {now.steps.map((step) => (
          <FinishStep key={step.step} id={id} step={step} />
        ))}
      </ol>
      <p class="soft">{now.cites}</p>
    </Group>
  )
}

// tick says that a step is done, or not yet.
async function tick(id: number, step: Step, done: boolean): Promise<void> {
  await tell(id, 'reached', { step: `finish.${step.step}`, place: done ? 1 : 0, set: true })
  await refresh()
}

function FinishStep({ id, step }: { id: number; step: Step }) {
  return (
    <li data-step={step.step} class={step.done ? 'done' : ''}>
      <h3 class="step-name">
        {doc.value?.started ? (
          <label class="step-tick">
            <input type="checkbox" checked={step.done ?? false} onChange={(event) => void tick(id, step, event.currentTarget.checked)} />
            <span>{step.says}</span>
          </label>
        ) : (
          step.says
        )}
      </h3>
      <p>
        <Set text={[step.how, ...step.notes].join(' ')} />
      </p>
      {step.figures.length > 0 && <FigureLines of={step.figures} />}
      {step.cautions.map((text) => (
        <p key={text} class="aside">
          {text}
        </p>
      ))}
      <MeasureHere id={id} step={step.step} of={step.measures} />
    </li>
  )
}
