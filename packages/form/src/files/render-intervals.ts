import type { TariffDocument } from '@unitbook/engine';
import { isZone } from '@unitbook/meter-files';
import { html, nothing, type TemplateResult } from 'lit';
import { renderButton } from '../render/button.ts';
import { renderPlainSelect } from '../render/select.ts';
import { anchorIn, hasPlainFactors } from './book-anchor.ts';
import { plainDecimal } from './exact.ts';
import { CYCLE_DAYS } from './offered-days.ts';
import type { Panel } from './panel.ts';
import { renderHeading, renderSentences, renderTextField, renderWide } from './parts.ts';
import { renderFound } from './render-found.ts';
import { hasDatedReadings, renderOffers } from './render-offers.ts';
import { closingDays, countedChannels, runningTotals } from './running-totals.ts';
import { lacksPoint, needsZone, type IntervalPart, type Session } from './session.ts';
import { SHORT_WORDS } from './words.ts';
import { browserZone, knownZones } from './zones.ts';

/** How wide a register has to be that shows sums of a download. */
const WIDE = { digits: 7, decimals: 3 } as const;

/** Whether a bill by a tariff needs the intervals themselves. */
function needsIntervals(tariff: TariffDocument | null): boolean {
  if (tariff === null) return false;
  return (
    tariff.timeBlocks !== undefined ||
    Object.values(tariff.measures ?? {}).some(({ window }) => window !== undefined)
  );
}

function renderZone({ choices }: Session, panel: Panel): TemplateResult {
  const { zone } = choices;
  const own = browserZone();
  const isRight = isZone(zone.trim());
  const set = (text: string): void => {
    panel.choose({ zone: text });
  };
  return html`
    ${renderTextField({
      id: 'meter-zone',
      label: 'Time zone of the place',
      hint: 'such as Asia/Kolkata or Europe/Amsterdam; days begin and end by it',
      value: zone,
      echo: isRight ? `Read as ${zone.trim()}` : '',
      isWrong: zone.trim() !== '' && !isRight,
      list: 'meter-zones',
      input: set,
    })}
    <datalist id="meter-zones">${knownZones().map((name) => html`<option value=${name}></option>`)}</datalist>
    ${
      own === null || zone.trim() === own
        ? nothing
        : renderButton(`The meter is where I am: ${own}`, () => {
            set(own);
          })
    }
  `;
}

function renderClosing({ choices }: Session, panel: Panel): TemplateResult {
  return renderPlainSelect({
    id: 'cycle-day',
    label: 'Bills close on day',
    hint: 'of the month, from the bill',
    value: choices.cycleDay === null ? '' : String(choices.cycleDay),
    options: [['', 'Choose …'], ...CYCLE_DAYS.map((day) => [String(day), String(day)] as const)],
    choose: (day) => {
      panel.choose({ cycleDay: day === '' ? null : Number.parseInt(day, 10) });
    },
  });
}

function renderMonths({ periods }: IntervalPart, panel: Panel): TemplateResult {
  const { writing } = panel.desk;
  const channels = countedChannels(periods);
  return renderWide(
    'Units by month',
    html`<table>
      <thead>
        <tr>
          <th scope="col">Month</th>
          ${channels.map((channel) => html`<th scope="col">${SHORT_WORDS[channel]}, units</th>`)}
        </tr>
      </thead>
      <tbody>
        ${periods.map(
          (period) =>
            html`<tr>
              <th scope="row" class="day">
                ${writing.day(period.period.from)} to ${writing.day(period.period.to)}
              </th>
              ${channels.map((channel) => {
                const text = period[channel];
                return html`<td>${text === null ? 'not told' : writing.number(plainDecimal(text))}</td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>`,
  );
}

/** The days at both ends that fill no month. */
function leftOver({ periods, span }: IntervalPart, panel: Panel): readonly string[] {
  const { day } = panel.desk.writing;
  if (span === null) return [];
  const [first, last] = [periods[0]?.period, periods.at(-1)?.period];
  if (first === undefined || last === undefined)
    return [
      `The file covers ${day(span.from)} to ${day(span.to)}, which is no whole month from one such day to the next.`,
    ];
  return [
    ...(span.from < first.from
      ? [`The days from ${day(span.from)} to ${day(first.from)} fill no whole month.`]
      : []),
    ...(last.to < span.to ? [`The days from ${day(last.to)} to ${day(span.to)} fill no whole month.`] : []),
  ];
}

const COMMAND =
  'The tariff of this book bills by hours of the day or by intervals. Such a bill needs the command, which reads ' +
  'the file whole: unitbook bill --intervals. These are the units of each month.';

const SUMS =
  'These are sums of the download, not what the meter’s display shows: a running total at each closing day, ' +
  'with three decimals. The units of each month come out right; the totals themselves stand on no display.';

const OTHER_READINGS =
  'This book has readings of a meter, and none of them on one of these days with all that the file counts: ' +
  'sums of a download cannot be put among them. Choose another closing day, type the reading of one of these ' +
  'days, or start another book for the download.';

const FACTOR =
  'This account multiplies what a meter shows. Sums of a download are units already, and would be multiplied ' +
  'once more: set the factor to 1 in a book for the download.';

function renderTotals(part: IntervalPart, { choices }: Session, panel: Panel): TemplateResult {
  const { desk } = panel;
  const { periods } = part;
  const anchor = anchorIn(desk.household, closingDays(periods), countedChannels(periods));
  if (!hasPlainFactors(desk.household)) return html`${renderSentences([FACTOR])}`;
  if (anchor === null && hasDatedReadings(panel)) return html`${renderSentences([OTHER_READINGS])}`;
  const { offers, unknown } = runningTotals(periods, anchor);
  const { day } = desk.writing;
  const least = anchor === null ? { least: WIDE } : {};
  return html`
    ${renderHeading('Months to take over as readings')}
    ${renderSentences([
      SUMS,
      ...(anchor === null ? [] : [`They go on from the reading of ${day(anchor.day)} in this book.`]),
      ...(unknown === null
        ? []
        : [`From ${day(unknown.from)} on there are no totals: the month after it cannot be told.`]),
    ])}
    ${renderOffers({ key: 'totals', offers, choices, isPicking: false, ...least }, panel)}
  `;
}

function renderPart(part: IntervalPart, session: Session, panel: Panel): TemplateResult {
  const { desk } = panel;
  const hasMonths = part.periods.some(({ import: taken, export: given, generation }) =>
    [taken, given, generation].some((text) => text !== null),
  );
  return html`
    ${renderFound(part.findings, desk.writing)} ${renderSentences(leftOver(part, panel))}
    ${hasMonths ? renderMonths(part, panel) : nothing}
    ${
      !hasMonths
        ? nothing
        : needsIntervals(desk.tariff)
          ? html`<p class="finding question">${COMMAND}</p>`
          : renderTotals(part, session, panel)
    }
  `;
}

/** What intervals come to, month by month, and how that can be taken over. */
export function renderIntervals(session: Session, panel: Panel): TemplateResult | typeof nothing {
  const { file, intervals } = session;
  if (file === null || file.intervals.length === 0 || lacksPoint(session)) return nothing;
  return html`
    ${renderHeading('Months from the intervals')}
    <div class="row">
      ${needsZone(session) ? renderZone(session, panel) : nothing} ${renderClosing(session, panel)}
    </div>
    ${intervals === null ? nothing : renderPart(intervals, session, panel)}
  `;
}
