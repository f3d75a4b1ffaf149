/**
 * What sheets know of crops by `crop.name`, whatever the record's own figures: a figure that took one of these names would be
 * printed in its place. Names with a dot in them cannot be taken, since ids have none.
 */
export const namesOfEveryCrop: ReadonlySet<string> = new Set([
  ...['depth', 'depth-here', 'depth-why', 'depth-rule', 'depth-rule-says', 'soil-fit'],
  ...['in-row', 'between-rows', 'emergence', 'emergence-on', 'normal-seedlings', 'maturity', 'yield'],
  ...[
    'direct-sow',
    'set-out',
    'plant-sets',
    'plant-slips',
    'plant-pieces',
    'start-indoors',
    'harvest',
    'ripens',
  ],
  ...['overwinter', 'succession', 'class', 'class-also', 'bulbing', 'bulbing-starts', 'bulbing-full'],
  ...[
    'short-day',
    'intermediate',
    'long-day',
    'bolting',
    'curing-dates',
    'buy-size',
    'buy-when',
    'buy-bundle',
  ],
  ...['plants-in-bed', 'seed-for-bed', 'plants-in-plan', 'seeds-to-buy', 'seed-mass', 'seed-packets'],
  ...['plants-to-buy', 'bundles', 'leaves-at-bulbing', 'size', 'sets-for-bulbs', 'sets-for-greens'],
]);
