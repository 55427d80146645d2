/** An example of a section: the key under which it stands in a document, and its JSON. */
type Example = readonly [place: string, json: string];

const NET = '{ "id": "bank", "unit": "kWh", "adds": "net.export", "keeps": "net.bank"';

/** Examples by section: without `id`, `label` and `clause` where nothing names them. */
export const EXAMPLES: Readonly<Record<string, readonly Example[]>> = {
  'day-rule': [['dayRules', '{ "thirty": { "rule": "days-over", "divisor": "30" } }']],
  'version-change': [
    ['versionChange', '{ "rule": "split-by-days", "units": "exact", "factor": "days-of-part" }'],
  ],
  'true-up': [['trueUp', '{ "spread": "by-days", "units": "whole" }']],
  charge: [
    ['charges', '{ "kind": "per-unit", "on": "net.import", "rate": "0.80", "season": "summer" }'],
    ['charges', '{ "id": "as-if", "kind": "per-unit", "on": "import", "rate": "6.00", "inTotal": false }'],
  ],
  slabs: [
    [
      'charges',
      '{ "kind": "slabs", "on": "net.import", "method": "telescopic", "slabs": [{ "upTo": "50", "rate": "3.00" }, { "rate": "4.80" }] }',
    ],
  ],
  'slab-tables': [
    [
      'charges',
      '{ "kind": "slab-tables", "on": "import", "tables": [{ "upTo": "200", "slabs": [{ "rate": "2.00" }] }, { "slabs": [{ "rate": "3.00" }] }] }',
    ],
  ],
  'per-unit': [['charges', '{ "kind": "per-unit", "on": "import", "rate": "-1.50", "firstUnits": "50" }']],
  'per-kilowatt': [['charges', '{ "kind": "per-kilowatt", "on": "sanctioned-load", "rate": "60.00" }']],
  fixed: [
    [
      'charges',
      '{ "kind": "fixed", "chosenBy": "total-use", "steps": [{ "upTo": "100", "amount": "40.00" }, { "amount": "75.00" }] }',
    ],
  ],
  percentage: [
    ['charges', '{ "kind": "percentage", "percent": "6", "of": ["energy"] }'],
    ['charges', '{ "kind": "percentage", "percent": "20", "inside": true, "of": ["energy", "fixed"] }'],
  ],
  minimum: [
    ['charges', '{ "kind": "minimum", "amount": "150.00", "of": ["energy", "fixed"], "as": "shortfall" }'],
  ],
  credit: [
    [
      'charges',
      '{ "kind": "credit", "earned": ["feed-in"], "against": ["energy"], "ledger": "credit", "left": "carried" }',
    ],
  ],
  measure: [
    ['measures', '{ "maximum-demand": { "unit": "kW" } }'],
    ['measures', '{ "import-kvah": { "unit": "kVAh", "whenMissing": "zero" } }'],
  ],
  window: [
    [
      'measures',
      '{ "hour-import": { "unit": "kWh", "window": { "of": "import", "less": "export", "within": "hour" } } }',
    ],
  ],
  season: [['seasons', '{ "winter": { "from": "11-01", "through": "02-29" } }']],
  'time-blocks': [
    [
      'timeBlocks',
      [
        '{ "blocks": [{ "id": "peak" }, { "id": "off" }],',
        '  "calendar": [',
        '    { "block": "peak", "from": "18:00", "to": "22:00", "days": ["mon", "tue", "wed", "thu", "fri", "sat"] },',
        '    { "block": "off", "from": "22:00", "to": "18:00", "days": ["mon", "tue", "wed", "thu", "fri", "sat"] },',
        '    { "block": "off", "from": "00:00", "to": "24:00", "days": ["sun", "holiday"] }',
        '  ],',
        '  "holidays": { "days": ["2026-01-26"] } }',
      ].join('\n'),
    ],
  ],
  'price-series': [
    [
      'prices',
      '{ "fuel": { "is": "series", "values": [{ "from": "2025-04-01", "rate": "0.35" }, { "from": "2025-05-01", "rate": "0.28" }], "inForce": "last-day" } }',
    ],
  ],
  'price-sum': [['prices', '{ "lower": { "is": "least", "of": ["purchase-cost", "3.10"] } }']],
  'price-percent': [['prices', '{ "part": { "is": "percent", "percent": "75", "of": ["retail"] } }']],
  'price-mean': [
    [
      'prices',
      '{ "year-mean": { "is": "mean", "of": "purchase-cost", "months": "12", "through": "month-before", "rounding": { "step": "0.01", "mode": "half-up" } } }',
    ],
  ],
  'definition-sum': [['quantities', '{ "is": "excess", "id": "above", "of": ["import", "export", "100"] }']],
  'definition-quotient': [
    [
      'quantities',
      '{ "is": "quotient", "id": "apparent", "unit": "kVAh", "of": "export", "by": "0.95", "rounding": { "step": "1", "mode": "down" } }',
    ],
  ],
  'definition-percent': [
    [
      'quantities',
      '{ "is": "percent", "id": "limit", "percent": "90", "of": ["import"], "rounding": { "step": "1", "mode": "down" } }',
    ],
  ],
  'definition-part': [
    ['quantities', '{ "is": "part", "id": "middle", "of": "net.import", "above": "100", "upTo": "300" }'],
  ],
  'definition-choice': [
    [
      'quantities',
      '{ "is": "choice", "id": "favoured", "by": "net.import", "steps": [{ "upTo": "200", "take": "net.import" }, { "take": "0" }] }',
    ],
  ],
  'definition-running-total': [
    [
      'quantities',
      '{ "is": "running-total", "id": "year", "of": "import", "since": "04-01", "through": "this-period" }',
    ],
  ],
  'definition-mean': [
    [
      'quantities',
      '{ "is": "mean", "id": "usual", "of": "import", "periods": "12", "through": "this-period", "whenFewer": "mean-of-those", "rounding": { "step": "0.01", "mode": "half-up" } }',
    ],
  ],
  'definition-days-share': [
    [
      'quantities',
      '{ "is": "days-share", "id": "counted", "of": "export", "days": "30", "when": "longer", "rounding": { "step": "1", "mode": "down" } }',
    ],
  ],
  'definition-netting': [
    [
      'quantities',
      [
        '{ "is": "netting", "id": "blocks", "supply": ["export@peak", "export@off"], "demand": ["import@peak", "import@off"],',
        '  "routes": [{ "from": "export@peak", "to": "import@peak" }, { "from": "export@off", "to": "import@peak", "worth": "80" }],',
        '  "rounding": { "step": "0.001", "mode": "down" } }',
      ].join('\n'),
    ],
  ],
  'unit-netting': [
    [
      'settlements',
      '{ "from": "2024-04-01", "scheme": "unit-netting", "carry": {}, "close": { "on": "03-31", "surplus": "lapses" } }',
    ],
  ],
  ledgers: [
    [
      'settlements',
      [
        '{ "from": "2024-04-01", "scheme": "ledgers",',
        '  "quantities": [',
        '    { "is": "netting", "id": "net", "label": "Units set off", "clause": "T 1",',
        '      "supply": ["bank", "export"], "demand": ["import"], "routes": "any" }',
        '  ],',
        '  "ledgers": [',
        '    { "id": "bank", "label": "Units banked", "unit": "kWh", "clause": "T 2", "adds": "net.export", "keeps": "net.bank" }',
        '  ] }',
      ].join('\n'),
    ],
  ],
  cap: [
    [
      'settlements',
      [
        '{ "from": "2024-04-01", "scheme": "unit-netting", "carry": {}, "close": { "on": "03-31", "surplus": "lapses" },',
        '  "cap": { "percent": "90", "of": "import", "excess": "carried" } }',
      ].join('\n'),
    ],
  ],
  close: [
    [
      'settlements',
      [
        '{ "from": "2024-04-01", "scheme": "unit-netting", "carry": {},',
        '  "close": { "on": "03-31", "surplus": "paid", "rate": "2.60", "inBill": "next" } }',
      ].join('\n'),
    ],
  ],
  ledger: [
    ['ledgers', `${NET} }`],
    ['ledgers', '{ "id": "credit", "unit": "money" }'],
  ],
  life: [['ledgers', `${NET}, "life": { "months": "12", "of": "each-unit" } }`]],
  'ledger-close': [['ledgers', `${NET}, "close": { "on": ["03-31", "09-30"], "surplus": "lapses" } }`]],
  payment: [
    [
      'ledgers',
      `${NET}, "close": { "on": ["03-31"], "surplus": "paid" },\n  "payment": { "rate": "3.00", "inBill": "next", "above": "50", "pays": "excess", "rest": "carried" } }`,
    ],
  ],
  sharing: [
    [
      'sharing',
      '{ "of": "export", "by": "percentage", "decimals": "0", "remainder": "largest-remainder", "unused": "stays-with-member" }',
    ],
  ],
};
