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
    'frame-sow',
    'frame-set-out',
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
    'bulbs-start',
    'tops-down',
    'leaves-late',
    'leaves-for-medium',
    'leaves-for-large',
    'size-late',
    'row-plants',
    'row-per-bundle',
  ],
  ...['height', 'row-length-in-bed', 'yield-in-bed', 'noon-shadow'],
  ...['plants-in-bed', 'seed-for-bed', 'plants-in-plan', 'seeds-to-buy', 'seed-mass', 'seed-packets'],
  ...['plants-to-buy', 'bundles', 'leaves-at-bulbing', 'size', 'sets-for-bulbs', 'sets-for-greens'],
  ...['row-length', 'seed-for-row', 'plants-in-row', 'seeds-at-least', 'packets'],
  ...['weekly-need', 'weekly-water', 'drip-time', 'rain', 'water', 'drip'],
]);
