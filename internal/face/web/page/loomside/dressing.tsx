import { useEffect } from 'preact/hooks'
import { Select } from '../inputs'
import { words } from '../words'
import { BoardPicture } from './board'
import type { Loom, Part, Step } from './kinds'
import { OneLine } from './one_line'
import { move, tellLoom, view } from './state'
import { aloud, back, checked, go, toCheck } from './stroke'
import { partAt } from './where'

const w = words.loomside

// StepView is a step of dressing: the part under the hands, large, and one way on.
export function StepView({ now, step, done }: { now: Loom; step: Step; done: number }) {
  const part = partAt(step, done)
  const check = toCheck(step, done)
  const finished = done >= step.total && !check
  useEffect(() => aloud(step, done), [step.id])
  return (
    <section class="loom-body" aria-label={step.says}>
      <p class="loom-over">
        <b>{step.says}</b> <span class="loom-sum">{w.count(done, step.total, step.unit)}</span>
      </p>
      {step.care && <p class="aside">{step.care}</p>}
      {done === 0 && <First list={step.first} />}
      {finished ? <Finished now={now} step={step} /> : check ? <Check part={check} /> : part && <Under step={step} part={part} done={done} />}
      <Go step={step} finished={finished} check={Boolean(check)} />
      <More now={now} step={step} done={done} part={part} />
    </section>
  )
}

// First is what is seen to before a step is begun.
function First({ list }: { list: string[] | undefined }) {
  if (!list?.length) return null
  return (
    <ul class="loom-first" role="list">
      {list.map((one) => (
        <li key={one}>{one}</li>
      ))}
    </ul>
  )
}

// Under is the part under the hands.
function Under({ step, part, done }: { step: Step; part: Part; done: number }) {
  const stop = part.stops?.find((one) => one.at === done)
  const next = part.stops?.find((one) => one.at > done)
  const each = step.each ? part.items?.[done - part.from] : undefined
  return (
    <>
      <h2 class="loom-part">{part.title}</h2>
      {each ? (
        <p class="loom-now">
          <span class="loom-what">{step.item}</span> <strong class={each.kind === 'float' ? 'loom-word' : 'loom-figure'}>{each.text}</strong>
        </p>
      ) : step.per > 0 ? (
        <p class="loom-now">
          <strong class="loom-figure">{done - part.from}</strong> <span class="loom-what">{w.ofPart(part.to - part.from, step.unit)}</span>
        </p>
      ) : (
        <p class="loom-now">
          <strong class="loom-word">{part.big ?? part.items?.map((item) => <span key={item.text}>{item.text}</span>)}</strong>
        </p>
      )}
      {stop && <p class="care loom-stop">{stop.says}</p>}
      {next && <p class="loom-next">{w.inSo(next.at - done, next.says)}</p>}
      {part.items && (step.each || part.big || step.per > 0) && <Items step={step} part={part} done={done} />}
      {step.per === 0 && part.check?.map((one) => <p key={one}>{one}</p>)}
    </>
  )
}

// Items are all of a part: those done, the one now, those to come.
function Items({ step, part, done }: { step: Step; part: Part; done: number }) {
  const at = step.each ? done - part.from : -1
  return (
    <ol class={step.each ? 'loom-items' : 'loom-items loom-yarns'} role="list" aria-label={w.inPart}>
      {part.items?.map((item, i) => (
        <li key={i} class={step.each ? (i < at ? 'done' : i === at ? 'now' : '') : ''} aria-current={i === at ? 'step' : undefined}>
          {item.text}
        </li>
      ))}
    </ol>
  )
}

// Check is what is counted before the work goes on.
function Check({ part }: { part: Part }) {
  return (
    <>
      <h2 class="loom-part">{w.check(part.title)}</h2>
      <ul class="loom-check" role="list">
        {part.check?.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </>
  )
}

// Finished leads on from a step that is done.
function Finished({ now, step }: { now: Loom; step: Step }) {
  const next = now.steps[now.steps.findIndex((one) => one.id === step.id) + 1]
  return (
    <>
      <p class="loom-now">
        <strong class="loom-word loom-done">{w.done}</strong>
      </p>
      <p class="buttons">
        <button type="button" class="strong loom-go" onClick={() => (view.value = next?.id ?? 'weaving')}>
          {w.onTo(next?.says ?? w.weave)}
        </button>
      </p>
    </>
  )
}

function Go({ step, finished, check }: { step: Step; finished: boolean; check: boolean }) {
  return (
    <p class="loom-buttons">
      <button type="button" class="plain loom-back" onClick={() => void back()}>
        {w.back}
      </button>
      {!finished && (
        <button type="button" class="strong loom-go" onClick={() => void go()}>
          {check ? w.checkedGo : w.doneOne[step.id as keyof typeof w.doneOne] ?? w.doneThing}
        </button>
      )}
    </p>
  )
}

// More is the whole part at once, another place, another side.
function More({ now, step, done, part }: { now: Loom; step: Step; done: number; part: Part | undefined }) {
  return (
    <details class="loom-more">
      <summary>{w.more}</summary>
      <p>{step.lead}</p>
      {done > 0 && <First list={step.first} />}
      {step.per > 0 && part && done < part.to && (
        <p>
          <button type="button" class="plain" onClick={() => move(step.id, part.to)}>
            {w.wholePart}
          </button>
        </p>
      )}
      <OneLine
        id="loom-place"
        label={w.setTo(step.unit, step.total)}
        button={w.setIt}
        number
        send={(typed) => {
          checked.value = `${step.id} ${Number(typed)}`
          move(step.id, Number(typed), true)
        }}
      />
      {step.sides && (
        <Select id="loom-side" label={w.side} value={step.side ?? ''} choices={step.sides.map((side) => [side.id, side.says])} set={(to) => tellLoom('chosen', { what: `side.${step.id}`, value: to })} />
      )}
      {step.board && <BoardPicture id={now.id} />}
      <ol class="loom-all" role="list">
        {step.parts.map((one) => (
          <li key={one.from} class={one.to <= done ? 'done' : one === part ? 'now' : ''}>
            {one.title}
          </li>
        ))}
      </ol>
    </details>
  )
}
