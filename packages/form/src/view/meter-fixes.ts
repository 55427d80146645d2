import { editRow, type Finding } from '@unitbook/engine';
import { mapRow } from '../household/edit-household.ts';
import { isEvent, type Household } from '../household/household.ts';
import { inForceBefore, type Meter } from '../household/later-meters.ts';
import {
  addChange,
  addReset,
  blankEvent,
  insertRows,
  nameNewMeter,
  undatedEvent,
} from '../household/meter-change.ts';
import { gridPath, type Channel } from '../household/rates.ts';
import { keyOfPath, renameRate } from '../household/registers.ts';
import { offerText, type Writing } from '../writing/writing.ts';
import type { Fix } from './fix.ts';
import { fieldOf } from './still-typing.ts';

/** The buttons of a finding about a meter: in the place of the usual corrections, and after "it is right". */
interface MeterFixes {
  readonly first?: readonly Fix[];
  readonly last?: readonly Fix[];
}

/** A finding about a row, with the place of the row. */
interface Found {
  readonly finding: Finding;
  readonly index: number;
  readonly household: Household;
  readonly writing: Writing;
}

const meterOf = ({ values }: Finding): Meter => (values['meter'] === 'generation' ? 'generation' : 'grid');

/** The rows of a change are added before the one that closes the month: its date is typed first. */
const dateField = (index: number): string => `reading-${String(index)}-date`;

/** Add rows before one, unless others of the same meter wait for their date: then go there. */
function addBefore({ household, index }: Found, label: string, meter: Meter, apply: Fix['apply']): Fix {
  const waiting = undatedEvent(household, meter);
  if (waiting === null) return { label, apply, focus: dateField(index) };
  return { label, apply: (held) => held, focus: dateField(waiting), show: waiting };
}

function changed(found: Found): readonly Fix[] {
  const { finding, index, household } = found;
  const row = household.readings[index];
  if (row === undefined || isEvent(row)) return [];
  const meter: Meter = keyOfPath(finding.path) === 'generation' ? 'generation' : 'grid';
  return [addBefore(found, 'The meter was changed', meter, (held) => addChange(held, meter, index))];
}

function belowBefore(found: Found): MeterFixes {
  const correct: Fix = {
    label: 'A digit is mistyped: correct it',
    apply: (held) => held,
    focus: fieldOf(found.finding),
  };
  return { last: [...changed(found), correct] };
}

function beganAnew(found: Found): MeterFixes {
  const { index } = found;
  const label = 'It began anew: type its last number';
  const tell = addBefore(found, label, 'generation', (held) => addReset(held, index));
  return { first: [tell], last: changed(found) };
}

function belowEstimate({ finding, index, writing }: Found): MeterFixes {
  const register = keyOfPath(finding.path);
  const { offer } = finding;
  const photo: Fix = {
    label: 'Type what a photo of that day shows',
    apply: (held) =>
      mapRow(held, index, (row) => editRow(row, { register, value: '', method: 'own-reading' })),
    focus: fieldOf(finding),
  };
  if (offer === undefined) return { first: [photo] };
  const share: Fix = {
    label: `Use ${offerText(offer, writing)}, a share by days`,
    apply: (held) =>
      mapRow(held, index, (row) => editRow(row, { register, value: offer, method: 'by-days' })),
  };
  return { first: [share, photo] };
}

/** The other reading of a change, as far as one is there. */
function otherReading({ finding, index, household }: Found): MeterFixes {
  const row = household.readings[index];
  if (row === undefined) return {};
  const isFinal = row.event === 'final';
  const place = isFinal ? index + 1 : index;
  const added = blankEvent(meterOf(finding), isFinal ? 'first' : 'final', row.date);
  return {
    first: [
      {
        label: isFinal ? 'Type the first numbers of the new meter' : 'Type the last numbers of the old meter',
        apply: (held) => insertRows(held, place, [added]),
        focus: fieldOf({ ...finding, path: ['readings', place, ...firstField(meterOf(finding))] }),
      },
    ],
  };
}

const firstField = (meter: Meter): readonly string[] => [meter === 'generation' ? 'generation' : 'import'];

function withoutReadings({ finding, index }: Found): MeterFixes {
  const [meter, date] = [meterOf(finding), finding.values['day'] ?? ''];
  const rows = [blankEvent(meter, 'final', date), blankEvent(meter, 'first', date)];
  return {
    first: [
      {
        label: 'Type its last and first numbers',
        apply: (held) => insertRows(held, index, rows),
        focus: fieldOf({ ...finding, path: ['readings', index, ...firstField(meter)] }),
      },
    ],
  };
}

function unknownMeter({ finding, index }: Found): MeterFixes {
  const meter = meterOf(finding);
  const focus = fieldOf({ ...finding, path: ['readings', index, ...firstField(meter)] });
  return {
    first: [{ label: 'Name the new meter', apply: (held) => nameNewMeter(held, meter, index), focus }],
  };
}

function unknownRate({ finding, index }: Found): MeterFixes {
  const [, , , channel, rate] = finding.path;
  return {
    first: [
      {
        label: 'Take it out',
        apply: (held) =>
          mapRow(held, index, (row) => renameRate(row, channel as Channel, String(rate), null)),
      },
    ],
  };
}

/** Which block a rate counts is said in the account, or where its meter took the place of another. */
function rateWithoutBlock({ household, index }: Found): MeterFixes {
  const path = gridPath(inForceBefore(household, 'grid', index + 1)).join('-');
  return {
    first: [
      {
        label: 'Say which block each rate counts',
        apply: (held) => held,
        focus: `account-${path}-import-rates-0-block`,
        opens: ['account', 'meters', `rates-${path}`],
      },
    ],
  };
}

const MAKERS: Readonly<Record<string, (found: Found) => MeterFixes>> = {
  'reading/below-before': belowBefore,
  'reading/began-anew': beganAnew,
  'reading/below-estimate': belowEstimate,
  'reading/final-without-first': otherReading,
  'reading/first-without-final': otherReading,
  'reading/meter-changed': withoutReadings,
  'reading/meter-unknown': unknownMeter,
  'reading/unknown-rate': unknownRate,
  'energy/rate-without-block': rateWithoutBlock,
};

/** The buttons that a finding about changed meters, rates or estimates asks for. */
export function meterFixes(finding: Finding, household: Household, writing: Writing): MeterFixes {
  const [list, index] = finding.path;
  if (list !== 'readings' || typeof index !== 'number') return {};
  return MAKERS[finding.code]?.({ finding, index, household, writing }) ?? {};
}
