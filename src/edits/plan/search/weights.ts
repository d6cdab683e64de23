/** What counts in a plan of bridges, and how much: all weights of the search in one table. */

interface Weight {
  readonly value: number;
  readonly unit: string;
  /** What it does to a plan. */
  readonly meaning: string;
  readonly source: string;
}

const PRACTICE = 'common practice, no source';

export const WEIGHTS = {
  // How wide a bridge is.
  slenderness: {
    value: 12.5,
    unit: 'widths to a length',
    meaning: 'A longer bridge is made wider: a brush or finger bends it in the sheet as the cube of this ratio.',
    source: 'deflection of a beam, F L³ / (E t w³); the ratio itself: common practice, no source',
  },
  widest: {
    value: 4,
    unit: 'least widths',
    meaning: 'No bridge is wider, whatever it holds, but long ones of an island that lifts too far.',
    source: PRACTICE,
  },
  stoutest: {
    value: 0.25,
    unit: 'of the length',
    meaning: 'These may be so wide, up to half as wide again: beside its length a bridge still looks slender.',
    source: PRACTICE,
  },
  widthStep: { value: 0.05, unit: 'mm', meaning: 'Widths are rounded up to such steps.', source: PRACTICE },

  // What one bridge costs, in mm of a bridge of the least width.
  tooNarrow: {
    value: 1,
    unit: 'of the cost',
    meaning: 'Where only a bridge of the least width fits, though its length or load asks for more.',
    source: PRACTICE,
  },
  long: { value: 12, unit: 'mm', meaning: 'Beyond this length the cost grows steeply.', source: PRACTICE },
  longer: { value: 0.25, unit: 'of the cost for each mm', meaning: 'How steeply.', source: PRACTICE },
  longest: { value: 20, unit: 'mm', meaning: 'No bridge is longer.', source: PRACTICE },
  oblique: {
    value: 0.15,
    unit: 'mm for each mm off its axis',
    meaning: 'Level and upright bridges look calmer than oblique ones.',
    source: PRACTICE,
  },
  crooked: {
    value: 0.6,
    unit: 'of the length',
    meaning: 'A bridge that is nearly level or upright, but not quite, looks like a mistake.',
    source: PRACTICE,
  },
  notUpright: {
    value: 6,
    unit: 'of the cost, by the sine',
    meaning: 'Where upright bridges are asked for, others cost so much more.',
    source: PRACTICE,
  },
  slantedEnd: { value: 2, unit: 'of the cost', meaning: 'Ends that are not square to the bank.', source: PRACTICE },
  corner: { value: 0.4, unit: 'of the cost', meaning: 'A corner of the outline beside the bridge.', source: PRACTICE },
  noSupport: {
    value: 3,
    unit: 'of the cost',
    meaning: 'Material at the far end that is no deeper or wider than the bridge.',
    source: PRACTICE,
  },
  noRoot: { value: 0.5, unit: 'of the cost', meaning: 'The same at the end on the island.', source: PRACTICE },
  thinPlace: { value: 1, unit: 'of the cost', meaning: 'A thin place of the material beside it.', source: PRACTICE },
  hidden: { value: 0.6, unit: 'of the cost', meaning: 'So much less where later paint covers it.', source: PRACTICE },
  hiddenFirst: {
    value: 0.92,
    unit: 'of the cost',
    meaning: 'The same where hidden bridges are asked for.',
    source: PRACTICE,
  },

  // What a set of bridges costs.
  uneven: { value: 3, unit: 'of the cost', meaning: 'Bridges on one side of the middle.', source: PRACTICE },
  hinge: {
    value: 4,
    unit: 'times the cost',
    meaning: 'Two bridges so near to each other that the island hinges on them.',
    source: PRACTICE,
  },
  bent: {
    value: 0.2,
    unit: 'of the cost',
    meaning: 'Two bridges that do not run in one direction through the island.',
    source: PRACTICE,
  },
  further: {
    value: 8,
    unit: 'times the cheapest bridge',
    meaning: 'What a further bridge may cost that the island needs to be held well; more than that it goes without.',
    source: PRACTICE,
  },
  furtherWidths: { value: 40, unit: 'widths', meaning: 'And so much besides.', source: PRACTICE },
  reach: {
    value: 1 / 3,
    unit: 'of the size',
    meaning: 'How far an island may reach beyond its bridges; a compact one as far as half its width.',
    source: PRACTICE,
  },
  offCentre: {
    value: 0.1,
    unit: 'of the size',
    meaning: 'How far the centre of mass may lie outside what the bridges embrace.',
    source: PRACTICE,
  },
  swing: {
    value: 1,
    unit: 'mm',
    meaning: 'How far an island may lift together with those that it hangs on, before bridges are made wider or more.',
    source: PRACTICE,
  },
  lettering: {
    value: 3,
    unit: 'times the cost',
    meaning: 'What bridges may cost that stand on the line of a letter, above and below its counter.',
    source: PRACTICE,
  },
  nested: {
    value: 2,
    unit: 'times the cost',
    meaning: 'What bridges may cost that run in one straight line through islands that lie in each other.',
    source: PRACTICE,
  },
  symmetric: {
    value: 3,
    unit: 'times the cost',
    meaning: 'What mirrored bridges may cost beside the cheapest.',
    source: PRACTICE,
  },
  alike: {
    value: 2,
    unit: 'times the cost',
    meaning: 'What bridges may cost that are as those of an equal island.',
    source: PRACTICE,
  },
} as const satisfies Readonly<Record<string, Weight>>;
