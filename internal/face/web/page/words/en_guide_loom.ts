import type { Part } from '../guide/kinds'

// The guide from the warping board to the piece measured.
export const loomParts: readonly Part[] = [
  {
    id: 'dress',
    title: 'Dressing the loom',
    says: 'winding, spreading, threading, sleying, and the sheets for it',
    blocks: [
      { care: 'A warp under tension stores hundreds of newtons, and ratchets pinch. Keep hands and hair away from pawl and ratchet, and let tension off by the brake, never by a knocked-out pawl. Where your workshop, school or country has rules of safety, they come first.' },
      { head: 'Sheets' },
      'Under [Dress](@towels/dress) stand the sheets: paper to pin up, tick off and write on, large enough to be read from the bench. Print those you need. Each bears the mark of the plan it came from, so that an old one is known for what it is.',
      { head: 'Winding' },
      'sley finds a way over the [warping board](#warping-board) that comes to the wound length, and says how many ends go into each [bout](#bout) and after how many the colour changes.',
      { picture: 'board', of: 'towels', says: 'The way of the towels over the board.' },
      {
        of: 'towels',
        figures: [
          ['winding.ends', 'ends to wind in bouts', '481'],
          ['winding.bouts', 'bouts', '9'],
          ['winding.path-length', 'path on the board', '270 1/2 in'],
        ],
      },
      { drawing: 'cross', says: 'The cross between two pegs. Each end goes over where its neighbour goes under, so none can change its place.' },
      'The [cross](#cross) keeps the ends in their order. Tie its four arms before anything is lifted off, and put a [choke tie](#choke-tie) around each bout.',
      { head: 'Spreading and threading' },
      'The [raddle](#raddle) sheet says how many ends lie in each space, counted from the centre. The threading sheet goes through the [heddles](#heddle) in groups of about two dozen, each with the heddles it takes from every shaft. Count heddles before you begin; to find one missing afterwards costs an evening.',
      { head: 'Sleying' },
      { drawing: 'sley', says: 'Twelve ends in six dents, two to each; and in five dents of a coarser reed, 2-3-2-3-2.' },
      'At 24 epi the towels stand two to a [dent](#dent) in a reed of 12 dents to the inch. With another reed another [sleying order](#sleying-order) meets the same sett; sley tells those that your reeds allow, and by how much each is off.',
      {
        of: 'towels',
        figures: [
          ['dents', 'dents used', '243'],
          ['dents.left', 'left of the centre', '121'],
          ['dents.right', 'right of the centre', '122'],
        ],
      },
      { head: 'Work begins' },
      'When you begin, say so at the foot of the page. From then on the plan stands as it was, and sheets print from it. What came out otherwise on the loom is amended [as built](#as-built), and everything after follows that.',
    ],
  },
  {
    id: 'weave',
    title: 'At the loom',
    says: 'how far, what happened, and what differs from the plan',
    blocks: [
      'The weaving sheet goes through each piece by [picks](#pick) and by the tape: where the border begins, where the hem folds, where the middle is. Pin the tape sheet to the cloth itself, and move it as the cloth goes round the [beam](#beam).',
      {
        of: 'towels',
        figures: [
          ['pieces[0].picks', 'picks to weave', '757'],
          ['pieces[0].on-loom', 'weave on the loom', '34 3/8 in'],
        ],
      },
      { head: 'Measure in one way' },
      'The tape is read as the warp stands, under tension. If you slacken the warp to measure, say so in the plan: the cloth is [relaxed](#relaxed) then, and sley does not take [relaxation](#relaxation) off twice. The picks are counted either way, and they decide.',
      { head: 'Keep the place' },
      'Under Weave, write down how many picks are woven, counted from the start of the warp. Saying it twice does no harm. The log takes notes, sittings and broken ends; they are there when the same warp is planned again.',
      { head: 'When it comes out otherwise' },
      'One repeat threaded too few, a beat that gives 20 picks and not 22: amend it as built, at the top of every stage. The numbers after it are worked out again from what is there; the plan stays beside it to compare. In the demo the [Hatch runner](@runner/numbers) was threaded one stripe short, and left so.',
      { care: 'Long sessions strain backs, eyes and hands. Stand up and change task before it hurts: wind a bobbin, hem, walk.' },
    ],
  },
  {
    id: 'finish',
    title: 'Finishing and measuring',
    says: 'the wash, the tape, and what the next warp learns',
    blocks: [
      'Cloth from the loom is not finished. The first washing settles the threads and takes most of what will ever be lost; only then is a size [finished](#finished).',
      { care: 'Hot water burns, and wet cloth is heavy. Wear gloves, lift little at a time, keep children away from the tub. What the yarn’s label and your local rules say of washing comes first.' },
      { head: 'Measure three times' },
      {
        steps: [
          'On the loom, under tension, before the piece is cut off.',
          'Off the loom and rested for a night, flat on a table.',
          'Washed, dry and pressed, flat on a table.',
        ],
      },
      'Write each size down under [Finish](@towels/finish) with its state. Two states of one size are enough to say what was lost between them.',
      { head: 'What it says' },
      'The [Hatch runner](@runner/finish) read 152 cm on the loom. Washed, it measured 131 cm between hems that take 8 cm more. So its loss from tape to washed is 152 cm -> 139 cm, and in those words it can be set into the next plan. The [Records](/records) keep what every finished warp lost.',
      'When a plan is opened, sley looks through your records and the [samples](#sample) of its yarns, and offers beside each [allowance](#allowance) what you have measured yourself. It is offered, not taken: you choose.',
      { head: 'A sample is the cheapest lesson' },
      'Weave a hand’s breadth with the yarn, sett and weave you mean to use, mark 10 in along the web with a thread, wash it as the piece will be washed, and measure between the marks. If it is 8 1/2 in, “10 in -> 8 1/2 in” is all you have to write.',
    ],
  },
  {
    id: 'yarns',
    title: 'Yarns and shelves',
    says: 'reading a label, measuring handspun, what is promised',
    blocks: [
      { head: 'Reading a label' },
      'Type what the label says, as “8/2 cotton, white” or “Nm 16/2 wool, grey”. sley reads the [count](#count), the fibre and the colour out of it. Where no system is named it takes the one usual for the fibre, and tells which: 8/2 is not the same yarn in cotton and in wool.',
      {
        pairs: [
          ['[Ne](#ne)', 'cotton: hanks of 840 yards in a pound'],
          ['[Nm](#nm)', 'metres in a gram'],
          ['[lea](#lea)', 'linen: hanks of 300 yards in a pound'],
          ['[worsted](#worsted)', 'combed wool: hanks of 560 yards in a pound'],
          ['[tex](#tex)', 'grams in 1000 metres; a higher number is a thicker yarn'],
        ],
      },
      { head: 'No label' },
      { drawing: 'wraps', says: 'Sixteen wraps on an inch, touching, neither pressed nor apart.' },
      'Wrap it around a ruler, over at least an inch, and write the number as [wraps](#wraps) touching. Two people wrap differently; it is a way to begin. To know, measure a [skein](#skein): its length in hand, its weight on a scale, after the twist was set. That is how [handspun](#handspun) is best kept.',
      { care: 'Dust of fleece and fibre harms lungs. Open and card it outdoors or with the air drawn off, wear a mask that your local rules call fit, and wash hands; raw fleece may carry germs.' },
      { head: 'The shelf' },
      'A yarn on the [shelf](/yarns) has a stock: what was bought, used, measured, lost. Beside it stands what it is promised to, and what would be left. A yarn whose stock nobody wrote down is not empty; it is unknown, and sley says so.',
      'A [loom](/looms) on the shelf has its width, shafts, treadles, reeds, heddles and loom waste. Every plan is held against its loom, and what does not fit is told with what to do.',
    ],
  },
]
