import type { FieldWords } from './field-words.ts';

/** Words for measures, times, prices, quantities, ledgers and sharing, by section and field. */
export const SCHEME_WORDS: Readonly<Record<string, FieldWords>> = {
  'measure.unit': {
    meaning:
      'What it is counted in. kWh, kVAh and count are shared out where a period is split by days, kW and kVA are not; `class` is a number that only chooses',
  },
  'measure.label': { meaning: 'What bills and explanations call it' },
  'measure.clause': { meaning: 'Where the rule stands; left out: none is shown', form: 'clause' },
  'measure.window': {
    meaning: 'Worked out from interval data: [a window](#a-window-of-a-measure); left out: it is given',
  },
  'measure.whenMissing': { meaning: '`"zero"`: counts as 0 where it is not given; left out: an error' },
  'window.of': { form: 'a channel', meaning: 'The channel as metered, such as `import`' },
  'window.less': {
    form: 'a channel',
    meaning: 'The channel set off against it inside each window, not below 0',
  },
  'window.within': { meaning: 'Each interval, hour or day; `day-hours`: some hours of each day' },
  'window.from': { form: 'time as `HH:MM`', meaning: 'First minute of the hours; needed with `day-hours`' },
  'window.to': { form: 'time as `HH:MM`', meaning: 'The minute they end; needed with `day-hours`' },
  'season.from': { form: 'day as `mm-dd`', meaning: 'First day of every year' },
  'season.through': { form: 'day as `mm-dd`', meaning: 'Last day; before the first: in the year after' },
  'season.clause': { form: 'clause', meaning: 'Where the rule stands; left out: none is shown' },
  'time-blocks.blocks': { form: 'a list of [blocks](#a-block)' },
  'time-blocks.calendar': {
    form: 'a list of [entries](#an-entry-of-the-calendar)',
    meaning: 'Which block applies when',
  },
  'time-blocks.holidays': {
    meaning: 'The days that count as `holiday`: [holidays](#holidays); left out: none',
  },
  'block.label': { meaning: 'What bills call it' },
  'entry.from': { form: 'time as `HH:MM`', meaning: 'The minute it begins' },
  'entry.to': {
    form: 'time as `HH:MM`',
    meaning:
      'The minute it ends, `24:00` at the latest. Before its beginning: the first and last hours of the same day',
  },
  'entry.days': {
    form: 'a list of `mon` … `sun`, `holiday`',
    meaning: 'The days it applies on; left out: every day, holidays too',
  },
  'entry.clause': { form: 'clause', meaning: 'Where the rule stands; left out: as of the time blocks' },
  'holidays.days': {
    form: 'a list of days as `yyyy-mm-dd`',
    meaning: 'Where an entry names `holiday`, these days are holidays and no weekdays',
  },
  'price-series.values': { form: 'a list of [values](#a-value-of-a-series)', meaning: 'In order of time' },
  'price-series.through': {
    form: 'day as `yyyy-mm-dd`',
    meaning: 'Last day of the last value; left out: still in force',
  },
  'price-sum.of': { form: 'a list of prices or decimals', meaning: 'What it is worked out from' },
  'price-percent.of': {
    form: 'a list of prices or decimals',
    meaning: 'The prices whose sum it is a part of',
  },
  'price-mean.of': { form: 'the name of a series', meaning: 'What the mean is of' },
  'price-mean.months': { unit: 'calendar months', meaning: 'Over so many' },
  'price-mean.through': {
    form: '`"this-month"`, `"month-before"`',
    meaning: 'The last month that counts: that of the last day of the period, or the one before',
  },
  'price-value.from': { form: 'day as `yyyy-mm-dd`', meaning: 'First day' },
  'price-value.rate': { unit: 'money, or percent', meaning: 'The price from that day on' },
  'price-value.clause': { form: 'clause', meaning: 'Where it stands; left out: as of the price' },
  'definition.label': { meaning: 'What bills and explanations call it' },
  'definition.unit': {
    form: '`"kWh"`, `"kVAh"`, `"kW"`, `"kVA"`, `"count"`, `"class"`',
    meaning: 'What the result is counted in; left out: as the first quantity it is worked out from',
  },
  'definition-sum.of': { form: 'a list of quantities or decimals', meaning: 'What it is worked out from' },
  'definition-percent.of': {
    form: 'a list of quantities or decimals',
    meaning: 'The quantities whose sum it is a part of',
  },
  'definition-part.upTo': {
    form: 'a quantity or a decimal',
    meaning: 'The part up to this; left out: without end',
  },
  'definition-choice.steps': {
    form: 'a list of [steps](#a-step-of-a-choice), two or more',
    meaning: 'In ascending order',
  },
  'definition-choice.by': { meaning: 'The quantity that chooses' },
  'definition-running-total.through': {
    form: '`"this-period"`, `"previous-period"`',
    meaning: 'Whether the period that is billed counts itself',
  },
  'definition-mean.through': {
    form: '`"this-period"`, `"previous-period"`',
    meaning: 'Whether the period that is billed counts itself',
  },
  'definition-mean.whenFewer': {
    meaning: 'Where there are fewer periods: the mean of those there are (0 where there is none), or no bill',
  },
  'definition-days-share.days': {
    form: 'whole number, or `"month-of-first-day"`, `"month-of-last-day"`',
    unit: 'days',
    meaning: 'The days it is counted for: a number, or those of a calendar month',
  },
  'definition-netting.routes': {
    form: '`"any"`, `"same-block"`, `"same-block-first"`, or a list of [routes](#a-route-of-a-netting)',
    meaning: 'Which of the supply may meet which of the demand, and in which order',
  },
  'definition-netting.supply': {
    form: 'a list of quantities',
    meaning: 'Units given or balances, in the order in which they are used',
  },
  'definition-netting.demand': {
    form: 'a list of quantities',
    meaning: 'Units taken, in the order in which they are met',
  },
  'definition-netting.most': { meaning: 'At most so many units are set off in all; left out: no limit' },
  'definition-netting.rounding': {
    meaning: 'How units are rounded; needed where a route is worth more or less than 100 percent',
  },
  'definition-running-total.since': {
    form: 'day as `mm-dd`, `"anniversary"`, `"chosen"`',
    meaning:
      'Over the periods that begin on or after this day of the year: a day, that on which the account began, or the day after the one its owner chose; not with `periods`',
  },
  'definition-running-total.periods': { unit: 'periods', meaning: 'Over so many periods; not with `since`' },
  'definition-mean.periods': { unit: 'periods', meaning: 'Over so many' },
  'choice-step.upTo': { form: 'decimal', meaning: 'The upper limit, included; only the last has none' },
  'route.from': { form: 'a quantity', meaning: 'One of the supply' },
  'route.worth': {
    unit: 'percent',
    meaning: 'What a unit given is worth here: of 100 units worth 80, 80 are set off; left out: 100',
  },
  'ledgers.quantities': {
    form: 'a list of [definitions](tariff-quantities.md#a-definition)',
    meaning: 'Worked out in this order, each from those above; left out: none',
  },
  'ledgers.ledgers': {
    form: 'a list of [ledgers](#a-ledger)',
    meaning: 'What goes from one period to the next; left out: nothing',
  },
  'ledgers.sharing': {
    meaning: 'How the units of a pool are shared: [sharing](#sharing); left out: there is no pool',
  },
  'ledger.label': { meaning: 'What bills call it' },
  'ledger.adds': {
    form: 'a quantity',
    meaning: 'The units that come in; needed for units, not allowed for money: its credit charge fills it',
  },
  'ledger.keeps': {
    form: 'a quantity',
    meaning: 'What the period leaves of the balance brought forward; left out: all of it. Not for money',
  },
  'ledger.life': {
    meaning: 'How long units or money live: [life](#the-life-of-what-is-in-a-ledger); left out: without end',
  },
  'ledger.close': { meaning: 'When it closes: [the close](#the-close-of-a-ledger); left out: never' },
  'ledger.payment': {
    meaning:
      'How a balance is paid: [payment](#the-payment-of-a-balance); needed where the surplus is `paid`',
  },
  'life.months': { unit: 'months', meaning: 'So many' },
  'ledger-close.on': {
    form: '`"every-period"`, `"anniversary"`, `"chosen"`, or a list of days as `mm-dd`',
    meaning:
      'Every period; the last day of each year counted from `since` of the account; the day its owner chose (`settlementDay`); or these days. The period that holds the day closes the ledger',
  },
  'ledger-close.everyYears': {
    unit: 'years',
    meaning:
      'Only in every so manieth year. A day of the year counts from the first after `since` of the account; an anniversary, at the end of so many of its own years. Left out: every year',
  },
  'ledger-close.surplus': {
    form: '`"lapses"`, `"paid"`',
    meaning: 'What becomes of the balance. A ledger that carries it on has no `close`',
  },
  'payment.rate': {
    unit: 'money per unit',
    meaning: 'What a unit is paid; needed for units, not allowed for money',
  },
  'payment.above': {
    unit: 'units or money',
    meaning: 'Paid only where the balance is above this; left out: always',
  },
  'payment.pays': {
    meaning: 'The whole balance, or what exceeds `above` or `atLeast`; needed with one of them',
  },
  'payment.most': { unit: 'units', meaning: 'At most so much is paid; left out: no limit. Units only' },
  'payment.rounding': { meaning: 'Of the payment; left out: as lines are' },
  'sharing.by': {
    meaning:
      'What the members share by: agreed percentages, kW of each, alike, or `priority`: in the order named, each as much as it imports',
  },
  'sharing.remainder': {
    form: '`"largest-remainder"`, `"host"`, `"first-named"`, `"kept-in-pool"`',
    meaning:
      'Where units go that are left over once shares are cut down, or that no member needs. `priority` has no `largest-remainder`',
  },
};
