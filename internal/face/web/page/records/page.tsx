import { Set } from '../figure'
import { Link } from '../link'
import { More, Search } from '../search'
import { words } from '../words'
import { type Recorded, records } from './records'

const w = words.draft

// Records are the finished warps, and what each taught.
export function Records() {
  const { items, total, query } = records
  const empty = items.value !== null && total.value === 0 && !query.value.words
  return (
    <>
      <div class="title-row">
        <h1>{w.records}</h1>
      </div>
      <p class="soft hint">{w.recordsSays}</p>
      {empty ? <Empty /> : <Found />}
    </>
  )
}

function Empty() {
  return (
    <section class="empty">
      <h2>{w.recordsEmpty}</h2>
      <p>{w.recordsEmptySays}</p>
      <dl>
        {w.recordsParts.map(([name, says]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
      <p>
        <Link to={{ page: 'bench' }}>{words.toBench}</Link>
      </p>
    </section>
  )
}

function Found() {
  const all = records.items.value
  return (
    <>
      <Search list={records} found={w.recordsFound} foundFor={w.recordsFoundFor} />
      {all === null && <p class="soft">{words.reading}</p>}
      {all?.length === 0 && (
        <p class="none">
          {w.noneRecorded(records.query.value.words ?? '')}{' '}
          <button type="button" class="link" onClick={() => records.find({})}>
            {w.showAllRecords}
          </button>
        </p>
      )}
      <ol class="records" role="list">
        {all?.map((one) => (
          <RecordItem key={one.id} one={one} />
        ))}
      </ol>
      <More list={records} />
    </>
  )
}

function RecordItem({ one }: { one: Recorded }) {
  const to = { page: 'warp', id: one.id, stage: 'finish' } as const
  return (
    <li class="record">
      <img src={`/api/documents/${one.id}/picture?of=cloth&v=${one.version}`} alt="" width="150" height="150" loading="lazy" />
      <div class="record-what">
        <h2>
          <Link to={to} class="quiet">
            {one.name}
          </Link>
        </h2>
        {one.cloth && <p class="sentence">{one.cloth}</p>}
        {one.sett && (
          <p class="soft">
            {w.sett} <Set text={one.sett} />
          </p>
        )}
        {one.yarns.length > 0 && (
          <p class="soft">
            {w.yarns} {one.yarns.join('; ')}
          </p>
        )}
        <p class="soft">
          {one.demo && <span class="demo">{words.fromDemo}</span>}
          <time dateTime={one.changed}>{words.changed(one.changed)}</time>
        </p>
      </div>
      {one.learnt.length > 0 ? <Taught one={one} /> : <Nothing one={one} />}
    </li>
  )
}

const Nothing = ({ one }: { one: Recorded }) => (
  <p class="soft taught">
    {w.taughtNone}{' '}
    <Link to={{ page: 'warp', id: one.id, stage: 'finish' }} label={w.measureOf(one.name)}>
      {w.measure}
    </Link>
  </p>
)

// Taught holds what was measured beside what was planned.
function Taught({ one }: { one: Recorded }) {
  return (
    <table class="sizes taught">
      <caption class="hidden">{`${w.taught}, ${one.name}`}</caption>
      <thead>
        <tr>
          <th scope="col">{w.taught}</th>
          <th scope="col">{w.planned}</th>
          <th scope="col">{w.measured}</th>
        </tr>
      </thead>
      <tbody>
        {one.learnt.map((learnt) => (
          <TaughtRows key={learnt.key + learnt.typed} learnt={learnt} />
        ))}
      </tbody>
    </table>
  )
}

const TaughtRows = ({ learnt }: { learnt: Recorded['learnt'][number] }) => (
  <>
    <tr class="taught-figure">
      <th scope="row">
        <span class="sentence">{learnt.says}</span>
      </th>
      <td>{learnt.planned ? <Set text={learnt.planned} /> : ''}</td>
      <td>
        <Set text={learnt.value} />
      </td>
    </tr>
    <tr class="taught-how">
      <td colSpan={3} class="soft">
        {w.inTwo(learnt.from, learnt.to)}: <Set text={learnt.typed.replace('->', '→')} />
        {learnt.note ? `; ${learnt.note}` : ''}
      </td>
    </tr>
  </>
)
