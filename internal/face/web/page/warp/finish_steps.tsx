import { Group } from '../field'
import { Set } from '../figure'
import { FigureLines } from '../lines'
import { ProblemList } from '../problems'
import { words } from '../words'
import { finishing, type Step } from './after'
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

function FinishStep({ id, step }: { id: number; step: Step }) {
  return (
    <li data-step={step.step}>
      <h3 class="step-name">{step.says}</h3>
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
